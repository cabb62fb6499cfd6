//! Bronzes and chromium.

use super::make::*;
use super::{Column, Family, Place, Solution, StirringNeed};
use crate::notes::*;
use crate::source::{Cited, WorkId};

pub const WHITE_BRONZE: Solution = Solution {
    id: "white_bronze",
    family: Family::Bronze,
    composition: &[some("KCN")],
    temperature: celsius_in(55.0, 65.0, MEM),
    acidity: ph_in(12.0, 13.0, MEM),
    window_still: dm2(0.5, MEM),
    counters: Cited::new(&["graphite", "steel"], MEM),
    session: um_in(1.0, 3.0, MEM),
    suits: Cited::new(&[SUITS_BARRIER], MEM),
    rules: &[
        rule(RULE_BRONZE_NO_BARRIER, seen(WorkId::Heliyon24, "abstract")),
        rule(RULE_INDUSTRY_ONLY, CP),
    ],
    never_mix: Cited::new(&[MIX_ACID_CYANIDE], MEM),
    waste: Cited::new(&[WASTE_LICENSED], CP),
    hazards: Cited::new(&["H300", "EUH032", "H410"], MEM),
    never: Some(NEVER_CYANIDE),
    ..BLANK
};

pub const BRONZE: Solution = Solution {
    id: "bronze_ncn",
    family: Family::Bronze,
    metal: "CuSn8",
    valence: 2,
    valences: Cited::new(&[("Cu", 2), ("Sn", 2)], MEM),
    composition: &[
        metal("copper_salt", g_per_l_in(10.0, 25.0, MEM)),
        metal("tin_salt", g_per_l_in(5.0, 15.0, MEM)),
        some("acid_or_pyrophosphate"),
    ],
    temperature: celsius_in(20.0, 50.0, MEM),
    window_still: dm2_at(0.3, 0.8, 1.5, MEM),
    highest_stirred: dm2(3.0, MEM),
    efficiency: share_at(0.8, 0.9, 0.98, MEM),
    counters: Cited::new(&["platinised_titanium", "Cu"], MEM),
    counter_ratio: times_in(1.0, 2.0, MEM),
    cell_volts: volt_in(1.0, 3.0, MEM),
    stirring: Some(Cited::new(StirringNeed::Gentle, MEM)),
    drag_out: ml_per_dm2_in(1.0, 2.0, CP),
    load: amp_per_l(0.5, CP),
    session: um_in(3.0, 5.0, CP),
    suits: Cited::new(&[SUITS_COPPER, SUITS_BRASS], MEM),
    rules: &[
        rule(RULE_ACTIVATE, CP),
        rule(RULE_BRONZE_NO_BARRIER, seen(WorkId::Heliyon24, "abstract")),
        rule(RULE_WEIGH_STRIP, CP),
    ],
    never_mix: Cited::new(&[MIX_BLEACH, MIX_CYANIDE], MEM),
    waste: Cited::new(&[WASTE_LICENSED], CP),
    hazards: Cited::new(&["H290", "H314", "H317", "H410"], MEM),
    home: Cited::new(Place::Conditions, CP),
    home_note: HOME_CONDITIONS,
    class_use: Cited::new(Place::Conditions, CP),
    notes: &[
        (Column::Acidity, PH_BY_SHEET),
        (Column::Efficiency, ALLOY_WITH_DENSITY),
        (Column::Counters, BY_SHEET),
        (Column::Additive, BY_SHEET),
        (Column::Hazards, HAZARD_BY_SHEET),
    ],
    ..BLANK
};

pub const CHROMIUM_6: Solution = Solution {
    id: "cr6",
    family: Family::Chromium,
    metal: "Cr",
    valence: 6,
    valences: Cited::new(&[("Cr", 6)], MEM),
    composition: &[some("CrO3")],
    temperature: celsius_in(35.0, 50.0, MEM),
    acidity: ph(1.0, MEM),
    window_still: dm2(15.0, MEM),
    efficiency: share(0.15, MEM),
    counters: Cited::new(&["lead_alloy"], MEM),
    rules: &[rule(RULE_NOT_FOR_STUDIO, CP)],
    waste: Cited::new(&[WASTE_LICENSED], CP),
    hazards: Cited::new(&["H350", "H340", "H330", "H410"], MEM),
    never: Some(NEVER_CHROMIUM_6),
    notes: &[(Column::Acidity, BELOW)],
    ..BLANK
};
