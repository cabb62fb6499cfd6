//! Values with a spread and the range that comes of them.

use crate::support::{close, config};
use proptest::prelude::*;
use quantity::{Band, Length, POINTS, Quantity, Range, Ratio, Spread, Variate};

fn samples(likely: f64, spread: Spread, name: &str) -> [f64; POINTS] {
    let variate = Variate::of(name);
    core::array::from_fn(|point| spread.at(likely, &variate, point))
}

fn band(min: f64, typ: f64, max: f64) -> Band<Length> {
    Band {
        min: Length::of_si(min),
        typ: Length::of_si(typ),
        max: Length::of_si(max),
    }
}

#[test]
fn a_range_without_spread_is_its_likely_value() {
    let range = Range::exactly(Ratio::of_si(2.0));
    assert_eq!(
        (range.low, range.high),
        (Ratio::of_si(2.0), Ratio::of_si(2.0))
    );
    let same = samples(2.0, Spread::None, "any");
    assert!(same.iter().all(|&x| x == 2.0));
}

#[test]
fn the_ends_are_the_26th_value_from_each_side() {
    let mut all: [f64; POINTS] = core::array::from_fn(|n| (n + 1) as f64);
    all.reverse();
    let range = Range::of_samples(Ratio::of_si(200.0), &all);
    assert_eq!((range.low.si(), range.high.si()), (26.0, 487.0));
}

#[test]
fn the_ends_are_widened_to_hold_the_likely_value() {
    let all: [f64; POINTS] = core::array::from_fn(|n| (n + 1) as f64);
    let low = Range::of_samples(Ratio::of_si(3.0), &all);
    assert_eq!((low.low.si(), low.high.si()), (3.0, 487.0));
    let high = Range::of_samples(Ratio::of_si(600.0), &all);
    assert_eq!((high.low.si(), high.high.si()), (26.0, 600.0));
}

#[test]
fn two_in_three_lie_within_a_lognormal_spread() {
    let all = samples(100.0, Spread::Lognormal { frac: 0.2 }, "area");
    let within = all
        .iter()
        .filter(|&&x| (100.0 / 1.2..=120.0).contains(&x))
        .count();
    // 68.27 % of 512 are 349.5.
    assert!((348..=351).contains(&within), "{within} of 512");
}

#[test]
fn two_spreads_of_20_percent_multiply_to_the_closed_form() {
    // ln of a product of two independent lognormals: deviation sqrt(2) ln 1.2; 5 and 95 % at -+ 1.6449 of it.
    let each = libm::log(1.2);
    let want = libm::exp(1.644_853_6 * core::f64::consts::SQRT_2 * each);
    let a = samples(3.0, Spread::Lognormal { frac: 0.2 }, "pieces/p1/extent");
    let b = samples(5.0, Spread::Lognormal { frac: 0.2 }, "pieces/p2/extent");
    let product: [f64; POINTS] = core::array::from_fn(|n| a[n] * b[n]);
    let range = Range::of_samples(Ratio::of_si(15.0), &product);
    assert!(
        close(range.low.si(), 15.0 / want, 0.08),
        "low {} want {}",
        range.low.si(),
        15.0 / want
    );
    assert!(
        close(range.high.si(), 15.0 * want, 0.08),
        "high {} want {}",
        range.high.si(),
        15.0 * want
    );
}

#[test]
fn a_display_is_uniform_over_one_step() {
    let all = samples(0.14, Spread::Uniform { half: 0.005 }, "display");
    assert!(all.iter().all(|x| (0.135..=0.145).contains(x)));
    let mean = all.iter().sum::<f64>() / POINTS as f64;
    assert!(close(mean, 0.14, 1e-12), "mean {mean}");
}

#[test]
fn a_temperature_spreads_by_its_own_degrees() {
    let all = samples(295.15, Spread::Normal { sd: 2.0 }, "temperature");
    let within = all.iter().filter(|&&x| (x - 295.15).abs() <= 2.0).count();
    assert!((348..=351).contains(&within), "{within} of 512");
}

proptest! {
    #![proptest_config(config(300))]

    #[test]
    fn low_is_at_most_likely_and_likely_at_most_high(
        likely in -1e6..1e6f64,
        all in prop::collection::vec(-1e6..1e6f64, POINTS),
    ) {
        let all: [f64; POINTS] = core::array::from_fn(|n| all[n]);
        let range = Range::of_samples(Ratio::of_si(likely), &all);
        prop_assert!(range.low.si() <= likely && likely <= range.high.si());
    }

    /// Against the standard library's sort, with many equal values and not a number among them.
    #[test]
    fn the_ends_are_those_of_a_sort(all in prop::collection::vec((-9..9_i8).prop_map(f64::from), POINTS), at in 0..POINTS) {
        let mut all: [f64; POINTS] = core::array::from_fn(|n| all[n]);
        let mut sorted = all;
        sorted.sort_by(f64::total_cmp);
        let range = Range::of_samples(Ratio::of_si(0.25), &all);
        let widened = (sorted[25].clamp(-9.0, 0.25), sorted[486].clamp(0.25, 9.0));
        prop_assert_eq!((range.low.si(), range.high.si()), widened);
        // It sorts to the upper end, beyond every number.
        all[at] = f64::NAN;
        sorted = all;
        sorted.sort_by(f64::total_cmp);
        let range = Range::of_samples(Ratio::of_si(0.25), &all);
        prop_assert_eq!(range.high.si(), sorted[486].clamp(0.25, 9.0));
    }

    /// The same over the whole range of doubles: a few so large that the rest lie in one place, or so near that none do.
    #[test]
    fn the_ends_are_those_of_a_sort_however_far_apart(
        all in prop::collection::vec(
            prop_oneof![prop::num::f64::NORMAL | prop::num::f64::SUBNORMAL | prop::num::f64::ZERO, 0.999..1.001f64],
            POINTS,
        ),
        scale in prop_oneof![Just(1.0), Just(1e-300), Just(1e300)],
    ) {
        let all: [f64; POINTS] = core::array::from_fn(|n| (all[n] * scale).clamp(-1e308, 1e308));
        let mut sorted = all;
        sorted.sort_by(f64::total_cmp);
        // Likely at either end shows the other end as it is.
        let high = Range::of_samples(Ratio::of_si(sorted[0]), &all).high.si();
        let low = Range::of_samples(Ratio::of_si(sorted[511]), &all).low.si();
        prop_assert_eq!((low, high), (sorted[25], sorted[486]));
    }

    #[test]
    fn a_triangle_stays_within_its_ends_and_has_their_mean(
        typ in 0.1..10.0f64,
        down in 0.0..0.99f64,
        up in 0.0..3.0f64,
    ) {
        let band = band(typ * (1.0 - down), typ, typ * (1.0 + up));
        let (a, c) = (band.min.si(), band.max.si());
        let all = samples(typ, Spread::of_band(&band), "catalogue value");
        let slack = 1e-12 * typ;
        prop_assert!(all.iter().all(|x| (a - slack..=c + slack).contains(x)));
        let mean = all.iter().sum::<f64>() / POINTS as f64;
        prop_assert!(close(mean, (a + typ + c) / 3.0, 0.005), "mean {} of {} {} {}", mean, a, typ, c);
    }
}
