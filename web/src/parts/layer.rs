//! The layer to scale: a cut through the wall, copper outside and inside, beside something everybody knows.

use crate::words::{self, number};
use quantity::{Quantity, Thickness};
use yew::prelude::*;

/// What is drawn.
#[derive(Clone, Copy, PartialEq)]
pub struct Layer {
    /// On average.
    pub mean: Thickness,
    /// At the thickest, where known.
    pub thickest: Option<Thickness>,
    /// At the thinnest, where known.
    pub thinnest: Option<Thickness>,
}

const LEFT: f64 = 64.0;
const RIGHT: f64 = 320.0;
const TOP_ROOM: f64 = 74.0;
const CORE: f64 = 30.0;

/// The drawing. Everything in it is said in words as well.
pub fn drawing(layer: &Layer, caption: &str) -> Html {
    let um = |t: Thickness| t.si() * 1e6;
    let mean = um(layer.mean);
    let thick = layer.thickest.map_or(mean, um);
    let thin = layer.thinnest.map_or(mean, um);
    let (name, size) = yardstick(mean);
    let tallest = if thick > size { thick } else { size };
    let scale = TOP_ROOM / if tallest > 0.0 { tallest } else { 1.0 };
    let core_top = 104.0;
    let core_bottom = core_top + CORE;
    let (edge, middle, low) = (thick * scale, mean * scale, thin * scale);
    let outside = format!(
        "M{LEFT} {core_top}V{:.1}Q{:.1} {:.1} {:.1} {:.1}T{RIGHT} {:.1}V{core_top}Z",
        core_top - edge,
        LEFT + 40.0,
        core_top - middle,
        (LEFT + RIGHT) / 2.0,
        core_top - middle,
        core_top - edge,
    );
    let inside = format!(
        "M{LEFT} {core_bottom}V{:.1}Q{:.1} {:.1} {RIGHT} {:.1}V{core_bottom}Z",
        core_bottom + middle,
        (LEFT + RIGHT) / 2.0,
        core_bottom + 2.0 * low - middle,
        core_bottom + middle,
    );
    let yard_top = core_top - size * scale;
    let said = format!(
        "{}. {}: {}. {}: {}.",
        words::WALL,
        caption,
        number::thickness(layer.mean),
        name,
        number::thickness(Thickness::um(size)),
    );
    html! {
        <svg class="layer" viewBox="0 0 340 224" role="img" aria-label={said}>
            <rect class="core" x={LEFT.to_string()} y={core_top.to_string()} width={(RIGHT - LEFT).to_string()} height={CORE.to_string()} />
            <path class="metal" d={outside} />
            <path class="metal" d={inside} />
            <path class="yard" d={format!("M40 {yard_top:.1}h16M48 {yard_top:.1}V{core_top}M40 {core_top}h16")} />
            <text x="8" y="16">{ format!("{name}, {}", number::thickness(Thickness::um(size))) }</text>
            <text x="72" y={(core_top + 20.0).to_string()} class="on-core">{ caption }</text>
        </svg>
    }
}

/// The yardstick nearest in size, so that both can be seen.
fn yardstick(mean: f64) -> (&'static str, f64) {
    let far = |size: f64| unlikeness(size, mean);
    words::YARDSTICKS
        .iter()
        .copied()
        .fold(words::YARDSTICKS[0], |best, next| {
            if far(next.1) < far(best.1) {
                next
            } else {
                best
            }
        })
}

/// How unlike two sizes are, without a logarithm: the larger over the smaller.
fn unlikeness(a: f64, b: f64) -> f64 {
    if a > b { a / b } else { b / a }
}
