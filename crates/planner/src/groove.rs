//! Depth and width in an etch: a flat floor, or grooves whose sides cost charge too.
//!
//! A groove in an opening w wide with an etch factor EF has a flat floor and sides of quarter ellipses d deep and d / EF
//! wide; its section is w d + (pi / 2) d^2 / EF. Derived; against the flat floor of the same depth the charge is
//! 1 + (pi / 2) d / (EF w) times as much.

use crate::inputs::Inputs;
use crate::job::Resist;
use crate::plan::PlanPiece;
use crate::run::PieceRun;
use core::f64::consts::FRAC_PI_2;
use quantity::{Length, Quantity, Ratio, Thickness};

/// The extra charge per depth of a piece's grooves, 1 per metre; 0 for a flat floor.
fn extra(piece: &PlanPiece, inputs: &Inputs) -> f64 {
    match piece.art.opening {
        Some(w) if piece.art.groove => FRAC_PI_2 / (etch_factor(piece, inputs) * w.si()),
        _ => 0.0,
    }
}

/// Depth over undercut; 1 unless given.
pub fn etch_factor(piece: &PlanPiece, inputs: &Inputs) -> f64 {
    piece
        .art
        .etch_factor
        .map_or(1.0, |id| inputs.get::<Ratio>(id).si())
}

/// How thick a film usually is: toner 8 to 12 um a pass, paint pen 10 to 15, varnish 25 to 40, dry film 38 to 50, vinyl
/// 70 to 80. Common practice, no source.
pub fn film(resist: Resist) -> Thickness {
    Thickness::um(match resist {
        Resist::Toner => 10.0,
        Resist::Pen => 12.0,
        Resist::Varnish => 32.0,
        Resist::DryFilm => 45.0,
        Resist::Vinyl => 75.0,
    })
}

/// The flat floor that costs as much charge as this depth.
pub fn flat_for(piece: &PlanPiece, inputs: &Inputs, depth: Thickness) -> Thickness {
    let c = extra(piece, inputs);
    depth * (1.0 + c * depth.si())
}

/// The depth reached with the charge of this flat floor: the reverse of [`flat_for`].
pub fn depth_of(piece: &PlanPiece, inputs: &Inputs, flat: Thickness) -> Thickness {
    let c = extra(piece, inputs);
    if c > 0.0 {
        // (sqrt(1 + 4 c D) - 1) / (2 c), written so that small c loses no digits.
        Thickness::from_si(2.0 * flat.si() / (1.0 + (1.0 + 4.0 * c * flat.si()).sqrt()))
    } else {
        flat
    }
}

/// Writes what follows from a flat floor of `flat`.
pub fn etched(piece: &PlanPiece, inputs: &Inputs, flat: Thickness, slot: &mut PieceRun) {
    let depth = depth_of(piece, inputs, flat);
    let undercut = depth.as_length() / etch_factor(piece, inputs);
    let sides = if piece.art.both { 2.0 } else { 1.0 };
    slot.depth = Some(depth);
    slot.left = piece.stock.map(|stock| stock - depth.as_length() * sides);
    slot.fine_line = piece.art.opening.map(|w| {
        Ratio::from_si(1.0 + FRAC_PI_2 * depth.si() / (etch_factor(piece, inputs) * w.si()))
    });
    slot.opening_after = piece.art.opening.map(|w| w + undercut * 2.0);
    slot.line_to_draw = piece.art.land.map(|land: Length| land + undercut * 2.0);
}
