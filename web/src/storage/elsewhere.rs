//! Notices that another window may have changed the shelf.

use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::*;
use yew::prelude::*;

/// Counts the occasions: another window wrote, or this one comes back into view after a sleep in which it was told nothing.
#[hook]
pub fn use_elsewhere() -> u32 {
    let count = use_state_eq(|| 0_u32);
    {
        let count = count.clone();
        use_effect_with((), move |()| {
            let mut seen = 0_u32;
            let tell = Closure::<dyn FnMut()>::new(move || {
                seen = seen.wrapping_add(1);
                count.set(seen);
            });
            let window = web_sys::window();
            let targets: Vec<web_sys::EventTarget> = window
                .iter()
                .flat_map(|w| [Some(w.clone().into()), w.document().map(Into::into)])
                .flatten()
                .collect();
            let events = ["storage", "visibilitychange"];
            for (target, event) in targets.iter().zip(events) {
                let _ =
                    target.add_event_listener_with_callback(event, tell.as_ref().unchecked_ref());
            }
            move || {
                for (target, event) in targets.iter().zip(events) {
                    let _ = target
                        .remove_event_listener_with_callback(event, tell.as_ref().unchecked_ref());
                }
                drop(tell);
            }
        });
    }
    *count
}
