//! What follows from changing one thing in a job.

use crate::support::config;
use crate::support::{ask_plan, changed, close, number};
use proptest::prelude::*;
use serde_json::{Value, json};

const TIME: &str = "/time/known/likely_s";
const CURRENT: &str = "/steps/0/current/known/wanted/likely_A";
const MEAN: &str = "/pieces/0/mean/known/likely_m";
const THIN: &str = "/pieces/0/thinnest/known/likely_m";
const THICK: &str = "/pieces/0/thickest/known/likely_m";

fn sized(area: f64, density: f64, mean: f64) -> Value {
    changed(&[
        ("/pieces/0/extent", json!({"area": {"one_side_m2": area}})),
        ("/steps/0/drive", json!({ "density_A_per_m2": density })),
        ("/steps/0/until", json!({ "mean_m": mean })),
    ])
}

fn step(id: &str, density: f64, until: Value) -> Value {
    json!({
        "id": id, "in": [{"bath": "b1", "pieces": ["p1"]}], "kind": "electroform",
        "drive": {"density_A_per_m2": density}, "until": until
    })
}

proptest! {
    #![proptest_config(config(60))]

    #[test]
    fn twice_the_thickness_takes_twice_the_time(
        area in 1e-5..0.1f64, density in 10.0..400.0f64, mean in 1e-6..2e-3f64
    ) {
        let once = number(&ask_plan(&sized(area, density, mean)), TIME);
        let twice = number(&ask_plan(&sized(area, density, 2.0 * mean)), TIME);
        prop_assert!(close(twice, 2.0 * once, 1e-12), "{} {}", once, twice);
    }

    #[test]
    fn twice_the_area_takes_twice_the_current_and_the_same_time(
        area in 1e-5..0.1f64, density in 10.0..400.0f64, mean in 1e-6..2e-3f64
    ) {
        let one = ask_plan(&sized(area, density, mean));
        let two = ask_plan(&sized(2.0 * area, density, mean));
        prop_assert!(close(number(&two, CURRENT), 2.0 * number(&one, CURRENT), 1e-12));
        prop_assert!(close(number(&two, TIME), number(&one, TIME), 1e-12));
    }

    #[test]
    fn twice_the_density_takes_half_the_time(
        area in 1e-5..0.1f64, density in 10.0..200.0f64, mean in 1e-6..2e-3f64
    ) {
        let slow = number(&ask_plan(&sized(area, density, mean)), TIME);
        let fast = number(&ask_plan(&sized(area, 2.0 * density, mean)), TIME);
        prop_assert!(close(slow, 2.0 * fast, 1e-12));
    }

    #[test]
    fn more_efficiency_never_takes_longer(
        low in 0.01..1.0f64, more in 0.0..1.0f64, mean in 1e-6..2e-3f64
    ) {
        let high = low + (1.0 - low) * more;
        let time = |efficiency: f64| {
            let mut plan = sized(0.001, 120.0, mean);
            plan["assume"] = json!([{"at": "baths/b1/efficiency", "value_frac": efficiency}]);
            number(&ask_plan(&plan), TIME)
        };
        prop_assert!(time(high) <= time(low));
    }

    #[test]
    fn a_step_cut_in_two_gives_the_same_layer_in_the_same_time(
        density in 20.0..300.0f64, mean in 1e-5..1e-3f64, cut in 0.01..0.99f64
    ) {
        let whole = ask_plan(&changed(&[("/steps", json!([step("s1", density, json!({"mean_m": mean}))]))]));
        let cut = ask_plan(&changed(&[("/steps", json!([
            step("s1", density, json!({"mean_m": mean * cut})),
            step("s2", density, json!({"mean_m": mean})),
        ]))]));
        for what in [TIME, MEAN, THIN, THICK, "/charge/known/likely_C", "/pieces/0/mass/known/likely_kg"] {
            prop_assert!(close(number(&whole, what), number(&cut, what), 1e-9), "{}", what);
        }
    }

    #[test]
    fn the_thinnest_that_is_asked_for_is_what_comes_out(
        density in 20.0..300.0f64, thinnest in 1e-6..5e-4f64
    ) {
        let answer = ask_plan(&changed(&[
            ("/steps/0/drive", json!({ "density_A_per_m2": density })),
            ("/steps/0/until", json!({ "thinnest_m": thinnest })),
        ]));
        prop_assert!(close(number(&answer, THIN), thinnest, 1e-9));
        prop_assert!(number(&answer, MEAN) >= thinnest);
    }

    #[test]
    fn the_mass_that_is_asked_for_lies_on_the_pieces(mass in 1e-6..0.1f64, count in 1..9u32, wet in 0.0..0.05f64) {
        let answer = ask_plan(&changed(&[
            ("/pieces/0/count", json!(count)),
            ("/pieces/0/hanger", json!({"wire_d_m": 0.001, "wet_m": wet})),
            ("/steps/0/until", json!({ "mass_kg": mass })),
        ]));
        let each = number(&answer, "/pieces/0/mass/known/likely_kg");
        prop_assert!(close(each * f64::from(count), mass, 1e-9));
    }

    #[test]
    fn alike_pieces_need_their_number_of_currents_and_the_same_time(count in 2..50u32) {
        let one = ask_plan(&changed(&[]));
        let many = ask_plan(&changed(&[("/pieces/0/count", json!(count))]));
        prop_assert!(close(number(&many, CURRENT), number(&one, CURRENT) * f64::from(count), 1e-12));
        prop_assert!(close(number(&many, TIME), number(&one, TIME), 1e-12));
        prop_assert!(close(number(&many, MEAN), number(&one, MEAN), 1e-12));
    }

    #[test]
    fn a_wider_spread_never_narrows_the_current(narrow in 0.01..0.5f64, more in 0.01..0.5f64) {
        let width = |frac: f64| {
            let answer = ask_plan(&changed(&[(
                "/spreads", json!([{"at": "pieces/p1/extent", "spread_frac": frac}])
            )]));
            number(&answer, "/steps/0/current/known/wanted/high_A")
                - number(&answer, "/steps/0/current/known/wanted/low_A")
        };
        prop_assert!(width(narrow) < width(narrow + more));
    }
}

#[test]
fn a_step_that_is_reached_before_it_begins_takes_no_time() {
    let answer = ask_plan(&changed(&[(
        "/steps",
        json!([
            step("s1", 120.0, json!({"mean_m": 0.0002})),
            step("s2", 80.0, json!({"mean_m": 0.0001})),
        ]),
    )]));
    assert_eq!(number(&answer, "/steps/1/time/known/likely_s"), 0.0);
    assert!(close(number(&answer, MEAN), 0.0002, 1e-12));
}

/// Likely and in every sample: 200 um on the mean leave no thinnest place under 1 um.
#[test]
fn what_an_earlier_step_laid_counts_towards_the_thinnest_place() {
    for first in [
        json!({"mean_m": 0.0002}),
        json!({"time_s": 100_000}),
        json!({"mass_kg": 0.002}),
    ] {
        let answer = ask_plan(&changed(&[(
            "/steps",
            json!([
                step("s1", 120.0, first),
                step("s2", 80.0, json!({"thinnest_m": 0.000001})),
            ]),
        )]));
        assert!(number(&answer, "/steps/0/time/known/low_s") > 0.0);
        for end in ["low", "likely", "high"] {
            let time = format!("/steps/1/time/known/{end}_s");
            assert_eq!(number(&answer, &time), 0.0, "{end}");
        }
    }
}

#[test]
fn a_job_without_any_uncertain_input_has_no_width() {
    let mut plan = sized(0.001, 120.0, 0.0002);
    plan["spreads"] = json!([{"at": "pieces/p1/extent", "spread_frac": 0}]);
    plan["assume"] = json!([
        {"at": "baths/b1/efficiency", "value_frac": 0.98},
        {"at": "baths/b1/conductivity", "value_S_per_m": 16},
        {"at": "baths/b1/evenness_factor", "value_ratio": 1},
        {"at": "baths/b1/surface_volts", "value_V": 0.3}
    ]);
    let answer = ask_plan(&plan);
    crate::support::walk(&answer, "", &mut |at, value| {
        let Some(map) = value.as_object() else { return };
        for (key, likely) in map {
            // What a meter shows over the hours and what a room takes vary by themselves.
            let of_the_room = ["/meter/", "/warmth/"].iter().any(|part| at.contains(part));
            if let Some(unit) = key.strip_prefix("likely_").filter(|_| !of_the_room) {
                assert_eq!(Some(likely), map.get(&format!("low_{unit}")), "{at}");
                assert_eq!(Some(likely), map.get(&format!("high_{unit}")), "{at}");
            }
        }
    });
}
