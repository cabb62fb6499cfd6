//! Metals and alloys of the person's own, that stand inside the Job.

use crate::faraday::{FARADAY, equivalent};
use quantity::{Density, Fraction, MassPerCharge, MolarMass, Quantity};

/// A metal as far as charge and thickness are concerned.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OwnMetal {
    /// Mass moved per charge at an efficiency of 1, above 0.
    pub equivalent: MassPerCharge,
    /// Density, above 0.
    pub density: Density,
}

/// A part of an alloy of the person's own.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OwnPart {
    /// Mass of a mole, above 0.
    pub molar_mass: MolarMass,
    /// Charges per atom, 1 to 8.
    pub valence: u8,
    /// Share of the mass, above 0 to 1.
    pub share: Fraction,
}

/// Why no metal could be made of what was given.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OwnProblem {
    /// No part at all.
    NoParts,
    /// A molar mass that is not above 0 (this part, counted from 0).
    MolarMass(usize),
    /// A valence outside 1 to 8 (this part).
    Valence(usize),
    /// A share that is not above 0 to 1 (this part).
    Share(usize),
    /// Shares that do not add up to 1 within [`SUM_SLACK`].
    Sum,
    /// A density that is not above 0.
    Density,
    /// A mass per charge that is not above 0.
    Equivalent,
}

/// How far the shares may add up from 1 before an alloy is refused; within it they are scaled to 1.
pub const SUM_SLACK: f64 = 0.02;

/// The highest valence accepted.
pub const VALENCE_MOST: u8 = 8;

fn positive(value: f64) -> bool {
    value > 0.0 && value.is_finite()
}

impl OwnMetal {
    /// A pure metal.
    pub fn pure(molar_mass: MolarMass, valence: u8, density: Density) -> Result<Self, OwnProblem> {
        let all = Fraction::of_si(1.0);
        Self::alloy(
            &[OwnPart {
                molar_mass,
                valence,
                share: all,
            }],
            density,
        )
    }

    /// An alloy whose parts leave in proportion.
    pub fn alloy(parts: &[OwnPart], density: Density) -> Result<Self, OwnProblem> {
        if parts.is_empty() {
            return Err(OwnProblem::NoParts);
        }
        let mut whole = 0.0;
        let mut per_mass = 0.0;
        for (n, part) in parts.iter().enumerate() {
            if !positive(part.molar_mass.si()) {
                return Err(OwnProblem::MolarMass(n));
            }
            if !(1..=VALENCE_MOST).contains(&part.valence) {
                return Err(OwnProblem::Valence(n));
            }
            let share = part.share.si();
            if !(share > 0.0 && share <= 1.0) {
                return Err(OwnProblem::Share(n));
            }
            whole += share;
            per_mass += share * f64::from(part.valence) / part.molar_mass.si();
        }
        if (whole - 1.0).abs() > SUM_SLACK {
            return Err(OwnProblem::Sum);
        }
        let equivalent = match parts {
            [only] => equivalent(only.molar_mass, only.valence),
            _ => MassPerCharge::from_si(whole / (FARADAY.value.si() * per_mass)),
        };
        Self::by_equivalent(equivalent, density)
    }

    /// From the mass per charge that a solution's own sheet states, at an efficiency of 1.
    pub fn by_equivalent(equivalent: MassPerCharge, density: Density) -> Result<Self, OwnProblem> {
        if !positive(equivalent.si()) {
            return Err(OwnProblem::Equivalent);
        }
        if !positive(density.si()) {
            return Err(OwnProblem::Density);
        }
        Ok(Self {
            equivalent,
            density,
        })
    }
}

/// The density of an alloy nobody weighed, from its parts' shares and densities: 1 / sum(share / density), the shares
/// scaled to 1. None without parts or where one is not above 0. Real alloys lie within about 4 %.
pub fn mixed_density(parts: &[(Fraction, Density)]) -> Option<Density> {
    let mut whole = 0.0;
    let mut volume = 0.0;
    for (share, density) in parts {
        if !(positive(share.si()) && positive(density.si())) {
            return None;
        }
        whole += share.si();
        volume += share.si() / density.si();
    }
    (volume > 0.0).then(|| Density::from_si(whole / volume))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_cannot_be_is_refused() {
        let (m, d) = (MolarMass::g_per_mol(63.546), Density::g_per_cm3(8.96));
        assert_eq!(OwnMetal::pure(m, 0, d), Err(OwnProblem::Valence(0)));
        assert_eq!(
            OwnMetal::pure(m, 2, Density::of_si(f64::NAN)),
            Err(OwnProblem::Density)
        );
        let half = OwnPart {
            molar_mass: m,
            valence: 2,
            share: Fraction::of_si(0.5),
        };
        assert_eq!(OwnMetal::alloy(&[half], d), Err(OwnProblem::Sum));
        assert_eq!(OwnMetal::alloy(&[], d), Err(OwnProblem::NoParts));
    }
}
