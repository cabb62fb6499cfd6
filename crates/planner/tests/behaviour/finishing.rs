//! What follows from changing one thing in a finish.

use crate::support::{ask_plan, close, config, finish_base, number, with};
use proptest::prelude::*;
use serde_json::{Value, json};

const TIME: &str = "/time/known/likely_s";
const MEAN: &str = "/pieces/0/mean/known/likely_m";
const THIN: &str = "/pieces/0/thinnest/known/likely_m";

/// The share of the charge that the working counts with.
fn efficiency(answer: &Value) -> f64 {
    let growth = answer["working"]
        .as_array()
        .and_then(|all| all.iter().find(|w| w["id"] == "growth"));
    growth
        .and_then(|w| w["values"].as_array())
        .and_then(|values| values.iter().find(|v| v["name"] == "efficiency"))
        .and_then(|v| v["value_frac"].as_f64())
        .unwrap_or(f64::NAN)
}

fn acid_gold(density: f64) -> Value {
    ask_plan(&with(
        finish_base(),
        &[
            ("/baths/0/solution", json!("au_acid")),
            ("/steps/0/drive", json!({ "density_A_per_m2": density })),
        ],
    ))
}

/// 0.35 (i / 0.8 A/dm2)^-0.3 within 0.2 and 0.5: the middle of 0.2 to 0.5 at the typical density. By hand.
#[test]
fn the_efficiency_of_acid_gold_falls_as_its_curve_says() {
    for (density, want) in [
        (80.0, 0.35),
        // 0.35 x 2^0.3
        (40.0, 0.430_900_5),
        // 0.35 x 2^-0.3
        (160.0, 0.284_288_3),
        // 0.35 x 80^0.3 is 1.30: held at 0.5
        (1.0, 0.5),
        // 0.35 x 10^-0.3 is 0.175: held at 0.2
        (800.0, 0.2),
    ] {
        let got = efficiency(&acid_gold(density));
        assert!(close(got, want, 1e-6), "{density}: {got}, want {want}");
    }
}

/// What the person gives stands, whatever the density.
#[test]
fn an_own_efficiency_has_no_curve() {
    for density in [10.0, 80.0, 400.0] {
        let answer = ask_plan(&with(
            finish_base(),
            &[
                ("/baths/0/solution", json!("au_acid")),
                ("/steps/0/drive", json!({ "density_A_per_m2": density })),
                (
                    "/assume",
                    json!([{"at": "baths/b1/efficiency", "value_frac": 0.3}]),
                ),
            ],
        ));
        assert_eq!(efficiency(&answer), 0.3, "{density}");
    }
}

/// The bath loses what lies on piece and wire.
#[test]
fn an_inert_anode_takes_the_metal_from_the_bath() {
    let answer = ask_plan(&with(
        finish_base(),
        &[(
            "/pieces/0/hanger",
            json!({"wire_d_m": 0.001, "wet_m": 0.02}),
        )],
    ));
    let laid = number(&answer, "/pieces/0/mass/known/likely_kg")
        + number(&answer, "/pieces/0/wire_mass/known/likely_kg");
    let gained = number(&answer, "/baths/0/metals/0/gained/known/likely_kg");
    assert!(close(gained, -laid, 1e-12), "{gained} {laid}");
    assert_eq!(number(&answer, "/baths/0/counter/known/likely_kg"), 0.0);
}

/// An efficiency that nobody knows keeps what needs it absent, and nothing else.
#[test]
fn without_an_efficiency_the_time_that_was_given_stands() {
    let answer = ask_plan(&with(
        finish_base(),
        &[
            ("/place", json!("shop")),
            ("/baths/0/solution", json!("pd_ammonia_cl")),
        ],
    ));
    assert_eq!(answer["problems"], json!([]));
    assert_eq!(number(&answer, TIME), 600.0);
    assert!(number(&answer, "/charge/known/likely_C") > 0.0);
    for what in ["mean", "mass"] {
        let absent = &answer["pieces"][0][what]["absent"];
        assert_eq!(absent["needs"], json!(["baths/b1/efficiency"]), "{what}");
    }
}

proptest! {
    #![proptest_config(config(60))]

    #[test]
    fn more_density_is_never_more_efficiency(density in 0.1..1000.0f64, more in 1.0..10.0f64) {
        prop_assert!(efficiency(&acid_gold(density * more)) <= efficiency(&acid_gold(density)));
    }

    #[test]
    fn more_density_never_takes_longer_although_less_of_it_counts(
        density in 1.0..400.0f64, more in 1.0..4.0f64, mean in 1e-8..1e-5f64
    ) {
        let time = |density: f64| number(&ask_plan(&with(finish_base(), &[
            ("/baths/0/solution", json!("au_acid")),
            ("/steps/0/drive", json!({ "density_A_per_m2": density })),
            ("/steps/0/until", json!({ "mean_m": mean })),
        ])), TIME);
        prop_assert!(time(density * more) <= time(density) * (1.0 + 1e-12));
    }

    #[test]
    fn what_it_costs_follows_the_price(price in 1.0..1e6f64, times in 0.1..10.0f64) {
        let cost = |price: f64| number(&ask_plan(&with(finish_base(), &[
            ("/prices", json!([{"metal": "Au", "price_money_per_kg": price}])),
        ])), "/pieces/0/cost/known/likely_money");
        prop_assert!(close(cost(price * times), times * cost(price), 1e-12));
    }

    #[test]
    fn a_finish_that_shall_last_twice_as_long_takes_twice_the_thinnest(years in 0.1..10.0f64) {
        let thin = |years: f64| {
            let answer = ask_plan(&with(finish_base(), &[(
                "/steps/0/until",
                json!({"wear": {"use": "ring", "lasts_s": years * 31_557_600.0}}),
            )]));
            (number(&answer, THIN), number(&answer, MEAN))
        };
        let ((one, mean), (two, _)) = (thin(years), thin(2.0 * years));
        // 1.2 um a year.
        prop_assert!(close(one, 1.2e-6 * years, 1e-9), "{} of {} years", one, years);
        prop_assert!(close(two, 2.0 * one, 1e-9));
        prop_assert!(mean >= one);
    }

    #[test]
    fn a_floor_is_reached_after_the_jobs_that_the_loss_leaves(volume in 1e-4..1e-2f64, room in 0.1..5.0f64) {
        let answer = ask_plan(&with(finish_base(), &[
            ("/baths/0/volume_m3", json!(volume)),
            ("/baths/0/holds", json!([{"metal": "Au", "now_kg_per_m3": 10.0, "floor_kg_per_m3": 10.0 - room}])),
        ]));
        let gained = number(&answer, "/baths/0/metals/0/gained/known/likely_kg");
        let after = number(&answer, "/baths/0/metals/0/after/known/likely_kg_per_m3");
        prop_assert!(close(after, 10.0 + gained / volume, 1e-9));
        let jobs = number(&answer, "/baths/0/metals/0/jobs_until_floor_count");
        prop_assert!(jobs * -gained <= room * volume * (1.0 + 1e-9));
        prop_assert!((jobs + 1.0) * -gained > room * volume * (1.0 - 1e-9));
    }
}
