//! Ways out: each lifts its limit when the job is planned again with it.

use crate::support::{asked, rows};
use planner::answer::LimitKind;
use planner::ways::Way;
use planner::{Catalogue, Job, WayOut, answer, answer_likely, job, ways_out};
use quantity::Quantity;
use serde_json::Value;

fn job_of(row: &Value) -> Option<Job> {
    let question: Value = serde_json::from_str(&asked(row)).ok()?;
    let (job, problems) = job::read(&question["plan"]);
    job.filter(|_| problems.is_empty())
}

fn all() -> Vec<(String, Job, Vec<WayOut>)> {
    rows(include_str!("../data/notices.jsonl"))
        .iter()
        .filter_map(|row| {
            let job = job_of(row)?;
            let ways = ways_out(&Catalogue::standard(), &job);
            Some((row["case"].to_string(), job, ways))
        })
        .collect()
}

/// By the whole answer, ranges and all, not by what the search itself looked at.
#[test]
fn every_way_out_lifts_its_limit_and_brings_no_other() {
    let catalogue = Catalogue::standard();
    let mut tried = 0;
    for (case, job, ways) in all() {
        let before = answer(&catalogue, &job).limits;
        for way in ways {
            let after = answer(&catalogue, &way.job);
            assert_eq!(after.problems, [], "{case}: {:?}", way.change);
            let still = after
                .limits
                .iter()
                .any(|l| l.kind == way.lifts && l.at == way.at);
            assert!(
                !still,
                "{case}: {:?} is still there after {:?}",
                way.lifts, way.change
            );
            for limit in &after.limits {
                let was = before
                    .iter()
                    .any(|l| l.kind == limit.kind && l.at == limit.at);
                assert!(was, "{case}: {:?} brings {:?}", way.change, limit.kind);
            }
            tried += 1;
        }
    }
    assert!(tried > 40, "{tried} ways out in all");
}

#[test]
fn the_nearest_at_hand_comes_first() {
    for (case, _, ways) in all() {
        for pair in ways.windows(2) {
            let same = pair[0].lifts == pair[1].lifts && pair[0].at == pair[1].at;
            assert!(!same || pair[0].way <= pair[1].way, "{case}");
        }
    }
}

/// What cannot be lifted by a setting: the base, the place, the lead, and areas that only hands can move.
#[test]
fn every_limit_that_can_be_lifted_has_a_way_out_somewhere() {
    let all = all();
    for kind in LimitKind::ALL {
        let by_hand = [
            LimitKind::NotForThisPlace,
            LimitKind::NeedsStrike,
            LimitKind::WrongBase,
            LimitKind::SendOut,
            LimitKind::WrongLead,
            LimitKind::VesselsUneven,
            LimitKind::BurnsIfLeft,
        ];
        let found = all
            .iter()
            .any(|(_, _, ways)| ways.iter().any(|w| w.lifts == *kind));
        assert_eq!(found, !by_hand.contains(kind), "{kind:?}");
    }
}

#[test]
fn its_numbers_are_those_of_the_job_with_the_change() {
    for (case, _, ways) in all() {
        for way in ways.iter().filter(|w| w.way != Way::Batches) {
            let whole = answer(&Catalogue::standard(), &way.job);
            let time = whole.time.known().map(|t| t.likely.si());
            assert_eq!(way.time.map(Quantity::si), time, "{case}: {:?}", way.change);
        }
    }
}

/// The likely values are the same with ranges and without.
#[test]
fn an_answer_without_ranges_has_the_same_likely_values() {
    for (case, job, _) in all() {
        let (whole, likely) = (
            answer(&Catalogue::standard(), &job),
            answer_likely(&Catalogue::standard(), &job),
        );
        assert_eq!(
            whole.time.known().map(|t| t.likely),
            likely.time.known().map(|t| t.likely),
            "{case}"
        );
        assert_eq!(whole.limits, likely.limits, "{case}");
        let exact = likely.time.known().is_none_or(|t| t.low == t.high);
        assert!(exact, "{case}");
    }
}

/// A stud of 5.2 cm2 at 1 A/dm2 on a supply that gives no less than 100 mA: 4.8 cm2 more, by hand 0.1 / 100 m2 in all; of
/// 1 mm wire 4.8 / (pi 0.1) = 15.28 cm.
#[test]
fn a_thief_takes_what_the_supply_gives_too_much() {
    let plan = serde_json::json!({"format": 1,
        "pieces": [{"id": "p1", "extent": {"area": {"one_side_m2": 5.2e-4}}}],
        "baths": [{"id": "b1", "solution": "cu_acid_form"}],
        "steps": [{"id": "s1", "in": [{"bath": "b1", "pieces": ["p1"]}], "kind": "electroform",
            "drive": {"density_A_per_m2": 100}, "until": {"time_s": 7200}}],
        "supply": {"constant_current": {"lowest_A": 0.1, "highest_A": 3}},
        "prices": [{"metal": "Cu", "price_money_per_kg": 20}], "effects": {"growth": "off", "contacts": "off"}});
    let (Some(job), _) = job::read(&plan) else {
        panic!("not readable")
    };
    let catalogue = Catalogue::standard();
    let before = answer(&catalogue, &job);
    assert!(
        before
            .limits
            .iter()
            .any(|l| l.kind == LimitKind::SupplyTooLarge)
    );
    let ways = ways_out(&catalogue, &job);
    let Some(way) = ways.iter().find(|w| w.way == Way::Thief) else {
        panic!("no thief among {ways:?}")
    };
    let Some(thief) = way.thief else {
        panic!("no wire")
    };
    let near = |got: f64, want: f64| (got - want).abs() <= 1e-4 * want;
    assert!(near(thief.area.si(), 4.8e-4), "{thief:?}");
    assert!(near(thief.length.si(), 0.1528), "{thief:?}");
    // It takes 48 parts of a hundred: 0.1 A for 2 h at 0.98 of 1.18549 g/Ah.
    let wasted = way.wasted.map_or(f64::NAN, Quantity::si);
    assert!(
        (wasted - 0.48 * 0.2 * 0.98 * 1.18549e-3).abs() < 1e-2 * wasted,
        "{wasted}"
    );
    let dearer = way.cost.map_or(f64::NAN, Quantity::si);
    assert!(
        near(dearer, 0.2 * 0.98 * 1.18549e-3 * 20.0) || (dearer - 0.004647).abs() < 5e-5,
        "{dearer}"
    );
    // The piece gets the density asked for.
    let after = answer(&catalogue, &way.job);
    let density = after.pieces[0]
        .density
        .known()
        .map_or(f64::NAN, |d| d.likely.si());
    assert!(near(density, 100.0), "{density}");
    // Of half the gauge twice the length.
    let Some(thin) =
        planner::thief_of(&catalogue, &job, quantity::Length::mm(0.5)).and_then(|w| w.thief)
    else {
        panic!("no thin wire")
    };
    assert!(near(thin.length.si(), 0.3056), "{thin:?}");
}
