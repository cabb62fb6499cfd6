//! The share of the charge that moves metal, and how it changes with density.

use crate::solution::{Electrode, Solution};
use crate::source::Datum;
use quantity::{Band, CurrentDensity, Fraction, Quantity, Ratio};

/// The most an efficiency can be: 1 where metal is laid down; 1.1 where it is dissolved, since grains may fall off and
/// some metal leave at a lower valence.
pub const fn highest(work: Electrode) -> Fraction {
    match work {
        Electrode::Cathode => Fraction::of_si(1.0),
        Electrode::Anode => Fraction::of_si(1.1),
    }
}

/// Whether a share can be an efficiency: above 0, at most [`highest`].
pub fn possible(efficiency: Fraction, work: Electrode) -> bool {
    efficiency.si() > 0.0 && efficiency.si() <= highest(work).si()
}

/// Efficiency at `i`: typical x (i / at)^-exponent, held within `limits`. An exponent of 0 gives the typical value
/// itself, whatever `i`; at no current the upper limit stands where the exponent is above 0.
pub fn at(
    typical: Fraction,
    exponent: Ratio,
    typical_at: CurrentDensity,
    i: CurrentDensity,
    limits: (Fraction, Fraction),
) -> Fraction {
    let m = exponent.si();
    let (low, high) = (limits.0.si(), limits.1.si());
    if m == 0.0 {
        return typical;
    }
    let flows = i.si() > 0.0;
    if !flows {
        return limits.1;
    }
    let e = typical.si() * libm::pow(i.si() / typical_at.si(), -m);
    Fraction::from_si(if e < low {
        low
    } else if e > high {
        high
    } else {
        e
    })
}

/// Where on the piece an efficiency is wanted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Spot {
    /// The whole piece, at its mean density: the exponent applies.
    Mean,
    /// The thinnest place: no exponent, so that a falling efficiency is never counted on to even a layer out.
    Thinnest,
}

/// The efficiency curve of a solution.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Curve {
    /// At the typical density.
    pub typical: Fraction,
    /// Lowest and highest.
    pub limits: (Fraction, Fraction),
    /// The typical density.
    pub typical_at: CurrentDensity,
    /// How fast it falls as the density rises, 0 where it is not known to.
    pub exponent: Ratio,
}

impl Curve {
    /// The solution's. None where its efficiency or its typical density is not known.
    pub fn of(solution: &Solution) -> Option<Self> {
        let limits = match &solution.efficiency {
            Datum::Unknown => return None,
            Datum::Value(v) => (v.value, v.value),
            Datum::Band(b) => {
                let band: &Band<Fraction> = &b.value;
                (band.min, band.max)
            }
        };
        Some(Self {
            typical: solution.efficiency.typical()?,
            limits,
            typical_at: solution.window_still.typical()?,
            exponent: solution.exponent(Spot::Mean),
        })
    }

    /// Efficiency at the mean density `i`.
    pub fn at(&self, i: CurrentDensity) -> Fraction {
        at(self.typical, self.exponent, self.typical_at, i, self.limits)
    }
}

/// Thinnest over mean layer, where the densities there stand as `ratio` (0 to 1): ratio^(1 - exponent).
pub fn layer_ratio(ratio: Ratio, exponent: Ratio) -> Ratio {
    Ratio::from_si(libm::pow(ratio.si(), 1.0 - exponent.si()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_current_gives_the_upper_limit() {
        let limits = (Fraction::of_si(0.2), Fraction::of_si(0.5));
        let e = |m, i| {
            let (typical, at_typical) = (Fraction::of_si(0.35), CurrentDensity::of_si(80.0));
            at(
                typical,
                Ratio::of_si(m),
                at_typical,
                CurrentDensity::of_si(i),
                limits,
            )
            .si()
        };
        assert_eq!(e(0.3, 0.0), 0.5);
        assert_eq!(e(0.3, f64::NAN), 0.5);
        assert_eq!(e(0.0, 0.0), 0.35);
        assert_eq!(e(0.3, 1e9), 0.2);
    }
}
