//! The same text gives the same bytes.

use crate::generator::plannable;
use crate::support::config;
use planner::question::{Question, to_line};
use planner::{Catalogue, answer_text};
use proptest::prelude::*;

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
