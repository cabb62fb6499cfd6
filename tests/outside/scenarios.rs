//! Acceptance scenarios: a whole job through the planner, each number of its answer by hand.

use crate::jobs::{answer, number, text};
use crate::table::{Row, rows};
use serde_json::Value;
use std::collections::BTreeMap;

#[test]
fn scenarios_come_out_as_by_hand() {
    let mut answers: BTreeMap<String, Value> = BTreeMap::new();
    for row in &rows("scenarios.csv") {
        let job = row.text("job");
        let answer = answers.entry(job.to_owned()).or_insert_with(|| answer(job));
        assert_eq!(answer["problems"], serde_json::json!([]), "{row}");
        let got = number(row, answer) * row.number("scale") + row.number("offset");
        row.expect_part(got, row.number("tolerance_percent") / 100.0);
    }
}

/// Every key of the expected blocks with its scenario, lists element by element.
fn expected() -> Vec<(u64, String, Value)> {
    let all: Vec<Value> = serde_json::from_str(&text("scenario_expected.json")).expect("JSON");
    let mut keys = Vec::new();
    for scenario in &all {
        let id = scenario["id"].as_u64().expect("a number");
        for (key, value) in scenario["expected"].as_object().expect("keys") {
            match value {
                Value::Array(items) => {
                    for (n, item) in items.iter().enumerate() {
                        keys.push((id, format!("{key}/{n}"), item.clone()));
                    }
                }
                value => keys.push((id, key.clone(), value.clone())),
            }
        }
    }
    keys
}

/// Each expected key is a number of an Answer, and that number is checked against it; or it is said what will bring it.
#[test]
fn every_expected_key_of_the_fourteen_scenarios_has_its_place() {
    let keys = expected();
    assert_eq!(keys.iter().map(|k| k.0).max(), Some(14));
    let table = rows("scenario_keys.csv");
    assert_eq!(table.len(), keys.len(), "keys mapped and keys expected");
    let checks = rows("scenarios.csv");
    for (id, key, value) in keys {
        let row = table
            .iter()
            .find(|r| r.number("scenario") == id as f64 && r.text("key") == key)
            .unwrap_or_else(|| panic!("scenario {id}: {key} is not mapped"));
        let (pointer, later) = (row.text("pointer"), row.text("later"));
        assert!(
            pointer.is_empty() != later.is_empty(),
            "{row}: a place, or what brings it later"
        );
        if pointer.is_empty() {
            continue;
        }
        let want = value.as_f64().unwrap_or_else(|| panic!("{row}: no number"));
        let same = |check: &&Row| {
            check.text("job") == row.text("job")
                && check.text("pointer") == pointer
                && check.number("want") == want
        };
        assert!(
            checks.iter().any(|c| same(&c)),
            "{row}: not among the checked numbers"
        );
    }
}

#[test]
fn the_resin_ring_runs_into_the_night() {
    let answer = answer("scenario_resin_ring.json");
    // 10:00 and 12.85 h are 22:51: 51 minutes of it after 22:00.
    assert_eq!(answer["limits"][0]["kind"], "night");
    let seconds = answer["limits"][0]["numbers"][0]["value_s"].as_f64();
    assert!(
        seconds.is_some_and(|s| (s / 60.0 - 51.0).abs() < 1.5),
        "in the night: {seconds:?} s"
    );
    assert_eq!(
        answer["steps"][0]["ends"]["known"]["local"],
        "2026-05-01T22:51"
    );
}

#[test]
fn a_cap_is_grown_without_an_evenness_row_and_says_so() {
    let answer = answer("scenario_acorn_cap.json");
    for key in ["thinnest", "thickest", "thin_place", "wagner"] {
        assert_eq!(
            answer["pieces"][0][key]["absent"]["because"], "no_evenness_row",
            "{key}"
        );
    }
}
