//! The table of thinnest and thickest over mean, number by number.

use crate::table::{Row as TableRow, rows};
use field::{Arrangement, Row, evenness};
use geometry::Shape;
use planner::arrangement;
use quantity::{Length, Quantity, Ratio};

fn named(row: &TableRow) -> Row {
    match row.text("row") {
        "wire_ring" => Row::WireRing,
        "band_one_side" => Row::BandOneSide,
        "band_all_round" => Row::BandAllRound,
        other => panic!("{row}: no row {other}"),
    }
}

#[test]
fn thinnest_and_thickest_over_mean_are_the_tables() {
    for row in &rows("evenness.csv") {
        let got = evenness(named(row), Ratio::of_si(row.number("wagner")));
        let tolerance = row.number("tolerance");
        for (what, got, want) in [
            ("min", got.min_over_mean, row.number("min_over_mean")),
            ("max", got.max_over_mean, row.number("max_over_mean")),
        ] {
            assert!(
                (got.si() - want).abs() <= tolerance,
                "{row}: {what} is {}, want {want}; source: {}",
                got.si(),
                row.text("source")
            );
        }
        assert_eq!(got.at_best, row.text("at_best") == "yes", "{row}: at best");
    }
}

#[test]
fn evenness_grows_with_the_wagner_number() {
    for row in [Row::WireRing, Row::BandOneSide, Row::BandAllRound] {
        let mut before = evenness(row, Ratio::of_si(0.005));
        let mut wa = 0.005;
        while wa < 100.0 {
            wa *= 1.025;
            let here = evenness(row, Ratio::of_si(wa));
            assert!(
                here.min_over_mean >= before.min_over_mean,
                "{row:?} at {wa}"
            );
            assert!(
                here.max_over_mean <= before.max_over_mean,
                "{row:?} at {wa}"
            );
            before = here;
        }
    }
}

#[test]
fn every_shape_finds_its_row_or_says_that_there_is_none() {
    let mm = Length::mm;
    let torus = Shape::Torus {
        bore: mm(17.0),
        wire_d: mm(2.0),
    };
    let band = Shape::Band {
        bore: mm(17.0),
        wall: mm(1.5),
        width: mm(6.0),
    };
    let cap = Shape::Cap {
        outer_d: mm(18.0),
        inner_d: mm(16.0),
        height: mm(9.0),
    };
    use Arrangement::{AllRound, BothSides, OneSide, Turned};
    // A wire ring between two is no less even than before one (0.73 and 1.21 at Wa 0.02 against 0.70 and 1.26).
    for (shape, arrangement, want) in [
        (torus, OneSide, Some(Row::WireRing)),
        (torus, AllRound, Some(Row::WireRing)),
        (torus, BothSides, Some(Row::WireRing)),
        (torus, Turned, Some(Row::WireRing)),
        (band, OneSide, Some(Row::BandOneSide)),
        (band, AllRound, Some(Row::BandAllRound)),
        (band, BothSides, None),
        (band, Turned, None),
        (cap, OneSide, None),
        (cap, AllRound, None),
    ] {
        assert_eq!(
            arrangement::row_for(&shape, arrangement, None, None),
            want,
            "{} {arrangement:?}",
            shape.id()
        );
    }
}
