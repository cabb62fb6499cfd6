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
    p.path("axis", format!("M4 46H{}", WIDTH - 4.0));
    p.rect("takes", at(least), 30.0, at(most) - at(least), 16.0);
    if let Some(bound) = bound {
        let mut x = at(bound);
        let mut d = format!("M{x:.1} 24V46");
        while x < WIDTH - 10.0 {
            d.push_str(&format!("M{x:.1} 46l8 -16"));
            x += 8.0;
        }
        p.path("trees", d);
    }
    for (sign, i) in marks {
        p.text("sign", at(*i), 22.0, *sign);
        p.path("axis", format!("M{:.1} 26V46", at(*i)));
    }
    p.show(50.0, None)
}
