//! What holds the job back, what no field can show, and the hazards.

use super::Shown;
use crate::parts::note::{Weight, note, octagon};
use crate::words;
use planner::Problem;
use planner::answer::{Limit, When};
use yew::prelude::*;

/// What holds the job back: statement and way out, each once.
pub(super) fn said(shown: &Shown) -> Vec<(String, String)> {
    let limits = &shown.answer.limits;
    // Two steps or pieces with the same complaint are one note.
    let alike = |a: &Limit, b: &Limit| a.kind == b.kind && a.note == b.note;
    let first = |n: &usize| !limits[..*n].iter().any(|k| alike(k, &limits[*n]));
    (0..limits.len())
        .filter(first)
        .map(|n| {
            let same: Vec<&Limit> = limits.iter().filter(|l| alike(l, &limits[n])).collect();
            let (statement, then) = words::limit(&same);
            // One statement may have two numbers: it is the first piece's, and the others are named.
            let names: Vec<String> = same.iter().filter_map(|l| shown.piece_at(&l.at)).collect();
            if names.is_empty() {
                (statement, then)
            } else {
                (names.join(", ") + ": " + &statement, then)
            }
        })
        .collect()
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

/// The cautions due at a moment: words, and the pieces they are about where not all share them.
pub(super) fn due(shown: &Shown, when: When) -> Vec<String> {
    let all = &shown.answer.cautions;
    let due: Vec<_> = all.iter().filter(|c| c.when == when).collect();
    (0..due.len())
        .filter(|n| !due[..*n].iter().any(|c| c.kind == due[*n].kind))
        .map(|n| {
            let kind = due[n].kind;
            let names: Vec<String> = due
                .iter()
                .filter(|c| c.kind == kind)
                .filter_map(|c| shown.piece_at(&c.at))
                .collect();
            let words = words::caution(kind);
            if names.is_empty() || names.len() == shown.answer.pieces.len() {
                words.to_owned()
            } else {
                names.join(", ") + ": " + words
            }
        })
        .collect()
}

/// When cautions are due, in the order of time.
pub(super) const WHENS: [When; 3] = [When::Before, When::During, When::After];

/// Hazards, each under when it is due.
pub fn cautions(shown: &Shown) -> Html {
    if shown.answer.cautions.is_empty() {
        return Html::default();
    }
    html! {
        <section class="card care">
            <h2>{ words::CARE }</h2>
            for when in WHENS {
                { group(when, due(shown, when)) }
            }
        </section>
    }
}

fn group(when: When, due: Vec<String>) -> Html {
    if due.is_empty() {
        return Html::default();
    }
    html! {
        <>
            <h3>{ octagon() }{ words::when(when) }</h3>
            <ul>{ for due.into_iter().map(|c| html! { <li>{ c }</li> }) }</ul>
        </>
    }
}
