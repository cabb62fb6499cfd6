//! Vessels in series: how they are wired, and what hangs in which.

use super::{Shown, likely};
use crate::parts::card::card;
use crate::parts::list::items;
use crate::parts::series::drawing;
use crate::words::{self, number};
use planner::Process;
use planner::job::{InBath, Job};
use yew::prelude::*;

/// The card; nothing where there is one vessel.
pub fn series(shown: &Shown, job: &Job) -> Html {
    let Some(step) = job.steps.iter().find(|s| s.places.len() > 1) else {
        return Html::default();
    };
    let etches = step.kind == Process::Etch;
    let lines: Vec<String> = step
        .places
        .iter()
        .enumerate()
        .map(|(n, place)| words::vessel(n + 1, &hung(shown, place)))
        .collect();
    let body = html! {
        <>
            { drawing(step.places.len(), if etches { ["−", "+"] } else { ["+", "−"] }) }
            <ol>{ items(&lines) }</ol>
            <p>{ words::wiring(etches) }</p>
        </>
    };
    card("card series", words::SERIES, body)
}

fn hung(shown: &Shown, place: &InBath) -> Vec<String> {
    let pieces = shown.answer.pieces.iter().enumerate();
    pieces
        .filter(|(_, p)| place.pieces.contains(&p.id))
        .map(|(n, p)| {
            // In the card the vessel is said already.
            let name = shown.name(n);
            let name = name.split(',').next().unwrap_or_default();
            let area = likely(&p.wetted, number::area).unwrap_or_default();
            words::hung(name, p.count, &area)
        })
        .collect()
}
