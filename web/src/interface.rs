//! The JavaScript interface: `ionwright.answer(question)` with objects, `ionwright.answerText(line)` with texts. The
//! same answers as the host's, byte for byte.

use planner::question::{answer_tree, to_line};
use planner::{Catalogue, answer_text};
use serde::Serialize;
use serde_json::Value;
use serde_wasm_bindgen::Serializer;
use wasm_bindgen::prelude::*;

/// Puts the interface on the window.
pub fn offer() -> Option<()> {
    let offered = js_sys::Object::new();
    let text = Closure::<dyn Fn(String) -> String>::new(|line: String| {
        answer_text(&Catalogue::standard(), &line)
    });
    let object = Closure::<dyn Fn(JsValue) -> Result<JsValue, JsValue>>::new(answer_object);
    js_sys::Reflect::set(&offered, &"answerText".into(), &text.into_js_value()).ok()?;
    js_sys::Reflect::set(&offered, &"answer".into(), &object.into_js_value()).ok()?;
    js_sys::Reflect::set(&web_sys::window()?.into(), &"ionwright".into(), &offered).ok()?;
    Some(())
}

fn answer_object(question: JsValue) -> Result<JsValue, JsValue> {
    let tree: Value = serde_wasm_bindgen::from_value(question)?;
    // By way of the text: one way of writing an answer, and half the code.
    let text = to_line(&answer_tree(&Catalogue::standard(), &tree));
    let tree: Value = serde_json::from_str(&text).unwrap_or_default();
    Ok(tree.serialize(&Serializer::json_compatible())?)
}
