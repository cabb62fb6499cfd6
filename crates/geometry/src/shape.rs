//! Shapes as parts: sizes in, wetted area and volume out, by exact formulas.

use core::f64::consts::PI;
use quantity::{Length, Quantity, Volume, WorkArea};
use serde::Serialize;

/// One shape with the sizes it needs. All sizes are above 0; every formula is exact for the ideal shape.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Shape {
    /// A ring of round wire.
    Torus {
        /// Inner diameter.
        #[serde(rename = "bore_m")]
        bore: Length,
        /// Diameter of the wire.
        #[serde(rename = "wire_d_m")]
        wire_d: Length,
    },
    /// A flat ring band with a rectangular section.
    Band {
        /// Inner diameter.
        #[serde(rename = "bore_m")]
        bore: Length,
        /// Thickness of the wall.
        #[serde(rename = "wall_m")]
        wall: Length,
        /// Width along the finger.
        #[serde(rename = "width_m")]
        width: Length,
    },
    /// A shell open on one side, inside and outside parts of a sphere or of a flatter cap; `outer_d` above `inner_d`.
    Cap {
        /// Diameter of the opening outside.
        #[serde(rename = "outer_d_m")]
        outer_d: Length,
        /// Diameter of the opening inside.
        #[serde(rename = "inner_d_m")]
        inner_d: Length,
        /// Height outside.
        #[serde(rename = "height_m")]
        height: Length,
    },
}

/// What a shape offers to the solution.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Surface {
    /// Facing outwards, edges included.
    pub outside: WorkArea,
    /// Facing a hollow.
    pub inside: WorkArea,
    /// The body's own volume.
    pub volume: Volume,
    /// Largest outer size, the scale on which evenness is judged.
    pub longest: Length,
    /// Inner diameter, for a shape that has one that must fit.
    pub bore: Option<Length>,
}

impl Surface {
    /// Inside and outside together.
    pub fn total(&self) -> WorkArea {
        self.outside + self.inside
    }
}

impl Shape {
    /// The shape's id: its key in a Job.
    pub fn id(&self) -> &'static str {
        match self {
            Shape::Torus { .. } => "torus",
            Shape::Band { .. } => "band",
            Shape::Cap { .. } => "cap",
        }
    }

    /// The names of its sizes, in the order [`Shape::map_sizes`] visits them: their keys without the unit.
    pub fn size_names(&self) -> &'static [&'static str] {
        match self {
            Shape::Torus { .. } => &["bore", "wire_d"],
            Shape::Band { .. } => &["bore", "wall", "width"],
            Shape::Cap { .. } => &["outer_d", "inner_d", "height"],
        }
    }

    /// The same shape with every size replaced; `size` gets its place in [`Shape::size_names`].
    pub fn map_sizes(self, mut size: impl FnMut(usize, Length) -> Length) -> Self {
        match self {
            Shape::Torus { bore, wire_d } => Shape::Torus {
                bore: size(0, bore),
                wire_d: size(1, wire_d),
            },
            Shape::Band { bore, wall, width } => Shape::Band {
                bore: size(0, bore),
                wall: size(1, wall),
                width: size(2, width),
            },
            Shape::Cap {
                outer_d,
                inner_d,
                height,
            } => Shape::Cap {
                outer_d: size(0, outer_d),
                inner_d: size(1, inner_d),
                height: size(2, height),
            },
        }
    }

    /// Area, volume and sizes.
    ///
    /// Torus by Pappus's theorem: area pi^2 D d, volume (pi^2 / 4) D d^2, D the centre-line and d the wire diameter; the half
    /// nearer the axis counts as inside. Band: two cylinders and two flat rings. Cap: spherical caps of height h over the
    /// opening, pi (r^2 + h^2) each, with the wall's flat rim; the inner height is the outer less the wall.
    pub fn surface(&self) -> Surface {
        match *self {
            Shape::Torus { bore, wire_d } => {
                let (big, small) = (bore.si() + wire_d.si(), wire_d.si());
                let area = PI * PI * big * small;
                // Half of the section's circle faces the axis; its centroid lies 2 r / pi nearer to it.
                let inside = 2.0 * PI * (big / 2.0 - small / PI) * (PI * small / 2.0);
                Surface {
                    outside: WorkArea::from_si(area - inside),
                    inside: WorkArea::from_si(inside),
                    volume: Volume::from_si(PI * PI / 4.0 * big * small * small),
                    longest: Length::from_si(big + small),
                    bore: Some(bore),
                }
            }
            Shape::Band { bore, wall, width } => {
                let (inner, outer) = (bore.si(), bore.si() + 2.0 * wall.si());
                let flat = PI / 4.0 * (outer * outer - inner * inner);
                Surface {
                    outside: WorkArea::from_si(PI * outer * width.si() + 2.0 * flat),
                    inside: WorkArea::from_si(PI * inner * width.si()),
                    volume: Volume::from_si(flat * width.si()),
                    longest: Length::from_si(if outer > width.si() {
                        outer
                    } else {
                        width.si()
                    }),
                    bore: Some(bore),
                }
            }
            Shape::Cap {
                outer_d,
                inner_d,
                height,
            } => {
                let (outer, inner, tall) = (outer_d.si() / 2.0, inner_d.si() / 2.0, height.si());
                let hollow = (tall - (outer - inner)).max_zero();
                let cap_area = |r: f64, h: f64| PI * (r * r + h * h);
                let cap_volume = |r: f64, h: f64| PI * h / 6.0 * (3.0 * r * r + h * h);
                Surface {
                    outside: WorkArea::from_si(
                        cap_area(outer, tall) + PI * (outer * outer - inner * inner),
                    ),
                    inside: WorkArea::from_si(cap_area(inner, hollow)),
                    volume: Volume::from_si(cap_volume(outer, tall) - cap_volume(inner, hollow)),
                    longest: outer_d,
                    bore: None,
                }
            }
        }
    }
}

trait MaxZero {
    fn max_zero(self) -> f64;
}

impl MaxZero for f64 {
    fn max_zero(self) -> f64 {
        if self > 0.0 { self } else { 0.0 }
    }
}

/// Wetted side of a round wire: pi d l, ends left out.
pub fn wire_side(diameter: Length, wet: Length) -> WorkArea {
    diameter.by(wet) * PI
}
