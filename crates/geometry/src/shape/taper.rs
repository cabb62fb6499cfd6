//! Cones and what narrows like one. Numbers in metre.

use super::Covering;
use crate::outline::{Picture, closed, strip, taper};
use crate::surface::{Surface, larger};
use core::f64::consts::PI;

/// Side of a truncated cone between two diameters.
pub(super) fn side(d1: f64, d2: f64, height: f64) -> f64 {
    let step = (d1 - d2) / 2.0;
    PI * (d1 + d2) / 2.0 * (step * step + height * height).sqrt()
}

/// Volume of the same.
pub(super) fn body(d1: f64, d2: f64, height: f64) -> f64 {
    PI / 12.0 * height * (d1 * d1 + d1 * d2 + d2 * d2)
}

pub(super) fn frustum(d1: f64, d2: f64, height: f64, ends: Covering) -> Surface {
    Surface::of(
        side(d1, d2, height) + PI / 4.0 * (d1 * d1 + d2 * d2) * ends.counts(),
        0.0,
        Some(body(d1, d2, height)),
        larger(larger(d1, d2), height),
    )
}

pub(super) fn snail(d: f64, height: f64) -> Surface {
    Surface::of(side(d, 0.0, height), 0.0, None, larger(d, height))
}

pub(super) fn draw(base: f64, top: f64, height: f64) -> Picture {
    // A rounded base tells a cone from a triangle.
    let y = height / 2.0;
    let bulge = base / 8.0;
    let foot = (0..=24).map(|k| {
        let a = PI + PI * f64::from(k) / 24.0;
        (base / 2.0 * libm::cos(a), -y + bulge * libm::sin(a))
    });
    let mut picture = vec![closed(foot.chain([(top / 2.0, y), (-top / 2.0, y)]))];
    if top > 0.0 {
        let rim: Vec<_> = (0..=24)
            .map(|k| {
                let a = PI + PI * f64::from(k) / 24.0;
                (top / 2.0 * libm::cos(a), y + top / 8.0 * libm::sin(a))
            })
            .collect();
        picture.push(strip(&rim, base / 24.0).cut());
    }
    picture
}

pub(super) fn draw_twig(base: f64, top: f64, length: f64) -> Picture {
    let (thick, thin) = (larger(base, length / 12.0), larger(top, length / 24.0));
    let stem = taper(thick, thin, length);
    let side = |at: f64, lean: f64| {
        taper(thin, thin / 2.0, length / 3.0)
            .moved(0.0, length / 6.0)
            .turned(lean)
            .moved(0.0, at)
    };
    vec![
        stem.turned(-PI / 6.0),
        // Only what stands out of the stem, so that nothing is covered twice.
        side(0.0, PI / 4.0)
            .moved(-thick / 2.0, 0.0)
            .turned(-PI / 6.0),
        side(length / 6.0, -PI / 4.0)
            .moved(thick / 2.0, 0.0)
            .turned(-PI / 6.0),
    ]
}

/// The whorls as a spiral line cut out of a round body with a spire.
pub(super) fn draw_snail(d: f64, height: f64) -> Picture {
    let r = d / 2.0;
    let spiral: Vec<_> = (0..=90)
        .map(|k| {
            let turn = f64::from(k) / 90.0;
            let a = 5.0 * PI * turn;
            let reach = r * 0.92 * (1.0 - 0.85 * turn);
            (reach * libm::cos(a), reach * height / d * libm::sin(a))
        })
        .collect();
    vec![
        crate::outline::oval(d, height),
        strip(&spiral, d / 16.0).cut(),
        // The mouth.
        crate::outline::oblong(d * 0.35, height * 0.16).moved(r * 0.95, -height * 0.42),
    ]
}
