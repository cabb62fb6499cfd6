//! What holds the job back, what no field can show, and the hazards.

use super::Shown;
use crate::browser::{focus_in_place, use_ways};
use crate::parts::card::card;
use crate::parts::list::items;
use crate::parts::note::{Weight, note, octagon};
use crate::places::ask::Ask;
use crate::state::{Action, ways};
use crate::words::{self, ways as said_of};
use planner::answer::{Caution, Limit, When};
use planner::{FieldPath, Job, Problem, WayOut};
use std::rc::Rc;
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

/// What holds the job back, each kind once: all limits of that kind.
fn grouped(shown: &Shown) -> Vec<Vec<&Limit>> {
    // Two steps or pieces with the same complaint are one note.
    let mut all: Vec<Vec<&Limit>> = Vec::new();
    for limit in &shown.answer.limits {
        let alike = |same: &&mut Vec<&Limit>| {
            same.first()
                .is_some_and(|l| l.kind == limit.kind && l.note == limit.note)
        };
        match all.iter_mut().find(alike) {
            Some(same) => same.push(limit),
            None => all.push(vec![limit]),
        }
    }
    all
}

/// Limits of one kind: statement and way out.
fn statement(shown: &Shown, same: &[&Limit]) -> (String, String) {
    let (statement, then) = words::limit(same);
    let at = same.iter().map(|l| l.at.clone());
    (named(shown, at, statement), then)
}

/// What holds the job back: statement and way out, each once.
pub fn said(shown: &Shown) -> Vec<(String, String)> {
    let all = grouped(shown);
    all.iter().map(|same| statement(shown, same)).collect()
}

/// What the part needs.
#[derive(Properties, PartialEq)]
pub struct LimitsProps {
    /// The answer.
    pub shown: Shown,
    /// The draft and the ways to change it.
    pub ask: Ask,
    /// The job as read.
    pub job: Rc<Job>,
}

/// What holds the job back, each with what would lift it, one tap from being tried.
#[component]
pub fn Limits(props: &LimitsProps) -> Html {
    let LimitsProps { shown, ask, job } = props;
    let (ways, of_job) = use_ways(job, !shown.answer.limits.is_empty());
    let tried = ask.state.has_tried();
    let (all, undo) = (use_node_ref(), use_node_ref());
    let was = use_mut_ref(|| false);
    {
        // What was tapped is gone: who cannot see it must not be lost with it.
        let (all, undo) = (all.clone(), undo.clone());
        use_effect_with(tried, move |tried| {
            if was.replace(*tried) != *tried {
                focus_in_place(if *tried { &undo } else { &all });
            }
        });
    }
    let onclick = ask.act.reform(|_: MouseEvent| Action::Undid);
    html! {
        <div class="limits" tabindex="-1" ref={all}>
            if tried {
                <div class="note" data-kind="quiet">
                    <p>{ said_of::TRIED }</p>
                    <button type="button" class="link" ref={undo} {onclick}>{ words::UNDO }</button>
                </div>
            }
            for same in grouped(shown) {
                { limit(shown, ask, &ways, of_job, &same) }
            }
        </div>
    }
}

/// How many ways out of one limit stand on the page: the nearest at hand.
const MOST: usize = 4;

/// Ways that are not `of_job` cannot be tapped.
fn limit(shown: &Shown, ask: &Ask, ways: &[WayOut], of_job: bool, same: &[&Limit]) -> Html {
    let (statement, then) = statement(shown, same);
    let lifts = |w: &&WayOut| {
        same.first()
            .is_some_and(|l| l.kind == w.lifts && l.at == w.at)
    };
    let found = ways.iter().filter(lifts).take(MOST);
    let buttons: Vec<Html> = found.map(|w| way(ask, w)).collect();
    html! {
        <>
            { note(Weight::Look, &statement, &then) }
            if !buttons.is_empty() {
                <ul class="ways" aria-label={said_of::WAYS} inert={!of_job}>{ buttons }</ul>
            }
        </>
    }
}

/// What the page has no field for is said without a button.
fn way(ask: &Ask, way: &WayOut) -> Html {
    let said = html! {
        <>
            <span>{ said_of::what(way) }</span>
            <span class="soft">{ said_of::then(way) }</span>
        </>
    };
    let Some(texts) = ways::texts(&ask.state.draft, way) else {
        return html! { <li class="piece">{ said }</li> };
    };
    let onclick = ask
        .act
        .reform(move |_: MouseEvent| Action::Tried(texts.clone()));
    html! { <li><button type="button" class="piece" {onclick}>{ said }</button></li> }
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
    card("card care", words::CARE, groups(shown))
}

/// Each under when it is due.
pub fn groups(shown: &Shown) -> Html {
    let groups: Vec<Html> = WHENS.map(|when| group(when, due(shown, when))).into();
    html! { <>{ groups }</> }
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
