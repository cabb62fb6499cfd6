//! From shape and arrangement to a row of the evenness table: the one match that names every pair.

use field::{Arrangement, Row};
use geometry::Shape;

/// The row of the computed table for this shape in this arrangement; none where the table has none.
///
/// A wire ring between two anodes or turned is at least as even as before one (0.73 against 0.70 of the mean at the lowest
/// Wagner number), so its one-anode row stands for them on the safe side. For a band between two there is no row.
pub fn row(shape: &Shape, arrangement: Arrangement) -> Option<Row> {
    match (shape, arrangement) {
        (Shape::Torus { .. }, _) => Some(Row::WireRing),
        (Shape::Band { .. }, Arrangement::OneSide) => Some(Row::BandOneSide),
        (Shape::Band { .. }, Arrangement::AllRound) => Some(Row::BandAllRound),
        (Shape::Band { .. }, Arrangement::BothSides | Arrangement::Turned) => None,
        (Shape::Cap { .. }, _) => None,
    }
}
