//! An almost empty page: a field, and what stands in it. `cargo xtask measure` packs it as it packs the page and measures
//! both, so that what the page costs stands beside what its frame costs. It is never shipped.

use wasm_bindgen::JsCast;
use web_sys::HtmlInputElement;
use yew::prelude::*;

#[component]
fn Empty() -> Html {
    let typed = use_state(|| "22".to_owned());
    let oninput = {
        let typed = typed.clone();
        Callback::from(move |event: InputEvent| {
            let field = event.target().and_then(|t| t.dyn_into().ok());
            if let Some(field) = field.map(|field: HtmlInputElement| field.value()) {
                typed.set(field);
            }
        })
    };
    html! {
        <>
            <input id="field" value={(*typed).clone()} {oninput} />
            <p id="set">{ &*typed }</p>
        </>
    }
}

fn main() {
    let root = web_sys::window()
        .and_then(|w| w.document())
        .and_then(|d| d.get_element_by_id("app"));
    if let Some(root) = root {
        yew::Renderer::<Empty>::with_root(root).render();
    }
}
