//! The table of products: which kinds multiply to which. A missing product is a line to add here, never a bare number
//! in a formula.
//!
//! Kinds that do not multiply are refused by the compiler:
//!
//! ```compile_fail,E0308
//! use quantity::*;
//! // The counter electrode's area never sets the work's current.
//! let i: Current = CurrentDensity::amp_per_dm2(1.0) * CounterArea::of_si(0.01);
//! ```
//!
//! ```
//! use quantity::*;
//! let i: Current = CurrentDensity::amp_per_dm2(1.0) * WorkArea::cm2(100.0);
//! assert_eq!(i.si(), 1.0);
//! ```

use crate::kinds::*;
use core::ops::{Div, Mul};

macro_rules! product {
    ($($a:ident * $b:ident = $c:ident;)+) => {$(
        impl Mul<$b> for $a {
            type Output = $c;
            fn mul(self, other: $b) -> $c {
                $c::from_si(self.si() * other.si())
            }
        }
        impl Div<$b> for $c {
            type Output = $a;
            fn div(self, other: $b) -> $a {
                $a::from_si(self.si() / other.si())
            }
        }
    )+};
}

product! {
    CurrentDensity * WorkArea = Current;
    WorkArea * CurrentDensity = Current;
    Current * Time = Charge;
    Time * Current = Charge;
    CurrentDensity * Time = ChargePerArea;
    Time * CurrentDensity = ChargePerArea;
    MassPerCharge * Charge = Mass;
    Charge * MassPerCharge = Mass;
    MassPerCharge * ChargePerArea = MassPerArea;
    Density * Thickness = MassPerArea;
    Thickness * Density = MassPerArea;
    MassPerArea * WorkArea = Mass;
    ChargePerArea * WorkArea = Charge;
    GrowthRate * Time = Thickness;
    Time * GrowthRate = Thickness;
    Voltage * Current = Power;
    Resistance * Current = Voltage;
    CurrentDensity * AreaResistance = Voltage;
    AreaResistance * CurrentDensity = Voltage;
    MassPerCharge * MolarCharge = MolarMass;
    Density * Volume = Mass;
    MoneyPerMass * Mass = Money;
    VolumePerCharge * Charge = Volume;
    VolumePerArea * WorkArea = Volume;
    CurrentPerVolume * Volume = Current;
}

impl Div<Conductivity> for Length {
    type Output = AreaResistance;
    /// The resistance of a layer of solution this long, by area.
    fn div(self, kappa: Conductivity) -> AreaResistance {
        AreaResistance::from_si(self.si() / kappa.si())
    }
}

impl Mul<AreaResistance> for Conductivity {
    type Output = Length;
    /// The evenness length of a bath: conductivity times polarisation resistance.
    fn mul(self, r: AreaResistance) -> Length {
        Length::from_si(self.si() * r.si())
    }
}

impl Mul<Volume> for Concentration {
    type Output = Mass;
    /// The mass of what is dissolved. (Mass over volume is a [`Density`]; a concentration is never the quotient.)
    fn mul(self, volume: Volume) -> Mass {
        Mass::from_si(self.si() * volume.si())
    }
}
