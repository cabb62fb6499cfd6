//! Laws that hold in every answer.

use crate::generator::plannable;
use crate::support::config;
use crate::support::{ask, close, is_sound};
use planner::question::{Question, to_line};
use proptest::prelude::*;
use serde_json::Value;

/// M / (z F) of copper, by hand: 0.063546 / (2 x 96485.33212) kg/C.
const EQUIVALENT: f64 = 0.063_546 / (2.0 * 96_485.332_123_31);
/// CRC Handbook of Chemistry and Physics, 97th ed., sec. 4.
const COPPER: f64 = 8960.0;

fn likely(value: &Value, unit: &str) -> Option<f64> {
    value["known"][format!("likely_{unit}")].as_f64()
}

fn list<'a>(answer: &'a Value, key: &str) -> impl Iterator<Item = &'a Value> {
    answer[key].as_array().into_iter().flatten()
}

/// Share of the charge that makes metal, as the answer lists it.
fn efficiency(answer: &Value) -> f64 {
    list(answer, "inputs")
        .find(|i| i["at"] == "baths/b1/efficiency")
        .and_then(|i| i["value_frac"].as_f64())
        .unwrap_or(f64::NAN)
}

fn charge_is_current_times_time(answer: &Value) {
    let mut sum = 0.0;
    for step in list(answer, "steps") {
        let real = step["current"]["known"]["real"]["likely_A"].as_f64();
        let time = likely(&step["time"], "s");
        let charge = likely(&step["charge"], "C");
        assert_eq!(real.zip(time).is_some(), charge.is_some(), "{step}");
        if let (Some(real), Some(time), Some(charge)) = (real, time, charge) {
            assert!(close(real * time, charge, 1e-12), "{step}");
            sum += charge;
        }
    }
    if let Some(all) = likely(&answer["charge"], "C") {
        assert!(close(all, sum, 1e-12), "{all} of {sum} C");
    }
}

fn mass_is_equivalent_times_efficiency_times_charge(answer: &Value) {
    let Some(charge) = likely(&answer["charge"], "C") else {
        return;
    };
    let mut sum = 0.0;
    for piece in list(answer, "pieces") {
        let count = piece["count"].as_f64().unwrap_or(f64::NAN);
        let (Some(on_it), Some(on_wire)) = (
            likely(&piece["mass"], "kg"),
            likely(&piece["wire_mass"], "kg"),
        ) else {
            panic!("charge but no mass: {piece}");
        };
        sum += count * (on_it + on_wire);
    }
    let want = EQUIVALENT * efficiency(answer) * charge;
    assert!(close(sum, want, 1e-9), "{sum} kg, want {want}");
}

fn mass_is_thickness_times_density_times_area(answer: &Value) {
    for piece in list(answer, "pieces") {
        let (Some(mean), Some(area), Some(mass)) = (
            likely(&piece["mean"], "m"),
            likely(&piece["area"], "m2"),
            likely(&piece["mass"], "kg"),
        ) else {
            continue;
        };
        assert!(close(mean * COPPER * area, mass, 1e-9), "{piece}");
    }
}

fn thinnest_is_at_most_mean_and_thickest_at_least(answer: &Value) {
    for piece in list(answer, "pieces") {
        let Some(mean) = likely(&piece["mean"], "m") else {
            continue;
        };
        if let Some(thin) = likely(&piece["thinnest"], "m") {
            assert!(thin <= mean * (1.0 + 1e-12), "{piece}");
        }
        if let Some(thick) = likely(&piece["thickest"], "m") {
            assert!(thick >= mean * (1.0 - 1e-12), "{piece}");
        }
    }
}

fn areas_add_up(answer: &Value) {
    for piece in list(answer, "pieces") {
        let (Some(own), Some(wire), Some(both)) = (
            likely(&piece["area"], "m2"),
            likely(&piece["wire_area"], "m2"),
            likely(&piece["wetted"], "m2"),
        ) else {
            panic!("an area is not known: {piece}");
        };
        assert!(close(own + wire, both, 1e-12), "{piece}");
    }
}

fn bore_shrinks_by_twice_the_mean(answer: &Value) {
    for piece in list(answer, "pieces") {
        let bore = list(answer, "working").find(|w| {
            w["id"] == "bore_after"
                && w["at"].as_str()
                    == piece["id"]
                        .as_str()
                        .map(|id| format!("pieces/{id}"))
                        .as_deref()
        });
        let (Some(after), Some(mean), Some(bore)) = (
            likely(&piece["bore_after"], "m"),
            likely(&piece["mean"], "m"),
            bore.and_then(|w| w["values"][0]["value_m"].as_f64()),
        ) else {
            continue;
        };
        assert!(
            (bore - 2.0 * mean - after).abs() <= 1e-12 * (bore + mean),
            "{piece}"
        );
    }
}

proptest! {
    #![proptest_config(config(150))]

    #[test]
    fn every_answer_obeys_the_laws(job in plannable()) {
        let line = to_line(&Question::Plan(job));
        let answer = ask(&line);
        is_sound(&answer, &line);
        charge_is_current_times_time(&answer);
        mass_is_equivalent_times_efficiency_times_charge(&answer);
        mass_is_thickness_times_density_times_area(&answer);
        thinnest_is_at_most_mean_and_thickest_at_least(&answer);
        areas_add_up(&answer);
        bore_shrinks_by_twice_the_mean(&answer);
    }
}
