//! Nickel.

use super::make::*;
use super::{Column, Family, Place, Process, Solution, StirringNeed, Strike};
use crate::kinetics::TAFEL_HALF;
use crate::notes::*;
use crate::source::{Cited, Datum, Source, WorkId};
use quantity::Diffusivity;

const HEALTH: Source = seen(
    WorkId::HseNickel,
    "sensitiser, asthma, carcinogen by inhalation, unborn child",
);

/// What nickel baths share.
const NICKEL: Solution = Solution {
    family: Family::Nickel,
    metal: "Ni",
    valence: 2,
    valences: Cited::new(&[("Ni", 2)], MEM),
    waste: Cited::new(&[WASTE_LICENSED], CP),
    home: Cited::new(Place::Shop, HEALTH),
    home_note: HOME_NICKEL_SHOP,
    class_use: Cited::new(Place::Shop, HEALTH),
    ..BLANK
};

const HAZARDS: &[&str] = &[
    "H302", "H332", "H315", "H317", "H334", "H341", "H350i", "H360D", "H372", "H410", "H360FD",
];

pub const WATTS: Solution = Solution {
    id: "ni_watts",
    process: Process::Electroplate,
    composition: &[
        mass("NiSO4.6H2O", g_per_l_at(225.0, 280.0, 400.0, MEM)),
        mass("NiCl2.6H2O", g_per_l_in(30.0, 60.0, MEM)),
        mass("H3BO3", g_per_l_in(30.0, 45.0, MEM)),
    ],
    metal_content: g_per_l_at(57.7, 73.6, 104.1, DER),
    diffusivity: Datum::Value(Cited::new(
        Diffusivity::of_si(6.6e-10),
        seen(WorkId::NickelFilling, "Table I, 1.2 M nickel"),
    )),
    temperature: celsius_at(44.0, 50.0, 66.0, MEM),
    acidity: ph_in(3.5, 4.5, MEM),
    window_still: dm2_at(0.5, 2.0, 3.0, MEM),
    highest_stirred: dm2(11.0, MEM),
    efficiency: share_in(0.93, 0.97, MEM),
    counters: Cited::new(&["sulfur_nickel", "Ni"], MEM),
    counter_ratio: times_in(1.0, 2.0, CP),
    counter_highest: dm2(2.0, MEM),
    conductivity: s_per_cm_at(0.05, 0.07, 0.08, MEM),
    slope: Datum::Value(TAFEL_HALF),
    evenness_factor: times_at(0.833, 1.0, 2.778, DER),
    cell_volts: volt_in(2.0, 6.0, MEM),
    stirring: Some(Cited::new(StirringNeed::Needed, MEM)),
    drag_out: ml_per_dm2_in(1.0, 3.0, CP),
    load: amp_per_l_in(0.5, 1.0, CP),
    session: um(25.0, CP),
    suits: Cited::new(&[SUITS_COPPER, SUITS_BRASS, SUITS_SILVER_STRUCK], MEM),
    rules: &[
        rule(RULE_ACTIVATE, MEM),
        rule(RULE_BARRIER_FOR_GOLD, seen(WorkId::Heliyon24, "abstract")),
        rule(
            RULE_NICKEL_RELEASE,
            seen(WorkId::Reach27, "0.5 ug/cm2 a week, 0.2 for pierced posts"),
        ),
    ],
    never_mix: Cited::new(&[MIX_BLEACH, MIX_PEROXIDE, MIX_CYANIDE], MEM),
    hazards: Cited::new(HAZARDS, MEM),
    notes: &[
        (Column::Efficiency, EFFICIENCY_DROPS_LOW),
        (Column::Counters, COUNTER_BAGGED),
        (Column::Stirring, STIR_WETTING_AGENT),
        (Column::Additive, BY_SHEET),
    ],
    ..NICKEL
};

pub const SULFAMATE: Solution = Solution {
    id: "ni_sulfamate",
    process: Process::Electroform,
    composition: &[
        mass("Ni(SO3NH2)2", g_per_l_in(300.0, 450.0, MEM)),
        mass("NiCl2.6H2O", g_per_l_in(0.0, 15.0, MEM)),
        mass("H3BO3", g_per_l_in(30.0, 45.0, MEM)),
    ],
    metal_content: g_per_l_in(70.2, 109.0, DER),
    diffusivity: WATTS.diffusivity,
    temperature: celsius_at(32.0, 50.0, 60.0, MEM),
    acidity: ph_in(3.5, 4.5, MEM),
    window_still: dm2_at(0.5, 2.0, 4.0, MEM),
    highest_stirred: dm2(15.0, MEM),
    efficiency: share_at(0.93, 0.95, 0.98, MEM),
    counters: Cited::new(&["sulfur_nickel"], MEM),
    counter_ratio: times_in(1.0, 2.0, CP),
    counter_highest: dm2(2.0, MEM),
    conductivity: s_per_cm_in(0.06, 0.09, MEM),
    cell_volts: volt_in(2.0, 6.0, MEM),
    stirring: Some(Cited::new(StirringNeed::Needed, MEM)),
    drag_out: ml_per_dm2_in(1.0, 3.0, CP),
    load: amp_per_l_in(0.5, 1.0, CP),
    session: um(200.0, CP),
    suits: Cited::new(&[SUITS_LOW_STRESS], seen(WorkId::Mfg13, "p. 308")),
    rules: &[rule(RULE_SULFAMATE_HEAT, MEM)],
    never_mix: WATTS.never_mix,
    hazards: Cited::new(HAZARDS, MEM),
    notes: &[
        (Column::Counters, COUNTER_BAGGED),
        (Column::Additive, BY_SHEET),
        (Column::Session, SESSION_MORE_POSSIBLE),
    ],
    ..NICKEL
};

pub const CHLORIDE_STRIKE: Solution = Solution {
    id: "ni_wood",
    family: Family::NickelStrike,
    process: Process::Electroplate,
    strike: Strike::Only,
    composition: &[
        mass("NiCl2.6H2O", g_per_l(240.0, MEM)),
        ml_per_l("HCl", 125.0, 125.0, MEM),
    ],
    metal_content: g_per_l(59.3, DER),
    temperature: celsius_in(20.0, 30.0, MEM),
    acidity: ph(1.0, MEM),
    window_still: dm2_at(2.0, 5.0, 10.0, MEM),
    efficiency: share_in(0.3, 0.7, MEM),
    counters: Cited::new(&["Ni"], MEM),
    counter_ratio: times(1.0, MEM),
    cell_volts: volt_in(3.0, 6.0, MEM),
    stirring: Some(Cited::new(StirringNeed::None, MEM)),
    session: um(1.0, MEM),
    suits: Cited::new(&[SUITS_STAINLESS, SUITS_PASSIVE_NICKEL], MEM),
    rules: &[rule(RULE_MINUTES_1_TO_3, MEM)],
    never_mix: Cited::new(&[MIX_CYANIDE, MIX_BLEACH], MEM),
    hazards: Cited::new(
        &[
            "H301", "H331", "H314", "H317", "H334", "H350i", "H360D", "H410",
        ],
        MEM,
    ),
    notes: &[(Column::Acidity, BELOW)],
    ..NICKEL
};
