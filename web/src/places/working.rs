//! The working: each step as formula, with its numbers, its result and its sources.

use super::answer::Shown;
use crate::parts::Fold;
use crate::parts::formula::{formula, inline};
use crate::words::{self, number, working};
use planner::answer::{Origin, Whence, Working};
use planner::working::FORMULAS;
use planner::{Named, Source};
use std::rc::Rc;
use yew::prelude::*;

/// What the working needs.
#[derive(Properties, PartialEq)]
pub struct WorkingProps {
    /// The answer.
    pub answer: Rc<planner::Answer>,
}

/// Closed until asked for: its drawing never delays the answer.
#[component]
pub fn WorkingView(props: &WorkingProps) -> Html {
    let answer = props.answer.clone();
    let body = Callback::from(move |open| {
        let steps = if open { &answer.working[..] } else { &[] };
        html! { <>{ for steps.iter().map(one) }</> }
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
    let own: Vec<String> = step
        .sources
        .iter()
        .filter(|s| !of_values(&s.0))
        .map(|s| working::source(s.0))
        .collect();
    html! {
        <article>
            <h3>{ working::title(step.id) }</h3>
            { formula(step.result.name, tree) }
            <dl class="values">
                { for step.values.iter().zip(&step.whence).map(|(v, w)| value(v, Some(working::whence(w)))) }
                { value(&step.result, None) }
            </dl>
            if !own.is_empty() {
                <p class="sources">{ working::SOURCES }{ own.join(" · ") }</p>
            }
        </article>
    }
}

/// A value with where it comes from; the result without.
fn value(v: &Named, whence: Option<String>) -> Html {
    html! {
        <div class={whence.is_none().then_some("result")}>
            <dt>{ inline(v.name) }{ " " }{ working::value(v.name) }</dt>
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
