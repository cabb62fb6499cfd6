//! A part that stands in a hollow of the piece: all of it faces the hollow, so the outside's texture does not count.

use planner::{Catalogue, answer_line};
use serde_json::json;

fn area(faces: &str) -> f64 {
    let part = json!({"id": "a", "shape": {"sphere": {"diameter_m": 0.01}}, "texture_outside_ratio": 1.3, "faces": faces});
    let job = json!({"plan": {"format": 1, "pieces": [{"id": "p1", "extent": {"parts": [part]}}], "baths": [], "steps": []}});
    let answer = answer_line(&Catalogue::standard(), &job.to_string());
    let known = answer.pieces[0].area.known().expect("an area");
    quantity::Quantity::si(known.likely)
}

#[test]
fn its_texture_does_not_count() {
    // pi d^2 of a 10 mm ball, elementary mensuration.
    let smooth = core::f64::consts::PI * 1e-4;
    assert!((area("open") / smooth - 1.3).abs() < 1e-12);
    assert!((area("recess") / smooth - 1.0).abs() < 1e-12);
}
