//! The same text gives the same bytes.

use crate::generator::plannable;
use crate::support::{changed, config, line};
use planner::question::{Question, to_line};
use planner::{Catalogue, answer_text};
use proptest::prelude::*;
use serde_json::json;

/// A wire that is not wetted, typed with a sign: nothing is nothing.
#[test]
fn minus_nothing_never_leaves_the_planner() {
    let plan = changed(&[
        (
            "/pieces/0/hanger",
            json!({"wire_d_m": 0.001, "wet_m": -0.0}),
        ),
        (
            "/supply",
            json!({"constant_current": {"offset_A": -0.0, "lowest_A": -0.0}}),
        ),
        (
            "/prices",
            json!([{"metal": "Cu", "price_money_per_kg": -0.0}]),
        ),
    ]);
    let text = answer_text(&Catalogue::standard(), &line(&plan));
    assert!(!text.contains("-0.0,") && !text.contains("-0.0}"), "{text}");
}

proptest! {
    #![proptest_config(config(40))]

    #[test]
    fn the_same_line_twice_gives_the_same_bytes(job in plannable()) {
        let line = to_line(&Question::Plan(job));
        let catalogue = Catalogue::standard();
        let first = answer_text(&catalogue, &line);
        prop_assert!(!first.contains('\n'));
        prop_assert_eq!(first, answer_text(&catalogue, &line));
    }
}
