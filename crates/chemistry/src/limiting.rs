//! The fastest an ion can arrive.

use crate::element::element_of;
use crate::faraday::FARADAY;
use crate::solution::{Solution, Stirring};
use crate::source::{Cited, MethodId, Source};
use quantity::{
    Concentration, CurrentDensity, Diffusivity, Length, MolarMass, Quantity, Temperature,
    TemperatureDifference,
};

/// Share of the limiting density above which copper grows trees and powder.
pub const TREE_SHARE: Cited<f64> = Cited::new(
    0.7,
    Source::Published {
        work: crate::source::WorkId::Imf70,
        locator: "abstract",
    },
);

/// Thickness of the layer at the surface through which ions arrive by diffusion alone.
pub fn diffusion_layer(stirring: Stirring) -> Cited<Length> {
    let mm = match stirring {
        Stirring::Still => 0.2,
        Stirring::Gentle => 0.1,
        Stirring::Vigorous => 0.05,
    };
    Cited::new(
        Length::mm(mm),
        Source::Computed {
            method: MethodId::Derived,
        },
    )
}

/// Limiting density z F D c / delta for metal at `metal` (mass of the metal per volume).
pub fn limiting_density(
    valence: u8,
    diffusivity: Diffusivity,
    metal: Concentration,
    molar_mass: MolarMass,
    layer: Length,
) -> CurrentDensity {
    let moles = metal.si() / molar_mass.si();
    CurrentDensity::from_si(
        f64::from(valence) * FARADAY.value.si() * diffusivity.si() * moles / layer.si(),
    )
}

/// Activation energy over the gas constant of copper's diffusion in acid sulfate, kelvin: 19.2 kJ/mol, measured from 40
/// to 65 C; used for every ion, for want of its own.
pub const DIFFUSION_ACTIVATION: Cited<TemperatureDifference> = Cited::new(
    TemperatureDifference::of_si(19_200.0 / (1.380_649e-23 * 6.022_140_76e23)),
    Source::Published {
        work: crate::source::WorkId::Moats2000,
        locator: "abstract: 19.2 kJ/mol",
    },
);

/// The temperature that the catalogue's diffusivities stand at.
pub const DIFFUSIVITY_AT: Temperature = Temperature::celsius(25.0);

/// A diffusivity of the catalogue at another temperature: D exp(a (1/T0 - 1/T)). `at` above 0 K.
pub fn diffusivity_at(diffusivity: Diffusivity, at: Temperature) -> Diffusivity {
    let a = DIFFUSION_ACTIVATION.value.si();
    let exponent = a * (1.0 / DIFFUSIVITY_AT.si() - 1.0 / at.si());
    Diffusivity::from_si(diffusivity.si() * libm::exp(exponent))
}

/// Limiting density of a solution for its metal at `metal` (mass of the metal per volume). None where the solution's
/// metal is no element or its ion's diffusivity is not known, as for all complexes.
pub fn limiting_in(
    solution: &Solution,
    metal: Concentration,
    at: Temperature,
    stirring: Stirring,
) -> Option<CurrentDensity> {
    let diffusivity = diffusivity_at(solution.diffusivity.typical()?, at);
    let molar_mass = element_of(solution.metal)?.molar_mass.value;
    let layer = diffusion_layer(stirring).value;
    Some(limiting_density(
        solution.valence,
        diffusivity,
        metal,
        molar_mass,
        layer,
    ))
}

/// The density at which salt begins to stay on a dissolving sheet: z F D (saturation - bath) / delta. None where the
/// bath is as strong as the saturation or stronger.
pub fn salt_film_density(
    valence: u8,
    diffusivity: Diffusivity,
    bath: Concentration,
    saturation: Concentration,
    molar_mass: MolarMass,
    layer: Length,
) -> Option<CurrentDensity> {
    let room = saturation - bath;
    (room.si() > 0.0).then(|| limiting_density(valence, diffusivity, room, molar_mass, layer))
}
