//! How long one answer takes, ranges and working included: the page asks for one at every key.

use criterion::{Criterion, criterion_group, criterion_main};
use planner::{Answer, Catalogue, Job, answer, job};
use serde_json::{Value, json};
use std::hint::black_box;

/// A ring to wear as the first screen asks for it: covered, then grown, on a bench supply with a display.
fn ring() -> Value {
    json!({"format": 1,
        "pieces": [{"id": "p1", "label": "ring",
            "extent": {"parts": [{"id": "a", "shape": {"band": {"bore_m": 0.0176, "wall_m": 0.0015, "width_m": 0.006}}}]},
            "base": {"nonconductor": {"coat": "graphite"}},
            "hanger": {"wire_d_m": 0.0008, "wet_m": 0.012}, "fit": {"wanted_bore_m": 0.0172}}],
        "baths": [{"id": "b1", "solution": "cu_acid_form",
            "counter": {"material": "phosphorised_copper", "distance_m": 0.08}}],
        "steps": [
            {"id": "s1", "in": [{"bath": "b1", "pieces": ["p1"]}], "kind": "electroform",
                "drive": {"density_A_per_m2": 150}, "until": {"time_s": 1200}},
            {"id": "s2", "in": [{"bath": "b1", "pieces": ["p1"]}], "kind": "electroform",
                "drive": "advised", "until": {"use": "ring"}}],
        "supply": {"constant_current": {"highest_A": 3, "display_step_A": 0.01, "highest_V": 6}},
        "start": {"local": "2026-05-01T10:00"}})
}

/// Three leaves on one bar between two anodes.
fn leaves() -> Value {
    let leaf = |id: &str, length: f64| {
        json!({"id": id, "extent": {"parts": [{"id": "a", "texture_outside_ratio": 1.1,
                "shape": {"leaf": {"length_m": length, "width_m": length / 2.0, "form": "elliptic"}}}]},
            "hanger": {"wire_d_m": 0.0008, "wet_m": 0.02}})
    };
    json!({"format": 1,
        "pieces": [leaf("p1", 0.055), leaf("p2", 0.045), leaf("p3", 0.07)],
        "baths": [{"id": "b1", "solution": "cu_acid_form", "volume_m3": 0.002,
            "holds": [{"metal": "Cu", "now_kg_per_m3": 50.9, "floor_kg_per_m3": 30}],
            "counter": {"material": "Cu", "distance_m": 0.08, "arrangement": "both_sides"}}],
        "steps": [{"id": "s1", "in": [{"bath": "b1", "pieces": ["p1", "p2", "p3"]}], "kind": "electroform",
            "drive": {"density_A_per_m2": 80}, "until": {"thinnest_m": 0.0001}}]})
}

/// A sterling pendant etched in grooves.
fn pendant() -> Value {
    json!({"format": 1,
        "pieces": [{"id": "p1",
            "extent": {"parts": [{"id": "a", "shape": {"disc": {"diameter_m": 0.03, "thickness_m": 0.0012}}}]},
            "base": {"metal": {"id": "Ag925", "thickness_m": 0.0012}}, "open_frac": 0.42,
            "artwork": {"opening_m": 0.0005, "land_wanted_m": 0.0004, "model": "groove", "resist": "vinyl", "lead": "plus"}}],
        "baths": [{"id": "b1", "solution": "et_agno3", "volume_m3": 0.0004,
            "holds": [{"metal": "Ag", "now_kg_per_m3": 60}],
            "counter": {"material": "stainless", "distance_m": 0.04}}],
        "steps": [{"id": "s1", "in": [{"bath": "b1", "pieces": ["p1"]}], "kind": "etch",
            "drive": {"density_A_per_m2": 400}, "until": {"depth_m": 0.00035}}],
        "place": "shop"})
}

/// Ten unlike pieces on one bar, four steps, areas that grow; one piece leaves early, one comes late.
fn ten_pieces(contacts: &str) -> Value {
    let ids: Vec<String> = (1..=10).map(|n| format!("p{n}")).collect();
    let mut pieces: Vec<Value> = ids
        .iter()
        .enumerate()
        .map(|(n, id)| {
            let size = 0.02 + 0.004 * n as f64;
            let shape = match n % 3 {
                0 => json!({"leaf": {"length_m": size, "width_m": size / 2.0, "form": "elliptic"}}),
                1 => json!({"torus": {"bore_m": size, "wire_d_m": 0.0012}}),
                _ => json!({"ellipsoid": {"length_m": size, "width_m": size / 2.0, "height_m": size / 2.5}}),
            };
            json!({"id": id, "extent": {"parts": [{"id": "a", "shape": shape, "texture_outside_ratio": 1.1}]},
                "hanger": {"wire_d_m": 0.0008, "wet_m": 0.015}, "contact": {"contact_ohm": 0.02, "lead_ohm": 0.01}})
        })
        .collect();
    pieces[3]["leaves"] = json!({"step": "s3", "after_s": 7200});
    pieces[5]["joins"] = json!({"step": "s2", "after_s": 600});
    let step = |n: usize, density: f64, until: Value| {
        json!({"id": format!("s{n}"), "in": [{"bath": "b1", "pieces": ids}], "kind": "electroform",
            "drive": {"density_A_per_m2": density}, "until": until})
    };
    json!({"format": 1, "pieces": pieces,
        "baths": [{"id": "b1", "solution": "cu_acid_form", "volume_m3": 0.005,
            "counter": {"material": "Cu", "distance_m": 0.08, "facing_m2": 0.03, "arrangement": "both_sides"}}],
        "steps": [step(1, 150.0, json!({"time_s": 1200})), step(2, 80.0, json!({"mean_m": 4e-5})),
            step(3, 100.0, json!({"time_s": 14400})), step(4, 80.0, json!({"thinnest_m": 1e-4}))],
        "supply": {"constant_current": {"highest_A": 5, "display_step_A": 0.01, "highest_V": 12}},
        "effects": {"growth": "on", "contacts": contacts}})
}

/// Fourteen students with nine leaves and five pods: more than the supply gives, so batches are planned too.
fn class() -> Value {
    let piece = |id: &str, count: u32, shape: Value| {
        json!({"id": id, "count": count, "extent": {"parts": [{"id": "a", "shape": shape, "texture_outside_ratio": 1.1}]},
            "hanger": {"wire_d_m": 0.0008, "wet_m": 0.015}})
    };
    json!({"format": 1,
        "pieces": [
            piece("p1", 9, json!({"leaf": {"length_m": 0.07, "width_m": 0.032, "form": "elliptic"}})),
            piece("p2", 5, json!({"ellipsoid": {"length_m": 0.04, "width_m": 0.016, "height_m": 0.016}}))],
        "baths": [{"id": "b1", "solution": "cu_acid_form", "volume_m3": 0.006,
            "counter": {"material": "Cu", "facing_m2": 0.024, "distance_m": 0.08}}],
        "steps": [{"id": "s1", "in": [{"bath": "b1", "pieces": ["p1", "p2"]}], "kind": "electroform",
            "drive": {"density_A_per_m2": 155}, "until": {"mean_m": 6e-5}}],
        "supply": {"constant_current": {"highest_A": 1.5, "display_step_A": 0.01}}, "place": "class",
        "class": {"students_count": 14, "lesson_s": 9000}})
}

fn read(question: &Value) -> Job {
    match job::read(question) {
        (Some(job), problems) if problems.is_empty() => job,
        (_, problems) => panic!("not readable: {problems:?}"),
    }
}

fn answers(c: &mut Criterion) {
    let catalogue = Catalogue::standard();
    for (name, question) in [
        ("ring, covered and grown", ring()),
        ("three leaves", leaves()),
        ("etched pendant", pendant()),
        ("a class in batches", class()),
        ("ten pieces, four steps", ten_pieces("off")),
        ("ten pieces, four steps, contacts", ten_pieces("on")),
    ] {
        let job = read(&question);
        let answered: Answer = answer(&catalogue, &job);
        assert!(
            answered.problems.is_empty(),
            "{name}: {:?}",
            answered.problems
        );
        c.bench_function(name, |b| {
            b.iter(|| answer(black_box(&catalogue), black_box(&job)));
        });
    }
}

criterion_group!(benches, answers);
criterion_main!(benches);
