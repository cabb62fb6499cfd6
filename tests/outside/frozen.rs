//! The frozen jobs are read as their names say.

use outside::frozen;
use planner::{Catalogue, answer_text};
use serde_json::Value;

fn answered() -> impl Iterator<Item = (String, Value)> {
    frozen().into_iter().map(|(name, line)| {
        let text = answer_text(&Catalogue::standard(), &line);
        let answer =
            serde_json::from_str(&text).unwrap_or_else(|e| panic!("{name}: {e} in {text}"));
        (name, answer)
    })
}

#[test]
fn there_are_enough_of_them_and_each_is_one_line() {
    let all = frozen();
    assert!(all.len() >= 24, "{} jobs", all.len());
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
            name.starts_with("problem_"),
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
        assert!(answer["time"]["known"].is_object(), "{name}: time");
        for step in answer["steps"].as_array().into_iter().flatten() {
            assert!(
                step["current"]["known"].is_object(),
                "{name}: {}",
                step["id"]
            );
        }
    }
}
