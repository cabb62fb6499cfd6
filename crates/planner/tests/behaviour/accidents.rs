//! After an accident: what is left and how to go on. What is wanted follows from Faraday's law by hand, from the trade's table
//! of gaps, or from the whole job.

use crate::generator::plannable;
use crate::support::{
    ask, ask_plan, base, close, config, etch_base, finish_base, is_sound, number, with,
};
use proptest::prelude::*;
use serde_json::{Value, json};

pub fn after(plan: &Value, step: &str, at: f64, what: Value) -> Value {
    let mut question = json!({"format": 1, "job": plan, "step": step, "after_s": at});
    for (key, value) in what.as_object().into_iter().flatten() {
        question[key] = value.clone();
    }
    let answer = ask(&json!({ "after": question }).to_string());
    is_sound(&answer, &question.to_string());
    answer
}

pub fn ring() -> Value {
    with(
        base(),
        &[(
            "/assume",
            json!([{"at": "baths/b1/efficiency", "value_frac": 0.98}]),
        )],
    )
}

const STEP_TIME: &str = "/steps/0/time/known/likely_s";

/// Bench tables 11: under 2 minutes nothing, to half an hour an additive film, a night 0.1 to 0.25 um gone; not known how long
/// counts as a night; nickel, silver and gold after ten seconds strike again.
#[test]
fn a_power_cut_is_gone_on_from_by_how_long_it_was() {
    let whole = number(&ask_plan(&ring()), STEP_TIME);
    let gaps = [
        (json!({"gap_s": 60}), "go_on"),
        (json!({"gap_s": 900}), "half_current"),
        (json!({"gap_s": 43200}), "mild_etch"),
        (json!({}), "mild_etch"),
    ];
    for (gap, kind) in gaps {
        let answer = after(&ring(), "s1", 7200.0, json!({"power_cut": gap}));
        assert_eq!(answer["problems"], json!([]));
        assert_eq!(answer["after"]["reentry"]["kind"], kind);
        let piece = &answer["after"]["pieces"][0];
        // 1.2 A/dm2 for two hours at 13.231 x 0.98 um/h.
        assert!(close(
            number(piece, "/had/likely_m"),
            2.0 * 1.2 * 13.231e-6 * 0.98,
            1e-3
        ));
        let rest = number(&answer, STEP_TIME);
        let lost = number(piece, "/lost/likely_m");
        let growth = number(&answer, "/steps/0/growth/known/likely_m_per_s");
        assert!(
            close(rest, whole - 7200.0 + lost / growth, 1e-9),
            "{kind}: {rest}"
        );
        if kind == "mild_etch" {
            assert!(close(number(piece, "/lost/low_m"), 0.1e-6, 1e-9));
            assert!(close(number(piece, "/lost/high_m"), 0.25e-6, 1e-9));
        }
    }
    let gold = |gap: f64| {
        after(
            &finish_base(),
            "s1",
            300.0,
            json!({"power_cut": {"gap_s": gap}}),
        )
    };
    assert_eq!(gold(5.0)["after"]["reentry"]["kind"], "go_on");
    assert_eq!(gold(15.0)["after"]["reentry"]["kind"], "strike_again");
    let etch = after(
        &etch_base(),
        "s1",
        300.0,
        json!({"power_cut": {"gap_s": 900}}),
    );
    assert_eq!(etch["after"]["reentry"]["kind"], "look_at_film");
    let time = number(&ask_plan(&etch_base()), STEP_TIME);
    assert!(close(number(&etch, STEP_TIME), time - 300.0, 1e-9));
}

/// Half the current five minutes after a short gap.
#[test]
fn a_way_in_again_says_its_current() {
    let answer = after(&ring(), "s1", 7200.0, json!({"power_cut": {"gap_s": 900}}));
    let numbers = answer["after"]["reentry"]["numbers"]
        .as_array()
        .cloned()
        .unwrap_or_default();
    let of = |name: &str| {
        numbers
            .iter()
            .find(|n| n["name"] == name)
            .cloned()
            .unwrap_or_default()
    };
    let set = number(&answer, "/steps/0/current/known/set_A");
    assert!(close(number(&of("current"), "/value_A"), set / 2.0, 1e-9));
    assert_eq!(of("held")["value_s"], 300.0);
    assert_eq!(of("dip")["value_s"], 15.0);
    assert_eq!(of("acid")["value_frac"], 0.05);
}

/// Faraday: the reversed current for ten minutes takes what the same charge would lay at an efficiency of 1.
#[test]
fn reversed_leads_take_what_their_charge_dissolves() {
    let answer = after(&ring(), "s1", 7200.0, json!({"reversed": {"for_s": 600}}));
    let piece = &answer["after"]["pieces"][0];
    let lost = 1.2 * 13.231e-6 / 6.0;
    assert!(close(number(piece, "/lost/likely_m"), lost, 1e-3));
    let (had, left) = (
        number(piece, "/had/likely_m"),
        number(piece, "/left/likely_m"),
    );
    assert!(close(left, had - lost, 1e-3));
    assert_eq!(answer["after"]["reentry"]["kind"], "mild_etch");
    // What remains is laid at 1.2 A/dm2 again.
    let rest = number(&answer, STEP_TIME) / 3600.0;
    assert!(close(
        rest,
        (200e-6 - left) / (1.2 * 13.231e-6 * 0.98),
        1e-3
    ));
    // Long enough, nothing is left, and never less.
    let gone = after(&ring(), "s1", 7200.0, json!({"reversed": {"for_s": 86400}}));
    assert_eq!(gone["after"]["pieces"][0]["left"]["likely_m"], 0.0);
    let whole = number(&ask_plan(&ring()), STEP_TIME);
    assert!(close(number(&gone, STEP_TIME), whole, 1e-9));
}

/// A gram of copper off a known area is its mass over density and area; a bare part is its share of the mean.
#[test]
fn what_is_filed_off_is_missing() {
    let area = number(&ask_plan(&ring()), "/pieces/0/area/known/likely_m2");
    let answer = after(
        &ring(),
        "s1",
        36000.0,
        json!({"filed": {"mass_kg": 0.0001}}),
    );
    let piece = &answer["after"]["pieces"][0];
    assert!(close(
        number(piece, "/lost/likely_m"),
        0.0001 / 8960.0 / area,
        1e-9
    ));
    let bare = after(
        &ring(),
        "s1",
        36000.0,
        json!({"filed": {"area_m2": area / 4.0}}),
    );
    let piece = &bare["after"]["pieces"][0];
    assert!(close(
        number(piece, "/lost/likely_m"),
        number(piece, "/had/likely_m") / 4.0,
        1e-9
    ));
    // Where it is already thick enough nothing remains.
    let done = after(
        &with(ring(), &[("/steps/0/until", json!({"time_s": 36000}))]),
        "s1",
        36000.0,
        json!({"power_cut": {"gap_s": 10}}),
    );
    assert_eq!(number(&done, STEP_TIME), 0.0);
}

/// A thin first layer over a coat may be gone in places after a night.
#[test]
fn a_thin_layer_over_a_coat_is_measured_first() {
    let plan = with(
        ring(),
        &[(
            "/pieces/0/base",
            json!({"nonconductor": {"coat": "graphite"}}),
        )],
    );
    let thin = after(&plan, "s1", 180.0, json!({"power_cut": {}}));
    assert_eq!(thin["after"]["pieces"][0]["measure_ohms"], true);
    let thick = after(&plan, "s1", 7200.0, json!({"power_cut": {}}));
    assert!(thick["after"]["pieces"][0]["measure_ohms"].is_null());
}

/// Once covered, a graphite coat no longer stalls, nor does anybody wait for sealer and paint again; the way in is live.
#[test]
fn a_coat_that_is_covered_is_behind() {
    let step = |id: &str, density: f64, until: Value| {
        json!({"id": id, "in": [{"bath": "b1", "pieces": ["p1"]}], "kind": "electroform",
            "drive": {"density_A_per_m2": density}, "until": until})
    };
    let plan = with(
        ring(),
        &[
            (
                "/pieces/0/base",
                json!({"nonconductor": {"coat": "graphite"}}),
            ),
            (
                "/steps",
                json!([
                    step("s1", 150.0, json!({"time_s": 3600})),
                    step("s2", 80.0, json!({"mean_m": 0.0002})),
                ]),
            ),
            ("/attend", json!({"session_s": 14400})),
        ],
    );
    let answer = after(&plan, "s2", 7200.0, json!({"power_cut": {}}));
    let limits = answer["limits"].to_string();
    assert!(!limits.contains("covering_stalls"), "{limits}");
    let sessions = answer["sessions"].as_array().cloned().unwrap_or_default();
    assert!(!sessions.is_empty() && sessions.iter().all(|s| s["doing"] == "session"));
    assert_eq!(answer["steps"][0]["entry"], "live");
}

/// The clock goes on from when the current came back, and what remains is split into sessions.
#[test]
fn what_remains_has_its_clock_and_its_sessions() {
    let plan = with(
        ring(),
        &[
            ("/start", json!({"local": "2026-05-01T10:00"})),
            ("/attend", json!({"session_s": 14400})),
        ],
    );
    let answer = after(&plan, "s1", 7200.0, json!({"power_cut": {"gap_s": 1800}}));
    assert_eq!(
        answer["steps"][0]["starts"]["known"]["local"],
        "2026-05-01T12:30"
    );
    let hours = number(&answer, "/time/known/likely_s") / 3600.0;
    let sessions = answer["sessions"].as_array().map_or(0, Vec::len);
    assert_eq!(sessions, (hours / 4.0).ceil() as usize);
}

/// Pieces that left stay out; those that were to join still do.
#[test]
fn pieces_that_left_are_no_part_of_what_remains() {
    let mut plan = ring();
    let piece = |id: &str| json!({"id": id, "extent": {"area": {"one_side_m2": 0.001}}});
    plan["pieces"] = json!([piece("p1"), piece("p2"), piece("p3")]);
    plan["pieces"][1]["leaves"] = json!({"step": "s1", "after_s": 3600});
    plan["pieces"][2]["joins"] = json!({"step": "s1", "after_s": 10800});
    plan["steps"][0]["in"][0]["pieces"] = json!(["p1", "p2", "p3"]);
    let answer = after(&plan, "s1", 7200.0, json!({"power_cut": {"gap_s": 60}}));
    assert_eq!(answer["problems"], json!([]));
    let ids = |list: &Value| -> Vec<String> {
        let all = list.as_array().into_iter().flatten();
        all.filter_map(|p| p["id"].as_str().map(str::to_owned))
            .collect()
    };
    assert_eq!(ids(&answer["after"]["pieces"]), ["p1"]);
    assert_eq!(ids(&answer["pieces"]), ["p1", "p3"]);
    assert_eq!(answer["stages"][1]["joins"], json!(["p3"]));
    assert_eq!(answer["stages"][1]["starts"]["known"]["after_s"], 3600.0);
}

/// A bare copper wire of 0.8 mm, 10 cm of it in the bath, ten hours at 50 mA; areas grow.
fn wire() -> Value {
    with(
        ring(),
        &[
            (
                "/pieces/0/extent",
                json!({"parts": [{"id": "a", "shape": {"rod": {"diameter_m": 0.0008, "length_m": 0.1, "ends": "covered"}}}]}),
            ),
            ("/pieces/0/base", json!({"metal": {"id": "Cu"}})),
            ("/steps/0/drive", json!({"current_A": 0.05})),
            ("/steps/0/until", json!({"time_s": 36000})),
            ("/effects", json!({"growth": "on", "contacts": "off"})),
        ],
    )
}

/// Copper volume of an ampere second at 0.98 of 1.18549 g/Ah, 8.96 g/cm3.
const PER_CHARGE: f64 = 1.18549e-3 / 3600.0 / 8960.0;

/// A wire of radius r with a volume v on a length l has r1 = sqrt(r^2 + v / (pi l)) (geometry).
fn around(r: f64, volume: f64) -> f64 {
    (r * r + volume / (core::f64::consts::PI * 0.1)).sqrt()
}

#[test]
fn what_remains_goes_on_from_the_area_that_has_grown() {
    let answer = after(&wire(), "s1", 18000.0, json!({"power_cut": {"gap_s": 10}}));
    let had = around(0.0004, 0.05 * 18000.0 * 0.98 * PER_CHARGE);
    let end = around(0.0004, 0.05 * 36000.0 * 0.98 * PER_CHARGE);
    let at = |pointer: &str| number(&answer, pointer);
    assert!(close(
        at("/after/pieces/0/had/likely_m"),
        had - 0.0004,
        1e-4
    ));
    assert!(close(at("/pieces/0/mean/known/likely_m"), end - had, 1e-4));
    let area = 2.0 * core::f64::consts::PI * had * 0.1;
    assert!(close(at("/pieces/0/area/known/likely_m2"), area, 1e-6));
    assert!(close(
        at("/steps/0/density/known/likely_A_per_m2"),
        0.05 / area,
        1e-6
    ));
    // Without growing areas a wire is as it was bent.
    let flat = with(wire(), &[("/effects/growth", json!("off"))]);
    let flat = after(&flat, "s1", 18000.0, json!({"power_cut": {"gap_s": 10}}));
    let bare = core::f64::consts::PI * 0.0008 * 0.1;
    assert!(close(
        number(&flat, "/pieces/0/area/known/likely_m2"),
        bare,
        1e-9
    ));
}

/// Reversed or filed, a metal's volume comes off a wire that is thicker by now.
#[test]
fn what_goes_from_a_wire_goes_from_its_grown_area() {
    let had = around(0.0004, 0.05 * 18000.0 * 0.98 * PER_CHARGE);
    let lost = |what: Value, volume: f64| {
        let answer = after(&wire(), "s1", 18000.0, what);
        let (got, want) = (
            number(&answer, "/after/pieces/0/lost/likely_m"),
            had - around(had, -volume),
        );
        assert!(close(got, want, 1e-3), "{got}, want {want}");
    };
    lost(
        json!({"reversed": {"for_s": 3600}}),
        0.05 * 3600.0 * PER_CHARGE,
    );
    lost(json!({"filed": {"mass_kg": 0.0001}}), 0.0001 / 8960.0);
}

/// A bore of 17.6 mm that is to grow by 0.1 mm on all sides twice.
#[test]
fn a_bore_goes_on_growing_shut_from_where_it_was() {
    let answer = after(&ring(), "s1", 36000.0, json!({"power_cut": {"gap_s": 10}}));
    let bore = number(&answer, "/pieces/0/bore_after/known/likely_m");
    assert!(close(bore, 0.0176 - 2.0 * 0.0002, 1e-9), "{bore}");
}

/// Nickel silver goes into acid copper only under a copper from citrate (the catalogue's row): by then it lies under it.
#[test]
fn the_base_of_what_remains_is_the_metal_that_lies_on_it() {
    let plan = with(
        base(),
        &[
            ("/pieces/0/base", json!({"metal": {"id": "C75200"}})),
            (
                "/baths",
                json!([{"id": "b0", "solution": "cu_citrate"}, {"id": "b1", "solution": "cu_acid_form"}]),
            ),
            (
                "/steps",
                json!([
                    {"id": "s0", "in": [{"bath": "b0", "pieces": ["p1"]}], "kind": "electroplate",
                        "drive": {"density_A_per_m2": 50}, "until": {"mean_m": 2e-6}},
                    {"id": "s1", "in": [{"bath": "b1", "pieces": ["p1"]}], "kind": "electroform",
                        "drive": {"density_A_per_m2": 120}, "until": {"mean_m": 2e-4}},
                ]),
            ),
        ],
    );
    let strike = |answer: &Value| answer["limits"].to_string().contains("needs_strike");
    assert!(!strike(&ask_plan(&plan)));
    for (what, shows) in [
        (json!({"power_cut": {"gap_s": 10}}), false),
        (json!({"power_cut": {}}), false),
        (json!({"filed": {"mass_kg": 1e-5}}), false),
        // Down to the base: it must be covered anew.
        (json!({"filed": {"area_m2": 1e-5}}), true),
    ] {
        let answer = after(&plan, "s1", 7200.0, what.clone());
        assert_eq!(answer["problems"], json!([]), "{what}");
        assert_eq!(strike(&answer), shows, "{what}");
    }
    // Alone in acid copper it needs one, whatever lies on it by accident: until something surely does.
    let alone = with(
        base(),
        &[("/pieces/0/base", json!({"metal": {"id": "C75200"}}))],
    );
    assert!(strike(&ask_plan(&alone)));
    assert!(strike(&after(
        &alone,
        "s1",
        0.0,
        json!({"power_cut": {"gap_s": 10}})
    )));
    let gone = after(&alone, "s1", 600.0, json!({"reversed": {"for_s": 6000}}));
    assert!(strike(&gone), "nothing is left on it");
}

/// A layer's thinnest place and mass are counted for that layer alone, not for what lies under it.
#[test]
fn what_remains_of_a_second_layer_is_its_own() {
    for until in [json!({"thinnest_m": 1e-6}), json!({"mass_kg": 5e-6})] {
        let plan = with(
            finish_base(),
            &[
                ("/place", json!("shop")),
                (
                    "/baths",
                    json!([{"id": "b0", "solution": "cu_acid_form", "counter": {"distance_m": 0.05}},
                        {"id": "b1", "solution": "au_sulfite", "counter": {"material": "platinised_titanium", "distance_m": 0.05}}]),
                ),
                (
                    "/steps",
                    json!([
                        {"id": "s0", "in": [{"bath": "b0", "pieces": ["p1"]}], "kind": "electroform",
                            "drive": {"density_A_per_m2": 100}, "until": {"mean_m": 1e-4}},
                        {"id": "s1", "in": [{"bath": "b1", "pieces": ["p1"]}], "kind": "electroplate",
                            "drive": {"density_A_per_m2": 30}, "until": until},
                    ]),
                ),
            ],
        );
        let whole = number(&ask_plan(&plan), "/steps/1/time/known/likely_s");
        let answer = after(&plan, "s1", whole / 2.0, json!({"power_cut": {"gap_s": 5}}));
        assert_eq!(answer["problems"], json!([]));
        let rest = number(&answer, "/steps/0/time/known/likely_s");
        assert!(close(rest, whole / 2.0, 1e-6), "{rest} of {whole}");
    }
}

#[test]
fn an_accident_that_cannot_be_is_a_problem() {
    let cases = [
        (
            ring(),
            "s9",
            60.0,
            json!({"power_cut": {}}),
            "step",
            "unknown_id",
        ),
        (
            ring(),
            "s1",
            360000.0,
            json!({"power_cut": {}}),
            "after",
            "too_large",
        ),
        (
            etch_base(),
            "s1",
            60.0,
            json!({"reversed": {"for_s": 60}}),
            "reversed",
            "contradiction",
        ),
        (
            etch_base(),
            "s1",
            60.0,
            json!({"filed": {"mass_kg": 0.001}}),
            "filed",
            "contradiction",
        ),
        (
            ring(),
            "s1",
            60.0,
            json!({"filed": {"mass_kg": 0.001, "piece": "p7"}}),
            "filed/piece",
            "unknown_id",
        ),
        (
            ring(),
            "s1",
            60.0,
            json!({"filed": {}}),
            "filed/mass",
            "missing",
        ),
        (
            ring(),
            "s1",
            60.0,
            json!({"reversed": {}}),
            "reversed/for",
            "missing",
        ),
        (
            ring(),
            "s1",
            60.0,
            json!({"power_cut": {"gap_s": -1}}),
            "power_cut/gap",
            "too_small",
        ),
        (ring(), "s1", 60.0, json!({}), "", "unknown_word"),
        (
            ring(),
            "s1",
            -5.0,
            json!({"power_cut": {}}),
            "after",
            "too_small",
        ),
    ];
    for (plan, step, at, what, field, kind) in cases {
        let answer = after(&plan, step, at, what.clone());
        let found = &answer["problems"];
        let said = found
            .as_array()
            .is_some_and(|p| p.iter().any(|p| p["field"] == field && p["kind"] == kind));
        assert!(said, "{what}: {found}");
        // A gap that cannot be read counts as one nobody knows.
        assert_eq!(
            answer["after"].is_null(),
            field != "power_cut/gap",
            "{what}"
        );
    }
}

proptest! {
    #![proptest_config(config(60))]

    /// A current that was away for ten seconds changes nothing: what was there and what remains are the whole.
    #[test]
    fn a_short_cut_splits_a_run_and_changes_nothing(
        mm in 0.3..3.0f64, cm in 1.0..20.0f64, flat in 1e-4..1e-2f64, amperes in 0.01..2.0f64, part in 0.0..1.0f64,
        hours in 1.0..30.0f64, growth in any::<bool>(),
    ) {
        let seconds = hours * 3600.0;
        let mut plan = wire();
        plan["effects"]["growth"] = json!(if growth { "on" } else { "off" });
        plan["pieces"] = json!([
            {"id": "p1", "count": 2, "hanger": {"wire_d_m": 0.0008, "wet_m": 0.02}, "extent": {"parts": [{"id": "a",
                "shape": {"rod": {"diameter_m": mm / 1000.0, "length_m": cm / 100.0, "ends": "covered"}}}]}},
            {"id": "p2", "extent": {"area": {"one_side_m2": flat}}}]);
        plan["steps"][0]["in"][0]["pieces"] = json!(["p1", "p2"]);
        plan["steps"][0]["drive"] = json!({"current_A": amperes});
        plan["steps"][0]["until"] = json!({"time_s": seconds});
        let whole = ask_plan(&plan);
        let answer = after(&plan, "s1", seconds * part, json!({"power_cut": {"gap_s": 10}}));
        prop_assert_eq!(&answer["problems"], &json!([]));
        for n in 0..2 {
            let mean = format!("/pieces/{n}/mean/known/likely_m");
            let had = number(&answer, &format!("/after/pieces/{n}/had/likely_m"));
            let (sum, want) = (had + number(&answer, &mean), number(&whole, &mean));
            prop_assert!(close(sum, want, 1e-9), "p{}: {sum}, want {want}", n + 1);
        }
        let charge = number(&answer, "/charge/known/likely_C");
        prop_assert!(close(charge, amperes * seconds * (1.0 - part), 1e-9));
    }

    /// Whatever happens to whatever job: nothing is left that was not there, and what remains is no longer than the whole
    /// where nothing was lost.
    #[test]
    fn after_any_accident_the_answer_is_sound(job in plannable(), part in 0.0..1.0f64, kind in 0..4usize, gap in 0.0..1e6f64) {
        let plan = json!(job);
        let whole = ask_plan(&plan);
        let Some(time) = whole["steps"][0]["time"]["known"]["likely_s"].as_f64() else { return Ok(()) };
        let what = [
            json!({"power_cut": {}}),
            json!({"power_cut": {"gap_s": gap}}),
            json!({"reversed": {"for_s": 1.0 + gap}}),
            json!({"filed": {"mass_kg": 0.0002}}),
        ][kind].clone();
        let answer = after(&plan, "s1", if time * part < 2.5e6 { time * part } else { 2.5e6 }, what);
        for piece in answer["after"]["pieces"].as_array().into_iter().flatten() {
            let (had, left) = (number(piece, "/had/likely_m"), number(piece, "/left/likely_m"));
            prop_assert!(left <= had * (1.0 + 1e-12), "{piece}");
        }
    }
}
