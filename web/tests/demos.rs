//! The jobs to start from are answered as their hand calculations say: draft, job, answer. A row is a number of an answer,
//! what it must be, and where that comes from; 0.5 %.

use planner::answer::LimitKind;
use planner::{Answer, Catalogue, answer};
use quantity::Quantity;
use web::state::{demos, job};

const NOW: Option<&str> = Some("2026-05-01T10:00");

/// Demo, number of the answer, wanted in the unit named, source.
const ROWS: &[(&str, &str, f64, &str)] = &[
    (
        "acorn_cap",
        "wanted mA 0",
        174.6,
        "1.5 A/dm2 x 11.64 cm2, by hand",
    ),
    (
        "acorn_cap",
        "wanted mA 1",
        93.1,
        "0.8 A/dm2 x 11.64 cm2, by hand",
    ),
    (
        "acorn_cap",
        "wetted cm2",
        11.64,
        "sphere caps, rim and wire, by hand",
    ),
    (
        "resin_ring",
        "wanted mA 0",
        136.8,
        "11.40 cm2 x 1.2 A/dm2, by hand",
    ),
    (
        "resin_ring",
        "bore to make mm",
        17.75,
        "17.35 + 2 x 0.2, by hand",
    ),
    ("stud", "wanted mA 0", 52.0, "5.2 cm2 x 1.0 A/dm2, by hand"),
    (
        "vermeil",
        "wanted mA 0",
        108.8,
        "13.6 cm2 x 0.8 A/dm2, by hand",
    ),
    ("vermeil", "mean um", 4.17, "2.5 / 0.6, by hand"),
    (
        "vermeil",
        "time min",
        23.4,
        "4.17 um at 10.66 um/h, by hand",
    ),
    (
        "rhodium",
        "wanted mA 0",
        180.0,
        "9.0 cm2 x 2.0 A/dm2, by hand",
    ),
    (
        "rhodium",
        "time min",
        1.454,
        "0.30 um at 12.38 um/h, by hand",
    ),
    (
        "pendant",
        "wanted mA 0",
        118.8,
        "7.069 cm2 x 0.42 x 4 A/dm2, by hand",
    ),
    (
        "pendant",
        "time min",
        164.3,
        "350 um at 127.8 um/h, by hand",
    ),
    (
        "bookmark",
        "wanted mA 0",
        495.0,
        "16.5 cm2 x 3 A/dm2, by hand",
    ),
    (
        "bookmark",
        "time min",
        285.4,
        "200 um at 42.05 um/h, by hand",
    ),
    (
        "gear",
        "density A/dm2",
        5.0,
        "0.140 A over 2 x 14 cm x 0.1 cm, by hand",
    ),
    (
        "gear",
        "time min",
        400.3,
        "2 x 14 x (0.1 x 0.03 + pi / 2 x 0.03^2) cm3 x 8.96 g/cm3 / 1.18549 g/Ah / 0.140 A, by hand",
    ),
    ("gear", "opening after mm", 1.6, "1.0 + 2 x 0.30, by hand"),
    (
        "gear",
        "blurred mA",
        135.0,
        "a display in steps of 10 mA that shows 140, by hand",
    ),
    (
        "ferns",
        "wanted mA 0",
        1016.0,
        "(31.74 + 22.06 + 47.80) cm2 x 1.0 A/dm2, by hand",
    ),
    (
        "ferns",
        "mean um",
        103.7,
        "8 h at 12.97 um/h, the third out after three, by hand",
    ),
    (
        "ferns",
        "after mA",
        538.0,
        "(31.74 + 22.06) cm2 x 1.0 A/dm2, by hand",
    ),
    ("class", "time min", 738.0, "18.45 Ah at 1.5 A, by hand"),
    (
        "class",
        "bell um",
        12.19,
        "0.376 A/dm2 x 12.97 um/h per A/dm2 x 2.5 h, by hand",
    ),
];

fn number(answer: &Answer, what: &str) -> Option<f64> {
    let piece = answer.pieces.first()?;
    let si = match what {
        "wanted mA 0" => answer.steps.first()?.current.known()?.wanted.likely.si() * 1e3,
        "wanted mA 1" => answer.steps.get(1)?.current.known()?.wanted.likely.si() * 1e3,
        "wetted cm2" => piece.wetted.known()?.likely.si() * 1e4,
        "density A/dm2" => answer.steps.first()?.density.known()?.likely.si() * 1e-2,
        "opening after mm" => {
            let etched = piece.etched.as_ref()?;
            etched.opening_after.known()?.likely.si() * 1e3
        }
        "blurred mA" => {
            let limits = &answer.limits;
            let blurs = limits
                .iter()
                .find(|l| l.kind == LimitKind::DisplayTooCoarse)?;
            let least = blurs.numbers.iter().find(|n| n.name == "at_least")?;
            least.value.si * 1e3
        }
        "bore to make mm" => piece.bore_to_make.known()?.likely.si() * 1e3,
        "mean um" => piece.mean.known()?.likely.si() * 1e6,
        "after mA" => answer.stages.get(1)?.wanted?.si() * 1e3,
        "bell um" => {
            let bell = answer.class.as_ref()?.bell.as_ref()?;
            bell.pieces.first()?.mean.si() * 1e6
        }
        "time min" => answer.time.known()?.likely.si() / 60.0,
        _ => return None,
    };
    Some(si)
}

#[test]
fn every_demo_is_answered_as_its_hand_calculation() {
    for (id, what, want, source) in ROWS {
        let Some(draft) = demos::of(id) else {
            panic!("{id}: no such demo");
        };
        let read = job::read(&draft, NOW);
        assert_eq!(read.problems, [], "{id}");
        let mut job = read.job;
        // The hand calculations know no display, unless it is what they are about: they ask for the exact current.
        if *what != "blurred mA"
            && let Some(planner::job::Supply::ConstantCurrent(bench)) = &mut job.supply
        {
            bench.display_step = None;
        }
        let answer = answer(&Catalogue::standard(), &job);
        assert_eq!(answer.problems, [], "{id}");
        let Some(got) = number(&answer, what) else {
            panic!("{id}: {what} is absent");
        };
        assert!(
            (got / want - 1.0).abs() < 0.005,
            "{id}: {what} is {got}, wanted {want} ({source})"
        );
    }
}

#[test]
fn every_demo_has_rows_or_is_the_first_screen() {
    for id in demos::ids() {
        assert!(
            id == "hoops" || ROWS.iter().any(|(demo, ..)| *demo == id),
            "{id}"
        );
    }
}
