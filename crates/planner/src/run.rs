//! The arithmetic of a job, for one set of input values. Called once for the likely values and once for every sample;
//! nothing is allocated here.
//!
//! Inside, what is not known is not a number; it becomes absent where a value leaves (`some`).

use crate::body::{Body, measure};
use crate::inputs::Inputs;
use crate::moved::Moved;
use crate::plan::{MOST_METALS, Plan};
use crate::share::{Branch, Load};
use crate::stage::Sample;
use crate::{balance, cover, groove};
use field::{Curve, Ends, ThinAt, thin_at};
use quantity::{
    Charge, Current, CurrentDensity, Fraction, GrowthRate, Length, Mass, Power, Quantity, Ratio,
    Thickness, Time, Voltage, WorkArea,
};

/// What one run gives. A value is absent where the plan lacks what it needs; that never depends on the sample.
#[derive(Clone, Debug)]
pub struct Run {
    /// Step by step.
    pub steps: Vec<StepRun>,
    /// Stage by stage.
    pub stages: Vec<StageRun>,
    /// Stage by stage, piece by piece within the stage; nothing for those that do not hang.
    pub shared: Vec<SharedRun>,
    /// Piece by piece.
    pub pieces: Vec<PieceRun>,
    /// Piece by piece, layer by layer within the piece.
    pub layers: Vec<LayerRun>,
    /// Bath by bath.
    pub baths: Vec<BathRun>,
    /// From the first step's start to the last one's end.
    pub time: Option<Time>,
    /// Charge of all steps.
    pub charge: Option<Charge>,
    /// Piece by piece, bath by bath within the piece.
    pub(crate) lays: Vec<Lays>,
    pub(crate) follows: Follows,
    /// Piece by piece, as it stands in the run.
    pub(crate) now: Vec<PieceNow>,
    /// Of the stage's vessels.
    pub(crate) loads: Vec<Load>,
}

/// What a bath and its counter electrode gain.
#[derive(Clone, Copy, Debug, Default)]
pub struct BathRun {
    /// What the bath gains of each of its metals; below 0 it loses.
    pub gained: [Option<Mass>; MOST_METALS],
    /// What the counter electrode gains; below 0 it loses.
    pub counter: Option<Mass>,
    /// Charge that passed through it.
    pub charge: Option<Charge>,
    /// Mass that pieces and wires took from it of each of its metals.
    pub(crate) taken: [f64; MOST_METALS],
    pub(crate) passed: f64,
}

/// What one step gives. Currents and densities are those at its start.
#[derive(Clone, Copy, Debug, Default)]
pub struct StepRun {
    /// The current that would be right.
    pub wanted: Option<Current>,
    /// What the display can show of it.
    pub set: Option<Current>,
    /// How long, at what flows when `set` is shown.
    pub time: Option<Time>,
    /// What flows with the settings that are kept.
    pub real: Option<Current>,
    /// Density over the wetted area; of vessels in series the densest.
    pub density: Option<CurrentDensity>,
    /// Density at the thickest place of the worst piece.
    pub densest: Option<CurrentDensity>,
    /// Charge passed.
    pub charge: Option<Charge>,
    /// Growth of the layer.
    pub growth: Option<GrowthRate>,
    /// Mean thickness at the end, from the layer's start.
    pub mean_after: Option<Thickness>,
    /// What the supply shows.
    pub volts: Option<Voltage>,
    /// The solution's own share of that.
    pub ohmic: Option<Voltage>,
    /// What it takes.
    pub power: Option<Power>,
    /// The current at which the ceiling is reached.
    pub bites: Option<Current>,
    /// Density at the end, where the area has grown.
    pub density_after: Option<CurrentDensity>,
    /// Share of the current that hanger wires take.
    pub wasted: Option<Fraction>,
}

/// What one stage is run with.
#[derive(Clone, Copy, Debug, Default)]
pub struct StageRun {
    /// The current that would be right.
    pub wanted: Option<Current>,
    /// What the display can show of it.
    pub set: Option<Current>,
    /// The voltage to set, where the supply holds that.
    pub volts: Option<Voltage>,
    /// How long.
    pub time: Option<Time>,
    /// What flows.
    pub real: Option<Current>,
    /// Density over the wetted area, the densest vessel's.
    pub density: Option<CurrentDensity>,
    /// Wetted area in the vessel that has least.
    pub area: Option<WorkArea>,
}

/// One piece's part in a stage.
#[derive(Clone, Copy, Debug, Default)]
pub struct SharedRun {
    /// Share of its vessel's current that one takes with its wires.
    pub share: Option<Fraction>,
    /// Its density.
    pub density: Option<CurrentDensity>,
    /// Mean of the layer being laid, at the stage's end.
    pub mean_after: Option<Thickness>,
}

impl StageRun {
    /// Its settings, to be kept.
    fn kept(&self) -> Kept {
        Kept {
            set: self.set,
            volts: self.volts,
            time: self.time,
        }
    }
}

/// A layer of one metal on a piece; in an etch what is taken.
#[derive(Clone, Copy, Debug, Default)]
pub struct LayerRun {
    /// Mean thickness.
    pub mean: Option<Thickness>,
    /// At the thinnest place.
    pub thinnest: Option<Thickness>,
    /// At the thickest place.
    pub thickest: Option<Thickness>,
    /// Mass on the piece.
    pub mass: Option<Mass>,
}

/// What one piece gets, or gives.
#[derive(Clone, Copy, Debug, Default)]
pub struct PieceRun {
    /// Its own surface; in an etch the open part of it.
    pub area: Option<WorkArea>,
    /// Its wires' surface.
    pub wire_area: WorkArea,
    /// What one piece takes of the last step's current, its wires with it.
    pub current: Option<Current>,
    /// Its share of the current with its wires, while it last hung.
    pub share: Option<Fraction>,
    /// Its density then.
    pub density: Option<CurrentDensity>,
    /// Mean thickness laid down, or mean depth of a flat floor.
    pub mean: Option<Thickness>,
    /// At the thinnest place.
    pub thinnest: Option<Thickness>,
    /// At the thickest place.
    pub thickest: Option<Thickness>,
    /// Mean of the inside.
    pub inside: Option<Thickness>,
    /// Wagner number while it last hung.
    pub wagner: Option<Ratio>,
    /// Where it grew least then.
    pub thin_at: Option<ThinAt>,
    /// Mass grown on it, or dissolved from it.
    pub mass: Option<Mass>,
    /// Mass grown on its wires, or dissolved from them.
    pub wire_mass: Option<Mass>,
    /// Bore after growth.
    pub bore_after: Option<Length>,
    /// Bore to make for the wanted one.
    pub bore_to_make: Option<Length>,
    /// Depth of what is etched: of a flat floor, or of a groove, whose sides cost charge too.
    pub depth: Option<Thickness>,
    /// Metal left under the floor.
    pub left: Option<Length>,
    /// Charge of the groove over that of a flat floor as deep.
    pub fine_line: Option<Ratio>,
    /// An opening after the etch.
    pub opening_after: Option<Length>,
    /// The line to draw for the land wanted.
    pub line_to_draw: Option<Length>,
}

/// The layer on a piece so far: of all metals, and of the one being laid.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Coat {
    /// Mean of all layers.
    pub(crate) all: f64,
    /// Mean of the layer being laid.
    pub(crate) mean: f64,
    /// Its thinnest place.
    pub(crate) thin: f64,
    /// Its thickest.
    pub(crate) thick: f64,
    /// Inside a hollow, all layers.
    pub(crate) inside: f64,
    /// Mass of it on the piece itself.
    pub(crate) mass: f64,
    /// Mass of all layers on its wires.
    pub(crate) wire_mass: f64,
    /// Wetted area with the wires, as it is now.
    pub(crate) area: f64,
}

/// A piece as it stands in the run.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct PieceNow {
    pub(crate) body: Body,
    /// Its part of the current that was shared last; see [`Load::branch`].
    pub(crate) branch: Branch,
    /// What showed when it hung last.
    pub(crate) shown: Option<Shown>,
    /// What these values' own settings would lay.
    pub(crate) aimed: Coat,
    /// What the kept settings lay.
    pub(crate) real: Coat,
}

/// What shows of a piece at a stage's start.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Shown {
    /// Through the vessel.
    pub(crate) flows: f64,
    pub(crate) branch: Branch,
    /// Place of the vessel's bath.
    pub(crate) bath: usize,
    pub(crate) wagner: Option<Ratio>,
    pub(crate) even: Option<Ends>,
}

impl PieceNow {
    pub(crate) fn coat(&self, aimed: bool) -> &Coat {
        if aimed { &self.aimed } else { &self.real }
    }
}

impl Coat {
    /// `x` more of layer on a piece. Where that is not known, for want of an efficiency, its area is counted as it was: what is
    /// set must not go unsaid for it.
    pub(crate) fn grow(&mut self, x: f64, body: &Body) {
        self.all += x;
        self.mean += x;
        if !self.all.is_nan() {
            self.area = body.both.area(self.all);
        }
    }
}

/// What a charge moves of a piece's metal in a bath; not a number where it is not known.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Lays {
    /// Layer by effective charge over the area.
    pub(crate) layer: f64,
    /// Density of the metal.
    pub(crate) density: f64,
    /// Mass by effective charge.
    pub(crate) equivalent: f64,
    /// How it spreads; none where the table has no row.
    pub(crate) curve: Option<Curve>,
}

impl Lays {
    fn of(plan: &Plan, piece: usize, bath: usize) -> Self {
        let moved = plan.moved(piece, bath);
        let read = |read: fn(&Moved) -> f64| moved.map_or(f64::NAN, read);
        let row = plan.pieces[piece].rows.get(bath).copied().flatten();
        Self {
            layer: read(Moved::layer_per_charge),
            density: read(|m| m.density.si()),
            equivalent: read(|m| m.equivalent.si()),
            curve: row.map(Curve::of),
        }
    }
}

/// What of own settings is followed apart, since a later end or density depends on it.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Follows {
    /// Anything.
    pub(crate) any: bool,
    /// The thinnest place.
    pub(crate) thinnest: bool,
    /// The mass.
    pub(crate) mass: bool,
}

/// Settings of a stage that are kept while the inputs vary.
#[derive(Clone, Copy, Debug, Default)]
pub struct Kept {
    /// What the display shows.
    pub set: Option<Current>,
    /// The voltage, where the supply holds that.
    pub volts: Option<Voltage>,
    /// How long.
    pub time: Option<Time>,
}

/// A value that leaves the arithmetic: absent where it is not a number.
pub(crate) fn some<Q: Quantity>(si: f64) -> Option<Q> {
    si.is_finite().then(|| Q::from_si(si))
}

/// The reverse.
pub(crate) fn si<Q: Quantity>(q: Option<Q>) -> f64 {
    q.map_or(f64::NAN, Quantity::si)
}

impl Run {
    /// Room for the runs of `plan`.
    pub fn for_plan(plan: &Plan) -> Self {
        let pieces = plan.pieces.len();
        let each = (0..pieces).flat_map(|p| (0..plan.baths.len()).map(move |b| (p, b)));
        Self {
            lays: each.map(|(p, b)| Lays::of(plan, p, b)).collect(),
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
            loads: Vec::with_capacity(
                plan.steps
                    .iter()
                    .map(|s| s.vessels.len())
                    .max()
                    .unwrap_or(0),
            ),
        }
    }

    /// The settings of this run, to be kept.
    pub fn kept(&self) -> Vec<Kept> {
        self.stages.iter().map(StageRun::kept).collect()
    }

    /// Measures all pieces with one set of values.
    pub(crate) fn measure(&mut self, plan: &Plan, inputs: &Inputs) {
        for (n, piece) in plan.pieces.iter().enumerate() {
            let body = measure(plan.growth, piece, inputs);
            let bare = Coat {
                area: body.both.area(0.0),
                ..Coat::default()
            };
            self.now[n] = PieceNow {
                body,
                branch: Branch::default(),
                shown: None,
                aimed: bare,
                real: bare,
            };
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
            let both = out.now.iter_mut().flat_map(|n| [&mut n.aimed, &mut n.real]);
            for coat in both {
                *coat = Coat {
                    all: coat.all,
                    inside: coat.inside,
                    wire_mass: coat.wire_mass,
                    area: coat.area,
                    ..Coat::default()
                };
            }
        }
        let mut s = StepRun::default();
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
            let (mut st, flows) = job.settings(out, time);
            // Of what is set, what really passes while a coat fills.
            let filling = cover::passes(step);
            if followed {
                job.lay(flows * filling, si(st.time), out, true);
            }
            let now = match kept {
                Some(kept) => kept[k],
                None => st.kept(),
            };
            let flows = job.flowing(now, flows, kept.is_some(), out);
            st.real = some(flows);
            let seen = job.shows(flows, out);
            st.density = seen.density;
            if first {
                s = StepRun {
                    wanted: st.wanted,
                    set: st.set,
                    real: st.real,
                    ..seen
                };
                first = false;
            }
            let seconds = si(now.time);
            job.lay(flows * filling, seconds, out, false);
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
            step_time += si(st.time);
            step_charge += flows * filling * seconds;
            out.stages[k] = st;
            if plan.growth {
                s.density_after = some(flows / job.least_area(out, false));
            }
        }
        if step.vessels.is_empty() {
            // Not known what hangs where: nor then what is laid.
            (step_time, step_charge) = (f64::NAN, f64::NAN);
            for coat in out.now.iter_mut().map(|n| &mut n.real) {
                (coat.mean, coat.thin, coat.thick) = (f64::NAN, f64::NAN, f64::NAN);
                (coat.mass, coat.wire_mass, coat.inside) = (f64::NAN, f64::NAN, f64::NAN);
            }
        }
        s.time = some(step_time);
        s.charge = some(step_charge);
        let shown = step.vessels.first().and_then(|v| v.pieces.first());
        s.mean_after = shown.and_then(|p| some(out.now[*p].real.mean));
        out.steps[n] = s;
        time += step_time;
        charge += step_charge;
        for vessel in &step.vessels {
            out.baths[vessel.bath].passed += step_charge;
        }
        let next = plan.steps.get(n + 1);
        if next.is_none_or(|next| next.layer != layer) {
            for (p, now) in out.now.iter().enumerate() {
                let coat = now.real;
                out.layers[p * plan.layers + layer] = LayerRun {
                    mean: some(coat.mean),
                    thinnest: some(coat.thin),
                    thickest: some(coat.thick),
                    mass: some(coat.mass),
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
fn finish(plan: &Plan, inputs: &Inputs, out: &mut Run, known: bool) {
    if !known {
        return;
    }
    for (p, piece) in plan.pieces.iter().enumerate() {
        let of_piece = p * plan.layers..(p + 1) * plan.layers;
        let sum = |read: fn(&LayerRun) -> f64| out.layers[of_piece.clone()].iter().map(read).sum();
        let mean: f64 = sum(|l| si(l.mean));
        let slot = &mut out.pieces[p];
        if let Some(shown) = out.now[p].shown {
            slot.share = some(shown.branch.share);
            slot.current = some(shown.flows * shown.branch.share);
            slot.density = some(shown.branch.density);
            slot.wagner = shown.wagner;
            let row = piece.rows[shown.bath].filter(|_| shown.even.is_some());
            slot.thin_at = row.map(thin_at);
        }
        slot.mean = some(mean);
        slot.thinnest = some(sum(|l| si(l.thinnest)));
        slot.thickest = some(sum(|l| si(l.thickest)));
        slot.mass = some(sum(|l| si(l.mass)));
        slot.wire_mass = some(out.now[p].real.wire_mass);
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
