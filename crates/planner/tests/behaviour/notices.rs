//! What holds a job back, and the hazards: each must show where it is due and only there. Rows in `data/notices.jsonl`:
//! one rule each, by the trade's safety and etch pages and the solution's own sheet. `note` is the reason given.

use crate::support::{ask, ask_plan, asked, base, etch_base, rows, with};
use planner::answer::{CautionKind, LimitKind};
use serde_json::{Value, json};

fn table() -> Vec<Value> {
    rows(include_str!("../data/notices.jsonl"))
}

fn kinds(answer: &Value) -> Vec<Value> {
    ["limits", "cautions"]
        .iter()
        .flat_map(|key| list(answer, key))
        .map(|notice| notice["kind"].clone())
        .collect()
}

fn list<'a>(answer: &'a Value, key: &str) -> impl Iterator<Item = &'a Value> {
    answer[key].as_array().into_iter().flatten()
}

fn listed<'r>(row: &'r Value, key: &str) -> impl Iterator<Item = &'r Value> {
    row[key].as_array().into_iter().flatten()
}

#[test]
fn limits_and_cautions_show_where_they_are_due_and_only_there() {
    for row in table() {
        let shown = kinds(&ask(&asked(&row)));
        for kind in listed(&row, "shows") {
            assert!(
                shown.contains(kind),
                "{}: {kind} is not among {}",
                row["case"],
                json!(shown)
            );
        }
        for kind in listed(&row, "never") {
            assert!(
                !shown.contains(kind),
                "{}: {kind} is among {}",
                row["case"],
                json!(shown)
            );
        }
    }
}

#[test]
fn every_limit_and_caution_has_a_row_each_way() {
    let table = table();
    let limits = LimitKind::ALL.iter().map(|k| json!(k));
    let cautions = CautionKind::ALL.iter().map(|k| json!(k));
    for kind in limits.chain(cautions) {
        for way in ["shows", "never"] {
            assert!(
                table.iter().any(|row| listed(row, way).any(|k| *k == kind)),
                "no row {way} {kind}"
            );
        }
    }
}

#[test]
fn the_reason_given_is_the_catalogues() {
    for row in table() {
        let Some(note) = row["note"].as_str() else {
            continue;
        };
        let answer = ask(&asked(&row));
        let notes: Vec<&Value> = list(&answer, "limits").map(|l| &l["note"]).collect();
        assert!(
            notes.iter().any(|n| *n == note),
            "{}: got {}, want {note}",
            row["case"],
            json!(notes)
        );
    }
}

#[test]
fn the_rows_ask_what_can_be_answered() {
    for row in table() {
        let problems = ask(&asked(&row))["problems"].clone();
        let fine = row["broken"] == true || problems == json!([]);
        assert!(fine, "{}: {problems}", row["case"]);
    }
}

#[test]
fn no_notice_is_given_twice() {
    for row in table() {
        let answer = ask(&asked(&row));
        for key in ["limits", "cautions"] {
            let mut seen: Vec<(&Value, &Value)> = Vec::new();
            for notice in list(&answer, key) {
                let this = (&notice["kind"], &notice["at"]);
                assert!(
                    !seen.contains(&this),
                    "{}: {} twice at {}",
                    row["case"],
                    this.0,
                    this.1
                );
                seen.push(this);
            }
        }
    }
}

#[test]
fn every_notice_names_a_step_a_piece_or_the_bath() {
    for row in table() {
        let answer = ask(&asked(&row));
        for notice in ["limits", "cautions"]
            .iter()
            .flat_map(|key| list(&answer, key))
        {
            let at = notice["at"].as_str().unwrap_or_default();
            let known = [
                "steps/s1",
                "pieces/p1",
                "baths/b1/solution",
                "pieces/p2",
                "attend/due",
            ]
            .contains(&at);
            let of_the_bath = ["holds/", "volume", "counter/", "heater"]
                .iter()
                .any(|key| {
                    at.strip_prefix("baths/b1/")
                        .is_some_and(|rest| rest.starts_with(key))
                });
            assert!(known || of_the_bath, "{}: {notice}", row["case"]);
        }
    }
}

#[test]
fn every_solution_that_can_be_chosen_is_in_a_row() {
    let table = table();
    for solution in chemistry::solution::SOLUTIONS {
        let at_a_shop = solution.choosable(chemistry::Setting::Shop);
        if at_a_shop != chemistry::Choosable::Offered {
            continue;
        }
        let asked = table
            .iter()
            .any(|row| asked(row).contains(&format!("\"solution\":\"{}\"", solution.id)));
        assert!(asked, "no row with {}", solution.id);
    }
}

/// How a kind says which of several pieces it concerns.
#[derive(Debug, PartialEq)]
enum Names {
    /// In its list of pieces: it stands at a step or a bath.
    Pieces,
    /// By its address.
    Address,
    /// Not at all: it is about all that hangs, the supply, the bath, the clock.
    None,
}

fn names(kind: LimitKind) -> Names {
    use LimitKind as L;
    match kind {
        L::AboveWindow
        | L::BelowWindow
        | L::EtchTooFast
        | L::EtchTooSlow
        | L::EdgesBurn
        | L::CoveringStalls
        | L::TouchesWall
        | L::BurnsIfLeft => Names::Pieces,
        L::BoreCloses
        | L::NeedsStrike
        | L::WrongBase
        | L::SendOut
        | L::WrongLead
        | L::TooDeepForStock
        | L::TooDeepForResist
        | L::LineVanishes
        | L::PoorContact => Names::Address,
        L::SupplyTooSmall
        | L::SupplyTooLarge
        | L::DisplayTooCoarse
        | L::VoltsTooFew
        | L::Night
        | L::NotForThisPlace
        | L::BathRunsLow
        | L::VesselsUneven
        | L::CounterTooSmall
        | L::CounterTooDense
        | L::BathOverloaded
        | L::BarEnds
        | L::HeaterTooSmall
        | L::TooLate => Names::None,
    }
}

/// Beside the piece of each row hangs the same piece without what is wrong with it, where it is one of its own; the row's
/// complaint then names the first alone, or both where it is about both.
#[test]
fn a_limit_of_one_piece_among_several_names_it() {
    let mut seen: Vec<LimitKind> = Vec::new();
    for row in table() {
        let Ok(mut question) = serde_json::from_str::<Value>(&asked(&row)) else {
            continue;
        };
        let alone = ask(&question.to_string());
        let plan = &mut question["plan"];
        let only = plan["pieces"].as_array().is_some_and(|p| p.len() == 1);
        let plain = ["joins", "leaves"]
            .iter()
            .all(|key| plan["pieces"][0][key].is_null());
        if !only || !plain {
            continue;
        }
        let mut other = plan["pieces"][0].clone();
        other["id"] = json!("other");
        plan["pieces"] = json!([other, plan["pieces"][0]]);
        for step in plan["steps"].as_array_mut().into_iter().flatten() {
            for place in step["in"].as_array_mut().into_iter().flatten() {
                place["pieces"] = json!(["other", "p1"]);
            }
        }
        let both = ask(&question.to_string());
        for limit in list(&both, "limits") {
            let Some(kind) = LimitKind::ALL.iter().find(|k| json!(k) == limit["kind"]) else {
                panic!("no kind of {limit}")
            };
            let at = limit["at"].as_str().unwrap_or_default();
            match names(*kind) {
                Names::Pieces => assert_eq!(limit["pieces"], json!(["other", "p1"]), "{limit}"),
                Names::Address => assert!(at.starts_with("pieces/"), "{limit}"),
                Names::None => assert!(limit["pieces"].is_null(), "{limit}"),
            }
            seen.push(*kind);
        }
        for limit in list(&alone, "limits") {
            assert!(
                limit["pieces"].is_null(),
                "one piece needs no name: {limit}"
            );
        }
    }
    for kind in LimitKind::ALL {
        let elsewhere = [LimitKind::BurnsIfLeft, LimitKind::VesselsUneven];
        assert!(
            seen.contains(kind) || elsewhere.contains(kind),
            "{kind:?} in no row with one piece"
        );
    }
}

/// Two pieces, only one of which is concerned.
#[test]
fn a_limit_names_only_the_pieces_it_concerns() {
    let hang = |plan: Value, second: Value| {
        let mut plan = plan;
        let mut other = plan["pieces"][0].clone();
        for (key, value) in second.as_object().into_iter().flatten() {
            other[key] = value.clone();
        }
        other["id"] = json!("p2");
        plan["pieces"] = json!([plan["pieces"][0], other]);
        plan["steps"][0]["in"][0]["pieces"] = json!(["p1", "p2"]);
        plan
    };
    let named = |plan: &Value, kind: &str| {
        let answer = ask_plan(plan);
        assert_eq!(answer["problems"], json!([]), "{plan}");
        let found = list(&answer, "limits").find(|l| l["kind"] == kind).cloned();
        found.map(|l| l["pieces"].clone())
    };
    let disc = |mm: f64| json!({"parts": [{"id": "a", "shape": {"disc": {"diameter_m": mm / 1000.0, "thickness_m": 0.0005}}}]});
    let rod = json!({"parts": [{"id": "a", "shape": {"rod": {"diameter_m": 0.002, "length_m": 0.03, "ends": "covered"}}}]});
    // A wide disc's rim burns where a thin rod does not.
    let rims = hang(
        with(
            base(),
            &[
                ("/pieces/0/extent", disc(60.0)),
                ("/steps/0/drive", json!({"density_A_per_m2": 190})),
            ],
        ),
        json!({"extent": rod}),
    );
    assert_eq!(named(&rims, "edges_burn"), Some(json!(["p1"])));
    // Behind a bad contact a piece gets too little, and the other too much.
    let contact = |ohm: f64| json!({"contact_ohm": ohm});
    let contacts = hang(
        with(
            base(),
            &[
                ("/pieces/0/extent", json!({"area": {"one_side_m2": 0.002}})),
                ("/pieces/0/contact", contact(0.02)),
                ("/effects", json!({"contacts": "on"})),
                ("/steps/0/drive", json!({"density_A_per_m2": 150})),
            ],
        ),
        json!({"contact": contact(30.0)}),
    );
    assert_eq!(named(&contacts, "above_window"), Some(json!(["p1"])));
    assert_eq!(named(&contacts, "below_window"), Some(json!(["p2"])));
    // Graphite stalls, the metal beside it does not.
    let coats = hang(
        with(
            base(),
            &[
                (
                    "/pieces/0/base",
                    json!({"nonconductor": {"coat": "graphite"}}),
                ),
                ("/steps/0/drive", json!({"density_A_per_m2": 60})),
            ],
        ),
        json!({"base": {"metal": {"id": "Cu"}}}),
    );
    assert_eq!(named(&coats, "covering_stalls"), Some(json!(["p1"])));
    // One sheet touches the wall, the other hangs clear.
    let narrow = json!({"parts": [{"id": "a", "shape": {"sheet": {"length_m": 0.04, "width_m": 0.01, "thickness_m": 0.0008}}}]});
    let wall = hang(
        with(
            etch_base(),
            &[(
                "/baths/0/counter",
                json!({"material": "S31603", "form": {"vessel": {"diameter_m": 0.026, "height_m": 0.06}}}),
            )],
        ),
        json!({"extent": narrow}),
    );
    assert_eq!(named(&wall, "touches_wall"), Some(json!(["p1"])));
    // Those that stay burn, not the one that left.
    let mut leaving = hang(base(), json!({}));
    leaving["steps"][0]["drive"] = json!({"density_A_per_m2": 180});
    leaving["pieces"][0]["leaves"] = json!({"step": "s1", "after_s": 3600});
    assert_eq!(named(&leaving, "burns_if_left"), Some(json!(["p2"])));
}

/// Two heated vessels of one step, two coated pieces: the heater is spoken of once, the coats each at its own piece.
#[test]
fn a_caution_of_several_pieces_or_vessels_is_said_once_at_each_place() {
    let bath = |id: &str| {
        json!({"id": id, "solution": "cu_acid_form", "volume_m3": 0.001, "heater_W": 50.0,
        "counter": {"distance_m": 0.08}})
    };
    let piece = |id: &str| {
        json!({"id": id, "extent": {"area": {"one_side_m2": 0.002}},
        "base": {"nonconductor": {"coat": "copper"}}})
    };
    let place = |n: u32| json!({"bath": format!("b{n}"), "pieces": [format!("p{n}")]});
    let answer = ask_plan(&with(
        base(),
        &[
            ("/baths", json!([bath("b1"), bath("b2")])),
            ("/pieces", json!([piece("p1"), piece("p2")])),
            ("/steps/0/in", json!([place(1), place(2)])),
        ],
    ));
    assert_eq!(answer["problems"], json!([]));
    let at = |kind: &str| -> Vec<Value> {
        let all = list(&answer, "cautions").filter(|c| c["kind"] == kind);
        all.map(|c| c["at"].clone()).collect()
    };
    assert_eq!(at("heater_in_bath"), [json!("steps/s1")]);
    assert_eq!(at("coat_fumes"), [json!("pieces/p1"), json!("pieces/p2")]);
}

/// What would be right is what a larger supply would be told, whether or not the area grows before the step begins.
#[test]
fn a_small_supply_is_held_against_what_would_be_advised_without_it() {
    let advised = |growth: &str, highest: f64| {
        let mut plan = base();
        plan["steps"][0]["drive"] = json!("advised");
        plan["effects"] = json!({ "growth": growth });
        plan["supply"] = json!({"constant_current": {"highest_A": highest}});
        ask_plan(&plan)
    };
    let small = |answer: &Value| {
        list(answer, "limits")
            .find(|l| l["kind"] == "supply_too_small")
            .cloned()
    };
    for growth in ["on", "off"] {
        let free = advised(growth, 10.0);
        assert_eq!(small(&free), None);
        let wanted = free["steps"][0]["current"]["known"]["wanted"]["likely_A"].as_f64();
        let wanted = wanted.expect("a current");
        let said = small(&advised(growth, wanted / 2.0)).expect("a limit");
        let said = said["numbers"][0]["value_A"]
            .as_f64()
            .expect("what would be right");
        assert!(
            (said / wanted - 1.0).abs() < 1e-9,
            "{growth}: {said} for {wanted}"
        );
    }
}
