//! The working: every formula, evaluated over the values shown, gives the result shown.

use crate::generator::plannable;
use crate::support::{changed, config, etch_base, line, with};
use planner::expr::Expr;
use planner::question::{Question, to_line};
use planner::working::FORMULAS;
use planner::{Answer, Catalogue, answer_line};
use proptest::prelude::*;
use serde_json::json;
use std::collections::BTreeSet;

fn formula(id: &str) -> Option<&'static Expr> {
    FORMULAS
        .iter()
        .find(|(name, _)| *name == id)
        .map(|(_, f)| f)
}

fn holds(answer: &Answer, of: &str) {
    for w in &answer.working {
        let Some(formula) = formula(w.id) else {
            panic!("no formula {}; job: {of}", w.id)
        };
        let Some(got) = formula.evaluate(&w.values) else {
            panic!(
                "{}: a value of the formula is not shown: {:?}",
                w.id, w.values
            )
        };
        let want = w.result.value.si;
        // A difference may cancel: held against the largest of its values too.
        let scale = match w.id {
            "bore_after" => w.values.iter().fold(want.abs(), |a, v| {
                let v = v.value.si.abs();
                if v > a { v } else { a }
            }),
            "time" => {
                let value = |name: &str| w.values.iter().find(|v| v.name == name);
                let whole = value("target").zip(value("growth"));
                whole.map_or(want.abs(), |(t, g)| t.value.si / g.value.si)
            }
            // In a moment next to nothing of the whole: 1 less nearly 1.
            "warms" => {
                let value = |name: &str| w.values.iter().find(|v| v.name == name);
                let whole = value("power").zip(value("heat_loss"));
                whole.map_or(want.abs(), |(p, u)| p.value.si / u.value.si)
            }
            _ => want.abs(),
        };
        assert!(
            (got - want).abs() <= 1e-9 * scale,
            "{} at {}: {got} from {:?}, shown {want}; job: {of}",
            w.id,
            w.at,
            w.values
        );
    }
}

/// Jobs that together need every formula.
fn jobs() -> Vec<String> {
    let torus =
        json!({"parts": [{"id": "a", "shape": {"torus": {"bore_m": 0.0168, "wire_d_m": 0.0021}}}]});
    [
        vec![
            (
                "/pieces/0/hanger",
                json!({"wire_d_m": 0.001, "wet_m": 0.015}),
            ),
            ("/pieces/0/fit", json!({"wanted_bore_m": 0.0172})),
            (
                "/supply",
                json!({"constant_current": {"display_step_A": 0.01, "offset_A": 0.002}}),
            ),
        ],
        vec![
            ("/pieces/0/extent", torus),
            (
                "/pieces/0/base",
                json!({"nonconductor": {"coat": "graphite"}}),
            ),
            ("/baths/0/volume_m3", json!(0.001)),
            ("/steps/0/ceiling_V", json!(1.1)),
            ("/steps/0/drive", json!("advised")),
        ],
    ]
    .iter()
    .map(|changes| line(&changed(changes)))
    .chain([line(&with(
        etch_base(),
        &[
            ("/pieces/0/artwork/opening_m", json!(0.0005)),
            ("/pieces/0/artwork/model", json!("groove")),
        ],
    ))])
    .collect()
}

#[test]
fn every_formula_gives_the_result_that_is_shown() {
    for line in jobs() {
        holds(&answer_line(&Catalogue::standard(), &line), &line);
    }
}

#[test]
fn every_formula_is_used() {
    let used: BTreeSet<&str> = jobs()
        .iter()
        .flat_map(|line| answer_line(&Catalogue::standard(), line).working)
        .map(|w| w.id)
        .collect();
    for (id, _) in FORMULAS {
        assert!(used.contains(id), "{id} is in no working");
    }
}

#[test]
fn no_formula_has_two_ids_and_no_id_two_formulas() {
    for (n, (id, expr)) in FORMULAS.iter().enumerate() {
        for (other, same) in &FORMULAS[n + 1..] {
            assert_ne!(id, other);
            // Two thicknesses off a bore and on a wanted one are alike only in shape.
            assert!(expr != same, "{id} and {other} are one formula");
        }
    }
}

#[test]
fn a_formula_whose_value_is_missing_has_no_result() {
    for (id, formula) in FORMULAS {
        assert_eq!(formula.evaluate(&[]), None, "{id}");
    }
}

proptest! {
    #![proptest_config(config(100))]

    #[test]
    fn every_formula_of_any_job_gives_the_result_that_is_shown(job in plannable()) {
        let line = to_line(&Question::Plan(job));
        holds(&answer_line(&Catalogue::standard(), &line), &line);
    }
}
