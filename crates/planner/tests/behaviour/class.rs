//! A class, batches and a fair share. Figures of the class of fourteen: nine leaves of 33.51 cm2 and five pods of 18.39,
//! wires of 0.377 cm2, worked by hand in the trade's scenarios (Faraday: 13.231 um/h at 1 A/dm2, efficiency 0.98).

use crate::support::{ask_plan, close, number, with};
use planner::batches::{Batches, FitBy};
use planner::class::witness;
use planner::fair::common_mean;
use planner::{Catalogue, Job, answer, batches, fair_share, job, measure_first};
use quantity::{Length, Quantity, Thickness};
use serde_json::{Value, json};

/// The class of the scenario, at the rule of thumb or with all the supply gives.
fn fourteen(drive: Value) -> Value {
    let piece = |id: &str, count: u32, cm2: f64| {
        json!({"id": id, "count": count, "extent": {"area": {"one_side_m2": cm2 * 1e-4}},
            "hanger": {"wire_d_m": 0.0008, "wet_m": 0.015}})
    };
    json!({"format": 1,
        "pieces": [piece("p1", 9, 33.51), piece("p2", 5, 18.39)],
        "baths": [{"id": "b1", "solution": "cu_acid_form", "volume_m3": 0.006,
            "counter": {"material": "Cu", "facing_m2": 0.024, "distance_m": 0.08}}],
        "steps": [{"id": "s1", "in": [{"bath": "b1", "pieces": ["p1", "p2"]}], "kind": "electroform",
            "drive": drive, "until": {"mean_m": 6e-5}}],
        "supply": {"constant_current": {"highest_A": 1.5}}, "place": "class",
        "assume": [{"at": "baths/b1/efficiency", "value_frac": 0.98}],
        "effects": {"growth": "off", "contacts": "off"},
        "class": {"students_count": 14, "lesson_s": 9000}})
}

fn read(plan: &Value) -> Job {
    match job::read(plan) {
        (Some(job), problems) if problems.is_empty() => job,
        (_, problems) => panic!("not readable: {problems:?}"),
    }
}

fn batches_of(plan: &Value) -> Batches {
    match batches(&Catalogue::standard(), &read(plan)) {
        Some(found) => found,
        None => panic!("no batches of {plan}"),
    }
}

#[test]
fn the_class_of_fourteen_has_what_the_trade_reckons() {
    let answer = ask_plan(&fourteen(json!({"density_A_per_m2": 155})));
    assert_eq!(answer["problems"], json!([]));
    let at = |pointer: &str| number(&answer, pointer);
    for (pointer, want) in [
        ("/class/needs/current_A", 6.181),
        ("/class/bell/pieces/0/mean_m", 12.19e-6),
        ("/class/bell/pieces/1/mean_m", 12.19e-6),
        ("/class/bell/pieces/0/owed_m", 47.81e-6),
        ("/class/bell/charge_C", 1.5 * 9000.0),
        ("/class/time_s", 12.3 * 3600.0),
        ("/charge/known/likely_C", 18.45 * 3600.0),
        ("/baths/0/load_A_per_m3", 250.0),
        ("/baths/0/counter_ratio", 0.6018),
        // At 1 A to the litre, the most the bath's sheet bears.
        ("/class/needs/volume_m3", 6.181e-3),
    ] {
        assert!(
            close(at(pointer), want, 0.005),
            "{pointer}: {}, want {want}",
            at(pointer)
        );
    }
    // 12.3 h of lessons of 2.5 h.
    assert_eq!(at("/class/lessons_count"), 5.0);
    assert_eq!(at("/class/without_count"), 0.0);
}

/// By hand: the mean piece has 28.49 cm2, at 1.55 A/dm2 0.4415 A: three by 1.5 A, thirteen by 6 A.
#[test]
fn how_many_fit_at_once_and_what_rules() {
    let found = batches_of(&fourteen(json!({"density_A_per_m2": 155})));
    assert_eq!(found.pieces, 14);
    assert_eq!(found.ruled_by, Some(FitBy::Current));
    let at_once = |by: FitBy| found.fits.iter().find(|f| f.by == by).map(|f| f.at_once);
    assert_eq!(at_once(FitBy::Current), Some(3));
    assert_eq!(at_once(FitBy::Load), Some(13));
    // Five groups: 398.8 cm2 over 96.8.
    assert_eq!(found.groups.len(), 5);
    let hung: u32 = found
        .groups
        .iter()
        .flat_map(|g| &g.pieces)
        .map(|p| p.count)
        .sum();
    assert_eq!(hung, 14);
    assert!(found.groups.iter().all(|g| g.set.si() <= 1.5 + 1e-9));
}

/// Amp-hours rule in one vessel: batches at the supply's whole current take as long as all together.
#[test]
fn in_one_vessel_the_amp_hours_rule_whatever_the_batching() {
    let plan = fourteen(json!("all_supply"));
    let together = number(&ask_plan(&plan), "/time/known/likely_s");
    let found = batches_of(&plan);
    assert!(found.groups.len() > 1);
    let Some(time) = found.time else {
        panic!("no time")
    };
    assert!(close(time.si(), together, 1e-9), "{} {together}", time.si());
    assert!(close(together, 12.3 * 3600.0, 0.005));
}

/// Over two and four vessels in series the same amp-hours count twice and four times: 6.2 and 3.1 h.
#[test]
fn vessels_in_series_multiply_the_amp_hours() {
    for (vessels, hours) in [(2, 6.2), (4, 3.1)] {
        let mut plan = fourteen(json!("all_supply"));
        plan["baths"] = (1..=vessels)
            .map(|v| json!({"id": format!("b{v}"), "solution": "cu_acid_form"}))
            .collect();
        plan["assume"] = (1..=vessels)
            .map(|v| json!({"at": format!("baths/b{v}/efficiency"), "value_frac": 0.98}))
            .collect();
        // "Spread evenly": each vessel the same part of the area.
        let part = 398.8e-4 / f64::from(vessels);
        plan["pieces"] = (1..=vessels)
            .map(|v| json!({"id": format!("p{v}"), "extent": {"area": {"one_side_m2": part}}}))
            .collect();
        plan["steps"][0]["in"] = (1..=vessels)
            .map(|v| json!({"bath": format!("b{v}"), "pieces": [format!("p{v}")]}))
            .collect();
        let time = number(&ask_plan(&plan), "/time/known/likely_s") / 3600.0;
        assert!(
            (time - hours).abs() < 0.06,
            "{vessels}: {time} h, want {hours}"
        );
    }
}

/// The trade: 1.00 mm that reads 1.11 is 60 um of flat growth; by hand sqrt(1 + 4 x 0.06) = 1.1136.
#[test]
fn the_witness_wire_reads_as_the_trade_says() {
    let read = |growth| witness(Length::mm(1.0), Thickness::um(60.0), growth).si();
    assert!((read(false) - 1.11e-3).abs() < 0.005e-3, "{}", read(false));
    assert!(close(read(true), 1.12e-3, 1e-12), "{}", read(true));
    let answer = ask_plan(&fourteen(json!("all_supply")));
    assert!(close(
        number(&answer, "/class/witness_end_m"),
        read(false),
        1e-9
    ));
    let at_bell = number(&answer, "/class/bell/witness_m");
    assert!(at_bell > 1e-3 && at_bell < read(false));
}

/// A witness wire on the bar as a piece of the job shows what the closed form says.
#[test]
fn the_witness_wire_grows_as_a_wire_that_is_planned() {
    let mut plan = fourteen(json!("all_supply"));
    plan["effects"]["growth"] = json!("on");
    plan["pieces"][0]["hanger"] = json!({"wire_d_m": 0.001, "wet_m": 0.05});
    plan["class"]["witness_d_m"] = json!(0.001);
    let answer = ask_plan(&plan);
    let mean = number(&answer, "/pieces/0/mean/known/likely_m");
    // pi/4 (d1^2 - d^2) L rho = the wire's mass.
    let mass = number(&answer, "/pieces/0/wire_mass/known/likely_kg");
    let d1 = (mass / (8960.0 * 0.05 * core::f64::consts::FRAC_PI_4) + 1e-6).sqrt();
    assert!(
        close(number(&answer, "/class/witness_end_m"), d1, 1e-3),
        "{d1}"
    );
    assert!(close(d1, 1e-3 + 2.0 * mean, 1e-3));
}

/// Done before the bell: nothing is owed, and one lesson is enough.
#[test]
fn a_class_that_is_done_before_the_bell_owes_nothing() {
    let plan = with(
        fourteen(json!("all_supply")),
        &[("/steps/0/until", json!({"time_s": 3600}))],
    );
    let answer = ask_plan(&plan);
    assert_eq!(number(&answer, "/class/bell/after_s"), 3600.0);
    assert_eq!(number(&answer, "/class/bell/pieces/0/owed_m"), 0.0);
    assert_eq!(number(&answer, "/class/lessons_count"), 1.0);
}

/// A latecomer, a poor contact and a good one: each leaves when it has the layer, and all end alike.
#[test]
fn a_fair_share_gives_all_the_same_layer() {
    let leaf = |id: &str, a: f64, ohm: f64| {
        json!({"id": id, "extent": {"area": {"one_side_m2": a, "sides_count": 2}},
            "contact": {"contact_ohm": ohm}, "hanger": {"wire_d_m": 0.0008, "wet_m": 0.02}})
    };
    for (growth, contacts, drive) in [
        ("off", "off", json!({"density_A_per_m2": 100})),
        ("off", "on", json!({"density_A_per_m2": 100})),
        ("on", "off", json!({"current_A": 0.9})),
    ] {
        let mut plan = json!({"format": 1,
            "pieces": [leaf("p1", 0.00142, 0.02), leaf("p2", 0.00098, 0.5), leaf("p3", 0.00215, 0.1)],
            "baths": [{"id": "b1", "solution": "cu_acid_form", "counter": {"distance_m": 0.08}}],
            "steps": [{"id": "s1", "in": [{"bath": "b1", "pieces": ["p1", "p2", "p3"]}], "kind": "electroform",
                "drive": drive, "until": {"time_s": 40000}}],
            "effects": {"growth": growth, "contacts": contacts}});
        plan["pieces"][2]["joins"] = json!({"step": "s1", "after_s": 3600});
        let Some(fair) = fair_share(&Catalogue::standard(), &read(&plan), Thickness::um(80.0))
        else {
            panic!("no fair share: {growth} {contacts}")
        };
        let after = answer(&Catalogue::standard(), &fair.job);
        assert_eq!(after.problems, []);
        for piece in &after.pieces {
            let mean = piece.mean.known().map_or(f64::NAN, |m| m.likely.si());
            assert!(
                close(mean, 80e-6, 1e-6),
                "{growth} {contacts} {}: {mean}",
                piece.id
            );
        }
        assert_eq!(fair.leaves.len(), 3);
        let of = |n: usize| fair.leaves[n].after.si();
        assert!(of(2) > of(0), "who comes late leaves late");
        if growth == "off" && contacts == "off" {
            assert!(close(of(2) - 3600.0, of(0), 1e-6));
        }
    }
}

/// What all pieces of a bar could have: what is aimed at, else what the latecomer gets; nothing where they are alike.
#[test]
fn what_all_could_have_is_the_aim_or_what_the_last_one_gets() {
    let plan = |late: bool, until: Value| {
        let mut plan = json!({"format": 1,
            "pieces": [{"id": "p1", "extent": {"area": {"one_side_m2": 0.0014}}},
                {"id": "p2", "extent": {"area": {"one_side_m2": 0.001}}}],
            "baths": [{"id": "b1", "solution": "cu_acid_form", "counter": {"distance_m": 0.08}}],
            "steps": [{"id": "s1", "in": [{"bath": "b1", "pieces": ["p1", "p2"]}], "kind": "electroform",
                "drive": {"density_A_per_m2": 100}, "until": until}],
            "effects": {"growth": "off", "contacts": "off"}});
        if late {
            plan["pieces"][1]["joins"] = json!({"step": "s1", "after_s": 3600});
        }
        let job = read(&plan);
        let answered = answer(&Catalogue::standard(), &job);
        common_mean(&job, &answered).map(Quantity::si)
    };
    // 13.231 um/h at 1 A/dm2 times 0.98 for nine hours of ten.
    let nine = plan(true, json!({"time_s": 36000})).expect("they differ");
    assert!(close(nine, 9.0 * 13.231e-6 * 0.98, 1e-3), "{nine}");
    assert_eq!(plan(true, json!({"mean_m": 8e-5})), Some(8e-5));
    assert_eq!(plan(false, json!({"time_s": 36000})), None);
}

#[test]
fn what_to_measure_first_is_what_narrows_most() {
    let plan = fourteen(json!({"density_A_per_m2": 155}));
    let all = planner::narrowing(&Catalogue::standard(), &read(&plan));
    assert_eq!(
        measure_first(&Catalogue::standard(), &read(&plan)).as_ref(),
        all.first()
    );
    assert!(!all.is_empty());
}
