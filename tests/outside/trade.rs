//! Facts of the trade through whole jobs. What is common practice has its arithmetic checked, not its wisdom.

use crate::jobs::{answer_of, at, number, text};
use crate::table::rows;
use serde_json::Value;
use std::collections::BTreeMap;

/// The answers to all questions of `trade_jobs.jsonl`, by name.
fn answers() -> BTreeMap<String, Value> {
    text("trade_jobs.jsonl")
        .lines()
        .map(|line| {
            let entry: Value = serde_json::from_str(line).unwrap_or_else(|e| panic!("{line}: {e}"));
            let name = entry["name"].as_str().expect("a name").to_owned();
            let answer = answer_of(&entry["question"].to_string());
            assert_eq!(answer["problems"], serde_json::json!([]), "{name}");
            (name, answer)
        })
        .collect()
}

#[test]
fn facts_of_the_trade_come_out_of_whole_jobs() {
    let answers = answers();
    for row in &rows("trade.csv") {
        let of = |name: &str| {
            let answer = answers
                .get(name)
                .unwrap_or_else(|| panic!("{row}: no job {name}"));
            number(row, answer)
        };
        let got = match row.text("how") {
            "" => of(row.text("job")),
            "over" => of(row.text("job")) / of(row.text("other")),
            "less" => of(row.text("job")) - of(row.text("other")),
            how => panic!("{row}: {how}"),
        };
        row.expect_part(
            got * row.number("scale"),
            row.number("tolerance_percent") / 100.0,
        );
    }
}

#[test]
fn limits_stand_where_the_trade_says_so_and_nowhere_else() {
    for row in &rows("limits.csv") {
        let answer = crate::jobs::answer(row.text("job"));
        let there = at(&answer, &format!("/limits/{}", row.text("limit"))).is_some();
        assert_eq!(
            there,
            row.text("says") == "yes",
            "{row}: {}; source: {}",
            answer["limits"],
            row.text("source")
        );
    }
}
