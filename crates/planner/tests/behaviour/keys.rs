//! In JSON every number's key ends in its unit; only `format` has none.

use crate::generator::any_job;
use crate::support::config;
use crate::support::{ask, ask_plan, changed, walk};
use planner::question::{Coat, Makeup, Question, Weighed};
use proptest::prelude::*;
use serde_json::{Value, json};

/// The endings that a number's key may have.
const UNITS: &[&str] = &[
    "A",
    "A_per_m2",
    "m",
    "m2",
    "m3",
    "s",
    "kg",
    "kg_per_m3",
    "kg_per_C",
    "C",
    "K",
    "V",
    "W",
    "ohm",
    "ohm_sq",
    "ohm_m2",
    "S_per_m",
    "money_per_kg",
    "money",
    "frac",
    "ratio",
    "count",
    // Of the working.
    "kg_per_mol",
    "C_per_mol",
    "m2_per_s",
    "m_per_s",
    "W_per_K",
    "C_per_m2",
    "kg_per_m2",
];

pub fn ends_in_its_unit(tree: &Value, of: &str) {
    walk(tree, "", &mut |at, value| {
        if !value.is_number() {
            return;
        }
        let key = at.rsplit('/').next().unwrap_or_default();
        let known = UNITS.iter().any(|unit| {
            key.strip_suffix(unit)
                .is_some_and(|rest| rest.is_empty() && *unit == "count" || rest.ends_with('_'))
        });
        assert!(known || key == "format", "{at} = {value} in {of}");
    });
}

fn full() -> Value {
    changed(&[
        ("/pieces/0/count", json!(3)),
        (
            "/pieces/0/hanger",
            json!({"wire_d_m": 0.001, "wet_m": 0.015}),
        ),
        ("/pieces/0/fit", json!({"wanted_bore_m": 0.0172})),
        (
            "/supply",
            json!({"constant_current": {"highest_A": 3, "display_step_A": 0.05, "highest_V": 0.3}}),
        ),
        ("/steps/0/drive", json!("advised")),
        ("/steps/0/until", json!({"use": "ring"})),
        ("/start", json!({"local": "2026-05-01T10:00"})),
        (
            "/assume",
            json!([{"at": "baths/b1/conductivity", "value_S_per_m": 18}]),
        ),
    ])
}

#[test]
fn every_number_of_a_full_answer_ends_in_its_unit() {
    let answer = ask_plan(&full());
    assert_eq!(answer["problems"], json!([]));
    ends_in_its_unit(&answer, "the answer");
}

#[test]
fn every_number_of_a_problem_ends_in_its_unit() {
    let mut plan = full();
    plan["pieces"][0]["count"] = json!(0);
    plan["steps"][0]["temperature_K"] = json!(9);
    ends_in_its_unit(&ask(&json!({ "plan": plan }).to_string()), "problems");
}

#[test]
fn every_number_of_the_other_questions_ends_in_its_unit() {
    for question in [
        Question::Coat(Coat {
            format: 1,
            ..Coat::default()
        }),
        Question::Makeup(Makeup {
            format: 1,
            ..Makeup::default()
        }),
        Question::Weighed(Weighed {
            format: 1,
            ..Weighed::default()
        }),
    ] {
        let tree = json!(question);
        ends_in_its_unit(&tree, "another question");
        // What is not given is null here; its key still says the unit.
        walk(&tree, "", &mut |at, value| {
            let key = at.rsplit('/').next().unwrap_or_default();
            assert!(
                !value.is_null()
                    || UNITS.iter().any(|u| key.ends_with(&format!("_{u}")))
                    || key == "acid",
                "{at}"
            );
        });
    }
}

proptest! {
    #![proptest_config(config(100))]

    #[test]
    fn every_number_of_a_job_ends_in_its_unit(job in any_job()) {
        ends_in_its_unit(&json!(job), "the job");
    }
}
