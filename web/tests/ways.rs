//! Ways out on the page: what a tap writes into the draft lifts the limit when the draft is read and answered again, and
//! can be taken back.

use planner::answer::LimitKind;
use planner::{Catalogue, Job, answer, ways_out};
use std::rc::Rc;
use web::state::{Action, State, at, demos, job, ways};
use web::words;
use yew::Reducible;

const NOW: Option<&str> = Some("2026-05-01T19:00");

type Row = (
    &'static str,
    &'static [(&'static str, &'static str)],
    LimitKind,
);

/// Example, what is typed into it, a limit that must then have at least one way out with a field on the page. Invented jobs.
const ROWS: &[Row] = &[
    ("hoops", &[(at::HIGHEST, "0.05")], LimitKind::SupplyTooSmall),
    ("hoops", &[(at::LOWEST, "200")], LimitKind::SupplyTooLarge),
    ("vermeil", &[(at::LOWEST, "300")], LimitKind::SupplyTooLarge),
    (
        "hoops",
        &[(at::DISPLAY_STEP, "100")],
        LimitKind::DisplayTooCoarse,
    ),
    (
        "hoops",
        &[(at::DRIVE, "density"), (at::DENSITY, "4")],
        LimitKind::AboveWindow,
    ),
    (
        "hoops",
        &[(at::DRIVE, "density"), (at::DENSITY, "0.1")],
        LimitKind::BelowWindow,
    ),
    ("hoops", &[(at::CEILING, "0.7")], LimitKind::VoltsTooFew),
    ("hoops", &[], LimitKind::Night),
    (
        "acorn_cap",
        &[(at::DRIVE, "density"), (at::DENSITY, "2.0")],
        LimitKind::EdgesBurn,
    ),
    ("hoops", &[(at::FACING, "3")], LimitKind::CounterTooSmall),
    ("hoops", &[(at::VOLUME, "0.05")], LimitKind::BathOverloaded),
    ("pendant", &[(at::DEPTH, "700")], LimitKind::TooDeepForStock),
    (
        "bookmark",
        &[(at::DEPTH, "300")],
        LimitKind::TooDeepForResist,
    ),
];

fn read(state: &State) -> Job {
    let read = job::read(&state.draft, NOW);
    assert_eq!(read.problems, []);
    read.job
}

#[test]
fn a_tap_lifts_the_limit_and_can_be_taken_back() {
    let catalogue = Catalogue::standard();
    for (demo, typed, kind) in ROWS {
        let mut draft = demos::of(demo).expect("known");
        for (at, text) in *typed {
            draft.put(at, text, true);
        }
        let before = Rc::new(State::new(draft));
        let job = read(&before);
        let ways = ways_out(&catalogue, &job);
        let mut tried = 0;
        for way in ways.iter().filter(|w| w.lifts == *kind) {
            let texts = ways::texts(&before.draft, way);
            let Some(texts) = texts else {
                panic!("{demo} {kind:?} has no field: {:?}", way.change);
            };
            let after = before.clone().reduce(Action::Tried(texts.clone()));
            let limits = answer(&catalogue, &read(&after)).limits;
            let still = limits.iter().any(|l| l.kind == way.lifts && l.at == way.at);
            assert!(
                !still,
                "{demo} {kind:?} is still there after {texts:?} for {:?}",
                way.change
            );
            assert!(after.has_tried());
            let back = after.reduce(Action::Undid);
            assert_eq!(back.draft, before.draft);
            assert!(!back.has_tried());
            for said in [words::ways::what(way), words::ways::then(way)] {
                assert!(said.len() > 3 && !said.ends_with(' '), "{said}");
            }
            tried += 1;
        }
        assert!(
            tried > 0,
            "{demo} {kind:?} has no way out: {:?}",
            answer(&catalogue, &job)
                .limits
                .iter()
                .map(|l| l.kind)
                .collect::<Vec<_>>()
        );
    }
}
