//! A Job written and read again is the same Job.

use crate::generator::any_job;
use crate::support::config;
use planner::job::{self, Job};
use planner::question::to_line;
use proptest::prelude::*;
use serde_json::Value;

fn read(text: &str) -> (Option<Job>, Vec<planner::Problem>) {
    let tree: Value = serde_json::from_str(text).unwrap_or_else(|e| panic!("{e}: {text}"));
    job::read(&tree)
}

#[test]
fn an_empty_job_is_read_as_written() {
    let job = Job::default();
    assert_eq!(read(&to_line(&job)), (Some(job), Vec::new()));
}

#[test]
fn what_is_left_out_has_its_default() {
    let (job, problems) = read(r#"{"format":1}"#);
    assert_eq!((job, problems), (Some(Job::default()), Vec::new()));
}

proptest! {
    #![proptest_config(config(400))]

    #[test]
    fn any_job_within_the_bounds_is_read_as_written(job in any_job()) {
        let text = to_line(&job);
        let (back, problems) = read(&text);
        prop_assert_eq!(problems, Vec::new(), "{}", text);
        prop_assert_eq!(back, Some(job));
    }
}
