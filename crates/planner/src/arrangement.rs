//! From shape and arrangement to a row of the evenness table: the one match that names every pair.

use field::{Arrangement, Opening, Row};
use geometry::{Covering, LeafForm, Shape};
use quantity::{Length, Quantity, Ratio};

/// The row of the computed table for this shape in this arrangement; none where the table has none, and the person's own
/// ratio is needed then.
///
/// `opening` is the way a hollow looks; before one anode a hollow of unknown direction has no row. For a rod it says that an
/// end looks at the anode. `distance` is from the middle of the piece to the counter electrode. A piece nearer to it than its
/// own scale lies outside the table. Beyond the computed distances the next nearer one stands in, on the safe side; not
/// known, the usual one (ball 3, disc 2 scales).
///
/// Judgement, beside the table's own rows:
/// - A wire ring between two anodes or turned is at least as even as before one (0.73 against 0.70 of the mean at the lowest
///   Wagner number), so its one-anode row stands for them. For a band between two there is no row.
/// - A half-round band grows like a flat one; an ellipsoid up to 1.5 times as long as high like a ball; a rod or twig 5 to
///   20 diameters long like the one of 10; half a bivalve's shell and a cap up to half as deep as wide like the half-sphere
///   shell, which is less even. A deeper cap takes the cup's rows.
/// - Sheets and leaves count as discs of half their longest size; a thick disc (over a fifth of its width) has no row.
/// - Two layers of cloth take the row of three; for more than three there is none.
/// - Feather and fern: the one-layer filigree row on half their width (common practice, no source).
pub fn row_for(
    shape: &Shape,
    arrangement: Arrangement,
    opening: Option<Opening>,
    distance: Option<Length>,
) -> Option<Row> {
    let scales = distance.map(|d| d / shape.scale());
    if scales.is_some_and(|s| !reaches(s, 1.0)) {
        return None;
    }
    match *shape {
        Shape::Torus { .. } => Some(Row::WireRing),
        Shape::Band { .. } | Shape::HalfRound { .. } => match arrangement {
            Arrangement::OneSide => Some(Row::BandOneSide),
            Arrangement::AllRound => Some(Row::BandAllRound),
            Arrangement::BothSides | Arrangement::Turned => None,
        },
        Shape::Sphere { .. } => bead(arrangement, scales),
        Shape::Ellipsoid {
            length,
            width,
            height,
        } if nearly_round(length, width, height) => bead(arrangement, scales),
        Shape::Cap { .. } => {
            let deep = shape.recess()?.depth_over_opening();
            if deep.si() <= HALF_SPHERE {
                dome(arrangement, opening)
            } else {
                cup(arrangement, opening, deep)
            }
        }
        Shape::Dome { opening_d, height } => {
            let deep = Ratio::from_si(height / opening_d);
            if deep.si() <= HALF_SPHERE {
                dome(arrangement, opening)
            } else {
                cup(arrangement, opening, deep)
            }
        }
        Shape::Shell { .. } => dome(arrangement, opening),
        Shape::Cup { .. }
        | Shape::Bezel {
            inside: Covering::Bare,
            ..
        } => cup(arrangement, opening, shape.recess()?.depth_over_opening()),
        Shape::Sheet {
            length,
            width,
            thickness,
        }
        | Shape::PiercedSheet {
            length,
            width,
            thickness,
            ..
        } if thin(thickness, shorter(length, width)) => disc(arrangement, scales),
        Shape::Disc {
            diameter,
            thickness,
        } if thin(thickness, diameter) => disc(arrangement, scales),
        Shape::Leaf {
            form: LeafForm::Fern,
            ..
        }
        | Shape::Feather { .. } => filigree(arrangement, 1),
        Shape::Leaf { .. } => disc(arrangement, scales),
        Shape::Mesh { layers, .. } => filigree(arrangement, layers),
        Shape::Rod {
            diameter, length, ..
        } => rod(arrangement, opening, length / diameter),
        Shape::Twig {
            base_d,
            top_d,
            length,
        } => rod(arrangement, opening, length / ((base_d + top_d) / 2.0)),
        Shape::Ellipsoid { .. }
        | Shape::Bezel { .. }
        | Shape::Sheet { .. }
        | Shape::PiercedSheet { .. }
        | Shape::Disc { .. }
        | Shape::Block { .. }
        | Shape::Tube { .. }
        | Shape::Hole { .. }
        | Shape::Cone { .. }
        | Shape::Frustum { .. }
        | Shape::Snail { .. }
        | Shape::SeedHead { .. }
        | Shape::HalfEllipsoid { .. }
        | Shape::Coil { .. }
        | Shape::TwistedPair { .. }
        | Shape::Link { .. }
        | Shape::Chain { .. }
        | Shape::Crystal { .. } => None,
    }
}

/// Depth over opening of half a sphere, with a little room for what a wall takes away.
const HALF_SPHERE: f64 = 0.55;

/// So many scales away, whatever the last digit of the quotient.
fn reaches(scales: f64, wanted: f64) -> bool {
    scales >= wanted * (1.0 - 1e-9)
}

fn nearly_round(a: Length, b: Length, c: Length) -> bool {
    let least = shorter(shorter(a, b), c);
    [a, b, c].iter().all(|x| x.si() <= 1.5 * least.si())
}

fn shorter(a: Length, b: Length) -> Length {
    if b < a { b } else { a }
}

fn thin(thickness: Length, width: Length) -> bool {
    thickness.si() <= 0.2 * width.si()
}

fn bead(arrangement: Arrangement, scales: Option<f64>) -> Option<Row> {
    match arrangement {
        Arrangement::OneSide if scales.is_some_and(|s| reaches(s, 6.0)) => Some(Row::BeadFar),
        Arrangement::OneSide => Some(Row::BeadNear),
        Arrangement::BothSides | Arrangement::Turned => Some(Row::BeadBetween),
        Arrangement::AllRound => None,
    }
}

fn disc(arrangement: Arrangement, scales: Option<f64>) -> Option<Row> {
    match arrangement {
        Arrangement::OneSide => Some(match scales {
            Some(s) if reaches(s, 4.0) => Row::DiscAt4,
            Some(s) if !reaches(s, 2.0) => Row::DiscAt1,
            _ => Row::DiscAt2,
        }),
        Arrangement::BothSides | Arrangement::Turned => Some(Row::DiscBetween),
        Arrangement::AllRound => None,
    }
}

fn dome(arrangement: Arrangement, opening: Option<Opening>) -> Option<Row> {
    match arrangement {
        Arrangement::OneSide => opening.map(|way| match way {
            Opening::To => Row::DomeTo,
            Opening::Away => Row::DomeAway,
        }),
        Arrangement::BothSides | Arrangement::Turned => Some(Row::DomeBetween),
        Arrangement::AllRound => None,
    }
}

fn cup(
    arrangement: Arrangement,
    opening: Option<Opening>,
    depth_over_opening: Ratio,
) -> Option<Row> {
    match (arrangement, opening) {
        (Arrangement::OneSide, Some(Opening::To)) => Some(Row::Cup { depth_over_opening }),
        _ => None,
    }
}

fn filigree(arrangement: Arrangement, layers: u32) -> Option<Row> {
    match (arrangement, layers) {
        (Arrangement::OneSide, 1) => Some(Row::FiligreeOneSide),
        (Arrangement::OneSide, 2 | 3) => Some(Row::FiligreeThreeOneSide),
        (Arrangement::BothSides | Arrangement::Turned, 1) => Some(Row::FiligreeBetween),
        (Arrangement::BothSides | Arrangement::Turned, 2 | 3) => Some(Row::FiligreeThreeBetween),
        _ => None,
    }
}

fn rod(arrangement: Arrangement, opening: Option<Opening>, diameters: f64) -> Option<Row> {
    if !(5.0..=20.0).contains(&diameters) {
        return None;
    }
    match (arrangement, opening) {
        (Arrangement::AllRound, _) => Some(Row::RodRound),
        (Arrangement::OneSide, Some(_)) => Some(Row::RodEndOn),
        _ => None,
    }
}
