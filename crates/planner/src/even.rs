//! What a bath makes of a density: the share of it that moves metal, and how evenly.

use crate::inputs::Inputs;
use crate::plan::{PlanBath, PlanPiece};
use chemistry::efficiency::at;
use chemistry::kinetics;
use field::{Evenness, Row, evenness, wagner};
use quantity::{CurrentDensity, Fraction, Length, Quantity, Ratio};

/// Share of the charge that moves metal at `i`: as given, or along the solution's curve.
pub fn efficiency(bath: &PlanBath, inputs: &Inputs, i: CurrentDensity) -> Option<Fraction> {
    let typical: Fraction = inputs.get(bath.efficiency?);
    Some(match &bath.curve {
        Some(c) if c.exponent.si() > 0.0 => at(typical, c.exponent, c.typical_at, i, c.limits),
        _ => typical,
    })
}

/// How evenly a piece grows at `i`: from its row of the table by its Wagner number.
pub fn spread_on(
    piece: &PlanPiece,
    row: Option<Row>,
    scale: Length,
    bath: &PlanBath,
    inputs: &Inputs,
    i: CurrentDensity,
) -> Option<(Ratio, Evenness)> {
    // Without a current there is none to be uneven.
    let row = row.filter(|_| i.si() > 0.0)?;
    let kappa = inputs.get(bath.conductivity?);
    let factor: Ratio = inputs.get(bath.evenness_factor?);
    let reach = kinetics::evenness_length(kappa, bath.slope?.value, i) * factor.si();
    let wa = wagner(reach, scale);
    let found = evenness(row, wa);
    Some((
        wa,
        if piece.pointed {
            found.on_points()
        } else {
            found
        },
    ))
}

/// Thinnest over mean: the person's own ratio, or the table's with what a thin finish varies by. No exponent of the
/// efficiency is counted on here: a thinnest place is kept on the safe side.
pub fn min_ratio(
    piece: &PlanPiece,
    bath: &PlanBath,
    inputs: &Inputs,
    table: Option<Evenness>,
) -> Option<Ratio> {
    match piece.own_ratio {
        Some(own) => Some(inputs.get(own)),
        None => {
            let batch = bath.batch.map_or(1.0, |id| inputs.get::<Ratio>(id).si());
            table.map(|e| Ratio::from_si(e.min_over_mean.si() * batch))
        }
    }
}
