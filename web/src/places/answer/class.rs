//! A class around one tank: what fits at once, what each has at the bell, what is still owed.

use super::Shown;
use crate::parts::card::card;
use crate::parts::list::items;
use crate::words::{self, class as said, number};
use planner::class::ClassAnswer;
use yew::prelude::*;

/// The card; nothing outside a class.
pub fn class(shown: &Shown) -> Html {
    let Some(class) = &shown.answer.class else {
        return Html::default();
    };
    let body = html! {
        <>
            for line in lines(class) {
                <p>{ line }</p>
            }
            if let Some(batches) = class.batches.as_ref().filter(|b| b.groups.len() > 1) {
                <ol class="groups">{ items(&batches.groups.iter().enumerate().map(|(n, g)| {
                    let hung: Vec<String> = g.pieces.iter().map(|p| words::times(&shown.name_of(&p.id).unwrap_or_default(), p.count)).collect();
                    said::group(n + 1, &hung.join(", "), g)
                }).collect::<Vec<_>>()) }</ol>
            }
            { bell(shown, class) }
        </>
    };
    card("card class", said::CLASS, body)
}

fn lines(class: &ClassAnswer) -> Vec<String> {
    let mut all = Vec::new();
    if class.without > 0 {
        all.push(said::without(class.without));
    }
    all.extend(class.batches.as_ref().map(said::fits));
    all.extend(class.time.map(|t| said::in_all(t, class.lessons)));
    all.extend(class.needs.as_ref().map(said::needs));
    all.extend(said::witness(class.bell.as_ref(), class.witness_end));
    all
}

fn bell(shown: &Shown, class: &ClassAnswer) -> Html {
    let Some(bell) = class.bell.as_ref().filter(|b| !b.pieces.is_empty()) else {
        return Html::default();
    };
    html! {
        <table class="pieces">
            <thead><tr>
                for head in said::HEADS {
                    <th scope="col">{ head }</th>
                }
            </tr></thead>
            <tbody>
                for piece in &bell.pieces {
                    <tr>
                        <th scope="row">{ shown.name_of(&piece.id).unwrap_or_default() }</th>
                        <td>{ number::thickness(piece.mean) }</td>
                        <td>{ piece.owed.map(number::thickness).unwrap_or_else(|| "–".to_owned()) }</td>
                    </tr>
                }
            </tbody>
        </table>
    }
}
