//! How much surface a piece has, and how it grows with its layer.

use crate::inputs::Inputs;
use crate::plan::{PlanPart, PlanPiece, PlanSurface};
use core::f64::consts::PI;
use geometry::shape::wire_side;
use geometry::{Shape, Surface};
use quantity::{Fraction, Length, Quantity, Ratio, WorkArea};

/// An area in m2 that grows with the thickness h of the layer on it: a + b h + c h^2.
///
/// A wire of diameter d grows as 1 + 2 h / d: a charge that would lay T on a flat sheet lays sqrt(r^2 + 2 r T) - r on it
/// (derived). A ball grows as (1 + 2 h / d)^2. Other convex bodies are counted like a ball of the same surface, which is
/// the least any of them grows (isoperimetric inequality). Sheets, leaves, rings' bores and hollows, whose inner side
/// shrinks as the outer grows, are counted as flat.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Growing(pub(crate) [f64; 3]);

const THIRD: f64 = 1.0 / 3.0;

impl Growing {
    /// The area under a layer of `h`.
    pub(crate) fn area(&self, h: f64) -> f64 {
        let [a, b, c] = self.0;
        a + h * (b + h * c)
    }

    /// The area under no layer, also where it is not known how it grows.
    pub(crate) fn bare(&self) -> f64 {
        self.0[0]
    }

    /// The volume of the next `x` of layer over one of `h`.
    pub(crate) fn volume(&self, h: f64, x: f64) -> f64 {
        self.from(h).first(x)
    }

    /// The volume of the first `x` of layer.
    pub(crate) fn first(&self, x: f64) -> f64 {
        let [a, b, c] = self.0;
        x * (a + x * (0.5 * b + x * (THIRD * c)))
    }

    /// The first layer that a volume makes: the reverse of [`Growing::first`].
    pub(crate) fn layer(&self, volume: f64) -> f64 {
        let [a, b, c] = self.0;
        // Of a quadratic, written so that a flat sheet loses nothing.
        let mut x = 2.0 * volume / (a + (a * a + 2.0 * b * volume).sqrt());
        if c > 0.0 {
            // The cube's share is small: the error of a turn is the cube of what it mends (Halley).
            for _ in 0..3 {
                let area = 1.0 / self.area(x);
                let over = (self.first(x) - volume) * area;
                let bend = (0.5 * b + c * x) * area;
                x -= over + over * over * bend;
                if over.abs() <= 1e-5 * x {
                    break;
                }
            }
        }
        x
    }

    /// The same, counted from a layer of `h` on; where that is not known, neither is how it grows on.
    pub(crate) fn from(self, h: f64) -> Self {
        let [a, b, c] = self.0;
        let area = if h.is_nan() { a } else { self.area(h) };
        Self([area, b + 2.0 * c * h, c])
    }

    /// Counts in so many of another, `area` large under a layer of `h`.
    pub(crate) fn count_in(&mut self, other: &Self, area: f64, h: f64, count: f64) {
        let [_, b, c] = other.0;
        self.0[0] += count * area;
        self.0[1] += count * (b + 2.0 * c * h);
        self.0[2] += count * c;
    }

    pub(crate) fn plus(self, other: Self) -> Self {
        Self(core::array::from_fn(|n| self.0[n] + other.0[n]))
    }

    pub(crate) fn times(self, factor: f64) -> Self {
        Self(self.0.map(|x| x * factor))
    }

    fn wire(area: f64, diameter: f64) -> Self {
        Self([area, 2.0 * area / diameter, 0.0])
    }
}

/// One piece of a sample.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Body {
    /// How many alike.
    pub(crate) count: f64,
    /// Its own surface; not a number where it is not known.
    pub(crate) own: Growing,
    /// Its hanger wires'.
    pub(crate) wire: Growing,
    /// Both.
    pub(crate) both: Growing,
    /// The scale evenness is judged on; not a number where it is not known.
    pub(crate) scale: f64,
    /// Its natural logarithm.
    pub(crate) ln_scale: f64,
}

/// Measures a piece with one set of values; its area grows with the layer where `growth` is counted.
// Written where it stays: copied at once, it would have to be waited for.
pub(crate) fn measure(growth: bool, piece: &PlanPiece, inputs: &Inputs, body: &mut Body) {
    *body = Body {
        count: f64::from(piece.count),
        own: Growing([f64::NAN; 3]),
        scale: f64::NAN,
        ..Body::default()
    };
    match &piece.surface {
        None => {}
        Some(PlanSurface::Area(one_side, sides, texture)) => {
            let area = inputs.get::<WorkArea>(*one_side)
                * f64::from(*sides)
                * inputs.get::<Ratio>(*texture).si();
            body.own = Growing([area.si(), 0.0, 0.0]);
        }
        Some(PlanSurface::Parts(parts)) => {
            let mut sum = Growing::default();
            for (n, part) in parts.iter().enumerate() {
                let shape = part.shape.map_sizes(|n, _| inputs.get(part.sizes[n]));
                let surface = shape.surface();
                if n == 0 {
                    body.scale = shape.scale_with(&surface).si();
                    body.ln_scale = libm::log(body.scale);
                }
                let area = match piece.open {
                    Some(_) => face(&shape, &surface, if piece.art.both { 2.0 } else { 1.0 }),
                    None => wetted(part, &shape, surface, inputs),
                };
                let area = area.si() * f64::from(part.times);
                let part = if growth {
                    of_shape(&shape, area, surface.total().si())
                } else {
                    Growing([area, 0.0, 0.0])
                };
                sum = sum.plus(part);
            }
            body.own = sum;
        }
    }
    // What a mask leaves open, and what the model leaves out.
    let open = piece.open.map_or(1.0, |id| inputs.get::<Fraction>(id).si());
    body.own = body
        .own
        .times(inputs.get::<Ratio>(piece.factor).si() * open);
    if let Some((d, wet, wires)) = piece.wires {
        let d: Length = inputs.get(d);
        let area = wire_side(d, inputs.get(wet)).si() * f64::from(wires);
        body.wire = if growth {
            Growing::wire(area, d.si())
        } else {
            Growing([area, 0.0, 0.0])
        };
    }
    let grown = piece.grown.si();
    if grown > 0.0 {
        (body.own, body.wire) = (body.own.from(grown), body.wire.from(grown));
    }
    body.both = body.own.plus(body.wire);
}

/// The wetted surface of a part: its outside with the texture, its inside without. Of a cap's wall the flat rim is cut, so
/// it has none of the outside's texture.
fn wetted(part: &PlanPart, shape: &Shape, surface: Surface, inputs: &Inputs) -> WorkArea {
    let texture: Ratio = inputs.get(part.texture);
    if part.in_recess {
        let surface = surface.in_recess();
        return surface.outside * texture.si() + surface.inside;
    }
    let rim = match *shape {
        Shape::Cap {
            outer_d, inner_d, ..
        } => (outer_d.by(outer_d) - inner_d.by(inner_d)) * core::f64::consts::FRAC_PI_4,
        _ => WorkArea::from_si(0.0),
    };
    (surface.outside - rim) * texture.si() + rim + surface.inside
}

/// The masked faces of a flat shape in an etch, one or both, without its edges, which are taped; of any other shape all its
/// surface.
fn face(shape: &Shape, surface: &Surface, faces: f64) -> WorkArea {
    match *shape {
        Shape::Sheet { length, width, .. } => length.by(width) * faces,
        Shape::Disc { diameter, .. } => {
            diameter.by(diameter) * (core::f64::consts::FRAC_PI_4 * faces)
        }
        _ => surface.total(),
    }
}

/// How a shape's wetted area of `area` grows, where `smooth` is all its surface.
fn of_shape(shape: &Shape, area: f64, smooth: f64) -> Growing {
    let wire = match *shape {
        Shape::Torus { wire_d, .. }
        | Shape::Coil { wire_d, .. }
        | Shape::TwistedPair { wire_d, .. }
        | Shape::Link { wire_d, .. }
        | Shape::Chain { wire_d, .. }
        | Shape::Mesh { wire_d, .. } => wire_d,
        Shape::Rod { diameter, .. } => diameter,
        Shape::Twig { base_d, top_d, .. } => (base_d + top_d) / 2.0,
        Shape::Sphere { .. }
        | Shape::Ellipsoid { .. }
        | Shape::Block { .. }
        | Shape::Cone { .. }
        | Shape::Frustum { .. }
        | Shape::Crystal { .. } => {
            // With its texture: the whole times the ball of the smooth surface over that.
            let times = area / smooth;
            return Growing([area, 4.0 * (PI * smooth).sqrt() * times, 4.0 * PI * times]);
        }
        Shape::Band { .. }
        | Shape::HalfRound { .. }
        | Shape::Cap { .. }
        | Shape::Dome { .. }
        | Shape::Sheet { .. }
        | Shape::PiercedSheet { .. }
        | Shape::Disc { .. }
        | Shape::Tube { .. }
        | Shape::Hole { .. }
        | Shape::Snail { .. }
        | Shape::Cup { .. }
        | Shape::Bezel { .. }
        | Shape::SeedHead { .. }
        | Shape::HalfEllipsoid { .. }
        | Shape::Shell { .. }
        | Shape::Leaf { .. }
        | Shape::Feather { .. } => return Growing([area, 0.0, 0.0]),
    };
    Growing::wire(area, wire.si())
}

/// Half the longest size: the scale evenness is judged on.
pub(crate) fn scale(piece: &PlanPiece, inputs: &Inputs) -> Option<Length> {
    match piece.surface.as_ref()? {
        PlanSurface::Parts(parts) => {
            let part = parts.first()?;
            let shape = part.shape.map_sizes(|n, _| inputs.get(part.sizes[n]));
            Some(shape.scale())
        }
        PlanSurface::Area(..) => None,
    }
}
