//! The open plan beside another: what is to be set, how long, what comes of it, what holds it back.

use super::answer::{Shown, limits};
use crate::browser::use_now;
use crate::parts::Select;
use crate::parts::choice::Options;
use crate::state::{Draft, job, pieces};
use crate::words::{drafts as said, number};
use notebook::Book;
use planner::{Catalogue, answer};
use std::rc::Rc;
use yew::prelude::*;

/// What the part needs.
#[derive(Properties, PartialEq)]
pub struct CompareProps {
    /// All plans.
    pub book: Book,
}

/// A list of the other plans; where one is picked, both in a table. Nothing is worked out before.
#[component]
pub fn Compare(props: &CompareProps) -> Html {
    let picked = use_state_eq(String::new);
    let now = use_now();
    let book = &props.book;
    let Some(open) = book.open().filter(|_| book.count() > 1) else {
        return Html::default();
    };
    let name = |id, own: &str| AttrValue::from(said::name(id, own));
    let mut others = vec![(AttrValue::default(), AttrValue::from(said::NO_OTHER))];
    let rest = book.iter().filter(|(id, _)| *id != book.open_id());
    others.extend(rest.map(|(id, n)| (id.to_string().into(), name(id, &n.name))));
    let other = book
        .iter()
        .find(|(id, _)| *id != book.open_id() && id.to_string() == **picked);
    let onpick = {
        let picked = picked.clone();
        Callback::from(move |id| picked.set(id))
    };
    html! {
        <div class="compare">
            <Select id="beside" label={said::BESIDE} options={Options::Own(others)} picked={(*picked).clone()} {onpick} />
            if let Some((id, named)) = other {
                <table class="pieces">
                    <thead><tr>
                        <td></td>
                        <th scope="col">{ name(book.open_id(), &open.name) }</th>
                        <th scope="col">{ name(id, &named.name) }</th>
                    </tr></thead>
                    <tbody>{ rows(figures(&open.draft, now.as_deref()), figures(&named.draft, now.as_deref())) }</tbody>
                </table>
            }
        </div>
    }
}

/// Rows that say something of either plan.
fn rows(one: [String; 6], other: [String; 6]) -> Vec<Html> {
    let both = said::COMPARED.iter().zip(one.into_iter().zip(other));
    let cell = |text: String| {
        if text.is_empty() {
            "–".to_owned()
        } else {
            text
        }
    };
    both.filter(|(_, (a, b))| !(a.is_empty() && b.is_empty()))
        .map(|(head, (a, b))| {
            html! { <tr><th scope="row">{ *head }</th><td>{ cell(a) }</td><td>{ cell(b) }</td></tr> }
        })
        .collect()
}

/// What is set, the time, the layer, its range, the cost, what holds it back; empty where it is not known.
fn figures(draft: &Draft, now: Option<&str>) -> [String; 6] {
    let read = job::read(draft, now);
    let shown = Shown {
        names: pieces::names(draft, read.job.pieces.iter().map(|p| p.id.as_str())),
        answer: Rc::new(answer(&Catalogue::standard(), &read.job)),
        stands_in: read.stands_in,
        display: super::answer::display_step(&read.job),
        start: None,
        core: "",
        baths: Vec::new(),
        printed: number::printed(),
    };
    let [set, time, layer] = shown.figures();
    let cost = shown.answer.pieces.iter().filter_map(|p| p.cost.known());
    let cost: Vec<String> = cost.map(|c| number::any(c.likely.into())).collect();
    let held = limits(&shown).into_iter().map(|(statement, _)| statement);
    let held: Vec<String> = held.collect();
    [
        set.unwrap_or_default(),
        time.unwrap_or_default(),
        layer.unwrap_or_default(),
        shown.range().unwrap_or_default(),
        cost.join(", "),
        held.join(" ").replace(':', "."),
    ]
}
