//! A newer edition of the page waits; it comes when the person says so.

use crate::browser::{take_over, use_edition};
use crate::words;
use yew::prelude::*;

/// What the line needs.
#[derive(Properties, PartialEq)]
pub struct EditionProps {
    /// Whether everything typed is on the shelf. While it is not, a reload would lose it, and nothing is offered.
    pub kept: bool,
}

/// A quiet line at the foot of the window, where it moves nothing that is in hand.
#[component]
pub fn Edition(props: &EditionProps) -> Html {
    let offered = use_edition() && props.kept;
    let onclick = Callback::from(|_: MouseEvent| take_over());
    html! {
        <div class="edition" role="status">
            if offered {
                <p>{ words::EDITION }</p>
                <button type="button" class="button" {onclick}>{ words::TAKE_OVER }</button>
            }
        </div>
    }
}
