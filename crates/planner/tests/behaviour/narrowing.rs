//! What knowing one input exactly would do.

use crate::generator::plannable;
use crate::support::{ask_plan, changed, config, number};
use planner::question::{Question, to_line};
use planner::{Catalogue, Narrowed, job, narrowing};
use proptest::prelude::*;
use quantity::Quantity;
use serde_json::{Value, json};

fn of(plan: &Value) -> Vec<Narrowed> {
    let (job, problems) = job::read(plan);
    assert_eq!(problems, []);
    job.map_or_else(Vec::new, |job| narrowing(&Catalogue::standard(), &job))
}

fn remains(all: &[Narrowed], at: &str) -> Option<f64> {
    all.iter()
        .find(|n| n.at.as_str() == at)
        .map(|n| n.remains.si())
}

/// The range of the mean as the answer itself gives it, with one spread set to nothing.
fn width(plan: &Value, held: Option<&str>) -> f64 {
    let mut plan = plan.clone();
    if let Some(at) = held {
        plan["spreads"] = json!([{"at": at, "spread_frac": 0}]);
    }
    let answer = ask_plan(&plan);
    number(&answer, "/pieces/0/mean/known/high_m") - number(&answer, "/pieces/0/mean/known/low_m")
}

#[test]
fn it_is_the_range_of_the_answer_with_that_input_held() {
    let plan = changed(&[(
        "/supply",
        json!({"constant_current": {"highest_A": 3, "display_step_A": 0.01}}),
    )]);
    let all = of(&plan);
    assert!(all.len() >= 2, "{all:?}");
    for n in &all {
        let want = width(&plan, Some(n.at.as_str())) / width(&plan, None);
        assert!(
            (n.remains.si() - want).abs() < 1e-12,
            "{}: {} {want}",
            n.at,
            n.remains.si()
        );
    }
}

/// One lognormal input alone makes the range: without it nothing remains.
#[test]
fn the_only_uncertain_input_leaves_nothing() {
    let all = of(&changed(&[
        ("/pieces/0/extent", json!({"area": {"one_side_m2": 0.001}})),
        (
            "/assume",
            json!([{"at": "baths/b1/efficiency", "value_frac": 0.98}]),
        ),
    ]));
    assert_eq!(all.len(), 1, "{all:?}");
    assert_eq!(remains(&all, "pieces/p1/extent"), Some(0.0));
}

#[test]
fn what_has_no_spread_and_what_does_not_bear_on_it_is_absent() {
    let all = of(&changed(&[(
        "/spreads",
        json!([{"at": "pieces/p1/extent", "spread_frac": 0}]),
    )]));
    for at in [
        "pieces/p1/extent",
        "baths/b1/conductivity",
        "baths/b1/surface_volts",
    ] {
        assert_eq!(remains(&all, at), None, "{at}: {all:?}");
    }
}

/// Of two independent lognormal spreads a and b with a = 2 b the sum in logarithms is sqrt(5) b: without a about
/// 1 / sqrt(5) = 0.45 remains, without b about 2 / sqrt(5) = 0.89. 512 points and the bends of the exponential leave a few
/// percent.
#[test]
fn spreads_add_up_as_squares() {
    let all = of(&changed(&[
        ("/pieces/0/extent", json!({"area": {"one_side_m2": 0.001}})),
        (
            "/spreads",
            json!([
                {"at": "pieces/p1/extent", "spread_frac": 0.1},
                {"at": "pieces/p1/extent/area/texture", "spread_frac": 0.0488}
            ]),
        ),
        (
            "/assume",
            json!([{"at": "baths/b1/efficiency", "value_frac": 0.5}]),
        ),
    ]));
    let first = remains(&all, "pieces/p1/extent").unwrap_or(f64::NAN);
    let second = remains(&all, "pieces/p1/extent/area/texture").unwrap_or(f64::NAN);
    assert!((first - 0.447).abs() < 0.04, "{first}");
    assert!((second - 0.894).abs() < 0.04, "{second}");
    assert_eq!(all.first().map(|n| n.at.as_str()), Some("pieces/p1/extent"));
}

proptest! {
    #![proptest_config(config(40))]

    #[test]
    fn what_remains_is_less_than_all_and_the_first_narrows_most(job in plannable()) {
        let all = narrowing(&Catalogue::standard(), &job);
        let line = to_line(&Question::Plan(job.clone()));
        for pair in all.windows(2) {
            prop_assert!(pair[0].remains.si() <= pair[1].remains.si());
        }
        for n in &all {
            prop_assert!((0.0..0.98).contains(&n.remains.si()), "{n:?}: {line}");
        }
    }

    /// Every input held at once leaves no width: the answer of a job whose inputs are all exact.
    #[test]
    fn with_every_spread_at_nothing_there_is_nothing_to_measure(job in plannable()) {
        let mut job = job;
        let answer = planner::answer(&Catalogue::standard(), &job);
        job.spreads = answer.inputs.iter().map(|i| planner::job::SpreadAt {
            at: i.at.clone(),
            spread: quantity::Fraction::from_si(0.0),
        }).collect();
        prop_assert_eq!(narrowing(&Catalogue::standard(), &job), vec![]);
    }
}
