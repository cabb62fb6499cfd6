//! The emergency lines, one tap away from everywhere.

use crate::words;
use web_sys::HtmlDialogElement;
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
    // The browser's own dialogue: it keeps the focus in itself, closes by Escape, and gives the focus back.
    let sheet = use_node_ref();
    use_effect_with(sheet.clone(), |sheet| {
        if let Some(sheet) = sheet.cast::<HtmlDialogElement>() {
            let _ = sheet.show_modal();
        }
    });
    let onclick = {
        let sheet = sheet.clone();
        Callback::from(move |_: MouseEvent| {
            if let Some(sheet) = sheet.cast::<HtmlDialogElement>() {
                sheet.close();
            }
        })
    };
    let onclose = props.onclose.reform(|_: Event| ());
    html! {
        <dialog ref={sheet} class="sheet" aria-labelledby="emergency-title" {onclose}>
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
            <button type="button" class="button" {onclick}>{ words::CLOSE }</button>
        </dialog>
    }
}
