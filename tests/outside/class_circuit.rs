//! A class around its tanks as one electric circuit, solved node by node by a general library (nalgebra's LU), and its layers
//! by Faraday's law. The classes are invented; the circuit is the trade's: each piece
//! sees its own strip of the anode through contact, lead, surface and solution, vessels one behind the other carry one current.

use crate::circuit::Circuit;
use crate::jobs::answer_of;
use serde_json::{Value, json};

/// Copper: its mole's mass (IUPAC 2021) over the charge of two moles of electrons (SI 2019) and its density (CRC Handbook).
const LAYER_PER_CHARGE: f64 = 63.546e-3 / (2.0 * 96_485.332_12) / 8960.0;
const EFFICIENCY: f64 = 0.98;
/// S/m, m, V and V: assumed in the job, or (the slope) the trade's for acid copper.
const KAPPA: f64 = 16.0;
const DISTANCE: f64 = 0.08;
const SLOPE: f64 = 0.051;
const SURFACES: f64 = 0.3;

/// One student's piece: m2, contact and lead in ohms, and when it is hung in, s.
type Piece = (f64, f64, f64, f64);

struct Class {
    name: &'static str,
    /// What hangs in each vessel.
    vessels: &'static [&'static [Piece]],
    current: f64,
    lesson: f64,
    aim: f64,
}

const CLASSES: &[Class] = &[
    Class {
        name: "twelve alike on one bar",
        vessels: &[&[(0.0035, 0.0, 0.0, 0.0); 12]],
        current: 4.2,
        lesson: 5400.0,
        aim: 60e-6,
    },
    Class {
        name: "unlike pieces, clips of every age",
        vessels: &[&[
            (0.0031, 0.02, 0.01, 0.0),
            (0.0022, 0.15, 0.01, 0.0),
            (0.0047, 0.02, 0.05, 0.0),
            (0.0012, 2.5, 0.02, 0.0),
        ]],
        current: 1.1,
        lesson: 9000.0,
        aim: 80e-6,
    },
    Class {
        name: "two vessels, one behind the other",
        vessels: &[
            &[(0.0031, 0.02, 0.01, 0.0), (0.0022, 0.4, 0.01, 0.0)],
            &[(0.0028, 0.05, 0.02, 0.0), (0.0026, 0.0, 0.0, 0.0)],
        ],
        current: 0.6,
        lesson: 7200.0,
        aim: 70e-6,
    },
    Class {
        name: "four vessels, one behind the other",
        vessels: &[
            &[(0.0031, 0.02, 0.01, 0.0), (0.0022, 0.4, 0.01, 0.0)],
            &[(0.0028, 0.05, 0.02, 0.0), (0.0026, 0.0, 0.0, 0.0)],
            &[(0.0054, 0.1, 0.0, 0.0)],
            &[(0.0018, 0.02, 0.2, 0.0); 3],
        ],
        current: 0.6,
        lesson: 7200.0,
        aim: 70e-6,
    },
    Class {
        name: "one comes after half an hour",
        vessels: &[&[
            (0.0031, 0.02, 0.01, 0.0),
            (0.0022, 0.15, 0.01, 1800.0),
            (0.0047, 0.02, 0.05, 0.0),
        ]],
        current: 1.0,
        lesson: 5400.0,
        aim: 50e-6,
    },
];

/// The current through each piece, vessel by vessel, and the volts between the supply's clips; `hung` says which hang.
fn solve(class: &Class, hung: impl Fn(&Piece) -> bool) -> (Vec<Vec<f64>>, f64) {
    let all = || class.vessels.iter();
    let count: usize = all().map(|v| 1 + 2 * v.len()).sum();
    let mut circuit = Circuit::of(count);
    // Of a vessel first its bar, then of each piece the far side of its contact and of its lead. What is the next bar to
    // one vessel is its anode; the last one's is earth.
    let mut at = 0;
    let mut branches = Vec::new();
    for vessel in all() {
        let anode = Some(at + 1 + 2 * vessel.len()).filter(|next| *next < count);
        let total: f64 = vessel.iter().filter(|p| hung(p)).map(|p| p.0).sum();
        let by_area = SLOPE / (class.current / total) + DISTANCE / KAPPA;
        let mut of_vessel = Vec::new();
        for (n, piece) in vessel.iter().enumerate() {
            let (contact, lead) = (at + 1 + 2 * n, at + 2 + 2 * n);
            circuit.link(at, Some(contact), piece.1);
            circuit.link(contact, Some(lead), piece.2);
            let ohm = by_area / piece.0;
            let conducts = hung(piece);
            if conducts {
                circuit.link(lead, anode, ohm);
            }
            of_vessel.push((lead, anode, ohm, conducts));
        }
        branches.push(of_vessel);
        at += 1 + 2 * vessel.len();
    }
    let volts = circuit.volts(class.current);
    let through = |(lead, anode, ohm, conducts): &(usize, Option<usize>, f64, bool)| {
        let drop = volts[*lead] - anode.map_or(0.0, |a| volts[a]);
        if *conducts { drop / ohm } else { 0.0 }
    };
    let currents = branches.iter().map(|v| v.iter().map(through).collect());
    (currents.collect(), volts[0])
}

fn question(class: &Class) -> Value {
    let mut pieces = Vec::new();
    let mut places = Vec::new();
    let mut baths = Vec::new();
    let mut assume = Vec::new();
    for (v, vessel) in class.vessels.iter().enumerate() {
        let bath = format!("b{}", v + 1);
        let mut ids = Vec::new();
        for (n, (area, contact, lead, joins)) in vessel.iter().enumerate() {
            let id = format!("v{v}p{n}");
            let mut piece = json!({"id": id, "extent": {"area": {"one_side_m2": area}},
                "contact": {"contact_ohm": contact, "lead_ohm": lead}});
            if *joins > 0.0 {
                piece["joins"] = json!({"step": "s1", "after_s": joins});
            }
            pieces.push(piece);
            ids.push(id);
        }
        places.push(json!({"bath": bath, "pieces": ids}));
        baths.push(
            json!({"id": bath, "solution": "cu_acid_form", "counter": {"distance_m": DISTANCE}}),
        );
        assume.push(json!({"at": format!("baths/{bath}/efficiency"), "value_frac": EFFICIENCY}));
        assume.push(json!({"at": format!("baths/{bath}/conductivity"), "value_S_per_m": KAPPA}));
        assume.push(json!({"at": format!("baths/{bath}/surface_volts"), "value_V": SURFACES}));
    }
    json!({"plan": {"format": 1, "pieces": pieces, "baths": baths,
        "steps": [{"id": "s1", "in": places, "kind": "electroform",
            "drive": {"current_A": class.current}, "until": {"mean_m": class.aim}}],
        "assume": assume, "place": "class", "effects": {"growth": "off", "contacts": "on"},
        "class": {"students_count": 12, "lesson_s": class.lesson}}})
}

fn larger(a: f64, b: f64) -> f64 {
    if b > a { b } else { a }
}

fn close(got: &Value, want: f64, what: &str) {
    let got = got.as_f64().unwrap_or(f64::NAN);
    assert!(
        (got - want).abs() <= 1e-6 * want.abs(),
        "{what}: {got}, want {want}"
    );
}

#[test]
fn a_class_is_one_circuit() {
    for class in CLASSES {
        let name = class.name;
        let answer = answer_of(&question(class).to_string());
        assert_eq!(answer["problems"], json!([]), "{name}");
        let latest = class.vessels.iter().copied().flatten().map(|p| p.3);
        let latest = latest.fold(0.0, larger);
        let (first, volts) = solve(class, |p| p.3 == 0.0);
        let (all, _) = solve(class, |_| true);
        // Metres a second: on each piece before the last one hangs, and after.
        let rate = |i: f64, p: &Piece| LAYER_PER_CHARGE * EFFICIENCY * i / p.0;
        let flat = |currents: &[Vec<f64>]| -> Vec<f64> {
            let each = class.vessels.iter().zip(currents);
            each.flat_map(|(v, i)| v.iter().zip(i).map(|(p, i)| rate(*i, p)))
                .collect()
        };
        let (before, after) = (flat(&first), flat(&all));
        let begun: Vec<f64> = before.iter().map(|r| r * latest).collect();
        let lacks = begun.iter().zip(&after).map(|(b, r)| (class.aim - b) / r);
        let whole = latest + lacks.fold(0.0, larger);
        close(&answer["time"]["known"]["likely_s"], whole, name);
        let told = &answer["class"];
        let lessons = (whole / class.lesson).ceil();
        assert_eq!(told["lessons_count"].as_f64(), Some(lessons), "{name}");
        close(&told["bell"]["after_s"], class.lesson, name);
        close(
            &told["bell"]["charge_C"],
            class.current * class.lesson,
            name,
        );
        let each = told["bell"]["pieces"].as_array().expect(name);
        assert_eq!(each.len(), after.len(), "{name}");
        for (n, piece) in each.iter().enumerate() {
            let what = format!("{name}, {}", piece["id"]);
            let mean = begun[n] + after[n] * (class.lesson - latest);
            close(&piece["mean_m"], mean, &what);
            let end = begun[n] + after[n] * (whole - latest);
            close(&piece["owed_m"], end - mean, &what);
        }
        // The surfaces' own volts stand in the place of what their slope takes in the circuit.
        let vessels = class.vessels.len() as f64;
        let expected = &answer["steps"][0]["ceiling"]["known"]["expected"]["likely_V"];
        close(expected, volts + vessels * (SURFACES - SLOPE), name);
    }
}
