//! Every shape can stand in a Job, and what is wrong with one is said at the field to blame.

use geometry::Shape;
use planner::job::piece::Extent;
use planner::{Problem, ProblemKind, job};
use serde_json::{Value, json};

fn read(shape: &Value) -> (Option<Shape>, Vec<Problem>) {
    let tree = json!({"format": 1, "pieces": [{"id": "p1", "extent": {"parts": [{"id": "a", "shape": shape}]}}]});
    let (job, problems) = job::read(&tree);
    let shape = job.and_then(|job| match job.pieces.first()?.extent.as_ref()? {
        Extent::Parts(parts) => parts.first().map(|part| part.shape),
        Extent::Area(_) => None,
    });
    let about = problems
        .into_iter()
        .filter(|p| p.field.as_str().contains("/shape/"))
        .collect();
    (shape, about)
}

#[test]
fn every_shape_comes_back_as_it_was_written() {
    for shape in Shape::TYPICAL {
        let mut all = vec![*shape];
        if let Some((_, words)) = shape.word() {
            all.extend(words.iter().filter_map(|word| shape.with_word(word)));
        }
        if shape.count_key().is_some() {
            all.push(shape.with_count(7));
        }
        for shape in all {
            let tree = serde_json::to_value(shape).expect("a shape is JSON");
            assert_eq!(read(&tree), (Some(shape), Vec::new()), "{tree}");
        }
    }
}

#[test]
fn every_size_is_needed_and_bounded() {
    for shape in Shape::TYPICAL {
        for name in shape.size_names() {
            let key = format!("{name}_m");
            let at = format!("pieces/p1/extent/parts/a/shape/{}/{name}", shape.id());
            let mut tree = serde_json::to_value(shape).expect("a shape is JSON");
            for (value, kind) in [
                (Value::Null, ProblemKind::Missing),
                (json!(0.0), ProblemKind::TooSmall),
                (json!(-1.0), ProblemKind::TooSmall),
                (json!(1e9), ProblemKind::TooLarge),
                (json!("wide"), ProblemKind::WrongType),
            ] {
                tree[shape.id()][&key] = value;
                let (got, problems) = read(&tree);
                assert_eq!(got, None, "{tree}");
                let met: Vec<_> = problems
                    .iter()
                    .map(|p| (p.field.as_str(), p.kind))
                    .collect();
                assert_eq!(met, [(at.as_str(), kind)], "{tree}");
            }
        }
    }
}

#[test]
fn words_counts_and_contradictions_are_named() {
    for (tree, at, kind) in [
        (
            json!({"leaf": {"length_m": 0.06, "width_m": 0.03, "form": "square"}}),
            "leaf/form",
            ProblemKind::UnknownWord,
        ),
        (
            json!({"leaf": {"length_m": 0.06, "width_m": 0.03, "form": 3}}),
            "leaf/form",
            ProblemKind::WrongType,
        ),
        (
            json!({"rod": {"diameter_m": 0.003, "length_m": 0.03, "ends": "open"}}),
            "rod/ends",
            ProblemKind::UnknownWord,
        ),
        (
            json!({"mesh": {"length_m": 0.03, "width_m": 0.02, "wire_d_m": 0.0004, "pitch_m": 0.0012, "layers_count": 0}}),
            "mesh/layers",
            ProblemKind::TooSmall,
        ),
        (
            json!({"cap": {"outer_d_m": 0.016, "inner_d_m": 0.016, "height_m": 0.009}}),
            "cap/inner_d",
            ProblemKind::Contradiction,
        ),
        (
            json!({"link": {"length_m": 0.009, "width_m": 0.0015, "wire_d_m": 0.001}}),
            "link/width",
            ProblemKind::Contradiction,
        ),
        (
            json!({"sphere": {"diameter_m": 0.01, "colour": "red"}}),
            "sphere/colour",
            ProblemKind::UnknownField,
        ),
    ] {
        let (_, problems) = read(&tree);
        let met: Vec<_> = problems
            .iter()
            .map(|p| (p.field.as_str(), p.kind))
            .collect();
        let at = format!("pieces/p1/extent/parts/a/shape/{at}");
        assert_eq!(met, [(at.as_str(), kind)], "{tree}");
    }
    let usual = read(&json!({"leaf": {"length_m": 0.06, "width_m": 0.03}}));
    assert_eq!(
        usual,
        (Shape::of_id("leaf"), Vec::new()),
        "a word left out is usual"
    );
}
