//! Several plans: which is open, another, one from an example, one as a text to send, one that was sent.

use super::compare::Compare;
use crate::state::drafts::Act;
use crate::state::{Action, State, demos, sent};
use crate::words::{self, drafts as said};
use notebook::jobtext::Taken;
use std::rc::Rc;
use web_sys::{HtmlInputElement, HtmlTextAreaElement};
use yew::prelude::*;

/// What the part needs.
#[derive(Properties, PartialEq)]
pub struct DraftsProps {
    /// The drafts.
    pub state: Rc<State>,
    /// What the person does.
    pub act: Callback<Action>,
}

/// One quiet line, and everything behind it.
#[component]
pub fn Drafts(props: &DraftsProps) -> Html {
    let shown = use_state_eq(|| false);
    let toggle = {
        let shown = shown.clone();
        Callback::from(move |_: MouseEvent| shown.set(!*shown))
    };
    let book = props.state.book();
    let open = book.open_id();
    let own = book.open().map_or("", |named| named.name.as_str());
    let label = if *shown { words::DONE } else { said::PLANS };
    html! {
        <section class="card drafts">
            <h2 class="unseen">{ said::HEADING }</h2>
            <div class="line">
                <p class="soft">{ said::name(open, own) }</p>
                <button type="button" class="link" aria-expanded={(*shown).to_string()} aria-controls="drafts" onclick={toggle}>{ label }</button>
            </div>
            <div id="drafts" hidden={!*shown}>
                if *shown {
                    { list(props) }
                    <Compare book={book.clone()} />
                    { actions(props) }
                    { examples(&props.act) }
                    { send(props) }
                    <Take act={props.act.clone()} />
                }
            </div>
        </section>
    }
}

/// A button that does something to the drafts.
fn button(act: &Callback<Action>, class: &'static str, does: Act, label: Html) -> Html {
    let onclick = act.reform(move |_: MouseEvent| Action::Drafts(does.clone()));
    html! { <button type="button" {class} {onclick}>{ label }</button> }
}

fn list(props: &DraftsProps) -> Html {
    let book = props.state.book();
    let rows = book.iter().map(|(id, named)| {
        let current = id == book.open_id();
        let onclick = props
            .act
            .reform(move |_: MouseEvent| Action::Drafts(Act::Opened(id)));
        html! {
            <li key={id.to_string()}>
                <button type="button" class="option" aria-current={current.then_some("true")} {onclick}>
                    <span class="label">{ said::name(id, &named.name) }</span>
                    <span class="remark">{ said::line(&named.draft) }</span>
                </button>
            </li>
        }
    });
    html! { <ul class="options">{ for rows }</ul> }
}

fn actions(props: &DraftsProps) -> Html {
    let book = props.state.book();
    let open = book.open_id();
    let name = book.open().map_or("", |named| named.name.as_str());
    let oninput = props.act.reform(|e: InputEvent| {
        let name = e.target_unchecked_into::<HtmlInputElement>().value();
        Action::Drafts(Act::Renamed(name))
    });
    let onblur = props.act.reform(|_: FocusEvent| Action::Left);
    let remove = props
        .act
        .reform(move |_: MouseEvent| Action::Drafts(Act::Removed(open)));
    let act = &props.act;
    html! {
        <>
            <div class="field own">
                <label for="draft-name">{ said::NAME }</label>
                <div class="entry">
                    <input id="draft-name" type="text" autocomplete="off" placeholder={said::unnamed(open)} value={name.to_owned()}
                        {oninput} {onblur} />
                </div>
            </div>
            <div class="actions own">
                { button(act, "button", Act::Began, said::NEW.into()) }
                { button(act, "button", Act::Copied, said::AGAIN.into()) }
                <button type="button" class="button" onclick={remove} disabled={book.count() < 2}>{ said::REMOVE }</button>
                <button type="button" class="button" onclick={act.reform(|_: MouseEvent| Action::Undid)}
                    disabled={!props.state.can_undo()}>{ words::UNDO }</button>
            </div>
        </>
    }
}

fn examples(act: &Callback<Action>) -> Html {
    let all = demos::ids().map(|id| {
        let label = html! { <span class="label">{ said::demo(id) }</span> };
        html! { <li key={id} data-demo={id}>{ button(act, "option", Act::StartedFrom(id.to_owned()), label) }</li> }
    });
    html! {
        <details>
            <summary>{ said::EXAMPLES }</summary>
            <ul class="options">{ for all }</ul>
        </details>
    }
}

fn send(props: &DraftsProps) -> Html {
    let Some(open) = props.state.book().open() else {
        return Html::default();
    };
    html! {
        <details class="send">
            <summary>{ said::SEND }</summary>
            <Send text={sent::text_of(open)} />
        </details>
    }
}

#[derive(Properties, PartialEq)]
struct SendProps {
    text: AttrValue,
}

/// The open plan as a text, and a button that copies it.
#[component]
fn Send(props: &SendProps) -> Html {
    let copied = use_state_eq(|| AttrValue::from(""));
    let copy = {
        let (copied, text) = (copied.clone(), props.text.clone());
        Callback::from(move |_: MouseEvent| {
            if crate::browser::copy(&text) {
                copied.set(text.clone());
            }
        })
    };
    // What was copied before a change is not what stands here now.
    let label = if *copied == props.text {
        words::COPIED
    } else {
        words::COPY
    };
    html! {
        <>
            <p class="soft">{ said::SEND_HOW }</p>
            <pre tabindex="0">{ &props.text }</pre>
            <button type="button" class="button" onclick={copy}>{ label }</button>
        </>
    }
}

#[derive(Properties, PartialEq)]
struct TakeProps {
    act: Callback<Action>,
}

/// Takes in a plan that was sent. The text stays in the field, so that what could not be read can be compared with it.
#[component]
fn Take(props: &TakeProps) -> Html {
    let text = use_state_eq(String::new);
    let found = use_state_eq(|| None);
    let oninput = {
        let (text, found) = (text.clone(), found.clone());
        Callback::from(move |e: InputEvent| {
            found.set(None);
            text.set(e.target_unchecked_into::<HtmlTextAreaElement>().value());
        })
    };
    let take = {
        let (text, found, act) = (text.clone(), found.clone(), props.act.clone());
        Callback::from(move |_: MouseEvent| {
            let read = sent::read(&text);
            if let Ok(Taken { named, .. }) = &read {
                act.emit(Action::Drafts(Act::Took(named.clone())));
            }
            found.set(Some(read.map(|taken| taken.remarks)));
        })
    };
    let (said_of_it, remarks) = match &*found {
        None => ("", [].as_slice()),
        Some(Err(why)) => (said::not_read(*why), [].as_slice()),
        Some(Ok(remarks)) if remarks.is_empty() => (said::TAKEN, [].as_slice()),
        Some(Ok(remarks)) => (said::TAKEN_BUT, remarks.as_slice()),
    };
    html! {
        <details class="take">
            <summary>{ said::TAKE }</summary>
            <div class="field">
                <label for="take">{ said::PASTE }</label>
                <textarea id="take" rows="6" autocomplete="off" spellcheck="false" aria-describedby="take-help" {oninput} value={(*text).clone()} />
            </div>
            <div id="take-help" role="status">
                <p>{ said_of_it }</p>
                <ul>
                    for remark in remarks {
                        <li>{ said::remark(remark) }</li>
                    }
                </ul>
            </div>
            <button type="button" class="button" onclick={take}>{ said::TAKE_IN }</button>
        </details>
    }
}
