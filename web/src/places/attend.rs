//! When somebody is there: closed until asked for.

use super::ask::Ask;
use crate::parts::Fold;
use crate::state::{at, pieces};
use crate::words::{self, after};
use yew::prelude::*;

/// The card.
pub fn attend(ask: &Ask) -> Html {
    let ask = ask.clone();
    let body = Callback::from(move |open| if open { fields(&ask) } else { Html::default() });
    html! { <Fold id="attend" title={after::ATTEND} {body} /> }
}

fn fields(ask: &Ask) -> Html {
    let draft = &ask.state.draft;
    let coated = |id: &&str| {
        let base = draft.scoped(&at::of(at::BASE, id));
        ["copper", "graphite", "silver"].contains(&base)
    };
    let coat = pieces::ids(draft).iter().any(coated);
    html! {
        <>
            <p class="soft">{ after::ATTEND_NOTE }</p>
            <div class="fields">
                { ask.field(at::SESSION) }
                { ask.field(at::BETWEEN) }
                if coat {
                    { ask.field(at::CURE) }
                    { ask.field(at::DRY) }
                }
                { ask.name_field(at::DUE, words::empty_field(at::DUE)) }
            </div>
        </>
    }
}
