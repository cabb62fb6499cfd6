//! Silver.

use super::make::*;
use super::{Column, Family, Place, Solution, StirringNeed, StrikeRecipe};
use crate::kinetics::TAFEL_FIFTH;
use crate::notes::*;
use crate::source::{Cited, Datum, Source, WorkId};
use quantity::Time;

const HYDANTOIN_ABSTRACT: Source = seen(WorkId::Hydantoin12, "abstract");
const SUCCINIMIDE_ABSTRACT: Source = seen(WorkId::Succinimide97, "abstract");
const CYANIDE_PAGES: Source = seen(WorkId::Mfg11, "p. 240");
const FREE_PAGE: Source = seen(WorkId::Mfg13, "p. 320");

/// What silver baths share.
const SILVER: Solution = Solution {
    family: Family::Silver,
    metal: "Ag",
    valence: 1,
    valences: Cited::new(&[("Ag", 1)], MEM),
    counters: Cited::new(&["Ag"], MEM),
    ..BLANK
};

pub const CYANIDE: Solution = Solution {
    id: "ag_cn",
    composition: &[
        metal("KAg(CN)2", g_per_l_in(15.0, 40.0, CYANIDE_PAGES)),
        mass("KCN", g_per_l_in(12.0, 120.0, CYANIDE_PAGES)),
        mass("K2CO3", g_per_l(15.0, CYANIDE_PAGES)),
    ],
    metal_content: g_per_l_in(15.0, 40.0, CYANIDE_PAGES),
    temperature: celsius_in(20.0, 30.0, CYANIDE_PAGES),
    acidity: ph_in(11.0, 12.5, CYANIDE_PAGES),
    window_still: dm2_at(0.3, 1.0, 1.5, MEM),
    highest_stirred: dm2(4.0, CYANIDE_PAGES),
    efficiency: share_in(0.98, 1.0, MEM),
    counter_ratio: times_in(1.0, 2.0, CP),
    counter_highest: dm2(1.0, MEM),
    conductivity: s_per_cm_in(0.10, 0.20, MEM),
    cell_volts: volt_in(0.3, 1.0, MEM),
    stirring: Some(Cited::new(StirringNeed::Gentle, MEM)),
    drag_out: ml_per_dm2_in(1.0, 2.0, CP),
    load: amp_per_l(0.5, CP),
    session: um(50.0, CP),
    suits: Cited::new(&[SUITS_COPPER, SUITS_BRASS, SUITS_NICKEL_SILVER], MEM),
    rules: &[rule(RULE_SILVER_STRIKE, seen(WorkId::Mfg12, "p. 359"))],
    never_mix: Cited::new(&[MIX_ACID_CYANIDE], MEM),
    waste: Cited::new(&[WASTE_LICENSED], CP),
    hazards: Cited::new(&["H300", "H310", "H330", "H410", "EUH032"], MEM),
    never: Some(NEVER_CYANIDE),
    notes: &[(Column::Composition, AT_LEAST)],
    ..SILVER
};

pub const FREE: Solution = Solution {
    id: "ag_ncn",
    composition: &[
        metal("silver_salt", g_per_l_in(20.0, 40.0, MEM)),
        some("silver_complexant"),
    ],
    metal_content: g_per_l_in(20.0, 40.0, MEM),
    temperature: celsius_in(18.0, 35.0, MEM),
    acidity: ph_in(8.0, 10.0, MEM),
    window_still: dm2_at(0.2, 0.6, 1.0, MEM),
    highest_stirred: dm2(2.5, MEM),
    efficiency: share_at(0.95, 0.98, 1.0, MEM),
    counter_ratio: times_in(1.0, 2.0, CP),
    counter_highest: dm2(0.7, MEM),
    conductivity: s_per_cm_at(0.05, 0.08, 0.10, MEM),
    slope: Datum::Value(TAFEL_FIFTH),
    evenness_factor: times_at(0.3, 1.0, 1.25, DER),
    cell_volts: volt_in(0.5, 2.0, MEM),
    stirring: Some(Cited::new(StirringNeed::Gentle, MEM)),
    drag_out: ml_per_dm2_in(1.0, 2.0, CP),
    load: amp_per_l(0.3, CP),
    session: um_in(15.0, 25.0, CP),
    suits: Cited::new(&[SUITS_COPPER_ALLOYS], FREE_PAGE),
    rules: &[
        rule(RULE_STRIKE_ON_NICKEL, FREE_PAGE),
        rule(RULE_PH_FLOOR, FREE_PAGE),
        rule(RULE_LIVE_ENTRY, CP),
    ],
    never_mix: Cited::new(&[MIX_STRONG_ACID, MIX_BLEACH, MIX_STRONG_LIGHT], MEM),
    waste: Cited::new(&[WASTE_SILVER], CP),
    hazards: Cited::new(&["H317", "H318", "H410"], MEM),
    home: Cited::new(Place::Conditions, CP),
    home_note: HOME_CONDITIONS,
    class_use: Cited::new(Place::Conditions, CP),
    notes: &[
        (Column::Counters, COUNTER_STIRRED),
        (Column::Slope, SLOPE_FROM_HYDANTOIN),
        (Column::Stirring, STIR_ANODE_TOO),
        (Column::Additive, BY_SHEET),
        (Column::Hazards, HAZARD_BY_SHEET),
    ],
    ..SILVER
};

/// Its own strike, also used likewise for the succinimide bath.
const HYDANTOIN_STRIKE: StrikeRecipe = StrikeRecipe {
    composition: &[
        mass("AgNO3", g_per_l(0.5, HYDANTOIN_ABSTRACT)),
        mass("dimethylhydantoin", g_per_l(70.0, HYDANTOIN_ABSTRACT)),
        mass("K2SO4", g_per_l(35.0, HYDANTOIN_ABSTRACT)),
    ],
    acidity: ph(10.0, HYDANTOIN_ABSTRACT),
    density: dm2_in(0.2, 0.9, HYDANTOIN_ABSTRACT),
    time: Datum::Value(Cited::new(Time::seconds(30.0), HYDANTOIN_ABSTRACT)),
};

pub const HYDANTOIN: Solution = Solution {
    id: "ag_hydantoin",
    composition: &[
        mass("AgNO3", g_per_l(64.0, HYDANTOIN_ABSTRACT)),
        mass("dimethylhydantoin", g_per_l(130.0, HYDANTOIN_ABSTRACT)),
        mass("KCl", g_per_l(30.0, HYDANTOIN_ABSTRACT)),
        mass("KOH", g_per_l_in(60.0, 75.0, HYDANTOIN_ABSTRACT)),
    ],
    metal_content: g_per_l(40.6, DER),
    temperature: celsius_in(20.0, 25.0, MEM),
    acidity: ph(12.0, HYDANTOIN_ABSTRACT),
    window_still: dm2_at(0.45, 0.50, 0.50, HYDANTOIN_ABSTRACT),
    efficiency: share(0.98, MEM),
    conductivity: s_per_cm(0.08, MEM),
    slope: Datum::Value(TAFEL_FIFTH),
    evenness_factor: times_at(0.3, 1.0, 1.25, DER),
    cell_volts: volt_in(0.8, 2.0, MEM),
    rules: &[
        rule(RULE_STRIKE_FIRST, HYDANTOIN_ABSTRACT),
        rule(RULE_CAUSTIC, MEM),
    ],
    never_mix: Cited::new(&[MIX_STRONG_ACID], MEM),
    waste: Cited::new(&[WASTE_SILVER], CP),
    hazards: Cited::new(&["H314", "H410"], MEM),
    class_use: Cited::new(Place::Conditions, CP),
    own_strike: Some(&HYDANTOIN_STRIKE),
    notes: &[
        (Column::WindowStill, DULL),
        (Column::Counters, COUNTER_PASSIVATES),
        (Column::Home, RULE_CAUSTIC),
        (Column::Hazards, HAZARD_BY_SHEET),
    ],
    ..SILVER
};

pub const SUCCINIMIDE: Solution = Solution {
    id: "ag_succinimide",
    // 0.45 M, 1.5 M and 0.025 M.
    composition: &[
        mass("AgCH3SO3", g_per_l(91.3, SUCCINIMIDE_ABSTRACT)),
        mass("succinimide", g_per_l(148.6, SUCCINIMIDE_ABSTRACT)),
        mass("borax", g_per_l(9.53, SUCCINIMIDE_ABSTRACT)),
    ],
    metal_content: g_per_l(48.5, DER),
    temperature: celsius(25.0, SUCCINIMIDE_ABSTRACT),
    acidity: ph(10.0, SUCCINIMIDE_ABSTRACT),
    window_still: dm2_in(1.0, 2.0, SUCCINIMIDE_ABSTRACT),
    efficiency: share_in(0.90, 1.0, DER),
    cell_volts: volt_in(0.8, 2.0, MEM),
    rules: &[rule(RULE_STRIKE_FIRST, CP), rule(RULE_PH_FLOOR, FREE_PAGE)],
    waste: Cited::new(&[WASTE_SILVER], CP),
    hazards: Cited::new(&["H318", "H410"], MEM),
    home: Cited::new(Place::Conditions, CP),
    home_note: HOME_CONDITIONS,
    class_use: Cited::new(Place::Conditions, CP),
    own_strike: Some(&HYDANTOIN_STRIKE),
    notes: &[
        (Column::WindowStill, MIRROR),
        (Column::Efficiency, TYPICAL_CHOSEN),
        (Column::Hazards, HAZARD_BY_SHEET),
    ],
    ..SILVER
};
