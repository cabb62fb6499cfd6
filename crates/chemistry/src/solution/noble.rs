//! Rhodium and palladium.

use super::make::*;
use super::{Column, Family, Place, Solution, StirringNeed};
use crate::kinetics::TAFEL_HALF;
use crate::notes::*;
use crate::source::{Cited, Datum, Source, WorkId};

const FORMULARY: Source = seen(WorkId::RhodiumFormulary, "the entry");
const PALLADIUM_PAGE: Source = seen(WorkId::Mfg11, "p. 239");
const AMMONIA_PAGE: Source = seen(WorkId::Mfg13, "p. 315");

pub const RHODIUM: Solution = Solution {
    id: "rh_sulf",
    family: Family::Rhodium,
    metal: "Rh",
    valence: 3,
    valences: Cited::new(&[("Rh", 3)], MEM),
    composition: &[
        metal("rhodium_salt", g_per_l_at(1.5, 2.0, 2.2, FORMULARY)),
        mass("H2SO4", g_per_l_in(20.0, 60.0, MEM)),
    ],
    metal_content: g_per_l_at(1.5, 2.0, 2.2, FORMULARY),
    temperature: celsius_in(40.0, 50.0, MEM),
    acidity: ph(1.0, MEM),
    window_still: dm2_at(1.0, 2.0, 4.0, MEM),
    highest_stirred: dm2(10.0, MEM),
    efficiency: share_in(0.4, 0.8, MEM),
    counters: Cited::new(&["Pt", "platinised_titanium"], FORMULARY),
    counter_ratio: times(1.0, MEM),
    conductivity: s_per_cm_in(0.15, 0.25, MEM),
    slope: Datum::Value(TAFEL_HALF),
    evenness_factor: times_at(0.6, 1.0, 2.0, DER),
    cell_volts: volt_in(2.5, 5.0, MEM),
    stirring: Some(Cited::new(StirringNeed::Gentle, MEM)),
    drag_out: ml_per_dm2_in(0.5, 1.0, CP),
    load: amp_per_l(0.2, CP),
    session: um_in(0.1, 0.5, CP),
    suits: Cited::new(
        &[
            SUITS_NICKEL,
            SUITS_PALLADIUM,
            SUITS_WHITE_GOLD,
            SUITS_SILVER_OVER_BARRIER,
        ],
        MEM,
    ),
    rules: &[rule(RULE_NOT_ON_BARE_COPPER_SILVER, MEM)],
    never_mix: Cited::new(&[MIX_BASE_METALS, MIX_CYANIDE], MEM),
    waste: Cited::new(&[WASTE_REFINER], CP),
    hazards: Cited::new(&["H290", "H314", "H317", "H341"], MEM),
    home: Cited::new(Place::Conditions, CP),
    home_note: HOME_CONDITIONS,
    class_use: Cited::new(Place::Conditions, CP),
    notes: &[
        (Column::Acidity, BELOW),
        (Column::Efficiency, EFFICIENCY_FALLS),
        (Column::CounterRatio, AT_LEAST),
        (Column::Additive, ADD_METAL_BY_CHARGE),
        (Column::Additive, SPOILT_BY_COPPER),
        (Column::Session, SESSION_RHODIUM),
    ],
    ..BLANK
};

/// What palladium baths share.
const PALLADIUM: Solution = Solution {
    family: Family::Palladium,
    metal: "Pd",
    valence: 2,
    valences: Cited::new(&[("Pd", 2)], MEM),
    waste: Cited::new(&[WASTE_REFINER], CP),
    ..BLANK
};

pub const PALLADIUM_ACID: Solution = Solution {
    id: "pd_acid",
    composition: &[
        metal("palladium_chloride", g_per_l(30.0, MEM)),
        mass("NH4Cl", g_per_l(30.0, PALLADIUM_PAGE)),
        some("HCl"),
    ],
    metal_content: g_per_l(30.0, MEM),
    temperature: celsius_in(40.0, 50.0, PALLADIUM_PAGE),
    acidity: ph_in(0.1, 0.5, PALLADIUM_PAGE),
    window_still: dm2_at(0.1, 0.5, 1.0, PALLADIUM_PAGE),
    highest_stirred: dm2(1.0, PALLADIUM_PAGE),
    efficiency: share_at(0.97, 0.98, 1.0, PALLADIUM_PAGE),
    counters: Cited::new(&["Pd"], PALLADIUM_PAGE),
    counter_ratio: times(1.0, MEM),
    cell_volts: volt_in(1.0, 3.0, MEM),
    stirring: Some(Cited::new(StirringNeed::Gentle, MEM)),
    load: amp_per_l(0.2, CP),
    session: um(1.0, CP),
    suits: Cited::new(&[SUITS_GOLD, SUITS_PALLADIUM], MEM),
    rules: &[
        rule(RULE_COPPER_POISONS, PALLADIUM_PAGE),
        rule(RULE_CHLORINE_INERT_ANODE, MEM),
    ],
    never_mix: Cited::new(&[MIX_BLEACH], MEM),
    hazards: Cited::new(&["H290", "H314", "H317", "H410"], MEM),
    ..PALLADIUM
};

pub const PALLADIUM_NICKEL: Solution = Solution {
    id: "pdni",
    metal: "PdNi20",
    valences: Cited::new(&[("Pd", 2), ("Ni", 2)], MEM),
    composition: &[
        metal("palladium_salt", g_per_l_in(8.0, 12.0, PALLADIUM_PAGE)),
        metal("nickel_salt", g_per_l_in(8.0, 12.0, PALLADIUM_PAGE)),
        mass("NH4Cl", g_per_l(60.0, PALLADIUM_PAGE)),
        some("NH4OH"),
    ],
    temperature: celsius_in(30.0, 45.0, PALLADIUM_PAGE),
    acidity: ph_in(7.5, 9.0, PALLADIUM_PAGE),
    window_still: dm2_at(0.1, 0.8, 1.5, PALLADIUM_PAGE),
    highest_stirred: dm2(2.5, PALLADIUM_PAGE),
    efficiency: share_in(0.85, 0.95, MEM),
    counters: Cited::new(&["platinised_titanium"], MEM),
    counter_ratio: times_in(1.0, 2.0, MEM),
    conductivity: s_per_cm(0.1, MEM),
    cell_volts: volt_in(2.0, 4.0, MEM),
    stirring: Some(Cited::new(StirringNeed::Gentle, MEM)),
    load: amp_per_l(0.2, CP),
    session: um(2.0, CP),
    suits: Cited::new(&[SUITS_COPPER_ALLOYS, SUITS_BARRIER], MEM),
    rules: &[
        rule(RULE_ALLOY_ASSUMED, PALLADIUM_PAGE),
        rule(RULE_STILL_NICKEL, MEM),
        rule(
            RULE_NICKEL_RELEASE,
            seen(WorkId::Reach27, "0.5 ug/cm2 a week, 0.2 for pierced posts"),
        ),
    ],
    never_mix: Cited::new(&[MIX_BLEACH_AMMONIA], MEM),
    hazards: Cited::new(
        &[
            "H290", "H302", "H317", "H318", "H334", "H350i", "H360D", "H372", "H410", "H314",
            "H335",
        ],
        MEM,
    ),
    notes: &[
        (Column::Additive, ADD_AMMONIA),
        (Column::Hazards, HAZARD_AMMONIA),
    ],
    ..PALLADIUM
};

pub const PALLADIUM_AMMONIA: Solution = Solution {
    id: "pd_ammonia",
    composition: &[
        metal(
            "palladium_diamminedinitrite",
            g_per_l_in(10.0, 20.0, AMMONIA_PAGE),
        ),
        mass("ammonium_sulfamate", g_per_l(100.0, AMMONIA_PAGE)),
    ],
    metal_content: g_per_l_in(10.0, 20.0, AMMONIA_PAGE),
    temperature: celsius_in(25.0, 35.0, AMMONIA_PAGE),
    acidity: ph_in(7.5, 8.5, AMMONIA_PAGE),
    window_still: dm2_at(0.3, 0.5, 0.6, CP),
    highest_stirred: dm2(2.0, AMMONIA_PAGE),
    efficiency: share_at(0.8, 0.9, 0.97, MEM),
    counters: Cited::new(&["platinised_titanium"], AMMONIA_PAGE),
    conductivity: s_per_cm(0.10, MEM),
    slope: Datum::Value(TAFEL_HALF),
    evenness_factor: times_at(0.5, 1.0, 2.0, DER),
    cell_volts: volt_in(1.5, 3.0, MEM),
    session: um(1.0, CP),
    rules: &[
        rule(RULE_STRIKE_FIRST, AMMONIA_PAGE),
        rule(RULE_TARNISHES_COPPER, AMMONIA_PAGE),
        rule(RULE_LIVE_ENTRY, CP),
        rule(RULE_HYDROGEN_CRACKS, AMMONIA_PAGE),
    ],
    never_mix: Cited::new(&[MIX_BLEACH_AMMONIA, MIX_SILVER_SALTS], MEM),
    hazards: Cited::new(&["H302", "H317", "H410", "H314", "H335", "H400"], MEM),
    own_strike: Some(&PALLADIUM_STRIKE),
    notes: &[
        (Column::Session, BELOW),
        (Column::Hazards, HAZARD_BY_SHEET),
        (Column::Hazards, HAZARD_AMMONIA),
    ],
    ..PALLADIUM
};

/// 2 g/L of palladium for 30 s; a gold or nickel flash serves as well.
const PALLADIUM_STRIKE: super::StrikeRecipe = super::StrikeRecipe {
    composition: &[metal("palladium_salt", g_per_l(2.0, CP))],
    acidity: Datum::Unknown,
    density: dm2(0.5, CP),
    time: Datum::Value(Cited::new(quantity::Time::seconds(30.0), CP)),
};

pub const PALLADIUM_AMMONIA_CHLORIDE: Solution = Solution {
    id: "pd_ammonia_cl",
    composition: &[
        metal(
            "palladium_tetrammine_chloride",
            g_per_l_in(10.0, 20.0, AMMONIA_PAGE),
        ),
        mass("NH4Cl", g_per_l_in(60.0, 90.0, AMMONIA_PAGE)),
    ],
    metal_content: g_per_l_in(10.0, 20.0, AMMONIA_PAGE),
    temperature: celsius_in(25.0, 50.0, AMMONIA_PAGE),
    acidity: ph_in(8.0, 9.5, AMMONIA_PAGE),
    window_still: dm2_at(0.1, 0.5, 2.5, AMMONIA_PAGE),
    rules: &[
        rule(RULE_CHLORAMINE, MEM),
        rule(RULE_STRIKE_FIRST, AMMONIA_PAGE),
    ],
    never_mix: Cited::new(&[MIX_BLEACH_AMMONIA, MIX_SILVER_SALTS], MEM),
    hazards: Cited::new(&["H302", "H317", "H410", "H314", "H335", "H400"], MEM),
    notes: &[
        (Column::WindowStill, TYPICAL_CHOSEN),
        (Column::Hazards, HAZARD_BY_SHEET),
        (Column::Hazards, HAZARD_AMMONIA),
    ],
    ..PALLADIUM
};
