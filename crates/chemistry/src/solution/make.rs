//! Short constructors for the tables, each with its unit in the name: `x(typical)`, `x_in(lowest, highest)` whose
//! typical is the middle, `x_at(lowest, typical, highest)`.

use super::{Electrode, Family, Place, Process, Solution, Strike};
use crate::notes;
use crate::source::{Cited, Datum, MethodId, Source, WorkId};
use crate::substance::{Amount, Ingredient, SubstanceId};
use quantity::{
    Acidity, Band, Concentration, Conductivity, CurrentDensity, CurrentPerVolume, Fraction, Ratio,
    Temperature, Thickness, Voltage, VolumePerArea,
};

/// Common practice, no source.
pub const CP: Source = Source::CommonPractice;
/// From memory.
pub const MEM: Source = Source::FromMemory;
/// Worked out from other values.
pub const DER: Source = Source::Computed {
    method: MethodId::Derived,
};

/// Printed in a work.
pub const fn seen(work: WorkId, locator: &'static str) -> Source {
    Source::Published { work, locator }
}

macro_rules! unit {
    ($kind:ident, $from:ident, $one:ident, $two:ident, $three:ident) => {
        #[allow(dead_code)]
        pub const fn $one(typ: f64, source: Source) -> Datum<$kind> {
            Datum::Value(Cited::new($kind::$from(typ), source))
        }
        #[allow(dead_code)]
        pub const fn $two(min: f64, max: f64, source: Source) -> Datum<$kind> {
            $three(min, (min + max) / 2.0, max, source)
        }
        #[allow(dead_code)]
        pub const fn $three(min: f64, typ: f64, max: f64, source: Source) -> Datum<$kind> {
            Datum::Band(Cited::new(
                Band {
                    min: $kind::$from(min),
                    typ: $kind::$from(typ),
                    max: $kind::$from(max),
                },
                source,
            ))
        }
    };
}

unit!(Concentration, g_per_l, g_per_l, g_per_l_in, g_per_l_at);
unit!(Temperature, celsius, celsius, celsius_in, celsius_at);
unit!(Acidity, ph, ph, ph_in, ph_at);
unit!(CurrentDensity, amp_per_dm2, dm2, dm2_in, dm2_at);
unit!(Fraction, of_si, share, share_in, share_at);
unit!(Ratio, of_si, times, times_in, times_at);
unit!(Conductivity, s_per_cm, s_per_cm, s_per_cm_in, s_per_cm_at);
unit!(Voltage, volt, volt, volt_in, volt_at);
unit!(
    VolumePerArea,
    ml_per_dm2,
    ml_per_dm2,
    ml_per_dm2_in,
    ml_per_dm2_at
);
unit!(
    CurrentPerVolume,
    amp_per_l,
    amp_per_l,
    amp_per_l_in,
    amp_per_l_at
);
unit!(Thickness, um, um, um_in, um_at);

/// So much of a substance.
pub const fn mass(what: SubstanceId, amount: Datum<Concentration>) -> Ingredient {
    Ingredient {
        what,
        amount: Amount::Mass(amount),
    }
}

/// So much of the metal in a substance.
pub const fn metal(what: SubstanceId, amount: Datum<Concentration>) -> Ingredient {
    Ingredient {
        what,
        amount: Amount::MassOfMetal(amount),
    }
}

/// So much by volume, millilitre per litre.
pub const fn ml_per_l(what: SubstanceId, min: f64, max: f64, source: Source) -> Ingredient {
    Ingredient {
        what,
        amount: Amount::Volume(times_in(min / 1000.0, max / 1000.0, source)),
    }
}

/// As much as it needs.
pub const fn some(what: SubstanceId) -> Ingredient {
    Ingredient {
        what,
        amount: Amount::AsNeeded,
    }
}

/// A rule with its source.
pub const fn rule(note: notes::NoteId, source: Source) -> Cited<notes::NoteId> {
    Cited::new(note, source)
}

/// Nothing known yet: what every record starts from. A field a record does not name is unknown or empty.
pub const BLANK: Solution = Solution {
    id: "",
    family: Family::AcidCopper,
    process: Process::Electroplate,
    strike: Strike::No,
    work: Electrode::Cathode,
    metal: "",
    valence: 0,
    valences: Cited::new(&[], MEM),
    attacks: Cited::new(&[], CP),
    composition: &[],
    metal_content: Datum::Unknown,
    saturation: Datum::Unknown,
    temperature: Datum::Unknown,
    acidity: Datum::Unknown,
    window_still: Datum::Unknown,
    highest_stirred: Datum::Unknown,
    efficiency: Datum::Unknown,
    efficiency_exponent: Datum::Unknown,
    counters: Cited::new(&[], MEM),
    counter_ratio: Datum::Unknown,
    counter_highest: Datum::Unknown,
    conductivity: Datum::Unknown,
    slope: Datum::Unknown,
    evenness_factor: Datum::Unknown,
    diffusivity: Datum::Unknown,
    surface_volts: Datum::Unknown,
    cell_volts: Datum::Unknown,
    stirring: None,
    additive: Datum::Unknown,
    drag_out: Datum::Unknown,
    load: Datum::Unknown,
    session: Datum::Unknown,
    suits: Cited::new(&[], CP),
    rules: &[],
    never_mix: Cited::new(&[], MEM),
    waste: Cited::new(&[], CP),
    hazards: Cited::new(&[], MEM),
    home: Cited::new(Place::Shop, CP),
    home_note: notes::HOME_SHOP,
    class_use: Cited::new(Place::Shop, CP),
    never: None,
    own_strike: None,
    notes: &[],
};
