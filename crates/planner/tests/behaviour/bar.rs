//! Laws of several pieces on one bar: unlike pieces that join and leave, vessels in series, contacts, areas that grow.

use crate::support::{ask_plan, close, config};
use planner::{Catalogue, Job, answer, job, ways_out};
use proptest::prelude::*;
use serde_json::{Value, json};

/// Something to hang: surface, wire, contact, and when it joins and leaves as shares of the first step.
#[derive(Clone, Debug)]
struct Hung {
    extent: Value,
    count: u32,
    wet: f64,
    contact: f64,
    joins: Option<f64>,
    leaves: Option<f64>,
}

fn hung() -> impl Strategy<Value = Hung> {
    let extent = prop_oneof![
        (2e-4..4e-3f64, 1..=2u32)
            .prop_map(|(a, sides)| json!({"area": {"one_side_m2": a, "sides_count": sides}})),
        (0.012..0.024f64, 6e-4..2e-3f64).prop_map(|(bore, d)| json!({"parts": [{"id": "a",
            "shape": {"torus": {"bore_m": bore, "wire_d_m": d}}}]})),
        (0.01..0.04f64, 0.3..0.9f64).prop_map(|(l, w)| json!({"parts": [{"id": "a",
            "shape": {"ellipsoid": {"length_m": l, "width_m": l * w, "height_m": l * w * 0.8}}}]})),
    ];
    let moment = || prop::option::weighted(0.3, 0.05..0.95f64);
    (
        extent,
        1..4u32,
        0.0..0.03f64,
        0.0..2.0f64,
        moment(),
        moment(),
    )
        .prop_map(|(extent, count, wet, contact, joins, leaves)| Hung {
            extent,
            count,
            wet,
            contact,
            joins,
            // Who joins in the first step leaves with the job.
            leaves: leaves.filter(|_| joins.is_none()),
        })
}

/// A whole evening: the first piece of each vessel hangs all the time.
#[derive(Clone, Debug)]
struct Evening {
    pieces: Vec<Hung>,
    vessels: usize,
    seconds: [f64; 2],
    density: f64,
    growth: bool,
    contacts: bool,
    fixed: bool,
}

fn evening() -> impl Strategy<Value = Evening> {
    (
        prop::collection::vec(hung(), 2..7),
        1..=2usize,
        (1800.0..40_000.0f64, 600.0..20_000.0f64),
        30.0..150.0f64,
        any::<bool>(),
        any::<bool>(),
        any::<bool>(),
    )
        .prop_map(
            |(pieces, vessels, (a, b), density, growth, contacts, fixed)| Evening {
                pieces,
                vessels,
                seconds: [a, b],
                density,
                growth,
                contacts,
                fixed,
            },
        )
}

impl Evening {
    fn plan(&self) -> Value {
        let pieces: Vec<Value> = self.pieces.iter().enumerate().map(|(n, p)| {
            let mut piece = json!({"id": format!("p{}", n + 1), "count": p.count, "extent": p.extent,
                "hanger": {"wire_d_m": 0.0008, "wet_m": p.wet}, "contact": {"contact_ohm": p.contact}});
            for (key, at) in [("joins", p.joins), ("leaves", p.leaves)] {
                if let Some(share) = at.filter(|_| n >= self.vessels) {
                    piece[key] = json!({"step": "s1", "after_s": share * self.seconds[0]});
                }
            }
            piece
        }).collect();
        let vessels = |of: usize| -> Vec<Value> {
            (0..of)
                .map(|v| {
                    let ids: Vec<String> = (0..pieces.len())
                        .filter(|n| n % of == v)
                        .map(|n| format!("p{}", n + 1))
                        .collect();
                    json!({"bath": format!("b{}", v + 1), "pieces": ids})
                })
                .collect()
        };
        let step = |n: usize| {
            let drive = match self.fixed {
                true => json!({"current_A": self.density * 0.01}),
                false => json!({"density_A_per_m2": self.density}),
            };
            json!({"id": format!("s{}", n + 1), "in": vessels(self.vessels), "kind": "electroform",
                "drive": drive, "until": {"time_s": self.seconds[n]}})
        };
        let baths: Vec<Value> = (1..=self.vessels).map(|v| json!({"id": format!("b{v}"),
            "solution": "cu_acid_form", "volume_m3": 0.003, "counter": {"material": "Cu", "distance_m": 0.08}})).collect();
        let switch = |on: bool| if on { "on" } else { "off" };
        json!({"format": 1, "steps": [step(0), step(1)], "baths": baths, "pieces": pieces,
            "effects": {"growth": switch(self.growth), "contacts": switch(self.contacts)}})
    }
}

fn list<'a>(tree: &'a Value, key: &str) -> impl Iterator<Item = &'a Value> {
    tree[key].as_array().into_iter().flatten()
}

#[track_caller]
fn known(value: &Value, unit: &str) -> f64 {
    match value["known"][format!("likely_{unit}")].as_f64() {
        Some(number) => number,
        None => panic!("nothing known: {value}"),
    }
}

fn read(plan: &Value) -> Job {
    match job::read(plan) {
        (Some(job), problems) if problems.is_empty() => job,
        (_, problems) => panic!("not readable: {problems:?}"),
    }
}

/// Copper, two electrons: the reference page's molar mass and Faraday's constant.
const KG_PER_C: f64 = 0.063_546 / (2.0 * 96_485.332_123_31);

/// What shows of a piece is what showed while it hung last, ends of its range and all: while no area grows, the same as in a
/// job that nobody leaves.
#[test]
fn who_leaves_early_shows_what_showed_while_it_hung() {
    let sheet = |n: usize, area: f64| json!({"id": format!("p{n}"), "extent": {"area": {"one_side_m2": area, "sides_count": 2}}});
    let all = json!({"format": 1,
        "pieces": [sheet(1, 2e-3), sheet(2, 1.2e-3), sheet(3, 8e-4)],
        "baths": [{"id": "b1", "solution": "cu_acid_form", "counter": {"material": "Cu", "distance_m": 0.08}}],
        "steps": [{"id": "s1", "in": [{"bath": "b1", "pieces": ["p1", "p2", "p3"]}], "kind": "electroform",
            "drive": {"density_A_per_m2": 100}, "until": {"time_s": 14400}}],
        "effects": {"growth": "off", "contacts": "off"}});
    let mut left = all.clone();
    left["pieces"][1]["leaves"] = json!({"step": "s1", "after_s": 3600});
    let (all, left) = (ask_plan(&all), ask_plan(&left));
    let of = |answer: &Value, key: &str| answer["pieces"][1][key]["known"].clone();
    for (key, unit) in [("share", "frac"), ("density", "A_per_m2"), ("current", "A")] {
        let ends = |answer: &Value| {
            ["low", "likely", "high"].map(|end| of(answer, key)[format!("{end}_{unit}")].as_f64())
        };
        let [low, likely, high] = ends(&left);
        assert!(
            low < likely && likely < high,
            "{key}: {low:?} {likely:?} {high:?}"
        );
        assert_eq!(ends(&all), ends(&left), "{key}");
    }
    let mean = |answer: &Value| known(&answer["pieces"][1]["mean"], "m");
    assert!(close(mean(&all), 4.0 * mean(&left), 1e-9));
}

proptest! {
    #![proptest_config(config(40))]

    #[test]
    fn shares_sum_to_the_current_in_every_vessel_and_stage(evening in evening()) {
        let plan = evening.plan();
        let answer = ask_plan(&plan);
        prop_assert_eq!(&answer["problems"], &json!([]), "{}", plan);
        for stage in list(&answer, "stages") {
            for v in 0..evening.vessels {
                let shares: f64 = list(stage, "pieces")
                    .filter(|p| {
                        let n: usize = p["id"].as_str().and_then(|id| id[1..].parse().ok()).unwrap_or(0);
                        (n - 1) % evening.vessels == v
                    })
                    .map(|p| p["share_frac"].as_f64().unwrap_or(f64::NAN) * p["count"].as_f64().unwrap_or(f64::NAN))
                    .sum();
                prop_assert!(close(shares, 1.0, 1e-12), "{} in vessel {}: {}", shares, v, stage);
            }
        }
    }

    /// What flows times how long, stage by stage, is the charge of the step; what that moves lies on pieces and wires, as
    /// much in each vessel, and comes from its anode.
    #[test]
    fn charges_balance_over_stages_steps_and_vessels(evening in evening()) {
        let mut plan = evening.plan();
        plan["assume"] = (1..=evening.vessels)
            .map(|v| json!({"at": format!("baths/b{v}/efficiency"), "value_frac": 0.97})).collect();
        let answer = ask_plan(&plan);
        let mut whole = 0.0;
        for step in list(&answer, "steps") {
            let stages: f64 = list(&answer, "stages").filter(|s| s["step"] == step["id"]).map(|s| {
                let time = |key: &str| s[key]["known"]["after_s"].as_f64().unwrap_or(f64::NAN);
                s["real_A"].as_f64().unwrap_or(f64::NAN) * (time("ends") - time("starts"))
            }).sum();
            let charge = known(&step["charge"], "C");
            prop_assert!(close(charge, stages, 1e-9), "{} {}", charge, stages);
            whole += charge;
        }
        prop_assert!(close(known(&answer["charge"], "C"), whole, 1e-12));
        for (v, bath) in list(&answer, "baths").enumerate() {
            let laid: f64 = list(&answer, "pieces").enumerate().filter(|(n, _)| n % evening.vessels == v)
                .map(|(_, p)| p["count"].as_f64().unwrap_or(f64::NAN) * (known(&p["mass"], "kg") + known(&p["wire_mass"], "kg")))
                .sum();
            prop_assert!(close(laid, KG_PER_C * 0.97 * whole, 1e-6), "{} of {} C: {}", laid, whole, plan);
            prop_assert!(close(-known(&bath["counter"], "kg"), KG_PER_C * whole, 1e-6), "{}", bath);
        }
    }

    /// At a current that is given, more on the bar is less for each. With growing areas that holds of what hangs from the
    /// start: who comes late finds less grown wires, and takes more. Contacts and growth at once are shared as they stand at
    /// a stage's start: there a stage more is another reckoning.
    #[test]
    fn a_piece_more_never_makes_another_thicker(evening in evening(), more in hung()) {
        let mut with_fixed = Evening {
            fixed: true,
            contacts: evening.contacts && !evening.growth,
            ..evening
        };
        if with_fixed.growth {
            for piece in &mut with_fixed.pieces {
                piece.joins = None;
            }
        }
        let mut larger = with_fixed.clone();
        larger.pieces.push(more);
        let (few, many) = (ask_plan(&with_fixed.plan()), ask_plan(&larger.plan()));
        for (a, b) in list(&few, "pieces").zip(list(&many, "pieces")) {
            let (a, b) = (known(&a["mean"], "m"), known(&b["mean"], "m"));
            prop_assert!(b <= a * (1.0 + 1e-9), "{} became {}", a, b);
        }
    }

    /// With growing areas the current must be given (a density is set anew at every step), and areas alone share it.
    #[test]
    fn a_step_cut_in_two_changes_nothing(evening in evening(), cut in 0.02..0.98f64) {
        let evening = Evening {
            fixed: evening.fixed || evening.growth,
            contacts: evening.contacts && !evening.growth,
            ..evening
        };
        let whole = evening.plan();
        let mut split = whole.clone();
        let at = cut * evening.seconds[0];
        let mut second = whole["steps"][0].clone();
        second["id"] = json!("s1b");
        second["until"] = json!({"time_s": evening.seconds[0] - at});
        split["steps"][0]["until"] = json!({"time_s": at});
        if let Some(steps) = split["steps"].as_array_mut() {
            steps.insert(1, second);
        }
        for piece in split["pieces"].as_array_mut().into_iter().flatten() {
            for key in ["joins", "leaves"] {
                let Some(after) = piece[key]["after_s"].as_f64() else { continue };
                if after >= at {
                    piece[key] = json!({"step": "s1b", "after_s": after - at});
                }
            }
        }
        let (whole, split) = (ask_plan(&whole), ask_plan(&split));
        prop_assert_eq!(&split["problems"], &json!([]));
        prop_assert!(close(known(&whole["charge"], "C"), known(&split["charge"], "C"), 1e-9));
        for (a, b) in list(&whole, "pieces").zip(list(&split, "pieces")) {
            for (what, unit) in [("mean", "m"), ("mass", "kg"), ("wire_mass", "kg")] {
                prop_assert!(close(known(&a[what], unit), known(&b[what], unit), 1e-9), "{}", what);
            }
        }
    }
}

proptest! {
    #![proptest_config(config(12))]

    /// By the whole answer of the job with the change.
    #[test]
    fn every_way_out_of_any_evening_lifts_its_limit(evening in evening(), highest in 0.05..2.0f64, lowest in 0.0..0.3f64) {
        let mut plan = evening.plan();
        let lowest = if lowest < highest { lowest } else { 0.0 };
        plan["supply"] = json!({"constant_current": {"lowest_A": lowest, "highest_A": highest,
            "display_step_A": 0.01, "highest_V": 1.5}});
        let (catalogue, job) = (Catalogue::standard(), read(&plan));
        for way in ways_out(&catalogue, &job) {
            let after = answer(&catalogue, &way.job);
            prop_assert!(after.problems.is_empty(), "{:?}: {:?}", way.change, after.problems);
            let still = after.limits.iter().any(|l| l.kind == way.lifts && l.at == way.at);
            prop_assert!(!still, "{:?} stays after {:?}", way.lifts, way.change);
        }
    }
}
