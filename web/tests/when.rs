//! Sessions somebody attends, and what is left after an accident.

use planner::after::Accident;
use planner::job::Attend;
use planner::reentry::ReentryKind;
use planner::sessions::Doing;
use planner::{Answer, Catalogue, answer};
use quantity::{Current, Quantity, Thickness, Time};
use std::rc::Rc;
use web::places::answer::Shown;
use web::state::job::{Happened, happened};
use web::state::{Action, State, at, demo, job, pieces, sent};
use web::words;
use yew::Reducible;

const NOW: Option<&str> = Some("2026-11-26T10:00");

fn typed(address: &str, text: &str) -> Action {
    Action::Typed(address.to_owned(), text.to_owned())
}

fn picked(address: &str, word: &str) -> Action {
    Action::Picked(address.to_owned(), word.to_owned())
}

fn after(actions: &[Action]) -> Rc<State> {
    let fresh = Rc::new(State::new(demo::demo()));
    actions.iter().fold(fresh, |s, a| s.reduce(a.clone()))
}

/// The ring of the trade's table: 11.4 cm2 at 1.2 A/dm2 and 98 % to 200 um, 12.85 h without covering.
const RING: [(&str, &str); 5] = [
    (at::COUNT, "1"),
    (at::HANGER_WIRE, ""),
    (at::EFFICIENCY, "98 %"),
    (at::DISPLAY_STEP, ""),
    (at::SESSION, "4.5"),
];

fn ring() -> Vec<Action> {
    let mut all = vec![
        picked(at::SHAPE, "area"),
        picked(at::COVER, "off"),
        picked(at::DRIVE, "density"),
        picked(at::UNTIL, "mean"),
    ];
    all.extend(RING.map(|(address, text)| typed(address, text)));
    all
}

fn worked(state: &State) -> Answer {
    answer(&Catalogue::standard(), &job::read(&state.draft, NOW).job)
}

fn shown(state: &State) -> Shown {
    let read = job::read(&state.draft, NOW);
    Shown {
        names: pieces::names(&state.draft, read.job.pieces.iter().map(|p| p.id.as_str())),
        answer: Rc::new(answer(&Catalogue::standard(), &read.job)),
        stands_in: read.stands_in,
        display: None,
        start: read.job.start,
        core: "",
        baths: Vec::new(),
        printed: words::number::printed(),
    }
}

fn accident(state: &State) -> Happened {
    happened(&state.draft, &job::read(&state.draft, NOW).job)
}

/// 12.85 h in sessions of at most 4.5 h: three of 12.85 / 3 = 4.28 h (by hand), each a third of the layer.
#[test]
fn a_long_build_becomes_three_sessions() {
    let state = after(&ring());
    let all = worked(&state).sessions;
    let lengths: Vec<f64> = all
        .iter()
        .filter(|s| s.doing == Doing::Session)
        .map(|s| s.time.si() / 3600.0)
        .collect();
    assert_eq!(lengths.len(), 3);
    assert!(
        lengths.iter().all(|h| (h - 4.283).abs() < 0.01),
        "{lengths:?}"
    );
    // Before them the sealer cures and the coat dries, and each but the first enters again.
    assert_eq!(all.len(), 5);
    assert!(all[2].reentry.is_none() && all[3].reentry.is_some());
    let thirds = [2, 3, 4].map(|n| all[n].mean_after.map_or(0.0, |t| t.si() * 1e6));
    for (got, third) in thirds.iter().zip([66.67, 133.33, 200.0]) {
        assert!((got - third).abs() < 0.1, "{thirds:?}");
    }
}

#[test]
fn the_plan_as_text_carries_the_sessions_and_their_care() {
    let mut actions = ring();
    actions.push(typed(at::DUE, "2026-12-05 16:00"));
    let text = shown(&after(&actions)).as_text().join("\n");
    for said in [
        "The sealer cures: 24 h",
        "Session 1 of 3: 4 h 17 min",
        // The last one ends at the date: 16:00 less 4 h 17 min.
        "Session 3 of 3: 4 h 17 min. Begin by Sat 5 Dec, 11:43.",
        "Before session 2, 3:",
        words::after::care(ReentryKind::Afresh),
    ] {
        assert!(text.contains(said), "{said}\nin\n{text}");
    }
    let none = shown(&after(&[])).as_text().join("\n");
    assert!(!none.contains("Session"));
}

#[test]
fn nothing_said_of_it_is_no_attendance() {
    let attend = |actions: &[Action]| job::read(&after(actions).draft, NOW).job.attend;
    assert_eq!(attend(&[]), None);
    assert_eq!(attend(&[typed(at::SESSION, " ")]), None);
    let expected = Attend {
        session: Some(Time::hours(4.0)),
        between: Some(Time::minutes(20.0)),
        due: Some("2026-12-05T16:00".to_owned()),
        cure: Some(Time::hours(24.0)),
        dry: Some(Time::hours(2.0)),
    };
    let all = [
        typed(at::SESSION, "4"),
        typed(at::BETWEEN, "20 min"),
        typed(at::DUE, " 2026-12-05  16:00 "),
        typed(at::CURE, "24"),
        typed(at::DRY, "2 h"),
    ];
    assert_eq!(attend(&all), Some(expected));
}

#[test]
fn an_unreadable_date_stays_as_typed_and_the_last_good_one_stands_in() {
    for bad in [
        "2026-12-05 16:",
        "2026-02-30 16:00",
        "5.12. 16:00",
        "2026-12-05",
    ] {
        let state = after(&[typed(at::DUE, "2026-12-05T16:00"), typed(at::DUE, bad)]);
        let read = job::read(&state.draft, NOW);
        assert_eq!(state.draft.text(at::DUE), bad);
        assert_eq!(read.problems.len(), 1, "{bad}");
        assert!(read.stands_in, "{bad}");
        let due = read.job.attend.and_then(|a| a.due);
        assert_eq!(due.as_deref(), Some("2026-12-05T16:00"), "{bad}");
        let said = words::problem(&read.problems[0], words::field(at::DUE));
        assert!(
            said.contains(bad) && said.contains("2026-12-05 16:00"),
            "{said}"
        );
    }
}

/// Still acid copper takes 0.1 to 0.25 um in twelve hours: derived from the work on copper in acid cupric sulfate.
#[test]
fn a_power_cut_of_unknown_length_counts_as_a_night() {
    let state = after(&[typed(at::HAPPENED_AT, "3")]);
    let read = accident(&state);
    assert_eq!((read.waits_for, read.stands_in), (None, false));
    let asked = read.after.expect("a question");
    assert_eq!(asked.step, "s2");
    assert_eq!(asked.what, Accident::PowerCut { gap: None });
    let rest = planner::after::answer(&Catalogue::standard(), &asked, Vec::new());
    let left = rest.after.as_ref().expect("what is left");
    assert_eq!(left.reentry.kind, ReentryKind::MildEtch);
    let hoop = &left.pieces[0];
    let near = |t: Thickness, um: f64| (t.si() * 1e6 - um).abs() < 1e-9;
    assert!(near(hoop.lost.low, 0.1) && near(hoop.lost.high, 0.25));
    let went = hoop.had.likely.si() - hoop.left.likely.si();
    assert!((went - hoop.lost.likely.si()).abs() < 1e-12);
    // What was to come after three hours, and what makes good what went.
    let time = |a: &Answer, n: usize| a.steps[n].time.known().map_or(0.0, |t| t.likely.si());
    let whole = worked(&state);
    let growth = whole.steps[1].growth.known().map_or(0.0, |g| g.likely.si());
    let expected = time(&whole, 1) - 10_800.0 + hoop.lost.likely.si() / growth;
    assert!(
        (time(&rest, 0) - expected).abs() < 1.0,
        "{} {expected}",
        time(&rest, 0)
    );
}

#[test]
fn what_is_not_said_yet_is_asked_for() {
    let waits = |actions: &[Action]| accident(&after(actions)).waits_for;
    assert_eq!(waits(&[]), Some(at::HAPPENED_AT));
    let at_three = typed(at::HAPPENED_AT, "3 h");
    let with = |word: &str| waits(&[at_three.clone(), picked(at::HAPPENED, word)]);
    assert_eq!(with("power_cut"), None);
    assert_eq!(with("reversed"), Some(at::REVERSED_FOR));
    assert_eq!(with("filed"), Some(at::FILED_MASS));
    let offered = words::options(at::HAPPENED);
    let mut seen: Vec<String> = offered
        .iter()
        .map(|(word, _)| {
            let state = after(&[
                at_three.clone(),
                picked(at::HAPPENED, word),
                typed(at::REVERSED_FOR, "5"),
                typed(at::REVERSED_CURRENT, "100"),
                typed(at::FILED_MASS, "0.2"),
                typed(at::GAP, "1"),
            ]);
            format!("{:?}", accident(&state).after.map(|a| a.what))
        })
        .collect();
    seen.dedup();
    assert_eq!(seen.len(), offered.len(), "{seen:?}");
    // Of an etch only the current can have been away.
    let etch = after(&[
        at_three,
        picked(at::HAPPENED, "filed"),
        picked(at::PROCESS, "etch"),
    ]);
    let what = accident(&etch).after.map(|a| a.what);
    assert_eq!(what, Some(Accident::PowerCut { gap: None }));
}

#[test]
fn an_unreadable_part_of_an_accident_keeps_its_text_and_the_last_good_answer() {
    let state = after(&[
        typed(at::HAPPENED_AT, "3"),
        picked(at::HAPPENED, "reversed"),
        typed(at::REVERSED_FOR, "6"),
        typed(at::REVERSED_CURRENT, "120"),
        typed(at::REVERSED_FOR, "6 minn"),
    ]);
    assert_eq!(state.draft.text(at::REVERSED_FOR), "6 minn");
    let read = accident(&state);
    assert!(read.stands_in);
    let expected = Accident::Reversed {
        lasted: Time::minutes(6.0),
        current: Some(Current::milliampere(120.0)),
    };
    assert_eq!(read.after.map(|a| a.what), Some(expected));
    // It holds up nothing of the plan itself.
    assert_eq!(job::read(&state.draft, NOW).problems, []);
}

/// A step or piece that is gone is no longer meant: then it is the growing, and the first piece there.
#[test]
fn step_and_piece_are_of_this_job() {
    let state = after(&[
        Action::PieceRepeated("p1".to_owned()),
        Action::LayerAdded,
        typed(at::HAPPENED_AT, "0.1"),
        picked(at::HAPPENED, "filed"),
        picked(at::HAPPENED_IN, "s3"),
        picked(at::FILED_PIECE, "p2"),
        typed(at::FILED_MASS, "0.01"),
    ]);
    let asked = accident(&state).after.expect("a question");
    assert_eq!(asked.step, "s3");
    assert!(matches!(asked.what, Accident::Filed { piece: Some(p), .. } if p == "p2"));
    let fewer = state
        .reduce(Action::PieceRemoved("p2".to_owned()))
        .reduce(Action::LayerRemoved("s3".to_owned()));
    let asked = accident(&fewer).after.expect("a question");
    assert_eq!(asked.step, "s2");
    assert!(matches!(asked.what, Accident::Filed { piece: None, .. }));
}

#[test]
fn a_plan_that_is_sent_carries_it_and_undo_takes_it_back() {
    let fields = [
        (at::SESSION, "4,5"),
        (at::BETWEEN, "20 min"),
        (at::DUE, "2026-12-05 16:00"),
        (at::CURE, "24"),
        (at::DRY, "12"),
        (at::HAPPENED_AT, "3"),
        (at::GAP, "9"),
        (at::REVERSED_FOR, "6"),
        (at::REVERSED_CURRENT, "120"),
        (at::FILED_MASS, "0.2"),
        (at::FILED_AREA, "0.5"),
    ];
    let mut actions = vec![
        picked(at::HAPPENED, "filed"),
        picked(at::HAPPENED_IN, "s1"),
        picked(at::FILED_PIECE, "p1"),
    ];
    actions.extend(fields.map(|(address, text)| typed(address, text)));
    let state = after(&actions);
    let text = sent::text_of(state.book().open().expect("an open plan"));
    let taken = sent::read(&text).expect("a plan");
    assert_eq!(taken.remarks, []);
    assert_eq!(taken.named.draft.texts, state.draft.texts);
    let back = state.reduce(Action::Undid);
    assert_eq!(back.draft.text(at::FILED_AREA), "");
    assert_eq!(back.draft.text(at::FILED_MASS), "0.2");
    let mut all = back;
    while all.can_undo() {
        all = all.reduce(Action::Undid);
    }
    assert_eq!(all.draft, demo::demo());
}
