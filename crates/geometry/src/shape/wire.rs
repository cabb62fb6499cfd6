//! What is made of wire: coils, twists, links, chains, cloth. Numbers in metre. Ends of wires are left out.

use crate::outline::{Picture, oblong, strip, wave};
use crate::surface::{Surface, above_zero, larger};
use core::f64::consts::PI;

/// Share of the surface hidden where two twisted wires touch. Common practice, no source.
const TWIST_HIDDEN: f64 = 0.2;
/// Share hidden where links touch: 2 to 5 %. Common practice, no source.
const LINK_HIDDEN: f64 = 0.035;

fn section(d: f64) -> f64 {
    PI / 4.0 * d * d
}

/// Weyl's tube formula: side pi d times the axis, volume the section times the axis, whatever the curvature, as long as
/// the wire does not cut itself. Of the half facing the coil's axis, curvature x d / pi is missing.
pub(super) fn coil(bore: f64, d: f64, pitch: f64, length: f64) -> Surface {
    let radius = (bore + d) / 2.0;
    let rise = pitch / (2.0 * PI);
    let per_turn = 2.0 * PI * (radius * radius + rise * rise).sqrt();
    let wire = per_turn * (length / pitch);
    let side = PI * d * wire;
    let curvature = radius / (radius * radius + rise * rise);
    let inside = side * (0.5 - curvature * d / (2.0 * PI));
    Surface::of(
        side - inside,
        inside,
        Some(section(d) * wire),
        larger(bore + 2.0 * d, length),
    )
}

pub(super) fn twisted_pair(d: f64, pitch: f64, length: f64) -> Surface {
    let turn = PI * d / pitch;
    let wires = 2.0 * length * (1.0 + turn * turn).sqrt();
    Surface::of(
        PI * d * wires * (1.0 - TWIST_HIDDEN),
        0.0,
        Some(section(d) * wires),
        larger(2.0 * d, length),
    )
}

/// Length of the axis of an oval link: two straights and a full circle; outer sizes given.
fn link_axis(length: f64, width: f64, d: f64) -> f64 {
    let (a, b) = (above_zero(length - d), above_zero(width - d));
    let (long, short) = if a < b { (b, a) } else { (a, b) };
    2.0 * (long - short) + PI * short
}

pub(super) fn link(length: f64, width: f64, d: f64) -> Surface {
    let axis = link_axis(length, width, d);
    Surface::of(
        PI * d * axis,
        0.0,
        Some(section(d) * axis),
        larger(length, width),
    )
}

pub(super) fn chain(length: f64, link_length: f64, link_width: f64, d: f64) -> Surface {
    let inner = above_zero(link_length - 2.0 * d);
    // No inner length, no chain: one link then, rather than a number without bound.
    let links = if inner > 0.0 { length / inner } else { 1.0 };
    let axis = link_axis(link_length, link_width, d) * links;
    Surface::of(
        PI * d * axis * (1.0 - LINK_HIDDEN),
        0.0,
        Some(section(d) * axis),
        larger(length, link_length),
    )
}

pub(super) fn mesh(length: f64, width: f64, d: f64, pitch: f64, layers: u32) -> Surface {
    let wires = 2.0 / pitch * length * width * f64::from(layers);
    Surface::of(
        PI * d * wires,
        0.0,
        Some(section(d) * wires),
        larger(length, width),
    )
}

pub(super) fn draw_coil(bore: f64, d: f64, pitch: f64, length: f64) -> Picture {
    let turns = libm::round(length / pitch).clamp(3.0, 7.0);
    let tall = bore + d;
    let long = larger(length, tall);
    let thick = larger(d, long / 22.0);
    vec![strip(&wave(long, tall, turns, -PI / 2.0), thick)]
}

pub(super) fn draw_twisted_pair(d: f64, pitch: f64, length: f64) -> Picture {
    let turns = libm::round(length / pitch).clamp(2.0, 4.0) / 2.0;
    let thick = larger(d, length / 12.0);
    let one = |phase| strip(&wave(length, thick * 1.6, turns, phase), thick).turned(PI / 4.0);
    vec![one(0.0), one(PI)]
}

/// The axis of a link as a line back to its start.
fn oval_line(length: f64, width: f64, d: f64) -> Vec<(f64, f64)> {
    let (a, b) = (above_zero(length - d), above_zero(width - d));
    let (run, r) = (above_zero(a - b) / 2.0, b / 2.0);
    let side = |from: f64, shift: f64| {
        (0..=24).map(move |k| {
            let angle = from + PI * f64::from(k) / 24.0;
            (shift + r * libm::cos(angle), r * libm::sin(angle))
        })
    };
    side(PI / 2.0, -run)
        .chain(side(-PI / 2.0, run))
        .chain([(-run, r)])
        .collect()
}

pub(super) fn draw_link(length: f64, width: f64, d: f64) -> Picture {
    let thick = larger(d, length / 12.0);
    vec![strip(&oval_line(length, width, thick), thick)]
}

/// Three links, the middle one seen on edge.
pub(super) fn draw_chain(length: f64, width: f64, d: f64) -> Picture {
    let thick = larger(d, length / 8.0);
    let step = length - 1.5 * thick;
    let side = |x: f64| {
        strip(&oval_line(length, width, thick), thick)
            .moved(x, 0.0)
            .turned(PI / 4.0)
    };
    vec![
        side(-step),
        oblong(length, thick).turned(PI / 4.0),
        side(step),
    ]
}

pub(super) fn draw_mesh(length: f64, width: f64) -> Picture {
    let step = larger(length, width) / 6.0;
    let mut picture = Vec::new();
    let lines = |along: f64| {
        let n = libm::floor(along / step).clamp(2.0, 6.0);
        (0..n as u32).map(move |k| along * ((f64::from(k) + 0.5) / n - 0.5))
    };
    for y in lines(width) {
        picture.push(oblong(length, step / 3.0).moved(0.0, y));
    }
    for x in lines(length) {
        picture.push(oblong(step / 3.0, width).moved(x, 0.0));
    }
    picture
}
