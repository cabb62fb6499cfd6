//! What a bath makes of a density: the share of it that moves metal, and how evenly.

use crate::inputs::Inputs;
use crate::plan::{PlanBath, PlanPiece};
use crate::run::si;
use chemistry::efficiency::at;
use chemistry::kinetics;
use field::{Along, Curve, Ends, Row, wagner};
use quantity::{CurrentDensity, Fraction, Length, Quantity, Ratio};

/// Share of the charge that moves metal at `i`: as given, or along the solution's curve.
pub fn efficiency(bath: &PlanBath, inputs: &Inputs, i: CurrentDensity) -> Option<Fraction> {
    let typical: Fraction = inputs.get(bath.efficiency?);
    Some(match &bath.curve {
        Some(c) if c.exponent.si() > 0.0 => at(typical, c.exponent, c.typical_at, i, c.limits),
        _ => typical,
    })
}

/// How far a bath evens out at `i`. None where that is not known, and without a current: there is none to be uneven then.
pub fn reach(bath: &PlanBath, inputs: &Inputs, i: CurrentDensity) -> Option<Length> {
    let kappa = inputs.get(bath.conductivity.filter(|_| i.si() > 0.0)?);
    let factor: Ratio = inputs.get(bath.evenness_factor?);
    Some(kinetics::evenness_length(kappa, bath.slope?.value, i) * factor.si())
}

/// How evenly a piece of this scale grows where the bath evens out so far: from its row of the table by its Wagner number.
pub fn spread_on(
    piece: &PlanPiece,
    row: Option<Row>,
    scale: Length,
    reach: Option<Length>,
) -> Option<(Ratio, Ends)> {
    let wa = wagner(reach?, scale);
    let found = Curve::of(row?).ends(&Along::of(wa));
    Some((
        wa,
        if piece.pointed {
            found.on_points()
        } else {
            found
        },
    ))
}

/// How far a bath evens out, worked out once for pieces of one density.
pub(crate) struct Reaches {
    density: f64,
    reach: f64,
    ln: f64,
}

impl Reaches {
    pub(crate) fn new() -> Self {
        Self {
            density: f64::NAN,
            reach: f64::NAN,
            ln: f64::NAN,
        }
    }

    /// At a density, with its natural logarithm; not numbers where it is not known.
    #[inline]
    pub(crate) fn at(&mut self, bath: &PlanBath, inputs: &Inputs, density: f64) -> (f64, f64) {
        if density != self.density {
            self.density = density;
            self.reach = si(reach(bath, inputs, CurrentDensity::from_si(density)));
            self.ln = libm::log(self.reach);
        }
        (self.reach, self.ln)
    }
}

/// Thinnest over mean: the person's own ratio, or the `table`'s with what a thin finish varies by. No exponent of the
/// efficiency is counted on here: a thinnest place is kept on the safe side. Not a number where none is known.
#[inline]
pub(crate) fn thin_over_mean(
    piece: &PlanPiece,
    bath: &PlanBath,
    inputs: &Inputs,
    table: f64,
) -> f64 {
    match piece.own_ratio {
        Some(own) => inputs.get::<Ratio>(own).si(),
        None => table * bath.batch.map_or(1.0, |id| inputs.get::<Ratio>(id).si()),
    }
}
