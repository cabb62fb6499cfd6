//! How much of a masked sheet lies open to the etch.

use super::{Impossible, Measured, Reading, Way, above_zero, measured};
use quantity::{Fraction, Length, WorkArea};

/// Patterns of known open share to hold the artwork against.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Swatch {
    /// 10 %.
    Tenth,
    /// 25 %.
    Quarter,
    /// 50 %.
    Half,
    /// 75 %.
    ThreeQuarters,
}

impl Swatch {
    /// All, from least open.
    pub const ALL: &'static [Swatch] = &[
        Swatch::Tenth,
        Swatch::Quarter,
        Swatch::Half,
        Swatch::ThreeQuarters,
    ];

    /// Its open share.
    pub const fn share(self) -> Fraction {
        Fraction::of_si(match self {
            Swatch::Tenth => 0.10,
            Swatch::Quarter => 0.25,
            Swatch::Half => 0.50,
            Swatch::ThreeQuarters => 0.75,
        })
    }
}

/// The open share of the swatch that looks nearest.
pub fn open_by_swatch(swatch: Swatch) -> Measured<Fraction> {
    measured(Way::Swatch, quantity::Quantity::si(swatch.share()), &[])
}

/// The open share of an artwork of lines: length times width over the sheet's face. Lines that cross are counted twice.
pub fn open_by_lines(
    length: Length,
    width: Length,
    sheet: WorkArea,
) -> Result<Measured<Fraction>, Impossible> {
    let line = above_zero(length, Reading::Length)? * above_zero(width, Reading::Width)?;
    let share = line / above_zero(sheet, Reading::Sheet)?;
    if share > 1.0 {
        return Err(Impossible::MoreThanTheWhole);
    }
    Ok(measured(Way::Lines, share, &[]))
}
