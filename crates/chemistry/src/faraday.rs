//! Faraday's laws, both ways.

use crate::source::{Cited, Source, WorkId};
use quantity::{Charge, MassPerArea};
use quantity::{
    CurrentDensity, Density, Fraction, GrowthRate, Mass, MassPerCharge, MolarCharge, MolarMass,
    Quantity, Thickness, Time,
};

/// Charge of a mole of electrons: e times N_A, both exact since 2019.
pub const FARADAY: Cited<MolarCharge> = Cited::new(
    MolarCharge::of_si(1.602_176_634e-19 * 6.022_140_76e23),
    Source::Published {
        work: WorkId::SiBrochure9,
        locator: "sec. 2.2, defining constants; F = e N_A",
    },
);

/// Electrochemical equivalent of a pure metal: M / (z F).
pub fn equivalent(molar_mass: MolarMass, valence: u8) -> MassPerCharge {
    molar_mass / FARADAY.value / f64::from(valence)
}

/// Growth of a layer at full wetted area: equivalent x efficiency x i / density.
pub fn growth_rate(
    equivalent: MassPerCharge,
    density: Density,
    efficiency: Fraction,
    i: CurrentDensity,
) -> GrowthRate {
    // Through one second, so that the units stay in the table of products.
    let laid: MassPerArea = equivalent * (i * Time::seconds(1.0));
    let grown: Thickness = laid / density;
    grown / Time::seconds(1.0) * efficiency.si()
}

/// Time to grow `thickness` at `rate`.
pub fn time_for(thickness: Thickness, rate: GrowthRate) -> Time {
    thickness / rate
}

/// The density that grows `thickness` in `time`.
pub fn density_for(
    equivalent: MassPerCharge,
    density: Density,
    efficiency: Fraction,
    thickness: Thickness,
    time: Time,
) -> CurrentDensity {
    let laid: MassPerArea = density * thickness;
    CurrentDensity::from_si(laid.si() / (equivalent.si() * efficiency.si() * time.si()))
}

/// Mass moved by a charge.
pub fn mass(equivalent: MassPerCharge, efficiency: Fraction, charge: Charge) -> Mass {
    equivalent * charge * efficiency.si()
}

/// Charge that moves a mass.
pub fn charge(equivalent: MassPerCharge, efficiency: Fraction, mass: Mass) -> Charge {
    Charge::from_si(mass.si() / (equivalent.si() * efficiency.si()))
}
