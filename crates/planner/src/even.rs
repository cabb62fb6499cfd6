//! What a bath makes of a density: the share of it that moves metal, and how evenly.

use crate::body::Body;
use crate::inputs::{InputId, Inputs};
use crate::plan::{PlanBath, PlanPiece};
use crate::run::{Rates, si};
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

/// How a piece grows by its row of the table; unknown without one.
pub(crate) fn curve(piece: &PlanPiece, row: Option<Row>) -> Curve {
    let curve = row.map_or(Curve::UNKNOWN, Curve::of);
    if piece.pointed {
        curve.on_points()
    } else {
        curve
    }
}

/// How evenly a piece of this scale grows where the bath evens out so far: from its row of the table by its Wagner number.
pub fn spread_on(
    piece: &PlanPiece,
    row: Option<Row>,
    scale: Length,
    reach: Option<Length>,
) -> Option<(Ratio, Ends)> {
    let wa = wagner(reach?, scale);
    Some((wa, curve(piece, Some(row?)).ends(&Along::of(wa))))
}

/// How evenly a bath lays metal with one set of values: worked out once for pieces of one density.
pub(crate) struct Reaches<'a> {
    bath: &'a PlanBath,
    inputs: &'a Inputs,
    batch: f64,
    density: f64,
    reach: f64,
    ln: f64,
}

impl<'a> Reaches<'a> {
    pub(crate) fn new(bath: &'a PlanBath, inputs: &'a Inputs) -> Self {
        Self {
            bath,
            inputs,
            batch: bath.batch.map_or(1.0, |id| inputs.get::<Ratio>(id).si()),
            density: f64::NAN,
            reach: f64::NAN,
            ln: f64::NAN,
        }
    }

    /// Asks at a density.
    pub(crate) fn at(&mut self, density: f64) {
        if density != self.density {
            self.density = density;
            let i = CurrentDensity::from_si(density);
            self.reach = si(reach(self.bath, self.inputs, i));
            self.ln = libm::log(self.reach);
        }
    }

    /// How far the bath evens out at the density that was asked last; not a number where it is not known.
    pub(crate) fn reach(&self) -> f64 {
        self.reach
    }

    /// Where a piece stands in the table at that density.
    #[inline]
    pub(crate) fn along(&self, body: &Body) -> Along {
        Along::of_ln(self.ln - body.ln_scale)
    }

    /// Thinnest over mean of a piece at that density; not a number where it is not known.
    // For each piece at every stage of every sample: the call would cost half as much as what it does.
    #[inline(always)]
    pub(crate) fn thin_ratio(&self, body: &Body, rates: &Rates) -> f64 {
        let along = self.along(body);
        self.thin_over_mean(rates.own_ratio, rates.curve.thinnest(&along).si())
    }

    /// Thinnest over mean: the person's `own` ratio, or the `table`'s with what a thin finish varies by. No exponent of the
    /// efficiency is counted on here: a thinnest place is kept on the safe side. Not a number where none is known.
    #[inline]
    pub(crate) fn thin_over_mean(&self, own: Option<InputId>, table: f64) -> f64 {
        match own {
            Some(own) => self.inputs.get::<Ratio>(own).si(),
            None => table * self.batch,
        }
    }
}
