//! The working: each step as formula, with its numbers, its result and its sources.

use super::answer::Shown;
use crate::parts::formula::{formula, inline};
use crate::words::{self, number, working};
use planner::answer::Working;
use planner::working::FORMULAS;
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
    let open = use_state_eq(|| false);
    let toggle = {
        let open = open.clone();
        Callback::from(move |_: MouseEvent| open.set(!*open))
    };
    html! {
        <section class="card working">
            <h2>
                <button type="button" class="link" aria-expanded={(*open).to_string()} aria-controls="working" onclick={toggle}>
                    { words::WORKING }
                </button>
            </h2>
            <div id="working" hidden={!*open}>
                if *open {
                    for step in &props.answer.working {
                        { one(step) }
                    }
                }
            </div>
        </section>
    }
}

fn one(step: &Working) -> Html {
    let Some((_, tree)) = FORMULAS.iter().find(|(id, _)| *id == step.id) else {
        return Html::default();
    };
    html! {
        <article>
            <h3>{ working::title(step.id) }</h3>
            { formula(step.result.name, tree) }
            <dl class="values">
                for v in &step.values {
                    <div>
                        <dt>{ inline(v.name) }{ " " }{ working::value(v.name) }</dt>
                        <dd>{ number::any(v.value) }</dd>
                    </div>
                }
                <div class="result">
                    <dt>{ inline(step.result.name) }{ " " }{ working::value(step.result.name) }</dt>
                    <dd>{ number::any(step.result.value) }</dd>
                </div>
            </dl>
            if !step.sources.is_empty() {
                <p class="sources">
                    { format!("{}: ", working::SOURCES) }
                    { step.sources.iter().map(|s| working::source(s.0)).collect::<Vec<_>>().join(" · ") }
                </p>
            }
        </article>
    }
}

/// Whether there is anything to show.
pub fn worth_showing(shown: &Shown) -> bool {
    !shown.answer.working.is_empty()
}
