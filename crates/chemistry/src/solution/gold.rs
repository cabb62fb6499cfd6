//! Gold.

use super::make::*;
use super::{Column, Family, Place, Solution, StirringNeed, Strike};
use crate::kinetics::{TAFEL_ACID_GOLD, TAFEL_HALF};
use crate::notes::*;
use crate::source::{Cited, Datum, Source, WorkId};

const FLASH_PAGE: Source = seen(WorkId::Mfg11, "p. 213");
const ACID_PAGE: Source = seen(WorkId::Mfg11, "p. 217");
const BARRIER: Source = seen(WorkId::Heliyon24, "abstract");

/// What gold baths share.
const GOLD: Solution = Solution {
    family: Family::Gold,
    metal: "Au",
    valence: 1,
    valences: Cited::new(&[("Au", 1)], MEM),
    drag_out: ml_per_dm2_in(1.0, 2.0, CP),
    waste: Cited::new(&[WASTE_REFINER], CP),
    ..BLANK
};

pub const FLASH: Solution = Solution {
    id: "au_flash_cn",
    strike: Strike::Also,
    composition: &[
        metal("KAu(CN)2", g_per_l_in(1.25, 2.0, FLASH_PAGE)),
        mass("KCN", g_per_l_in(2.0, 7.5, FLASH_PAGE)),
        mass("K2HPO4", g_per_l(15.0, FLASH_PAGE)),
    ],
    metal_content: g_per_l_in(1.25, 2.0, FLASH_PAGE),
    temperature: celsius_in(60.0, 71.0, FLASH_PAGE),
    acidity: ph_in(10.0, 12.0, MEM),
    window_still: dm2(2.0, FLASH_PAGE),
    highest_stirred: dm2(4.3, FLASH_PAGE),
    efficiency: share_in(0.3, 0.9, MEM),
    counters: Cited::new(&["S31603", "platinised_titanium"], FLASH_PAGE),
    counter_ratio: times_in(1.0, 3.0, MEM),
    cell_volts: volt_in(2.0, 6.0, FLASH_PAGE),
    stirring: Some(Cited::new(StirringNeed::None, FLASH_PAGE)),
    load: amp_per_l(0.1, CP),
    session: um_in(0.05, 0.12, seen(WorkId::Mfg12, "p. 333, Table I")),
    suits: Cited::new(&[SUITS_BRIGHT_NICKEL], FLASH_PAGE),
    rules: &[rule(RULE_COLOUR_ONLY, FLASH_PAGE)],
    never_mix: Cited::new(&[MIX_ACID_CYANIDE], MEM),
    waste: Cited::new(&[WASTE_LICENSED], CP),
    hazards: Cited::new(&["H300", "H310", "H330", "EUH032", "H410"], MEM),
    never: Some(NEVER_CYANIDE),
    notes: &[
        (Column::WindowStill, UPPER_END_UNKNOWN),
        (Column::Efficiency, EFFICIENCY_FALLS),
        (Column::Counters, COUNTER_STAINLESS_ONLY_HERE),
        (Column::Session, SESSION_SECONDS),
    ],
    ..GOLD
};

pub const ACID: Solution = Solution {
    id: "au_acid",
    composition: &[
        metal("KAu(CN)2", g_per_l_in(4.0, 8.0, ACID_PAGE)),
        mass("conducting_salts", g_per_l(120.0, ACID_PAGE)),
        metal("cobalt_salt", g_per_l_in(0.5, 1.0, ACID_PAGE)),
        metal("nickel_salt", g_per_l(0.2, ACID_PAGE)),
    ],
    metal_content: g_per_l_in(4.0, 8.0, ACID_PAGE),
    temperature: celsius_in(27.0, 38.0, MEM),
    acidity: ph_in(4.0, 4.8, ACID_PAGE),
    window_still: dm2_at(0.2, 0.8, 1.0, ACID_PAGE),
    highest_stirred: dm2_in(1.0, 2.0, ACID_PAGE),
    efficiency: share_in(0.2, 0.5, MEM),
    efficiency_exponent: times(0.3, CP),
    counters: Cited::new(&["platinised_titanium", "mixed_oxide_titanium"], MEM),
    counter_ratio: times_in(1.0, 3.0, MEM),
    conductivity: s_per_cm_in(0.06, 0.10, MEM),
    slope: Datum::Value(TAFEL_ACID_GOLD),
    evenness_factor: times_at(0.533, 1.0, 1.333, DER),
    cell_volts: volt_in(2.0, 5.0, MEM),
    stirring: Some(Cited::new(StirringNeed::Needed, MEM)),
    load: amp_per_l(0.2, CP),
    session: um_in(2.0, 10.0, CP),
    suits: Cited::new(&[SUITS_NICKEL, SUITS_PALLADIUM, SUITS_SILVER], MEM),
    rules: &[
        rule(RULE_BARRIER_UNDER_GOLD, BARRIER),
        rule(RULE_STRIKE_FIRST, CP),
    ],
    never_mix: Cited::new(&[MIX_ACID_BELOW_PH_3, MIX_BLEACH], MEM),
    hazards: Cited::new(&["H300", "H301", "H310", "H317", "H410", "EUH032"], MEM),
    home: Cited::new(Place::Conditions, CP),
    home_note: HOME_TRAINED_ONLY,
    notes: &[
        (Column::Composition, HARD_GOLD_ALLOY),
        (Column::Efficiency, EFFICIENCY_ASK_SHEET),
        (Column::Additive, ADD_METAL_BY_CHARGE),
        (Column::Hazards, HAZARD_GOLD_SALT),
    ],
    ..GOLD
};

pub const NEUTRAL: Solution = Solution {
    id: "au_neutral",
    composition: &[
        metal("gold_salt", g_per_l_in(6.0, 12.0, MEM)),
        some("phosphate_citrate"),
    ],
    metal_content: g_per_l_in(6.0, 12.0, MEM),
    temperature: celsius_in(60.0, 70.0, MEM),
    acidity: ph_in(6.0, 7.0, seen(WorkId::Mfg11, "p. 211")),
    window_still: dm2_at(0.1, 0.4, 0.6, MEM),
    highest_stirred: dm2(1.0, MEM),
    efficiency: share_in(0.9, 1.0, MEM),
    counters: Cited::new(&["platinised_titanium"], MEM),
    counter_ratio: times_in(1.0, 3.0, MEM),
    conductivity: s_per_cm(0.08, MEM),
    cell_volts: volt_in(2.0, 4.0, MEM),
    stirring: Some(Cited::new(StirringNeed::Gentle, MEM)),
    load: amp_per_l(0.2, CP),
    session: um(5.0, CP),
    suits: Cited::new(&[SUITS_NICKEL, SUITS_SILVER], MEM),
    rules: &[rule(RULE_STRIKE_FIRST, CP)],
    never_mix: Cited::new(&[MIX_ACID_CYANIDE], MEM),
    hazards: Cited::new(&["H300", "H301", "H310", "H317", "H410", "EUH032"], MEM),
    home: Cited::new(Place::Conditions, CP),
    home_note: HOME_TRAINED_ONLY,
    notes: &[
        (Column::Additive, ADD_METAL_BY_CHARGE),
        (Column::Hazards, HAZARD_GOLD_SALT),
    ],
    ..GOLD
};

pub const SULFITE: Solution = Solution {
    id: "au_sulfite",
    composition: &[
        metal("gold_salt", g_per_l_in(8.0, 12.0, MEM)),
        some("sulfite"),
    ],
    metal_content: g_per_l_in(8.0, 12.0, MEM),
    temperature: celsius_in(45.0, 60.0, MEM),
    acidity: ph_in(8.0, 10.0, MEM),
    window_still: dm2_at(0.1, 0.3, 0.5, MEM),
    highest_stirred: dm2(1.0, MEM),
    efficiency: share_at(0.95, 0.98, 1.0, MEM),
    counters: Cited::new(&["platinised_titanium"], MEM),
    counter_ratio: times(2.0, MEM),
    conductivity: s_per_cm_in(0.05, 0.08, MEM),
    slope: Datum::Value(TAFEL_HALF),
    evenness_factor: times_at(0.455, 1.0, 1.818, DER),
    cell_volts: volt_in(1.0, 3.0, MEM),
    stirring: Some(Cited::new(StirringNeed::Gentle, MEM)),
    load: amp_per_l(0.1, CP),
    session: um_in(5.0, 10.0, CP),
    suits: Cited::new(&[SUITS_NICKEL, SUITS_SILVER], MEM),
    rules: &[
        rule(RULE_SO2_BELOW_PH, MEM),
        rule(RULE_STRIKE_FIRST, MEM),
        rule(RULE_LIVE_ENTRY, MEM),
    ],
    never_mix: Cited::new(&[MIX_ACID_SO2], MEM),
    hazards: Cited::new(&["H302", "H412", "EUH031"], MEM),
    home: Cited::new(Place::Conditions, CP),
    home_note: HOME_CONDITIONS,
    class_use: Cited::new(Place::Conditions, CP),
    notes: &[(Column::Additive, ADD_SULFITE)],
    ..GOLD
};
