//! Whole jobs of `data/` through the planner, and the numbers of their answers.

use crate::table::Row;
use planner::{Catalogue, answer_text};
use serde_json::Value;
use std::path::{Path, PathBuf};

/// A file of `tests/data`.
pub fn data(file: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("data")
        .join(file)
}

/// Its text.
pub fn text(file: &str) -> String {
    let path = data(file);
    std::fs::read_to_string(&path).unwrap_or_else(|e| panic!("{}: {e}", path.display()))
}

/// The answer to one question line.
pub fn answer_of(line: &str) -> Value {
    let text = answer_text(&Catalogue::standard(), line.trim());
    serde_json::from_str(&text).unwrap_or_else(|e| panic!("{line}: {e}"))
}

/// The answer to a question that has a file of its own.
pub fn answer(file: &str) -> Value {
    answer_of(&text(file))
}

/// The value at a pointer. In a list a word stands for the first element whose id, metal, name or kind it is.
pub fn at<'v>(answer: &'v Value, pointer: &str) -> Option<&'v Value> {
    let mut here = answer;
    for segment in pointer.strip_prefix('/')?.split('/') {
        here = match here {
            Value::Array(items) => match segment.parse::<usize>() {
                Ok(n) => items.get(n)?,
                Err(_) => items.iter().find(|item| {
                    ["id", "metal", "name", "kind"]
                        .iter()
                        .any(|key| item[key].as_str() == Some(segment))
                })?,
            },
            other => other.get(segment)?,
        };
    }
    Some(here)
}

/// The number a row's `pointer` names: a pointer, a sum of pointers joined by ` + `, or two such sums with ` / ` between.
pub fn number(row: &Row, answer: &Value) -> f64 {
    let sum = |pointers: &str| -> f64 {
        pointers
            .split(" + ")
            .map(
                |pointer| match at(answer, pointer).and_then(Value::as_f64) {
                    Some(number) => number,
                    None => panic!("{row}: no number at {pointer}"),
                },
            )
            .sum()
    };
    match row.text("pointer").split_once(" / ") {
        Some((above, below)) => sum(above) / sum(below),
        None => sum(row.text("pointer")),
    }
}
