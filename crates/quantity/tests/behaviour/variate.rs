//! The fixed sample points.

use crate::support::config;
use proptest::prelude::*;
use quantity::{POINTS, Variate};

fn ranks(name: &str) -> Vec<usize> {
    let variate = Variate::of(name);
    (0..POINTS)
        .map(|point| (variate.uniform(point) * POINTS as f64 - 0.5) as usize)
        .collect()
}

/// Source: ranks.py beside this file, a second implementation held against published values of its parts.
const FROZEN: &[(&str, [usize; 8])] = &[
    ("pieces/p1/extent", [309, 30, 450, 355, 74, 127, 490, 137]),
    (
        "baths/b1/efficiency",
        [206, 159, 450, 190, 239, 21, 216, 32],
    ),
    ("", [389, 226, 420, 357, 245, 468, 446, 470]),
];

#[test]
fn the_same_name_always_gives_the_same_ranks() {
    for (name, want) in FROZEN {
        assert_eq!(ranks(name)[..8], want[..], "case {name:?}");
    }
}

#[test]
fn uniform_values_lie_in_the_middle_of_their_step() {
    let variate = Variate::of("pieces/p1/extent");
    assert_eq!(variate.uniform(0), 309.5 / 512.0);
    assert_eq!(
        variate.uniform(POINTS),
        variate.uniform(0),
        "points wrap round"
    );
}

#[test]
fn normal_values_have_mean_zero_and_deviation_one() {
    let variate = Variate::of("pieces/p1/extent");
    let all: Vec<f64> = (0..POINTS).map(|point| variate.normal(point)).collect();
    let mean = all.iter().sum::<f64>() / POINTS as f64;
    let square = all.iter().map(|z| z * z).sum::<f64>() / POINTS as f64;
    assert!(mean.abs() < 1e-12, "mean {mean}");
    // Evenly spaced quantiles leave out the far tails: 0.4 % at 512 points.
    assert!((square - 1.0).abs() < 0.006, "mean square {square}");
}

proptest! {
    #![proptest_config(config(200))]

    #[test]
    fn every_name_gives_a_permutation(name in any::<String>()) {
        let mut all = ranks(&name);
        all.sort_unstable();
        prop_assert_eq!(all, (0..POINTS).collect::<Vec<_>>());
    }
}

#[test]
fn a_name_gives_the_same_ranks_after_more_others_than_are_kept() {
    let first = ranks("first");
    for n in 0..600 {
        let name = format!("other {n}");
        assert_eq!(ranks(&name), ranks(&name), "{name}");
        assert_ne!(ranks(&name), first, "{name}");
    }
    assert_eq!(ranks("first"), first);
    for (name, want) in FROZEN {
        assert_eq!(ranks(name)[..8], want[..], "case {name:?}");
    }
}
