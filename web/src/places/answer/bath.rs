//! What the job does to its baths: metal, counter electrode, warmth, water.

use super::{Shown, likely};
use crate::parts::Fold;
use crate::parts::terms::terms;
use crate::words::meter::{self as said, term};
use crate::words::{self, number};
use planner::answer::BathAnswer;
use quantity::{Mass, Quantity};
use yew::prelude::*;

/// Closed until asked for.
pub fn bath(shown: &Shown) -> Html {
    if shown.answer.baths.is_empty() {
        return Html::default();
    }
    let answer = shown.answer.clone();
    let body = Callback::from(move |open: bool| {
        let all = if open { &answer.baths[..] } else { &[] };
        html! {
            <>
                for bath in all {
                    if all.len() > 1 {
                        <h3>{ words::numbered(words::BATH, all.iter().position(|b| b.id == bath.id).unwrap_or_default() + 1) }</h3>
                    }
                    { metals(bath) }
                    { rest(bath) }
                }
            </>
        }
    });
    html! { <Fold id="bath" title={said::BATH} {body} /> }
}

fn metals(bath: &BathAnswer) -> Html {
    bath.metals
        .iter()
        .map(|m| {
            let after = likely(&m.after, |c| number::in_symbol(c.into(), "g/L", 3));
            html! {
                <>
                    if let Some(after) = after {
                        <p>{ words::metal(&m.metal) }{ " " }{ term::AFTER }{ " " }{ after }</p>
                    }
                    if let Some(jobs) = m.jobs_until_floor {
                        <p>{ jobs.to_string() }{ " " }{ term::JOBS }</p>
                    }
                </>
            }
        })
        .collect()
}

fn rest(bath: &BathAnswer) -> Html {
    let warmth = bath.warmth.known();
    let mass = |m: &Mass| number::mass(Mass::from_si(m.si().abs()));
    let counter = bath.counter.known().map(|r| r.likely);
    let watts = |p: quantity::Power| number::significant(p.si(), 2) + "\u{a0}W";
    terms(vec![
        (
            term::COUNTER_LOSES,
            counter.filter(|m| m.si() < 0.0).as_ref().map(mass),
        ),
        (
            term::COUNTER_GAINS,
            counter.filter(|m| m.si() > 0.0).as_ref().map(mass),
        ),
        (
            term::FACING,
            bath.facing
                .map(|a| number::area(quantity::WorkArea::from_si(a.si()))),
        ),
        (
            term::RATIO,
            bath.counter_ratio.map(|r| number::short(r.si(), 2) + " ×"),
        ),
        (term::DENSITY, bath.counter_density.map(number::density)),
        (
            term::LOAD,
            bath.load
                .map(|l| number::current(quantity::Current::from_si(l.si() / 1000.0), None)),
        ),
        (term::WARMER, warmth.map(said::warmer)),
        (term::WATER, warmth.map(|w| number::mass(w.water.likely))),
        (term::HOLDS, warmth.and_then(|w| w.hold).map(watts)),
        (term::WARMS, warmth.and_then(|w| w.warm).map(number::time)),
    ])
}
