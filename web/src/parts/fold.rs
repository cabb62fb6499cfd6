//! A card that opens and closes by its heading.

use yew::prelude::*;

/// What the card needs.
#[derive(Properties, PartialEq)]
pub struct FoldProps {
    /// Id of what opens.
    pub id: AttrValue,
    /// Its heading.
    pub title: AttrValue,
    /// What is in it, asked for with whether it is open: what is long is made only then.
    pub body: Callback<bool, Html>,
}

/// Closed until asked for.
#[component]
pub fn Fold(props: &FoldProps) -> Html {
    let open = use_state_eq(|| false);
    let toggle = {
        let open = open.clone();
        Callback::from(move |_: MouseEvent| open.set(!*open))
    };
    html! {
        <section class={["card fold ", &props.id].concat()}>
            <h2>
                <button type="button" class="link" aria-expanded={(*open).to_string()} aria-controls={&props.id} onclick={toggle}>
                    { &props.title }
                </button>
            </h2>
            <div id={&props.id} hidden={!*open}>{ props.body.emit(*open) }</div>
        </section>
    }
}
