//! The plan as a text to copy, on paper, and in a copy of the page.

use crate::browser;
use crate::state::State;
use crate::words::{self, drafts};
use notebook::carried;
use std::rc::Rc;
use yew::prelude::*;

/// What the part needs.
#[derive(Properties, PartialEq)]
pub struct ShareProps {
    /// The plan, a line for each thing to do or to know.
    pub text: AttrValue,
    /// The plan that a copy of the page carries.
    pub state: Rc<State>,
}

/// The text, closed until asked for, with buttons that copy it, print the page and save the page with the plan in it.
#[component]
pub fn Share(props: &ShareProps) -> Html {
    let copied = use_state_eq(|| false);
    {
        let copied = copied.clone();
        use_effect_with(props.text.clone(), move |_| copied.set(false));
    }
    let copy = {
        let (copied, text) = (copied.clone(), props.text.clone());
        Callback::from(move |_: MouseEvent| copied.set(browser::copy(&text)))
    };
    let print = Callback::from(|_: MouseEvent| {
        if let Some(window) = web_sys::window() {
            let _ = window.print();
        }
    });
    let saved = use_state_eq(|| None::<bool>);
    {
        let saved = saved.clone();
        use_effect_with(props.state.clone(), move |_| saved.set(None));
    }
    let save = {
        let (saved, state) = (saved.clone(), props.state.clone());
        Callback::from(move |_: MouseEvent| {
            let book = state.book();
            saved.set(book.open().map(|open| {
                let name = drafts::file_name(book.open_id(), &open.name);
                browser::save_copy(&carried::write(open), &name)
            }));
        })
    };
    let save_label = match *saved {
        None => words::SAVE_COPY,
        Some(true) => words::SAVED_COPY,
        Some(false) => words::NO_COPY,
    };
    let label = if *copied { words::COPIED } else { words::COPY };
    html! {
        <section class="card share">
            <details>
                <summary>{ words::AS_TEXT }</summary>
                <pre>{ &props.text }</pre>
            </details>
            <div class="actions">
                <button type="button" class="button" onclick={copy}>{ label }</button>
                <button type="button" class="button" onclick={print}>{ words::PRINT }</button>
                <button type="button" class="button" id="save-copy" onclick={save}>{ save_label }</button>
            </div>
        </section>
    }
}
