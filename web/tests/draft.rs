//! What was typed, what is read of it, and the way back.

use planner::job::{Drive, Extent, Supply, Until, Use};
use planner::{Catalogue, ProblemKind, Shape, answer};
use quantity::Quantity;
use std::rc::Rc;
use web::state::entries::{self, ENTRIES};
use web::state::units::Units;
use web::state::{Action, State, at, demo, job, measured};
use web::words;
use yew::Reducible;

const TORUS_BORE: &str = "pieces/p1/extent/parts/a/shape/torus/bore";
const BAND_WIDTH: &str = "pieces/p1/extent/parts/a/shape/band/width";

const NOW: Option<&str> = Some("2026-05-01T10:00");

fn after(actions: &[Action]) -> Rc<State> {
    actions
        .iter()
        .fold(Rc::new(State::new(demo::demo())), |state, action| {
            state.reduce(action.clone())
        })
}

fn typed(address: &str, text: &str) -> Action {
    Action::Typed(address.to_owned(), text.to_owned())
}

fn picked(address: &str, word: &str) -> Action {
    Action::Picked(address.to_owned(), word.to_owned())
}

#[test]
fn the_example_is_read_and_answered_whole() {
    let read = job::read(&demo::demo(), NOW);
    assert_eq!(read.problems, []);
    let answer = answer(&Catalogue::standard(), &read.job);
    assert_eq!(answer.problems, []);
    assert!(answer.time.known().is_some());
    assert!(answer.pieces[0].thinnest.known().is_some());
    assert_eq!(read.job.steps.len(), 2);
}

#[test]
fn every_field_of_the_page_has_a_label_and_its_example_can_be_read() {
    for entry in ENTRIES {
        let address = entry.at;
        assert!(!words::field(address).is_empty(), "{address}");
        let text = demo::demo().text(address).to_owned();
        assert!(
            !matches!(
                entries::read_in(Units::Metric, address, &text),
                Some(Err(_))
            ),
            "{address}: {text}"
        );
    }
}

#[test]
fn every_choice_offers_only_words_that_the_job_understands() {
    for address in [
        at::BASE,
        at::COVER,
        at::DRIVE,
        at::STIRRING,
        at::ARRANGEMENT,
        at::PLACE,
        at::METHOD,
    ] {
        let options = words::options(address);
        assert!(options.len() > 1, "{address}");
        let mut jobs: Vec<String> = options
            .iter()
            .map(|(word, _)| {
                let state = after(&[picked(at::SHAPE, "area"), picked(address, word)]);
                format!("{:?}", job::read(&state.draft, NOW).job)
            })
            .collect();
        jobs.sort();
        jobs.dedup();
        assert_eq!(
            jobs.len(),
            options.len(),
            "{address}: two words mean the same"
        );
    }
}

#[test]
fn an_unreadable_entry_stays_as_typed_and_the_last_good_one_stands_in() {
    let state = after(&[
        typed(TORUS_BORE, "24"),
        typed(TORUS_BORE, "24,"),
        typed(TORUS_BORE, "24,5,"),
    ]);
    assert_eq!(state.draft.text(TORUS_BORE), "24,5,");
    let read = job::read(&state.draft, NOW);
    assert_eq!(read.problems.len(), 1);
    assert_eq!(read.problems[0].kind, ProblemKind::TwoMarks);
    assert_eq!(read.problems[0].field.as_str(), TORUS_BORE);
    assert!(read.stands_in);
    let Some(Extent::Parts(parts)) = &read.job.pieces[0].extent else {
        panic!("no parts");
    };
    let Shape::Torus { bore, .. } = parts[0].shape else {
        panic!("no ring");
    };
    assert_eq!(bore, quantity::Length::mm(24.0));
}

#[test]
fn one_undo_takes_back_all_keystrokes_of_a_field_and_nothing_else() {
    let state = after(&[
        picked(at::SHAPE, "band"),
        typed(BAND_WIDTH, "7"),
        typed(BAND_WIDTH, "7.5"),
        Action::Left,
    ]);
    let state = state.reduce(Action::Undid);
    assert_eq!(state.draft.text(BAND_WIDTH), "6");
    assert_eq!(state.draft.text(at::SHAPE), "band");
    let state = state.reduce(Action::Undid);
    assert_eq!(state.draft, demo::demo());
    assert!(!state.can_undo());
    let state = state.reduce(Action::Undid);
    assert_eq!(state.draft, demo::demo());
}

#[test]
fn another_shape_forgets_no_size() {
    let state = after(&[
        picked(at::SHAPE, "band"),
        typed(BAND_WIDTH, "8.5"),
        picked(at::SHAPE, "torus"),
        picked(at::SHAPE, "band"),
    ]);
    assert_eq!(state.draft.text(BAND_WIDTH), "8.5");
}

#[test]
fn aims_and_drives_reach_the_job() {
    let job = |actions: &[Action]| job::read(&after(actions).draft, NOW).job;
    let until = |word: &str| job(&[picked(at::UNTIL, word)]).steps[1].until.clone();
    assert_eq!(until("ring"), Some(Until::Use(Use::Ring)));
    assert_eq!(
        until("mean"),
        Some(Until::Mean(quantity::Thickness::um(200.0)))
    );
    assert_eq!(until("clock"), Some(Until::Clock("16:20".to_owned())));
    assert_eq!(until("time"), Some(Until::Time(quantity::Time::hours(6.0))));
    let drive = |word: &str| job(&[picked(at::DRIVE, word)]).steps[1].drive;
    assert_eq!(drive("advised"), Some(Drive::Advised));
    assert_eq!(
        drive("current"),
        Some(Drive::Current(quantity::Current::milliampere(140.0)))
    );
    assert_eq!(job(&[picked(at::COVER, "off")]).steps.len(), 1);
}

#[test]
fn a_supply_that_is_upside_down_is_said_at_its_field() {
    let state = after(&[typed(at::LOWEST, "5 A")]);
    let read = job::read(&state.draft, NOW);
    assert_eq!(read.problems[0].field.as_str(), at::LOWEST);
    let Some(Supply::ConstantCurrent(bench)) = read.job.supply else {
        panic!("no supply");
    };
    assert_eq!((bench.lowest, bench.highest), (None, None));
}

#[test]
fn a_typed_start_is_today_and_an_empty_one_is_now() {
    let local = |text: &str| {
        let read = job::read(&after(&[typed(at::START, text)]).draft, NOW);
        read.job.start.map(|s| s.local)
    };
    assert_eq!(local("8:30").as_deref(), Some("2026-05-01T08:30"));
    assert_eq!(local("").as_deref(), Some("2026-05-01T10:00"));
}

/// A decimal keypad writes no colon.
#[test]
fn a_time_of_day_is_read_without_its_colon_too() {
    let starts = |text: &str| {
        let read = job::read(&after(&[typed(at::START, text)]).draft, NOW);
        (read.job.start.map(|s| s.local), read.problems.len())
    };
    for minute in 0..1440 {
        let (h, m) = (minute / 60, minute % 60);
        let wanted = Some(format!("2026-05-01T{h:02}:{m:02}"));
        for text in [
            format!("{h}:{m:02}"),
            format!("{h:02}.{m:02}"),
            format!("{h},{m:02}"),
            format!("{h}{m:02}"),
            format!("{h:02}{m:02}"),
        ] {
            assert_eq!(starts(&text), (wanted.clone(), 0), "{text}");
        }
    }
    // Half past is not a half hour; an hour alone and minutes beyond sixty are asked again.
    for text in ["18.5", "18", "1860", "2400", "18:3.0", "12345", "1 30"] {
        assert_eq!(starts(text).1, 1, "{text}");
    }
    let until = after(&[picked(at::UNTIL, "clock"), typed(at::CLOCK, "16.20")]);
    let job = job::read(&until.draft, NOW).job;
    assert_eq!(job.steps[1].until, Some(Until::Clock("16:20".to_owned())));
}

#[test]
fn several_pieces_hang_on_one_bar_and_an_undo_brings_one_back() {
    let state = after(&[
        Action::PieceRepeated("p1".to_owned()),
        Action::PieceAdded,
        picked("pieces/p3/extent", "leaf"),
        typed("pieces/p2/count", "5"),
        typed("pieces/p3/label", "fern from the wall"),
    ]);
    let read = job::read(&state.draft, NOW);
    assert_eq!(read.problems, []);
    let ids: Vec<&str> = read.job.pieces.iter().map(|p| p.id.as_str()).collect();
    assert_eq!(ids, ["p1", "p2", "p3"]);
    assert_eq!(read.job.pieces[1].count, 5);
    assert_eq!(read.job.pieces[2].label, "fern from the wall");
    assert_eq!(read.job.steps[1].places[0].pieces, ids);
    let answer = answer(&Catalogue::standard(), &read.job);
    assert_eq!(answer.problems, []);
    assert!(answer.pieces.iter().all(|p| p.mean.known().is_some()));
    let fewer = state.reduce(Action::PieceRemoved("p2".to_owned()));
    assert_eq!(job::read(&fewer.draft, NOW).job.pieces.len(), 2);
    let back = fewer.reduce(Action::Undid);
    assert_eq!(job::read(&back.draft, NOW).job, read.job);
}

#[test]
fn a_bar_holds_ten_kinds_of_piece() {
    let many = vec![Action::PieceAdded; 12];
    let state = after(&many);
    assert_eq!(job::read(&state.draft, NOW).job.pieces.len(), 10);
}

#[test]
fn minus_and_plus_stop_at_the_bounds_and_are_one_step_back() {
    let step = |up| Action::Stepped(at::COUNT.to_owned(), up);
    let state = after(&[step(false), step(false), step(false)]);
    assert_eq!(state.draft.text(at::COUNT), "1");
    let state = state.reduce(step(true)).reduce(Action::Undid);
    assert_eq!(state.draft.text(at::COUNT), "2");
    // What cannot be read is not stepped over.
    let state = after(&[typed(at::COUNT, "two"), step(true)]);
    assert_eq!(state.draft.text(at::COUNT), "two");
}

#[test]
fn another_preference_changes_no_number() {
    let metric = after(&[typed(at::HANGER_WET, "1,5 cm"), typed(at::VOLUME, "1 1/2")]);
    let us = metric.clone().reduce(picked(at::UNITS, "us"));
    assert_eq!(us.draft.text(TORUS_BORE), "22 mm");
    assert_eq!(us.draft.text(at::HANGER_WET), "1,5 cm");
    assert_eq!(us.draft.text(at::VOLUME), "1 1/2 L");
    let job = |state: &State| job::read(&state.draft, NOW).job;
    assert_eq!(job(&us), job(&metric));
    // From now on a bare number is in inches.
    let typed_in = us.clone().reduce(typed(TORUS_BORE, "1"));
    let Some(Extent::Parts(parts)) = &job(&typed_in).pieces[0].extent else {
        panic!("no parts");
    };
    let Shape::Torus { bore, .. } = parts[0].shape else {
        panic!("no ring");
    };
    assert_eq!(bore, quantity::Length::mm(25.4));
    let back = typed_in.reduce(picked(at::UNITS, "metric"));
    assert_eq!(back.draft.text(TORUS_BORE), "1 in");
}

#[test]
fn the_finer_entries_reach_the_job() {
    let state = after(&[
        typed(at::CONDUCTIVITY, "160"),
        typed(at::TEMPERATURE, "24"),
        typed(&at::spread(at::SHAPE), "5"),
        typed(&at::holds("Cu", "now"), "50.9"),
        typed(&at::price("Cu"), "0.012"),
        typed(at::TEXTURE, "1.3"),
        typed(at::OFFSET, "-3"),
    ]);
    let read = job::read(&state.draft, NOW);
    assert_eq!(read.problems, []);
    assert_eq!(read.job.assume[0].at.as_str(), at::CONDUCTIVITY);
    assert_eq!(read.job.spreads[0].at.as_str(), at::SHAPE);
    assert_eq!(read.job.baths[0].holds[0].metal, "Cu");
    assert_eq!(read.job.prices[0].metal, "Cu");
    let answer = answer(&Catalogue::standard(), &read.job);
    assert_eq!(answer.problems, []);
}

/// A square of 100 cm2 that weighs 0.82 g and a cut-out of 0.31 g: 37.8 cm2, by hand.
#[test]
fn a_measured_area_is_used_with_its_spread() {
    let state = after(&[typed(at::TRACING, "0.31"), typed(at::SQUARE, "0.82 g")]);
    let Some(found) = measured::area(&state.draft, "p1") else {
        panic!("nothing measured");
    };
    assert!((found.value.in_unit(&quantity::WorkArea::UNITS[0]) - 37.8).abs() < 0.05);
    let texts = measured::texts(&state.draft, "p1", &found);
    let state = state.reduce(Action::Wrote(texts));
    let read = job::read(&state.draft, NOW);
    assert_eq!(read.problems, []);
    let Some(Extent::Area(area)) = &read.job.pieces[0].extent else {
        panic!("no area");
    };
    assert_eq!(area.method, Some(planner::job::Method::Tracing));
    assert_eq!(read.job.spreads.len(), 1);
    // One undo takes the whole measurement back.
    let back = state.reduce(Action::Undid);
    assert_eq!(back.draft.text(at::SHAPE), "torus");
}
