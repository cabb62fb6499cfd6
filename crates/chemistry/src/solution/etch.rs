//! Etches: the work is the anode.

use super::make::*;
use super::{Column, Electrode, Family, Place, Process, Solution, StirringNeed};
use crate::kinetics::{TAFEL_COPPER_DISSOLVING, TAFEL_SILVER_DISSOLVING};
use crate::notes::*;
use crate::source::{Cited, Datum, Source, WorkId};
use quantity::Diffusivity;

const VALENCE: Source = seen(WorkId::Kinoshita70, "abstract");
const BRASS_ABSTRACT: Source = seen(WorkId::CopperZinc00, "abstract");
const EXPLOSIVE: Source = seen(WorkId::SilverNitrateProfile, "hazards");
const REDUCED: Source = seen(WorkId::NitrateReduction23, "abstract");

/// What the etches that can be chosen share.
const ETCH: Solution = Solution {
    process: Process::Etch,
    work: Electrode::Anode,
    counters: Cited::new(&["stainless"], CP),
    counter_ratio: times(1.0, CP),
    drag_out: ml_per_dm2_in(1.0, 3.0, CP),
    load: amp_per_l(1.0, CP),
    evenness_factor: times(1.0, DER),
    home: Cited::new(Place::Conditions, CP),
    home_note: HOME_CONDITIONS,
    class_use: Cited::new(Place::Conditions, CP),
    ..BLANK
};

pub const SULFATE_COPPER: Solution = Solution {
    id: "et_cuso4_cu",
    family: Family::SulfateEtch,
    metal: "Cu",
    valence: 2,
    valences: Cited::new(&[("Cu", 2)], VALENCE),
    attacks: Cited::new(&["Cu", "C11000"], CP),
    composition: &[
        mass("CuSO4.5H2O", g_per_l_at(100.0, 200.0, 250.0, CP)),
        mass("H2SO4", g_per_l_at(0.0, 0.0, 60.0, CP)),
    ],
    metal_content: g_per_l_at(25.5, 50.9, 63.6, DER),
    saturation: g_per_l_in(82.6, 89.0, MEM),
    diffusivity: Datum::Value(Cited::new(Diffusivity::of_si(5.0e-10), MEM)),
    temperature: celsius_in(15.0, 30.0, MEM),
    acidity: ph_in(1.0, 4.0, MEM),
    window_still: dm2_at(1.0, 3.0, 6.0, CP),
    highest_stirred: dm2(10.0, CP),
    efficiency: share_in(0.98, 1.02, DER),
    counters: Cited::new(&["S31603", "Cu"], CP),
    conductivity: s_per_cm_at(0.02, 0.045, 0.22, DER),
    slope: Datum::Value(TAFEL_COPPER_DISSOLVING),
    cell_volts: volt_in(0.5, 5.0, CP),
    stirring: Some(Cited::new(StirringNeed::Gentle, CP)),
    suits: Cited::new(&[SUITS_COPPER], CP),
    rules: &[rule(RULE_MASK_BACK, CP)],
    never_mix: Cited::new(&[MIX_BLEACH, MIX_CHLORIDE_INERT_ANODE], MEM),
    waste: Cited::new(&[WASTE_COPPER_ETCH], CP),
    hazards: Cited::new(&["H302", "H318", "H410"], MEM),
    notes: &[
        (Column::Acidity, BELOW),
        (Column::Efficiency, SALT_FILM),
        (Column::Conductivity, CONDUCTIVITY_NO_ACID),
        (Column::Counters, COUNTER_SAME_SIZE),
        (Column::Stirring, STIR_NO_BUBBLES),
    ],
    ..ETCH
};

pub const SULFATE_BRASS: Solution = Solution {
    id: "et_cuso4_br",
    metal: "C26000",
    valences: Cited::new(
        &[("Cu", 2), ("Zn", 2), ("Ni", 2), ("Sn", 4)],
        BRASS_ABSTRACT,
    ),
    attacks: Cited::new(&["C26000", "C23000", "C22000", "C51000", "C75200"], CP),
    // What the bath holds is copper, what leaves the sheet is not: no film density by this.
    saturation: Datum::Unknown,
    diffusivity: Datum::Unknown,
    window_still: dm2_at(1.0, 3.0, 5.0, CP),
    highest_stirred: dm2(8.0, CP),
    efficiency: share_in(0.97, 1.03, DER),
    counters: Cited::new(&["stainless"], CP),
    suits: Cited::new(&[SUITS_BRASS, SUITS_BRONZE, SUITS_NICKEL_SILVER], CP),
    rules: &[
        rule(RULE_BRASS_TAKES_COPPER, DER),
        rule(RULE_LEAD_SMUT, MEM),
        rule(RULE_TIN_SLUDGE, MEM),
        rule(RULE_NICKEL_SILVER_BATH, DER),
    ],
    never_mix: Cited::new(&[MIX_BLEACH], MEM),
    notes: &[
        (Column::Acidity, BELOW),
        (Column::Efficiency, ZINC_WITH_COPPER),
        (Column::Conductivity, CONDUCTIVITY_NO_ACID),
        (Column::Hazards, HAZARD_AFTER_NICKEL_SILVER),
        (Column::Home, HOME_NICKEL_SILVER_SHOP),
    ],
    ..SULFATE_COPPER
};

pub const COPPER_NITRATE: Solution = Solution {
    id: "et_cuno3",
    family: Family::CopperNitrateEtch,
    metal: "Cu",
    valence: 2,
    valences: Cited::new(&[("Cu", 2)], VALENCE),
    attacks: Cited::new(&["Cu", "C11000"], CP),
    composition: &[mass("Cu(NO3)2.3H2O", g_per_l_in(100.0, 250.0, MEM))],
    metal_content: g_per_l_in(26.3, 65.8, DER),
    temperature: celsius_in(15.0, 30.0, MEM),
    acidity: ph_in(3.0, 4.0, MEM),
    window_still: dm2_at(1.0, 3.0, 6.0, CP),
    highest_stirred: dm2(10.0, CP),
    efficiency: share_in(0.98, 1.02, MEM),
    conductivity: s_per_cm_in(0.05, 0.12, MEM),
    cell_volts: volt_in(0.5, 2.5, MEM),
    stirring: Some(Cited::new(StirringNeed::Gentle, CP)),
    suits: Cited::new(&[SUITS_COPPER, SUITS_SILVER_BEARING_COPPER], CP),
    rules: &[rule(RULE_NITRATE_REDUCED, REDUCED)],
    never_mix: Cited::new(&[MIX_ORGANICS_DRY, MIX_REDUCERS, MIX_ALUMINIUM], MEM),
    waste: Cited::new(&[WASTE_COLLECT, WASTE_LICENSED, WASTE_OXIDISER], CP),
    hazards: Cited::new(&["H272", "H302", "H314", "H318", "H410"], MEM),
    ..ETCH
};

pub const SILVER_NITRATE: Solution = Solution {
    id: "et_agno3",
    family: Family::SilverEtch,
    metal: "Ag925",
    valence: 1,
    valences: Cited::new(&[("Ag", 1), ("Cu", 2)], MEM),
    attacks: Cited::new(&["Ag", "Ag999", "Ag925"], CP),
    composition: &[
        mass(
            "AgNO3",
            g_per_l_in(
                80.0,
                160.0,
                seen(WorkId::SilverRefining, "0.1-2.0 M, best 0.5 M"),
            ),
        ),
        mass(
            "HNO3",
            g_per_l_in(1.0, 5.0, seen(WorkId::Aji20, "abstract, 5 g/L")),
        ),
    ],
    metal_content: g_per_l_in(50.0, 100.0, DER),
    temperature: celsius_in(15.0, 30.0, MEM),
    acidity: ph_in(1.0, 3.0, MEM),
    window_still: dm2_at(1.0, 2.0, 4.0, CP),
    highest_stirred: dm2(10.0, seen(WorkId::Aji20, "abstract, up to 1000 A/m2")),
    efficiency: share_at(0.97, 0.98, 1.0, MEM),
    counters: Cited::new(&["stainless", "Ag"], CP),
    conductivity: s_per_cm_in(0.06, 0.10, MEM),
    slope: Datum::Value(TAFEL_SILVER_DISSOLVING),
    cell_volts: volt_in(1.0, 3.0, MEM),
    stirring: Some(Cited::new(StirringNeed::Gentle, CP)),
    drag_out: ml_per_dm2_in(0.5, 2.0, CP),
    load: amp_per_l(0.5, CP),
    suits: Cited::new(&[SUITS_FINE_SILVER, SUITS_STERLING], CP),
    rules: &[
        rule(RULE_STERLING_TAKES_SILVER, DER),
        rule(RULE_CRYSTALS_SHORT, CP),
        rule(RULE_NO_CHLORIDE, CP),
    ],
    never_mix: Cited::new(
        &[
            MIX_AMMONIA_EXPLOSIVE,
            MIX_ETHANOL_EXPLOSIVE,
            MIX_ACETYLENE_EXPLOSIVE,
            MIX_CHLORIDE,
            MIX_ALUMINIUM,
        ],
        EXPLOSIVE,
    ),
    waste: Cited::new(&[WASTE_SILVER, WASTE_SILVER_ACID], CP),
    hazards: Cited::new(&["H272", "H290", "H314", "H410"], MEM),
    class_use: Cited::new(Place::Shop, CP),
    notes: &[
        (Column::Counters, COUNTER_BAGGED),
        (Column::Additive, ADD_SILVER),
        (Column::ClassUse, CLASS_NO_SILVER_NITRATE),
    ],
    ..ETCH
};

pub const SODIUM_NITRATE: Solution = Solution {
    id: "et_nano3",
    family: Family::SodiumNitrateEtch,
    metal: "Cu",
    valence: 2,
    valences: Cited::new(&[("Cu", 2)], VALENCE),
    attacks: Cited::new(
        &["Cu", "C11000", "C26000", "C23000", "C22000", "C51000"],
        CP,
    ),
    composition: &[mass("NaNO3", g_per_l_in(100.0, 250.0, MEM))],
    temperature: celsius_in(15.0, 35.0, MEM),
    acidity: ph_in(5.0, 8.0, MEM),
    window_still: dm2_at(2.0, 5.0, 10.0, MEM),
    highest_stirred: dm2(30.0, MEM),
    efficiency: share_at(0.7, 0.95, 1.0, MEM),
    conductivity: s_per_cm_in(0.10, 0.15, MEM),
    cell_volts: volt_in(2.0, 6.0, MEM),
    stirring: Some(Cited::new(StirringNeed::Needed, MEM)),
    suits: Cited::new(&[SUITS_COPPER, SUITS_BRASS, SUITS_BRONZE], CP),
    rules: &[
        rule(RULE_HYDROXIDE_SLUDGE, MEM),
        rule(RULE_AMMONIA_FORMS, REDUCED),
        rule(RULE_SILVER_MUD, EXPLOSIVE),
        rule(RULE_NO_STAINLESS_WORK, MEM),
    ],
    never_mix: Cited::new(
        &[
            MIX_ORGANICS_DRY,
            MIX_ACID_NO2,
            MIX_ALUMINIUM,
            MIX_SILVER_SALTS,
        ],
        MEM,
    ),
    waste: Cited::new(&[WASTE_SLUDGE], CP),
    hazards: Cited::new(&["H272", "H319", "H302", "H318", "H410"], MEM),
    notes: &[
        (Column::Efficiency, EFFICIENCY_FILM),
        (Column::Stirring, STIR_SLUDGE_AWAY),
        (Column::Hazards, HAZARD_SLUDGE),
    ],
    ..ETCH
};

pub const SULFURIC: Solution = Solution {
    id: "et_h2so4",
    family: Family::SulfuricEtch,
    metal: "Cu",
    valence: 2,
    valences: Cited::new(&[("Cu", 2)], VALENCE),
    attacks: Cited::new(&["Cu", "C11000"], CP),
    composition: &[mass(
        "H2SO4",
        g_per_l_in(
            20.0,
            60.0,
            seen(WorkId::Papapanoyiotou98, "abstract, 0.5 M"),
        ),
    )],
    temperature: celsius_in(15.0, 30.0, MEM),
    acidity: ph(1.0, MEM),
    window_still: dm2_at(0.5, 2.0, 4.0, MEM),
    highest_stirred: dm2(6.0, MEM),
    efficiency: share_at(0.98, 1.0, 1.0, MEM),
    conductivity: s_per_cm_in(0.09, 0.24, DER),
    slope: Datum::Value(TAFEL_COPPER_DISSOLVING),
    cell_volts: volt_in(0.5, 2.0, MEM),
    stirring: Some(Cited::new(StirringNeed::Gentle, MEM)),
    suits: Cited::new(&[SUITS_COPPER], CP),
    rules: &[rule(RULE_HYDROGEN_AT_FIRST, DER)],
    never_mix: Cited::new(&[MIX_CYANIDE, MIX_BLEACH], MEM),
    waste: Cited::new(&[WASTE_COPPER_ETCH], CP),
    hazards: Cited::new(&["H314", "H315", "H319"], MEM),
    notes: &[(Column::Acidity, BELOW)],
    ..ETCH
};

/// What the etches that are only explained share.
const EXPLAINED: Solution = Solution {
    process: Process::Etch,
    work: Electrode::Anode,
    ..BLANK
};

pub const CHLORIDE: Solution = Solution {
    id: "et_nacl",
    family: Family::ChlorideEtch,
    metal: "Cu",
    valence: 1,
    valences: Cited::new(&[("Cu", 1)], VALENCE),
    composition: &[some("NaCl")],
    temperature: celsius_in(15.0, 30.0, MEM),
    acidity: ph(7.0, MEM),
    window_still: dm2(1.0, MEM),
    efficiency: share(0.9, MEM),
    counters: Cited::new(&["stainless"], MEM),
    conductivity: s_per_cm_in(0.08, 0.15, MEM),
    cell_volts: volt_in(1.0, 4.0, MEM),
    rules: &[
        rule(RULE_COPPER_ONLY, CP),
        rule(RULE_CHLORINE_PASSIVE_ANODE, MEM),
        rule(RULE_POOR_LINES, CP),
    ],
    never_mix: Cited::new(&[MIX_STRONG_ACID, MIX_AMMONIA, MIX_INERT_ANODE], MEM),
    waste: Cited::new(&[WASTE_SLUDGE], CP),
    hazards: Cited::new(&["H330", "H319", "H335", "H400"], MEM),
    notes: &[
        (Column::Efficiency, VALENCE_ONE),
        (Column::Hazards, HAZARD_CHLORINE),
    ],
    ..EXPLAINED
};

pub const NITRIC: Solution = Solution {
    id: "et_hno3",
    family: Family::NitricEtch,
    composition: &[some("HNO3")],
    acidity: ph(1.0, MEM),
    window_still: dm2(1.0, MEM),
    suits: Cited::new(&[SUITS_SILVER, SUITS_COPPER_ALLOYS], MEM),
    rules: &[rule(RULE_BROWN_FUME, seen(WorkId::NioshNo2, "13 ppm"))],
    never_mix: Cited::new(&[MIX_ORGANICS, MIX_CYANIDE], MEM),
    waste: Cited::new(&[WASTE_LICENSED], CP),
    hazards: Cited::new(&["H272", "H290", "H314", "H331"], MEM),
    notes: &[(Column::Acidity, BELOW)],
    ..EXPLAINED
};

pub const STEEL: Solution = Solution {
    id: "et_stainless",
    family: Family::SteelEtch,
    window_still: dm2(1.0, MEM),
    waste: Cited::new(&[WASTE_LICENSED], CP),
    hazards: Cited::new(&["H350", "H317", "H410"], MEM),
    never: Some(NEVER_STEEL_ANODE),
    ..EXPLAINED
};
