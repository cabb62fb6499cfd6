//! The frozen jobs are read as their names say.

use chemistry::{Choosable, Setting};
use outside::frozen;
use planner::{Catalogue, Shape, answer_text};
use serde_json::Value;

fn answered() -> impl Iterator<Item = (String, Value)> {
    frozen().into_iter().map(|(name, line)| {
        let text = answer_text(&Catalogue::standard(), &line);
        let answer =
            serde_json::from_str(&text).unwrap_or_else(|e| panic!("{name}: {e} in {text}"));
        (name, answer)
    })
}

/// Frozen when their question could not be answered yet: the line stays as it was, and is answered in full today.
const SINCE_ANSWERED: [&str; 1] = ["problem_piece_leaves_early"];

#[test]
fn there_are_enough_of_them_and_each_is_one_line() {
    let all = frozen();
    assert!(all.len() >= 100, "{} jobs", all.len());
    for (name, line) in &all {
        assert!(!line.contains('\n'), "{name} has several lines");
        assert!(
            name.bytes()
                .all(|b| b.is_ascii_lowercase() || b.is_ascii_digit() || b == b'_'),
            "{name}: lower case, digits and underscores"
        );
    }
}

#[test]
fn problems_stand_only_where_the_name_says_so() {
    for (name, answer) in answered() {
        let problems = answer["problems"].as_array().map_or(0, Vec::len);
        assert_eq!(
            problems > 0,
            name.starts_with("problem_") && !SINCE_ANSWERED.contains(&name.as_str()),
            "{name}: {}",
            answer["problems"]
        );
    }
}

#[test]
fn a_job_without_problems_has_its_time_and_all_currents() {
    for (name, answer) in answered() {
        if name.starts_with("problem_") {
            continue;
        }
        let absent = &answer["time"]["absent"];
        assert!(
            answer["time"]["known"].is_object()
                || absent["because"] == "not_in_catalogue"
                    && absent["needs"].as_array().is_some_and(|n| !n.is_empty()),
            "{name}: time is {}",
            answer["time"]
        );
        for step in answer["steps"].as_array().into_iter().flatten() {
            assert!(
                step["current"]["known"].is_object(),
                "{name}: {}",
                step["id"]
            );
        }
    }
}

#[test]
fn every_solution_that_can_be_chosen_every_shape_and_every_end_is_among_them() {
    let all: String = frozen().into_iter().map(|(_, line)| line).collect();
    let catalogue = Catalogue::standard();
    let solutions = catalogue
        .solutions
        .iter()
        .filter(|s| {
            matches!(
                s.choosable(Setting::Shop),
                Choosable::Offered | Choosable::NeedsShop
            )
        })
        .map(|s| format!("\"solution\":\"{}\"", s.id));
    let shapes = Shape::IDS.iter().map(|id| format!("{{\"{id}\":{{"));
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
    .map(|end| format!("\"until\":{{\"{end}\":"));
    for text in solutions.chain(shapes).chain(ends) {
        assert!(all.contains(&text), "no frozen job has {text}");
    }
}
