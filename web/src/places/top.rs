//! The bar at the top: the name, or the answer in a line once its head has scrolled away; and the emergency lines.

use crate::words;
use yew::prelude::*;

/// What the bar needs.
#[derive(Properties, PartialEq)]
pub struct TopProps {
    /// The answer in a line.
    pub parts: Vec<String>,
    /// Whether the answer's head is out of view.
    pub strip: bool,
    /// Whether the answer stands on an earlier entry.
    pub stands_in: bool,
    /// What is left of the eye rinse, where one runs.
    pub rinse: Option<AttrValue>,
    /// Emergency was asked for.
    pub onemergency: Callback<()>,
}

/// The bar.
#[component]
pub fn Top(props: &TopProps) -> Html {
    let onclick = props.onemergency.reform(|_: MouseEvent| ());
    let strip = props.strip && !props.parts.is_empty();
    html! {
        <header class="top" data-strip={strip.to_string()}>
            if strip {
                <p class="strip" aria-hidden="true" data-stands-in={props.stands_in.to_string()}>
                    for part in &props.parts {
                        <span>{ part }</span>
                    }
                </p>
            } else {
                <p class="name">{ words::NAME }</p>
            }
            <button type="button" class="emergency" {onclick}>
                <svg viewBox="0 0 24 24" aria-hidden="true">
                    <path d="M9 3h6v6h6v6h-6v6H9v-6H3V9h6Z" fill="none" stroke="currentColor" stroke-width="2" stroke-linejoin="round" />
                </svg>
                if let Some(left) = &props.rinse {
                    <strong>{ left }</strong>
                } else {
                    <span>{ words::EMERGENCY }</span>
                }
            </button>
        </header>
    }
}
