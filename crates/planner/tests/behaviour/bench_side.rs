//! What the answer says for the bench: how the work enters, which socket, each piece's part of the current, the section
//! through a sheet, what the solution takes, and where every value of the working comes from.

use crate::support::{
    ask_plan, base, changed, close, config, etch_base, finish_base, number, with,
};
use proptest::prelude::*;
use serde_json::{Value, json};

/// Ways in by base and solution, from the preparation of base metals: common practice, no source.
#[test]
fn the_way_in_follows_base_and_solution() {
    let coated =
        |coat: &str| changed(&[("/pieces/0/base", json!({"nonconductor": {"coat": coat}}))]);
    let metal = |id: &str| changed(&[("/pieces/0/base", json!({"metal": {"id": id}}))]);
    let rows = [
        // The first copper on a coat is its strike; copper paint dies in acid within minutes.
        (coated("copper"), "live"),
        (coated("graphite"), "live"),
        (metal("Ag925"), "live"),
        (metal("Cu"), "at_once"),
        (metal("C26000"), "at_once"),
        (changed(&[("/pieces/0/base", json!("unknown"))]), "live"),
        // Steel in citrate copper, and anything in it: the solution asks for it.
        (
            with(metal("Cu"), &[("/baths/0/solution", json!("cu_citrate"))]),
            "live",
        ),
        (finish_base(), "live"),
        (etch_base(), "current_off"),
    ];
    for (plan, want) in rows {
        assert_eq!(ask_plan(&plan)["steps"][0]["entry"], want, "{plan}");
    }
}

/// The fine range of a usual multimeter ends at 200 mA, its coarse one at 10 A: from memory.
#[test]
fn the_socket_follows_the_current() {
    for (amperes, want) in [
        (0.05, json!("fine")),
        (0.2, json!("fine")),
        (0.21, json!("coarse")),
        (9.9, json!("coarse")),
        (12.0, Value::Null),
    ] {
        let plan = changed(&[("/steps/0/drive", json!({"current_A": amperes}))]);
        assert_eq!(ask_plan(&plan)["steps"][0]["socket"], want, "{amperes}");
    }
}

/// Scenario 3 of our own: three leaves whose wetted areas are 31.2, 21.7 and 47.0 % of the bar's.
#[test]
fn pieces_on_one_bar_share_the_current_by_wetted_area() {
    let area =
        |m2: f64| json!({"area": {"one_side_m2": m2, "sides_count": 2, "texture_ratio": 1.1}});
    let piece = |id: &str, m2: f64| json!({"id": id, "extent": area(m2), "hanger": {"wire_d_m": 0.0008, "wet_m": 0.02}});
    let plan = changed(&[
        (
            "/pieces",
            json!([
                piece("p1", 14.2e-4),
                piece("p2", 9.8e-4),
                piece("p3", 21.5e-4)
            ]),
        ),
        (
            "/steps/0/in",
            json!([{"bath": "b1", "pieces": ["p1", "p2", "p3"]}]),
        ),
        ("/steps/0/drive", json!({"density_A_per_m2": 100})),
    ]);
    let answer = ask_plan(&plan);
    let whole = number(&answer, "/steps/0/current/known/real/likely_A");
    for (n, share) in [0.3124, 0.2171, 0.4705].iter().enumerate() {
        let part = number(&answer, &format!("/pieces/{n}/current/known/likely_A"));
        assert!(close(part / whole, *share, 0.002), "{n}: {}", part / whole);
        assert_eq!(answer["pieces"][n]["metal"], "Cu");
    }
}

/// The solution's own band and limit: 200 g/L copper sulfate still, by the catalogue's row.
#[test]
fn what_the_solution_takes_holds_the_advised_density() {
    let answer = ask_plan(&changed(&[("/steps/0/drive", json!("advised"))]));
    let at = |end: &str| number(&answer, &format!("/steps/0/window/{end}_A_per_m2"));
    let density = number(&answer, "/steps/0/density/known/likely_A_per_m2");
    assert!(at("least") < at("typical") && at("typical") <= at("most"));
    assert!(at("least") <= density && density <= at("most"));
    assert!(at("bound") > density);
    let etch = ask_plan(&etch_base());
    assert!(etch["steps"][0]["window"].is_object());
    // Nothing grows in an etch, so nothing grows trees.
    assert!(etch["steps"][0]["window"]["bound_A_per_m2"].is_null());
}

proptest! {
    #![proptest_config(config(60))]

    #[test]
    fn shares_of_the_current_sum_to_it(
        areas in prop::collection::vec(1e-4..1e-2f64, 1..6), count in 1..4u32
    ) {
        let ids: Vec<String> = (1..=areas.len()).map(|n| format!("p{n}")).collect();
        let pieces: Vec<Value> = ids.iter().zip(&areas)
            .map(|(id, a)| json!({"id": id, "count": count, "extent": {"area": {"one_side_m2": a}}}))
            .collect();
        let answer = ask_plan(&changed(&[
            ("/pieces", json!(pieces)),
            ("/steps/0/in", json!([{"bath": "b1", "pieces": ids}])),
        ]));
        let whole = number(&answer, "/steps/0/current/known/real/likely_A");
        let sum: f64 = (0..areas.len())
            .map(|n| number(&answer, &format!("/pieces/{n}/current/known/likely_A")) * f64::from(count))
            .sum();
        prop_assert!(close(sum, whole, 1e-9), "{sum} of {whole}");
    }

    #[test]
    fn the_section_agrees_with_the_outcome(
        opening in 1e-4..5e-3f64, ef in 0.7..3.0f64, depth in 1e-6..1e-3f64, land in 1e-4..2e-3f64
    ) {
        let answer = ask_plan(&with(etch_base(), &[
            ("/pieces/0/artwork/opening_m", json!(opening)),
            ("/pieces/0/artwork/land_wanted_m", json!(land)),
            ("/pieces/0/artwork/etch_factor_ratio", json!(ef)),
            ("/pieces/0/artwork/resist", json!("varnish")),
            ("/steps/0/until", json!({"depth_m": depth})),
        ]));
        let at = |end: &str| number(&answer, &format!("/pieces/0/etched/section/{end}"));
        let known = |name: &str| number(&answer, &format!("/pieces/0/etched/{name}/known/likely_m"));
        prop_assert!(close(at("undercut_m"), depth / ef, 1e-9));
        prop_assert!(close(at("opening_m") + 2.0 * at("undercut_m"), known("opening_after"), 1e-9));
        prop_assert!(close(at("line_m") - 2.0 * at("undercut_m"), land, 1e-6));
        prop_assert!(close(at("stock_m"), 0.0008, 1e-12));
        // Varnish is 25 to 40 um thick: common practice.
        prop_assert!((2.5e-5..=4e-5).contains(&at("film_m")));
        prop_assert_eq!(at("sides_count"), 1.0);
    }
}

/// Every value of the working says where it comes from, in the order of the values; what the person gave is theirs.
#[test]
fn every_value_of_the_working_says_where_it_comes_from() {
    for plan in [base(), etch_base(), finish_base()] {
        let answer = ask_plan(&plan);
        for step in answer["working"].as_array().expect("a working") {
            let values = step["values"].as_array().expect("values");
            let whence = step["whence"].as_array().expect("origins");
            assert_eq!(values.len(), whence.len(), "{step}");
            for (value, from) in values.iter().zip(whence) {
                let name = value["name"].as_str().unwrap_or_default();
                let right = match name {
                    // Typed into these plans.
                    "bore" | "wall" | "width" | "distance" | "count" => *from == "given",
                    "flows" | "wetted" | "growth" | "charge" => *from == "worked",
                    // Published constants.
                    "faraday" | "molar_mass" => {
                        from["published"].is_object() || from["work"].is_string()
                    }
                    _ => true,
                };
                assert!(right, "{name} from {from} in {step}");
            }
        }
    }
    // 120 A/m2 are the person's; an advised density is the catalogue's.
    let first = |plan: &Value| {
        let answer = ask_plan(plan);
        let steps = answer["working"].as_array().cloned().unwrap_or_default();
        let wanted = steps
            .into_iter()
            .find(|w| w["id"] == "wanted")
            .expect("a current");
        wanted["whence"][0].clone()
    };
    assert_eq!(first(&base()), "given");
    assert_ne!(
        first(&changed(&[("/steps/0/drive", json!("advised"))])),
        "given"
    );
}
