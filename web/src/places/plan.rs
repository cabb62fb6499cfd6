//! Plan: the questions and the answer.

use super::accident::accident;
use super::answer::{self, Shown};
use super::ask::Ask;
use super::attend::attend;
use super::drafts::Drafts;
use super::exact::Exact;
use super::fair::fair;
use super::layers::later;
use super::questions::Questions;
use super::setup::Setup;
use super::share::Share;
use super::working::{working, worth_showing};
use crate::browser::use_settled;
use crate::state::{Action, State, at, pieces};
use crate::words;
use planner::Job;
use std::rc::Rc;
use yew::prelude::*;

/// What the place needs.
#[derive(Properties, PartialEq)]
pub struct PlanProps {
    /// The draft and the ways to change it.
    pub ask: Ask,
    /// The job as read.
    pub job: Rc<Job>,
    /// The answer.
    pub shown: Shown,
    /// The answer's head, to know when it is out of view.
    pub head: NodeRef,
    /// Something to say about storage, if anything.
    pub shelf_note: Option<AttrValue>,
    /// Texts that were set aside: why, and the text.
    pub aside: Vec<(AttrValue, AttrValue)>,
}

/// The place.
#[component]
pub fn Plan(props: &PlanProps) -> Html {
    let piece = use_state_eq(|| "p1".to_owned());
    let ids = pieces::ids(&props.ask.state.draft);
    // A piece that was taken off, or never came, leaves the last one open.
    let open = ids.iter().find(|id| **id == *piece).or(ids.last());
    let ask = &props.ask.of(open.copied().unwrap_or("p1"));
    let onpiece = Callback::from(move |id| piece.set(id));
    let shown = &props.shown;
    let follow =
        |part: Part| html! { <Following {part} shown={shown.clone()} job={props.job.clone()} /> };
    let undo = ask.act.reform(|_: MouseEvent| Action::Undid);
    html! {
        <main class="plan">
            <h1 class="unseen">{ words::PAGE }</h1>
            <div class="give" tabindex="0" role="region" aria-label={words::ANSWER}>
                <section class="answer" ref={props.head.clone()} data-stands-in={shown.stands_in.to_string()}>
                    { answer::head(shown) }
                </section>
                <div class="beside">
                    { answer::problems(shown, &ask.problems) }
                    <answer::Limits shown={shown.clone()} ask={ask.clone()} job={props.job.clone()} />
                </div>
                { follow(Part::Drawings) }
            </div>
            <div class="ask">
                <Questions ask={ask.clone()} {onpiece} />
                { later(ask) }
                <Setup ask={ask.clone()} />
                { attend(ask) }
                <Exact ask={ask.clone()} job={props.job.clone()} />
                <div class="actions">
                    <button type="button" class="button" onclick={undo} aria-disabled={(!ask.state.can_undo()).then_some("true")}>{ words::UNDO }</button>
                </div>
                <Drafts state={ask.state.clone()} act={ask.act.clone()} />
                if let Some(text) = &props.shelf_note {
                    <p class="soft shelf">{ text }</p>
                }
                for (why, text) in &props.aside {
                    <details class="aside">
                        <summary>{ why }</summary>
                        <pre>{ text }</pre>
                    </details>
                }
            </div>
            <div class="detail">
                { follow(Part::Details) }
                { fair(ask, &props.job, shown) }
                { accident(ask, &props.job, shown) }
                if worth_showing(shown) {
                    { follow(Part::Working) }
                    <Share text={shown.as_text().join("\n")} state={props.ask.state.clone()} />
                }
            </div>
        </main>
    }
}

/// What is drawn when the person pauses, so that it never delays the answer.
#[derive(Clone, Copy, PartialEq)]
enum Part {
    /// The pictures beside the answer.
    Drawings,
    /// What stands below the questions.
    Details,
    /// The working.
    Working,
}

#[derive(Properties, PartialEq)]
struct FollowingProps {
    part: Part,
    shown: Shown,
    job: Rc<Job>,
}

/// A part of the answer that follows the rest of it after a moment.
#[component]
fn Following(props: &FollowingProps) -> Html {
    let now = || (props.shown.clone(), props.job.clone());
    let (shown, job) = use_settled(now, now(), FOLLOWS);
    html! { <Followed part={props.part} {shown} {job} /> }
}

/// The part as it stands: not even made anew while the person types.
#[component]
fn Followed(FollowingProps { part, shown, job }: &FollowingProps) -> Html {
    match part {
        Part::Drawings => html! { <>{ answer::series(shown, job) }{ answer::wall(shown) }</> },
        Part::Details => html! {
            <>
                { answer::first(shown) }
                { answer::meter(shown) }
                { answer::class(shown) }
                { answer::course(shown) }
                { answer::sessions(shown) }
                { answer::cautions(shown) }
                { answer::density(shown) }
                { answer::bath(shown) }
            </>
        },
        Part::Working => working(shown),
    }
}

/// Milliseconds without another key after which the rest of the answer is drawn.
const FOLLOWS: i32 = 150;

/// The words for what the piece is made of, for the drawing.
pub fn core(state: &State) -> &'static str {
    match state.draft.scoped(at::BASE) {
        "copper" | "graphite" | "silver" => words::COATED,
        id => match words::metal(id) {
            "" => words::THE_PIECE,
            name => name,
        },
    }
}
