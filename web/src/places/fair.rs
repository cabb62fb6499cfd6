//! The same layer on all pieces of a bar: when each is taken out.

use super::answer::Shown;
use super::ask::Ask;
use crate::parts::Fold;
use crate::parts::list::items;
use crate::state::{Action, layers, ways};
use crate::words::{number, ways as said};
use planner::fair::FairShare;
use planner::job::{Job, Until};
use planner::{Catalogue, Process, fair_share};
use quantity::{Quantity, Thickness};
use std::rc::Rc;
use yew::prelude::*;

/// Below this share two layers are the same.
const ALIKE: f64 = 0.01;

/// The card, closed until asked for; nothing where the pieces get the same anyway, in several vessels or baths, and in an etch.
pub fn fair(ask: &Ask, job: &Rc<Job>, shown: &Shown) -> Html {
    let Some(mean) = wanted(ask, job, shown) else {
        return Html::default();
    };
    let (ask, job, shown) = (ask.clone(), job.clone(), shown.clone());
    let body = Callback::from(move |open: bool| {
        let share = open.then(|| fair_share(&Catalogue::standard(), &job, mean));
        share.map_or_else(Html::default, |share| inside(&ask, &shown, share))
    });
    html! { <Fold id="fair" title={said::FAIR} {body} /> }
}

/// What all are to have: what the plan aims at, else what the piece has that gets least.
fn wanted(ask: &Ask, job: &Job, shown: &Shown) -> Option<Thickness> {
    let last = job.steps.last()?;
    let one = last.kind != Process::Etch
        && last.places.len() == 1
        && layers::ids(&ask.state.draft).is_empty();
    let means: Vec<f64> = shown
        .answer
        .pieces
        .iter()
        .filter_map(|p| p.mean.known().map(|m| m.likely.si()))
        .collect();
    let least = means
        .iter()
        .copied()
        .reduce(|a, b| if b < a { b } else { a })?;
    let differ = means.iter().any(|m| *m > least * (1.0 + ALIKE));
    let aim = match last.until {
        Some(Until::Mean(aim)) => aim,
        _ => Thickness::from_si(least),
    };
    (one && differ).then_some(aim)
}

fn inside(ask: &Ask, shown: &Shown, share: Option<FairShare>) -> Html {
    let Some(share) = share else {
        return html! { <p>{ said::NOT_FAIR }</p> };
    };
    let lines: Vec<String> = share
        .leaves
        .iter()
        .filter_map(|l| {
            let name = shown.name_of(&l.id)?;
            Some([&name, said::OUT_AFTER, &number::time(l.after)].concat())
        })
        .collect();
    let texts = ways::fair(&ask.state.draft, &share);
    let onclick = ask
        .act
        .reform(move |_: MouseEvent| Action::Tried(texts.clone()));
    html! {
        <>
            <p>{ said::all_get(share.mean) }</p>
            <ul>{ items(&lines) }</ul>
            <button type="button" class="button" {onclick}>{ said::TRY }</button>
        </>
    }
}
