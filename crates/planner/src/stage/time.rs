//! How long a stage takes to what is asked for.

use super::{Pass, Sample, Vessel, larger};
use crate::even::Reaches;
use crate::groove;
use crate::plan::PlanUntil;
use crate::run::Run;
use quantity::{Quantity, Time};

impl<'a> Sample<'a> {
    /// Seconds of this stage with own settings; `started` is when the step began.
    pub(super) fn time(&self, flows: f64, started: f64, out: &mut Run) -> f64 {
        let from = self.stage.from.si();
        let to = self.stage.to.map(|to| to.si() - from);
        let left = match self.step.until {
            None => f64::NAN,
            Some(PlanUntil::Time(t)) => t.si() - from,
            Some(PlanUntil::Covered(id)) => self.inputs.get::<Time>(id).si() - from,
            Some(PlanUntil::Clock(minute)) => match self.plan.start {
                Some((start, ..)) if started.is_finite() => {
                    let all = start.plus(Time::seconds(started)).until_minute(minute);
                    all.si() - from
                }
                _ => f64::NAN,
            },
            // What is asked for counts once nothing more joins or leaves.
            Some(_) if to.is_some() => f64::INFINITY,
            Some(PlanUntil::Mass(m)) => self.time_to_mass(m.si(), flows, out),
            Some(until) => self.time_to_layer(until, flows, out),
        };
        let left = if left < 0.0 { 0.0 } else { left };
        match to {
            Some(to) if to < left => to,
            _ => left,
        }
    }

    /// Seconds until every piece that hangs has what is asked for.
    fn time_to_layer(&self, until: PlanUntil, flows: f64, out: &mut Run) -> f64 {
        let mut longest = f64::NAN;
        for v in self.vessels() {
            let load = self.share(v, flows, out, self.followed);
            // Effective charge by area that is left for the one that lacks most.
            let mut most = f64::NAN;
            let mut waits = false;
            let mut reaches = Reaches::new(v.bath, self.inputs);
            for p in v.hung {
                let now = &out.now[*p];
                let coat = now.coat(self.followed);
                let density = load.density(now);
                let left = match until {
                    PlanUntil::Mean(t) => t.si() - coat.mean,
                    PlanUntil::Thinnest(t) => {
                        let rates = &self.rates(v, out)[*p];
                        reaches.at(density);
                        (t.si() - coat.thin) / reaches.thin_ratio(&now.body, rates)
                    }
                    PlanUntil::Depth(d) => {
                        groove::flat_for(&self.plan.pieces[*p], self.inputs, d).si() - coat.mean
                    }
                    PlanUntil::Time(_)
                    | PlanUntil::Clock(_)
                    | PlanUntil::Mass(_)
                    | PlanUntil::Covered(_) => f64::NAN,
                };
                // Of pieces whose evenness is not known nothing can be waited for; the others rule.
                if left.is_nan() && matches!(until, PlanUntil::Thinnest(_)) {
                    continue;
                }
                waits = true;
                let u = left / self.rates(v, out)[*p].layer;
                if self.plan.contacts {
                    let charge = self.charge(v, *p, coat.all, u, out);
                    let share = load.branch(now, self.followed).share;
                    let t = charge / (self.efficiency(v, density) * flows * share);
                    longest = larger(longest, if u > 0.0 || u.is_nan() { t } else { 0.0 });
                } else {
                    most = larger(most, u);
                }
            }
            // A vessel in which nothing can be waited for follows the others.
            if !self.plan.contacts && waits {
                let charge = if self.plan.growth {
                    let layer = self.first_layer(v, out);
                    let wetted = &out.wetted[v.nth][usize::from(self.followed)];
                    wetted.first(layer * most) / layer
                } else {
                    most * load.area
                };
                let t = charge / (self.efficiency(v, load.density) * flows);
                longest = larger(longest, if most > 0.0 || most.is_nan() { t } else { 0.0 });
            }
        }
        longest
    }

    /// Effective charge that lays an effective charge by area `u` on a growing piece with its wires.
    fn charge(&self, v: Vessel, p: usize, on: f64, u: f64, out: &Run) -> f64 {
        let layer = self.rates(v, out)[p].layer;
        out.now[p].body.both.volume(on, layer * u) / layer
    }

    /// Seconds until so much mass in all lies on the pieces.
    fn time_to_mass(&self, mass: f64, flows: f64, out: &mut Run) -> f64 {
        let each = out.now.iter();
        let each = each.map(|n| n.body.count * n.coat(self.followed).mass(&n.body));
        let left = mass - each.sum::<f64>();
        if left <= 0.0 {
            return 0.0;
        }
        // Nearly straight: where the area grows it bends a little, and each round mends most of what is left of that.
        let mut t = left / self.mass_after(flows, 1.0, out);
        if self.plan.growth {
            for _ in 0..30 {
                let over = left / self.mass_after(flows, t, out);
                t *= over;
                if (over - 1.0).abs() < 1e-15 {
                    break;
                }
            }
        }
        t
    }

    /// Mass that so many seconds lay on all pieces.
    fn mass_after(&self, flows: f64, seconds: f64, out: &mut Run) -> f64 {
        let pass = Pass {
            flows,
            seconds,
            aimed: self.followed,
        };
        let mut sum = 0.0;
        for v in self.vessels() {
            let load = self.share(v, flows, out, pass.aimed);
            let (common, _) = self.common_charge(v, &load, pass, out);
            for p in v.hung {
                let now = &out.now[*p];
                let rates = &self.rates(v, out)[*p];
                let (x, _) = self.laid(v, &load, common, pass, now, rates);
                let volume = now.body.own.volume(now.coat(pass.aimed).all, x);
                sum += now.body.count * rates.density * volume;
            }
        }
        sum
    }
}
