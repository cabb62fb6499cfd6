//! Sheets, discs and boxes. Numbers in metre.

use crate::outline::{Picture, circle, closed, oblong, oval, strip};
use crate::surface::{Surface, above_zero, larger};
use core::f64::consts::PI;

pub(super) fn cuboid(a: f64, b: f64, c: f64) -> Surface {
    Surface::of(
        2.0 * (a * b + b * c + c * a),
        0.0,
        Some(a * b * c),
        larger(larger(a, b), c),
    )
}

pub(super) fn pierced(a: f64, b: f64, t: f64, hole_d: f64, holes: u32) -> Surface {
    let n = f64::from(holes);
    let face = above_zero(a * b - n * PI / 4.0 * hole_d * hole_d);
    Surface::of(
        2.0 * face + 2.0 * (a + b) * t,
        n * PI * hole_d * t,
        Some(face * t),
        larger(larger(a, b), t),
    )
}

pub(super) fn disc(d: f64, t: f64) -> Surface {
    let face = PI / 4.0 * d * d;
    Surface::of(2.0 * face + PI * d * t, 0.0, Some(face * t), larger(d, t))
}

pub(super) fn draw_sheet(length: f64, width: f64) -> Picture {
    vec![oblong(length, width)]
}

/// As many holes as there are, in rows, at most twelve; their size is for the eye.
pub(super) fn draw_pierced(length: f64, width: f64, hole_d: f64, holes: u32) -> Picture {
    let n = holes.clamp(1, 12);
    let across = match n {
        1 => 1,
        2..=4 => 2,
        5..=9 => 3,
        _ => 4,
    };
    let down = n.div_ceil(across);
    let (step_x, step_y) = (length / f64::from(across), width / f64::from(down));
    let room = 0.7 * if step_x < step_y { step_x } else { step_y };
    let least = larger(hole_d, room / 2.0);
    let d = if least < room { least } else { room };
    let mut picture = vec![oblong(length, width)];
    for k in 0..n {
        let (col, row) = (f64::from(k % across), f64::from(k / across));
        picture.push(circle(d).cut().moved(
            (col + 0.5) * step_x - length / 2.0,
            (row + 0.5) * step_y - width / 2.0,
        ));
    }
    picture
}

/// A disc seen a little from above: its face and the near edge.
pub(super) fn draw_disc(d: f64, t: f64) -> Picture {
    let (r, flat) = (d / 2.0, 0.5);
    let tall = larger(t, d / 10.0);
    let half = |y: f64, from: f64| {
        (0..=24).map(move |k| {
            let a = from + PI * f64::from(k) / 24.0;
            (r * libm::cos(a), y + flat * r * libm::sin(a))
        })
    };
    let rim: Vec<_> = half(tall / 2.0, PI).collect();
    vec![
        closed(half(tall / 2.0, 0.0).chain(half(-tall / 2.0, PI))),
        strip(&rim, d / 40.0).cut(),
        oval(d * 0.1, d * 0.05).cut().moved(0.0, tall / 2.0),
    ]
}

/// A box seen from a corner: front, top and side with gaps at the edges.
pub(super) fn draw_block(length: f64, width: f64, height: f64) -> Picture {
    let (x, y) = (length / 2.0, height / 2.0);
    let (dx, dy) = (width * 0.4, width * 0.3);
    let gap = (length + height) / 50.0;
    let face = |corners: [(f64, f64); 4]| closed(corners).moved(-dx / 2.0, -dy / 2.0);
    vec![
        face([(-x, -y), (x, -y), (x, y), (-x, y)]),
        face([
            (-x + gap, y + gap),
            (x, y + gap),
            (x + dx, y + dy + gap),
            (-x + dx + gap, y + dy + gap),
        ]),
        face([
            (x + gap, -y),
            (x + dx + gap, -y + dy),
            (x + dx + gap, y + dy),
            (x + gap, y),
        ]),
    ]
}
