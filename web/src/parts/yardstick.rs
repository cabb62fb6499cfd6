//! Something everybody knows, drawn beside a figure at the same scale.

use super::picture::{Picture, larger};
use crate::words::{YARDSTICKS, number};
use quantity::Thickness;

/// Where the yardsticks stand, and their words beside them.
const BAR: f64 = 180.0;
/// Height of the words of one: its name, its size.
const WORDS: f64 = 38.0;

/// The yardstick nearest in size, so that both can be seen.
fn nearest(size: f64) -> usize {
    let far = |n: usize| unlikeness(YARDSTICKS[n].1, size);
    (1..YARDSTICKS.len()).fold(0, |best, n| if far(n) < far(best) { n } else { best })
}

/// How unlike two sizes are, without a logarithm: the larger over the smaller.
fn unlikeness(a: f64, b: f64) -> f64 {
    if a > b { a / b } else { b / a }
}

/// The yardsticks for what is `tallest` micrometres high and mostly about `usual`: the nearest, and the next larger one
/// where that shrinks the drawing by a third at most.
pub fn beside(usual: f64, tallest: f64) -> Vec<(&'static str, f64)> {
    let near = nearest(usual);
    let mut all = vec![YARDSTICKS[near]];
    if let Some(next) = YARDSTICKS.get(near + 1)
        && next.1 <= 1.5 * larger(tallest, YARDSTICKS[near].1)
    {
        all.push(*next);
    }
    all
}

/// Height above their base that the words of so many need.
pub fn room(sticks: usize) -> f64 {
    WORDS * sticks as f64 + 8.0
}

/// Draws them upwards from `base` at `scale` units a micrometre.
pub fn draw(picture: &mut Picture, sticks: &[(&'static str, f64)], base: f64, scale: f64) {
    let mut lowest = base + 6.0;
    for (n, (name, size)) in sticks.iter().enumerate() {
        let x = BAR + 8.0 * n as f64;
        let top = base - size * scale;
        picture.path(
            "yard",
            format!("M{:.1} {top:.1}h10m-5 0V{base:.1}m-5 0h10", x - 5.0),
        );
        // Words of the taller one stand above those of the lower one.
        let y = if top + 14.0 > lowest - WORDS {
            lowest - WORDS
        } else {
            top + 14.0
        };
        lowest = y;
        picture.text("", BAR + 18.0, y, (*name).to_owned());
        picture.text(
            "",
            BAR + 18.0,
            y + 17.0,
            number::thickness_plain(Thickness::um(*size)),
        );
    }
}

/// How they are said.
pub fn said(sticks: &[(&'static str, f64)]) -> String {
    sticks
        .iter()
        .map(|(name, size)| format!("{name}: {}", number::thickness_plain(Thickness::um(*size))))
        .collect::<Vec<_>>()
        .join("; ")
}
