//! Plan: the questions and the answer.

use super::answer::{self, Shown};
use super::questions::Questions;
use super::setup::Setup;
use super::share::Share;
use super::working::{working, worth_showing};
use crate::parts::NumberField;
use crate::state::{Action, State, at, entries};
use crate::words;
use planner::Problem;
use std::rc::Rc;
use yew::prelude::*;

/// The draft and the ways to change it, handed to every question.
#[derive(Clone, PartialEq)]
pub struct Ask {
    /// What was typed and what can be taken back.
    pub state: Rc<State>,
    /// What the person does.
    pub act: Callback<Action>,
    /// Problems of the job as a whole that belong to a field.
    pub problems: Rc<Vec<Problem>>,
}

impl Ask {
    /// The text at an address.
    pub fn text(&self, address: &str) -> AttrValue {
        AttrValue::from(self.state.draft.text(address).to_owned())
    }

    /// What a field was last read as, for a sentence.
    pub fn shown(&self, address: &str) -> String {
        let draft = &self.state.draft;
        let text = draft.text(address);
        let echo = |text: &str| {
            entries::read(address, text)
                .and_then(Result::ok)
                .map(|e| e.text)
        };
        echo(text)
            .or_else(|| {
                draft
                    .good(address)
                    .filter(|_| !text.trim().is_empty())
                    .and_then(echo)
            })
            .unwrap_or_else(|| words::empty_field(address).to_owned())
    }

    /// The word picked there for the present process.
    pub fn scoped(&self, address: &str) -> AttrValue {
        AttrValue::from(self.state.draft.scoped(address).to_owned())
    }

    /// Picks a word at an address.
    pub fn pick(&self, address: &str) -> Callback<String> {
        let address = address.to_owned();
        self.act
            .reform(move |word| Action::Picked(address.clone(), word))
    }

    /// A number field.
    pub fn field(&self, address: &str) -> Html {
        let id = AttrValue::from(address.to_owned());
        let typed = address.to_owned();
        let text = self.state.draft.text(address);
        let label = words::field(address);
        let read = entries::read(address, text);
        let unit = entries::declared(address).map_or("", |d| d.unit());
        let (echo, own) = match read {
            Some(Ok(echo)) => (echo.show.then(|| format!("read as {}", echo.text)), None),
            Some(Err(problem)) => (None, Some(words::problem(&problem, label))),
            None => (None, None),
        };
        let problem = own.or_else(|| {
            self.problems
                .iter()
                .find(|p| p.field.as_str() == address)
                .map(|p| words::problem(p, label))
        });
        html! {
            <NumberField key={address} {id} {label} {unit} text={text.to_owned()} empty={words::empty_field(address)}
                echo={echo.map(AttrValue::from)} problem={problem.map(AttrValue::from)}
                ontext={self.act.reform(move |text| Action::Typed(typed.clone(), text))}
                onleave={self.act.reform(|()| Action::Left)} />
        }
    }
}

/// What the place needs.
#[derive(Properties, PartialEq)]
pub struct PlanProps {
    /// The draft and the ways to change it.
    pub ask: Ask,
    /// The answer.
    pub shown: Shown,
    /// The answer's head, to know when it is out of view.
    pub head: NodeRef,
    /// Something to say about storage, if anything.
    pub shelf_note: Option<AttrValue>,
    /// A text that was set aside, and why.
    pub aside: Option<(AttrValue, AttrValue)>,
}

/// The place.
#[component]
pub fn Plan(props: &PlanProps) -> Html {
    let ask = &props.ask;
    let shown = &props.shown;
    let undo = ask.act.reform(|_: MouseEvent| Action::Undid);
    let example = ask.act.reform(|_: MouseEvent| Action::StartedFromExample);
    html! {
        <main class="plan">
            <h1 class="unseen">{ words::PAGE }</h1>
            <div class="give">
                <section class="answer" ref={props.head.clone()} data-stands-in={shown.stands_in.to_string()}>
                    { answer::head(shown) }
                </section>
                <div class="beside">
                    { answer::problems(shown, &ask.problems) }
                    { answer::limits(shown) }
                </div>
                { answer::wall(shown) }
            </div>
            <div class="ask">
                <Questions ask={ask.clone()} />
                <Setup ask={ask.clone()} />
                <div class="actions">
                    <button type="button" class="button" onclick={undo} disabled={!ask.state.can_undo()}>{ words::UNDO }</button>
                    <button type="button" class="button" onclick={example}>{ words::EXAMPLE }</button>
                </div>
                if let Some(text) = &props.shelf_note {
                    <p class="soft shelf">{ text }</p>
                }
                if let Some((why, text)) = &props.aside {
                    <details class="aside">
                        <summary>{ why }</summary>
                        <pre>{ text }</pre>
                    </details>
                }
            </div>
            <div class="detail">
                { answer::first(shown) }
                { answer::course(shown) }
                { answer::cautions(shown) }
                { answer::density(shown) }
                if worth_showing(shown) {
                    { working(shown) }
                    <Share text={shown.as_text().join("\n")} />
                }
            </div>
        </main>
    }
}

/// The words for what the piece is made of, for the drawing.
pub fn core(state: &State) -> &'static str {
    match state.draft.scoped(at::BASE) {
        "copper" | "graphite" | "silver" => "the piece, sealed and coated",
        id => match words::metal(id) {
            "" => "the piece",
            name => name,
        },
    }
}
