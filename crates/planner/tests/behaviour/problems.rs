//! What cannot be computed: one tiny failing job a row, in `data/problems.jsonl`.
//!
//! A row has a `line`, a `set` of changes to a job that has no problem (the plain one, or the one it is `from`), or a `typed`
//! text; and what is said about it: `read`, what is `accepted`, a word that this `accepts` and one that it `refuses`.
//! `areas`: the piece's area is still answered; `time`: the time too. `also`: how many more problems follow from it.

use crate::support::{
    ask, ask_plan, asked, base, etch_base, finish_base, from, is_sound, line, number, rows, with,
};
use chemistry::solution::SOLUTIONS;
use chemistry::{Choosable, Setting};
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
fn the_jobs_that_the_rows_change_have_no_problem() {
    for name in [None, Some("etch"), Some("finish")] {
        let answer = ask_plan(&from(name));
        assert_eq!(answer["problems"], json!([]), "{name:?}");
        assert!(answer["time"]["known"].is_object(), "{name:?}");
    }
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
        for (key, is_one) in [("accepts", true), ("refuses", false)] {
            if let Some(word) = row[key].as_str() {
                let words = problem["accepted"]["one_of"].as_array();
                assert_eq!(
                    words.map(|w| w.iter().any(|x| x == word)),
                    Some(is_one),
                    "{case}: {key} {word}, got {}",
                    problem["accepted"]
                );
            }
        }
        let also = row["also"].as_u64().unwrap_or(0);
        assert_eq!(found.len() as u64, 1 + also, "{case}: {}", json!(found));
    }
}

#[test]
fn a_problem_elsewhere_leaves_the_rest_answered() {
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
        assert_eq!(
            answer["time"]["known"].is_object(),
            row["time"] == true,
            "{}: {}",
            row["case"],
            answer["time"]
        );
    }
}

#[test]
fn no_field_is_said_to_be_missing_beside_what_is_wrong_with_it() {
    for row in table() {
        let found = problems(&row);
        for problem in &found {
            let twice = found
                .iter()
                .filter(|p| p["field"] == problem["field"])
                .count();
            assert_eq!(twice, 1, "{}: {}", row["case"], json!(found));
        }
    }
}

/// Every place's offer, whatever was asked for that cannot be had.
#[test]
fn what_cannot_be_chosen_is_a_problem_that_lists_only_what_is_offered() {
    let places = [
        ("home", Setting::Home),
        ("class", Setting::Class),
        ("shop", Setting::Shop),
    ];
    for (place, setting) in places {
        let offered: Vec<&str> = SOLUTIONS
            .iter()
            .filter(|s| s.choosable(setting) == Choosable::Offered)
            .map(|s| s.id)
            .collect();
        for solution in SOLUTIONS {
            let kind = match solution.choosable(setting) {
                Choosable::Never { .. } => "not_offered",
                Choosable::NoWindow => "no_window",
                Choosable::Offered | Choosable::NeedsShop => continue,
            };
            let answer = ask_plan(&with(
                base(),
                &[
                    ("/place", json!(place)),
                    ("/baths/0/solution", json!(solution.id)),
                ],
            ));
            assert_eq!(
                answer["problems"],
                json!([{
                    "field": "baths/b1/solution",
                    "kind": kind,
                    "read": solution.id,
                    "accepted": {"one_of": offered}
                }]),
                "{} {place}",
                solution.id
            );
            assert!(answer["pieces"][0]["area"]["known"].is_object());
        }
    }
}

/// Not for this place is a Limit: the numbers are all there.
#[test]
fn what_needs_a_shop_is_answered_all_the_same() {
    for (place, setting) in [("home", Setting::Home), ("class", Setting::Class)] {
        for solution in SOLUTIONS {
            if solution.choosable(setting) != Choosable::NeedsShop {
                continue;
            }
            let (start, kind) = match solution.process {
                chemistry::Process::Etch => (etch_base(), "etch"),
                chemistry::Process::Electroform => (finish_base(), "electroform"),
                chemistry::Process::Electroplate => (finish_base(), "electroplate"),
            };
            let mut changes = vec![
                ("/place", json!(place)),
                ("/baths/0/solution", json!(solution.id)),
                ("/steps/0/kind", json!(kind)),
                ("/steps/0/drive", json!("advised")),
                ("/steps/0/until", json!({"time_s": 600})),
            ];
            // No efficiency is known of one of them.
            if solution.efficiency.typical().is_none() {
                changes.push((
                    "/assume",
                    json!([{"at": "baths/b1/efficiency", "value_frac": 0.9}]),
                ));
            }
            let answer = ask_plan(&with(start, &changes));
            assert_eq!(answer["problems"], json!([]), "{} {place}", solution.id);
            let limit = answer["limits"]
                .as_array()
                .and_then(|l| l.iter().find(|l| l["kind"] == "not_for_this_place"));
            assert!(limit.is_some(), "{} {place}: no limit", solution.id);
            assert!(number(&answer, "/pieces/0/mass/known/likely_kg") > 0.0);
            assert!(number(&answer, "/steps/0/current/known/set_A") > 0.0);
        }
    }
}

/// A refused value counts as absent: the catalogue's stands, 0.98 for acid copper, and is named as such.
#[test]
fn a_refused_efficiency_leaves_the_catalogues() {
    let refused = ask_plan(&with(
        base(),
        &[(
            "/assume",
            json!([{"at": "baths/b1/efficiency", "value_frac": 1.05}]),
        )],
    ));
    let used = refused["inputs"]
        .as_array()
        .and_then(|i| i.iter().find(|i| i["at"] == "baths/b1/efficiency"));
    let Some(used) = used else {
        panic!("no efficiency is listed")
    };
    assert_eq!(used["value_frac"], 0.98);
    assert!(used["origin"]["work"].is_string(), "{used}");
    let time = "/time/known/likely_s";
    assert_eq!(number(&refused, time), number(&ask_plan(&base()), time));
}

/// Grains fall off and some metal leaves at a lower valence: an etch may reach 1.1.
#[test]
fn an_etch_may_dissolve_more_than_its_charge() {
    let answer = ask_plan(&with(
        etch_base(),
        &[(
            "/assume",
            json!([{"at": "baths/b1/efficiency", "value_frac": 1.05}]),
        )],
    ));
    assert_eq!(answer["problems"], json!([]));
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
