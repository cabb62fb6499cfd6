//! Crystals. Numbers in metre.

use super::Covering;
use crate::outline::{Picture, closed, strip};
use crate::surface::{Surface, larger};

/// Edge s = across flats / sqrt 3. Prism 6 s h; six triangles s/2 x sqrt(p^2 + 3/4 s^2); base 3 sqrt 3 / 2 s^2.
pub(super) fn crystal(flats: f64, height: f64, point: f64, base: Covering) -> Surface {
    let root3 = 3.0_f64.sqrt();
    let s = flats / root3;
    let hexagon = 1.5 * root3 * s * s;
    Surface::of(
        6.0 * s * height
            + 3.0 * s * (point * point + 0.75 * s * s).sqrt()
            + hexagon * base.counts(),
        0.0,
        Some(hexagon * (height + point / 3.0)),
        larger(height + point, 2.0 * s),
    )
}

/// From the side, the edges as light lines.
pub(super) fn draw(flats: f64, height: f64, point: f64) -> Picture {
    let x = flats / 3.0_f64.sqrt();
    let (low, high) = (-(height + point) / 2.0, (height - point) / 2.0);
    let tip = high + point;
    let line = (height + point) / 40.0;
    let edge = |sign: f64| {
        strip(
            &[
                (sign * x / 2.0, low + line),
                (sign * x / 2.0, high),
                (sign * x * 0.06, tip - point * 0.15),
            ],
            line,
        )
        .cut()
    };
    vec![
        closed([(-x, low), (x, low), (x, high), (0.0, tip), (-x, high)]),
        edge(1.0),
        edge(-1.0),
    ]
}
