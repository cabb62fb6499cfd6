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
