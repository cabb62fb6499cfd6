//! Something went wrong: what is left, how to go on, and what remains to be done.

use super::answer::{Shown, groups, limits, stretches};
use super::ask::Ask;
use super::questions::select;
use crate::parts::choice::Options;
use crate::parts::list::items;
use crate::parts::note::{Weight, note};
use crate::parts::terms::terms;
use crate::parts::{Fold, Select};
use crate::state::job::{happened, hung, step_of};
use crate::state::{at, pieces};
use crate::words::{self, after};
use planner::after::After;
use planner::answer::CautionKind::{AcidBurns, Oxidiser};
use planner::reentry::ReentryKind::{GoOn, LookAtFilm, StrikeAgain};
use planner::{Answer, Catalogue, FieldPath, Job, Problem};
use std::rc::Rc;
use yew::prelude::*;

/// The card, closed until asked for; nothing is worked out before.
pub fn accident(ask: &Ask, job: &Rc<Job>, shown: &Shown) -> Html {
    let (ask, job, shown) = (ask.clone(), job.clone(), shown.clone());
    let body = Callback::from(move |open: bool| {
        if open {
            inside(&ask, &job, &shown)
        } else {
            Html::default()
        }
    });
    html! { <Fold id="accident" title={after::WRONG} {body} /> }
}

/// The fields, and what comes of them.
fn inside(ask: &Ask, job: &Job, shown: &Shown) -> Html {
    let read = happened(&ask.state.draft, job);
    let rest = read.after.as_ref().map(answered);
    let mut here = ask.clone();
    here.problems = Rc::new(rest.as_ref().map_or(Vec::new(), |r| refused(ask, r)));
    html! {
        <>
            { fields(&here, job, shown) }
            if let Some(address) = read.waits_for {
                <p class="soft">{ after::say_first(words::field(address)) }</p>
            }
            if read.stands_in {
                <p class="stands-in">{ words::LAST_GOOD }</p>
            }
            { rest.map(|rest| outcome(ask, shown, rest)).unwrap_or_default() }
        </>
    }
}

/// The answer to what remains, with the cautions of the step it happened in.
fn answered(asked: &After) -> Answer {
    let mut answer = planner::after::answer(&Catalogue::standard(), asked, Vec::new());
    let step = FieldPath::new("steps").child(&asked.step);
    answer.cautions.retain(|c| c.at.within(step.as_str()));
    answer
}

/// What cannot have happened, at its field and as it was typed.
fn refused(ask: &Ask, answer: &Answer) -> Vec<Problem> {
    let mut late = answer.problems.clone();
    late.retain(|p| p.field.as_str() == "after");
    for problem in &mut late {
        problem.field = FieldPath::new(at::HAPPENED_AT);
        problem.read = Some(ask.text(at::HAPPENED_AT).to_string());
    }
    late
}

fn fields(ask: &Ask, job: &Job, shown: &Shown) -> Html {
    let draft = &ask.state.draft;
    let etches = ask.text(at::PROCESS).as_str() == "etch";
    let what = ask.text(at::HAPPENED);
    let asked: &[&str] = match what.as_str() {
        "reversed" if !etches => &[at::REVERSED_FOR, at::REVERSED_CURRENT],
        "filed" if !etches => &[at::FILED_MASS, at::FILED_AREA],
        _ => &[at::GAP],
    };
    let step = step_of(draft, job).unwrap_or_default();
    let mut steps = Vec::new();
    for (id, bath) in &shown.baths {
        steps.push(option(id, after::step(id, bath)));
    }
    let ids = hung(job, step);
    let mut hung = Vec::new();
    for (id, name) in ids.iter().zip(pieces::names(draft, ids.iter().copied())) {
        hung.push(option(id, &name));
    }
    let whose = asked.contains(&at::FILED_MASS) && hung.len() > 1;
    html! {
        <div class="fields">
            if !etches {
                { select(ask, at::HAPPENED) }
            }
            if steps.len() > 1 {
                { own(ask, at::HAPPENED_IN, step, steps) }
            }
            { ask.field(at::HAPPENED_AT) }
            if whose {
                { own(ask, at::FILED_PIECE, draft.text(at::FILED_PIECE), hung) }
            }
            for address in asked {
                { ask.field(address) }
            }
        </div>
    }
}

fn option(id: &str, name: &str) -> (AttrValue, AttrValue) {
    (id.to_owned().into(), name.to_owned().into())
}

/// A select of what this job holds.
fn own(ask: &Ask, address: &'static str, picked: &str, all: Vec<(AttrValue, AttrValue)>) -> Html {
    html! {
        <Select key={address} id={address} label={words::field(address)} options={Options::Own(all)} picked={picked.to_owned()}
            onpick={ask.pick(address)} />
    }
}

/// What is left, how to go on, and what remains.
fn outcome(ask: &Ask, shown: &Shown, mut rest: Answer) -> Html {
    let Some(left) = rest.after.clone() else {
        return Html::default();
    };
    // What stands in the plan, and what is said of the way in, is not said a second time.
    let planned = &shown.answer.cautions;
    let dips = !matches!(left.reentry.kind, GoOn | StrikeAgain | LookAtFilm);
    rest.cautions.retain(|c| {
        let of_dip = dips && matches!(c.kind, AcidBurns | Oxidiser);
        !of_dip && planned.iter().all(|p| p.kind != c.kind)
    });
    let draft = &ask.state.draft;
    let ids = rest.pieces.iter().map(|p| p.id.as_str());
    let then = Shown {
        names: pieces::names(draft, ids),
        answer: Rc::new(rest),
        start: None,
        ..shown.clone()
    };
    let names = pieces::names(draft, left.pieces.iter().map(|p| p.id.as_str()));
    let care = after::care(left.reentry.kind);
    html! {
        <>
            for (piece, name) in left.pieces.iter().zip(names) {
                <h3>{ name }</h3>
                { terms(vec![
                    (after::HAD, Some(after::range(&piece.had))),
                    (after::LOST, Some(after::range(&piece.lost))),
                    (after::LEFT, Some(after::range(&piece.left))),
                ]) }
                if piece.measure_ohms {
                    { note(Weight::Look, "", after::MEASURE_OHMS) }
                }
            }
            <h3>{ after::GO_ON }</h3>
            <p>{ after::reenter(&left.reentry) }</p>
            { note(Weight::Stop, "", care) }
            <h3>{ after::REMAINS }</h3>
            <ul>{ items(&then.to_do()) }</ul>
            for (statement, what) in limits(&then) {
                { note(Weight::Look, &statement, &what) }
            }
            { stretches(&then, care) }
            <div class="care">{ groups(&then) }</div>
        </>
    }
}
