//! A card: a heading and what belongs under it.

use yew::prelude::*;

/// A card of this kind.
pub fn card(class: &'static str, title: &'static str, body: Html) -> Html {
    html! {
        <section {class}>
            <h2>{ title }</h2>
            { body }
        </section>
    }
}
