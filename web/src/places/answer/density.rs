//! Where the density lies in what the solution takes, beside the rule of thumb.

use super::{Shown, likely};
use crate::parts::band::{self, Mark};
use crate::parts::card::card;
use crate::parts::terms::terms;
use crate::words::{self, number, term};
use yew::prelude::*;

/// The card: of the last step, with the earlier ones marked.
pub fn density(shown: &Shown) -> Html {
    let steps = &shown.answer.steps;
    let Some((last, before)) = steps.split_last() else {
        return Html::default();
    };
    let (Some(density), Some(window)) = (last.density.known(), last.window) else {
        return Html::default();
    };
    let covering = before.last().and_then(|s| s.density.known());
    let mut marks: Vec<Mark> = vec![("▲", density.likely)];
    marks.extend(covering.map(|d| ("△", d.likely)));
    marks.extend(last.densest.known().map(|d| ("◆", d.likely)));
    marks.extend(last.thumb.map(|t| ("□", t.density)));
    let ruled = last.ruled_by.map(words::ruling);
    let own = number::density(density.likely);
    let beside = terms(vec![
        (
            term::DENSITY,
            Some(match ruled {
                Some(ruled) => own + ", " + ruled,
                None => own,
            }),
        ),
        (term::COVERING, covering.map(|d| number::density(d.likely))),
        (term::DENSEST, likely(&last.densest, number::density)),
        (term::BOUND, window.bound.map(number::density)),
        (term::THUMB, last.thumb.map(|t| number::density(t.density))),
    ]);
    let mut said = words::in_window(density.likely, &window);
    if let Some(thumb) = &last.thumb {
        said.push(' ');
        said.push_str(&words::thumb(thumb, last.ruled_by));
    }
    let body = html! {
        <>
            { band::drawing(window.least, window.most, window.bound, &marks) }
            { beside }
            <p>{ said }</p>
        </>
    };
    card("card density", words::DENSITY, body)
}
