//! Where the densities lie in what the solution takes.

use super::picture::{Picture, WIDTH, larger};
use quantity::{CurrentDensity, Quantity};
use yew::prelude::*;

/// A density with its sign.
pub type Mark = (&'static str, CurrentDensity);

/// The drawing: the band taken, hatched above the bound where metal grows trees, a sign for each density. The words beside
/// it say the same.
pub fn drawing(
    least: CurrentDensity,
    most: CurrentDensity,
    bound: Option<CurrentDensity>,
    marks: &[Mark],
) -> Html {
    let end = marks.iter().fold(
        larger(most.si(), bound.map_or(0.0, Quantity::si)),
        |a, m| larger(a, m.1.si()),
    );
    let at = |i: CurrentDensity| 4.0 + (WIDTH - 8.0) * i.si() / (1.08 * end);
    let mut p = Picture::default();
    p.path("axis", format!("M4 70H{}", WIDTH - 4.0));
    p.rect("takes", at(least), 54.0, at(most) - at(least), 16.0);
    if let Some(bound) = bound {
        let mut x = at(bound);
        let mut d = format!("M{x:.1} 48V70");
        while x < WIDTH - 10.0 {
            d.push_str(&format!("M{x:.1} 70l8 -16"));
            x += 8.0;
        }
        p.path("trees", d);
    }
    // A sign too near to an earlier one stands above it.
    for (n, (sign, i)) in marks.iter().enumerate() {
        let x = at(*i);
        let near = marks[..n]
            .iter()
            .filter(|m| (at(m.1) - x).abs() < 16.0)
            .count();
        let y = 46.0 - 16.0 * near as f64;
        p.text("sign", x, y, (*sign).to_owned());
        p.path("axis", format!("M{x:.1} {:.1}V70", y + 2.0));
    }
    p.show(74.0, None)
}
