//! A field for a number with a unit. What was typed stays as typed; a problem is shown on leaving the field.

use crate::words;
use web_sys::HtmlInputElement;
use yew::prelude::*;

/// What a number field needs.
#[derive(Properties, PartialEq)]
pub struct NumberFieldProps {
    /// Address of the input, and id of the element.
    pub id: AttrValue,
    /// What it is.
    pub label: AttrValue,
    /// The unit a bare number is in.
    #[prop_or_default]
    pub unit: AttrValue,
    /// Exactly what was typed.
    pub text: AttrValue,
    /// What an empty field means.
    #[prop_or_default]
    pub empty: AttrValue,
    /// What was read, where that is worth saying.
    #[prop_or_default]
    pub echo: Option<AttrValue>,
    /// Why it cannot be read.
    #[prop_or_default]
    pub problem: Option<AttrValue>,
    /// Takes words, not numbers.
    #[prop_or_default]
    pub letters: bool,
    /// Large minus and plus beside it: down or up.
    #[prop_or_default]
    pub steps: Option<Callback<bool>>,
    /// Typed: the whole text.
    pub ontext: Callback<String>,
    /// Left.
    pub onleave: Callback<()>,
}

/// The field.
#[component]
pub fn NumberField(props: &NumberFieldProps) -> Html {
    // A field that is wrong when the page opens says so at once; while typing, only after it was left.
    let left = use_state_eq(|| true);
    let oninput = {
        let (left, ontext) = (left.clone(), props.ontext.clone());
        Callback::from(move |e: InputEvent| {
            left.set(false);
            ontext.emit(e.target_unchecked_into::<HtmlInputElement>().value());
        })
    };
    let onblur = {
        let (left, onleave) = (left.clone(), props.onleave.clone());
        Callback::from(move |_: FocusEvent| {
            left.set(true);
            onleave.emit(());
        })
    };
    let problem = props.problem.clone().filter(|_| *left);
    let help = format!("{}-help", props.id);
    let read = props.echo.clone();
    let step = |up: bool, sign: &'static str, name: String| {
        props.steps.as_ref().map(|steps| {
            let onclick = steps.reform(move |_: MouseEvent| up);
            html! { <button type="button" class="step" aria-label={name} {onclick}>{ sign }</button> }
        })
    };
    html! {
        <div class="field">
            <label for={props.id.clone()}>
                { &props.label }
                if !props.unit.is_empty() {
                    <span class="unseen">{ format!(", {}", props.unit) }</span>
                }
            </label>
            <div class="entry" data-problem={problem.is_some().to_string()}>
                { step(false, "−", words::one_less(&props.label)) }
                <input id={props.id.clone()} type="text" inputmode={if props.letters { "text" } else { "decimal" }} autocomplete="off" spellcheck="false"
                    placeholder={props.empty.clone()} value={props.text.clone()} {oninput} {onblur}
                    aria-describedby={help.clone()} aria-invalid={problem.is_some().then_some("true")} />
                <span class="unit" aria-hidden="true">{ &props.unit }</span>
                { step(true, "+", words::one_more(&props.label)) }
            </div>
            <p id={help} class="help" role="status" data-kind={if problem.is_some() { "problem" } else { "echo" }}>
                { problem.or(read).unwrap_or_default() }
            </p>
        </div>
    }
}
