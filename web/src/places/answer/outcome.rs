//! What they will have: of one piece in a sentence, of several in a table.

use super::{Shown, absence_of, likely};
use crate::words::{self, number};
use planner::Maybe;
use planner::answer::{Etched, PieceAnswer};
use yew::prelude::*;

/// What they will have.
pub fn outcome(shown: &Shown) -> Html {
    let pieces = &shown.answer.pieces;
    let etches = pieces.iter().any(|p| p.etched.is_some());
    html! {
        <div class="outcome">
            if shown.several() {
                { table(shown, etches) }
            } else {
                for piece in pieces {
                    { sentence(piece) }
                }
            }
            for n in 0..pieces.len() {
                if let Some(layers) = shown.layers(n) {
                    <p class="soft">
                        if shown.several() {
                            { shown.name(n) }{ ": " }
                        }
                        { layers }
                    </p>
                }
            }
            if etches {
                <p class="soft">{ words::LEADS }</p>
            }
        </div>
    }
}

fn sentence(piece: &PieceAnswer) -> Html {
    match &piece.etched {
        Some(etched) => depth(etched),
        None => layer(piece),
    }
}

fn have(
    value: String,
    between: &'static str,
    other: Option<String>,
    after: String,
    range: String,
) -> Html {
    html! {
        <>
            <p class="have">
                <strong id="mean">{ value }</strong>{ between }
                if let Some(other) = other {
                    <strong>{ other }</strong>{ after }
                }
            </p>
            <p class="soft">{ range }</p>
        </>
    }
}

fn layer(piece: &PieceAnswer) -> Html {
    let Maybe::Known(mean) = &piece.mean else {
        return html! { <p class="soft">{ absence_of(&piece.mean) }</p> };
    };
    let thinnest = piece.thinnest.known();
    let place = piece
        .thin_place
        .known()
        .map_or("", |p| words::thin_place(*p));
    let value = thinnest.map(|t| number::micrometres(t.likely, 2));
    let (between, after) = words::have(value.as_deref(), place);
    have(
        number::thickness(mean.likely),
        between,
        value,
        after,
        words::lands(mean, thinnest),
    )
}

fn depth(etched: &Etched) -> Html {
    let Maybe::Known(depth) = &etched.depth else {
        return html! { <p class="soft">{ absence_of(&etched.depth) }</p> };
    };
    let left = likely(&etched.left, number::millimetres);
    let (mut between, after) = words::etched(left.is_some());
    let left = left.filter(|_| !etched.through());
    if etched.through() {
        between = words::THROUGH;
    }
    have(
        number::thickness(depth.likely),
        between,
        left,
        after.to_owned(),
        words::lands(depth, None),
    )
}

/// A row a piece: what one of them takes, its layer or depth, its thinnest place or what is left, its metal.
fn table(shown: &Shown, etches: bool) -> Html {
    let heads = if etches {
        words::ETCH_HEADS
    } else {
        words::PIECE_HEADS
    };
    html! {
        <table class="pieces">
            <thead><tr>
                for head in heads {
                    <th scope="col">{ head }</th>
                }
            </tr></thead>
            <tbody>
                for (n, piece) in shown.answer.pieces.iter().enumerate() {
                    <tr>
                        <th scope="row">
                            { shown.name(n) }
                            if piece.count > 1 {
                                { format!(" ×\u{a0}{}", piece.count) }
                            }
                        </th>
                        for cell in cells(piece) {
                            <td>{ cell }</td>
                        }
                    </tr>
                }
            </tbody>
        </table>
    }
}

fn cells(piece: &PieceAnswer) -> [String; 4] {
    let (depth, left) = match &piece.etched {
        Some(e) => (&e.depth, likely(&e.left, number::millimetres)),
        None => (
            &piece.mean,
            likely(&piece.thinnest, |t| number::micrometres(t, 2)),
        ),
    };
    [
        likely(&piece.current, |c| number::current(c, None)),
        likely(depth, number::thickness),
        left,
        likely(&piece.mass, number::mass),
    ]
    .map(|cell| cell.unwrap_or_else(|| "–".to_owned()))
}
