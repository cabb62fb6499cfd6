//! Acceptance scenarios: a whole job through the planner, each number of its answer by hand.

use crate::table::{Row, rows};
use planner::{Catalogue, answer_text};
use serde_json::Value;
use std::path::Path;

fn answer(job: &str) -> Value {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("data").join(job);
    let line = std::fs::read_to_string(&path).unwrap_or_else(|e| panic!("{}: {e}", path.display()));
    let text = answer_text(&Catalogue::standard(), line.trim());
    serde_json::from_str(&text).unwrap_or_else(|e| panic!("{job}: {e}"))
}

/// The sum of the numbers at the row's pointers, which are joined by ` + `.
fn number(row: &Row, answer: &Value) -> f64 {
    row.text("pointer")
        .split(" + ")
        .map(
            |pointer| match answer.pointer(pointer).and_then(Value::as_f64) {
                Some(number) => number,
                None => panic!("{row}: nothing at {pointer}"),
            },
        )
        .sum()
}

#[test]
fn scenarios_come_out_as_by_hand() {
    for row in &rows("scenarios.csv") {
        let answer = answer(row.text("job"));
        assert_eq!(answer["problems"], serde_json::json!([]), "{row}");
        let got = number(row, &answer) * row.number("scale");
        row.expect_part(got, row.number("tolerance_percent") / 100.0);
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
