//! Whatever is broken in a job: it is answered, nothing panics, and no number is one that is none.

use crate::generator::{any_job, plannable};
use crate::support::config;
use crate::support::{ask, is_sound};
use planner::question::{Question, to_line};
use proptest::prelude::*;
use proptest::sample::Index;
use serde_json::{Value, json};

/// Odd values to put in place of a leaf or a branch.
fn odd() -> impl Strategy<Value = Value> {
    let fixed = [
        json!(null),
        json!(true),
        json!(0),
        json!(-0.0),
        json!(1),
        json!(-1),
        json!(2),
        json!(0.5),
        json!(1e-3),
        json!(1e-300),
        json!(5e-324),
        json!(1e308),
        json!(-1e308),
        json!(u64::MAX),
        json!(i64::MIN),
        json!(""),
        json!("p1"),
        json!("s1"),
        json!("NaN"),
        json!("17,6 mm"),
        json!("\u{0}"),
        json!([]),
        json!({}),
        json!([[[]]]),
        json!({"id": "p1"}),
        json!({"": 1}),
        json!([null, 1, "x"]),
    ];
    prop_oneof![
        3 => prop::sample::select(fixed.to_vec()),
        1 => any::<f64>().prop_map(|x| json!(x)),
        1 => any::<String>().prop_map(|x| json!(x)),
    ]
}

/// Every place in a tree, as a pointer.
fn places(tree: &Value) -> Vec<String> {
    let mut all = Vec::new();
    crate::support::walk(tree, "", &mut |at, _| all.push(at.to_owned()));
    all
}

fn broken(mut tree: Value, breaks: &[(Index, Value, bool)]) -> Value {
    for (index, value, remove) in breaks {
        let all = places(&tree);
        let at = index.get(&all).clone();
        let (parent, last) = at.rsplit_once('/').unwrap_or(("", ""));
        if let Some(Value::Object(map)) = tree.pointer_mut(parent)
            && *remove
        {
            map.remove(last);
        } else if let Some(here) = tree.pointer_mut(&at) {
            *here = value.clone();
        }
    }
    tree
}

fn breaks() -> impl Strategy<Value = Vec<(Index, Value, bool)>> {
    prop::collection::vec((any::<Index>(), odd(), prop::bool::weighted(0.3)), 1..5)
}

proptest! {
    #![proptest_config(config(400))]

    #[test]
    fn a_broken_plan_is_answered_without_numbers_that_are_none(job in plannable(), breaks in breaks()) {
        let tree = broken(json!(Question::Plan(job)), &breaks);
        let line = tree.to_string();
        is_sound(&ask(&line), &line);
    }

    #[test]
    fn a_broken_job_with_everything_in_it_is_answered_too(job in any_job(), breaks in breaks()) {
        let tree = broken(json!(Question::Plan(job)), &breaks);
        let line = tree.to_string();
        is_sound(&ask(&line), &line);
    }

    #[test]
    fn a_line_cut_anywhere_is_answered(job in plannable(), cut in any::<Index>()) {
        let line = to_line(&Question::Plan(job));
        let end = cut.index(line.len());
        if line.is_char_boundary(end) {
            is_sound(&ask(&line[..end]), &line);
        }
    }

    #[test]
    fn any_text_is_answered(text in any::<String>()) {
        is_sound(&ask(&text), &text);
    }
}
