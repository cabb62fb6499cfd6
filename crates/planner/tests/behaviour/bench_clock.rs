//! Covering, meters, sessions, counter electrodes. What is wanted is worked out by hand from the trade's bench tables (named at
//! each) or is an identity between two answers.

use crate::accidents::{after, ring};
use crate::support::{
    ask_plan, base, changed, close, config, etch_base, finish_base, number, with,
};
use planner::meter::AlarmKind;
use planner::reentry::ReentryKind;
use planner::sessions::Doing;
use proptest::prelude::*;
use serde_json::{Value, json};
use std::collections::BTreeSet;

/// A strip of 24 cm2, covered and then grown by 1.2 A/dm2.
fn covered(coat: &str) -> Value {
    let step = |id: &str, drive: Value, until: Value| {
        json!({"id": id, "in": [{"bath": "b1", "pieces": ["p1"]}], "kind": "electroform",
            "drive": drive, "until": until})
    };
    let mut plan = changed(&[
        ("/pieces/0/extent", json!({"area": {"one_side_m2": 0.0024}})),
        (
            "/pieces/0/base",
            json!({"nonconductor": {"coat": coat, "sheet_ohm_sq": 150}}),
        ),
        (
            "/steps",
            json!([
                step("s1", json!("advised"), json!("covered")),
                step(
                    "s2",
                    json!({"density_A_per_m2": 120}),
                    json!({"mean_m": 0.0002})
                ),
            ]),
        ),
    ]);
    plan["steps"][0]["purpose"] = json!("cover");
    plan
}

/// Bench tables 14: on graphite the growth current under a ceiling at the growth volts, 0.5 to 3 h; the front stalls below
/// 0.1 V / (8 ohm cm2 + 0.1 V / i_limiting).
#[test]
fn graphite_is_covered_by_the_growth_current_under_the_growth_volts() {
    let answer = ask_plan(&covered("graphite"));
    assert_eq!(answer["problems"], json!([]));
    let (cover, grow) = (&answer["steps"][0], &answer["steps"][1]);
    assert_eq!(cover["ruled_by"], "covering");
    assert!(close(number(cover, "/current/known/set_A"), 0.288, 1e-9));
    assert_eq!(
        cover["ceiling"]["known"]["set_V"],
        grow["ceiling"]["known"]["set_V"]
    );
    let time = |end: &str| number(cover, &format!("/time/known/{end}_s")) / 60.0;
    assert!(time("low") > 30.0 && time("high") < 180.0, "{cover}");
    let limit = number(cover, "/window/bound_A_per_m2") / 0.7;
    let stall = 0.1 / (8e-4 + 0.1 / limit);
    let found = number(cover, "/covering/stalls_below_A") / 0.0024;
    assert!(close(found, stall, 1e-9), "{found}, want {stall}");
    // The trade's 0.97 A/dm2, with a limiting density of 4.3.
    assert!((found / 100.0 - 0.97).abs() < 0.01, "{found}");
    assert_eq!(
        answer["limits"].as_array().map(Vec::len),
        Some(0),
        "{}",
        answer["limits"]
    );
    // By hand: rising, at last all of it.
    let hand = cover["covering"]["by_hand"]
        .as_array()
        .cloned()
        .unwrap_or_default();
    assert!(hand.len() > 4);
    assert!(
        hand.windows(2)
            .all(|w| w[0]["set_A"].as_f64() < w[1]["set_A"].as_f64()
                && w[0]["after_s"].as_f64() < w[1]["after_s"].as_f64())
    );
    assert_eq!(
        hand.last().map(|h| &h["set_A"]),
        Some(&cover["current"]["known"]["set_A"])
    );
    // 52 of 288 mA flow at first, 243 of 288 on average.
    assert!(close(number(cover, "/covering/first_A"), 0.052, 0.01));
    assert!(close(
        number(cover, "/covering/passes_frac"),
        243.0 / 288.0,
        0.01
    ));
}

/// Where growth alone would stall, covering takes a little more than that.
#[test]
fn covering_never_advises_a_current_that_stalls() {
    let mut plan = covered("graphite");
    plan["steps"][1]["drive"] = json!({"density_A_per_m2": 60});
    let answer = ask_plan(&plan);
    let density = number(&answer, "/steps/0/density/known/likely_A_per_m2");
    assert!(density > 97.0 && density < 110.0, "{density}");
    // Its ceiling leaves it what it needs: more than growth does.
    let set = number(&answer, "/steps/0/ceiling/known/set_V");
    let own = number(&answer, "/steps/0/power/known/likely_W")
        / number(&answer, "/steps/0/current/known/set_A");
    assert!(set >= own, "{set} of {own}");
    assert_eq!(answer["limits"], json!([]), "{}", answer["limits"]);
}

/// Bench tables 14: metal paint at 1.2 to 2 times the growth current, turned down when covered; silver 1 to 5, copper 5 to 30
/// minutes.
#[test]
fn metal_paint_is_covered_faster_and_turned_down() {
    for (coat, least, most) in [("silver", 1.0, 5.0), ("copper", 5.0, 30.0)] {
        let answer = ask_plan(&covered(coat));
        let cover = &answer["steps"][0];
        let over = number(cover, "/current/known/set_A") / 0.288;
        assert!((1.2..=2.0).contains(&over), "{coat}: {over}");
        assert!(close(number(cover, "/covering/then_A"), 0.288, 1e-9));
        let time = |end: &str| number(cover, &format!("/time/known/{end}_s")) / 60.0;
        assert!(time("low") > least && time("high") < most, "{coat}");
        let all = number(cover, "/charge/known/likely_C");
        assert!(close(all, 0.288 * over * time("likely") * 60.0, 1e-9));
        assert!(
            cover["covering"]["by_hand"].is_null() && cover["covering"]["stalls_below_A"].is_null()
        );
    }
}

/// An own covering time is taken as given; a step that covers nothing is a slip.
#[test]
fn a_covering_time_of_ones_own_rules() {
    let mut plan = covered("silver");
    plan["assume"] = json!([{"at": "steps/s1/covering", "value_s": 600}]);
    let answer = ask_plan(&plan);
    assert_eq!(answer["problems"], json!([]));
    let time = &answer["steps"][0]["time"]["known"];
    assert_eq!(
        (&time["low_s"], &time["high_s"]),
        (&json!(600.0), &json!(600.0))
    );
}

/// Bench tables 14, example: 24 cm2, 288 mA, 8 cm at 0.16 S/cm: 0.60 V in the bath; half of the whole: area double or short;
/// twice: half the area, a contact, cold.
#[test]
fn the_meter_says_what_it_should_show_and_what_is_wrong() {
    let answer = ask_plan(&with(
        covered("graphite"),
        &[
            (
                "/assume",
                json!([{"at": "baths/b1/conductivity", "value_S_per_m": 16}]),
            ),
            (
                "/supply",
                json!({"constant_current": {"highest_A": 3, "highest_V": 0.7}}),
            ),
        ],
    ));
    let grow = &answer["steps"][1];
    assert!(close(number(grow, "/ohmic/known/likely_V"), 0.60, 1e-6));
    let volts = number(grow, "/ceiling/known/expected/likely_V");
    assert!((0.75..1.05).contains(&volts), "{volts}");
    let alarm = |kind: &str, name: &str| alarm_of(&grow["meter"], kind, name);
    for (kind, name, times) in [
        ("rising", "above", 1.1),
        ("passive", "above", 1.3),
        ("short", "below", 0.7),
        ("half", "near", 0.5),
        ("twice", "near", 2.0),
    ] {
        assert!(close(alarm(kind, name), volts * times, 1e-9), "{kind}");
    }
    assert_eq!(alarm("rising", "within"), 3600.0);
    let first = number(grow, "/meter/first_minute/likely_V");
    assert!(first > volts * 1.05 && first < volts * 1.25);
    assert!(number(grow, "/meter/at_end/likely_V") < volts);
    // 0.7 V less what the surfaces take, over what the bath takes of each ampere.
    let surfaces = volts - 0.60;
    let bites = 0.288 * (0.7 - surfaces) / 0.60;
    let found = number(grow, "/meter/ceiling_bites/likely_A");
    assert!(close(found, bites, 1e-6), "{found}, want {bites}");
    assert!(found < 0.288);
    let limits = answer["limits"].as_array().cloned().unwrap_or_default();
    let few = limits
        .iter()
        .find(|l| l["kind"] == "volts_too_few" && l["at"] == "steps/s2");
    let said = few.and_then(|l| {
        l["numbers"]
            .as_array()?
            .iter()
            .find(|n| n["name"] == "bites")
            .cloned()
    });
    assert_eq!(said.map(|n| n["value_A"].clone()), Some(json!(found)));
    // The covering stands flat at its ceiling and must fall within 20 minutes.
    let cover = &answer["steps"][0]["meter"];
    assert_eq!(
        cover["first_minute"]["likely_V"],
        answer["steps"][0]["ceiling"]["known"]["set_V"]
    );
    assert!(
        cover["alarms"]
            .as_array()
            .is_some_and(|a| a.iter().any(|a| a["kind"] == "no_fall"))
    );
}

/// Bench tables 14 turned round: what takes a share more volts at a current lets so much less current flow at a voltage.
/// Growth: a jump of 5 to 20 % that falls, 0 to 10 % fewer volts over hours; film + 10 %, passive + 30 %, short - 30 %; half the
/// volts is double the area. Common practice, no source.
#[test]
fn where_the_volts_are_held_the_ammeter_tells() {
    let supply = json!({"constant_voltage": {"highest_V": 6, "highest_A": 2}});
    let answer = ask_plan(&with(covered("graphite"), &[("/supply", supply)]));
    let (cover, grow) = (&answer["steps"][0], &answer["steps"][1]);
    for step in [cover, grow] {
        assert!(step["set_V"].is_number());
        assert!(step["meter"].is_null());
    }
    let flows = number(grow, "/current/known/real/likely_A");
    // As a share of the same end of what flows.
    for (at, share) in [
        ("/ammeter/first_minute/low", 0.8),
        ("/ammeter/first_minute/high", 0.95),
        ("/ammeter/at_end/likely", 1.0 / 0.95),
    ] {
        let scale = flows_end(grow, at) * share;
        let found = number(grow, &format!("{at}_A"));
        assert!(close(found, scale, 1e-9), "{at}: {found}, want {scale}");
    }
    let alarm = |step: &Value, kind: &str, name: &str| alarm_of(&step["ammeter"], kind, name);
    for (kind, name, share) in [
        ("falling", "below", 1.0 / 1.1),
        ("stifled", "below", 1.0 / 1.3),
        ("surge", "above", 1.0 / 0.7),
        ("double_current", "near", 2.0),
        ("half_current", "near", 0.5),
    ] {
        let found = alarm(grow, kind, name);
        assert!(close(found, flows * share, 1e-9), "{kind}: {found}");
    }
    assert_eq!(alarm(grow, "falling", "within"), 3600.0);
    assert_eq!(alarm(grow, "at_most", "near"), 2.0);
    // Covering graphite: 52 of 288 mA at the first touch; it must rise within 20 minutes.
    let covers = number(cover, "/current/known/real/likely_A");
    let first = number(cover, "/ammeter/first_minute/likely_A");
    assert!(
        close(first, covers * 52.0 / 288.0, 0.005),
        "{first} of {covers}"
    );
    assert!(close(alarm(cover, "no_rise", "below"), first, 1e-12));
    assert_eq!(alarm(cover, "no_rise", "within"), 1200.0);
    assert!(alarm(cover, "falling", "below").is_nan());
}

/// The end of the range of what flows that a reading of the meter stands for.
fn flows_end(step: &Value, at: &str) -> f64 {
    let end = at.rsplit('/').next().unwrap_or_default();
    number(step, &format!("/current/known/real/{end}_A"))
}

/// A wire grows fatter: at the same volts so much more current flows, and that alone is no alarm.
#[test]
fn a_wire_that_grows_draws_more_and_no_alarm_says_so() {
    let answer = ask_plan(&with(
        covered("copper"),
        &[
            ("/supply", json!({"constant_voltage": {"highest_V": 6}})),
            (
                "/pieces/0/extent",
                json!({"parts": [{"id": "a", "shape": {"rod": {"diameter_m": 0.0008, "length_m": 0.3}}}]}),
            ),
        ],
    ));
    let grow = &answer["steps"][1];
    let fatter = number(grow, "/fatter_ratio");
    assert!(
        fatter > 1.4,
        "0.8 mm with 0.2 mm on it is 1.5 times as thick"
    );
    let end = number(grow, "/ammeter/at_end/likely_A");
    let flows = number(grow, "/current/known/real/likely_A");
    assert!(close(end, flows * fatter / 0.95, 1e-9));
    for (kind, name) in [("surge", "above"), ("double_current", "near")] {
        assert!(alarm_of(&grow["ammeter"], kind, name) > end, "{kind}");
    }
    // Without a highest current there is none to stand at; on metal paint the start is lower by what the paint takes.
    assert!(alarm_of(&grow["ammeter"], "at_most", "near").is_nan());
    let cover = &answer["steps"][0];
    let ohmic = number(cover, "/ohmic/known/likely_V");
    let share = |end: &str| {
        number(cover, &format!("/ammeter/first_minute/{end}_A"))
            / number(cover, &format!("/current/known/real/{end}_A"))
    };
    for (end, volts) in [("low", 0.5), ("likely", 0.13), ("high", 0.02)] {
        let left = 1.0 - volts / ohmic;
        assert!(
            close(share(end), if left > 0.0 { left } else { 0.0 }, 1e-9),
            "{end}"
        );
    }
}

/// A label that says no efficiency: no layer and no time are known, but what to turn down to is, by the area as it stands.
#[test]
fn after_covering_the_next_current_is_known_without_an_efficiency() {
    let own = json!({"solutions": [{"id": "bottle", "process": "electroform", "metal": "Cu",
        "valence_count": 2, "density_A_per_m2": 100}]});
    let answer = ask_plan(&with(
        covered("copper"),
        &[
            ("/own", own),
            ("/baths/0/solution", json!("bottle")),
            ("/effects", json!({"growth": "on", "contacts": "off"})),
        ],
    ));
    let (cover, grow) = (&answer["steps"][0], &answer["steps"][1]);
    assert_eq!(answer["problems"], json!([]), "{answer}");
    assert!(grow["time"]["absent"].is_object());
    let set = |step: &Value| number(step, "/current/known/set_A");
    assert!(close(set(grow), 0.288, 1e-9), "24 cm2 at 1.2 A/dm2");
    assert!(
        close(set(cover), 0.432, 1e-9),
        "1.5 times that on metal paint"
    );
    assert!(close(number(&answer["stages"][1], "/set_A"), 0.288, 1e-9));
}

/// Bad readings at a constant current are of volts: no ammeter is spoken of.
#[test]
fn a_constant_current_has_no_ammeter_to_watch() {
    let answer = ask_plan(&covered("graphite"));
    for step in 0..2 {
        assert!(answer["steps"][step]["ammeter"].is_null());
        assert!(answer["steps"][step]["meter"].is_object());
    }
}

/// A number of an alarm; not a number where it is not told.
fn alarm_of(meter: &Value, kind: &str, name: &str) -> f64 {
    let alarms = meter["alarms"].as_array().into_iter().flatten();
    let numbers = alarms
        .filter(|a| a["kind"] == kind)
        .flat_map(|a| a["numbers"].as_array().into_iter().flatten());
    let found = numbers.filter(|n| n["name"] == name).find_map(|n| {
        let units = ["value_V", "value_A", "value_s"];
        units.iter().find_map(|unit| n[unit].as_f64())
    });
    found.unwrap_or(f64::NAN)
}

/// Scenario 2: 12.85 h become three of 4.28 h, with a way in again at each but the first (bench tables 11, dry).
#[test]
fn a_long_build_becomes_sessions() {
    let plan = with(
        base(),
        &[
            (
                "/pieces/0/extent",
                json!({"area": {"one_side_m2": 0.00114}}),
            ),
            (
                "/assume",
                json!([{"at": "baths/b1/efficiency", "value_frac": 0.98}]),
            ),
            ("/attend", json!({"session_s": 18000})),
        ],
    );
    let answer = ask_plan(&plan);
    let sessions = answer["sessions"].as_array().cloned().unwrap_or_default();
    assert_eq!(sessions.len(), 3);
    for (n, session) in sessions.iter().enumerate() {
        assert!(close(
            number(session, "/time_s") / 3600.0,
            12.85 / 3.0,
            1e-3
        ));
        let mean = 0.0002 * (n as f64 + 1.0) / 3.0;
        assert!(
            close(number(session, "/mean_after_m"), mean, 1e-6),
            "{session}"
        );
        assert_eq!(session["reentry"].is_null(), n == 0);
        if n > 0 {
            assert_eq!(session["reentry"]["kind"], "afresh");
        }
        assert!(session["latest"].is_null());
    }
}

/// Back from a fair on Saturday at five: three evenings before, the coat overnight, the sealer a day; nothing at night.
#[test]
fn a_date_is_counted_back_to_the_latest_start_of_each() {
    let plan = with(
        base(),
        &[
            (
                "/pieces/0/extent",
                json!({"area": {"one_side_m2": 0.00114}}),
            ),
            (
                "/pieces/0/base",
                json!({"nonconductor": {"coat": "graphite"}}),
            ),
            (
                "/assume",
                json!([{"at": "baths/b1/efficiency", "value_frac": 0.98}]),
            ),
            (
                "/attend",
                json!({"session_s": 18000, "due": "2026-05-09T17:00", "dry_s": 7200}),
            ),
        ],
    );
    let answer = ask_plan(&plan);
    let list = answer["sessions"].as_array().cloned().unwrap_or_default();
    let doing: Vec<&str> = list.iter().filter_map(|s| s["doing"].as_str()).collect();
    assert_eq!(doing, ["cure", "dry", "session", "session", "session"]);
    let latest: Vec<&str> = list.iter().filter_map(|s| s["latest"].as_str()).collect();
    // 4 h 17 min before 17:00, a day apart; 2 h before the first, a day before that.
    let want = [
        "2026-05-06T10:43",
        "2026-05-07T10:43",
        "2026-05-07T12:43",
        "2026-05-08T12:43",
        "2026-05-09T12:43",
    ];
    assert_eq!(latest, want);
    assert_eq!(list[0]["origin"], "common_practice");
    assert_eq!(list[1]["origin"], "given");
    // Due at three in the night: the last session ends at ten the evening before.
    let mut night = plan.clone();
    night["attend"]["due"] = json!("2026-05-09T03:00");
    assert_eq!(
        ask_plan(&night)["sessions"][4]["latest"],
        "2026-05-08T17:43"
    );
}

/// Every id of these lists comes out of some job: none is there for nothing.
#[test]
fn every_alarm_way_in_and_stretch_is_used() {
    let mut seen = BTreeSet::new();
    let mut note = |answer: &Value| {
        crate::support::walk(answer, "", &mut |_, value| {
            for key in ["kind", "doing"] {
                seen.extend(value[key].as_str().map(str::to_owned));
            }
        });
    };
    let night = json!({"power_cut": {}});
    note(&ask_plan(&covered("graphite")));
    let held = json!({"constant_voltage": {"highest_V": 6, "highest_A": 2}});
    note(&ask_plan(&with(covered("graphite"), &[("/supply", held)])));
    note(&ask_plan(&with(
        covered("graphite"),
        &[("/attend", json!({"session_s": 7200}))],
    )));
    note(&after(&ring(), "s1", 60.0, night.clone()));
    note(&after(
        &ring(),
        "s1",
        60.0,
        json!({"power_cut": {"gap_s": 5}}),
    ));
    note(&after(
        &ring(),
        "s1",
        60.0,
        json!({"power_cut": {"gap_s": 500}}),
    ));
    note(&after(&finish_base(), "s1", 60.0, night.clone()));
    note(&after(&etch_base(), "s1", 60.0, night));
    let alarms = AlarmKind::ALL.iter().map(|k| json!(k));
    let ways = ReentryKind::ALL.iter().map(|k| json!(k));
    let doings = Doing::ALL.iter().map(|k| json!(k));
    for id in alarms.chain(ways).chain(doings) {
        assert!(id.as_str().is_some_and(|id| seen.contains(id)), "{id}");
    }
}

/// Counter electrodes by their sizes: a plate of 12 by 10 cm twice, 2 m of 2 mm wire, 100 g of copper scrap of 0.5 mm, a beaker
/// of 95 mm filled 60 mm high with a sheet of 25 mm in it.
#[test]
fn a_counter_electrode_is_measured_by_what_it_is() {
    let cases = [
        (
            json!({"plate": {"width_m": 0.12, "height_m": 0.1, "plates_count": 2}}),
            0.024,
        ),
        (
            json!({"coil": {"wire_d_m": 0.002, "length_m": 2}}),
            0.006_283_185,
        ),
        (
            json!({"scrap": {"mass_kg": 0.1, "thickness_m": 0.0005}}),
            0.022_321_43,
        ),
    ];
    for (form, area) in cases {
        let answer = ask_plan(&with(
            base(),
            &[(
                "/baths/0/counter",
                json!({"material": "Cu", "distance_m": 0.08, "form": form}),
            )],
        ));
        assert_eq!(answer["problems"], json!([]));
        assert!(
            close(number(&answer, "/baths/0/facing_m2"), area, 1e-6),
            "{form}"
        );
        let ratio = area / number(&answer, "/pieces/0/wetted/known/likely_m2");
        assert!(close(
            number(&answer, "/baths/0/counter_ratio"),
            ratio,
            1e-6
        ));
    }
    let vessel = json!({"vessel": {"diameter_m": 0.095, "height_m": 0.06}});
    let answer = ask_plan(&with(
        etch_base(),
        &[(
            "/baths/0/counter",
            json!({"material": "S31603", "form": vessel}),
        )],
    ));
    assert!(close(
        number(&answer, "/baths/0/facing_m2"),
        0.017_907_08,
        1e-6
    ));
    // 35 mm to the wall, against 40 in the job as it stands.
    let (here, there) = (
        number(&answer, "/steps/0/ohmic/known/likely_V"),
        number(&ask_plan(&etch_base()), "/steps/0/ohmic/known/likely_V"),
    );
    assert!(close(here / there, 35.0 / 40.0, 1e-9));
}

/// A wire of 1 mm that grows by 0.2 mm all round has 1.4 times the surface; a flat sheet has none more.
#[test]
fn it_is_said_when_growing_fatter_matters() {
    let rod =
        json!({"parts": [{"id": "a", "shape": {"rod": {"length_m": 0.06, "diameter_m": 0.001}}}]});
    for growth in ["off", "on"] {
        let answer = ask_plan(&changed(&[
            ("/pieces/0/extent", rod.clone()),
            ("/effects", json!({"growth": growth, "contacts": "off"})),
        ]));
        assert!(
            close(number(&answer, "/steps/0/fatter_ratio"), 1.4, 1e-9),
            "{growth}"
        );
    }
    assert!(ask_plan(&base())["steps"][0]["fatter_ratio"].is_null());
}

proptest! {
    #![proptest_config(config(60))]

    /// Sessions add up to the whole, none longer than what was asked.
    #[test]
    fn sessions_add_up_to_the_run(hours in 0.2..30.0f64, session in 0.5..12.0f64) {
        let answer = ask_plan(&changed(&[
            ("/steps/0/until", json!({"time_s": hours * 3600.0})),
            ("/attend", json!({"session_s": session * 3600.0})),
        ]));
        let list = answer["sessions"].as_array().cloned().unwrap_or_default();
        let times: Vec<f64> = list.iter().filter_map(|s| s["time_s"].as_f64()).collect();
        prop_assert!(close(times.iter().sum(), hours * 3600.0, 1e-9));
        prop_assert!(times.iter().all(|t| *t <= session * 3600.0 * (1.0 + 1e-9)));
    }
}
