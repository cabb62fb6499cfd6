//! What a step is told.

use super::Builder;
use super::absent::known;
use crate::advise::{edge_of, tree_density, window};
use crate::answer::{Ceiling, Ruling, Setting, StepAnswer, Thumb, Window};
use crate::body::{Body, measure};
use crate::job::Lead;
use crate::plan::PlanStep;
use crate::ranges::{OfStep, Ranges};
use crate::value::Maybe;
use crate::{begin, cover, meter};
use chemistry::Process;
use quantity::{CurrentDensity, Quantity, Range, Ratio, Time, Voltage};

/// 100 mA per square inch. Common practice, no source.
const THUMB: CurrentDensity = CurrentDensity::of_si(0.1 / 0.000_645_16);

impl Builder<'_> {
    pub(super) fn step(
        &self,
        n: usize,
        ruled_by: Option<Ruling>,
        starts: Option<Time>,
        ends: Option<Time>,
        ranges: &Ranges,
    ) -> StepAnswer {
        let step = &self.plan.steps[n];
        let set = self.likely.steps[n].set;
        let first = self.plan.first_stage(n).map(|k| self.likely.stages[k]);
        let current = match (
            ranges.step(n, OfStep::Wanted),
            ranges.step(n, OfStep::Real),
            set,
        ) {
            (Some(wanted), Some(real), Some(set)) => Maybe::Known(Setting { wanted, set, real }),
            _ => Maybe::Absent(self.no_current(step)),
        };
        let ceiling = self.ceiling(n, ranges);
        StepAnswer {
            id: step.id.clone(),
            kind: step.kind,
            current,
            ruled_by,
            density: known(ranges.step(n, OfStep::Density), || self.no_current(step)),
            densest: known(ranges.step(n, OfStep::Densest), || self.no_evenness(step)),
            window: self.window(step),
            entry: self
                .plan
                .bath(step)
                .map(|b| begin::entry(&self.job.pieces, b)),
            socket: set.and_then(begin::socket),
            meter: ceiling.as_ref().and_then(|c| self.meter(n, c, ranges)),
            ammeter: self.ammeter(n, ranges),
            covering: cover::covering(self.plan, self.likely, n),
            fatter: self.fatter(n),
            ceiling: known(ceiling, || self.no_volts(step)),
            time: known(ranges.step(n, OfStep::Time), || self.no_time(step)),
            starts: self.moment(starts),
            ends: self.moment(ends),
            charge: known(ranges.step(n, OfStep::Charge), || self.no_time(step)),
            growth: known(ranges.step(n, OfStep::Growth), || self.no_growth(step)),
            ohmic: known(ranges.step(n, OfStep::Ohmic), || self.no_volts(step)),
            power: known(ranges.step(n, OfStep::Power), || self.no_volts(step)),
            work_lead: self.work_lead(step),
            thumb: self.thumb(n),
            mean_after: known(ranges.step(n, OfStep::MeanAfter), || self.no_time(step)),
            use_band: step.use_band,
            density_after: ranges
                .step(n, OfStep::DensityAfter)
                .filter(|_| self.plan.growth),
            wasted: self.likely.steps[n].wasted,
            set_volts: first.and_then(|s| s.volts),
        }
    }

    /// The expected volts, rounded up to a tenth, at most what the supply has.
    pub(super) fn ceiling(&self, n: usize, ranges: &Ranges) -> Option<Ceiling> {
        let grows = cover::ceiling_of(self.plan, self.likely, n);
        let expected: Range<Voltage> = ranges.step(grows, OfStep::Volts)?;
        // A hair under a whole tenth is that tenth.
        let tenths = (expected.likely.si() * 10.0 - 1e-9).ceil();
        let set = Voltage::from_si(tenths / 10.0);
        let highest = self.plan.bench.as_ref().and_then(|b| b.highest_volts);
        let set = match highest {
            Some(highest) if highest.si() < set.si() => highest,
            _ => set,
        };
        Some(Ceiling { set, expected })
    }

    /// What the voltmeter shows; none where the supply holds the volts.
    pub(super) fn meter(
        &self,
        n: usize,
        ceiling: &Ceiling,
        ranges: &Ranges,
    ) -> Option<meter::Meter> {
        let step = &self.plan.steps[n];
        let expected = ranges
            .step(n, OfStep::Volts)
            .filter(|_| self.plan.volts.is_none())?;
        Some(meter::meter(
            step,
            ceiling,
            expected,
            ranges.step(n, OfStep::Bites),
        ))
    }

    /// What the ammeter shows, where the supply holds the volts.
    pub(super) fn ammeter(&self, n: usize, ranges: &Ranges) -> Option<meter::Ammeter> {
        let supply = self.plan.volts.as_ref()?;
        let expected = ranges.step(n, OfStep::Real)?;
        let ohmic = self.likely.steps[n].ohmic;
        let most = supply.highest_current;
        let step = &self.plan.steps[n];
        Some(meter::ammeter(step, expected, ohmic, self.fatter(n), most))
    }

    /// How much more area there is at a step's end, growing areas counted whether or not the job wants it.
    pub(super) fn fatter(&self, n: usize) -> Option<Ratio> {
        let etches = self.plan.etches();
        let k = self
            .plan
            .stages
            .iter()
            .rposition(|s| s.step == n && !etches)?;
        let shared = &self.likely.shared[k * self.plan.pieces.len()..];
        let mut area = [0.0; 2];
        for p in self.plan.stages[k].hung.iter().flatten() {
            let mut body = Body::default();
            measure(true, &self.plan.pieces[*p], self.inputs, &mut body);
            let body = body.both;
            let count = f64::from(self.plan.pieces[*p].count);
            area[0] += count * body.area(0.0);
            area[1] += count * body.area(shared[*p].mean_after?.si());
        }
        meter::fatter(area)
    }

    /// What the solution takes.
    pub(super) fn window(&self, step: &PlanStep) -> Option<Window> {
        let bath = self.plan.bath(step)?;
        let (least, most) = window(bath, step.stirring)?;
        Some(Window {
            least,
            typical: bath.solution.window_still.typical(),
            most,
            bound: tree_density(bath, step),
        })
    }

    /// Plus in an etch, minus where metal is laid down.
    pub(super) fn work_lead(&self, step: &PlanStep) -> Lead {
        match step.kind {
            Process::Etch => Lead::Plus,
            Process::Electroform | Process::Electroplate => Lead::Minus,
        }
    }

    /// The rule of thumb beside a step that grows copper.
    pub(super) fn thumb(&self, n: usize) -> Option<Thumb> {
        let step = &self.plan.steps[n];
        let bath = self.plan.bath(step)?;
        if step.kind != Process::Electroform || bath.solution.metal != "Cu" {
            return None;
        }
        // Only where a current is known: without one the step itself says nothing either.
        self.likely.steps[n].density?;
        let hung = &self.plan.stages[self.plan.first_stage(n)?].hung;
        let areas = hung.iter().map(|h| self.likely.bare_area(h));
        let total = areas.reduce(|a, b| if b < a { b } else { a })?;
        let vessel = step.vessels.first()?;
        let edges = vessel
            .pieces
            .iter()
            .filter_map(|p| edge_of(self.plan, vessel, *p, self.likely, self.inputs, THUMB));
        let worst = edges.reduce(|a, b| if b > a { b } else { a });
        let densest = worst.map(|w| THUMB * if w > 1.0 { w } else { 1.0 });
        let bound = tree_density(bath, step);
        Some(Thumb {
            density: THUMB,
            current: THUMB * total,
            densest,
            bound,
            // A bath without metal bears nothing: no ratio to it.
            densest_over_bound: densest
                .zip(bound)
                .filter(|(_, b)| b.si() > 0.0)
                .map(|(d, b)| Ratio::from_si(d / b)),
        })
    }
}
