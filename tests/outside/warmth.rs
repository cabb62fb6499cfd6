//! Warming and drying out: the trade's table row by row, and the same beaker integrated in small steps by a general library.

use crate::jobs::answer_of;
use crate::table::{Row, rows};
use ode_solvers::{Rk4, SVector, System};
use planner::job::Draught;
use planner::warmth::{Air, Beaker, ROOM, evaporated, latent};
use quantity::{BathSurface, Fraction, Power, Quantity, Temperature, Time, Volume};
use serde_json::{Value, json};

fn got(row: &Row) -> f64 {
    let bath = || Temperature::celsius(row.number("bath_C"));
    let beaker = || Beaker::of(Volume::of_si(row.number("litres") / 1000.0), None);
    let watts = || Power::of_si(row.number("watts"));
    let air = || Air {
        humidity: Fraction::of_si(row.number("humidity_percent") / 100.0),
        draught: match row.text("draught") {
            "still" => Draught::Still,
            "light" => Draught::Light,
            "strong" => Draught::Strong,
            other => panic!("{row}: {other}"),
        },
        ..ROOM
    };
    let one = BathSurface::of_si(1.0);
    let hour = Time::hours(1.0);
    match row.text("what") {
        "kg_per_h_m2" => evaporated(one, hour, bath(), &air()).si(),
        "W_per_m2" => latent(one, bath(), &air()).si(),
        "steady_K" => beaker().steady(watts()).si(),
        "tau_h" => beaker().tau() / hour,
        "hold_W" => beaker().hold(bath(), &ROOM).map_or(f64::NAN, Quantity::si),
        "g_per_h" => evaporated(beaker().surface, hour, bath(), &air()).si() * 1000.0,
        "g_per_day" => evaporated(beaker().surface, hour * 24.0, bath(), &air()).si() * 1000.0,
        "warm_min" => beaker()
            .warm(watts(), bath(), &ROOM)
            .map_or(f64::NAN, |t| t.si() / 60.0),
        other => panic!("{row}: {other}"),
    }
}

/// One unit of so many digits after the point; of -1 ten.
fn unit(digits: f64) -> f64 {
    match digits {
        d if d < 0.0 => 10.0,
        d if d < 1.0 => 1.0,
        d if d < 2.0 => 0.1,
        _ => 0.01,
    }
}

#[test]
fn a_bath_warms_and_dries_as_the_trade_reckons() {
    for row in &rows("warmth.csv") {
        match row.maybe("digits") {
            // Half a unit of the last digit that is printed; four of the table's cells are rounded up from a hair less.
            Some(digits) => row.expect(got(row), 0.56 * unit(digits)),
            None => row.expect_part(got(row), row.number("tolerance_percent") / 100.0),
        }
    }
}

struct Warms {
    watts: f64,
    loss: f64,
    capacity: f64,
}

impl System<f64, SVector<f64, 1>> for Warms {
    fn system(&self, _t: f64, y: &SVector<f64, 1>, dy: &mut SVector<f64, 1>) {
        dy[0] = (self.watts - self.loss * y[0]) / self.capacity;
    }
}

/// A litre with 3 W in it, by Runge-Kutta: its losses and heat are those the steady rise and the time constant tell.
#[test]
fn the_rise_is_what_a_general_integrator_finds() {
    let beaker = Beaker::of(Volume::of_si(1e-3), None);
    let watts = Power::of_si(3.0);
    let loss = watts.si() / beaker.steady(watts).si();
    let capacity = 4.18e3;
    assert!((beaker.tau().si() - capacity / loss).abs() < 1e-6);
    for hours in [0.5, 2.0, 6.0] {
        let time = Time::hours(hours);
        let system = Warms {
            watts: 3.0,
            loss,
            capacity,
        };
        let mut stepper = Rk4::new(system, 0.0, SVector::<f64, 1>::new(0.0), time.si(), 10.0);
        assert!(stepper.integrate().is_ok());
        let want = stepper.y_out().last().map_or(f64::NAN, |y| y[0]);
        let found = beaker.rise(watts, time).si();
        assert!(
            (found - want).abs() < 1e-6 * want,
            "{hours} h: {found}, want {want}"
        );
    }
}

/// In a room that is known exactly.
fn job(changes: &[(&str, Value)]) -> Value {
    let mut plan = json!({"format": 1,
        "room": {"temperature_K": 295.15, "humidity_frac": 0.5, "draught": "still"},
        "pieces": [{"id": "p1", "extent": {"area": {"one_side_m2": 0.0125}}}],
        "baths": [{"id": "b1", "solution": "cu_acid_form", "volume_m3": 0.001, "counter": {"distance_m": 0.08}}],
        "steps": [{"id": "s1", "in": [{"bath": "b1", "pieces": ["p1"]}], "kind": "electroform",
            "drive": {"density_A_per_m2": 120}, "until": {"time_s": 14400}}]});
    for (key, value) in changes {
        plan["baths"][0][*key] = value.clone();
    }
    answer_of(&json!({ "plan": plan }).to_string())
}

/// 1.5 A through 0.9 V in a litre: 1.35 W over 0.72 W/K.
#[test]
fn an_answer_says_how_its_bath_warms() {
    let answer = job(&[]);
    let warmth = &answer["baths"][0]["warmth"]["known"];
    let power = answer["steps"][0]["power"]["known"]["likely_W"]
        .as_f64()
        .unwrap_or(f64::NAN);
    let steady = warmth["steady"]["likely_K"].as_f64().unwrap_or(f64::NAN);
    assert!(
        (steady - power / 0.7245).abs() < 0.01 * steady,
        "{steady} of {power} W"
    );
    // Four hours are two and a half time constants of 1.6 h: 0.92 of the way.
    let end = warmth["at_end"]["likely_K"].as_f64().unwrap_or(f64::NAN);
    assert!((end / steady - 0.918).abs() < 0.005, "{end} of {steady}");
    assert!(warmth["hold_W"].is_null() && warmth["warm_s"].is_null());
    // Four hours of 0.16 to 0.22 kg/(m2 h) on 87 cm2, 0.3 to 0.7 of it: 2 to 5 g.
    let water = |end: &str| warmth["water"][end].as_f64().unwrap_or(f64::NAN) * 1000.0;
    assert!(water("low_kg") > 1.6 && water("high_kg") < 5.5, "{warmth}");
}

#[test]
fn a_heater_at_hand_is_said_how_long_it_takes() {
    let warm = |w: f64| {
        let mut answer = job(&[("heater_W", json!(w))]);
        assert!(answer["baths"][0]["warmth"]["known"]["warm_s"].is_null());
        let mut plan = json!({"format": 1});
        plan["baths"] = json!([{"id": "b1", "solution": "cu_acid_form", "volume_m3": 0.001, "heater_W": w, "counter": {"distance_m": 0.08}}]);
        plan["pieces"] = json!([{"id": "p1", "extent": {"area": {"one_side_m2": 0.0125}}}]);
        plan["steps"] = json!([{"id": "s1", "in": [{"bath": "b1", "pieces": ["p1"]}], "kind": "electroform", "temperature_K": 323.15,
            "drive": {"density_A_per_m2": 120}, "until": {"time_s": 14400}}]);
        answer = answer_of(&json!({ "plan": plan }).to_string());
        answer["baths"][0]["warmth"]["known"].clone()
    };
    // 52 minutes by 50 W, as the trade's table has it; 20 W never.
    let known = warm(50.0);
    let minutes = known["warm_s"].as_f64().unwrap_or(f64::NAN) / 60.0;
    assert!((minutes - 52.0).abs() < 2.0, "{minutes}");
    // 23 W hold it, less the 1.4 W of the current itself.
    let hold = known["hold_W"].as_f64().unwrap_or(f64::NAN);
    assert!((hold - 21.5).abs() < 1.0, "{hold}");
    assert!(warm(20.0)["warm_s"].is_null());
}

/// A litre at a temperature asked for, for an hour, in a room.
fn in_room(room: Value, celsius: f64, spreads: Value) -> Value {
    let plan = json!({"format": 1, "room": room, "spreads": spreads,
        "pieces": [{"id": "p1", "extent": {"area": {"one_side_m2": 0.0125}}}],
        "baths": [{"id": "b1", "solution": "cu_acid_form", "volume_m3": 0.001, "heater_W": 100,
            "counter": {"distance_m": 0.08}}],
        "steps": [{"id": "s1", "in": [{"bath": "b1", "pieces": ["p1"]}], "kind": "electroform",
            "temperature_K": 273.15 + celsius, "drive": {"density_A_per_m2": 120}, "until": {"time_s": 3600}}]});
    let answer = answer_of(&json!({ "plan": plan }).to_string());
    assert_eq!(answer["problems"], json!([]));
    answer
}

/// The trade's table of water by humidity and draught (room 22 C; the ASHRAE pool formula, from memory), on the litre's
/// 86.6 cm2 and with half of it by the freeboard.
#[test]
fn the_room_rules_what_water_a_bath_loses() {
    for (humidity, draught, celsius, rate) in [
        (0.3, "still", 22.0, 0.23),
        (0.5, "still", 22.0, 0.16),
        (0.7, "still", 22.0, 0.09),
        (0.3, "still", 50.0, 1.51),
        (0.7, "still", 50.0, 1.36),
        (0.5, "light", 40.0, 0.98),
        (0.5, "strong", 40.0, 1.12),
    ] {
        let room = json!({"temperature_K": 295.15, "humidity_frac": humidity, "draught": draught});
        let answer = in_room(room, celsius, json!([]));
        let warmth = &answer["baths"][0]["warmth"]["known"];
        let water = warmth["water"]["likely_kg"].as_f64().unwrap_or(f64::NAN);
        let want = rate * 0.00866 * 0.5;
        // Half a unit of the rate's last digit.
        assert!(
            (water - want).abs() <= 0.0056 * 0.00866 * 0.5,
            "{humidity} {draught} {celsius}: {water}, want {want}"
        );
        // Known exactly: what is left is the freeboard, 0.3 to 0.7.
        let low = warmth["water"]["low_kg"].as_f64().unwrap_or(f64::NAN);
        assert!((low / water - 0.6).abs() < 1e-9);
        assert!(warmth["room"]["assumed"].is_null(), "{warmth}");
    }
}

/// By Newton's law the dry part of what holds a bath goes with how much warmer than the room it is.
#[test]
fn a_colder_room_takes_a_stronger_heater() {
    let hold = |celsius: f64| {
        let room = json!({"temperature_K": 273.15 + celsius, "humidity_frac": 0.5});
        let answer = in_room(room, 50.0, json!([]));
        answer["baths"][0]["warmth"]["known"]["hold_W"]
            .as_f64()
            .unwrap_or(f64::NAN)
    };
    // Dry walls of a litre, 0.44 to 0.55 W/K, and 0.94 to 0.95 kW/m2 of evaporation that hardly changes.
    let more = hold(12.0) - hold(22.0);
    assert!((4.4..5.9).contains(&more), "{more}");
}

/// What nobody gave is named with its band among the inputs, and makes the range of the water wider.
#[test]
fn a_room_that_nobody_described_is_said_to_be_assumed() {
    let answer = in_room(json!({}), 22.0, json!([]));
    let warmth = &answer["baths"][0]["warmth"]["known"];
    assert_eq!(
        warmth["room"]["assumed"],
        json!(["room/temperature", "room/humidity", "room/draught"])
    );
    let input = |answer: &Value, at: &str| {
        let mut all = answer["inputs"].as_array().into_iter().flatten();
        all.find(|i| i["at"] == at).cloned().unwrap_or_default()
    };
    let warm = input(&answer, "room/temperature");
    assert_eq!(warm["origin"], "common_practice", "{warm}");
    assert_eq!(warm["value_K"], 295.15);
    let low = warm["low_K"].as_f64().unwrap_or(f64::NAN);
    assert!((low - 291.15).abs() < 1e-9, "{warm}");
    assert_eq!(input(&answer, "room/humidity")["high_frac"], 0.7);
    let width = |answer: &Value| {
        let water = &answer["baths"][0]["warmth"]["known"]["water"];
        let end = |name: &str| water[name].as_f64().unwrap_or(f64::NAN);
        (end("high_kg") - end("low_kg")) / end("likely_kg")
    };
    let known = json!({"temperature_K": 295.15, "humidity_frac": 0.5, "draught": "still"});
    let exact = in_room(known.clone(), 22.0, json!([]));
    assert!(width(&answer) > 1.2 * width(&exact));
    assert_eq!(input(&exact, "room/humidity")["origin"], "given");
    // A spread of one's own at its address.
    let spread = json!([{"at": "room/humidity", "spread_frac": 0.3}]);
    assert!(width(&in_room(known, 22.0, spread)) > width(&exact));
}
