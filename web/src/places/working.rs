//! The working: each step as formula, with its numbers, its result and its sources.

use super::answer::Shown;
use crate::parts::Fold;
use crate::parts::formula::{formula, inline};
use crate::words::{self, number, working as say};
use planner::answer::{Origin, Whence, Working};
use planner::working::FORMULAS;
use planner::{Named, Source};
use yew::prelude::*;

/// Closed until asked for: its drawing never delays the answer.
pub fn working(shown: &Shown) -> Html {
    let answer = shown.answer.clone();
    let body = Callback::from(move |open| {
        let mut all = Vec::new();
        if open {
            for step in &answer.working {
                all.push(one(step));
            }
        }
        html! { <>{ all }</> }
    });
    html! { <Fold id="working" title={words::WORKING} {body} /> }
}

fn one(step: &Working) -> Html {
    let Some((_, tree)) = FORMULAS.iter().find(|(id, _)| *id == step.id) else {
        return Html::default();
    };
    // What a value does not name itself is the formula's own.
    let of_values = |source: &Source| {
        let from = Whence::From(Origin::Catalogue(*source));
        step.whence.contains(&from)
    };
    let mut own = String::new();
    for source in step.sources.iter().filter(|s| !of_values(&s.0)) {
        own.push_str(if own.is_empty() { say::SOURCES } else { " · " });
        own.push_str(&say::source(source.0));
    }
    let mut rows = Vec::new();
    for (v, w) in step.values.iter().zip(&step.whence) {
        rows.push(value(v, Some(say::whence(w))));
    }
    rows.push(value(&step.result, None));
    html! {
        <article>
            <h3>{ say::title(step.id) }</h3>
            { formula(step.result.name, tree) }
            <dl class="values">{ rows }</dl>
            if !own.is_empty() {
                <p class="sources">{ own }</p>
            }
        </article>
    }
}

/// A value with where it comes from; the result without.
fn value(v: &Named, whence: Option<String>) -> Html {
    html! {
        <div class={whence.is_none().then_some("result")}>
            <dt>{ inline(v.name) }{ " " }{ say::value(v.name) }</dt>
            <dd>{ number::any(v.value) }</dd>
            if let Some(whence) = whence {
                <dd class="whence">{ whence }</dd>
            }
        </div>
    }
}

/// Whether there is anything to show.
pub fn worth_showing(shown: &Shown) -> bool {
    !shown.answer.working.is_empty()
}
