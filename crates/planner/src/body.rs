//! How much surface a piece has, and how it grows with its layer.

use crate::inputs::Inputs;
use crate::plan::{Plan, PlanPart, PlanPiece, PlanSurface};
use core::f64::consts::PI;
use geometry::Shape;
use geometry::shape::wire_side;
use quantity::{Fraction, Length, Quantity, Ratio, WorkArea};

/// An area in m2 that grows with the thickness h of the layer on it: a + b h + c h^2.
///
/// A wire of diameter d grows as 1 + 2 h / d: a charge that would lay T on a flat sheet lays sqrt(r^2 + 2 r T) - r on it
/// (derived). A ball grows as (1 + 2 h / d)^2. Other convex bodies are counted like a ball of the same surface, which is
/// the least any of them grows (isoperimetric inequality). Sheets, leaves, rings' bores and hollows, whose inner side
/// shrinks as the outer grows, are counted as flat.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Growing(pub(crate) [f64; 3]);

impl Growing {
    /// The area under a layer of `h`.
    pub(crate) fn area(&self, h: f64) -> f64 {
        let [a, b, c] = self.0;
        a + h * (b + h * c)
    }

    /// The volume of the next `x` of layer over one of `h`.
    pub(crate) fn volume(&self, h: f64, x: f64) -> f64 {
        let [a, b, c] = self.0;
        x * (a + b * (h + x / 2.0) + c * (h * h + h * x + x * x / 3.0))
    }

    fn plus(self, other: Self) -> Self {
        Self(core::array::from_fn(|n| self.0[n] + other.0[n]))
    }

    fn times(self, factor: f64) -> Self {
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
}

/// Measures a piece with one set of values.
pub(crate) fn measure(plan: &Plan, piece: &PlanPiece, inputs: &Inputs) -> Body {
    let mut own = match piece_area(piece, inputs) {
        Some(area) => Growing([area.si(), 0.0, 0.0]),
        None => Growing([f64::NAN; 3]),
    };
    let mut wire = Growing([wire_area(piece, inputs).si(), 0.0, 0.0]);
    if plan.growth {
        own = grown(piece, inputs, own);
        if let Some((d, _, _)) = piece.wires {
            wire = Growing::wire(wire.0[0], inputs.get::<Length>(d).si());
        }
    }
    Body {
        count: f64::from(piece.count),
        own,
        wire,
        both: own.plus(wire),
        scale: scale(piece, inputs).map_or(f64::NAN, Quantity::si),
    }
}

/// A piece's area with how it grows: part by part, in proportion to the whole.
fn grown(piece: &PlanPiece, inputs: &Inputs, flat: Growing) -> Growing {
    let Some(PlanSurface::Parts(parts)) = &piece.surface else {
        return flat;
    };
    let mut sum = Growing::default();
    for part in parts {
        let shape = part.shape.map_sizes(|n, _| inputs.get(part.sizes[n]));
        sum = sum.plus(of_shape(&shape).times(f64::from(part.times)));
    }
    let [a, ..] = sum.0;
    if a > 0.0 {
        sum.times(flat.0[0] / a)
    } else {
        flat
    }
}

/// How the surface of a shape grows.
fn of_shape(shape: &Shape) -> Growing {
    let area = shape.surface().total().si();
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
            return Growing([area, 4.0 * (PI * area).sqrt(), 4.0 * PI]);
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

/// Surface of a piece without its wires.
fn piece_area(piece: &PlanPiece, inputs: &Inputs) -> Option<WorkArea> {
    let factor: Ratio = inputs.get(piece.factor);
    if let Some(open) = piece.open {
        return exposed(piece, inputs).map(|a| a * factor.si() * inputs.get::<Fraction>(open).si());
    }
    let area = match piece.surface.as_ref()? {
        PlanSurface::Area(one_side, sides, texture) => {
            inputs.get::<WorkArea>(*one_side)
                * f64::from(*sides)
                * inputs.get::<Ratio>(*texture).si()
        }
        PlanSurface::Parts(parts) => parts
            .iter()
            .map(|part| {
                let surface = part
                    .shape
                    .map_sizes(|n, _| inputs.get(part.sizes[n]))
                    .surface();
                let surface = if part.in_recess {
                    surface.in_recess()
                } else {
                    surface
                };
                let texture: Ratio = inputs.get(part.texture);
                let rim = if part.in_recess {
                    WorkArea::from_si(0.0)
                } else {
                    rim(part, inputs)
                };
                ((surface.outside - rim) * texture.si() + rim + surface.inside)
                    * f64::from(part.times)
            })
            .sum(),
    };
    Some(area * factor.si())
}

/// The masked faces of a sheet in an etch: one, or both where it is etched from both; its edges are taped.
fn exposed(piece: &PlanPiece, inputs: &Inputs) -> Option<WorkArea> {
    let faces = if piece.art.both { 2.0 } else { 1.0 };
    match piece.surface.as_ref()? {
        PlanSurface::Area(one_side, sides, texture) => Some(
            inputs.get::<WorkArea>(*one_side)
                * f64::from(*sides)
                * inputs.get::<Ratio>(*texture).si(),
        ),
        PlanSurface::Parts(parts) => Some(
            parts
                .iter()
                .map(|part| {
                    let shape = part.shape.map_sizes(|n, _| inputs.get(part.sizes[n]));
                    face(&shape, faces) * f64::from(part.times)
                })
                .sum(),
        ),
    }
}

/// So many faces of a flat shape without its edges; of any other shape all its surface.
fn face(shape: &Shape, faces: f64) -> WorkArea {
    match *shape {
        Shape::Sheet { length, width, .. } => length.by(width) * faces,
        Shape::Disc { diameter, .. } => {
            diameter.by(diameter) * (core::f64::consts::FRAC_PI_4 * faces)
        }
        _ => shape.surface().total(),
    }
}

/// The flat rim of a cap's wall: it is cut, so it has none of the outside's texture.
fn rim(part: &PlanPart, inputs: &Inputs) -> WorkArea {
    match part.shape.map_sizes(|n, _| inputs.get(part.sizes[n])) {
        Shape::Cap {
            outer_d, inner_d, ..
        } => (outer_d.by(outer_d) - inner_d.by(inner_d)) * core::f64::consts::FRAC_PI_4,
        _ => WorkArea::from_si(0.0),
    }
}

fn wire_area(piece: &PlanPiece, inputs: &Inputs) -> WorkArea {
    piece
        .wires
        .map_or(WorkArea::from_si(0.0), |(d, wet, wires)| {
            wire_side(inputs.get(d), inputs.get(wet)) * f64::from(wires)
        })
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
