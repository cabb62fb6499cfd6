//! What is to be done at which moment.

use super::{Shown, likely};
use crate::words::{self, number};
use planner::answer::{StageAnswer, StepAnswer};
use quantity::{Quantity, Time};

/// Something to do at a moment.
pub struct Turn {
    /// When, in words.
    pub when: Option<String>,
    /// What.
    pub words: String,
    /// The value it is about.
    pub value: String,
    /// Its range, or what comes of leaving it.
    pub more: Option<String>,
}

impl Turn {
    /// In one line.
    pub fn line(&self) -> String {
        let mut line = String::new();
        // Without a clock the end is said by how long it takes.
        if let Some(when) = self.when.as_ref().filter(|w| **w != self.value) {
            line.push_str(when);
            line.push(' ');
        }
        line.push_str(&self.words);
        line.push_str(": ");
        line.push_str(&self.value);
        line
    }
}

impl Shown {
    /// The turns and the end, in the order of time.
    pub(super) fn turns(&self) -> Vec<Turn> {
        let stages = &self.answer.stages;
        let mut turns: Vec<Turn> = stages
            .windows(2)
            .filter_map(|pair| self.turn(&pair[0], &pair[1]))
            .collect();
        let time = self.answer.time.known();
        let when = self.answer.steps.last().and_then(|last| self.moment(last));
        // Without a time there is nothing to say of the end here: the layer's line says what is not known.
        if time.is_some() || when.is_some() {
            turns.push(Turn {
                when,
                words: words::LIFT_OUT.to_owned(),
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

    /// From one stage to the next: who comes and goes, another bath, and the current from then on.
    fn turn(&self, before: &StageAnswer, after: &StageAnswer) -> Option<Turn> {
        let value = self.setting_of(after)?;
        let mut said: Vec<String> = Vec::new();
        for (verb, ids) in [
            (words::HANG_IN, &after.joins),
            (words::TAKE_OUT, &after.leaves),
        ] {
            if !ids.is_empty() {
                let names: Vec<String> = ids.iter().filter_map(|id| self.name_of(id)).collect();
                said.push([verb, " ", &names.join(", ")].concat());
            }
        }
        let (step, next) = (self.step(&before.step), self.step(&after.step));
        if before.step != after.step {
            let bath = self.bath_of(&after.step);
            if bath == self.bath_of(&before.step) {
                // The first of two steps in one bath covers the coat.
                if before.step == "s1" {
                    said.push(words::COVERED.to_owned());
                }
            } else {
                said.push([words::INTO, " ", bath.unwrap_or_default()].concat());
            }
        }
        let amperes = |s: Option<&StepAnswer>, stage: &StageAnswer| {
            let set = s.and_then(|s| s.set_volts).map(Quantity::si);
            set.or(stage.set.map(Quantity::si)).unwrap_or_default()
        };
        let (was, now) = (amperes(step, before), amperes(next, after));
        said.push(
            if now < was {
                words::TURN_DOWN
            } else if now > was {
                words::TURN_UP
            } else {
                words::LEAVE
            }
            .to_owned(),
        );
        Some(Turn {
            when: self.clock(after.starts.known()),
            words: said.join(", "),
            value,
            more: after
                .unchanged
                .filter(|_| now != was)
                .map(|u| words::unchanged(&u)),
        })
    }

    /// What is to be set in a stage: a current, or volts where the supply holds those.
    fn setting_of(&self, stage: &StageAnswer) -> Option<String> {
        match stage.set_volts {
            Some(volts) => Some(number::volts(volts)),
            None => stage.set.map(|c| self.current(c)),
        }
    }

    fn step(&self, id: &str) -> Option<&StepAnswer> {
        self.answer.steps.iter().find(|s| s.id == id)
    }

    /// What the piece of an id is called.
    pub fn name_of(&self, id: &str) -> Option<String> {
        let n = self.answer.pieces.iter().position(|p| p.id == id)?;
        Some(self.name(n))
    }

    /// What the layers of a piece are, from below, where there are several metals.
    pub(super) fn layers(&self, n: usize) -> Option<String> {
        let layers = &self.answer.pieces.get(n)?.layers;
        let said = layers.iter().filter_map(|l| {
            let mean = likely(&l.mean, number::thickness)?;
            Some([words::metal(&l.metal), " ", &mean].concat())
        });
        let said: Vec<String> = said.collect();
        (!said.is_empty()).then(|| said.join(", "))
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
