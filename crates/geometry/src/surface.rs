//! What a shape offers to the solution.

use quantity::{Length, Quantity, Volume, WorkArea};

/// Areas and sizes of a shape, or of several together.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Surface {
    /// Facing outwards, edges included.
    pub outside: WorkArea,
    /// Facing a hollow.
    pub inside: WorkArea,
    /// The body's own volume; none for shapes without a thickness (a leaf, a thin dome).
    pub volume: Option<Volume>,
    /// Largest outer size.
    pub longest: Length,
    /// Inner diameter, for a shape that has one that must fit; it is then the shape's first size.
    pub bore: Option<Length>,
}

impl Surface {
    /// From numbers in metre, square metre and cubic metre; an area that came out below 0 (a wall thicker than its cup, in
    /// a sample far from the likely sizes) counts as 0.
    pub(crate) fn of(outside: f64, inside: f64, volume: Option<f64>, longest: f64) -> Self {
        Self {
            outside: WorkArea::from_si(above_zero(outside)),
            inside: WorkArea::from_si(above_zero(inside)),
            volume: volume.map(|v| Volume::from_si(above_zero(v))),
            longest: Length::from_si(longest),
            bore: None,
        }
    }

    /// Inside and outside together.
    pub fn total(&self) -> WorkArea {
        self.outside + self.inside
    }

    /// The same surface standing in a recess of something larger: all of it faces a hollow.
    pub fn in_recess(self) -> Self {
        Self {
            outside: WorkArea::from_si(0.0),
            inside: self.total(),
            ..self
        }
    }

    /// Several alike.
    pub fn times(self, count: u32) -> Self {
        let n = f64::from(count);
        Self {
            outside: self.outside * n,
            inside: self.inside * n,
            volume: self.volume.map(|v| v * n),
            ..self
        }
    }

    /// Two together. The volume is known when both are; the longest size is the longer of the two (parts are not placed,
    /// so how far they reach together is not known); the bore is the first's.
    pub fn and(self, other: Self) -> Self {
        Self {
            outside: self.outside + other.outside,
            inside: self.inside + other.inside,
            volume: self.volume.zip(other.volume).map(|(a, b)| a + b),
            longest: if other.longest.si() > self.longest.si() {
                other.longest
            } else {
                self.longest
            },
            bore: self.bore.or(other.bore),
        }
    }
}

/// The number, or 0 where it is below.
pub(crate) fn above_zero(x: f64) -> f64 {
    if x > 0.0 { x } else { 0.0 }
}

/// The larger.
pub(crate) fn larger(a: f64, b: f64) -> f64 {
    if b > a { b } else { a }
}

/// The smaller.
pub(crate) fn smaller(a: f64, b: f64) -> f64 {
    if b < a { b } else { a }
}
