//! Several pieces on one bar against other ways of working it out: the circuit solved node by node (nalgebra), growing areas
//! integrated step by step (ode_solvers), and the figures of the trade.

use crate::circuit::Circuit;
use crate::jobs::answer_of;
use crate::table::rows;
use ode_solvers::{Rk4, SVector, System};
use serde_json::{Value, json};

/// The three fern leaves of the scenario between them, 8 cm from the anode in a bath of 0.16 S/cm, with their contacts.
fn leaves(contacts: [f64; 3], effects: Value) -> Value {
    let leaf = |n: usize, one_side: f64| {
        json!({"id": format!("p{}", n + 1),
            "extent": {"area": {"one_side_m2": one_side, "sides_count": 2, "texture_ratio": 1.1}},
            "hanger": {"wire_d_m": 0.0008, "wet_m": 0.02},
            "contact": {"contact_ohm": contacts[n], "lead_ohm": 0.01}})
    };
    json!({"plan": {"format": 1,
        "pieces": [leaf(0, 0.00142), leaf(1, 0.00098), leaf(2, 0.00215)],
        "baths": [{"id": "b1", "solution": "cu_acid_form", "counter": {"distance_m": 0.08}}],
        "steps": [{"id": "s1", "in": [{"bath": "b1", "pieces": ["p1", "p2", "p3"]}], "kind": "electroform",
            "drive": {"current_A": 1.016}, "until": {"time_s": 10800}}],
        "assume": [{"at": "baths/b1/efficiency", "value_frac": 0.98},
            {"at": "baths/b1/conductivity", "value_S_per_m": 16}],
        "effects": effects}})
}

fn ask(question: &Value) -> Value {
    let answer = answer_of(&question.to_string());
    assert_eq!(answer["problems"], json!([]), "{question}");
    answer
}

fn number(value: &Value) -> f64 {
    match value.as_f64() {
        Some(number) => number,
        None => panic!("no number: {value}"),
    }
}

fn shared(answer: &Value, stage: usize, piece: usize, what: &str) -> f64 {
    number(&answer["stages"][stage]["pieces"][piece][what])
}

fn close(a: f64, b: f64, part: f64) -> bool {
    (a - b).abs() <= part * b.abs()
}

#[test]
fn contacts_share_a_current_as_the_trade_reckons() {
    let on = json!({"growth": "off", "contacts": "on"});
    for row in &rows("shared_bar.csv") {
        let answer = ask(&leaves(
            [0.02, 0.02, row.number("third_contact_ohm")],
            on.clone(),
        ));
        for (n, key) in ["first", "second", "third"].iter().enumerate() {
            let density = shared(&answer, 0, n, "density_A_per_m2") / 100.0;
            let want = row.number(key);
            assert!(
                (density - want).abs() <= 0.0051,
                "{row}: {key} {density}, want {want}"
            );
        }
    }
}

/// Every branch as three resistors between bar and anode, the node voltages by LU.
#[test]
fn the_circuit_solved_node_by_node_shares_alike() {
    let (current, kappa, distance, slope) = (1.016, 16.0, 0.08, 0.051);
    for contacts in [[0.02, 0.02, 0.02], [0.02, 0.02, 3.0], [0.0, 1.0, 0.3]] {
        let answer = ask(&leaves(
            contacts,
            json!({"growth": "off", "contacts": "on"}),
        ));
        let areas: Vec<f64> = (0..3)
            .map(|n| number(&answer["pieces"][n]["wetted"]["known"]["likely_m2"]))
            .collect();
        let by_area = slope / (current / areas.iter().sum::<f64>()) + distance / kappa;
        // Node 0 is the bar, 1 + 2 n after the contact of piece n, 2 + 2 n on the piece; the anode is earth.
        let mut circuit = Circuit::of(7);
        for n in 0..3 {
            circuit.link(0, Some(1 + 2 * n), contacts[n]);
            circuit.link(1 + 2 * n, Some(2 + 2 * n), 0.01);
            circuit.link(2 + 2 * n, None, by_area / areas[n]);
        }
        let volts = circuit.volts(current);
        for n in 0..3 {
            let want = volts[2 + 2 * n] / (by_area / areas[n]) / current;
            let got = shared(&answer, 0, n, "share_frac");
            assert!(close(got, want, 1e-6), "{contacts:?}: {got}, want {want}");
        }
    }
}

/// Copper's mass by charge and its density, from the reference page: g/Ah and g/cm3.
const LAYER_PER_CHARGE: f64 = 1.18549e-3 / 3600.0 / 8960.0;

struct Growing {
    pieces: Vec<Grows>,
    current: f64,
    efficiency: f64,
}

/// Something flat with two kinds of wire, each an area and a diameter.
#[derive(Clone, Copy)]
struct Grows {
    count: f64,
    flat: f64,
    wires: [(f64, f64); 2],
}

impl Grows {
    fn area(&self, h: f64) -> f64 {
        self.flat
            + self
                .wires
                .iter()
                .map(|(a, d)| a * (1.0 + 2.0 * h / d))
                .sum::<f64>()
    }
}

impl System<f64, SVector<f64, 2>> for Growing {
    fn system(&self, _: f64, h: &SVector<f64, 2>, rate: &mut SVector<f64, 2>) {
        let total: f64 = self
            .pieces
            .iter()
            .zip(h.iter())
            .map(|(p, h)| p.count * p.area(*h))
            .sum();
        for slot in rate.iter_mut() {
            *slot = LAYER_PER_CHARGE * self.efficiency * self.current / total;
        }
    }
}

/// Two rings of thin wire and a flat leaf share one current; the leaf joins after two hours, when the rings have
/// already grown.
#[test]
fn growing_areas_integrated_step_by_step_give_the_same_layers() {
    let (current, efficiency, first, whole) = (0.4, 0.98, 2.0 * 3600.0, 9.0 * 3600.0);
    let question = json!({"plan": {"format": 1,
        "pieces": [
            {"id": "p1", "count": 2, "extent": {"parts": [{"id": "a",
                "shape": {"torus": {"bore_m": 0.018, "wire_d_m": 0.0008}}}]},
                "hanger": {"wire_d_m": 0.0005, "wet_m": 0.02}},
            {"id": "p2", "extent": {"area": {"one_side_m2": 0.0012, "sides_count": 2}},
                "hanger": {"wire_d_m": 0.001, "wet_m": 0.015}, "joins": {"step": "s1", "after_s": first}}],
        "baths": [{"id": "b1", "solution": "cu_acid_form"}],
        "steps": [{"id": "s1", "in": [{"bath": "b1", "pieces": ["p1", "p2"]}], "kind": "electroform",
            "drive": {"current_A": current}, "until": {"time_s": whole}}],
        "assume": [{"at": "baths/b1/efficiency", "value_frac": efficiency}],
        "effects": {"growth": "on", "contacts": "off"}}});
    let answer = ask(&question);
    let pi = core::f64::consts::PI;
    let torus = pi * pi * (0.018 + 0.0008) * 0.0008;
    let wire = |d: f64, wet: f64| (pi * d * wet, d);
    let one = Grows {
        count: 2.0,
        flat: 0.0,
        wires: [(torus, 0.0008), wire(0.0005, 0.02)],
    };
    let two = Grows {
        count: 1.0,
        flat: 0.0024,
        wires: [(0.0, 1.0), wire(0.001, 0.015)],
    };
    let absent = Grows { count: 0.0, ..two };
    let integrate = |pieces: Vec<Grows>, from: [f64; 2], seconds: f64| -> SVector<f64, 2> {
        let system = Growing {
            pieces,
            current,
            efficiency,
        };
        let mut stepper = Rk4::new(system, 0.0, from.into(), seconds, seconds / 2000.0);
        assert!(stepper.integrate().is_ok());
        match stepper.y_out().last() {
            Some(end) => *end,
            None => panic!("nothing integrated"),
        }
    };
    let at_first = integrate(vec![one, absent], [0.0, 0.0], first);
    let end = integrate(vec![one, two], [at_first[0], 0.0], whole - first);
    for (n, want) in end.iter().enumerate() {
        let got = number(&answer["pieces"][n]["mean"]["known"]["likely_m"]);
        assert!(close(got, *want, 1e-5), "p{}: {got}, want {want}", n + 1);
    }
    let want = current / (2.0 * one.area(end[0]) + two.area(end[1]));
    let got = number(&answer["steps"][0]["density_after"]["likely_A_per_m2"]);
    assert!(close(got, want, 1e-5), "{got}, want {want}");
}

/// A wire of radius r with the charge of a flat layer T has sqrt(r^2 + 2 r T) - r on it: 0.146, 0.166 and 0.171 mm for 0.2 mm
/// on r 0.2, 0.4 and 0.5 mm (the trade's geometry page, derived).
#[test]
fn a_wire_takes_less_than_a_flat_sheet() {
    for (radius, want) in [(0.2e-3, 0.146e-3), (0.4e-3, 0.166e-3), (0.5e-3, 0.171e-3)] {
        let job = |growth: &str| {
            json!({"plan": {"format": 1,
                "pieces": [{"id": "p1", "extent": {"parts": [{"id": "a",
                    "shape": {"rod": {"diameter_m": 2.0 * radius, "length_m": 0.1, "ends": "covered"}}}]}}],
                "baths": [{"id": "b1", "solution": "cu_acid_form"}],
                "steps": [{"id": "s1", "in": [{"bath": "b1", "pieces": ["p1"]}], "kind": "electroform",
                    "drive": {"density_A_per_m2": 100}, "until": {"time_s": 0.0}}],
                "assume": [{"at": "baths/b1/efficiency", "value_frac": 1.0}],
                "effects": {"growth": growth, "contacts": "off"}}})
        };
        // So long that a flat sheet gets 0.2 mm at 1 A/dm2 and an efficiency of 1.
        let seconds = 0.2e-3 / (LAYER_PER_CHARGE * 100.0);
        let mean = |growth: &str| {
            let mut question = job(growth);
            question["plan"]["steps"][0]["until"] = json!({"time_s": seconds});
            number(&ask(&question)["pieces"][0]["mean"]["known"]["likely_m"])
        };
        assert!(close(mean("off"), 0.2e-3, 1e-4), "{}", mean("off"));
        assert!(
            close(mean("on"), want, 0.005),
            "{}, want {want}",
            mean("on")
        );
    }
}

/// Vessels in series: the whole current through each, the volts add, one vessel's worth is the other's.
#[test]
fn vessels_in_series_take_one_current_and_add_their_volts() {
    let job = |n: usize| {
        let ids = || 1..=n;
        json!({"plan": {"format": 1,
            "pieces": ids().map(|i| json!({"id": format!("p{i}"), "extent": {"area": {"one_side_m2": 0.01}}})).collect::<Vec<_>>(),
            "baths": ids().map(|i| json!({"id": format!("b{i}"), "solution": "cu_acid_form",
                "counter": {"material": "Cu", "distance_m": 0.08}})).collect::<Vec<_>>(),
            "steps": [{"id": "s1", "in": ids().map(|i| json!({"bath": format!("b{i}"), "pieces": [format!("p{i}")]})).collect::<Vec<_>>(),
                "kind": "electroform", "drive": {"density_A_per_m2": 120}, "until": {"mean_m": 6e-5}}],
            "effects": {"growth": "off", "contacts": "off"}}})
    };
    let one = ask(&job(1));
    let at = |answer: &Value, pointer: &str| match answer.pointer(pointer).and_then(Value::as_f64) {
        Some(number) => number,
        None => panic!("nothing at {pointer}"),
    };
    for n in [2, 3, 4] {
        let several = ask(&job(n));
        for pointer in [
            "/steps/0/current/known/wanted/likely_A",
            "/steps/0/time/known/likely_s",
            "/pieces/0/mean/known/likely_m",
            "/charge/known/likely_C",
            "/baths/0/counter/known/likely_kg",
        ] {
            assert!(
                close(at(&several, pointer), at(&one, pointer), 1e-12),
                "{n}: {pointer}"
            );
        }
        for pointer in [
            "/steps/0/ceiling/known/expected/likely_V",
            "/steps/0/power/known/likely_W",
        ] {
            let want = n as f64 * at(&one, pointer);
            assert!(close(at(&several, pointer), want, 1e-12), "{n}: {pointer}");
        }
    }
}

/// The trade's bench tables: a third contact of 1 ohm takes the supply from 0.56 to 0.71 V; the others go from 1.00 and 1.01
/// to 1.27 and 1.28 A/dm2.
#[test]
fn a_bad_contact_shows_by_what_the_trade_says() {
    let answer = ask(&leaves(
        [0.02, 0.02, 1.0],
        json!({"growth": "off", "contacts": "on"}),
    ));
    let [bad] = answer["contacts"]
        .as_array()
        .map(Vec::as_slice)
        .unwrap_or_default()
    else {
        panic!("one bad contact, not {}", answer["contacts"])
    };
    assert_eq!(bad["id"], "p3");
    let at = |key: &str| number(&bad[key]);
    assert!(
        (at("supply_V") - at("supply_bright_V") - 0.15).abs() <= 0.006,
        "{bad}"
    );
    for (key, want) in [
        ("density_A_per_m2", 69.0),
        ("density_bright_A_per_m2", 99.0),
        ("others_A_per_m2", 128.0),
        ("others_bright_A_per_m2", 101.0),
    ] {
        assert!((at(key) - want).abs() <= 0.6, "{key}: {bad}");
    }
    // By Ohm's law: its own current through 1 ohm.
    let own = shared(&answer, 0, 2, "share_frac") * 1.016;
    assert!(close(at("clip_V"), own, 1e-9));
}

/// Two leaves on one clip of half an ohm, the third alone: the same circuit node by node.
#[test]
fn pieces_on_one_clip_share_as_the_circuit_says() {
    let (current, kappa, distance, slope) = (1.016, 16.0, 0.08, 0.051);
    let mut question = leaves([0.5, 0.5, 0.02], json!({"growth": "off", "contacts": "on"}));
    for n in 0..2 {
        question["plan"]["pieces"][n]["contact"] = json!({"clip": "k", "lead_ohm": 0.01});
    }
    // Said once, at the second.
    question["plan"]["pieces"][1]["contact"]["contact_ohm"] = json!(0.5);
    let answer = ask(&question);
    let areas: Vec<f64> = (0..3)
        .map(|n| number(&answer["pieces"][n]["wetted"]["known"]["likely_m2"]))
        .collect();
    let by_area = slope / (current / areas.iter().sum::<f64>()) + distance / kappa;
    // Node 0 is the bar, 1 the clip of the two, 2 the third's, 3 to 5 the pieces behind their leads; the anode is earth.
    let mut circuit = Circuit::of(6);
    circuit.link(0, Some(1), 0.5);
    circuit.link(0, Some(2), 0.02);
    for (n, clip) in [1, 1, 2].into_iter().enumerate() {
        circuit.link(clip, Some(3 + n), 0.01);
        circuit.link(3 + n, None, by_area / areas[n]);
    }
    let volts = circuit.volts(current);
    for n in 0..3 {
        let want = volts[3 + n] / (by_area / areas[n]) / current;
        let got = shared(&answer, 0, n, "share_frac");
        assert!(close(got, want, 1e-9), "{n}: {got}, want {want}");
    }
    // Both on it carry its mark, with the volts of what they draw together.
    let marked: Vec<&Value> = answer["contacts"]
        .as_array()
        .into_iter()
        .flatten()
        .collect();
    assert_eq!(marked.len(), 2);
    let drop = (volts[0] - volts[1]).abs();
    assert!(
        marked
            .iter()
            .all(|m| close(number(&m["clip_V"]), drop, 1e-9))
    );
}

/// Scenario 3 whole, with its moment: left at 1.016 A the two leaves run at 1.89 A/dm2 and burn.
#[test]
fn three_leaves_left_alone_when_one_is_lifted() {
    let mut question = leaves([0.02; 3], json!({"growth": "off", "contacts": "off"}));
    question["plan"]["steps"][0]["drive"] = json!({"density_A_per_m2": 100});
    question["plan"]["steps"][0]["until"] = json!({"time_s": 28800});
    question["plan"]["pieces"][2]["leaves"] = json!({"step": "s1", "after_s": 10800});
    let answer = ask(&question);
    let unchanged = &answer["stages"][1]["unchanged"];
    assert!(
        (number(&unchanged["density_A_per_m2"]) - 188.8).abs() < 0.9,
        "{unchanged}"
    );
    assert_eq!(unchanged["verdict"], "burns");
    let limits = answer["limits"].as_array();
    let limit = limits.and_then(|l| l.iter().find(|l| l["kind"] == "burns_if_left"));
    assert!(limit.is_some(), "{}", answer["limits"]);
    assert!((number(&answer["stages"][1]["wanted_A"]) - 0.5381).abs() < 0.003);
    assert!((number(&answer["pieces"][0]["mean"]["known"]["likely_m"]) - 103.7e-6).abs() < 0.5e-6);
    assert!(
        (number(&answer["pieces"][2]["mass"]["known"]["likely_kg"]) - 1.649e-3).abs() < 0.008e-3
    );
}
