//! The emergency lines, one tap away from everywhere.

use crate::words;
use yew::prelude::*;

/// What the sheet needs.
#[derive(Properties, PartialEq)]
pub struct EmergencyProps {
    /// Closed.
    pub onclose: Callback<()>,
}

/// The sheet over the page.
#[component]
pub fn Emergency(props: &EmergencyProps) -> Html {
    let close = use_node_ref();
    {
        let close = close.clone();
        use_effect_with((), move |()| {
            if let Some(button) = close.cast::<web_sys::HtmlElement>() {
                let _ = button.focus();
            }
        });
    }
    let onclick = props.onclose.reform(|_: MouseEvent| ());
    let onkeydown = {
        let onclose = props.onclose.clone();
        Callback::from(move |e: KeyboardEvent| {
            if e.key() == "Escape" {
                onclose.emit(());
            }
        })
    };
    html! {
        <div class="sheet" role="dialog" aria-modal="true" aria-labelledby="emergency-title" {onkeydown}>
            <h2 id="emergency-title">{ words::EMERGENCY }</h2>
            <dl>
                for (what, then) in words::EMERGENCY_LINES {
                    <dt>{ *what }</dt>
                    <dd>{ *then }</dd>
                }
            </dl>
            <p class="soft">{ words::EMERGENCY_NOTE }</p>
            <button ref={close} type="button" class="button" {onclick}>{ words::CLOSE }</button>
        </div>
    }
}
