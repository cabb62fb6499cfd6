//! Ellipsoids and halves of them. Numbers in metre, sizes over all.

use super::Covering;
use crate::carlson::rg;
use crate::outline::{Picture, arc, closed, oval, strip};
use crate::surface::{Surface, larger};
use core::f64::consts::PI;

/// Surface from the three axes: with a, b, c their halves 4 pi a b c R_G(1/a^2, 1/b^2, 1/c^2) (DLMF 19.33.1), which is
/// 4 pi R_G(a^2 b^2, a^2 c^2, b^2 c^2) because R_G grows with the root of its scale.
// By itself, so that each size is read as it was written: two read at once would have to wait for both to be stored.
#[inline(never)]
fn skin(length: f64, width: f64, height: f64) -> f64 {
    let (a, b, c) = (length / 2.0, width / 2.0, height / 2.0);
    let (ab, ac, bc) = (a * b, a * c, b * c);
    4.0 * PI * rg(ab * ab, ac * ac, bc * bc)
}

pub(super) fn whole(length: f64, width: f64, height: f64) -> Surface {
    Surface::of(
        skin(length, width, height),
        0.0,
        Some(PI / 6.0 * length * width * height),
        larger(larger(length, width), height),
    )
}

pub(super) fn half(length: f64, width: f64, height: f64, base: Covering) -> Surface {
    Surface::of(
        skin(length, width, 2.0 * height) / 2.0 + PI / 4.0 * length * width * base.counts(),
        0.0,
        Some(PI / 6.0 * length * width * height),
        larger(larger(length, width), height),
    )
}

pub(super) fn shell(length: f64, width: f64, height: f64) -> Surface {
    let one = skin(length, width, 2.0 * height) / 2.0;
    Surface::of(one, one, None, larger(larger(length, width), height))
}

/// A pod with its seam.
pub(super) fn draw_pod(length: f64, width: f64) -> Picture {
    let seam: Vec<_> = (-12..=12)
        .map(|k| {
            let along = f64::from(k) / 12.0;
            (length * 0.42 * along, width * 0.16 * (1.0 - along * along))
        })
        .collect();
    vec![
        oval(length, width),
        strip(&seam, larger(length, width) / 24.0).cut(),
    ]
}

/// A pine cone: its scales as rows of cut arcs.
pub(super) fn draw_seed_head(d: f64, height: f64) -> Picture {
    let mut picture = vec![oval(d, height)];
    for row in 1..5 {
        let y = height * (0.5 - f64::from(row) / 5.0);
        let across = d * (1.0 - 4.0 * y * y / (height * height)).sqrt();
        let line: Vec<_> = (0..=18)
            .map(|k| {
                let along = f64::from(k) / 18.0;
                let dip = libm::fabs(libm::sin(3.0 * PI * along));
                ((along - 0.5) * across * 0.86, y - dip * height * 0.07)
            })
            .collect();
        picture.push(strip(&line, height / 26.0).cut());
    }
    picture
}

pub(super) fn draw_half(length: f64, height: f64) -> Picture {
    vec![
        arc(length / 2.0, height, 0.0, PI).moved(0.0, -height / 2.0),
        // A light line tells a filled dome from a shell.
        closed([
            (-length * 0.3, -height * 0.3),
            (length * 0.3, -height * 0.3),
            (length * 0.3, -height * 0.22),
            (-length * 0.3, -height * 0.22),
        ])
        .cut(),
    ]
}

/// A fan with ribs.
pub(super) fn draw_shell(length: f64, width: f64) -> Picture {
    let (r, h) = (length / 2.0, width);
    let foot = -h / 2.0;
    let rim = (0..=48).map(|k| {
        let along = f64::from(k) / 48.0;
        let a = PI * along;
        let wave = 1.0 - 0.05 * (0.5 - 0.5 * libm::cos(14.0 * PI * along));
        (
            r * wave * libm::cos(a),
            foot + h * 0.3 + h * 0.7 * wave * libm::sin(a),
        )
    });
    let mut picture = vec![closed(rim.chain([(-r * 0.15, foot), (r * 0.15, foot)]))];
    for k in 1..7 {
        let a = PI * f64::from(k) / 7.0;
        picture.push(
            strip(
                &[
                    (r * 0.2 * libm::cos(a), foot + h * 0.22),
                    (
                        r * 0.8 * libm::cos(a),
                        foot + h * 0.3 + h * 0.56 * libm::sin(a),
                    ),
                ],
                length / 30.0,
            )
            .cut(),
        );
    }
    picture
}
