//! The same layer on all pieces of a bar: when each is taken out.

use super::answer::Shown;
use super::ask::Ask;
use crate::parts::Fold;
use crate::parts::list::items;
use crate::state::{Action, layers, ways};
use crate::words::{number, ways as said};
use planner::fair::{FairShare, common_mean};
use planner::{Catalogue, Job, fair_share};
use std::rc::Rc;
use yew::prelude::*;

/// The card, closed until asked for; nothing where the pieces get the same anyway, in several vessels or baths, and in an etch.
pub fn fair(ask: &Ask, job: &Rc<Job>, shown: &Shown) -> Html {
    // With later layers the aim is of several metals.
    let one = layers::ids(&ask.state.draft).is_empty();
    let Some(mean) = common_mean(job, &shown.answer).filter(|_| one) else {
        return Html::default();
    };
    let (ask, job, shown) = (ask.clone(), job.clone(), shown.clone());
    let body = Callback::from(move |open: bool| {
        let share = open.then(|| fair_share(&Catalogue::standard(), &job, mean));
        share.map_or_else(Html::default, |share| inside(&ask, &shown, share))
    });
    html! { <Fold id="fair" title={said::FAIR} {body} /> }
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
