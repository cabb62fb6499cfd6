//! Measuring an area, and finds, against hand calculations.

use geometry::measure::{
    CardSides, FOIL_ALUMINIUM, FOIL_COPPER, Foil, Impossible, Measured, Pixels, Raised, Reading,
    SquarePixels, Swatch, Way, beside_card, by_foil, by_grid, by_plated_mass, by_sealer_gain,
    by_suspension, by_tracing, open_by_lines, open_by_swatch,
};
use geometry::preset::PRESETS;
use geometry::source::WORKS;
use geometry::{LeafForm, Shape, Source};
use quantity::{Band, Density, Length, Mass, Quantity, Ratio, Thickness, WorkArea};

fn cm2(measured: Result<Measured<WorkArea>, Impossible>) -> f64 {
    measured.expect("readings are possible").value.si() * 1e4
}

fn near(got: f64, want: f64, tolerance: f64, what: &str) {
    assert!(
        (got - want).abs() <= tolerance,
        "{what}: {got}, want {want} within {tolerance}"
    );
}

fn long(pixels: f64) -> CardSides {
    CardSides {
        long: Some(Pixels(pixels)),
        short: None,
    }
}

#[test]
fn a_card_gives_the_scale() {
    // 856 px for 85.60 mm is 0.1 mm a pixel: 100 000 px are 10 cm2.
    near(
        cm2(beside_card(long(856.0), SquarePixels(100_000.0), None)),
        10.0,
        1e-9,
        "long side",
    );
    let short = CardSides {
        long: None,
        short: Some(Pixels(539.8)),
    };
    near(
        cm2(beside_card(short, SquarePixels(100_000.0), None)),
        10.0,
        1e-9,
        "short side",
    );
    // Tilted by 15 degrees about its long side, the short side shrinks by cos 15 = 0.9659 and so does the piece: 3.4 %.
    let tilted = CardSides {
        long: Some(Pixels(856.0)),
        short: Some(Pixels(539.8 * 0.965_925_8)),
    };
    near(
        cm2(beside_card(tilted, SquarePixels(96_592.58), None)),
        10.0,
        1e-6,
        "tilt taken out",
    );
    near(
        cm2(beside_card(long(856.0), SquarePixels(96_592.58), None)),
        9.66,
        0.005,
        "tilt left in",
    );
    // 10 mm above the card at 250 mm: 4 % in length, 8 % in area.
    let raised = Raised {
        above_card: Length::mm(10.0),
        camera: Length::mm(250.0),
    };
    near(
        cm2(beside_card(
            long(856.0),
            SquarePixels(100_000.0),
            Some(raised),
        )),
        9.216,
        1e-9,
        "raised",
    );
    let small = beside_card(long(856.0), SquarePixels(100_000.0), None).expect("possible");
    let large = beside_card(long(856.0), SquarePixels(400_000.0), None).expect("possible");
    assert_eq!((small.way, small.spread.si()), (Way::CardSmall, 0.10));
    assert_eq!((large.way, large.spread.si()), (Way::Card, 0.05));
}

#[test]
fn weighing_gives_the_area() {
    let step = Mass::gram(0.01);
    // 80 g/m2: 1.25 cm2 a step; 100 cm2 weigh 0.80 g.
    let paper = |m| by_tracing(Mass::gram(m), Mass::gram(0.80), WorkArea::cm2(100.0), step);
    near(cm2(paper(0.01)), 1.25, 1e-9, "paper a step");
    let card = |m| by_tracing(Mass::gram(m), Mass::gram(3.0), WorkArea::cm2(100.0), step);
    near(cm2(card(0.01)), 0.333, 0.001, "card of 300 g/m2 a step");
    let (rough, fine) = (
        paper(0.16).expect("possible"),
        card(0.60).expect("possible"),
    );
    assert!(
        rough.spread > fine.spread && fine.spread.si() >= 0.04,
        "heavy card is better"
    );
    // 16 um of aluminium: 4.3 mg/cm2, 2.3 cm2 for 0.01 g; 0.1 mm copper 90 mg/cm2, 0.11 cm2.
    near(
        cm2(by_foil(Mass::gram(0.01), FOIL_ALUMINIUM, step)),
        2.3,
        0.05,
        "household foil a step",
    );
    near(
        cm2(by_foil(Mass::gram(0.01), FOIL_COPPER, step)),
        0.11,
        0.005,
        "copper foil a step",
    );
    let own = Foil::of(Thickness::um(100.0), Density::g_per_cm3(8.96));
    near(
        cm2(by_foil(Mass::gram(0.896), own, step)),
        10.0,
        1e-9,
        "own foil",
    );
    let sealer = by_sealer_gain(Mass::gram(0.30), Mass::gram(0.10), WorkArea::cm2(8.0), step);
    near(cm2(sealer), 24.0, 1e-9, "sealer");
    // 1 cm3 as a ball: 4.836 cm2.
    let k = Shape::Sphere {
        diameter: Length::mm(20.0),
    }
    .area_factor()
    .expect("a ball has a volume");
    near(k.si(), 4.835_976, 1e-6, "factor of a ball, (36 pi)^(1/3)");
    let (volume, area) =
        by_suspension(Mass::gram(1.0), Density::g_per_cm3(1.0), k, step).expect("possible");
    near(volume.si() * 1e6, 1.0, 1e-12, "volume");
    near(area.value.si() * 1e4, 4.836, 1e-3, "area");
    // 2.04 g of copper 0.2 mm thick: 11.4 cm2.
    let laid = by_plated_mass(
        Mass::gram(2.04),
        Density::g_per_cm3(8.96),
        Thickness::um(200.0),
        step,
    );
    near(cm2(laid), 11.38, 0.01, "metal laid on");
    near(
        cm2(by_grid(20, 10, Length::mm(10.0))),
        25.0,
        1e-9,
        "squares",
    );
}

#[test]
fn the_open_share_is_judged_or_worked_out() {
    let shares: Vec<f64> = Swatch::ALL
        .iter()
        .map(|s| open_by_swatch(*s).value.si())
        .collect();
    assert_eq!(shares, [0.10, 0.25, 0.50, 0.75]);
    // 14 cm of line 1 mm wide on 7.07 cm2 (a disc of 30 mm).
    let lines = open_by_lines(Length::mm(140.0), Length::mm(1.0), WorkArea::cm2(7.0686));
    near(lines.expect("possible").value.si(), 0.198, 0.0005, "lines");
    assert_eq!(
        open_by_lines(Length::mm(1400.0), Length::mm(1.0), WorkArea::cm2(7.0)),
        Err(Impossible::MoreThanTheWhole)
    );
}

#[test]
fn impossible_readings_are_named() {
    let (g, step) = (Mass::gram(1.0), Mass::gram(0.01));
    let square = WorkArea::cm2(100.0);
    let none = CardSides::default();
    let p = SquarePixels(1e5);
    let wild = CardSides {
        long: Some(Pixels(500.0)),
        short: Some(Pixels(500.0)),
    };
    let close = Raised {
        above_card: Length::mm(300.0),
        camera: Length::mm(250.0),
    };
    for (got, want) in [
        (beside_card(none, p, None), Impossible::NoCardSide),
        (beside_card(wild, p, None), Impossible::CardOutOfShape),
        (
            beside_card(long(0.0), p, None),
            Impossible::NotAboveZero(Reading::Card),
        ),
        (
            beside_card(long(1.0), SquarePixels(f64::NAN), None),
            Impossible::NotAboveZero(Reading::Piece),
        ),
        (
            beside_card(long(856.0), p, Some(close)),
            Impossible::AtTheCamera,
        ),
        (
            by_tracing(Mass::gram(0.0), g, square, step),
            Impossible::NotAboveZero(Reading::Mass),
        ),
        (
            by_tracing(g, Mass::gram(-1.0), square, step),
            Impossible::NotAboveZero(Reading::SquareMass),
        ),
        (
            by_sealer_gain(g, Mass::gram(0.0), square, step),
            Impossible::NotAboveZero(Reading::CouponGain),
        ),
        (
            by_grid(0, 0, Length::mm(1.0)),
            Impossible::NotAboveZero(Reading::Squares),
        ),
        (
            by_plated_mass(g, Density::of_si(0.0), Thickness::um(1.0), step),
            Impossible::NotAboveZero(Reading::Density),
        ),
    ] {
        assert_eq!(got, Err(want));
    }
}

fn in_order<Q: Quantity>(band: &Band<Q>) -> bool {
    band.min <= band.typ && band.typ <= band.max
}

fn cited(source: Source) -> bool {
    match source {
        Source::Published { work, locator } => {
            !locator.is_empty() && WORKS.iter().any(|(id, _)| *id == work)
        }
        _ => true,
    }
}

#[test]
fn every_find_is_whole() {
    let ids: std::collections::BTreeSet<_> = PRESETS.iter().map(|p| p.id).collect();
    assert_eq!(ids.len(), PRESETS.len());
    for wanted in [
        "leaf",
        "fern",
        "feather",
        "pod",
        "acorn_cap",
        "shell",
        "twig",
        "seed_head",
        "crystal",
        "beetle",
    ] {
        assert!(ids.contains(wanted), "{wanted}");
    }
    for preset in PRESETS {
        assert!(
            preset.surface().is_some_and(|s| s.total().si() > 0.0),
            "{}",
            preset.id
        );
        assert!(!preset.outline().is_empty(), "{}", preset.id);
        assert!(preset.spread.value.si() > 0.0 && cited(preset.spread.source));
        for part in preset.parts {
            let band = part.texture.value;
            assert!(in_order(&band) && band.min.si() >= 1.0, "{}", preset.id);
            assert!(cited(part.texture.source), "{}", preset.id);
            assert_eq!(part.shape.contradiction(), None, "{}", preset.id);
        }
    }
    // The acorn cap of the trade: outside 5.089 x 1.3, inside 4.021; its rim, 0.534, is textured here too.
    let cap = PRESETS
        .iter()
        .find(|p| p.id == "acorn_cap")
        .and_then(|p| p.surface())
        .expect("an acorn cap");
    near(cap.inside.si() * 1e4, 4.021, 0.0005, "acorn cap inside");
    near(
        cap.outside.si() * 1e4,
        (5.089 + 0.534) * 1.3,
        0.001,
        "acorn cap outside",
    );
}

#[test]
fn ways_and_forms_have_bands_in_order() {
    for way in Way::ALL {
        let spread = way.spread();
        assert!(in_order(&spread.value) && cited(spread.source), "{way:?}");
    }
    for form in LeafForm::ALL {
        if let Some(k) = form.factor() {
            assert!(
                in_order(&k.value) && k.value.max < Ratio::of_si(core::f64::consts::FRAC_PI_4),
                "{form:?}"
            );
        }
    }
    // A compass-drawn lens lies between its limits: 2/3 for a slim one, pi/4 for a circle.
    for width in [1.0, 10.0, 30.0, 60.0] {
        let lens = Shape::Leaf {
            length: Length::mm(60.0),
            width: Length::mm(width),
            form: LeafForm::Lens,
        };
        let k = lens.surface().total().si() / (2.0 * 60e-3 * width * 1e-3);
        assert!(
            (0.6666..=core::f64::consts::FRAC_PI_4 + 1e-12).contains(&k),
            "{width}: {k}"
        );
    }
}
