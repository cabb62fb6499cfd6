//! Another setting: density, stirring, the piece's place, the time of day.

use super::{Search, To, Way};
use crate::advise::tree_density;
use crate::job::step::STIRRINGS;
use crate::job::{Drive, Job, Until};
use crate::path::FieldPath;
use chemistry::Stirring;
use field::Arrangement;
use quantity::{AnyQuantity, CurrentDensity, Quantity, Time};

impl Search<'_> {
    pub(super) fn stir(&mut self) {
        let n = self.step();
        for (word, stirring) in STIRRINGS {
            if stirring == Stirring::Still || self.job.steps[n].stirring == stirring {
                continue;
            }
            let at = self.at_step("stirring");
            if self.attempt(Way::Stir, at, To::Word(word), |j| {
                j.steps[n].stirring = stirring
            }) {
                return;
            }
        }
    }

    /// Turned half-way is as good as between two.
    pub(super) fn turn(&mut self) {
        for (b, bath) in self.job.baths.iter().enumerate() {
            let Some(counter) = &bath.counter else {
                continue;
            };
            if counter.arrangement.unwrap_or_default() != Arrangement::OneSide {
                continue;
            }
            let at = FieldPath::new("baths")
                .child(&bath.id)
                .child("counter/arrangement");
            self.attempt(Way::Turn, at, To::Word("turned"), |j| {
                if let Some(c) = &mut j.baths[b].counter {
                    c.arrangement = Some(Arrangement::Turned);
                }
            });
        }
    }

    pub(super) fn density(&mut self, i: CurrentDensity) -> bool {
        let n = self.step();
        let at = self.at_step("drive/density");
        self.attempt(Way::Setting, at, To::Quantity(i.into()), |j| {
            if let Some(step) = j.steps.get_mut(n) {
                step.drive = Some(Drive::Density(i));
            }
        })
    }

    /// What a setting rounds to may pass a bound by a hair, or by half a display step: from the bound down.
    pub(super) fn lower_density(&mut self, bound: &str) {
        let Some(bound) = self.number::<CurrentDensity>(bound) else {
            return;
        };
        for share in [1.0 - 1e-6, 0.95, 0.8, 0.6] {
            if self.density(bound * share) {
                return;
            }
        }
    }

    pub(super) fn raise_density(&mut self, bound: &str) {
        let Some(bound) = self.number::<CurrentDensity>(bound) else {
            return;
        };
        for share in [1.0 + 1e-6, 1.05, 1.25] {
            if self.density(bound * share) {
                return;
            }
        }
    }

    pub(super) fn advised(&mut self) {
        let n = self.step();
        let at = self.at_step("drive");
        self.attempt(Way::Setting, at, To::Word("advised"), |j| {
            if let Some(step) = j.steps.get_mut(n) {
                step.drive = Some(Drive::Advised);
            }
        });
    }

    /// The person's own ceiling raised to the next tenth above what is expected.
    pub(super) fn ceiling(&mut self) {
        let n = self.step();
        let own = self.job.steps.get(n).and_then(|s| s.ceiling);
        let expected: Option<quantity::Voltage> = self.number("expected");
        if let Some((_, expected)) = own.zip(expected) {
            let to = quantity::Voltage::of_si(libm::ceil(expected.si() * 10.0) / 10.0);
            let at = self.at_step("ceiling");
            self.attempt(Way::Setting, at, To::Quantity(to.into()), |j| {
                j.steps[n].ceiling = Some(to);
            });
        }
    }

    /// The density at which the ceiling no longer bites.
    pub(super) fn less_volts(&mut self) {
        let Some(n) = self.now.likely.steps.get(self.step()).copied() else {
            return;
        };
        let ceiling = self.number::<quantity::Voltage>("ceiling");
        let (Some(volts), Some(ohmic), Some(i), Some(ceiling)) =
            (n.volts, n.ohmic, n.density, ceiling)
        else {
            return;
        };
        let left = (ceiling.si() - (volts.si() - ohmic.si())) / ohmic.si();
        if left > 0.0 {
            for share in [1.0 - 1e-6, 0.9] {
                if self.density(i * (left * share)) {
                    return;
                }
            }
        }
    }

    /// Begun so much earlier, in whole hours, that the night is not reached.
    pub(super) fn start_earlier(&mut self) {
        let Some(start) = self.job.start.clone() else {
            return;
        };
        let Some(local) = crate::clock::Local::parse(&start.local) else {
            return;
        };
        for hours in 1..24 {
            let earlier = Time::hours(f64::from(hours));
            let moved = local.plus(earlier * -1.0).text();
            let at = FieldPath::new("start/local");
            let to = To::Quantity(AnyQuantity::from(earlier * -1.0));
            let set = |j: &mut Job| {
                if let Some(s) = &mut j.start {
                    s.local = moved;
                }
            };
            if self.attempt(Way::Time, at, to, set) {
                return;
            }
        }
    }

    /// As dense as edges and solution bear.
    pub(super) fn faster(&mut self) {
        let n = self.step();
        let plan = &self.now.plan;
        let Some(step) = plan.steps.get(n) else {
            return;
        };
        let Some(bath) = plan.bath(step) else { return };
        let bound = crate::advise::window(bath, step.stirring).map(|w| w.1);
        let bound = bound.or(tree_density(bath, step));
        let now = self.now.likely.steps[n].density;
        if let Some((most, now)) = bound.zip(now) {
            for share in [0.999, 0.8, 0.6, 0.4] {
                if (most * share).si() > now.si() && self.density(most * share) {
                    return;
                }
            }
        }
    }

    /// A thinner layer or a shallower floor at the last step, by fifths.
    pub(super) fn shallower(&mut self) {
        let Some(n) = self.job.steps.len().checked_sub(1) else {
            return;
        };
        for fifths in (1..5).rev() {
            let share = f64::from(fifths) / 5.0;
            let (key, until, to): (_, _, AnyQuantity) = match self.job.steps[n].until {
                Some(Until::Depth(d)) => ("depth", Until::Depth(d * share), (d * share).into()),
                Some(Until::Mean(d)) => ("mean", Until::Mean(d * share), (d * share).into()),
                Some(Until::Time(t)) => ("time", Until::Time(t * share), (t * share).into()),
                _ => return,
            };
            let id = &self.job.steps[n].id;
            let at = FieldPath::new("steps").child(id).child("until").child(key);
            let set = |j: &mut Job| j.steps[n].until = Some(until);
            if self.attempt(Way::Time, at, To::Quantity(to), set) {
                return;
            }
        }
    }
}
