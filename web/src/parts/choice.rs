//! Choices: a list to select from, and cards to tap.

use web_sys::{HtmlInputElement, HtmlSelectElement};
use yew::prelude::*;

/// Words of a choice with their labels: a fixed table, or one put together for this job.
#[derive(Clone, PartialEq)]
pub enum Options {
    /// A fixed table.
    Fixed(&'static [(&'static str, &'static str)]),
    /// Put together.
    Made(Vec<(&'static str, &'static str)>),
    /// Words and labels of the person's own making.
    Own(Vec<(AttrValue, AttrValue)>),
}

impl From<&'static [(&'static str, &'static str)]> for Options {
    fn from(table: &'static [(&'static str, &'static str)]) -> Self {
        Options::Fixed(table)
    }
}

impl Options {
    fn all(&self) -> Vec<(AttrValue, AttrValue)> {
        let fixed: &[(&'static str, &'static str)] = match self {
            Options::Fixed(table) => table,
            Options::Made(list) => list,
            Options::Own(list) => return list.clone(),
        };
        let one = |(word, label): &(&'static str, &'static str)| {
            (AttrValue::Static(word), AttrValue::Static(label))
        };
        fixed.iter().map(one).collect()
    }
}

/// What a select needs.
#[derive(Properties, PartialEq)]
pub struct SelectProps {
    /// Address of the input, and id of the element.
    pub id: AttrValue,
    /// What it is.
    pub label: AttrValue,
    /// Words and their labels.
    pub options: Options,
    /// The picked word.
    pub picked: AttrValue,
    /// Picked another.
    pub onpick: Callback<String>,
}

/// A list to select from. Every option says whether it is the picked one: a select's own value is ignored on insertion.
#[component]
pub fn Select(props: &SelectProps) -> Html {
    let onchange = props
        .onpick
        .reform(|e: Event| e.target_unchecked_into::<HtmlSelectElement>().value());
    html! {
        <div class="field select">
            <label for={props.id.clone()}>{ &props.label }</label>
            <div class="entry">
                <select id={props.id.clone()} {onchange}>
                    for (word, label) in props.options.all() {
                        <option key={word.to_string()} value={&word} selected={props.picked == word}>{ label }</option>
                    }
                </select>
            </div>
            <p class="help" aria-hidden="true"></p>
        </div>
    }
}

/// One card.
#[derive(Clone, PartialEq)]
pub struct Card {
    /// The word picked by it.
    pub word: &'static str,
    /// Its label.
    pub label: AttrValue,
    /// A remark at its side.
    pub remark: AttrValue,
    /// A small drawing above the label.
    pub drawing: Option<Html>,
}

/// What a set of cards needs.
#[derive(Properties, PartialEq)]
pub struct CardsProps {
    /// Address of the input.
    pub id: AttrValue,
    /// The question, read aloud before the cards.
    pub legend: AttrValue,
    /// The cards.
    pub cards: Vec<Card>,
    /// The picked word.
    pub picked: AttrValue,
    /// Side by side, or one under the other.
    #[prop_or_default]
    pub across: bool,
    /// Picked another.
    pub onpick: Callback<String>,
}

/// Cards to tap, one of which is picked.
#[component]
pub fn Cards(props: &CardsProps) -> Html {
    let onchange = props
        .onpick
        .reform(|e: Event| e.target_unchecked_into::<HtmlInputElement>().value());
    let class = if props.across {
        "options across"
    } else {
        "options"
    };
    html! {
        <fieldset {class}>
            <legend class="unseen">{ &props.legend }</legend>
            for card in &props.cards {
                <label key={card.word} class="option">
                    <input type="radio" id={format!("{}={}", props.id, card.word)} name={props.id.clone()} value={card.word}
                        checked={props.picked == card.word} onchange={onchange.clone()} />
                    { card.drawing.clone().unwrap_or_default() }
                    <span class="label">{ &card.label }</span>
                    <span class="remark">{ &card.remark }</span>
                </label>
            }
        </fieldset>
    }
}
