//! The quantities. Each is a number in its SI unit behind a private field.

use crate::unit::{self, Unit};
use core::ops::{Add, Div, Mul, Sub};
use serde::{Serialize, Serializer};

/// A kind of quantity: a number in SI, and the units people use for it.
pub trait Quantity: Copy + PartialEq + PartialOrd + core::fmt::Debug + 'static {
    /// What a JSON key holding this quantity ends in, without the underscore: `A_per_m2`.
    const KEY_UNIT: &'static str;
    /// The units it is read and printed in; the first is the studio's usual one.
    const UNITS: &'static [Unit];
    /// From a number in SI.
    fn from_si(value: f64) -> Self;
    /// The number in SI.
    fn si(self) -> f64;
    /// From a number in `unit`.
    fn from_unit(value: f64, unit: &Unit) -> Self {
        Self::from_si(unit.to_si(value))
    }
    /// The number in `unit`.
    fn in_unit(self, unit: &Unit) -> f64 {
        unit.from_si(self.si())
    }
}

/// A quantity whose kind is known only by its key unit: for lists of unlike values.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AnyQuantity {
    /// As in [`Quantity::KEY_UNIT`].
    pub key_unit: &'static str,
    /// The number in SI.
    pub si: f64,
}

impl<Q: Quantity> From<Q> for AnyQuantity {
    fn from(q: Q) -> Self {
        Self {
            key_unit: Q::KEY_UNIT,
            si: q.si(),
        }
    }
}

/// Zero without a sign: `-0` never leaves the program.
pub fn unsigned_zero(value: f64) -> f64 {
    if value == 0.0 { 0.0 } else { value }
}

macro_rules! kind {
    ($(#[$doc:meta])* $name:ident, $key:literal, $units:expr) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Default)]
        pub struct $name(f64);

        impl $name {
            /// From a number in SI, usable in constants.
            pub const fn of_si(value: f64) -> Self {
                Self(value)
            }
        }

        impl Quantity for $name {
            const KEY_UNIT: &'static str = $key;
            const UNITS: &'static [Unit] = $units;
            fn from_si(value: f64) -> Self {
                Self(value)
            }
            fn si(self) -> f64 {
                self.0
            }
        }

        impl Serialize for $name {
            fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
                s.serialize_f64(unsigned_zero(self.0))
            }
        }
    };
}

/// Kinds that add up, scale by a plain number, and divide by their own kind to a plain number.
macro_rules! additive {
    ($($name:ident),+ $(,)?) => {$(
        impl Add for $name {
            type Output = Self;
            fn add(self, other: Self) -> Self {
                Self(self.0 + other.0)
            }
        }
        impl Sub for $name {
            type Output = Self;
            fn sub(self, other: Self) -> Self {
                Self(self.0 - other.0)
            }
        }
        impl Mul<f64> for $name {
            type Output = Self;
            fn mul(self, factor: f64) -> Self {
                Self(self.0 * factor)
            }
        }
        impl Div<f64> for $name {
            type Output = Self;
            fn div(self, divisor: f64) -> Self {
                Self(self.0 / divisor)
            }
        }
        impl Div for $name {
            type Output = f64;
            fn div(self, other: Self) -> f64 {
                self.0 / other.0
            }
        }
        impl core::iter::Sum for $name {
            fn sum<I: Iterator<Item = Self>>(iter: I) -> Self {
                iter.fold(Self(0.0), |a, b| a + b)
            }
        }
    )+};
}

kind!(/// Electric current, ampere.
    Current, "A", unit::CURRENT);
kind!(/// Current over the wetted area of the work, ampere per square metre.
    CurrentDensity, "A_per_m2", unit::CURRENT_DENSITY);
kind!(/// Wetted area of the work: all metal or coat touching the solution, square metre.
    WorkArea, "m2", unit::AREA);
kind!(/// Wetted area of the counter electrode, square metre.
    CounterArea, "m2", unit::AREA);
kind!(/// Open surface of a bath, square metre.
    BathSurface, "m2", unit::AREA);
kind!(/// Charge, coulomb.
    Charge, "C", unit::CHARGE);
kind!(/// A length of time, second.
    Time, "s", unit::TIME);
kind!(/// Mass, kilogram.
    Mass, "kg", unit::MASS);
kind!(/// A size of a piece, metre.
    Length, "m", unit::LENGTH);
kind!(/// Thickness of a layer or depth of an etch, metre.
    Thickness, "m", unit::THICKNESS);
kind!(/// Volume, cubic metre.
    Volume, "m3", unit::VOLUME);
kind!(/// Density of a metal or a liquid, kilogram per cubic metre.
    Density, "kg_per_m3", unit::DENSITY);
kind!(/// Mass of something dissolved in a volume of bath, kilogram per cubic metre.
    Concentration, "kg_per_m3", unit::CONCENTRATION);
kind!(/// Voltage, volt.
    Voltage, "V", unit::VOLTAGE);
kind!(/// Resistance, ohm.
    Resistance, "ohm", unit::RESISTANCE);
kind!(/// Resistance of a square of a thin coat, ohm.
    SheetResistance, "ohm_sq", unit::SHEET_RESISTANCE);
kind!(/// Resistance of an area of surface, ohm square metre.
    AreaResistance, "ohm_m2", unit::AREA_RESISTANCE);
kind!(/// Conductivity of a solution, siemens per metre.
    Conductivity, "S_per_m", unit::CONDUCTIVITY);
kind!(/// A temperature as a thermometer reads it, kelvin. Temperatures do not add.
    Temperature, "K", unit::TEMPERATURE);
kind!(/// A difference of two temperatures, kelvin.
    TemperatureDifference, "K", unit::TEMPERATURE_DIFFERENCE);
kind!(/// Electrochemical equivalent: mass moved by a charge, kilogram per coulomb.
    MassPerCharge, "kg_per_C", unit::MASS_PER_CHARGE);
kind!(/// Charge passed through an area of the work, coulomb per square metre.
    ChargePerArea, "C_per_m2", unit::CHARGE_PER_AREA);
kind!(/// Mass laid on an area of the work, kilogram per square metre.
    MassPerArea, "kg_per_m2", unit::MASS_PER_AREA);
kind!(/// Growth of a layer in time, metre per second.
    GrowthRate, "m_per_s", unit::GROWTH_RATE);
kind!(/// Power, watt.
    Power, "W", unit::POWER);
kind!(/// Mass of a mole, kilogram per mole.
    MolarMass, "kg_per_mol", unit::MOLAR_MASS);
kind!(/// Charge of a mole of electrons, coulomb per mole.
    MolarCharge, "C_per_mol", unit::MOLAR_CHARGE);
kind!(/// How fast an ion spreads by itself, square metre per second.
    Diffusivity, "m2_per_s", unit::DIFFUSIVITY);
kind!(/// Resistivity of a metal, ohm metre.
    Resistivity, "ohm_m", unit::RESISTIVITY);
kind!(/// Volume of an additive used up by a charge, cubic metre per coulomb.
    VolumePerCharge, "m3_per_C", unit::VOLUME_PER_CHARGE);
kind!(/// Volume of bath that leaves with an area of the work, cubic metre per square metre.
    VolumePerArea, "m3_per_m2", unit::VOLUME_PER_AREA);
kind!(/// Current through a volume of bath, ampere per cubic metre.
    CurrentPerVolume, "A_per_m3", unit::CURRENT_PER_VOLUME);
kind!(/// Acidity on the pH scale, a plain number. Acidities do not add.
    Acidity, "pH", unit::ACIDITY);
kind!(/// Price of a metal in the person's own money, per kilogram.
    MoneyPerMass, "money_per_kg", unit::MONEY_PER_MASS);
kind!(/// Money, in whatever the person counts in.
    Money, "money", unit::MONEY);
kind!(/// A part of a whole, 0 to 1 (an anodic efficiency may pass 1).
    Fraction, "frac", unit::FRACTION);
kind!(/// A plain factor: one quantity over another of its kind.
    Ratio, "ratio", unit::RATIO);

additive!(
    Current,
    CurrentDensity,
    WorkArea,
    CounterArea,
    BathSurface,
    Charge,
    Time,
    Mass,
    Length,
    Thickness,
    Volume,
    Voltage,
    Resistance,
    AreaResistance,
    TemperatureDifference,
    ChargePerArea,
    MassPerArea,
    GrowthRate,
    Power,
    MassPerCharge,
    Density,
    Concentration,
    Conductivity,
);

impl Current {
    /// From ampere.
    pub const fn ampere(value: f64) -> Self {
        Self(value)
    }
    /// From milliampere.
    pub const fn milliampere(value: f64) -> Self {
        Self(value / 1000.0)
    }
}

impl CurrentDensity {
    /// From ampere per square decimetre.
    pub const fn amp_per_dm2(value: f64) -> Self {
        Self(value * 100.0)
    }
}

impl WorkArea {
    /// From square centimetre.
    pub const fn cm2(value: f64) -> Self {
        Self(value / 10_000.0)
    }
}

impl Time {
    /// From seconds.
    pub const fn seconds(value: f64) -> Self {
        Self(value)
    }
    /// From minutes.
    pub const fn minutes(value: f64) -> Self {
        Self(value * 60.0)
    }
    /// From hours.
    pub const fn hours(value: f64) -> Self {
        Self(value * 3600.0)
    }
}

impl Length {
    /// From millimetre.
    pub const fn mm(value: f64) -> Self {
        Self(value / 1000.0)
    }
    /// The area of a rectangle of the work.
    pub fn by(self, other: Length) -> WorkArea {
        WorkArea(self.0 * other.0)
    }
}

impl Thickness {
    /// From micrometre.
    pub const fn um(value: f64) -> Self {
        Self(value / 1e6)
    }
    /// The same distance as a size of the piece.
    pub const fn as_length(self) -> Length {
        Length(self.0)
    }
}

impl Mass {
    /// From gram.
    pub const fn gram(value: f64) -> Self {
        Self(value / 1000.0)
    }
}

impl Density {
    /// From gram per cubic centimetre.
    pub const fn g_per_cm3(value: f64) -> Self {
        Self(value * 1000.0)
    }
}

impl Concentration {
    /// From gram per litre.
    pub const fn g_per_l(value: f64) -> Self {
        Self(value)
    }
}

impl Conductivity {
    /// From siemens per centimetre.
    pub const fn s_per_cm(value: f64) -> Self {
        Self(value * 100.0)
    }
}

impl Voltage {
    /// From volt.
    pub const fn volt(value: f64) -> Self {
        Self(value)
    }
}

impl MolarMass {
    /// From gram per mole.
    pub const fn g_per_mol(value: f64) -> Self {
        Self(value / 1000.0)
    }
}

impl Temperature {
    /// From degrees Celsius.
    pub const fn celsius(value: f64) -> Self {
        Self(value + 273.15)
    }
}

impl Resistivity {
    /// From nanoohm metre.
    pub const fn nohm_m(value: f64) -> Self {
        Self(value / 1e9)
    }
}

impl VolumePerCharge {
    /// From millilitre per ampere hour.
    pub const fn ml_per_ah(value: f64) -> Self {
        Self(value / 3.6e9)
    }
}

impl VolumePerArea {
    /// From millilitre per square decimetre.
    pub const fn ml_per_dm2(value: f64) -> Self {
        Self(value / 1e4)
    }
}

impl CurrentPerVolume {
    /// From ampere per litre.
    pub const fn amp_per_l(value: f64) -> Self {
        Self(value * 1000.0)
    }
}

impl Acidity {
    /// From the pH.
    pub const fn ph(value: f64) -> Self {
        Self(value)
    }
}
