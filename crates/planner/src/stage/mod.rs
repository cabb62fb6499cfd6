//! One stage of a step: what to set, how long, what is laid.

mod lay;
mod time;

use crate::bench;
use crate::body::Growing;
use crate::cover;
use crate::even::efficiency;
use crate::inputs::Inputs;
use crate::plan::{Plan, PlanBath, PlanDrive, PlanStage, PlanStep};
use crate::run::{Coat, Kept, PieceNow, Rates, Run, si, some};
use crate::share::{Load, by_contacts, volts};
use quantity::{Current, CurrentDensity, Fraction, Quantity, Voltage};

/// One stage of a step with one set of values.
pub(crate) struct Sample<'a> {
    pub(crate) plan: &'a Plan,
    pub(crate) inputs: &'a Inputs,
    pub(crate) step: &'a PlanStep,
    pub(crate) stage: &'a PlanStage,
    /// What own settings would lay is followed apart from what the kept ones do.
    pub(crate) followed: bool,
}

/// So much current for so long, on what own settings would give (`aimed`) or on what is really there.
#[derive(Clone, Copy)]
struct Pass {
    flows: f64,
    seconds: f64,
    aimed: bool,
}

/// What own settings of a stage would be; not a number where it is not known.
pub(crate) struct Own {
    /// Wetted area in the vessel that has least.
    pub(crate) area: f64,
    /// The current that would be right.
    pub(crate) wanted: f64,
    /// What the display can show of it.
    pub(crate) set: f64,
    /// The voltage to set, where the supply holds that.
    pub(crate) volts: f64,
    /// What flows.
    pub(crate) flows: f64,
    /// How long.
    pub(crate) time: f64,
}

impl Own {
    /// These, to be kept.
    pub(crate) fn kept(&self) -> Kept {
        Kept {
            set: some(self.set),
            volts: some(self.volts),
            time: some(self.time),
        }
    }
}

/// A vessel of the stage.
#[derive(Clone, Copy)]
struct Vessel<'a> {
    bath: &'a PlanBath,
    /// Its place in the plan.
    place: usize,
    /// Its place among the step's.
    nth: usize,
    hung: &'a [usize],
    /// What of that hangs for the last time.
    last: &'a [usize],
}

impl<'a> Sample<'a> {
    fn vessels(&self) -> impl Iterator<Item = Vessel<'a>> + use<'a> {
        let plan = self.plan;
        let (step, stage) = (self.step, self.stage);
        (0..step.vessels.len()).map(move |nth| {
            let place = step.vessels[nth].bath;
            Vessel {
                bath: &plan.baths[place],
                place,
                nth,
                hung: &stage.hung[nth],
                last: &stage.last[nth],
            }
        })
    }

    /// What a charge moves of each piece's metal in a vessel.
    fn rates<'r>(&self, v: Vessel, out: &'r Run) -> &'r [Rates] {
        let pieces = self.plan.pieces.len();
        &out.rates[v.place * pieces..][..pieces]
    }

    /// Adds up what is wet in each vessel now, piece by piece.
    pub(crate) fn wets(&self, out: &mut Run) {
        out.wetted.clear();
        for v in self.vessels() {
            let mut sums = [Growing::default(); 2];
            let [real, aimed] = &mut sums;
            for p in v.hung {
                let PieceNow { body, .. } = &out.now[*p];
                let count = |sum: &mut Growing, coat: &Coat| {
                    sum.count_in(&body.both, coat.area(body), coat.all, body.count);
                };
                count(real, &out.now[*p].real);
                if self.followed {
                    count(aimed, &out.now[*p].aimed);
                }
            }
            out.wetted.push(sums);
        }
    }

    /// Wetted area in the vessel that has least.
    pub(crate) fn least_area(&self, out: &Run, aimed: bool) -> f64 {
        let areas = out.wetted.iter().map(|w| w[usize::from(aimed)].bare());
        areas
            .reduce(|a: f64, b| if b < a || b.is_nan() { b } else { a })
            .unwrap_or(f64::NAN)
    }

    /// What own settings would be, with what then flows: a density is held in the vessel that has least area.
    pub(crate) fn settings(&self, out: &mut Run, started: f64) -> Own {
        // Where all have one density the sums have grown with what was laid.
        if self.plan.contacts || !self.stage.hung_before {
            self.wets(out);
        }
        let area = self.least_area(out, self.followed);
        let wanted = match self.step.drive {
            Some(PlanDrive::Density(i)) if area > 0.0 => i.si() * area,
            Some(PlanDrive::Current(current)) if area > 0.0 => current.si(),
            _ => f64::NAN,
        };
        let (set, volts, flows) = self.set(wanted, out);
        let time = if flows.is_nan() {
            f64::NAN
        } else {
            self.time(flows * cover::passes(self.step), started, out)
        };
        Own {
            area,
            wanted,
            set,
            volts,
            flows,
            time,
        }
    }

    /// What to set for a current, the voltage where the supply holds that, and what then flows.
    fn set(&self, wanted: f64, out: &mut Run) -> (f64, f64, f64) {
        let plan = self.plan;
        if wanted.is_nan() {
            return (f64::NAN, f64::NAN, f64::NAN);
        }
        if let Some(supply) = &plan.volts {
            let right = self.volts_at(wanted, out);
            let set = si(some::<Voltage>(right).map(|v| bench::shown_volts(supply, v)));
            let flows = self.current_at(set, wanted, out);
            return (flows, set, flows);
        }
        let set = match plan.bench.as_ref() {
            Some(bench) => bench::shown(bench, &plan.fixed, Current::from_si(wanted)),
            None => Current::from_si(wanted),
        };
        (
            set.si(),
            f64::NAN,
            bench::flowing(plan.bench.as_ref(), set).si(),
        )
    }

    /// What flows with the settings that are kept, the display's error counted; `own` with own settings.
    pub(crate) fn flowing(&self, now: Kept, own: f64, kept: bool, out: &mut Run) -> f64 {
        let flows = match now.set {
            None => f64::NAN,
            Some(_) if self.plan.volts.is_some() && kept => {
                self.current_at(si(now.volts), own, out)
            }
            Some(_) if self.plan.volts.is_some() => own,
            Some(set) => {
                let noise = self
                    .plan
                    .display
                    .map_or(0.0, |id| self.inputs.get::<Current>(id).si());
                bench::flowing(self.plan.bench.as_ref(), set).si() + noise
            }
        };
        // A display that shows less than half a step may hide no current at all.
        if flows < 0.0 { 0.0 } else { flows }
    }

    /// Volts over all vessels at a current.
    fn volts_at(&self, current: f64, out: &mut Run) -> f64 {
        self.vessels()
            .map(|v| volts(v.bath, self.inputs, &self.share(v, current, out, false)).1)
            .sum()
    }

    /// The current at which the vessels take so many volts, near a guess: the solution's drop and the links' grow with
    /// the current, the surfaces' own is taken as it stands. Never more than the supply gives.
    fn current_at(&self, set: f64, near: f64, out: &mut Run) -> f64 {
        let surface: f64 = self.vessels().map(|v| surface(v.bath, self.inputs)).sum();
        let mut current = near;
        for _ in 0..12 {
            let ohms = (self.volts_at(current, out) - surface) / current;
            let next = (set - surface) / ohms;
            let done = (next - current).abs() <= 1e-12 * current;
            current = if next < 0.0 { 0.0 } else { next };
            // At no current nothing more can be learned; without contacts the first is exact.
            if done || current == 0.0 || current.is_nan() || !self.plan.contacts {
                break;
            }
        }
        let most = self.plan.volts.as_ref().and_then(|v| v.highest_current);
        most.map_or(current, |most| {
            if current > most.si() {
                most.si()
            } else {
                current
            }
        })
    }

    /// Shares `current` among what hangs in a vessel, into each one's branch.
    fn share(&self, v: Vessel, current: f64, out: &mut Run, aimed: bool) -> Load {
        let area = out.wetted[v.nth][usize::from(aimed)].bare();
        let whole = Load::by_area(area, current);
        if !self.plan.contacts {
            return whole;
        }
        let (bath, inputs) = (v.bath, self.inputs);
        by_contacts(self.plan, bath, inputs, v.hung, whole, aimed, &mut out.now)
    }

    fn efficiency(&self, v: Vessel, density: f64) -> f64 {
        let i = CurrentDensity::from_si(density);
        si(efficiency(v.bath, self.inputs, i))
    }

    /// Share of the current that hanger wires take of so much; absent where it is not known what flows.
    pub(crate) fn wasted(&self, flows: f64, out: &mut Run) -> Option<Fraction> {
        // Of a current that is not known nothing is.
        let mut wasted = flows * 0.0;
        for v in self.vessels() {
            let load = self.share(v, flows, out, false);
            for p in v.hung {
                let now = &out.now[*p];
                let b = load.branch(now, false);
                wasted += now.body.count * b.share * now.body.wire.area(now.real.all) / b.area;
            }
        }
        some(wasted / self.step.vessels.len() as f64)
    }
}

/// What both surfaces of a vessel and its leads take; not a number where they are not known apart.
fn surface(bath: &PlanBath, inputs: &Inputs) -> f64 {
    bath.surface_volts
        .map_or(f64::NAN, |id| inputs.get::<Voltage>(id).si())
}

/// The larger of two; what is not a number rules from the right, not from the left.
fn larger(most: f64, x: f64) -> f64 {
    if most >= x { most } else { x }
}
