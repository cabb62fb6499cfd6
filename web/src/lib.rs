//! The page: places, parts, state, words, storage. No physics.
use yew::prelude::*;

/// The whole page.
#[component]
pub fn App() -> Html {
    html! { <main><h1>{ "Ionwright" }</h1></main> }
}
