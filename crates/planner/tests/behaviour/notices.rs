//! What holds a job back, and the hazards: each must show where it is due and only there. Rows in `data/notices.jsonl`.

use crate::support::{ask, asked, rows};
use planner::answer::{CautionKind, LimitKind};
use serde_json::{Value, json};

fn table() -> Vec<Value> {
    rows(include_str!("../data/notices.jsonl"))
}

fn kinds(answer: &Value) -> Vec<Value> {
    ["limits", "cautions"]
        .iter()
        .flat_map(|list| answer[list].as_array().into_iter().flatten())
        .map(|notice| notice["kind"].clone())
        .collect()
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
fn every_notice_names_a_step_or_a_piece() {
    for row in table() {
        let answer = ask(&asked(&row));
        for notice in ["limits", "cautions"]
            .iter()
            .flat_map(|list| answer[list].as_array().into_iter().flatten())
        {
            let at = notice["at"].as_str().unwrap_or_default();
            assert!(
                ["steps/s1", "pieces/p1"].contains(&at),
                "{}: {notice}",
                row["case"]
            );
        }
    }
}
