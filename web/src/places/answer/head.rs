//! The head of the page: what to set now, the turns, what comes of it.

use super::outcome::outcome;
use super::turns::Turn;
use super::{Shown, absence_of};
use crate::words::{self, number};
use yew::prelude::*;

/// The head of the page.
pub fn head(shown: &Shown) -> Html {
    let Some(setting) = shown.now() else {
        return nothing(shown);
    };
    let step = shown.answer.steps.first();
    let volts = step.and_then(|s| s.set_volts);
    let ceiling = step.and_then(|s| s.ceiling.known());
    let (figure, unit) = match volts {
        Some(volts) => (number::hundredth_volts(volts), "V"),
        None => number::current_parts(setting.set, shown.display),
    };
    // Beside it the ceiling; of a supply that holds the volts what then flows.
    let second = match volts {
        Some(_) => Some((words::FLOWS, number::current_parts(setting.set, None))),
        None => ceiling.map(|c| (words::CEILING, (number::tenth_volts(c.set), "V"))),
    };
    html! {
        <>
            if shown.stands_in {
                <p class="stands-in">{ words::LAST_GOOD }</p>
            }
            <div class="now">
                <p class="figure">
                    <span class="over">{ words::SET_NOW }</span>
                    <span class="number" id="set">{ figure }<span class="unit">{ "\u{a0}" }{ unit }</span></span>
                </p>
                if let Some((over, (figure, unit))) = second {
                    <p class="figure second">
                        <span class="over">{ over }</span>
                        <span class="number">{ figure }<span class="unit">{ "\u{a0}" }{ unit }</span></span>
                    </p>
                }
            </div>
            <ol class="moments">
                for turn in shown.turns() {
                    { row(turn) }
                }
            </ol>
            { outcome(shown) }
        </>
    }
}

/// No current can be given: say what for.
fn nothing(shown: &Shown) -> Html {
    let why = shown.answer.steps.first().map(|s| absence_of(&s.current));
    html! {
        <>
            <p class="none">{ words::NO_ANSWER }</p>
            <p class="soft">{ why.unwrap_or_default() }</p>
        </>
    }
}

pub(super) fn row(turn: Turn) -> Html {
    html! {
        <li>
            <span class="when">{ turn.when.unwrap_or_default() }</span>
            <span class="what">{ turn.words }</span>
            <span class="value">{ turn.value }</span>
            if let Some(more) = turn.more {
                <span class="more">{ more }</span>
            }
        </li>
    }
}
