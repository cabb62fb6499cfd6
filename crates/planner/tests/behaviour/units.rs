//! The same job typed in other units is the same job.

use crate::support::{ask_plan, base, close, config, etch_base, finish_base, walk, with};
use planner::FieldPath;
use planner::fields::{self, Field};
use proptest::prelude::*;
use quantity::Quantity;
use serde_json::{Value, json};

/// What the field reads, as it stands in a Job.
fn typed<Q: Quantity>(field: &Field<Q>, text: &str) -> Value {
    match field.read_text(text, &FieldPath::new("typed")) {
        Ok(reading) => json!(reading.value.si()),
        Err(problem) => panic!("{text}: {problem:?}"),
    }
}

/// Every number of both answers, the likely ones and all others, agrees to 1e-9. What a bath gains is a difference: held
/// against what passes through it.
fn alike(one: &Value, other: &Value) {
    let passes = one["baths"][0]["counter"]["known"]["likely_kg"]
        .as_f64()
        .map_or(0.0, f64::abs);
    walk(one, "", &mut |at, value| {
        let same = other.pointer(at);
        match (value.as_f64(), same.and_then(Value::as_f64)) {
            (Some(a), Some(b)) => {
                let cancels = at.contains("/gained/") && (a - b).abs() <= 1e-9 * passes;
                assert!(cancels || close(a, b, 1e-9), "{at}: {a} and {b}");
            }
            (None, None) => assert!(same.is_some(), "{at} is only in one"),
            _ => panic!("{at} is a number only in one"),
        }
    });
}

proptest! {
    #![proptest_config(config(40))]

    #[test]
    fn a_ring_in_inches_and_amperes_per_square_foot(
        bore in 10.0..25.0f64, width in 2.0..10.0f64, dm2 in 0.3..3.0f64, um in 10.0..500.0f64
    ) {
        let plan = |bore: String, width: String, density: String, mean: String| with(base(), &[
            ("/pieces/0/extent/parts/0/shape/band/bore_m", typed(&fields::BORE, &bore)),
            ("/pieces/0/extent/parts/0/shape/band/width_m", typed(&fields::WIDTH, &width)),
            ("/steps/0/drive", json!({"density_A_per_m2": typed(&fields::DENSITY, &density)})),
            ("/steps/0/until", json!({"mean_m": typed(&fields::UNTIL_MEAN, &mean)})),
        ]);
        let metric = plan(
            format!("{bore} mm"), format!("{width}"), format!("{dm2} A/dm2"), format!("{um} um"),
        );
        // 1 in is 25.4 mm, 1 mil 25.4 um, 1 ft2 9.290304 dm2.
        let inches = plan(
            format!("{} in", bore / 25.4),
            format!("{} cm", width / 10.0),
            format!("{} A/ft2", dm2 * 9.290304),
            format!("{} mil", um / 25.4),
        );
        alike(&ask_plan(&metric), &ask_plan(&inches));
    }

    #[test]
    fn an_etch_in_inches_minutes_and_square_inches(
        cm2 in 1.0..200.0f64, opening in 0.1..5.0f64, depth in 1.0..400.0f64, stock in 0.3..3.0f64, ma in 1.0..500.0f64
    ) {
        let plan = |area: String, opening: String, depth: String, stock: String, current: String| with(etch_base(), &[
            ("/pieces/0/extent", json!({"area": {"one_side_m2": typed(&fields::ONE_SIDE, &area)}})),
            ("/pieces/0/artwork/opening_m", typed(&fields::ART_OPENING, &opening)),
            ("/pieces/0/artwork/model", json!("groove")),
            ("/pieces/0/base/metal/thickness_m", typed(&fields::STOCK, &stock)),
            ("/steps/0/drive", json!({"current_A": typed(&fields::CURRENT, &current)})),
            ("/steps/0/until", json!({"depth_m": typed(&fields::UNTIL_DEPTH, &depth)})),
        ]);
        let metric = plan(
            format!("{cm2} cm2"), format!("{opening} mm"), format!("{depth} um"), format!("{stock} mm"),
            format!("{ma} mA"),
        );
        let inches = plan(
            format!("{} in2", cm2 / 6.4516),
            format!("{} in", opening / 25.4),
            format!("{} uin", depth / 0.0254),
            format!("{} in", stock / 25.4),
            format!("{} A", ma / 1000.0),
        );
        alike(&ask_plan(&metric), &ask_plan(&inches));
    }

    #[test]
    fn a_finish_in_minutes_millilitres_and_ounces(
        minutes in 1.0..600.0f64, litres in 0.05..5.0f64, grams in 1.0..30.0f64, mm in 10.0..200.0f64
    ) {
        let plan = |time: String, volume: String, now: String, distance: String| with(finish_base(), &[
            ("/steps/0/until", json!({"time_s": typed(&fields::UNTIL_TIME, &time)})),
            ("/baths/0/volume_m3", typed(&fields::VOLUME, &volume)),
            ("/baths/0/holds", json!([{"metal": "Au", "now_kg_per_m3": typed(&fields::HOLDS_NOW, &now)}])),
            ("/baths/0/counter/distance_m", typed(&fields::DISTANCE, &distance)),
        ]);
        let one = plan(
            format!("{minutes} min"), format!("{litres} L"), format!("{grams} g/L"), format!("{mm}"),
        );
        let other = plan(
            format!("{} h", minutes / 60.0),
            format!("{} mL", litres * 1000.0),
            format!("{} mg/L", grams * 1000.0),
            format!("{} in", mm / 25.4),
        );
        alike(&ask_plan(&one), &ask_plan(&other));
    }

    #[test]
    fn a_mass_in_pennyweight(grams in 0.01..50.0f64) {
        let plan = |mass: String| with(base(), &[
            ("/steps/0/until", json!({"mass_kg": typed(&fields::UNTIL_MASS, &mass)})),
        ]);
        // 1 dwt is 1.55517384 g.
        let (one, other) = (plan(format!("{grams} g")), plan(format!("{} dwt", grams / 1.55517384)));
        alike(&ask_plan(&one), &ask_plan(&other));
    }
}
