//! The steps of a job as a bar along the time of day.

use super::picture::{Picture, WIDTH, larger, smaller};
use yew::prelude::*;

/// Width of a letter of the drawing's words, at most.
const LETTER: f64 = 9.5;

/// One step of it.
pub struct Span {
    /// How long, s.
    pub seconds: f64,
    /// When it ends, in words.
    pub ends: String,
}

/// The drawing: a step after the other, each in its own pattern, the nights shaded behind them. Spans of the night are in
/// seconds from the start. The words beside it say the same.
pub fn drawing(starts: &str, spans: &[Span], nights: &[(f64, f64)]) -> Html {
    let whole: f64 = spans.iter().map(|s| s.seconds).sum();
    let at = |s: f64| 2.0 + (WIDTH - 4.0) * s / whole;
    let mut p = Picture::default();
    for (from, to) in nights {
        let (from, to) = (larger(*from, 0.0), smaller(*to, whole));
        if to > from {
            p.rect("night", at(from), 22.0, at(to) - at(from), 36.0);
        }
    }
    let mut gone = 0.0;
    // Where the words of the last mark end: no words over words.
    let mut written = 0.0;
    let last = spans.len().saturating_sub(1);
    for (n, span) in spans.iter().enumerate() {
        let class = if n == last { "step last" } else { "step" };
        p.rect(
            class,
            at(gone),
            30.0,
            at(gone + span.seconds) - at(gone),
            20.0,
        );
        gone += span.seconds;
        if n < last {
            // Near the right edge the words end at their mark instead of beginning there.
            let long = LETTER * span.ends.chars().count() as f64;
            let ends = gone > 0.6 * whole;
            let from = if ends { at(gone) - long } else { at(gone) };
            p.path("axis", format!("M{:.1} 18V50", at(gone)));
            if from >= written {
                p.text(
                    if ends { "end" } else { "" },
                    at(gone),
                    14.0,
                    span.ends.clone(),
                );
                written = from + long + LETTER;
            }
        } else {
            p.text("end", WIDTH - 2.0, 74.0, span.ends.clone());
        }
    }
    p.text("", 2.0, 74.0, starts.to_owned());
    p.show(80.0, None)
}
