//! Small helpers of these tests.

use proptest::test_runner::{Config, RngSeed};

/// The same cases in every run, so that a red test is red for everyone; `PROPTEST_RNG_SEED` and `PROPTEST_CASES` look
/// further.
pub fn config(cases: u32) -> Config {
    let given = Config::default();
    Config {
        cases: if std::env::var_os("PROPTEST_CASES").is_some() {
            given.cases
        } else {
            cases
        },
        rng_seed: match given.rng_seed {
            RngSeed::Random => RngSeed::Fixed(1),
            fixed => fixed,
        },
        failure_persistence: None,
        ..given
    }
}

/// Whether two numbers agree to `part` of the wanted one.
pub fn close(got: f64, want: f64, part: f64) -> bool {
    (got - want).abs() <= part * want.abs()
}

/// Calls a generic function once for every kind of quantity.
macro_rules! for_every_kind {
    ($call:ident ( $($given:expr),* )) => {{
        $crate::support::for_every_kind!(@ $call ( $($given),* )
            Current CurrentDensity WorkArea CounterArea BathSurface Charge Time Mass Length Thickness Volume Density Concentration
            Voltage Resistance SheetResistance AreaResistance Conductivity Temperature TemperatureDifference MassPerCharge
            ChargePerArea MassPerArea GrowthRate Power MolarMass MolarCharge Diffusivity MoneyPerMass Money Fraction Ratio
            Resistivity VolumePerCharge VolumePerArea CurrentPerVolume Acidity);
    }};
    (@ $call:ident ( $($given:expr),* ) $kind:ident $($more:ident)*) => {
        $call::<quantity::$kind>($($given),*);
        $crate::support::for_every_kind!(@ $call ( $($given),* ) $($more)*);
    };
    (@ $call:ident ( $($given:expr),* )) => {};
}
pub(crate) use for_every_kind;
