//! The fastest an ion can arrive.

use crate::faraday::FARADAY;
use crate::solution::Stirring;
use crate::source::{Cited, MethodId, Source};
use quantity::{Concentration, CurrentDensity, Diffusivity, Length, MolarMass, Quantity};

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
