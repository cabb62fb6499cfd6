//! Something went wrong: what is left, how to go on, and what remains to be done.

use super::answer::{Shown, again, cautions, limits, stretches};
use super::ask::Ask;
use super::questions::select;
use crate::parts::choice::Options;
use crate::parts::list::items;
use crate::parts::note::{Weight, note};
use crate::parts::terms::terms;
use crate::parts::{Fold, Select};
use crate::state::job::{happened, step_of};
use crate::state::{at, pieces};
use crate::words::{self, after};
use planner::after::{After, Left};
use planner::sessions::Doing;
use planner::value::{Absence, Because};
use planner::{Answer, Catalogue, FieldPath, Job, Problem};
use std::rc::Rc;
use yew::prelude::*;

/// The card, closed until asked for.
pub fn accident(ask: &Ask, job: &Rc<Job>, shown: &Shown) -> Html {
    let (ask, job, shown) = (ask.clone(), job.clone(), shown.clone());
    let body = Callback::from(move |open: bool| {
        if !open {
            return Html::default();
        }
        html! { <Accident ask={ask.clone()} job={job.clone()} shown={shown.clone()} /> }
    });
    html! { <Fold id="accident" title={after::WRONG} {body} /> }
}

/// What the part needs.
#[derive(Properties, PartialEq)]
pub struct AccidentProps {
    /// The draft and the ways to change it.
    pub ask: Ask,
    /// The job as it was planned.
    pub job: Rc<Job>,
    /// Its answer.
    pub shown: Shown,
}

/// The fields, and what comes of them.
#[component]
pub fn Accident(props: &AccidentProps) -> Html {
    let draft = &props.ask.state.draft;
    let read = happened(draft, &props.job);
    let rest = use_memo(read.after.clone(), |asked| asked.as_ref().map(answered));
    let mut ask = props.ask.clone();
    if let Some(rest) = &*rest {
        ask.problems = Rc::new(refused(&ask, rest));
    }
    let left = (*rest).as_ref().and_then(|r| Some((r, r.after.as_ref()?)));
    html! {
        <>
            { fields(&ask, &props.job, &props.shown) }
            if let Some(address) = read.waits_for {
                <p class="soft">{ waits(address) }</p>
            }
            if read.stands_in {
                <p class="stands-in">{ words::LAST_GOOD }</p>
            }
            if let Some((rest, left)) = left {
                { outcome(&props.ask, &props.shown, rest, left) }
            }
        </>
    }
}

/// The answer to what remains, with the cautions of the step it happened in and without the waits before the first session.
fn answered(asked: &After) -> Rc<Answer> {
    let mut answer = planner::after::answer(&Catalogue::standard(), asked, Vec::new());
    let step = FieldPath::new("steps").child(&asked.step);
    answer.cautions.retain(|c| c.at.within(step.as_str()));
    answer.sessions.retain(|s| s.doing == Doing::Session);
    Rc::new(answer)
}

/// What cannot have happened, at its field and as it was typed.
fn refused(ask: &Ask, answer: &Answer) -> Vec<Problem> {
    let late = answer
        .problems
        .iter()
        .filter(|p| p.field.as_str() == "after");
    let there = |p: &Problem| Problem {
        field: FieldPath::new(at::HAPPENED_AT),
        read: Some(ask.text(at::HAPPENED_AT).to_string()),
        ..p.clone()
    };
    late.map(there).collect()
}

fn waits(address: &str) -> String {
    words::notices::absence(&Absence {
        because: Because::InputMissing,
        needs: vec![FieldPath::new(address)],
    })
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
    let here = job.steps.iter().filter(|s| s.id == step);
    let hung: Vec<&str> = here
        .flat_map(|s| &s.places)
        .flat_map(|p| p.pieces.iter().map(String::as_str))
        .collect();
    let whose = what.as_str() == "filed" && !etches && hung.len() > 1;
    html! {
        <div class="fields">
            if !etches {
                { select(ask, at::HAPPENED) }
            }
            if shown.baths.len() > 1 {
                { own(ask, at::HAPPENED_IN, step, shown.baths.iter().map(|(id, bath)| {
                    (id.clone(), after::step(id, bath).to_owned())
                })) }
            }
            { ask.field(at::HAPPENED_AT) }
            if whose {
                { own(ask, at::FILED_PIECE, &ask.text(at::FILED_PIECE), {
                    let names = pieces::names(draft, hung.iter().copied());
                    hung.iter().map(|id| (*id).to_owned()).zip(names)
                }) }
            }
            for address in asked {
                { ask.field(address) }
            }
        </div>
    }
}

/// A select of what this job holds.
fn own(
    ask: &Ask,
    address: &'static str,
    picked: &str,
    all: impl Iterator<Item = (String, String)>,
) -> Html {
    let options = all.map(|(id, name)| (AttrValue::from(id), AttrValue::from(name)));
    html! {
        <Select key={address} id={address} label={words::field(address)} options={Options::Own(options.collect())}
            picked={picked.to_owned()} onpick={ask.pick(address)} />
    }
}

/// What is left, how to go on, and what remains.
fn outcome(ask: &Ask, shown: &Shown, rest: &Rc<Answer>, left: &Left) -> Html {
    let ids = rest.pieces.iter().map(|p| p.id.as_str());
    let then = Shown {
        answer: rest.clone(),
        names: pieces::names(&ask.state.draft, ids),
        start: None,
        ..shown.clone()
    };
    let ids = left.pieces.iter().map(|p| p.id.as_str());
    let names = pieces::names(&ask.state.draft, ids);
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
            { again("", &left.reentry) }
            <h3>{ after::REMAINS }</h3>
            <ul>{ items(&then.to_do()) }</ul>
            for (statement, what) in limits(&then) {
                { note(Weight::Look, &statement, &what) }
            }
            { stretches(&then) }
            { cautions(&then) }
        </>
    }
}
