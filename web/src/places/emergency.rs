//! The emergency lines, one tap away from everywhere.

use crate::words;
use yew::prelude::*;

/// What the sheet needs.
#[derive(Properties, PartialEq)]
pub struct EmergencyProps {
    /// What is left of the eye rinse, where one runs.
    pub rinse: Option<AttrValue>,
    /// The rinse begins, or ends.
    pub onrinse: Callback<bool>,
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
            <div class="rinse">
                if let Some(left) = &props.rinse {
                    <p class="clock" role="timer">{ left }</p>
                    <button type="button" class="button" onclick={props.onrinse.reform(|_: MouseEvent| false)}>{ words::RINSE_STOP }</button>
                } else {
                    <button type="button" class="button" onclick={props.onrinse.reform(|_: MouseEvent| true)}>{ words::RINSE_START }</button>
                }
            </div>
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
