//! Rings: round wire, flat band, half-round band. Numbers in metre.

use crate::outline::{Picture, circle, closed, strip};
use crate::surface::{Surface, above_zero, larger, smaller};
use core::f64::consts::PI;
use quantity::{Length, Quantity};

fn with_bore(surface: Surface, bore: f64) -> Surface {
    Surface {
        bore: Some(Length::from_si(bore)),
        ..surface
    }
}

pub(super) fn torus(bore: f64, wire_d: f64) -> Surface {
    let big = bore + wire_d;
    let area = PI * PI * big * wire_d;
    // Half of the section's circle faces the axis; its centroid lies 2 r / pi nearer to it.
    let inside = 2.0 * PI * (big / 2.0 - wire_d / PI) * (PI * wire_d / 2.0);
    let volume = PI * PI / 4.0 * big * wire_d * wire_d;
    with_bore(
        Surface::of(area - inside, inside, Some(volume), big + wire_d),
        bore,
    )
}

pub(super) fn band(bore: f64, wall: f64, width: f64) -> Surface {
    let outer = bore + 2.0 * wall;
    let flat = PI / 4.0 * (outer * outer - bore * bore);
    with_bore(
        Surface::of(
            PI * outer * width + 2.0 * flat,
            PI * bore * width,
            Some(flat * width),
            larger(outer, width),
        ),
        bore,
    )
}

/// The section stands on the bore with its chord; `side` is the height of straight sides under the arc, 0 for a flat
/// segment. Pappus for the arc: its centroid lies R sin(a) / a from the circle's middle, that of the segment
/// 2/3 R sin^3(a) / (a - sin a cos a), a half the angle of the arc.
pub(super) fn half_round(bore: f64, wall: f64, width: f64) -> Surface {
    let inner = bore / 2.0;
    let half = width / 2.0;
    let side = above_zero(wall - half);
    let rise = smaller(wall, half);
    let foot = inner + side;
    let radius = (half * half + rise * rise) / (2.0 * rise);
    let down = radius - rise;
    let angle = libm::atan2(half, down);
    let (sin, cos) = (half / radius, down / radius);
    let arc = 2.0 * radius * angle;
    let arc_at = foot + radius * sin / angle - down;
    let lens = angle - sin * cos;
    let segment = radius * radius * lens;
    let segment_at = foot + 2.0 / 3.0 * radius * sin * sin * sin / lens - down;
    let straight = PI * (foot * foot - inner * inner);
    with_bore(
        Surface::of(
            2.0 * PI * arc_at * arc + 2.0 * straight,
            2.0 * PI * inner * width,
            Some(2.0 * PI * segment_at * segment + straight * width),
            larger(bore + 2.0 * wall, width),
        ),
        bore,
    )
}

pub(super) fn draw(bore: f64, wall: f64) -> Picture {
    vec![circle(bore + 2.0 * wall), circle(bore).cut()]
}

/// A band as a wide ring seen a little from above: two ovals and the near wall.
pub(super) fn draw_band(bore: f64, wall: f64, width: f64) -> Picture {
    standing(bore, wall, width, 0.0)
}

pub(super) fn draw_half_round(bore: f64, wall: f64, width: f64) -> Picture {
    standing(bore, wall, width, wall / 2.0)
}

/// A ring lying on a table: the outer wall below its mouth, bulging by `bulge`.
fn standing(bore: f64, wall: f64, width: f64, bulge: f64) -> Picture {
    const FLAT: f64 = 0.4;
    const STEPS: usize = 36;
    let outer = bore / 2.0 + wall;
    let tall = larger(width, bore / 8.0) / 2.0;
    let oval = |r: f64, y: f64, from: f64, to: f64| {
        (0..=STEPS).map(move |k| {
            let a = from + (to - from) * k as f64 / STEPS as f64;
            (r * libm::cos(a), y + FLAT * r * libm::sin(a))
        })
    };
    let body = oval(outer, tall, 0.0, PI)
        .chain([(-outer - bulge, 0.0)])
        .chain(oval(outer, -tall, PI, 2.0 * PI))
        .chain([(outer + bulge, 0.0)]);
    let edge: Vec<_> = oval(outer + bulge / 2.0, tall, PI, 2.0 * PI).collect();
    vec![
        closed(body),
        closed(oval(bore / 2.0, tall, 0.0, 2.0 * PI)).cut(),
        strip(&edge, bore / 40.0).cut(),
    ]
}
