//! Balls and shells cut from balls. Numbers in metre.

use crate::outline::{Picture, arc, circle, closed, strip};
use crate::surface::{Surface, above_zero, larger};
use core::f64::consts::PI;

pub(super) fn sphere(d: f64) -> Surface {
    Surface::of(PI * d * d, 0.0, Some(PI / 6.0 * d * d * d), d)
}

/// Curved face of a spherical cap over an opening of radius r.
fn face(r: f64, h: f64) -> f64 {
    PI * (r * r + h * h)
}

pub(super) fn cap(outer_d: f64, inner_d: f64, height: f64) -> Surface {
    let (outer, inner) = (outer_d / 2.0, inner_d / 2.0);
    let hollow = above_zero(height - (outer - inner));
    let volume = |r: f64, h: f64| PI * h / 6.0 * (3.0 * r * r + h * h);
    Surface::of(
        face(outer, height) + PI * (outer * outer - inner * inner),
        face(inner, hollow),
        Some(volume(outer, height) - volume(inner, hollow)),
        larger(outer_d, height),
    )
}

pub(super) fn dome(opening_d: f64, height: f64) -> Surface {
    let one = face(opening_d / 2.0, height);
    Surface::of(one, one, None, larger(opening_d, height))
}

/// From outside, with rows of scales and a stalk: an acorn's cap.
pub(super) fn draw_cap(outer_d: f64, height: f64) -> Picture {
    let r = outer_d / 2.0;
    let low = -height / 2.0;
    let mut picture = vec![
        arc(r, height, 0.0, PI).moved(0.0, low),
        closed([
            (-outer_d / 24.0, 0.0),
            (outer_d / 24.0, 0.0),
            (outer_d / 14.0, outer_d / 6.0),
            (-outer_d / 40.0, outer_d / 6.0),
        ])
        .moved(0.0, -low),
    ];
    for row in 1..4 {
        let up = f64::from(row) * 0.26 - 0.08;
        let across = 0.86 * r * (1.0 - up * up).sqrt();
        let line: Vec<_> = (0..=24)
            .map(|k| {
                let along = f64::from(k) / 12.0 - 1.0;
                let dip = libm::fabs(libm::sin(2.0 * PI * along)) * 0.08;
                (across * along, low + height * (up - dip))
            })
            .collect();
        picture.push(strip(&line, outer_d / 30.0).cut());
    }
    picture
}

pub(super) fn draw_dome(opening_d: f64, height: f64) -> Picture {
    let thin = opening_d / 14.0;
    let r = opening_d / 2.0;
    vec![
        arc(r, height, 0.0, PI).moved(0.0, -height / 2.0),
        arc(r - thin, above_zero(height - thin), 0.0, PI)
            .cut()
            .moved(0.0, -height / 2.0),
    ]
}

pub(super) fn draw_sphere(d: f64) -> Picture {
    // A light spot tells a ball from a disc.
    let shine = arc(d * 0.36, d * 0.36, PI * 0.55, PI * 0.95);
    let line: Vec<_> = shine
        .points
        .iter()
        .map(|p| (quantity::Quantity::si(p.x), quantity::Quantity::si(p.y)))
        .collect();
    vec![circle(d), strip(&line, d / 16.0).cut()]
}
