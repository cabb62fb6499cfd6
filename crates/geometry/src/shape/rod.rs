//! Rods, tubes and holes. Numbers in metre.

use super::Covering;
use crate::outline::{Picture, closed, oblong, oval};
use crate::surface::{Surface, larger};
use core::f64::consts::PI;
use quantity::{Length, Quantity};

pub(super) fn rod(d: f64, length: f64, ends: Covering) -> Surface {
    let end = PI / 4.0 * d * d;
    Surface::of(
        PI * d * length + 2.0 * end * ends.counts(),
        0.0,
        Some(end * length),
        larger(d, length),
    )
}

pub(super) fn tube(bore: f64, wall: f64, length: f64) -> Surface {
    let outer = bore + 2.0 * wall;
    let end = PI / 4.0 * (outer * outer - bore * bore);
    Surface {
        bore: Some(Length::from_si(bore)),
        ..Surface::of(
            PI * outer * length + 2.0 * end,
            PI * bore * length,
            Some(end * length),
            larger(outer, length),
        )
    }
}

pub(super) fn hole(d: f64, depth: f64) -> Surface {
    Surface::of(0.0, PI * d * depth, None, larger(d, depth))
}

/// Lying aslant, so that it fills a square.
const ASLANT: f64 = PI / 4.0;

pub(super) fn draw_rod(d: f64, length: f64) -> Picture {
    let thick = larger(d, length / 16.0);
    vec![
        oblong(length, thick).turned(ASLANT),
        oval(thick * 0.5, thick * 0.7)
            .cut()
            .moved(length / 2.0 - thick * 0.3, 0.0)
            .turned(ASLANT),
    ]
}

pub(super) fn draw_tube(bore: f64, wall: f64, length: f64) -> Picture {
    let thick = larger(bore + 2.0 * wall, length / 5.0);
    let end = larger(length, thick) / 2.0;
    let mouth = |wide: f64| oval(wide * 0.5, wide).moved(end, 0.0);
    let body = closed(
        (0..=24)
            .map(|k| {
                let a = PI / 2.0 + PI * f64::from(k) / 24.0;
                (
                    -end + thick * 0.25 * libm::cos(a),
                    thick / 2.0 * libm::sin(a),
                )
            })
            .chain((0..=24).map(|k| {
                let a = -PI / 2.0 + PI * f64::from(k) / 24.0;
                (
                    end + thick * 0.25 * libm::cos(a),
                    thick / 2.0 * libm::sin(a),
                )
            })),
    );
    vec![body.turned(ASLANT), mouth(thick * 0.7).cut().turned(ASLANT)]
}

/// A block with a hole in it, cut open.
pub(super) fn draw_hole(d: f64, depth: f64) -> Picture {
    let (wide, tall) = (d * 3.0, larger(depth * 1.3, d * 1.5));
    let deep = if depth < tall { depth } else { tall };
    vec![
        oblong(wide, tall),
        closed([
            (-d / 2.0, tall / 2.0),
            (d / 2.0, tall / 2.0),
            (d / 2.0, tall / 2.0 - deep),
            (-d / 2.0, tall / 2.0 - deep),
        ])
        .cut(),
    ]
}
