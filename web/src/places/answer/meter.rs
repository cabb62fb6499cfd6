//! What the meters should show, step by step, which reading is an alarm, and how a coat is covered.

use super::Shown;
use crate::parts::Fold;
use crate::parts::list::items;
use crate::words::{self, meter as said, number};
use planner::answer::StepAnswer;
use yew::prelude::*;

/// Closed until asked for; nothing where neither volts nor current are known.
pub fn meter(shown: &Shown) -> Html {
    let steps = shown.answer.steps.iter();
    let all: Vec<(String, Vec<String>, Vec<String>, bool)> = steps
        .map(|s| {
            let held = s.ammeter.is_some();
            (shown.step_name(s), lines(shown, s), alarms(s), held)
        })
        .filter(|(_, lines, ..)| !lines.is_empty())
        .collect();
    if all.is_empty() {
        return Html::default();
    }
    let body = Callback::from(move |open: bool| {
        let all = if open { &all[..] } else { &[] };
        html! {
            <>
                for (name, lines, alarms, held) in all {
                    <h3>{ name }</h3>
                    <ul>{ items(lines) }</ul>
                    if !alarms.is_empty() {
                        <p>{ if *held { said::CURRENT_ALARMS } else { said::ALARMS } }</p>
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
        all.push(said::volts_shown(meter));
        all.extend(meter.ceiling_bites.as_ref().map(said::bites));
    }
    if let Some(ammeter) = &step.ammeter {
        all.push(said::current_shown(ammeter));
    }
    let held = step.ammeter.is_some();
    all.extend(step.fatter.map(|more| said::fatter(more, held)));
    all
}

fn alarms(step: &StepAnswer) -> Vec<String> {
    let volts = step.meter.iter().flat_map(|m| &m.alarms);
    let current = step.ammeter.iter().flat_map(|m| &m.alarms);
    volts.chain(current).map(said::alarm).collect()
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
