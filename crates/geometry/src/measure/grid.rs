//! A tracing on squared paper.

use super::{Impossible, Measured, Reading, Way, above_zero, measured};
use quantity::{Length, WorkArea};

/// One side of a piece from its tracing on squared paper: whole squares, and those on the edge as half each.
pub fn by_grid(whole: u32, edge: u32, cell: Length) -> Result<Measured<WorkArea>, Impossible> {
    let side = above_zero(cell, Reading::Cell)?;
    let squares = f64::from(whole) + f64::from(edge) / 2.0;
    if squares > 0.0 {
        Ok(measured(Way::Grid, squares * side * side, &[]))
    } else {
        Err(Impossible::NotAboveZero(Reading::Squares))
    }
}
