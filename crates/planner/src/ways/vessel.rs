//! The vessel otherwise: its counter electrode, its distance, more of the bath.

use super::{Search, To, Way};
use crate::answer::LimitKind;
use crate::job::{Form, Job};
use crate::path::FieldPath;
use quantity::{Length, Power, Ratio};

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

    /// A quarter more than what holds it, so that it also gets there.
    pub(super) fn stronger_heater(&mut self) {
        if let Some((b, hold)) = self.bath().zip(self.number::<Power>("hold")) {
            let to = hold * 1.25;
            let at = self.limit.at.clone();
            self.attempt(Way::Supply, at, To::Quantity(to.into()), |j| {
                j.baths[b].heater = Some(to);
            });
        }
    }

    /// Wide enough that the sheet hangs 2 cm from the wall; its own distance, if given, is another matter.
    pub(super) fn wider_vessel(&mut self) {
        let Some(b) = self.bath() else { return };
        let bath = &self.job.baths[b];
        let form = bath.counter.as_ref().and_then(|c| c.form);
        let Some((Form::Vessel { diameter, height }, gap)) =
            form.zip(self.now.plan.baths.get(b).and_then(|b| b.gap))
        else {
            return;
        };
        let to = diameter + (Length::mm(20.0) - gap) * 2.0;
        let at = self.limit.at.child("vessel/diameter");
        self.attempt(Way::Counter, at, To::Quantity(to.into()), |j| {
            if let Some(c) = &mut j.baths[b].counter {
                c.form = Some(Form::Vessel {
                    diameter: to,
                    height,
                });
            }
        });
    }

    pub(super) fn larger_counter(&mut self) {
        let Some(b) = self.bath() else { return };
        let id = &self.job.baths[b].id;
        let planned = self.now.plan.baths.iter().find(|p| p.id == *id);
        let facing = planned.and_then(|p| p.facing);
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
