//! What holds the job back, what no field can show, and the hazards.

use super::Shown;
use crate::parts::card::card;
use crate::parts::list::items;
use crate::parts::note::{Weight, note, octagon};
use crate::words;
use planner::answer::{Caution, Limit, When};
use planner::{FieldPath, Problem};
use yew::prelude::*;

/// The names of the pieces at these addresses before what is said of them, where not all pieces share it.
fn named(shown: &Shown, at: impl Iterator<Item = FieldPath>, said: String) -> String {
    let names: Vec<String> = at.filter_map(|at| shown.piece_at(&at)).collect();
    if names.is_empty() || names.len() == shown.answer.pieces.len() {
        said
    } else {
        names.join(", ") + ": " + &said
    }
}

/// What holds the job back: statement and way out, each once.
pub(super) fn said(shown: &Shown) -> Vec<(String, String)> {
    let limits = &shown.answer.limits;
    // Two steps or pieces with the same complaint are one note.
    let alike = |a: &Limit, b: &Limit| a.kind == b.kind && a.note == b.note;
    let mut all = Vec::new();
    for (n, first) in limits.iter().enumerate() {
        if limits[..n].iter().any(|l| alike(l, first)) {
            continue;
        }
        let same: Vec<&Limit> = limits.iter().filter(|l| alike(l, first)).collect();
        let (statement, then) = words::limit(&same);
        let at = same.iter().map(|l| l.at.clone());
        all.push((named(shown, at, statement), then));
    }
    all
}

/// What holds the job back.
pub fn limits(shown: &Shown) -> Html {
    html! {
        <div class="limits">
            for (statement, then) in said(shown) {
                { note(Weight::Look, &statement, &then) }
            }
        </div>
    }
}

/// Problems that no field on the page can show.
pub fn problems(shown: &Shown, on_page: &[Problem]) -> Html {
    let rest: Vec<&Problem> = shown
        .answer
        .problems
        .iter()
        .filter(|p| !on_page.iter().any(|q| q.field == p.field))
        .filter(|p| words::field(p.field.as_str()).is_empty())
        .filter(|p| p.kind != planner::ProblemKind::Missing)
        .collect();
    html! {
        <>
            for p in rest {
                { note(Weight::Stop, "", &words::problem(p, p.field.as_str())) }
            }
        </>
    }
}

/// The cautions due at a moment, each once.
pub(super) fn due(shown: &Shown, when: When) -> Vec<String> {
    let all = &shown.answer.cautions;
    let mut said = Vec::new();
    for (n, first) in all.iter().enumerate().filter(|(_, c)| c.when == when) {
        let same = |c: &&Caution| c.kind == first.kind && c.when == when;
        if all[..n].iter().any(|c| same(&c)) {
            continue;
        }
        let at = all.iter().filter(same).map(|c| c.at.clone());
        said.push(named(shown, at, words::caution(first.kind).to_owned()));
    }
    said
}

/// When cautions are due, in the order of time.
pub(super) const WHENS: [When; 3] = [When::Before, When::During, When::After];

/// Hazards, each under when it is due.
pub fn cautions(shown: &Shown) -> Html {
    if shown.answer.cautions.is_empty() {
        return Html::default();
    }
    let groups: Vec<Html> = WHENS.map(|when| group(when, due(shown, when))).into();
    card("card care", words::CARE, html! { <>{ groups }</> })
}

fn group(when: When, due: Vec<String>) -> Html {
    if due.is_empty() {
        return Html::default();
    }
    html! {
        <>
            <h3>{ octagon() }{ words::when(when) }</h3>
            <ul>{ items(&due) }</ul>
        </>
    }
}
