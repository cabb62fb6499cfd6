//! What follows from changing one thing in an etch.

use crate::support::{ask_plan, close, config, etch_base, number, with};
use proptest::prelude::*;
use serde_json::{Value, json};

const TIME: &str = "/time/known/likely_s";
const CURRENT: &str = "/steps/0/current/known/wanted/likely_A";
const DEPTH: &str = "/pieces/0/etched/depth/known/likely_m";
const AFTER: &str = "/pieces/0/etched/opening_after/known/likely_m";
const LINE: &str = "/pieces/0/etched/line_to_draw/known/likely_m";

/// A groove of this opening, etched to this depth.
fn groove(opening: f64, ef: f64, depth: f64) -> Value {
    with(
        etch_base(),
        &[
            ("/pieces/0/artwork/opening_m", json!(opening)),
            ("/pieces/0/artwork/land_wanted_m", json!(0.001)),
            ("/pieces/0/artwork/etch_factor_ratio", json!(ef)),
            ("/pieces/0/artwork/model", json!("groove")),
            ("/steps/0/until", json!({ "depth_m": depth })),
        ],
    )
}

proptest! {
    #![proptest_config(config(60))]

    #[test]
    fn what_is_etched_in_the_time_for_a_depth_is_that_depth(
        opening in 1e-4..5e-3f64, ef in 0.7..3.0f64, depth in 1e-6..1e-3f64
    ) {
        let plan = groove(opening, ef, depth);
        let there = ask_plan(&plan);
        prop_assert!(close(number(&there, DEPTH), depth, 1e-9));
        let timed = json!({"time_s": number(&there, TIME)});
        let back = ask_plan(&with(plan, &[("/steps/0/until", timed)]));
        prop_assert!(close(number(&back, DEPTH), depth, 1e-9), "{} of {}", number(&back, DEPTH), depth);
    }

    #[test]
    fn deeper_is_never_shorter_and_never_narrower(
        opening in 1e-4..5e-3f64, ef in 0.7..3.0f64, depth in 1e-6..1e-3f64, more in 1.0..3.0f64
    ) {
        let one = ask_plan(&groove(opening, ef, depth));
        let two = ask_plan(&groove(opening, ef, depth * more));
        prop_assert!(number(&two, TIME) >= number(&one, TIME));
        prop_assert!(number(&two, AFTER) >= number(&one, AFTER));
        prop_assert!(number(&one, AFTER) > opening);
    }

    #[test]
    fn a_larger_etch_factor_undercuts_less(
        opening in 1e-4..5e-3f64, ef in 0.7..2.0f64, more in 1.01..1.5f64, depth in 1e-6..1e-3f64
    ) {
        let blunt = ask_plan(&groove(opening, ef, depth));
        let sharp = ask_plan(&groove(opening, ef * more, depth));
        prop_assert!(number(&sharp, AFTER) < number(&blunt, AFTER));
        prop_assert!(number(&sharp, LINE) < number(&blunt, LINE));
        prop_assert!(number(&sharp, TIME) < number(&blunt, TIME));
    }

    #[test]
    fn a_groove_never_takes_less_than_a_flat_floor_as_deep(
        opening in 1e-4..5e-3f64, depth in 1e-6..1e-3f64
    ) {
        let fine = groove(opening, 1.0, depth);
        let flat = with(fine.clone(), &[("/pieces/0/artwork/model", json!("flat"))]);
        let (fine, flat) = (ask_plan(&fine), ask_plan(&flat));
        let times = number(&fine, "/pieces/0/etched/fine_line/known/likely_ratio");
        prop_assert!(close(number(&fine, TIME), times * number(&flat, TIME), 1e-9));
        prop_assert!(times > 1.0);
    }

    #[test]
    fn current_follows_the_open_share_and_the_number_of_sheets(
        open in 0.001..0.5f64, more in 1.0..2.0f64, count in 1..20u32
    ) {
        let share = |open: f64| ask_plan(&with(etch_base(), &[("/pieces/0/open_frac", json!(open))]));
        let (one, two) = (share(open), share(open * more));
        prop_assert!(close(number(&two, CURRENT), more * number(&one, CURRENT), 1e-12));
        prop_assert!(close(number(&two, TIME), number(&one, TIME), 1e-12));
        let many = ask_plan(&with(etch_base(), &[("/pieces/0/count", json!(count))]));
        let single = number(&ask_plan(&etch_base()), CURRENT);
        prop_assert!(close(number(&many, CURRENT), f64::from(count) * single, 1e-12));
    }

    #[test]
    fn twice_the_flat_depth_takes_twice_the_time_and_twice_the_density_half(
        depth in 1e-6..4e-4f64, density in 50.0..300.0f64
    ) {
        let time = |depth: f64, density: f64| number(&ask_plan(&with(etch_base(), &[
            ("/steps/0/until", json!({ "depth_m": depth })),
            ("/steps/0/drive", json!({ "density_A_per_m2": density })),
        ])), TIME);
        prop_assert!(close(time(2.0 * depth, density), 2.0 * time(depth, density), 1e-12));
        prop_assert!(close(time(depth, 2.0 * density), time(depth, density) / 2.0, 1e-12));
    }

    #[test]
    fn the_mass_that_is_asked_for_leaves_the_sheets(mass in 1e-6..1e-2f64, count in 1..9u32) {
        let answer = ask_plan(&with(etch_base(), &[
            ("/pieces/0/count", json!(count)),
            ("/steps/0/until", json!({ "mass_kg": mass })),
        ]));
        let each = number(&answer, "/pieces/0/mass/known/likely_kg");
        prop_assert!(close(each * f64::from(count), mass, 1e-9));
    }
}

/// 40 x 25 mm, half open: 5 cm2 from one side, 10 from both; the edges are taped.
#[test]
fn both_sides_are_twice_one() {
    for (sides, cm2) in [("one", 5.0), ("both", 10.0)] {
        let answer = ask_plan(&with(
            etch_base(),
            &[("/pieces/0/artwork/sides", json!(sides))],
        ));
        let got = number(&answer, "/pieces/0/area/known/likely_m2");
        assert!(close(got, cm2 * 1e-4, 1e-12), "{sides}: {got}");
        let amperes = number(&answer, CURRENT);
        assert!(
            close(amperes, 300.0 * cm2 * 1e-4, 1e-12),
            "{sides}: {amperes}"
        );
    }
}

/// By hand from the fine-line rule, 1 + (pi / 2) d / (EF w) at an etch factor of 1, in mm: opening, depth, ratio.
#[test]
fn a_fine_line_costs_the_charge_that_the_bench_table_says() {
    for (opening, depth, want) in [
        (0.2, 0.05, 1.39),
        (0.2, 0.30, 3.36),
        (0.3, 0.10, 1.52),
        (0.5, 0.20, 1.63),
        (1.0, 0.30, 1.47),
        (2.0, 0.10, 1.08),
        (5.0, 0.30, 1.09),
    ] {
        let answer = ask_plan(&groove(opening / 1e3, 1.0, depth / 1e3));
        let got = number(&answer, "/pieces/0/etched/fine_line/known/likely_ratio");
        assert!(
            (got - want).abs() < 0.005,
            "{opening} {depth}: {got}, want {want}"
        );
    }
}

/// An etch grows no bore shut: what it would be then does not apply.
#[test]
fn an_etched_ring_has_no_bore_after_growth() {
    let answer = ask_plan(&with(
        etch_base(),
        &[
            (
                "/pieces/0/extent/parts/0/shape",
                json!({"band": {"bore_m": 0.0176, "wall_m": 0.0015, "width_m": 0.006}}),
            ),
            ("/pieces/0/fit", json!({"wanted_bore_m": 0.0172})),
        ],
    ));
    for what in ["bore_after", "bore_to_make"] {
        let because = &answer["pieces"][0][what]["absent"]["because"];
        assert_eq!(because, "does_not_apply", "{what}");
    }
}
