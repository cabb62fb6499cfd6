//! The catalogue of solutions: the trade table's check columns, and what must hold of every row.

use crate::table::{Row, rows};
use chemistry::element::element_of;
use chemistry::material::material_of;
use chemistry::notes;
use chemistry::solution::{Family, SOLUTIONS, Solution};
use chemistry::substance::{Amount, SUBSTANCES, substance_of};
use chemistry::touch::{self, Verdict};
use chemistry::{
    Catalogue, Choosable, Datum, Electrode, Metal, Place, Process, Setting, dissolution,
    efficiency, faraday, valence_in,
};
use quantity::{CurrentDensity, Fraction, GrowthRate, MassPerCharge, Quantity};
use std::collections::BTreeSet;

fn solution(id: &str) -> &'static Solution {
    match Catalogue::standard().solution(id) {
        Some(s) => s,
        None => panic!("no solution {id}"),
    }
}

fn metal_of(s: &Solution) -> Metal {
    Metal::of(s.metal).unwrap_or_else(|| panic!("{}: no metal {:?}", s.id, s.metal))
}

fn equivalent_of(s: &Solution) -> MassPerCharge {
    let q = metal_of(s).equivalent_in(s);
    q.unwrap_or_else(|| panic!("{}: no equivalent", s.id))
}

/// 0.2 %: the trade table's silver, rhodium and palladium carry other handbooks' densities (10.49, 12.41, 12.02), which
/// differ by up to 0.17 %. The elements' table is the data; the trade table's densities are not.
const PART: f64 = 2e-3;

/// Between the row's two ends, where it has two.
fn within(row: &Row, column: &str, upper: &str, got: f64) {
    let low = row.number(column);
    let high = row.maybe(upper).unwrap_or(low);
    assert!(
        got >= low * (1.0 - PART) && got <= high * (1.0 + PART),
        "{row}: {column}: got {got}, want {low} to {high}; source: {}",
        row.text("source")
    );
}

#[test]
fn equivalents_and_rates_are_the_trade_table_s() {
    let rows = rows("solutions_check.csv");
    assert_eq!(rows.len(), 30);
    for row in &rows {
        let s = solution(row.text("case"));
        let work = match row.text("electrode") {
            "anode" => Electrode::Anode,
            _ => Electrode::Cathode,
        };
        assert_eq!(s.work, work, "{row}");
        if let Some(z) = row.maybe("valence") {
            assert_eq!(f64::from(s.valence), z, "{row}");
        }
        // Left out, with the reason in the row; of these only the bronze still has bands to lie within.
        if row.maybe("g_per_Ah").is_none() {
            assert!(!row.text("left_out").is_empty(), "{row}: no reason");
            continue;
        }
        let q = equivalent_of(s);
        let d = metal_of(s).density();
        let rate =
            faraday::growth_rate(q, d, Fraction::of_si(1.0), CurrentDensity::amp_per_dm2(1.0));
        within(row, "density_g_cm3", "density_g_cm3", d.si() / 1e3);
        within(row, "g_per_Ah", "g_per_Ah_max", q.si() * 3.6e6);
        within(
            row,
            "um_per_h",
            "um_per_h_max",
            rate.in_unit(&GrowthRate::UNITS[0]),
        );
    }
}

#[test]
fn the_rows_are_the_thirty_and_the_four() {
    let ids: BTreeSet<&str> = SOLUTIONS.iter().map(|s| s.id).collect();
    assert_eq!(ids.len(), SOLUTIONS.len(), "an id twice");
    let mut wanted: BTreeSet<String> = rows("solutions_check.csv")
        .iter()
        .map(|r| r.text("case").to_owned())
        .collect();
    for id in [
        "pd_ammonia",
        "pd_ammonia_cl",
        "ag_hydantoin",
        "ag_succinimide",
    ] {
        wanted.insert(id.to_owned());
    }
    assert_eq!(ids, wanted.iter().map(String::as_str).collect());
}

fn ordered<Q: Quantity>(s: &Solution, what: &str, datum: &Datum<Q>, above: f64) {
    let (min, typ, max) = match datum {
        Datum::Unknown => return,
        Datum::Value(v) => (v.value.si(), v.value.si(), v.value.si()),
        Datum::Band(b) => (b.value.min.si(), b.value.typ.si(), b.value.max.si()),
    };
    assert!(
        min <= typ && typ <= max,
        "{}: {what}: {min} {typ} {max}",
        s.id
    );
    assert!(min >= above && max.is_finite(), "{}: {what}: {min}", s.id);
}

#[test]
fn every_band_is_in_order() {
    const TINY: f64 = f64::MIN_POSITIVE;
    for s in SOLUTIONS {
        ordered(s, "metal content", &s.metal_content, TINY);
        ordered(s, "saturation", &s.saturation, TINY);
        ordered(s, "temperature", &s.temperature, 273.15);
        ordered(s, "pH", &s.acidity, 0.0);
        ordered(s, "window", &s.window_still, TINY);
        ordered(s, "highest stirred", &s.highest_stirred, TINY);
        ordered(s, "efficiency", &s.efficiency, TINY);
        ordered(s, "exponent", &s.efficiency_exponent, 0.0);
        ordered(s, "counter ratio", &s.counter_ratio, TINY);
        ordered(s, "counter highest", &s.counter_highest, TINY);
        ordered(s, "conductivity", &s.conductivity, TINY);
        ordered(s, "slope", &s.slope, TINY);
        ordered(s, "evenness factor", &s.evenness_factor, TINY);
        ordered(s, "diffusivity", &s.diffusivity, TINY);
        ordered(s, "surface volts", &s.surface_volts, TINY);
        ordered(s, "cell volts", &s.cell_volts, TINY);
        ordered(s, "additive", &s.additive, TINY);
        ordered(s, "drag-out", &s.drag_out, TINY);
        ordered(s, "load", &s.load, TINY);
        ordered(s, "session", &s.session, TINY);
        let parts = s.own_strike.map_or(&[][..], |o| o.composition);
        for part in s.composition.iter().chain(parts) {
            assert!(
                substance_of(part.what).is_some(),
                "{}: no substance {}",
                s.id,
                part.what
            );
            match &part.amount {
                Amount::Mass(d) | Amount::MassOfMetal(d) => ordered(s, part.what, d, 0.0),
                Amount::Volume(d) => ordered(s, part.what, d, TINY),
                Amount::AsNeeded => {}
            }
        }
        if let (Datum::Band(still), Some(stirred)) = (&s.window_still, s.highest_stirred.typical())
        {
            assert!(
                stirred.si() >= still.value.max.si(),
                "{}: less when stirred",
                s.id
            );
        }
        if let Datum::Band(b) = &s.efficiency {
            assert!(
                efficiency::possible(b.value.max, s.work),
                "{}: efficiency",
                s.id
            );
        }
        if let Some(only) = s.efficiency.typical() {
            assert!(efficiency::possible(only, s.work), "{}: efficiency", s.id);
        }
    }
}

#[test]
fn every_substance_is_used() {
    for substance in SUBSTANCES {
        let used = SOLUTIONS.iter().any(|s| {
            let strike = s.own_strike.map_or(&[][..], |o| o.composition);
            s.composition
                .iter()
                .chain(strike)
                .any(|p| p.what == substance.id)
        });
        assert!(used, "{}", substance.id);
        if let Some(metal) = substance.metal {
            assert!(element_of(metal).is_some(), "{}", substance.id);
        }
    }
}

#[test]
fn the_metal_content_follows_from_the_composition() {
    for s in SOLUTIONS {
        let Some(content) = s.metal_content.typical() else {
            continue;
        };
        let brought = s.composition.iter().fold(0.0, |sum, part| {
            let Some(substance) = substance_of(part.what) else {
                return sum;
            };
            // Of an alloy's bath the content is that of the greatest part; of a hardened gold bath that of gold.
            let main = match metal_of(s) {
                Metal::Element(e) => e.id,
                Metal::Alloy(a) => a.parts.value[0].element,
            };
            if substance.metal != Some(main) {
                return sum;
            }
            let of = |d: &Datum<quantity::Concentration>| d.typical().map_or(0.0, |c| c.si());
            sum + match &part.amount {
                Amount::MassOfMetal(d) => of(d),
                Amount::Mass(d) => of(d) * substance.metal_share.typical().map_or(0.0, |f| f.si()),
                Amount::Volume(_) | Amount::AsNeeded => 0.0,
            }
        });
        // The brass etch's figure is its bath's copper, not the sheet's; the silver nitrate's is rounded in the trade.
        let part = if s.id == "et_agno3" { 0.02 } else { 0.005 };
        if brought > 0.0 {
            assert!(
                (brought - content.si()).abs() <= part * brought,
                "{}: {brought} {}",
                s.id,
                content.si()
            );
        }
    }
}

#[test]
fn a_valence_belongs_to_its_metal() {
    for s in SOLUTIONS {
        for (id, z) in s.valences.value {
            let Some(e) = element_of(id) else {
                panic!("{}: no element {id}", s.id)
            };
            assert!(e.valences.value.contains(z), "{}: {id} never has {z}", s.id);
            assert_eq!(valence_in(id, s), Some(*z), "{}", s.id);
        }
        if s.metal.is_empty() {
            assert_eq!(s.valence, 0, "{}", s.id);
            for setting in [Setting::Home, Setting::Class, Setting::Shop] {
                assert_ne!(s.choosable(setting), Choosable::Offered, "{}", s.id);
            }
            continue;
        }
        let main = match metal_of(s) {
            Metal::Element(e) => e.id,
            Metal::Alloy(a) => a.parts.value[0].element,
        };
        assert_eq!(valence_in(main, s), Some(s.valence), "{}", s.id);
        if s.work == Electrode::Cathode
            && let Metal::Element(e) = metal_of(s)
        {
            assert!(e.deposits, "{}", s.id);
        }
    }
    // One metal, several valences: the solution says which.
    assert_eq!(valence_in("Cu", solution("cu_acid_form")), Some(2));
    assert_eq!(valence_in("Cu", solution("cu_cn")), Some(1));
    assert_eq!(valence_in("Cu", solution("et_nacl")), Some(1));
    assert_eq!(valence_in("Cu", solution("et_cuso4_cu")), Some(2));
    assert_eq!(valence_in("Au", solution("et_cuso4_cu")), None);
}

#[test]
fn ids_and_notes_exist() {
    let all: BTreeSet<&str> = notes::ALL.iter().copied().collect();
    assert_eq!(all.len(), notes::ALL.len(), "a note twice");
    let mut used = BTreeSet::new();
    for s in SOLUTIONS {
        used.extend(s.notes.iter().map(|(_, note)| *note));
        used.extend(s.suits.value);
        used.extend(s.rules.iter().map(|r| r.value));
        used.extend(s.never_mix.value);
        used.extend(s.waste.value);
        used.extend(s.never);
        used.insert(s.home_note);
        for id in s.counters.value {
            assert!(material_of(id).is_some(), "{}: no material {id}", s.id);
        }
        for id in s.attacks.value {
            assert!(Metal::of(id).is_some(), "{}: no metal {id}", s.id);
        }
        assert_eq!(
            s.process == Process::Etch,
            s.work == Electrode::Anode,
            "{}",
            s.id
        );
        for h in s.hazards.value {
            let digits = h.trim_start_matches("EUH").trim_start_matches('H');
            assert!(digits.len() >= 3 && h.contains('H'), "{}: {h}", s.id);
        }
        assert!(
            !s.hazards.value.is_empty() && !s.waste.value.is_empty(),
            "{}",
            s.id
        );
    }
    used.extend(touch::cells().map(|(_, _, t)| t.note));
    used.insert(notes::TOUCH_ETCH_NONE_HERE);
    used.extend(chemistry::alloy::ALLOYS.iter().filter_map(|a| a.note));
    let unused: Vec<_> = all.difference(&used).collect();
    let unknown: Vec<_> = used.difference(&all).collect();
    assert!(
        unused.is_empty() && unknown.is_empty(),
        "unused {unused:?}, not in ALL {unknown:?}"
    );
}

#[test]
fn red_is_hidden_and_poison_never_chosen() {
    let never = [
        "cu_cn",
        "ag_cn",
        "au_flash_cn",
        "white_bronze",
        "cr6",
        "et_stainless",
    ];
    let no_window = ["et_nacl", "et_hno3"];
    for s in SOLUTIONS {
        for setting in [Setting::Home, Setting::Class, Setting::Shop] {
            let got = s.choosable(setting);
            if never.contains(&s.id) {
                assert!(matches!(got, Choosable::Never { .. }), "{}", s.id);
            } else if no_window.contains(&s.id) {
                assert_eq!(got, Choosable::NoWindow, "{}", s.id);
            } else {
                let red = match setting {
                    Setting::Home => s.home.value == Place::Shop,
                    Setting::Class => s.class_use.value == Place::Shop,
                    Setting::Shop => false,
                };
                let want = if red {
                    Choosable::NeedsShop
                } else {
                    Choosable::Offered
                };
                assert_eq!(got, want, "{}", s.id);
            }
        }
    }
    let offered: Vec<_> = Catalogue::standard()
        .offered(Setting::Home)
        .map(|s| s.id)
        .collect();
    for red in [
        "ni_watts",
        "ni_sulfamate",
        "ni_wood",
        "pd_acid",
        "pdni",
        "pd_ammonia",
        "ag_hydantoin",
    ] {
        assert!(!offered.contains(&red), "{red}");
    }
    let class: Vec<_> = Catalogue::standard()
        .offered(Setting::Class)
        .map(|s| s.id)
        .collect();
    for red in ["et_agno3", "au_acid", "au_neutral"] {
        assert!(offered.contains(&red) && !class.contains(&red), "{red}");
    }
}

/// Sterling dissolving into silver nitrate: 0.925 g of silver and 0.075 g of copper for each gram; 0.87 g of silver per
/// Ah to put back, since the cathode takes 4.0247 g and the sheet gives 3.156 (trade table, et_agno3).
#[test]
fn alloys_dissolve_by_their_parts() {
    let bath = solution("et_agno3");
    let Some(sterling) = Catalogue::standard().alloy("Ag925") else {
        panic!("no sterling")
    };
    let Some(d) = dissolution(sterling, bath) else {
        panic!("no dissolution")
    };
    let gram_per_ah = |m: Option<MassPerCharge>| m.map_or(f64::NAN, |m| m.si() * 3.6e6);
    assert!((gram_per_ah(Some(d.equivalent)) - 3.4119).abs() < 5e-4);
    assert!((4.0247 - gram_per_ah(d.of("Ag")) - 0.87).abs() < 0.005);
    assert!((gram_per_ah(d.of("Cu")) / gram_per_ah(Some(d.equivalent)) - 0.075).abs() < 1e-12);
    assert_eq!(d.of("Zn"), None);
    // Brass: 0.70 g in, 0.99 g of copper plated out for each gram (bath balance of the trade pages).
    let Some(brass) = Catalogue::standard().alloy("C26000") else {
        panic!("no brass")
    };
    let Some(d) = dissolution(brass, solution("et_cuso4_br")) else {
        panic!("no dissolution")
    };
    let copper_out = 1.185_494 / gram_per_ah(Some(d.equivalent));
    assert!((copper_out - 0.70 - 0.292).abs() < 0.001);
    for s in SOLUTIONS {
        for a in chemistry::alloy::ALLOYS {
            let Some(d) = dissolution(a, s) else {
                panic!("{} in {}", a.id, s.id)
            };
            let sum: MassPerCharge = d.parts().iter().map(|(_, m)| *m).sum();
            assert!(
                (sum / d.equivalent - 1.0).abs() < 1e-12,
                "{} in {}",
                a.id,
                s.id
            );
        }
    }
}

#[test]
fn what_may_touch_what() {
    let verdict =
        |metal: &str, id: &str| touch::touch_metal(metal, solution(id)).map(|t| t.verdict);
    assert_eq!(verdict("Cu", "cu_acid_form"), Some(Verdict::Good));
    assert_eq!(verdict("Fe", "cu_acid_form"), Some(Verdict::Never));
    assert_eq!(verdict("Fe", "cu_citrate"), Some(Verdict::Good));
    assert_eq!(verdict("Zn", "cu_pyro"), Some(Verdict::SendOut));
    assert_eq!(verdict("Cu", "au_acid"), Some(Verdict::NeedsStrike));
    assert_eq!(verdict("Ag925", "et_agno3"), Some(Verdict::Good));
    assert_eq!(verdict("Ag925", "et_nano3"), Some(Verdict::Never));
    assert_eq!(verdict("S31603", "et_cuso4_cu"), Some(Verdict::Never));
    let mut seen = BTreeSet::new();
    for (base, family, _) in touch::cells() {
        assert!(
            seen.insert(format!("{base:?} {family:?}")),
            "twice: {base:?} {family:?}"
        );
        assert!(
            SOLUTIONS.iter().any(|s| s.family == family),
            "no solution of {family:?}"
        );
    }
    // What an etch lists as suiting it, the matrix allows (nickel silver only in a shop).
    for s in SOLUTIONS.iter().filter(|s| s.process == Process::Etch) {
        for metal in s.attacks.value {
            let want = if *metal == "C75200" {
                Verdict::SendOut
            } else {
                Verdict::Good
            };
            assert_eq!(verdict(metal, s.id), Some(want), "{metal} in {}", s.id);
        }
    }
    assert_eq!(solution("cu_acid_form").family, Family::AcidCopper);
}
