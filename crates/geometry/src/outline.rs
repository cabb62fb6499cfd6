//! Outline points of a shape, for whoever draws it small.
//!
//! Everything is a closed outline, lines included (a line is a narrow strip), so that filling by the even-odd rule gives the
//! picture: what is covered once is filled, a hole or a second covering is not.

use core::f64::consts::PI;
use quantity::{Length, Quantity};

/// A point of an outline; x to the right, y up, the shape's middle near the origin.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Point {
    /// Right of the middle.
    pub x: Length,
    /// Above the middle.
    pub y: Length,
}

/// A closed outline, and whether it bounds a hole.
#[derive(Clone, Debug, PartialEq)]
pub struct Ring {
    /// The points in order; the last joins the first.
    pub points: Vec<Point>,
    /// An opening in what the rings before it enclose.
    pub hole: bool,
}

/// A picture being drawn.
pub(crate) type Picture = Vec<Ring>;

const STEPS: usize = 72;

impl Ring {
    /// The same outline as a hole.
    pub(crate) fn cut(mut self) -> Self {
        self.hole = true;
        self
    }

    /// The same outline elsewhere.
    pub(crate) fn moved(mut self, x: f64, y: f64) -> Self {
        for p in &mut self.points {
            *p = point((p.x.si() + x, p.y.si() + y));
        }
        self
    }

    /// The same outline turned about the middle, counter-clockwise.
    pub(crate) fn turned(mut self, angle: f64) -> Self {
        let (s, c) = (libm::sin(angle), libm::cos(angle));
        for p in &mut self.points {
            let (x, y) = (p.x.si(), p.y.si());
            *p = point((x * c - y * s, x * s + y * c));
        }
        self
    }
}

fn point((x, y): (f64, f64)) -> Point {
    Point {
        x: Length::from_si(x),
        y: Length::from_si(y),
    }
}

/// A closed outline through corners.
pub(crate) fn closed(corners: impl IntoIterator<Item = (f64, f64)>) -> Ring {
    Ring {
        points: corners.into_iter().map(point).collect(),
        hole: false,
    }
}

/// A circle.
pub(crate) fn circle(diameter: f64) -> Ring {
    oval(diameter, diameter)
}

/// An ellipse of this width and height.
pub(crate) fn oval(width: f64, height: f64) -> Ring {
    arc(width / 2.0, height / 2.0, 0.0, 2.0 * PI)
}

/// Part of an ellipse, counter-clockwise from one angle to another.
pub(crate) fn arc(half_width: f64, half_height: f64, from: f64, to: f64) -> Ring {
    closed((0..=STEPS).map(|k| {
        let angle = from + (to - from) * k as f64 / STEPS as f64;
        (
            half_width * libm::cos(angle),
            half_height * libm::sin(angle),
        )
    }))
}

/// A rectangle about the origin.
pub(crate) fn oblong(width: f64, height: f64) -> Ring {
    let (x, y) = (width / 2.0, height / 2.0);
    closed([(-x, -y), (x, -y), (x, y), (-x, y)])
}

/// Straight sides, wide below and narrow above, about the origin.
pub(crate) fn taper(base: f64, top: f64, height: f64) -> Ring {
    let y = height / 2.0;
    closed([
        (-base / 2.0, -y),
        (base / 2.0, -y),
        (top / 2.0, y),
        (-top / 2.0, y),
    ])
}

/// A line of this thickness through points, as a narrow closed strip. Fewer than two points: nothing.
pub(crate) fn strip(line: &[(f64, f64)], thickness: f64) -> Ring {
    let last = line.len().saturating_sub(1);
    let side = |sign: f64| {
        line.iter().enumerate().map(move |(k, &(x, y))| {
            let before = line[k.saturating_sub(1)];
            let after = line[if k < last { k + 1 } else { k }];
            let (dx, dy) = (after.0 - before.0, after.1 - before.1);
            let long = (dx * dx + dy * dy).sqrt();
            let half = sign * thickness / 2.0 / if long > 0.0 { long } else { 1.0 };
            (x - dy * half, y + dx * half)
        })
    };
    closed(side(1.0).chain(side(-1.0).rev()))
}

/// A wave along x from one end to the other: `turns` full turns, starting at `phase`.
pub(crate) fn wave(length: f64, height: f64, turns: f64, phase: f64) -> Vec<(f64, f64)> {
    let steps = 2 * STEPS;
    (0..=steps)
        .map(|k| {
            let along = k as f64 / steps as f64;
            let angle = 2.0 * PI * turns * along + phase;
            (length * (along - 0.5), height / 2.0 * libm::sin(angle))
        })
        .collect()
}
