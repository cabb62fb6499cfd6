//! Notes: a statement, and what to do about it.

use yew::prelude::*;

/// How grave a note is. Each has its own sign, so that colour never speaks alone.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Weight {
    /// Have a look.
    Look,
    /// Stop and think.
    Stop,
    /// Something went well or is worth knowing.
    Quiet,
}

/// A note.
pub fn note(weight: Weight, statement: &str, then: &str) -> Html {
    let (kind, sign) = match weight {
        Weight::Look => ("look", triangle()),
        Weight::Stop => ("stop", octagon()),
        Weight::Quiet => ("quiet", Html::default()),
    };
    html! {
        <div class="note" data-kind={kind}>
            { sign }
            <p>
                if !statement.is_empty() {
                    <strong>{ statement }</strong>{ " " }
                }
                { then }
            </p>
        </div>
    }
}

fn triangle() -> Html {
    html! {
        <svg class="sign" viewBox="0 0 24 24" aria-hidden="true">
            <path d="M12 3 22 21H2Z" fill="none" stroke="currentColor" stroke-width="2" stroke-linejoin="round" />
            <path d="M12 9v6M12 17v2" stroke="currentColor" stroke-width="2" />
        </svg>
    }
}

/// The sign for stop.
pub fn octagon() -> Html {
    html! {
        <svg class="sign" viewBox="0 0 24 24" aria-hidden="true">
            <path d="M8 2h8l6 6v8l-6 6H8l-6-6V8Z" fill="none" stroke="currentColor" stroke-width="2" stroke-linejoin="round" />
            <path d="M12 6v8M12 16v2" stroke="currentColor" stroke-width="2" />
        </svg>
    }
}
