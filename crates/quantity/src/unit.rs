//! The units people type and read, as tables.

/// One unit: how it is written and what it is in SI. A value in it is `value * num / den + offset` in SI; numerator and
/// denominator are kept apart so that 18 mm is exactly the number 0.018.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Unit {
    /// As printed.
    pub symbol: &'static str,
    /// Other spellings that are read. Compared after dropping spaces, first as they stand, then lower-cased.
    pub also: &'static [&'static str],
    /// Numerator of the factor to SI.
    pub num: f64,
    /// Denominator of the factor to SI.
    pub den: f64,
    /// Added after scaling: only temperatures have one.
    pub offset: f64,
}

impl Unit {
    const fn new(symbol: &'static str, also: &'static [&'static str], num: f64, den: f64) -> Self {
        Self {
            symbol,
            also,
            num,
            den,
            offset: 0.0,
        }
    }

    /// A number in this unit, in SI.
    pub fn to_si(&self, value: f64) -> f64 {
        value * self.num / self.den + self.offset
    }

    /// A number in SI, in this unit.
    pub fn from_si(&self, value: f64) -> f64 {
        (value - self.offset) * self.den / self.num
    }
}

/// Finds a unit by its symbol as printed.
pub fn by_symbol(units: &'static [Unit], symbol: &str) -> Option<&'static Unit> {
    units.iter().find(|u| u.symbol == symbol)
}

// Factors are exact by definition: SI Brochure 9th ed. (prefixes, h, min), NIST SP 811 (2008) App. B.8 (inch, foot,
// ounce, troy ounce, pennyweight; from memory, compared with the pint library).
pub(crate) const CURRENT: &[Unit] = &[
    Unit::new("mA", &["milliamp", "milliamps"], 1.0, 1000.0),
    Unit::new("A", &["amp", "amps", "ampere"], 1.0, 1.0),
];
pub(crate) const CURRENT_DENSITY: &[Unit] = &[
    Unit::new("A/dm²", &["a/dm2", "a/dm^2"], 100.0, 1.0),
    Unit::new("mA/cm²", &["ma/cm2", "ma/cm^2"], 10.0, 1.0),
    Unit::new("A/m²", &["a/m2", "a/m^2"], 1.0, 1.0),
    Unit::new("A/ft²", &["a/ft2", "a/ft^2", "a/sqft"], 1e6, 92_903.04),
    Unit::new("mA/in²", &["ma/in2", "ma/in^2", "ma/sqin"], 1e3, 645.16),
    Unit::new("A/in²", &["a/in2", "a/in^2", "a/sqin"], 1e6, 645.16),
];
pub(crate) const AREA: &[Unit] = &[
    Unit::new("cm²", &["cm2", "cm^2", "sqcm"], 1.0, 1e4),
    Unit::new("mm²", &["mm2", "mm^2"], 1.0, 1e6),
    Unit::new("dm²", &["dm2", "dm^2"], 1.0, 1e2),
    Unit::new("m²", &["m2", "m^2"], 1.0, 1.0),
    Unit::new("in²", &["in2", "in^2", "sqin", "\"2"], 645.16, 1e6),
    Unit::new("ft²", &["ft2", "ft^2", "sqft"], 92_903.04, 1e6),
];
pub(crate) const CHARGE: &[Unit] = &[
    Unit::new("Ah", &[], 3600.0, 1.0),
    Unit::new("mAh", &[], 3.6, 1.0),
    Unit::new("A min", &["amin", "a·min"], 60.0, 1.0),
    Unit::new("C", &["coulomb"], 1.0, 1.0),
];
pub(crate) const TIME: &[Unit] = &[
    Unit::new("h", &["hr", "hrs", "hour", "hours"], 3600.0, 1.0),
    Unit::new("min", &["m", "mins", "minute", "minutes"], 60.0, 1.0),
    Unit::new("s", &["sec", "secs", "second", "seconds"], 1.0, 1.0),
];
pub(crate) const MASS: &[Unit] = &[
    Unit::new("g", &["gram", "grams"], 1.0, 1e3),
    Unit::new("mg", &[], 1.0, 1e6),
    Unit::new("kg", &[], 1.0, 1.0),
    Unit::new("oz", &[], 0.028_349_523_125, 1.0),
    Unit::new("ozt", &["troyoz", "oztroy"], 0.031_103_476_8, 1.0),
    Unit::new("dwt", &[], 0.001_555_173_84, 1.0),
    Unit::new("gr", &["grain", "grains"], 6.479_891e-5, 1.0),
    Unit::new("ct", &["carat", "carats"], 2e-4, 1.0),
    Unit::new("lb", &["lbs", "pound", "pounds"], 0.453_592_37, 1.0),
];
pub(crate) const LENGTH: &[Unit] = &[
    Unit::new("mm", &[], 1.0, 1e3),
    Unit::new("cm", &[], 1.0, 1e2),
    Unit::new("m", &[], 1.0, 1.0),
    Unit::new("in", &["inch", "inches", "\"", "″"], 254.0, 1e4),
    Unit::new("µm", &["um", "μm"], 1.0, 1e6),
];
pub(crate) const THICKNESS: &[Unit] = &[
    Unit::new("µm", &["um", "μm"], 1.0, 1e6),
    Unit::new("mm", &[], 1.0, 1e3),
    Unit::new("mil", &["mils", "thou"], 254.0, 1e7),
    Unit::new("µin", &["uin", "μin", "microinch"], 254.0, 1e10),
    Unit::new("in", &["inch", "\"", "″"], 254.0, 1e4),
];
pub(crate) const VOLUME: &[Unit] = &[
    Unit::new("L", &["l", "litre", "liter", "litres", "liters"], 1.0, 1e3),
    Unit::new("mL", &["ml"], 1.0, 1e6),
    Unit::new("US gal", &["usgal", "gal"], 3.785_411_784, 1e3),
    Unit::new("imp gal", &["impgal", "ukgal"], 4.546_09, 1e3),
    Unit::new("US fl oz", &["usfloz", "floz"], 29.573_529_562_5, 1e6),
];
pub(crate) const DENSITY: &[Unit] = &[
    Unit::new("g/cm³", &["g/cm3", "g/ml"], 1e3, 1.0),
    Unit::new("kg/m³", &["kg/m3"], 1.0, 1.0),
];
pub(crate) const CONCENTRATION: &[Unit] = &[
    Unit::new("g/L", &["g/l"], 1.0, 1.0),
    Unit::new("mg/L", &["mg/l"], 1.0, 1e3),
    Unit::new(
        "oz/US gal",
        &["oz/gal", "oz/usgal"],
        28.349_523_125,
        3.785_411_784,
    ),
    Unit::new(
        "ozt/US gal",
        &["ozt/gal", "ozt/usgal"],
        31.103_476_8,
        3.785_411_784,
    ),
    Unit::new(
        "oz/imp gal",
        &["oz/impgal", "oz/ukgal"],
        28.349_523_125,
        4.546_09,
    ),
];
pub(crate) const VOLTAGE: &[Unit] = &[
    Unit::new("V", &["volt", "volts"], 1.0, 1.0),
    Unit::new("mV", &[], 1.0, 1e3),
];
pub(crate) const RESISTANCE: &[Unit] = &[
    Unit::new("Ω", &["ohm", "ohms"], 1.0, 1.0),
    Unit::new("mΩ", &["mohm", "milliohm"], 1.0, 1e3),
    Unit::new("kΩ", &["kohm"], 1e3, 1.0),
    Unit::new("MΩ", &["Mohm", "megohm"], 1e6, 1.0),
];
pub(crate) const SHEET_RESISTANCE: &[Unit] =
    &[Unit::new("Ω/sq", &["ohm/sq", "ohm", "ohms", "Ω"], 1.0, 1.0)];
pub(crate) const AREA_RESISTANCE: &[Unit] = &[Unit::new("Ω cm²", &["ohmcm2", "ohm·cm2"], 1.0, 1e4)];
pub(crate) const CONDUCTIVITY: &[Unit] = &[
    Unit::new("mS/cm", &["ms/cm"], 1.0, 10.0),
    Unit::new("S/cm", &["s/cm"], 1e2, 1.0),
    Unit::new("S/m", &["s/m"], 1.0, 1.0),
];
pub(crate) const TEMPERATURE: &[Unit] = &[
    Unit {
        symbol: "°C",
        also: &["c", "degc", "celsius"],
        num: 1.0,
        den: 1.0,
        offset: 273.15,
    },
    Unit {
        symbol: "°F",
        also: &["f", "degf", "fahrenheit"],
        num: 5.0,
        den: 9.0,
        offset: 459.67 * 5.0 / 9.0,
    },
];
pub(crate) const TEMPERATURE_DIFFERENCE: &[Unit] = &[Unit::new("K", &["°c", "c"], 1.0, 1.0)];
pub(crate) const MASS_PER_CHARGE: &[Unit] = &[
    Unit::new("g/Ah", &["g/ah"], 1.0, 3.6e6),
    Unit::new("mg/(A min)", &["mg/amin", "mg/a·min", "mg/a.min"], 1.0, 6e7),
    Unit::new("mg/C", &["mg/c"], 1.0, 1e6),
];
pub(crate) const CHARGE_PER_AREA: &[Unit] = &[Unit::new("Ah/dm²", &["ah/dm2"], 3600.0, 0.01)];
pub(crate) const MASS_PER_AREA: &[Unit] = &[
    Unit::new("mg/cm²", &["mg/cm2"], 1.0, 100.0),
    Unit::new(
        "oz/ft²",
        &["oz/ft2", "oz/ft^2", "oz/sqft"],
        28_349.523_125,
        92_903.04,
    ),
];
pub(crate) const GROWTH_RATE: &[Unit] = &[Unit::new("µm/h", &["um/h", "μm/h"], 1.0, 3.6e9)];
pub(crate) const POWER: &[Unit] = &[Unit::new("W", &["watt", "watts"], 1.0, 1.0)];
pub(crate) const MOLAR_MASS: &[Unit] = &[Unit::new("g/mol", &[], 1.0, 1e3)];
pub(crate) const MOLAR_CHARGE: &[Unit] = &[Unit::new("C/mol", &["c/mol"], 1.0, 1.0)];
pub(crate) const DIFFUSIVITY: &[Unit] = &[Unit::new("cm²/s", &["cm2/s"], 1.0, 1e4)];
pub(crate) const RESISTIVITY: &[Unit] = &[
    Unit::new("nΩ m", &["nohmm", "nohm·m"], 1.0, 1e9),
    Unit::new("µΩ cm", &["uohmcm", "μΩcm", "uohm·cm"], 1.0, 1e8),
];
pub(crate) const VOLUME_PER_CHARGE: &[Unit] = &[Unit::new("mL/Ah", &["ml/ah"], 1.0, 3.6e9)];
pub(crate) const VOLUME_PER_AREA: &[Unit] =
    &[Unit::new("mL/dm²", &["ml/dm2", "ml/dm^2"], 1.0, 1e4)];
pub(crate) const CURRENT_PER_VOLUME: &[Unit] = &[Unit::new("A/L", &["a/l"], 1e3, 1.0)];
pub(crate) const ACIDITY: &[Unit] = &[Unit::new("", &["ph"], 1.0, 1.0)];
pub(crate) const MONEY_PER_MASS: &[Unit] = &[Unit::new("per g", &["/g"], 1e3, 1.0)];
pub(crate) const MONEY: &[Unit] = &[Unit::new("", &[], 1.0, 1.0)];
pub(crate) const FRACTION: &[Unit] = &[
    Unit::new("%", &["percent", "pct"], 1.0, 1e2),
    Unit::new("", &[], 1.0, 1.0),
];
pub(crate) const RATIO: &[Unit] = &[Unit::new("", &["x", "×"], 1.0, 1.0)];
