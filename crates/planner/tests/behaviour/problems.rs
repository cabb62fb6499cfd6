//! What cannot be computed: one tiny failing job a row, in `data/problems.jsonl`.
//!
//! A row has a `line`, a `set` of changes to a job that has no problem, or a `typed` text; and what is said about it. `areas`:
//! the piece's area is still answered. `also`: how many more problems follow from it.

use crate::support::{ask, asked, base, is_sound, line, rows};
use planner::fields::{BORE, UNTIL_TIME};
use planner::{FieldPath, ProblemKind};
use serde_json::{Value, json};

fn table() -> Vec<Value> {
    rows(include_str!("../data/problems.jsonl"))
}

/// The problems of a row, as an Answer holds them.
fn problems(row: &Value) -> Vec<Value> {
    if let Some(text) = row["typed"].as_str() {
        let at = FieldPath::new("typed");
        let problem = match row["into"].as_str() {
            Some("bore") => BORE.read_text(text, &at).err(),
            Some("time") => UNTIL_TIME.read_text(text, &at).err(),
            other => panic!("no field {other:?}"),
        };
        return problem.iter().map(|p| json!(p)).collect();
    }
    ask(&asked(row))["problems"]
        .as_array()
        .cloned()
        .unwrap_or_default()
}

#[test]
fn the_job_that_the_rows_change_has_no_problem() {
    assert_eq!(ask(&line(&base()))["problems"], json!([]));
}

#[test]
fn every_failing_job_says_where_why_and_what_is_accepted() {
    for row in table() {
        let case = &row["case"];
        let found = problems(&row);
        let field = row["field"].as_str().unwrap_or("typed");
        let Some(problem) = found
            .iter()
            .find(|p| p["field"] == field && p["kind"] == row["kind"])
        else {
            panic!(
                "{case}: got {}, want {} at {field}",
                json!(found),
                row["kind"]
            );
        };
        for key in ["read", "accepted"] {
            if !row[key].is_null() {
                assert_eq!(problem[key], row[key], "{case}: {key}");
            }
        }
        if let Some(word) = row["accepts"].as_str() {
            let words = problem["accepted"]["one_of"].as_array();
            assert!(
                words.is_some_and(|w| w.iter().any(|x| x == word)),
                "{case}: {word} is not among {}",
                problem["accepted"]
            );
        }
        let also = row["also"].as_u64().unwrap_or(0);
        assert_eq!(found.len() as u64, 1 + also, "{case}: {}", json!(found));
    }
}

#[test]
fn a_problem_elsewhere_leaves_the_area_answered() {
    for row in table() {
        if row["typed"].is_string() {
            continue;
        }
        let answer = ask(&asked(&row));
        is_sound(&answer, &row["case"].to_string());
        assert_eq!(
            answer["pieces"][0]["area"]["known"].is_object(),
            row["areas"] == true,
            "{}: {}",
            row["case"],
            answer["pieces"][0]["area"]
        );
    }
}

#[test]
fn one_unreadable_piece_leaves_the_other_ones_area_answered() {
    let mut plan = base();
    plan["pieces"] = json!([
        {"id": "p1", "extent": {"area": {"one_side_m2": "much"}}},
        {"id": "p2", "extent": {"area": {"one_side_m2": 0.002}}}
    ]);
    plan["steps"][0]["in"][0]["pieces"] = json!(["p1", "p2"]);
    let answer = ask(&line(&plan));
    assert_eq!(answer["problems"].as_array().map(Vec::len), Some(1));
    assert!(answer["pieces"][0]["area"]["absent"].is_object());
    assert_eq!(answer["pieces"][1]["area"]["known"]["likely_m2"], 0.002);
    assert_eq!(
        answer["steps"][0]["current"]["absent"],
        json!({"because": "input_missing", "needs": ["pieces/p1/extent"]})
    );
}

#[test]
fn every_kind_of_problem_has_a_row() {
    let table = table();
    for kind in ProblemKind::ALL {
        let id = json!(kind);
        assert!(
            table.iter().any(|row| row["kind"] == id),
            "no row of kind {id}"
        );
    }
}
