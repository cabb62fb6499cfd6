//! Outline points of a shape, for whoever draws it.

use crate::shape::Shape;
use core::f64::consts::PI;
use quantity::{Length, Quantity};

/// A point of an outline; x to the right, y up, the shape's middle at the origin.
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

const STEPS: usize = 72;

fn circle(diameter: f64, hole: bool) -> Ring {
    arc(diameter / 2.0, diameter / 2.0, 2.0 * PI, hole)
}

/// Part of an ellipse from the right, counter-clockwise, over `sweep`.
fn arc(half_width: f64, height: f64, sweep: f64, hole: bool) -> Ring {
    let points = (0..=STEPS)
        .map(|k| {
            let angle = sweep * k as f64 / STEPS as f64;
            Point {
                x: Length::from_si(half_width * libm::cos(angle)),
                y: Length::from_si(height * libm::sin(angle)),
            }
        })
        .collect();
    Ring { points, hole }
}

impl Shape {
    /// The shape as seen from its most telling side: rings along the axis, a cap from the side.
    pub fn outline(&self) -> Vec<Ring> {
        match *self {
            Shape::Torus { bore, wire_d } => {
                vec![
                    circle(bore.si() + 2.0 * wire_d.si(), false),
                    circle(bore.si(), true),
                ]
            }
            Shape::Band { bore, wall, .. } => {
                vec![
                    circle(bore.si() + 2.0 * wall.si(), false),
                    circle(bore.si(), true),
                ]
            }
            Shape::Cap {
                outer_d, height, ..
            } => vec![arc(outer_d.si() / 2.0, height.si(), PI, false)],
        }
    }
}
