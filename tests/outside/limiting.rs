//! The limiting density follows what is in the bath, its temperature and its stirring.

use planner::{Catalogue, answer_line};
use serde_json::{Value, json};

/// The limiting density of acid copper after some changes, A/m2.
fn limiting(changes: &[(&str, Value)]) -> f64 {
    let mut job = json!({"plan": {"format": 1,
        "pieces": [{"id": "p1", "extent": {"area": {"one_side_m2": 0.001}}}],
        "baths": [{"id": "b1", "solution": "cu_acid_form", "volume_m3": 0.001}],
        "steps": [{"id": "s1", "in": [{"bath": "b1", "pieces": ["p1"]}], "kind": "electroform",
            "drive": {"density_A_per_m2": 100}, "until": {"time_s": 3600}}]}});
    for (at, value) in changes {
        let (parent, key) = at.rsplit_once('/').expect("a key");
        job.pointer_mut(parent).expect("a parent")[key] = value.clone();
    }
    let answer = answer_line(&Catalogue::standard(), &job.to_string());
    assert_eq!(answer.problems, [], "{changes:?}");
    let step = answer
        .working
        .iter()
        .find(|w| w.id == "limiting")
        .expect("the working");
    step.result.value.si
}

#[test]
fn it_is_the_hand_figure_and_scales_with_what_feeds_it() {
    // 2 F D c / delta: 2 x 96485.33 x 5.5e-10 x (50.9 / 0.063546) / 2e-4 = 425.1 A/m2; the trade's sheet says 4.3 A/dm2.
    let plain = limiting(&[]);
    assert!((plain - 425.1).abs() < 0.5, "{plain}");
    let half = json!([{"metal": "Cu", "now_kg_per_m3": 25.45}]);
    let rows = [
        ("half the copper", vec![("/plan/baths/0/holds", half)], 0.5),
        (
            "moved gently: half the layer",
            vec![("/plan/steps/0/stirring", json!("gentle"))],
            2.0,
        ),
        (
            "stirred hard: a quarter of it",
            vec![("/plan/steps/0/stirring", json!("vigorous"))],
            4.0,
        ),
        // exp(19200 / 8.314463 x (1 / 298.15 - 1 / 308.15)), activation 19.2 kJ/mol as in the catalogue.
        (
            "at 35 C",
            vec![("/plan/steps/0/temperature_K", json!(308.15))],
            1.2858,
        ),
        (
            "at 25 C, where it was measured",
            vec![("/plan/steps/0/temperature_K", json!(298.15))],
            1.0,
        ),
    ];
    for (case, changes, want) in rows {
        let got = limiting(&changes) / plain;
        assert!((got - want).abs() < 2e-3, "{case}: got {got}, want {want}");
    }
}
