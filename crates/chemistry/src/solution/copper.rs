//! Copper.

use super::make::*;
use super::{Column, Electrode, Family, Place, Process, Solution, StirringNeed, Strike};
use crate::kinetics::TAFEL_HALF;
use crate::notes::*;
use crate::source::{Cited, Datum, Source, WorkId};
use quantity::{Diffusivity, VolumePerCharge};

const TABLE_VIII: Source = seen(WorkId::Mfg11, "p. 206, Table VIII");
const TABLE_IX: Source = seen(WorkId::Mfg11, "p. 206, Table IX");
const PYRO_PAGES: Source = seen(WorkId::Mfg12, "pp. 325-326, Tables V-VII");
const CITRATE_ABSTRACT: Source = seen(WorkId::CitrateCopper64, "abstract");

/// What acid copper baths share.
const ACID: Solution = Solution {
    family: Family::AcidCopper,
    process: Process::Electroform,
    work: Electrode::Cathode,
    metal: "Cu",
    valence: 2,
    valences: Cited::new(&[("Cu", 2)], MEM),
    efficiency: share_at(0.97, 0.98, 1.0, seen(WorkId::Mfg11, "p. 206")),
    counters: Cited::new(&["phosphorised_copper"], MEM),
    counter_ratio: times_in(1.0, 2.0, CP),
    slope: Datum::Value(TAFEL_HALF),
    diffusivity: Datum::Value(Cited::new(Diffusivity::of_si(5.5e-10), MEM)),
    acidity: ph(1.0, MEM),
    never_mix: Cited::new(&[MIX_BLEACH, MIX_CYANIDE, MIX_BASES, MIX_ALUMINIUM], MEM),
    waste: Cited::new(&[WASTE_COLLECT], CP),
    home: Cited::new(Place::Conditions, CP),
    home_note: HOME_CONDITIONS,
    class_use: Cited::new(Place::Conditions, CP),
    ..BLANK
};

pub const ACID_FORM: Solution = Solution {
    id: "cu_acid_form",
    composition: &[
        mass("CuSO4.5H2O", g_per_l_at(195.0, 200.0, 248.0, TABLE_VIII)),
        mass("H2SO4", g_per_l_at(30.0, 60.0, 75.0, TABLE_VIII)),
        mass("chloride", g_per_l_in(0.05, 0.12, TABLE_VIII)),
        some("leveller_brightener"),
    ],
    metal_content: g_per_l_at(
        49.6,
        50.9,
        63.1,
        seen(
            WorkId::Mfg11,
            "p. 206, Table VIII: copper sulfate pentahydrate 195-248 g/L",
        ),
    ),
    temperature: celsius_at(18.0, 22.0, 30.0, MEM),
    window_still: dm2_at(0.3, 1.2, 2.0, CP),
    highest_stirred: dm2_at(2.2, 2.2, 10.8, TABLE_VIII),
    counter_highest: dm2(3.0, CP),
    conductivity: s_per_cm_at(
        0.12,
        0.16,
        0.22,
        seen(
            WorkId::AcidCopperConductivity,
            "50 g/L free acid, with copper",
        ),
    ),
    evenness_factor: times_at(0.7, 1.0, 2.0, DER),
    surface_volts: volt_at(0.15, 0.28, 0.45, DER),
    cell_volts: volt_in(0.3, 2.0, CP),
    stirring: Some(Cited::new(StirringNeed::Gentle, CP)),
    additive: ADDITIVE,
    drag_out: ml_per_dm2_in(0.5, 2.0, CP),
    load: amp_per_l_in(0.5, 1.0, CP),
    session: um_in(200.0, 300.0, CP),
    suits: Cited::new(
        &[
            SUITS_COATED,
            SUITS_COPPER,
            SUITS_BRASS,
            SUITS_BRONZE,
            SUITS_NICKEL_ACTIVATED,
        ],
        CP,
    ),
    rules: &[rule(RULE_LESS_NOBLE_BASE, seen(WorkId::Mfg12, "p. 325"))],
    hazards: Cited::new(&["H302", "H318", "H410", "H290", "H314"], MEM),
    notes: &[
        (Column::Acidity, BELOW),
        (Column::Efficiency, EFFICIENCY_FLAT_TO_LIMIT),
        (Column::Counters, COUNTER_BAGGED),
        (Column::CounterHighest, COUNTER_FILM),
        (Column::Stirring, STIR_STILL_BELOW_ONE),
        (Column::Additive, BY_SHEET),
        (Column::Load, LOAD_SMALL_BEAKERS),
        (Column::Session, SESSION_SMOOTH),
        (Column::Hazards, HAZARD_AS_BOUGHT),
    ],
    ..ACID
};

/// Typical leveller and brightener, 0.1 to 0.3 mL/Ah.
const ADDITIVE: Datum<VolumePerCharge> = Datum::Band(Cited::new(
    quantity::Band {
        min: VolumePerCharge::ml_per_ah(0.1),
        typ: VolumePerCharge::ml_per_ah(0.2),
        max: VolumePerCharge::ml_per_ah(0.3),
    },
    CP,
));

pub const ACID_THROW: Solution = Solution {
    id: "cu_acid_throw",
    composition: &[
        mass("CuSO4.5H2O", g_per_l_in(60.0, 75.0, TABLE_IX)),
        mass("H2SO4", g_per_l_in(187.0, 225.0, TABLE_IX)),
        mass("chloride", g_per_l_in(0.05, 0.10, TABLE_IX)),
    ],
    metal_content: g_per_l_in(15.3, 19.1, DER),
    temperature: celsius_in(18.0, 28.0, MEM),
    window_still: dm2_at(0.2, 0.5, 0.8, DER),
    highest_stirred: dm2(3.0, MEM),
    counter_highest: dm2(2.0, CP),
    conductivity: s_per_cm_at(
        0.45,
        0.50,
        0.60,
        seen(WorkId::AcidCopperConductivity, "200 g/L free acid"),
    ),
    evenness_factor: times_at(0.588, 1.0, 1.373, DER),
    cell_volts: volt_in(0.2, 1.0, CP),
    stirring: Some(Cited::new(StirringNeed::Needed, CP)),
    additive: ADDITIVE,
    drag_out: ml_per_dm2_in(0.5, 2.0, CP),
    load: amp_per_l(0.5, CP),
    session: um(200.0, CP),
    suits: Cited::new(&[SUITS_RECESSES], CP),
    rules: &[rule(RULE_LESS_NOBLE_BASE, seen(WorkId::Mfg12, "p. 325"))],
    hazards: Cited::new(&["H302", "H318", "H410", "H290", "H314"], MEM),
    home_note: HOME_STRONGER_ACID,
    notes: &[
        (Column::Acidity, BELOW),
        (Column::HighestStirred, LOW_LIMIT),
        (Column::Efficiency, LOW_LIMIT),
        (Column::Counters, COUNTER_BAGGED),
        (Column::Additive, BY_SHEET),
        (Column::Hazards, HAZARD_STRONGER_ACID),
    ],
    ..ACID
};

pub const ACID_LOW: Solution = Solution {
    id: "cu_acid_low",
    composition: &[
        mass("CuSO4.5H2O", g_per_l(248.0, seen(WorkId::Mfg11, "p. 206"))),
        mass("H2SO4", g_per_l(11.0, seen(WorkId::Mfg11, "p. 206"))),
        mass(
            "chloride",
            g_per_l_in(0.05, 0.12, seen(WorkId::Mfg11, "p. 206")),
        ),
        some("leveller_brightener"),
    ],
    metal_content: g_per_l(63.1, DER),
    temperature: celsius_in(20.0, 30.0, MEM),
    window_still: dm2_at(0.5, 1.0, 2.0, MEM),
    highest_stirred: dm2(4.0, MEM),
    counter_highest: dm2(2.0, MEM),
    conductivity: s_per_cm_in(0.06, 0.08, MEM),
    evenness_factor: times_at(0.694, 1.0, 1.667, DER),
    cell_volts: volt_in(1.0, 4.0, MEM),
    stirring: Some(Cited::new(StirringNeed::Needed, MEM)),
    drag_out: ml_per_dm2_in(1.0, 2.0, CP),
    load: amp_per_l(0.5, CP),
    session: um(150.0, CP),
    suits: Cited::new(&[SUITS_PLAIN_CONVEX], CP),
    rules: &[rule(RULE_POOR_THROW, MEM), rule(RULE_NO_THIOUREA, MEM)],
    hazards: Cited::new(&["H302", "H318", "H410"], MEM),
    ..ACID
};

/// What mild copper baths share.
const MILD: Solution = Solution {
    family: Family::MildCopper,
    process: Process::Electroplate,
    diffusivity: Datum::Unknown,
    ..ACID
};

pub const PYRO: Solution = Solution {
    id: "cu_pyro",
    strike: Strike::Also,
    composition: &[
        mass("Cu2P2O7.3H2O", g_per_l_in(52.5, 84.0, PYRO_PAGES)),
        mass("K4P2O7", g_per_l_in(201.0, 349.0, PYRO_PAGES)),
        mass("KNO3", g_per_l_in(3.0, 6.0, PYRO_PAGES)),
        ml_per_l("NH4OH", 3.8, 11.0, PYRO_PAGES),
    ],
    metal_content: g_per_l_in(18.8, 30.1, DER),
    temperature: celsius_at(43.0, 55.0, 60.0, PYRO_PAGES),
    acidity: ph_in(8.0, 8.7, PYRO_PAGES),
    window_still: dm2_at(0.5, 1.0, 2.0, MEM),
    highest_stirred: dm2(8.0, PYRO_PAGES),
    efficiency: share_at(0.95, 0.97, 1.0, PYRO_PAGES),
    counters: Cited::new(&["oxygen_free_copper"], PYRO_PAGES),
    counter_highest: dm2_in(2.0, 4.0, PYRO_PAGES),
    conductivity: s_per_cm_in(0.15, 0.25, MEM),
    evenness_factor: times_at(0.5, 1.0, 2.0, DER),
    cell_volts: volt_in(1.5, 3.0, MEM),
    stirring: Some(Cited::new(StirringNeed::Vigorous, PYRO_PAGES)),
    drag_out: ml_per_dm2_in(1.0, 3.0, CP),
    load: amp_per_l(0.5, CP),
    session: um(100.0, CP),
    suits: Cited::new(&[SUITS_STEEL_STRUCK, SUITS_BRASS, SUITS_ACID_SHY_COATS], CP),
    rules: &[
        rule(RULE_DILUTE_STRIKE_ON_STEEL, seen(WorkId::Mfg12, "p. 325")),
        rule(RULE_ZINC_SEND_OUT, seen(WorkId::Mfg12, "p. 325")),
    ],
    never_mix: Cited::new(
        &[MIX_ACID_COMPLEX, MIX_BLEACH_AMMONIA, MIX_SILVER_SALTS],
        MEM,
    ),
    hazards: Cited::new(&["H319", "H410", "H314", "H335", "H400"], MEM),
    notes: &[
        (Column::Composition, PYRO_RATIO),
        (Column::Temperature, NEVER_HOTTER),
        (Column::Additive, BY_SHEET),
        (Column::Hazards, HAZARD_AMMONIA),
    ],
    ..MILD
};

pub const CITRATE: Solution = Solution {
    id: "cu_citrate",
    strike: Strike::Only,
    composition: &[
        mass("CuSO4.5H2O", g_per_l(125.0, CITRATE_ABSTRACT)),
        mass("sodium_citrate", g_per_l(258.0, CITRATE_ABSTRACT)),
    ],
    metal_content: g_per_l(31.8, DER),
    temperature: celsius_in(40.0, 50.0, CITRATE_ABSTRACT),
    acidity: ph_in(4.0, 5.0, CITRATE_ABSTRACT),
    window_still: dm2_at(0.3, 0.5, 0.8, CITRATE_ABSTRACT),
    highest_stirred: dm2(0.8, CITRATE_ABSTRACT),
    efficiency: share_in(0.8, 1.0, MEM),
    counters: Cited::new(&["Cu"], MEM),
    counter_ratio: times(2.0, MEM),
    counter_highest: dm2(0.5, MEM),
    conductivity: s_per_cm_in(0.06, 0.10, MEM),
    evenness_factor: times_at(0.625, 1.0, 2.5, DER),
    cell_volts: volt_in(1.0, 3.0, MEM),
    stirring: Some(Cited::new(StirringNeed::Gentle, MEM)),
    drag_out: ml_per_dm2_in(1.0, 3.0, CP),
    load: amp_per_l(0.3, CP),
    session: um_in(5.0, 10.0, CP),
    suits: Cited::new(&[SUITS_STEEL_FINDINGS], CITRATE_ABSTRACT),
    rules: &[rule(RULE_LIVE_ENTRY, CP)],
    never_mix: Cited::new(&[MIX_BLEACH, MIX_STRONG_ACID], MEM),
    hazards: Cited::new(&["H318", "H410"], MEM),
    notes: &[(Column::Efficiency, EFFICIENCY_FALLS)],
    ..MILD
};

pub const CYANIDE: Solution = Solution {
    id: "cu_cn",
    family: Family::CyanideCopper,
    strike: Strike::Only,
    metal: "Cu",
    valence: 1,
    valences: Cited::new(&[("Cu", 1)], MEM),
    composition: &[some("CuCN"), some("NaCN"), some("KCN"), some("K2CO3")],
    temperature: celsius_in(45.0, 60.0, MEM),
    acidity: ph_in(11.0, 13.0, MEM),
    window_still: dm2(1.0, MEM),
    efficiency: share_at(0.3, 0.6, 0.9, MEM),
    counters: Cited::new(&["Cu"], MEM),
    suits: Cited::new(&[SUITS_ZINC, SUITS_STEEL], MEM),
    rules: &[rule(RULE_INDUSTRY_ONLY, CP)],
    never_mix: Cited::new(&[MIX_ACID_CYANIDE], MEM),
    waste: Cited::new(&[WASTE_LICENSED], CP),
    hazards: Cited::new(&["H300", "H310", "H330", "H410", "EUH032"], MEM),
    never: Some(NEVER_CYANIDE),
    ..BLANK
};
