//! The whole table of thinnest and thickest over mean: every printed number, what holds between and beyond, and the row of
//! every shape.

use crate::geometry_reference::shape_of;
use crate::table::{Row as TableRow, rows};
use field::{Along, Arrangement, COLUMNS, Curve, Evenness, Opening, Row, ThinAt, evenness};
use geometry::Shape;
use planner::arrangement::row_for;
use proptest::prelude::*;
use quantity::{Length, Quantity, Ratio};

fn named(row: &TableRow) -> Row {
    let id = row.text("row");
    if let Some(depth) = row.maybe("depth_over_opening") {
        return Row::Cup {
            depth_over_opening: Ratio::of_si(depth),
        };
    }
    *Row::ALL
        .iter()
        .find(|r| r.id() == id)
        .unwrap_or_else(|| panic!("{row}: no row {id:?}"))
}

fn at(row: Row, wa: f64) -> Evenness {
    evenness(row, Ratio::of_si(wa))
}

type Series = (&'static str, fn(&Evenness) -> Option<Ratio>);

const SERIES: [Series; 5] = [
    ("min", |e| Some(e.min_over_mean)),
    ("max", |e| Some(e.max_over_mean)),
    ("inside", |e| e.inside_over_mean),
    ("bottom", |e| e.bottom_over_mean),
    ("twentieth", |e| e.twentieth_over_mean),
];
const SUFFIX: [&str; 4] = ["002", "01", "05", "2"];

#[test]
fn every_printed_number_stands_at_its_column() {
    let table = rows("evenness_rows.csv");
    assert_eq!(table.len(), Row::ALL.len());
    let mut numbers = 0;
    for row in &table {
        for (name, get) in SERIES {
            for (wa, suffix) in COLUMNS.into_iter().zip(SUFFIX) {
                let got = get(&at(named(row), wa)).map(Quantity::si);
                let want = row.maybe(&format!("{name}_{suffix}"));
                match (got, want) {
                    (Some(got), Some(want)) => {
                        assert!(
                            (got - want).abs() < 1e-12,
                            "{row}: {name} at {wa} is {got}, want {want}"
                        );
                        numbers += 1;
                    }
                    (got, want) => assert_eq!(got, want, "{row}: {name} at {wa}"),
                }
            }
        }
        let here = at(named(row), 0.5);
        assert_eq!(format!("{:?}", here.thin_at), row.text("thin_at"), "{row}");
        assert!(!here.at_best && !here.at_worst, "{row}");
    }
    assert_eq!(numbers, 23 * 8 + 5 * 4 + 4 * 4 + 4);
}

#[test]
fn between_columns_the_line_is_straight_against_the_logarithm() {
    for row in Row::ALL {
        for pair in COLUMNS.windows(2) {
            let middle = (pair[0] * pair[1]).sqrt();
            let (a, m, b) = (at(*row, pair[0]), at(*row, middle), at(*row, pair[1]));
            for (name, get) in SERIES {
                if let (Some(a), Some(m), Some(b)) = (get(&a), get(&m), get(&b)) {
                    assert!(
                        (m.si() - (a.si() + b.si()) / 2.0).abs() < 1e-12,
                        "{row:?} {name} at {middle}"
                    );
                }
            }
        }
    }
}

#[test]
fn above_the_table_the_rest_to_one_falls_as_one_over_wa() {
    for row in Row::ALL {
        let (two, eight) = (at(*row, 2.0), at(*row, 8.0));
        for (name, get) in SERIES {
            if let (Some(a), Some(b)) = (get(&two), get(&eight)) {
                assert!(
                    (1.0 - b.si() - (1.0 - a.si()) / 4.0).abs() < 1e-12,
                    "{row:?} {name}"
                );
            }
        }
        assert_eq!(at(*row, f64::INFINITY).min_over_mean.si(), 1.0, "{row:?}");
    }
}

#[test]
fn below_the_table_its_first_column_stands_at_best() {
    for row in Row::ALL {
        let first = at(*row, 0.02);
        assert!(!first.at_best);
        for wa in [0.0199, 1e-6, 0.0, -1.0, f64::NAN] {
            assert_eq!(
                at(*row, wa),
                Evenness {
                    at_best: true,
                    ..first
                },
                "{row:?} at {wa}"
            );
        }
    }
}

#[test]
fn a_cup_outside_the_table_says_so() {
    let cup = |depth| Row::Cup {
        depth_over_opening: Ratio::of_si(depth),
    };
    for wa in COLUMNS {
        let (shallow, deep) = (at(cup(0.25), wa), at(cup(2.0), wa));
        assert_eq!(
            at(cup(0.1), wa),
            Evenness {
                at_worst: true,
                ..shallow
            }
        );
        for depth in [2.001, 50.0, f64::INFINITY, f64::NAN] {
            assert_eq!(
                at(cup(depth), wa),
                Evenness {
                    at_best: true,
                    ..deep
                },
                "{depth}"
            );
        }
        // Half-way between two computed depths by the logarithm.
        let between = at(cup(0.5f64.sqrt()), wa);
        let (half, once) = (at(cup(0.5), wa), at(cup(1.0), wa));
        for (name, get) in &SERIES[..4] {
            let of = |e: &Evenness| get(e).map_or(f64::NAN, Quantity::si);
            assert!(
                (of(&between) - (of(&half) + of(&once)) / 2.0).abs() < 1e-12,
                "{name}"
            );
        }
    }
}

#[test]
fn points_grow_faster_than_a_rim() {
    let (rim, wagner) = (Curve::of(Row::DiscAt2), Along::of(Ratio::of_si(0.5)));
    let points = rim.on_points().ends(&wagner);
    assert!((points.max_over_mean.si() - 1.34 * 1.3).abs() < 1e-12);
    assert_eq!(points.min_over_mean, rim.ends(&wagner).min_over_mean);
}

/// Wagner numbers over eight decades.
fn any_wagner() -> impl Strategy<Value = f64> {
    let decades = [1e-4, 1e-3, 1e-2, 0.1, 1.0, 10.0, 100.0, 1e3];
    (1.0..10.0f64, 0..decades.len()).prop_map(move |(m, k)| m * decades[k])
}

/// Depths over opening, most of them within the table.
fn any_depth() -> impl Strategy<Value = f64> {
    prop_oneof![0.01..0.25f64, 0.25..2.0f64, 0.25..2.0f64, 2.0..10.0f64]
}

fn any_row() -> impl Strategy<Value = Row> {
    prop_oneof![
        (0..Row::ALL.len()).prop_map(|n| Row::ALL[n]),
        any_depth().prop_map(|depth| Row::Cup {
            depth_over_opening: Ratio::of_si(depth)
        }),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(4000))]

    /// A row looked up once and read with a logarithm at hand says what the whole table says: between its columns a straight
    /// line against ln Wa, beyond the last the rest to 1 falls as 2 / Wa, before the first nothing changes.
    #[test]
    fn a_curve_reads_like_the_table(wa in any_wagner(), depth in any_depth()) {
        let columns = [0.02, 0.1, 0.5, 2.0];
        let cup = Row::Cup { depth_over_opening: Ratio::of_si(depth) };
        for row in Row::ALL.iter().chain([&cup]) {
            let whole = at(*row, wa);
            let thinnest = |n: usize| at(*row, columns[n]).min_over_mean.si();
            let expected = match columns.iter().rposition(|c| wa >= *c) {
                None => thinnest(0),
                Some(3) => 1.0 - (1.0 - thinnest(3)) * 2.0 / wa,
                Some(n) => {
                    let step = libm::log(columns[n + 1] / columns[n]);
                    let way = libm::log(wa / columns[n]) / step;
                    thinnest(n) * (1.0 - way) + thinnest(n + 1) * way
                }
            };
            prop_assert!((whole.min_over_mean.si() - expected).abs() < 1e-13, "{row:?} at {wa}");
            let curve = Curve::of(*row);
            let along = Along::of_ln(libm::log(wa));
            let ends = curve.ends(&along);
            let pairs = [
                (Some(ends.min_over_mean), Some(whole.min_over_mean)),
                (Some(curve.thinnest(&along)), Some(whole.min_over_mean)),
                (Some(ends.max_over_mean), Some(whole.max_over_mean)),
                (
                    Some(ends.inside_over_mean).filter(|x| !x.si().is_nan()),
                    whole.inside_over_mean,
                ),
            ];
            for (read, said) in pairs {
                let of = |x: Option<Ratio>| x.map_or(-1.0, Quantity::si);
                prop_assert!((of(read) - of(said)).abs() < 1e-13, "{row:?} at {wa}");
            }
        }
    }

    #[test]
    fn the_mean_lies_between_thinnest_and_thickest(row in any_row(), wa in any_wagner()) {
        let e = at(row, wa);
        prop_assert!(0.0 <= e.min_over_mean.si() && e.min_over_mean.si() <= 1.0);
        prop_assert!(e.max_over_mean.si() >= 1.0 && e.max_over_mean.si().is_finite());
        if let Some(inside) = e.inside_over_mean {
            prop_assert!(e.min_over_mean <= inside && inside.si() <= 1.0);
        }
        if let Some(bottom) = e.bottom_over_mean {
            prop_assert!(e.min_over_mean <= bottom && bottom.si() <= 1.0);
        }
        if let Some(most) = e.twentieth_over_mean {
            prop_assert!(most <= e.max_over_mean);
        }
    }

    #[test]
    fn a_larger_wagner_number_is_more_even(row in any_row(), wa in any_wagner(), more in 1.0..4.0f64) {
        let (a, b) = (at(row, wa), at(row, wa * more));
        let slack = 1e-12;
        prop_assert!(b.min_over_mean.si() >= a.min_over_mean.si() - slack);
        prop_assert!(b.max_over_mean.si() <= a.max_over_mean.si() + slack);
        for get in [SERIES[2].1, SERIES[3].1] {
            if let (Some(a), Some(b)) = (get(&a), get(&b)) {
                prop_assert!(b.si() >= a.si() - slack);
            }
        }
    }

    #[test]
    fn a_deeper_cup_is_less_even(depth in any_depth(), more in 1.0..2.0f64, wa in any_wagner()) {
        let cup = |d: f64| at(Row::Cup { depth_over_opening: Ratio::of_si(d) }, wa);
        let (a, b) = (cup(depth), cup(depth * more));
        let slack = 1e-12;
        prop_assert!(b.min_over_mean.si() <= a.min_over_mean.si() + slack);
        prop_assert!(b.max_over_mean.si() >= a.max_over_mean.si() - slack);
    }
}

const ARRANGEMENTS: [Arrangement; 4] = [
    Arrangement::OneSide,
    Arrangement::BothSides,
    Arrangement::Turned,
    Arrangement::AllRound,
];

#[test]
fn every_shape_in_every_arrangement_has_its_row_or_none() {
    use Arrangement::{AllRound, BothSides, OneSide, Turned};
    let (to, away) = (Some(Opening::To), Some(Opening::Away));
    let mm = |d: f64| Some(Length::mm(d));
    let cup = |depth: f64| {
        Some(Row::Cup {
            depth_over_opening: Ratio::of_si(depth),
        })
    };
    for (text, arrangement, opening, distance, want) in [
        ("sphere", OneSide, None, None, Some(Row::BeadNear)),
        ("sphere", OneSide, None, mm(35.0), Some(Row::BeadNear)),
        ("sphere", OneSide, None, mm(36.0), Some(Row::BeadFar)),
        ("sphere", OneSide, None, mm(5.9), None),
        ("sphere", Turned, None, None, Some(Row::BeadBetween)),
        ("sphere", AllRound, None, None, None),
        (
            "ellipsoid length=15 width=12 height=10",
            OneSide,
            None,
            None,
            Some(Row::BeadNear),
        ),
        (
            "ellipsoid length=30 width=12 height=10",
            OneSide,
            None,
            None,
            None,
        ),
        (
            "rod diameter=3 length=30",
            AllRound,
            None,
            None,
            Some(Row::RodRound),
        ),
        (
            "rod diameter=3 length=30",
            OneSide,
            to,
            None,
            Some(Row::RodEndOn),
        ),
        ("rod diameter=3 length=30", OneSide, None, None, None),
        ("rod diameter=3 length=9", AllRound, None, None, None),
        (
            "twig base_d=4 top_d=2 length=30",
            AllRound,
            None,
            None,
            Some(Row::RodRound),
        ),
        ("leaf", OneSide, None, mm(30.0), Some(Row::DiscAt1)),
        ("leaf", OneSide, None, mm(60.0), Some(Row::DiscAt2)),
        ("leaf", OneSide, None, mm(120.0), Some(Row::DiscAt4)),
        ("leaf", OneSide, None, mm(29.0), None),
        ("leaf", OneSide, None, None, Some(Row::DiscAt2)),
        ("leaf", BothSides, None, None, Some(Row::DiscBetween)),
        ("leaf", Turned, None, None, Some(Row::DiscBetween)),
        ("disc", OneSide, None, mm(80.0), Some(Row::DiscAt4)),
        ("disc diameter=10 thickness=3", OneSide, None, None, None),
        ("sheet", BothSides, None, None, Some(Row::DiscBetween)),
        ("pierced_sheet", OneSide, None, None, Some(Row::DiscAt2)),
        (
            "leaf form=fern",
            OneSide,
            None,
            None,
            Some(Row::FiligreeOneSide),
        ),
        ("feather", Turned, None, None, Some(Row::FiligreeBetween)),
        ("mesh", OneSide, None, None, Some(Row::FiligreeOneSide)),
        (
            "mesh layers_count=3",
            OneSide,
            None,
            None,
            Some(Row::FiligreeThreeOneSide),
        ),
        (
            "mesh layers_count=2",
            BothSides,
            None,
            None,
            Some(Row::FiligreeThreeBetween),
        ),
        ("mesh layers_count=4", BothSides, None, None, None),
        ("torus", Turned, None, None, Some(Row::WireRing)),
        ("half_round", OneSide, None, None, Some(Row::BandOneSide)),
        ("half_round", AllRound, None, None, Some(Row::BandAllRound)),
        ("half_round", BothSides, None, None, None),
        ("cap", OneSide, to, None, Some(Row::DomeTo)),
        ("cap", OneSide, away, None, Some(Row::DomeAway)),
        ("cap", OneSide, None, None, None),
        ("cap", BothSides, None, None, Some(Row::DomeBetween)),
        (
            "cap outer_d=18 inner_d=16 height=17",
            OneSide,
            to,
            None,
            cup(1.0),
        ),
        (
            "cap outer_d=18 inner_d=16 height=17",
            OneSide,
            away,
            None,
            None,
        ),
        (
            "dome opening_d=20 height=10",
            OneSide,
            to,
            None,
            Some(Row::DomeTo),
        ),
        ("shell", OneSide, away, None, Some(Row::DomeAway)),
        (
            "cup opening_d=18 base_d=12 height=9 wall=1",
            OneSide,
            to,
            None,
            cup(0.5),
        ),
        ("cup", OneSide, away, None, None),
        ("cup", BothSides, to, None, None),
        (
            "bezel outer_d=11 height=5.5 wall=0.5",
            OneSide,
            to,
            None,
            cup(0.5),
        ),
        ("bezel inside=covered", OneSide, to, None, None),
    ] {
        let got = row_for(&shape_of(text), arrangement, opening, distance);
        match (got, want) {
            (
                Some(Row::Cup {
                    depth_over_opening: a,
                }),
                Some(Row::Cup {
                    depth_over_opening: b,
                }),
            ) => {
                assert!(
                    (a.si() - b.si()).abs() < 1e-12,
                    "{text} {arrangement:?}: {a:?}"
                );
            }
            _ => assert_eq!(got, want, "{text} {arrangement:?} {opening:?} {distance:?}"),
        }
    }
    for id in [
        "box",
        "tube",
        "hole",
        "cone",
        "frustum",
        "snail",
        "seed_head",
        "half_ellipsoid",
        "coil",
        "twisted_pair",
        "link",
        "chain",
        "crystal",
    ] {
        for arrangement in ARRANGEMENTS {
            assert_eq!(row_for(&shape_of(id), arrangement, to, None), None, "{id}");
        }
    }
}

#[test]
fn every_row_is_some_shapes() {
    let mut met = std::collections::BTreeSet::new();
    let more = ["sphere", "leaf", "mesh layers_count=3", "leaf form=fern"].map(shape_of);
    for shape in Shape::TYPICAL.iter().chain(&more) {
        for arrangement in ARRANGEMENTS {
            for opening in [None, Some(Opening::To), Some(Opening::Away)] {
                for scales in [1.0, 2.0, 4.0, 6.0] {
                    let distance = Some(shape.scale() * scales);
                    met.extend(row_for(shape, arrangement, opening, distance).map(Row::id));
                }
            }
        }
    }
    let all: std::collections::BTreeSet<_> = Row::ALL.iter().map(|r| r.id()).collect();
    assert_eq!(met, all);
}

#[test]
fn the_scale_is_half_the_longest_size_or_the_radius_of_the_opening() {
    for (text, want) in [
        ("leaf length=60 width=30", 30.0),
        ("leaf length=60 width=30 form=fern", 15.0),
        ("feather length=60 width=15", 7.5),
        ("sphere diameter=12", 6.0),
        ("torus bore=17 wire_d=2", 10.5),
        ("band bore=17 wall=1.5 width=6", 10.0),
        ("cap outer_d=18 inner_d=16 height=9", 8.0),
        ("dome opening_d=20 height=6", 10.0),
        ("cup opening_d=16 base_d=10 height=12 wall=1", 7.0),
        ("bezel outer_d=12 height=4 wall=0.5", 5.5),
        ("bezel outer_d=12 height=4 wall=0.5 inside=covered", 6.0),
        ("tube bore=5 wall=0.5 length=20", 2.5),
        ("rod diameter=3 length=30", 15.0),
    ] {
        let got = shape_of(text).scale().si() * 1e3;
        assert!((got - want).abs() < 1e-12, "{text}: {got}, want {want}");
    }
}

#[test]
fn the_acorn_cap_of_the_trade() {
    // Opening to the anode at Wa 1.3: inside mean about 0.74, thinnest about 0.55 of the mean.
    let row = row_for(
        &shape_of("cap"),
        Arrangement::OneSide,
        Some(Opening::To),
        None,
    )
    .expect("a row");
    let e = at(row, 1.3);
    assert!((e.min_over_mean.si() - 0.55).abs() < 0.005, "{e:?}");
    assert!(
        (e.inside_over_mean.map_or(0.0, Quantity::si) - 0.74).abs() < 0.005,
        "{e:?}"
    );
    assert_eq!(e.thin_at, ThinAt::InsidePole);
    // Studs between two, Wa 2: leaf 0.94, three layers of filigree 0.90, dome 0.59; a cup as deep as wide 0.28.
    for (row, want) in [
        (Row::DiscBetween, 0.94),
        (Row::FiligreeThreeBetween, 0.90),
        (Row::DomeBetween, 0.59),
    ] {
        assert_eq!(at(row, 2.0).min_over_mean.si(), want);
    }
}
