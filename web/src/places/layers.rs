//! The layers that come after the first: each in its own bath, or in the same one at another current.

use super::ask::Ask;
use super::questions::select;
use super::setup::{group, offered};
use crate::parts::Select;
use crate::parts::choice::Options;
use crate::state::{Action, at, layers};
use crate::words;
use yew::prelude::*;

/// The card; none in an etch.
pub fn later(ask: &Ask) -> Html {
    if ask.text(at::PROCESS).as_str() == "etch" {
        return Html::default();
    }
    let ids = layers::ids(&ask.state.draft);
    let full = ids.len() >= layers::MOST;
    let onadd = ask.act.reform(|_: MouseEvent| Action::LayerAdded);
    html! {
        <section class="card layers">
            if !ids.is_empty() {
                <h2>{ words::LAYERS }</h2>
            }
            for id in ids {
                <key={id.to_owned()}>{ layer(&ask.at_step(id)) }</>
            }
            if !full {
                <button type="button" class="button" onclick={onadd}>{ words::ANOTHER_LAYER }</button>
            }
        </section>
    }
}

fn layer(ask: &Ask) -> Html {
    let solution = ask.text(at::SOLUTION);
    let own_bath = solution.as_str() != layers::SAME;
    let mut solutions = vec![(layers::SAME, words::SAME_BATH)];
    solutions.extend(offered(
        ask,
        |process| process != planner::Process::Etch,
        &solution,
    ));
    let value = |word: &str, of: &[(&str, &'static str)]| {
        let found = of.iter().find(|(w, _)| *w == word);
        found.map(|(_, address)| ask.field(address))
    };
    let (drive, until) = (ask.text(at::DRIVE), ask.text(at::UNTIL));
    let step = ask.step.to_string();
    let onremove = ask
        .act
        .reform(move |_: MouseEvent| Action::LayerRemoved(step.clone()));
    let name = words::solution(&solution);
    let body = html! {
        <>
            { plain(ask, at::SOLUTION, Options::Made(solutions)) }
            { select(ask, at::DRIVE) }
            { value(&drive, &[("density", at::DENSITY), ("current", at::CURRENT)]).unwrap_or_default() }
            { plain(ask, at::UNTIL, Options::from(words::LAYER_AIMS)) }
            { value(&until, &[("mean", at::MEAN), ("thinnest", at::THINNEST), ("mass", at::MASS), ("time", at::TIME)]).unwrap_or_default() }
            { select(ask, at::STIRRING) }
            if own_bath {
                { ask.field(at::VOLUME) }
                { ask.field(at::EFFICIENCY) }
            }
            <button type="button" class="link" aria-label={words::remove_piece(name)} onclick={onremove}>{ words::REMOVE }</button>
        </>
    };
    group(name, body)
}

fn plain(ask: &Ask, address: &'static str, options: Options) -> Html {
    let id = ask.here(address);
    html! {
        <Select key={id.clone()} id={id.clone()} label={words::field(&id)} {options} picked={ask.text(address)} onpick={ask.pick(address)} />
    }
}
