//! The arithmetic of a job, for one set of input values. Called once for the likely values and once for every sample;
//! nothing is allocated here.
//!
//! Inside, what is not known is not a number; it becomes absent where a value leaves (`some`).

mod values;

pub use values::{BathRun, Kept, LayerRun, PieceRun, Run, SharedRun, StageRun, StepRun};
pub(crate) use values::{Coat, Follows, PieceNow, Rates, Shown, si, some};

use crate::body::measure;
use crate::inputs::Inputs;
use crate::plan::Plan;
use crate::share::Branch;
use crate::stage::Sample;
use crate::{balance, cover, groove};
use field::{thin_at, wagner};
use quantity::{Length, Quantity, WorkArea};

impl Run {
    /// Room for the runs of `plan`.
    pub fn for_plan(plan: &Plan) -> Self {
        let pieces = plan.pieces.len();
        let each = (0..plan.baths.len()).flat_map(|b| (0..pieces).map(move |p| (p, b)));
        let vessels = plan.steps.iter().map(|s| s.vessels.len()).max();
        let vessels = vessels.unwrap_or(0);
        Self {
            rates: each.map(|(p, b)| Rates::of(plan, p, b)).collect(),
            follows: plan.follows(),
            steps: vec![StepRun::default(); plan.steps.len()],
            stages: vec![StageRun::default(); plan.stages.len()],
            shared: vec![SharedRun::default(); pieces * plan.stages.len()],
            pieces: vec![PieceRun::default(); pieces],
            layers: vec![LayerRun::default(); pieces * plan.layers],
            baths: vec![BathRun::default(); plan.baths.len()],
            time: None,
            charge: None,
            now: vec![PieceNow::default(); pieces],
            wetted: Vec::with_capacity(vessels),
        }
    }

    /// The same for a sample of many: nothing is kept of a stage.
    pub fn for_samples(plan: &Plan) -> Self {
        Self {
            stages: Vec::new(),
            shared: Vec::new(),
            ..Self::for_plan(plan)
        }
    }

    /// The settings of this run, to be kept.
    pub fn kept(&self) -> Vec<Kept> {
        self.stages.iter().map(StageRun::kept).collect()
    }

    /// Measures all pieces with one set of values.
    pub(crate) fn measure(&mut self, plan: &Plan, inputs: &Inputs) {
        for (n, piece) in plan.pieces.iter().enumerate() {
            let now = &mut self.now[n];
            measure(plan.growth, piece, inputs, &mut now.body);
            now.branch = Branch::default();
            now.shown = None;
            (now.aimed, now.real) = (Coat::default(), Coat::default());
            let body = &now.body;
            self.pieces[n] = PieceRun {
                area: some(body.own.area(0.0)),
                wire_area: WorkArea::from_si(body.wire.area(0.0)),
                ..PieceRun::default()
            };
        }
    }

    /// Wetted area of what hangs in a vessel, bare.
    pub(crate) fn bare_area(&self, hung: &[usize]) -> WorkArea {
        let all = hung.iter().map(|p| &self.now[*p].body);
        WorkArea::from_si(all.map(|b| b.count * b.both.area(0.0)).sum())
    }
}

/// Runs `plan` with one set of values. Settings (current, time) are worked out for these values; outcomes follow `kept`
/// where given, else the settings of this same run.
pub fn run(plan: &Plan, inputs: &Inputs, kept: Option<&[Kept]>, out: &mut Run) {
    out.measure(plan, inputs);
    out.baths.fill(BathRun::default());
    out.layers.fill(LayerRun::default());
    // What own settings would lay matters only where an end or a density depends on it.
    let followed = kept.is_some() && out.follows.any;
    let (mut time, mut charge) = (0.0, 0.0);
    let mut layer = 0;
    let mut stages = plan.stages.iter().enumerate().peekable();
    for (n, step) in plan.steps.iter().enumerate() {
        if step.layer != layer {
            layer = step.layer;
            for now in &mut out.now {
                now.aimed.begin_layer(&now.body);
                now.real.begin_layer(&now.body);
            }
        }
        out.steps[n] = StepRun::default();
        let (mut step_time, mut step_charge) = (0.0, 0.0);
        let mut first = true;
        while let Some((k, stage)) = stages.next_if(|(_, stage)| stage.step == n) {
            let job = Sample {
                plan,
                inputs,
                step,
                stage,
                followed,
            };
            let own = job.settings(out, time);
            // Of what is set, what really passes while a coat fills.
            let filling = cover::passes(step);
            // Nothing comes after the last.
            if followed && k + 1 < plan.stages.len() {
                job.lay_aimed(own.flows * filling, own.time, out);
            }
            let now = match kept {
                Some(kept) => kept[k],
                None => own.kept(),
            };
            let flows = job.flowing(now, own.flows, kept.is_some(), out);
            let likely = !out.stages.is_empty();
            let wasted = if likely && first {
                job.wasted(flows, out)
            } else {
                None
            };
            let seconds = si(now.time);
            let tells = first.then_some(n);
            let density = some(job.lay(flows, filling, seconds, tells, likely, out));
            if first {
                let s = &mut out.steps[n];
                s.wasted = wasted;
                s.wanted = some(own.wanted);
                s.set = some(own.set);
                s.real = some(flows);
                s.density = density;
                first = false;
            }
            if likely {
                out.stages[k] = StageRun {
                    wanted: some(own.wanted),
                    set: some(own.set),
                    volts: some(own.volts),
                    time: some(own.time),
                    real: some(flows),
                    density,
                    area: some(own.area),
                };
                let of_stage = k * plan.pieces.len();
                for p in stage.hung.iter().flatten() {
                    let now = &out.now[*p];
                    let branch = now.shown.map_or(now.branch, |s| s.branch);
                    out.shared[of_stage + p] = SharedRun {
                        share: some(branch.share),
                        density: some(branch.density),
                        mean_after: some(now.real.mean),
                    };
                }
            }
            step_time += own.time;
            step_charge += flows * filling * seconds;
            let last = stages.peek().is_none_or(|(_, next)| next.step != n);
            if plan.growth && last {
                if plan.contacts {
                    job.wets(out);
                }
                let after = flows / job.least_area(out, false);
                out.steps[n].density_after = some(after);
            }
        }
        if step.vessels.is_empty() {
            // Not known what hangs where: nor then what is laid.
            (step_time, step_charge) = (f64::NAN, f64::NAN);
            for now in &mut out.now {
                now.real.forget();
            }
        }
        let s = &mut out.steps[n];
        s.time = some(step_time);
        s.charge = some(step_charge);
        let shown = step.vessels.first().and_then(|v| v.pieces.first());
        s.mean_after = shown.and_then(|p| some(out.now[*p].real.mean));
        time += step_time;
        charge += step_charge;
        for vessel in &step.vessels {
            out.baths[vessel.bath].passed += step_charge;
        }
        let next = plan.steps.get(n + 1);
        if next.is_none_or(|next| next.layer != layer) {
            for (p, now) in out.now.iter().enumerate() {
                let coat = &now.real;
                out.layers[p * plan.layers + layer] = LayerRun {
                    mean: some(coat.mean),
                    thinnest: some(coat.thin),
                    thickest: some(coat.thick),
                    mass: some(coat.mass(&now.body)),
                };
            }
        }
    }
    // Without any step nothing is known, which is not the same as nothing.
    let known = !plan.steps.is_empty();
    out.time = some(time).filter(|_| known);
    out.charge = some(charge).filter(|_| known);
    finish(plan, inputs, out, known);
    balance::keep(plan, out, known);
}

/// What follows from the whole job.
#[inline(never)]
fn finish(plan: &Plan, inputs: &Inputs, out: &mut Run, known: bool) {
    if !known {
        return;
    }
    for (p, piece) in plan.pieces.iter().enumerate() {
        let slot = &mut out.pieces[p];
        if let Some(shown) = out.now[p].shown {
            slot.share = some(shown.branch.share);
            slot.current = some(shown.flows * shown.branch.share);
            slot.density = some(shown.branch.density);
            if let Some(row) = piece.rows[shown.bath] {
                let scale = Length::from_si(out.now[p].body.scale);
                slot.wagner = some(wagner(Length::from_si(shown.reach), scale).si());
                slot.thin_at = slot.wagner.map(|_| thin_at(row));
            }
        }
        let all = match &out.layers[p * plan.layers..(p + 1) * plan.layers] {
            [one] => *one,
            each => LayerRun::sum(each),
        };
        slot.mean = all.mean;
        slot.thinnest = all.thinnest;
        slot.thickest = all.thickest;
        slot.mass = all.mass;
        slot.wire_mass = some(out.now[p].real.wire_mass(&out.now[p].body));
        slot.inside = some(out.now[p].real.inside);
        let Some(flat) = slot.mean else { continue };
        if plan.etches() {
            groove::etched(piece, inputs, flat, slot);
            continue;
        }
        let twice = (flat + piece.grown).as_length() * 2.0;
        slot.bore_after = piece.bore.map(|bore| inputs.get::<Length>(bore) - twice);
        slot.bore_to_make = piece.wanted_bore.map(|bore| bore + twice);
    }
}
