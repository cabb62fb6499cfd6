//! An outline in a photo beside a card of known size.

use super::{Impossible, Measured, Reading, Way, measured};
use quantity::{Length, Quantity, WorkArea};

/// Long side of an ID-1 card. ISO/IEC 7810 (from memory).
pub const CARD_LONG: Length = Length::mm(85.60);
/// Its short side.
pub const CARD_SHORT: Length = Length::mm(53.98);
/// Sides may disagree with the card's shape by the cosine of 30 degrees.
const MOST_TILT: f64 = 0.866;
/// Below this a photo is twice as uncertain. Source: leaf_methods_1990, abstract.
const SMALL: WorkArea = WorkArea::cm2(30.0);

/// A distance in the photo, in pixels.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pixels(pub f64);

/// An area in the photo, in pixels.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SquarePixels(pub f64);

/// Which sides of the card were measured.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct CardSides {
    /// The long side.
    pub long: Option<Pixels>,
    /// The short side.
    pub short: Option<Pixels>,
}

/// A piece that rises above the card's plane.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Raised {
    /// How far its outline lies above the card.
    pub above_card: Length,
    /// How far the camera is from the card.
    pub camera: Length,
}

/// One side of a piece from its outline in a photo. Both sides of the card, if read, take out a tilt about one of them;
/// one side gives the scale alone. A piece nearer to the camera than the card looks larger by
/// camera / (camera - above_card) in length; that is taken out where given.
pub fn beside_card(
    sides: CardSides,
    piece: SquarePixels,
    raised: Option<Raised>,
) -> Result<Measured<WorkArea>, Impossible> {
    let real = |p: Pixels| pixels(p.0, Reading::Card);
    let per_square_pixel = match (sides.long, sides.short) {
        (None, None) => return Err(Impossible::NoCardSide),
        (Some(p), None) => square(CARD_LONG.si() / real(p)?),
        (None, Some(p)) => square(CARD_SHORT.si() / real(p)?),
        (Some(p), Some(q)) => {
            let (long, short) = (CARD_LONG.si() / real(p)?, CARD_SHORT.si() / real(q)?);
            let tilt = long / short;
            if !(MOST_TILT..=1.0 / MOST_TILT).contains(&tilt) {
                return Err(Impossible::CardOutOfShape);
            }
            long * short
        }
    };
    let nearer = match raised {
        None => 1.0,
        Some(r) => {
            let camera = super::above_zero(r.camera, Reading::Camera)?;
            let left = camera - r.above_card.si();
            if left > 0.0 {
                square(left / camera)
            } else {
                return Err(Impossible::AtTheCamera);
            }
        }
    };
    let area = pixels(piece.0, Reading::Piece)? * per_square_pixel * nearer;
    let way = if area < SMALL.si() {
        Way::CardSmall
    } else {
        Way::Card
    };
    Ok(measured(way, area, &[]))
}

fn pixels(count: f64, reading: Reading) -> Result<f64, Impossible> {
    if count > 0.0 && count.is_finite() {
        Ok(count)
    } else {
        Err(Impossible::NotAboveZero(reading))
    }
}

fn square(x: f64) -> f64 {
    x * x
}
