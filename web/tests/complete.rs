//! Every id that a crate can send is said in words: by its table where the crate has one, and in answers to real jobs.

use planner::after::Accident;
use planner::answer::{Limit, LimitKind, Ruling, Unchanged, Verdict, When};
use planner::batches::{Batches, FitBy, Fits};
use planner::class::{Bell, Needs};
use planner::meter::AlarmKind;
use planner::ways::{Change, To, Way};
use planner::{Catalogue, FieldPath, Job, WayOut, answer, ways_out};
use quantity::{
    AnyQuantity, CounterArea, Current, CurrentDensity, Fraction, Length, Mass, Quantity,
    Resistance, Thickness, Time, Voltage, Volume, WorkArea,
};
use std::collections::BTreeSet;
use web::state::{at, demos, job};
use web::words;

const NOW: Option<&str> = Some("2026-05-01T19:00");

/// Words for people: no id, no address, no figure that is missing.
fn for_people(said: &str) -> bool {
    let plain = said.replace('\u{a0}', " ");
    // A number that is not there is printed as a bare zero.
    let zero = plain
        .split(|c: char| !(c.is_alphanumeric() || ".,:".contains(c)))
        .any(|word| {
            word.starts_with('0') && word.chars().all(|c| "0.,".contains(c)) && !word.ends_with(',')
        });
    plain.chars().any(char::is_alphabetic)
        && !plain.contains('_')
        && !plain.contains("  ")
        && !plain.ends_with([' ', ':'])
        && !zero
}

fn changed(way: Way, at: &str, to: To) -> WayOut {
    let job = Job {
        start: job::read(&demos::first(), NOW).job.start,
        ..Job::default()
    };
    WayOut {
        lifts: LimitKind::Night,
        at: FieldPath::root(),
        way,
        change: Change {
            at: FieldPath::new(at),
            to,
        },
        set: None,
        time: None,
        thickness: None,
        cost: None,
        thief: None,
        wasted: None,
        job,
    }
}

/// Every address a way out can change, as `planner/src/ways` writes them, with what the words must hold.
fn changes() -> Vec<(Way, &'static str, To, &'static str)> {
    fn of(q: impl Into<AnyQuantity>) -> To {
        To::Quantity(q.into())
    }
    let count = |n: f64| of(Fraction::of_si(n));
    vec![
        (
            Way::Turn,
            "pieces/p1/artwork/sides",
            To::Word("both"),
            "both sides",
        ),
        (
            Way::Turn,
            "baths/b1/counter/arrangement",
            To::Word("turned"),
            "half-way",
        ),
        (
            Way::Stir,
            "steps/s2/stirring",
            To::Word("vigorous"),
            "stirred hard",
        ),
        (
            Way::Stir,
            "steps/s1/stirring",
            To::Word("gentle"),
            "moved gently",
        ),
        (
            Way::Setting,
            "steps/s2/drive",
            To::Word("advised"),
            "advised",
        ),
        (
            Way::Setting,
            "steps/s2/drive/density",
            of(CurrentDensity::of_si(120.0)),
            "1.2",
        ),
        (
            Way::Setting,
            "steps/s2/ceiling",
            of(Voltage::of_si(2.5)),
            "2.5",
        ),
        (
            Way::Contact,
            "pieces/p2/contact/contact",
            of(Resistance::of_si(0.1)),
            "clip",
        ),
        (Way::Time, "start/local", of(Time::hours(-3.0)), "19:00"),
        (
            Way::Time,
            "steps/s2/until/mean",
            of(Thickness::um(40.0)),
            "40",
        ),
        (
            Way::Time,
            "steps/s2/until/time",
            of(Time::hours(4.0)),
            "4 h",
        ),
        (
            Way::Time,
            "steps/s2/until/depth",
            of(Thickness::um(160.0)),
            "160",
        ),
        (
            Way::Distance,
            "baths/b1/counter/distance",
            of(Length::mm(40.0)),
            "40",
        ),
        (
            Way::Counter,
            "baths/b1/counter/facing",
            of(CounterArea::of_si(0.02)),
            "200",
        ),
        (
            Way::Counter,
            "baths/b1/counter/over_bar",
            of(Length::mm(240.0)),
            "long",
        ),
        (
            Way::Volume,
            "baths/b1/volume",
            of(Volume::of_si(0.002)),
            "2",
        ),
        (
            Way::Resist,
            "pieces/p1/artwork/resist",
            To::Word("vinyl"),
            "vinyl",
        ),
        (
            Way::Thief,
            "pieces/thief/extent/parts/a/shape/rod/length",
            of(Length::mm(120.0)),
            "120",
        ),
        (Way::Batches, "pieces/p1/count", count(3.0), "3"),
        (Way::Series, "steps/s1/in", count(2.0), "2"),
        (
            Way::Supply,
            "supply/constant_current/display_step",
            of(Current::milliampere(1.0)),
            "1",
        ),
        (
            Way::Supply,
            "supply/constant_current/lowest",
            of(Current::milliampere(10.0)),
            "10",
        ),
        (
            Way::Supply,
            "supply/constant_current/highest",
            of(Current::of_si(3.0)),
            "3",
        ),
    ]
}

#[test]
fn every_way_says_what_to_do() {
    let all = changes();
    for way in Way::ALL {
        assert!(all.iter().any(|(w, ..)| w == way), "{way:?} has no row");
    }
    for (way, at, to, holds) in all {
        let said = words::ways::what(&changed(way, at, to)).replace('\u{a0}', " ");
        assert!(
            for_people(&said) && said.contains(holds),
            "{way:?} {at}: {said}"
        );
    }
}

/// What is typed into an example so that many limits stand at once. Invented jobs.
const TYPED: &[(&str, &[(&str, &str)])] = &[
    ("hoops", &[(at::CEILING, "0.7")]),
    (
        "vermeil",
        &[
            (at::PLACE, "home"),
            ("pieces/p1/base@electroplate", "C26000"),
        ],
    ),
    (
        "pendant",
        &[
            ("baths/b1/holds/Ag/now", "2"),
            ("baths/b1/holds/Ag/floor", "30"),
        ],
    ),
    ("hoops", &[(at::HIGHEST, "0.05"), (at::CEILING, "0.7")]),
    ("hoops", &[(at::LOWEST, "200"), (at::DISPLAY_STEP, "100")]),
    (
        "hoops",
        &[
            (at::DRIVE, "density"),
            (at::DENSITY, "4"),
            (at::FACING, "3"),
            (at::VOLUME, "0.05"),
        ],
    ),
    ("hoops", &[(at::DRIVE, "density"), (at::DENSITY, "0.1")]),
    (
        "hoops",
        &[
            ("pieces/p1/base", "Fe"),
            (at::DUE, "2026-05-02 08:00"),
            (at::SESSION, "3"),
        ],
    ),
    ("acorn_cap", &[(at::DRIVE, "density"), (at::DENSITY, "2.0")]),
    (
        "acorn_cap",
        &[(at::COVER, "on"), (at::COVER_DENSITY, "0.05")],
    ),
    ("resin_ring", &[(at::MEAN, "9000")]),
    ("rhodium", &[(at::PLACE, "home"), (at::COUNT, "9")]),
    (
        "pendant",
        &[(at::DEPTH, "700"), (at::LAND, "0.05"), (at::LEAD, "minus")],
    ),
    ("bookmark", &[(at::DEPTH, "300"), (at::COUNT, "9")]),
    (
        "ferns",
        &[(at::DENSITY, "3.5"), ("pieces/p2/contact/contact", "2")],
    ),
    ("class", &[(at::VESSELS, "2"), (at::VOLUME, "2")]),
];

fn typed(demo: &str, texts: &[(&str, &str)]) -> Job {
    let mut draft = demos::of(demo).expect("known");
    for (at, text) in texts {
        draft.put(at, text, true);
    }
    job::read(&draft, NOW).job
}

#[test]
fn limits_and_ways_out_of_real_jobs_are_said_with_their_own_numbers() {
    let catalogue = Catalogue::standard();
    let plain: Vec<(&str, &[(&str, &str)])> = demos::ids().map(|id| (id, &[][..])).collect();
    let (mut limits, mut ways) = (BTreeSet::new(), BTreeSet::new());
    for (demo, texts) in plain.iter().chain(TYPED) {
        let job = typed(demo, texts);
        for limit in &answer(&catalogue, &job).limits {
            let (statement, then) = words::limit(&[limit]);
            assert!(for_people(&then), "{demo} {:?}: {then}", limit.kind);
            // A display's step is said before its currents.
            assert!(
                for_people(statement.trim_end_matches(':')),
                "{demo} {:?}: {statement}",
                limit.kind
            );
            limits.insert(format!("{:?}", limit.kind));
        }
        for way in ways_out(&catalogue, &job) {
            let (what, then) = (words::ways::what(&way), words::ways::then(&way));
            assert!(for_people(&what), "{demo} {:?}: {what}", way.change);
            assert!(for_people(&then), "{demo} {:?}: {then}", way.change);
            ways.insert(format!("{:?}", way.way));
        }
    }
    // Enough of them to mean something.
    assert!(limits.len() >= 20, "{limits:?}");
    assert!(ways.len() >= 10, "{ways:?}");
}

#[test]
fn every_alarm_is_said_with_its_own_numbers() {
    let mut met = BTreeSet::new();
    let held = [(at::SUPPLY, "constant_voltage"), (at::VOLTS_CURRENT, "2")];
    let plain = demos::ids().map(|id| (id, &[][..]));
    let of_volts = demos::ids().map(|id| (id, &held[..]));
    for (id, texts) in plain.chain(of_volts) {
        for step in answer(&Catalogue::standard(), &typed(id, texts)).steps {
            let volts = step.meter.iter().flat_map(|m| &m.alarms);
            let current = step.ammeter.iter().flat_map(|m| &m.alarms);
            for alarm in volts.chain(current) {
                let said = words::meter::alarm(alarm);
                assert!(for_people(&said), "{id} {:?}: {said}", alarm.kind);
                met.insert(format!("{:?}", alarm.kind));
            }
        }
    }
    assert_eq!(met.len(), AlarmKind::ALL.len(), "{met:?}");
}

#[test]
fn all_that_can_rule_a_class_is_named() {
    let fits = |by| Fits { by, at_once: 7 };
    for by in FitBy::ALL {
        let said = words::class::fits(&Batches {
            density: CurrentDensity::of_si(250.0),
            pieces: 14,
            fits: vec![fits(*by)],
            ruled_by: Some(*by),
            groups: Vec::new(),
            time: None,
        });
        assert_eq!(said.matches(words::class::fit(*by)).count(), 2, "{said}");
        assert!(for_people(&said), "{said}");
    }
    let needs = words::class::needs(&Needs {
        current: Current::of_si(4.9),
        volume: Some(Volume::of_si(0.0049)),
        facing: Some(CounterArea::of_si(0.05)),
    });
    for number in ["4.9", "500 cm²"] {
        assert!(needs.replace('\u{a0}', " ").contains(number), "{needs}");
    }
    let bell = Bell {
        after: Time::hours(2.5),
        charge: None,
        pieces: Vec::new(),
        witness: Some(Length::mm(1.02)),
    };
    let witness = words::class::witness(Some(&bell), Some(Length::mm(1.12))).unwrap_or_default();
    assert!(
        witness.contains("1.02") && witness.contains("1.12"),
        "{witness}"
    );
}

#[test]
fn every_verdict_ruling_use_and_moment_is_said() {
    for verdict in Verdict::ALL {
        let said = words::unchanged(&Unchanged {
            density: CurrentDensity::of_si(250.0),
            lowest: None,
            highest: None,
            densest: None,
            bound: None,
            verdict: *verdict,
        });
        assert!(for_people(&said), "{said}");
    }
    assert!(Ruling::ALL.iter().all(|r| for_people(words::ruling(*r))));
    for (_, of) in planner::job::step::USES {
        assert!(for_people(words::use_label(of)));
    }
    for when in [When::Before, When::During, When::After] {
        assert!(for_people(words::when(when)));
    }
}

#[test]
fn every_accident_is_offered_and_every_offer_is_one() {
    let ids: Vec<&str> = words::options(at::HAPPENED)
        .iter()
        .map(|(w, _)| *w)
        .collect();
    let all = [
        Accident::PowerCut { gap: None },
        Accident::Reversed {
            lasted: Time::minutes(1.0),
            current: None,
        },
        Accident::Filed {
            piece: None,
            mass: Some(Mass::from_si(1e-4)),
            area: Some(WorkArea::of_si(1e-4)),
        },
    ];
    let known: Vec<String> = all
        .iter()
        .map(|a| {
            let value = serde_json::to_value(a).expect("an object");
            value
                .as_object()
                .and_then(|o| o.keys().next().cloned())
                .unwrap_or_default()
        })
        .collect();
    assert_eq!(ids, known);
}

#[test]
fn every_solution_that_is_offered_has_a_name_and_its_metal_and_materials_too() {
    for solution in Catalogue::standard().offered(planner::Setting::Shop) {
        assert!(for_people(words::solution(solution.id)), "{}", solution.id);
        assert!(
            for_people(words::metal(solution.metal)),
            "{}",
            solution.metal
        );
        for counter in solution.counters.value {
            assert!(for_people(words::material(counter)), "{counter}");
        }
    }
}

/// The words know nothing of a limit's place.
#[test]
fn a_limit_without_its_numbers_is_caught() {
    let (said, _) = words::limit(&[&Limit {
        kind: LimitKind::SupplyTooSmall,
        at: FieldPath::root(),
        pieces: Vec::new(),
        numbers: Vec::new(),
        note: None,
    }]);
    assert!(!for_people(&said), "{said}");
}

/// Every value of the working but a plain number is printed with its unit: what stands after the number is not nothing.
#[test]
fn no_value_of_the_working_is_without_its_unit() {
    const PLAIN: [&str; 5] = ["frac", "ratio", "count", "pH", "money"];
    let mut met = BTreeSet::new();
    for id in demos::ids() {
        for line in answer(&Catalogue::standard(), &typed(id, &[])).working {
            for named in line.values.iter().chain([&line.result]) {
                let value = named.value;
                if PLAIN.contains(&value.key_unit) {
                    continue;
                }
                let said = words::number::any(value);
                let unit = said.trim_start_matches(|c: char| !c.is_alphabetic() && c != '%');
                assert!(
                    !unit.is_empty(),
                    "{id} {} {}: {said}",
                    line.id,
                    value.key_unit
                );
                met.insert(value.key_unit);
            }
        }
    }
    assert!(met.contains("W") && met.contains("ohm_m2"), "{met:?}");
}
