//! Ways of measuring an area that no formula gives. Each is a pure function: what was read in, the area with its spread out,
//! or what makes the readings impossible.

mod card;
mod grid;
mod share;
mod weighing;

pub use card::{CARD_LONG, CARD_SHORT, CardSides, Pixels, Raised, SquarePixels, beside_card};
pub use grid::by_grid;
pub use share::{Swatch, open_by_lines, open_by_swatch};
pub use weighing::{
    FOIL_ALUMINIUM, FOIL_COPPER, Foil, SQUARE_SIDE, by_foil, by_plated_mass, by_sealer_gain,
    by_suspension, by_tracing,
};

use crate::source::{Source, Sourced};
use quantity::{Band, Fraction, Quantity};

/// A measured value and its spread, two in three.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measured<Q> {
    /// The likely value.
    pub value: Q,
    /// Spread as a share of it.
    pub spread: Fraction,
    /// How it was measured; its source stands in [`Way::spread`].
    pub way: Way,
}

/// Why readings give no value.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Impossible {
    /// This reading is 0, below 0 or not a number.
    NotAboveZero(Reading),
    /// Neither side of the card was read.
    NoCardSide,
    /// The two sides of the card disagree with its shape by more than a tilt of some 30 degrees, or two things were mixed up.
    CardOutOfShape,
    /// The piece is not farther from the camera than it rises above the card.
    AtTheCamera,
    /// The lines cover more than the whole sheet.
    MoreThanTheWhole,
}

/// The readings, by name.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reading {
    /// Pixels along a side of the card.
    Card,
    /// Pixels within the piece's outline.
    Piece,
    /// Distance of the camera.
    Camera,
    /// Mass of the piece's tracing or wrap.
    Mass,
    /// Mass of the known square.
    SquareMass,
    /// Area or side of the known square.
    Square,
    /// Step of the scale.
    Step,
    /// Mass of the foil by its area.
    Foil,
    /// Mass gained by the piece.
    Gain,
    /// Mass gained by the coupon.
    CouponGain,
    /// Area of the coupon.
    Coupon,
    /// Density of the liquid or metal.
    Density,
    /// Area over the two-thirds power of the volume.
    Factor,
    /// Thickness of the layer.
    Thickness,
    /// Length of line.
    Length,
    /// Width of line.
    Width,
    /// Area of the sheet.
    Sheet,
    /// Squares counted.
    Squares,
    /// Side of one square of the grid.
    Cell,
}

/// Ways to an area, each with its usual spread.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// A mesh file's own area.
    Mesh,
    /// Outline in a photo beside a card.
    Card,
    /// The same, of a piece below 30 cm2.
    CardSmall,
    /// Tracing cut out and weighed.
    Tracing,
    /// Squares counted.
    Grid,
    /// Wrapped in foil and weighed.
    Foil,
    /// Gain of the sealer against a coupon.
    Sealer,
    /// Volume by suspension, then the form's factor.
    Suspension,
    /// Metal weighed after a run and its thickness measured.
    PlatedMass,
    /// Worked out from sizes, smooth.
    Sizes,
    /// Worked out from sizes, natural.
    NaturalSizes,
    /// Judged by eye.
    Eye,
    /// Open share judged by swatches.
    Swatch,
    /// Open share from length and width of line.
    Lines,
}

impl Way {
    /// Every way.
    pub const ALL: &'static [Way] = &[
        Way::Mesh,
        Way::Card,
        Way::CardSmall,
        Way::Tracing,
        Way::Grid,
        Way::Foil,
        Way::Sealer,
        Way::Suspension,
        Way::PlatedMass,
        Way::Sizes,
        Way::NaturalSizes,
        Way::Eye,
        Way::Swatch,
        Way::Lines,
    ];

    /// Spread as a share of the value, two in three: lowest, typical, highest. The steps of a scale are not in it.
    pub fn spread(self) -> Sourced<Band<Fraction>> {
        let published = |work, locator| Source::Published { work, locator };
        let (min, typ, max, source) = match self {
            Way::Mesh => (0.01, 0.03, 0.03, Source::CommonPractice),
            Way::Card => (0.03, 0.05, 0.05, Source::CommonPractice),
            Way::CardSmall => (0.10, 0.10, 0.10, published("leaf_methods_1990", "abstract")),
            Way::Tracing => (0.02, 0.04, 0.04, published("leaf_tracing_2011", "abstract")),
            Way::Grid => (0.03, 0.04, 0.05, Source::CommonPractice),
            // Wrapping gave a consistently large error on coral (Veal et al., Limnol. Oceanogr. Methods 8 (2010) 241).
            Way::Foil => (0.15, 0.25, 0.30, Source::CommonPractice),
            // One dip is better than two (Veal et al., Coral Reefs 29 (2010) 893).
            Way::Sealer => (0.05, 0.08, 0.10, Source::CommonPractice),
            // The weighing after Plant Methods 18 (2022) 61; the choice of the factor rules.
            Way::Suspension => (0.10, 0.15, 0.20, Source::CommonPractice),
            Way::PlatedMass => (0.05, 0.08, 0.10, Source::CommonPractice),
            Way::Sizes => (0.10, 0.10, 0.20, Source::CommonPractice),
            Way::NaturalSizes => (0.10, 0.20, 0.20, Source::CommonPractice),
            // People judge by eye a factor of 1.5 to 2 too low.
            Way::Eye => (0.50, 0.60, 1.00, Source::CommonPractice),
            // Half the way to the next swatch; length and width of a line by rule.
            Way::Swatch => (0.15, 0.25, 0.50, Source::CommonPractice),
            Way::Lines => (0.05, 0.10, 0.20, Source::CommonPractice),
        };
        Sourced {
            value: Band {
                min: Fraction::of_si(min),
                typ: Fraction::of_si(typ),
                max: Fraction::of_si(max),
            },
            source,
        }
    }
}

/// A value measured this way, its usual spread joined in quadrature with others of independent cause.
fn measured<Q: Quantity>(way: Way, value: f64, others: &[f64]) -> Measured<Q> {
    let usual = way.spread().value.typ.si();
    let square = others.iter().fold(usual * usual, |sum, u| sum + u * u);
    Measured {
        value: Q::from_si(value),
        spread: Fraction::of_si(square.sqrt()),
        way,
    }
}

/// The number, where it is above 0 and finite.
fn above_zero<Q: Quantity>(value: Q, reading: Reading) -> Result<f64, Impossible> {
    let x = value.si();
    if x > 0.0 && x.is_finite() {
        Ok(x)
    } else {
        Err(Impossible::NotAboveZero(reading))
    }
}
