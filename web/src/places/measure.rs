//! Measuring a piece better than by eye.

use super::ask::Ask;
use super::questions::select;
use crate::state::{Action, at, measured};
use crate::words::{self, number};
use yew::prelude::*;

/// What the part needs.
#[derive(Properties, PartialEq)]
pub struct MeasureProps {
    /// The draft and the ways to change it.
    pub ask: Ask,
}

/// Closed until asked for: a way to measure, its readings, the area found and a button that takes it.
#[component]
pub fn Measure(props: &MeasureProps) -> Html {
    let open = use_state_eq(|| false);
    let toggle = {
        let open = open.clone();
        Callback::from(move |_: MouseEvent| open.set(!*open))
    };
    let ask = &props.ask;
    html! {
        <div class="measure">
            <button type="button" class="link" aria-expanded={(*open).to_string()} aria-controls="measure" onclick={toggle}>
                { words::MEASURE }
            </button>
            <div id="measure" hidden={!*open}>
                if *open {
                    { panel(ask) }
                }
            </div>
        </div>
    }
}

fn panel(ask: &Ask) -> Html {
    let way = ask.text(at::MEASURE);
    let fields: &[&str] = match way.as_str() {
        "card" => &[at::CARD_LONG, at::CARD_SHORT, at::CARD_PIECE],
        "foil" => &[at::WRAP, at::SCALE_STEP],
        _ => &[at::TRACING, at::SQUARE, at::SQUARE_AREA, at::SCALE_STEP],
    };
    let found = measured::area(&ask.state.draft, &ask.piece);
    let take = found.map(|found| {
        let texts = measured::texts(&ask.state.draft, &ask.piece, &found);
        ask.act
            .reform(move |_: MouseEvent| Action::Wrote(texts.clone()))
    });
    html! {
        <>
            <div class="fields">
                { select(ask, at::MEASURE) }
                if way.as_str() == "foil" {
                    { select(ask, at::FOIL) }
                }
                for address in fields {
                    { ask.field(address) }
                }
            </div>
            <p class="soft">{ words::how_to_measure(&way) }</p>
            if let Some((found, take)) = found.zip(take) {
                <div class="actions">
                    <p role="status">{ words::found_area(&number::area(found.value), found.spread) }</p>
                    <button type="button" class="button" onclick={take}>{ words::USE_AREA }</button>
                </div>
            }
        </>
    }
}
