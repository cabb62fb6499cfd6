//! Faraday's laws, both ways.

use crate::source::{Cited, Source, WorkId};
use quantity::{Charge, MassPerArea};
use quantity::{
    Current, CurrentDensity, Density, Fraction, GrowthRate, Mass, MassPerCharge, MolarCharge,
    MolarMass, Quantity, Thickness, Time, WorkArea,
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

/// The layer that `time` at the mean density `i` gives; the depth, in an etch.
pub fn thickness(
    equivalent: MassPerCharge,
    density: Density,
    efficiency: Fraction,
    i: CurrentDensity,
    time: Time,
) -> Thickness {
    growth_rate(equivalent, density, efficiency, i) * time
}

/// The time in which `i` gives `thickness`. None where nothing grows.
pub fn time_at(
    equivalent: MassPerCharge,
    density: Density,
    efficiency: Fraction,
    thickness: Thickness,
    i: CurrentDensity,
) -> Option<Time> {
    let rate = growth_rate(equivalent, density, efficiency, i);
    (rate.si() > 0.0).then(|| time_for(thickness, rate))
}

/// The current that moves `mass` in `time`. None unless both time and efficiency are above 0.
pub fn current_for(
    equivalent: MassPerCharge,
    efficiency: Fraction,
    mass: Mass,
    time: Time,
) -> Option<Current> {
    let moved = equivalent.si() * efficiency.si();
    (moved > 0.0 && time.si() > 0.0).then(|| charge(equivalent, efficiency, mass) / time)
}

/// The time in which `current` moves `mass`. None unless both current and efficiency are above 0.
pub fn time_for_mass(
    equivalent: MassPerCharge,
    efficiency: Fraction,
    mass: Mass,
    current: Current,
) -> Option<Time> {
    let moved = equivalent.si() * efficiency.si();
    (moved > 0.0 && current.si() > 0.0).then(|| charge(equivalent, efficiency, mass) / current)
}

/// Mass of a layer on an area.
pub fn mass_of(thickness: Thickness, density: Density, area: WorkArea) -> Mass {
    density * thickness * area
}

/// Layer that a mass makes on an area. None unless the area is above 0.
pub fn thickness_of(mass: Mass, density: Density, area: WorkArea) -> Option<Thickness> {
    let laid: MassPerArea = if area.si() > 0.0 {
        mass / area
    } else {
        return None;
    };
    Some(laid / density)
}

/// Share of the charge that moved the mass that was weighed. None unless the charge is above 0.
pub fn efficiency_of(equivalent: MassPerCharge, mass: Mass, charge: Charge) -> Option<Fraction> {
    let whole: Mass = equivalent * charge;
    (whole.si() > 0.0).then(|| Fraction::from_si(mass / whole))
}
