//! The layer to scale: a cut through the wall, metal on both faces, beside something everybody knows.

use super::picture::{Picture, larger};
use super::yardstick;
use crate::words;
use quantity::{Quantity, Thickness};
use yew::prelude::*;

/// What is drawn.
#[derive(Clone, PartialEq)]
pub struct Layer {
    /// On average.
    pub mean: Thickness,
    /// At the thickest, where known.
    pub thickest: Option<Thickness>,
    /// At the thinnest, where known.
    pub thinnest: Option<Thickness>,
    /// Mean of the inside of a hollow.
    pub inside: Option<Thickness>,
    /// Its coats from below: mean and tone of each.
    pub coats: Vec<(Thickness, &'static str)>,
}

const RIGHT: f64 = 164.0;
const ROOM: f64 = 84.0;
const TOP: f64 = 96.0;
const CORE: f64 = 30.0;

/// The drawing, with a sentence on its scale. What is drawn is said in words as well.
pub fn drawing(layer: &Layer, caption: &str) -> Html {
    let um = |t: Thickness| t.si() * 1e6;
    let mean = um(layer.mean);
    let thick = layer.thickest.map_or(mean, um);
    let thin = layer.thinnest.map_or(mean, um);
    let sticks = yardstick::beside(mean, thick);
    let tallest = sticks.iter().fold(thick, |a, s| larger(a, s.1));
    let scale = ROOM / if tallest > 0.0 { tallest } else { 1.0 };
    let bottom = TOP + CORE;
    // The far face: at its edge what makes its own mean with the thinnest place in the middle, as a parabola has it.
    let edge = match layer.inside.map(um) {
        Some(inside) => larger(3.0 * inside - 2.0 * thin, thin),
        None => mean,
    };
    let mut p = Picture::default();
    p.rect("core", 0.0, TOP, RIGHT, CORE);
    // The outermost first: what lies under it is drawn over it.
    let whole: f64 = layer.coats.iter().map(|c| um(c.0)).sum();
    let mut up_to = whole;
    for (own, tone) in layer.coats.iter().rev() {
        let scale = scale * if whole > 0.0 { up_to / whole } else { 1.0 };
        p.path(tone, face(TOP, -thick * scale, -mean * scale));
        p.path(tone, face(bottom, edge * scale, thin * scale));
        up_to -= um(*own);
    }
    yardstick::draw(&mut p, &sticks, TOP, scale);
    p.text("on-core", 6.0, TOP + 20.0, caption.to_owned());
    p.text(
        "",
        184.0,
        bottom + 15.0,
        if layer.inside.is_some() {
            words::INSIDE
        } else {
            words::THIN_SIDE
        }
        .to_owned(),
    );
    let said = words::wall_said(layer, &yardstick::said(&sticks));
    html! {
        <>
            { p.show(bottom + larger(edge * scale, 20.0) + 4.0, Some(said)) }
            <p class="soft scale">{ words::enlarged(scale) }</p>
        </>
    }
}

/// A layer on the face at `y`: so high at both edges and in the middle.
fn face(y: f64, edge: f64, middle: f64) -> String {
    // The handle of a parabola lies as far beyond the middle again.
    format!(
        "M0 {y:.1}v{edge:.2}Q{:.1} {:.2} {RIGHT} {:.2}V{y:.1}Z",
        RIGHT / 2.0,
        y + 2.0 * middle - edge,
        y + edge
    )
}

/// The tone of a metal's layer or sheet by the metal's id.
pub fn tone(metal: &str) -> &'static str {
    match metal {
        "Au" | "C26000" | "C22000" | "C23000" => "metal yellow",
        "Cu" | "C51000" | "bronze" | "C65500" | "CuSn8" => "metal",
        _ => "metal white",
    }
}
