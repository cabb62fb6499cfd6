//! A thousand questions made up from a fixed seed: all are answered, nothing in an answer is no number.

use outside::made_up;
use planner::{Catalogue, answer_text};
use serde_json::Value;
use std::panic::catch_unwind;

const COUNT: usize = 1000;

fn without_nulls(value: &Value) -> bool {
    match value {
        Value::Null => false,
        Value::Array(items) => items.iter().all(without_nulls),
        Value::Object(entries) => entries.values().all(without_nulls),
        _ => true,
    }
}

#[test]
fn they_are_the_same_every_time() {
    assert_eq!(made_up(COUNT), made_up(COUNT));
}

#[test]
fn every_solution_every_shape_and_every_end_is_asked_for() {
    let all = made_up(COUNT).concat();
    let catalogue = Catalogue::standard();
    let solutions = catalogue.solutions.iter().map(|s| format!("\"{}\"", s.id));
    let shapes = planner::Shape::IDS.iter().map(|id| format!("\"{id}\""));
    let ends = [
        "time_s",
        "mean_m",
        "thinnest_m",
        "depth_m",
        "mass_kg",
        "use",
        "wear",
        "clock",
    ]
    .map(|end| format!("{{\"{end}\":"));
    let bar = ["joins", "leaves", "clip", "class", "growth", "b2"].map(|key| format!("\"{key}\""));
    for text in solutions.chain(shapes).chain(ends).chain(bar) {
        assert!(all.contains(&text), "none has {text}");
    }
}

#[test]
fn all_are_answered_and_most_in_full() {
    let catalogue = Catalogue::standard();
    let (mut in_full, mut with_problems) = (0, 0);
    for line in made_up(COUNT) {
        let text = catch_unwind(|| answer_text(&catalogue, &line))
            .unwrap_or_else(|_| panic!("no answer to {line}"));
        let answer: Value =
            serde_json::from_str(&text).unwrap_or_else(|e| panic!("{line}: {e} in {text}"));
        // What is no number would be written as null.
        assert!(without_nulls(&answer), "a null in the answer to {line}");
        let problems = answer["problems"].as_array().map_or(0, Vec::len);
        let known = answer["time"]["known"].is_object();
        assert!(
            known || problems > 0 || answer["time"]["absent"]["because"] == "not_in_catalogue",
            "neither a time nor a problem: {}: {line}",
            answer["time"]
        );
        in_full += usize::from(known && problems == 0);
        with_problems += usize::from(problems > 0);
    }
    assert!(in_full > COUNT / 3, "{in_full} answered in full");
    assert!(with_problems > COUNT / 10, "{with_problems} with problems");
}
