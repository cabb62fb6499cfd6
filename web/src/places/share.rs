//! The plan as a text to copy, and on paper.

use crate::words;
use yew::prelude::*;

/// What the part needs.
#[derive(Properties, PartialEq)]
pub struct ShareProps {
    /// The plan, a line for each thing to do or to know.
    pub text: AttrValue,
}

/// The text, closed until asked for, with a button that copies it and one that prints the page.
#[component]
pub fn Share(props: &ShareProps) -> Html {
    let copied = use_state_eq(|| false);
    {
        let copied = copied.clone();
        use_effect_with(props.text.clone(), move |_| copied.set(false));
    }
    let copy = {
        let (copied, text) = (copied.clone(), props.text.clone());
        Callback::from(move |_: MouseEvent| copied.set(crate::browser::copy(&text)))
    };
    let print = Callback::from(|_: MouseEvent| {
        if let Some(window) = web_sys::window() {
            let _ = window.print();
        }
    });
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
            </div>
        </section>
    }
}
