//! What holds a job back, and the hazards: each must show where it is due and only there. Rows in `data/notices.jsonl`:
//! one rule each, by the trade's safety and etch pages and the solution's own sheet. `note` is the reason given.

use crate::support::{ask, asked, rows};
use planner::answer::{CautionKind, LimitKind};
use serde_json::{Value, json};

fn table() -> Vec<Value> {
    rows(include_str!("../data/notices.jsonl"))
}

fn kinds(answer: &Value) -> Vec<Value> {
    ["limits", "cautions"]
        .iter()
        .flat_map(|key| list(answer, key))
        .map(|notice| notice["kind"].clone())
        .collect()
}

fn list<'a>(answer: &'a Value, key: &str) -> impl Iterator<Item = &'a Value> {
    answer[key].as_array().into_iter().flatten()
}

fn listed<'r>(row: &'r Value, key: &str) -> impl Iterator<Item = &'r Value> {
    row[key].as_array().into_iter().flatten()
}

#[test]
fn limits_and_cautions_show_where_they_are_due_and_only_there() {
    for row in table() {
        let shown = kinds(&ask(&asked(&row)));
        for kind in listed(&row, "shows") {
            assert!(
                shown.contains(kind),
                "{}: {kind} is not among {}",
                row["case"],
                json!(shown)
            );
        }
        for kind in listed(&row, "never") {
            assert!(
                !shown.contains(kind),
                "{}: {kind} is among {}",
                row["case"],
                json!(shown)
            );
        }
    }
}

#[test]
fn every_limit_and_caution_has_a_row_each_way() {
    let table = table();
    let limits = LimitKind::ALL.iter().map(|k| json!(k));
    let cautions = CautionKind::ALL.iter().map(|k| json!(k));
    for kind in limits.chain(cautions) {
        for way in ["shows", "never"] {
            assert!(
                table.iter().any(|row| listed(row, way).any(|k| *k == kind)),
                "no row {way} {kind}"
            );
        }
    }
}

#[test]
fn the_reason_given_is_the_catalogues() {
    for row in table() {
        let Some(note) = row["note"].as_str() else {
            continue;
        };
        let answer = ask(&asked(&row));
        let notes: Vec<&Value> = list(&answer, "limits").map(|l| &l["note"]).collect();
        assert!(
            notes.iter().any(|n| *n == note),
            "{}: got {}, want {note}",
            row["case"],
            json!(notes)
        );
    }
}

#[test]
fn the_rows_ask_what_can_be_answered() {
    for row in table() {
        let problems = ask(&asked(&row))["problems"].clone();
        let fine = row["broken"] == true || problems == json!([]);
        assert!(fine, "{}: {problems}", row["case"]);
    }
}

#[test]
fn no_notice_is_given_twice() {
    for row in table() {
        let answer = ask(&asked(&row));
        for key in ["limits", "cautions"] {
            let mut seen: Vec<(&Value, &Value)> = Vec::new();
            for notice in list(&answer, key) {
                let this = (&notice["kind"], &notice["at"]);
                assert!(
                    !seen.contains(&this),
                    "{}: {} twice at {}",
                    row["case"],
                    this.0,
                    this.1
                );
                seen.push(this);
            }
        }
    }
}

#[test]
fn every_notice_names_a_step_a_piece_or_the_bath() {
    for row in table() {
        let answer = ask(&asked(&row));
        for notice in ["limits", "cautions"]
            .iter()
            .flat_map(|key| list(&answer, key))
        {
            let at = notice["at"].as_str().unwrap_or_default();
            let known = [
                "steps/s1",
                "pieces/p1",
                "baths/b1/solution",
                "pieces/p2",
                "attend/due",
            ]
            .contains(&at);
            let of_the_bath = ["holds/", "volume", "counter/", "heater"]
                .iter()
                .any(|key| {
                    at.strip_prefix("baths/b1/")
                        .is_some_and(|rest| rest.starts_with(key))
                });
            assert!(known || of_the_bath, "{}: {notice}", row["case"]);
        }
    }
}

#[test]
fn every_solution_that_can_be_chosen_is_in_a_row() {
    let table = table();
    for solution in chemistry::solution::SOLUTIONS {
        let at_a_shop = solution.choosable(chemistry::Setting::Shop);
        if at_a_shop != chemistry::Choosable::Offered {
            continue;
        }
        let asked = table
            .iter()
            .any(|row| asked(row).contains(&format!("\"solution\":\"{}\"", solution.id)));
        assert!(asked, "no row with {}", solution.id);
    }
}
