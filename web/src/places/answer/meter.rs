//! What the meters should show, step by step, which reading is an alarm, and how a coat is covered.

use super::Shown;
use crate::parts::Fold;
use crate::parts::list::items;
use crate::words::{self, meter as said, number};
use planner::answer::StepAnswer;
use yew::prelude::*;

/// Closed until asked for; nothing where nothing is known of the volts.
pub fn meter(shown: &Shown) -> Html {
    let steps = shown.answer.steps.iter();
    let all: Vec<(String, Vec<String>, Vec<String>)> = steps
        .map(|s| (shown.step_name(s), lines(shown, s), alarms(s)))
        .filter(|(_, lines, _)| !lines.is_empty())
        .collect();
    if all.is_empty() {
        return Html::default();
    }
    let body = Callback::from(move |open: bool| {
        let all = if open { &all[..] } else { &[] };
        html! {
            <>
                for (name, lines, alarms) in all {
                    <h3>{ name }</h3>
                    <ul>{ items(lines) }</ul>
                    if !alarms.is_empty() {
                        <p>{ said::ALARMS }</p>
                        <ul>{ items(alarms) }</ul>
                    }
                }
            </>
        }
    });
    html! { <Fold id="meter" title={said::METER} {body} /> }
}

fn lines(shown: &Shown, step: &StepAnswer) -> Vec<String> {
    let mut all = Vec::new();
    if let Some(covering) = &step.covering {
        all.extend(said::covering(covering));
        let by_hand: Vec<String> = covering
            .by_hand
            .iter()
            .map(|h| number::time(h.after) + " " + &shown.current(h.set))
            .collect();
        if !by_hand.is_empty() {
            all.push(said::by_hand(&by_hand.join(", ")));
        }
    }
    if let Some(meter) = &step.meter {
        all.push(said::readings(meter));
        all.extend(meter.ceiling_bites.as_ref().map(said::bites));
    }
    all.extend(step.fatter.map(said::fatter));
    all
}

fn alarms(step: &StepAnswer) -> Vec<String> {
    let meter = step.meter.as_ref();
    meter.map_or_else(Vec::new, |m| m.alarms.iter().map(said::alarm).collect())
}

impl Shown {
    /// Whether a step covers a coat: the first one of the page does nothing else.
    pub(super) fn covers(&self, step: &StepAnswer) -> bool {
        step.covering.is_some() || step.id == "s1"
    }

    /// What a step is called: covering, or its bath.
    fn step_name(&self, step: &StepAnswer) -> String {
        if self.covers(step) {
            return words::meter::COVERING.to_owned();
        }
        self.bath_of(&step.id).unwrap_or_default().to_owned()
    }
}
