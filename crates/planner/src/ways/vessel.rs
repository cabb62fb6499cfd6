//! The vessel otherwise: its counter electrode, its distance, more of the bath.

use super::{Search, To, Way};
use crate::answer::LimitKind;
use crate::job::Job;
use crate::path::FieldPath;
use quantity::{Length, Ratio};

impl Search<'_> {
    /// Each bath's counter electrode nearer, in steps of a fifth, not below 2 cm.
    pub(super) fn distance(&mut self) {
        let plan = &self.now.plan;
        let step = plan.steps.get(self.step());
        for vessel in step.map(|s| s.vessels.clone()).unwrap_or_default() {
            let id = &plan.baths[vessel.bath].id;
            let Some(b) = self.job.baths.iter().position(|b| b.id == *id) else {
                continue;
            };
            let now = self.job.baths[b].counter.as_ref().and_then(|c| c.distance);
            let Some(mut d) = now else { continue };
            let at = FieldPath::new("baths").child(id).child("counter/distance");
            loop {
                d = d * 0.8;
                if d < Length::mm(20.0) {
                    break;
                }
                let set = |j: &mut Job| {
                    if let Some(c) = &mut j.baths[b].counter {
                        c.distance = Some(d);
                    }
                };
                if self.attempt(Way::Distance, at.clone(), To::Quantity(d.into()), set) {
                    break;
                }
            }
        }
    }

    pub(super) fn larger_counter(&mut self) {
        let Some(b) = self.bath() else { return };
        let facing = self.job.baths[b].counter.as_ref().and_then(|c| c.facing);
        let times = |above: Option<f64>, below: Option<f64>| above.zip(below).map(|(a, b)| a / b);
        let si = |name: &str| {
            self.limit
                .numbers
                .iter()
                .find(|n| n.name == name)
                .map(|n| n.value.si)
        };
        let times = match self.limit.kind {
            LimitKind::CounterTooSmall => times(si("least"), si("ratio")),
            _ => times(si("density"), si("highest")),
        };
        if let Some((facing, times)) = facing.zip(times) {
            let to = facing * (times * (1.0 + 1e-6));
            let at = self.limit.at.clone();
            self.attempt(Way::Counter, at, To::Quantity(to.into()), |j| {
                if let Some(c) = &mut j.baths[b].counter {
                    c.facing = Some(to);
                }
            });
        }
    }

    /// More of it, by halves up to four times as much.
    pub(super) fn more_bath(&mut self) {
        let Some(b) = self.bath() else { return };
        let Some(volume) = self.job.baths[b].volume else {
            return;
        };
        let at = FieldPath::new("baths")
            .child(&self.job.baths[b].id)
            .child("volume");
        for halves in 3..=8 {
            let to = volume * (f64::from(halves) / 2.0);
            let set = |j: &mut Job| j.baths[b].volume = Some(to);
            if self.attempt(Way::Volume, at.clone(), To::Quantity(to.into()), set) {
                return;
            }
        }
    }

    pub(super) fn rule_of_the_bar(&mut self) {
        let Some(b) = self.bath() else { return };
        let to = Ratio::of_si(1.0);
        let at = self.limit.at.clone();
        self.attempt(Way::Counter, at, To::Quantity(to.into()), |j| {
            if let Some(c) = &mut j.baths[b].counter {
                c.over_bar = Some(to);
            }
        });
    }

    /// The bath the limit stands in.
    pub(super) fn bath(&self) -> Option<usize> {
        let within = |id: &str| {
            self.limit
                .at
                .within(FieldPath::new("baths").child(id).as_str())
        };
        self.job.baths.iter().position(|b| within(&b.id))
    }
}
