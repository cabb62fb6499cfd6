//! A drawing as a list of paths and texts: every figure of the answer is put together from these.

use yew::prelude::*;

/// Width of every figure, in its own units: at 360 px a unit is about a pixel.
pub const WIDTH: f64 = 320.0;

/// A drawing in the making.
#[derive(Default)]
pub struct Picture {
    paths: Vec<(&'static str, String)>,
    texts: Vec<(&'static str, f64, f64, String)>,
}

impl Picture {
    /// A path of this class.
    pub fn path(&mut self, class: &'static str, d: String) {
        self.paths.push((class, d));
    }

    /// A rectangle.
    pub fn rect(&mut self, class: &'static str, x: f64, y: f64, width: f64, height: f64) {
        self.path(
            class,
            format!("M{x:.1} {y:.1}h{width:.1}v{height:.1}h-{width:.1}Z"),
        );
    }

    /// A text from a place on.
    pub fn text(&mut self, class: &'static str, x: f64, y: f64, text: String) {
        self.texts.push((class, x, y, text));
    }

    /// The figure. `said` is what stands for it where it cannot be seen; without it the words beside it say the same.
    pub fn show(self, height: f64, said: Option<String>) -> Html {
        let hidden = said.is_none().then_some("true");
        html! {
            <svg class="fig" viewBox={format!("0 0 {WIDTH} {height:.0}")} role="img" aria-label={said} aria-hidden={hidden}>
                for (class, d) in self.paths {
                    <path {class} {d} />
                }
                for (class, x, y, text) in self.texts {
                    <text {class} x={format!("{x:.1}")} y={format!("{y:.1}")}>{ text }</text>
                }
            </svg>
        }
    }
}

/// The larger of two.
pub fn larger(a: f64, b: f64) -> f64 {
    if b > a { b } else { a }
}

/// The smaller of two.
pub fn smaller(a: f64, b: f64) -> f64 {
    if b < a { b } else { a }
}
