//! Leaves, petals and feathers. Numbers in metre.

use crate::outline::{Picture, closed, strip};
use crate::source::{Source, Sourced};
use crate::surface::{Surface, larger};
use core::f64::consts::PI;
use quantity::{Band, Quantity, Ratio};
use serde::Serialize;

/// The form of a leaf or petal: how much of length times width it fills.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum LeafForm {
    /// Narrow, widest below the middle: willow.
    Lanceolate,
    /// Oval, pointed at both ends: beech, laurel.
    #[default]
    Elliptic,
    /// Nearly a circle; many petals.
    Round,
    /// Cut into lobes: maple, oak.
    Lobed,
    /// Divided to the midrib: fern frond.
    Fern,
    /// A fan: ginkgo.
    Fan,
    /// Exactly two arcs of one circle, as drawn with compasses.
    Lens,
}

impl LeafForm {
    /// The words for them in a Job, in the order of [`LeafForm::ALL`].
    pub const WORDS: &'static [&'static str] = &[
        "lanceolate",
        "elliptic",
        "round",
        "lobed",
        "fern",
        "fan",
        "lens",
    ];
    /// Every form.
    pub const ALL: &'static [LeafForm] = &[
        LeafForm::Lanceolate,
        LeafForm::Elliptic,
        LeafForm::Round,
        LeafForm::Lobed,
        LeafForm::Fern,
        LeafForm::Fan,
        LeafForm::Lens,
    ];

    /// The form of a word.
    pub fn of_word(word: &str) -> Option<Self> {
        let at = Self::WORDS.iter().position(|w| *w == word)?;
        Self::ALL.get(at).copied()
    }

    /// One side over length times width, plain number: lowest, typical, highest. None for the lens, whose share follows from
    /// its two sizes. Where practice gives only a band, the typical value is its middle.
    pub fn factor(self) -> Option<Sourced<Band<Ratio>>> {
        let (min, typ, max, source) = match self {
            LeafForm::Lanceolate => (0.67, 0.70, 0.75, Source::CommonPractice),
            // 0.75 is the classic single-leaf estimate (Montgomery).
            LeafForm::Elliptic => (0.67, 0.75, 0.75, Source::FromMemory),
            LeafForm::Round => (0.78, 0.78, 0.78, Source::CommonPractice),
            LeafForm::Lobed => (0.50, 0.55, 0.60, Source::CommonPractice),
            LeafForm::Fern => (0.35, 0.42, 0.50, Source::CommonPractice),
            LeafForm::Fan => (0.55, 0.60, 0.65, Source::CommonPractice),
            LeafForm::Lens => return None,
        };
        Some(Sourced {
            value: Band {
                min: Ratio::of_si(min),
                typ: Ratio::of_si(typ),
                max: Ratio::of_si(max),
            },
            source,
        })
    }
}

/// One side of a lens: two segments of the circle through its tips. With half chord h and rise t of each arc the radius is
/// (h^2 + t^2) / 2t. Wider than long: the other way round.
fn lens(length: f64, width: f64) -> f64 {
    let (long, short) = if length < width {
        (width, length)
    } else {
        (length, width)
    };
    let (half, rise) = (long / 2.0, short / 2.0);
    let radius = (half * half + rise * rise) / (2.0 * rise);
    let down = radius - rise;
    let angle = libm::atan2(half, down);
    2.0 * (radius * radius * angle - half * down)
}

pub(super) fn leaf(length: f64, width: f64, form: LeafForm) -> Surface {
    let one = match form.factor() {
        Some(k) => k.value.typ.si() * length * width,
        None => lens(length, width),
    };
    Surface::of(2.0 * one, 0.0, None, larger(length, width))
}

pub(super) fn feather(length: f64, width: f64) -> Surface {
    leaf(length, width, LeafForm::Lanceolate)
}

/// Half widths along a leaf standing on its stalk, as shares of the half width.
fn profile(form: LeafForm, along: f64) -> f64 {
    let s = libm::sin(PI * along);
    match form {
        LeafForm::Lanceolate => libm::sin(PI * libm::pow(along, 0.7)),
        LeafForm::Round => (1.0 - (2.0 * along - 1.0) * (2.0 * along - 1.0)).sqrt(),
        LeafForm::Lobed => s * (0.7 + 0.3 * libm::cos(10.0 * PI * along)),
        LeafForm::Fan => {
            libm::pow(along, 0.8)
                * if along > 0.9 {
                    (1.0 - along) * 10.0
                } else {
                    1.0
                }
        }
        _ => s,
    }
}

pub(super) fn draw_leaf(length: f64, width: f64, form: LeafForm) -> Picture {
    if form == LeafForm::Fern {
        return draw_fern(length, width);
    }
    const STEPS: usize = 40;
    let at = |k: usize, sign: f64| {
        let along = k as f64 / STEPS as f64;
        (
            sign * width / 2.0 * profile(form, along),
            length * (along - 0.5),
        )
    };
    let outline = (0..=STEPS)
        .map(|k| at(k, 1.0))
        .chain((0..=STEPS).rev().map(|k| at(k, -1.0)));
    let line = larger(length, width) / 30.0;
    let lean = -PI / 5.0;
    vec![
        closed(outline).turned(lean),
        strip(&[(0.0, -length * 0.42), (0.0, length * 0.3)], line)
            .cut()
            .turned(lean),
        strip(&[(0.0, -length * 0.62), (0.0, -length * 0.5)], line).turned(lean),
    ]
}

fn draw_fern(length: f64, width: f64) -> Picture {
    let stalk = length / 28.0;
    let lean = -PI / 5.0;
    let mut picture = vec![
        closed([
            (-stalk / 2.0, -length / 2.0),
            (stalk / 2.0, -length / 2.0),
            (stalk / 4.0, length / 2.0),
            (-stalk / 4.0, length / 2.0),
        ])
        .turned(lean),
    ];
    for k in 0..8 {
        let along = f64::from(k) / 8.0;
        let long = width / 2.0 * (1.0 - 0.85 * along);
        let y = length * (along * 0.9 - 0.4);
        for sign in [1.0, -1.0] {
            picture.push(
                strip(
                    &[(sign * stalk * 0.7, y), (sign * long, y + long * 0.35)],
                    length / 17.0,
                )
                .turned(lean),
            );
        }
    }
    picture
}

pub(super) fn draw_feather(length: f64, width: f64) -> Picture {
    let mut picture = draw_leaf(length, width, LeafForm::Lanceolate);
    // Barbs as slits from the edge.
    for (k, sign) in [(0, 1.0), (1, -1.0), (2, 1.0), (3, -1.0)] {
        let y = length * (0.18 * f64::from(k) - 0.25);
        picture.push(
            strip(
                &[
                    (sign * width * 0.09, y),
                    (sign * width * 0.5, y + width * 0.3),
                ],
                length / 36.0,
            )
            .cut()
            .turned(-PI / 5.0),
        );
    }
    picture
}
