//! How much a surface resists taking current: the polarisation that evens a layer out.

use crate::source::{Cited, MethodId, Source};
use quantity::{AreaResistance, Conductivity, CurrentDensity, Length, Voltage};

/// Slope per decade over 2.303 for a transfer coefficient of one half at room temperature, 0.051 V: RT / (0.5 F).
pub const TAFEL_HALF: Cited<Voltage> = Cited::new(
    Voltage::volt(0.051),
    Source::Computed {
        method: MethodId::Derived,
    },
);

/// The same for a transfer coefficient of one fifth (silver from hydantoin), 0.128 V.
pub const TAFEL_FIFTH: Cited<Voltage> = Cited::new(
    Voltage::volt(0.128),
    Source::Computed {
        method: MethodId::Derived,
    },
);

/// The same for acid gold: between the 190 and the 470 mV per decade measured on hard and soft gold, 0.15 V.
pub const TAFEL_ACID_GOLD: Cited<Voltage> = Cited::new(
    Voltage::volt(0.15),
    Source::Computed {
        method: MethodId::Derived,
    },
);

/// The same for copper that dissolves into sulfate, 40 mV per decade, 0.0174 V.
pub const TAFEL_COPPER_DISSOLVING: Cited<Voltage> =
    Cited::new(Voltage::volt(0.0174), Source::FromMemory);

/// The same for silver that dissolves into nitrate, nearly reversible, RT / F, 0.026 V.
pub const TAFEL_SILVER_DISSOLVING: Cited<Voltage> = Cited::new(
    Voltage::volt(0.026),
    Source::Computed {
        method: MethodId::Derived,
    },
);

/// Polarisation resistance b / i of a surface at `i`.
pub fn polarisation_resistance(slope: Voltage, i: CurrentDensity) -> AreaResistance {
    slope / i
}

/// Evenness length of a bath at `i`: conductivity x polarisation resistance. The longer beside the piece, the evener.
pub fn evenness_length(kappa: Conductivity, slope: Voltage, i: CurrentDensity) -> Length {
    kappa * polarisation_resistance(slope, i)
}
