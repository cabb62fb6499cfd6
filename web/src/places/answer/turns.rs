//! What is to be done at which moment.

use super::Shown;
use crate::words::{self, number};
use planner::answer::StepAnswer;
use quantity::{Quantity, Time};

/// Something to do at a moment.
pub struct Turn {
    /// When, in words.
    pub when: Option<String>,
    /// What.
    pub words: &'static str,
    /// The value it is about.
    pub value: String,
    /// Its range.
    pub more: Option<String>,
}

impl Turn {
    /// In one line.
    pub fn line(&self) -> String {
        let mut line = String::new();
        if let Some(when) = &self.when {
            line.push_str(when);
            line.push(' ');
        }
        line.push_str(self.words);
        line.push_str(": ");
        line.push_str(&self.value);
        line
    }
}

impl Shown {
    /// The turns and the end, in the order of time.
    pub(super) fn turns(&self) -> Vec<Turn> {
        let steps = &self.answer.steps;
        let mut turns: Vec<Turn> = steps
            .windows(2)
            .filter_map(|pair| self.turn(&pair[0], &pair[1]))
            .collect();
        if let Some(last) = steps.last() {
            let time = self.answer.time.known();
            turns.push(Turn {
                when: self.moment(last),
                words: words::LIFT_OUT,
                value: time.map(|t| number::time(t.likely)).unwrap_or_default(),
                more: time.filter(|t| differ(t.low, t.high)).map(|t| {
                    number::time(rough(t.low, f64::floor))
                        + words::TO
                        + &number::time(rough(t.high, f64::ceil))
                }),
            });
        }
        turns
    }

    fn turn(&self, before: &StepAnswer, after: &StepAnswer) -> Option<Turn> {
        let next = after.current.known()?.set;
        let was = before.current.known().map_or(next.si(), |c| c.set.si());
        let words = if next.si() < was {
            words::TURN_DOWN
        } else if next.si() > was {
            words::TURN_UP
        } else {
            words::LEAVE
        };
        Some(Turn {
            when: self.moment(before),
            words,
            value: self.current(next),
            more: None,
        })
    }
}

/// Ends of a time, rounded outwards: to ten minutes above three hours, to five below, to one under one.
fn rough(t: Time, outwards: fn(f64) -> f64) -> Time {
    let step = if t.si() > 10_800.0 {
        600.0
    } else if t.si() > 3600.0 {
        300.0
    } else if t.si() > 600.0 {
        60.0
    } else {
        5.0
    };
    Time::seconds(outwards(t.si() / step) * step)
}

fn differ(low: Time, high: Time) -> bool {
    high.si() - low.si() > 0.02 * high.si()
}
