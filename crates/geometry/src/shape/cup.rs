//! Cups and bezels. Numbers in metre.

use super::Covering;
use super::taper::{body, side};
use crate::outline::{Picture, closed};
use crate::surface::{Surface, above_zero, larger};
use core::f64::consts::PI;

/// Outer diameters at mouth and bottom; the wall measured level and the bottom as thick. The hollow starts one wall above
/// the bottom with the diameter that the sloping side has there. A wall thicker than its cup leaves no inside.
pub(super) fn cup(opening: f64, base: f64, height: f64, wall: f64, inside: Covering) -> Surface {
    let depth = above_zero(height - wall);
    let mouth = above_zero(opening - 2.0 * wall);
    let floor = above_zero(base + (opening - base) * (wall / height) - 2.0 * wall);
    let disc = |d: f64| PI / 4.0 * d * d;
    Surface::of(
        side(opening, base, height) + disc(base) + disc(opening) - disc(mouth),
        (side(mouth, floor, depth) + disc(floor)) * inside.counts(),
        Some(body(opening, base, height) - body(mouth, floor, depth)),
        larger(larger(opening, base), height),
    )
}

/// Cut open from the side.
pub(super) fn draw(opening: f64, base: f64, height: f64, wall: f64) -> Picture {
    let thick = larger(wall, larger(opening, height) / 14.0);
    let y = height / 2.0;
    vec![
        closed([
            (-base / 2.0, -y),
            (base / 2.0, -y),
            (opening / 2.0, y),
            (-opening / 2.0, y),
        ]),
        closed([
            (-base / 2.0 + thick, -y + thick),
            (base / 2.0 - thick, -y + thick),
            (opening / 2.0 - thick, y),
            (-opening / 2.0 + thick, y),
        ])
        .cut(),
    ]
}
