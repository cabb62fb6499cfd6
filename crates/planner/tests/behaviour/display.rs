//! What a supply's display makes of a wanted current. Worked by hand.

use crate::support::{ask_plan, changed, is_sound, number};
use planner::bench::{flowing, shown};
use planner::job::Bench;
use quantity::{Current, Quantity};
use serde_json::json;

/// Wanted, lowest, highest, step, offset, set; all in mA. Below 0 stands for not known.
const ROWS: &[(f64, f64, f64, f64, f64, f64)] = &[
    (136.8, -1.0, -1.0, -1.0, 0.0, 136.8),
    (136.8, -1.0, -1.0, 10.0, 0.0, 140.0),
    (93.14, 10.0, 3000.0, 10.0, 0.0, 90.0),
    (174.6, 10.0, 3000.0, 10.0, 0.0, 170.0),
    (136.8, 10.0, 3000.0, 1.0, 0.0, 137.0),
    (70.4, -1.0, -1.0, 10.0, 0.0, 70.0),
    // Half a step goes up.
    (65.0, -1.0, -1.0, 10.0, 0.0, 70.0),
    // Never above the highest, never below the lowest.
    (800.0, -1.0, 500.0, -1.0, 0.0, 500.0),
    (800.0, -1.0, 500.0, 10.0, 0.0, 500.0),
    (497.0, -1.0, 495.0, 10.0, 0.0, 490.0),
    (5.0, 20.0, 500.0, -1.0, 0.0, 20.0),
    (5.0, 20.0, 500.0, 10.0, 0.0, 20.0),
    (20.0, 25.0, 500.0, 10.0, 0.0, 30.0),
    // A window between two steps: the lower one, which burns nothing.
    (15.0, 14.0, 16.0, 10.0, 0.0, 10.0),
    // Not nothing at all.
    (2.0, -1.0, -1.0, 10.0, 0.0, 10.0),
    // What flows is the shown current and the offset: wanted 100, 4 more than shown, so 96 is shown.
    (100.0, -1.0, -1.0, -1.0, 4.0, 96.0),
    (100.0, -1.0, -1.0, 10.0, 4.0, 100.0),
    (100.0, -1.0, -1.0, 1.0, -4.0, 104.0),
    (3.0, -1.0, -1.0, 1.0, 4.0, 1.0),
];

fn bench(row: &(f64, f64, f64, f64, f64, f64)) -> Bench {
    let known = |ma: f64| (ma >= 0.0).then(|| Current::milliampere(ma));
    Bench {
        lowest: known(row.1),
        highest: known(row.2),
        display_step: known(row.3),
        offset: Some(Current::milliampere(row.4)),
        highest_volts: None,
    }
}

#[test]
fn the_display_shows_the_nearest_step_within_the_supplys_limits() {
    for row in ROWS {
        let set = shown(&bench(row), &[], Current::milliampere(row.0)).si() * 1000.0;
        assert!(
            (set - row.5).abs() < 1e-9,
            "{row:?}: got {set}, want {}",
            row.5
        );
    }
}

#[test]
fn a_shown_current_is_the_decimal_on_the_display() {
    for (wanted, step, want) in [(0.0698, 0.01, 0.07), (0.3, 0.1, 0.3), (0.139, 0.001, 0.139)] {
        let bench = Bench {
            lowest: None,
            highest: None,
            display_step: Some(Current::ampere(step)),
            offset: None,
            highest_volts: None,
        };
        assert_eq!(shown(&bench, &[], Current::ampere(wanted)).si(), want);
    }
}

#[test]
fn what_flows_is_the_shown_current_and_the_offset_and_never_backwards() {
    let with = |ma: f64| Bench {
        lowest: None,
        highest: None,
        display_step: None,
        offset: Some(Current::milliampere(ma)),
        highest_volts: None,
    };
    for (offset, set, want) in [
        (4.0, 96.0, 100.0),
        (-4.0, 104.0, 100.0),
        (-200.0, 50.0, 0.0),
    ] {
        let got = flowing(Some(&with(offset)), Current::milliampere(set)).si() * 1000.0;
        assert!((got - want).abs() < 1e-9, "{offset} {set}: {got}");
    }
    assert_eq!(
        flowing(None, Current::milliampere(50.0)),
        Current::milliampere(50.0)
    );
}

#[test]
fn time_and_thickness_follow_what_is_set() {
    let exact = ask_plan(&changed(&[]));
    let coarse = ask_plan(&changed(&[(
        "/supply",
        json!({"constant_current": {"display_step_A": 0.05}}),
    )]));
    let wanted = "/steps/0/current/known/wanted/likely_A";
    assert_eq!(number(&exact, wanted), number(&coarse, wanted));
    let ratio = number(&coarse, "/steps/0/current/known/set_A") / number(&exact, wanted);
    let times = number(&exact, "/time/known/likely_s") / number(&coarse, "/time/known/likely_s");
    assert!((ratio / times - 1.0).abs() < 1e-9, "{ratio} {times}");
    assert!((number(&coarse, "/pieces/0/mean/known/likely_m") - 0.0002).abs() < 1e-12);
}

#[test]
fn a_supply_whose_offset_eats_all_current_gives_no_time() {
    let answer = ask_plan(&changed(&[(
        "/supply",
        json!({"constant_current": {"highest_A": 0.05, "offset_A": -0.2}}),
    )]));
    is_sound(&answer, "an offset that eats all current");
    assert!(answer["time"]["absent"].is_object(), "{}", answer["time"]);
    assert!(answer["steps"][0]["ends"]["absent"].is_object());
}
