//! The arithmetic of a job, for one set of input values. Called once for the likely values and once for every sample;
//! nothing is allocated here.

use crate::bench;
use crate::inputs::Inputs;
use crate::plan::{
    MOST_STEPS, Plan, PlanBath, PlanDrive, PlanPart, PlanPiece, PlanStep, PlanSurface, PlanUntil,
};
use chemistry::{faraday, kinetics};
use field::{Evenness, evenness, wagner};
use geometry::Shape;
use geometry::shape::wire_side;
use quantity::{
    Charge, Current, CurrentDensity, Fraction, GrowthRate, Length, Mass, Quantity, Ratio,
    Thickness, Time, Voltage, WorkArea,
};

/// What one run gives. A value is absent where the plan lacks what it needs; that never depends on the sample.
#[derive(Clone, Debug)]
pub struct Run {
    /// Step by step.
    pub steps: [StepRun; MOST_STEPS],
    /// Piece by piece.
    pub pieces: Vec<PieceRun>,
    /// From the first step's start to the last one's end.
    pub time: Option<Time>,
    /// Charge of all steps.
    pub charge: Option<Charge>,
}

/// What one step gives.
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
    /// Density over the wetted area.
    pub density: Option<CurrentDensity>,
    /// Density at the thickest place of the worst piece.
    pub densest: Option<CurrentDensity>,
    /// Charge passed.
    pub charge: Option<Charge>,
    /// Growth of the layer.
    pub growth: Option<GrowthRate>,
    /// Mean thickness at the end, from the job's start.
    pub mean_after: Option<Thickness>,
    /// What the supply shows.
    pub volts: Option<Voltage>,
}

/// What one piece gets.
#[derive(Clone, Copy, Debug, Default)]
pub struct PieceRun {
    /// Its own surface.
    pub area: Option<WorkArea>,
    /// Its wires' surface.
    pub wire_area: WorkArea,
    /// Mean thickness.
    pub mean: Option<Thickness>,
    /// At the thinnest place.
    pub thinnest: Option<Thickness>,
    /// At the thickest place.
    pub thickest: Option<Thickness>,
    /// Wagner number of the last step.
    pub wagner: Option<Ratio>,
    /// How evenly the last step grows.
    pub evenness: Option<Evenness>,
    /// Mass grown on it.
    pub mass: Option<Mass>,
    /// Mass grown on its wires.
    pub wire_mass: Option<Mass>,
    /// Bore after growth.
    pub bore_after: Option<Length>,
    /// Bore to make for the wanted one.
    pub bore_to_make: Option<Length>,
}

/// Settings that are kept while the inputs vary.
#[derive(Clone, Copy, Debug, Default)]
pub struct Kept {
    /// What the display shows.
    pub set: Option<Current>,
    /// How long.
    pub time: Option<Time>,
}

impl Run {
    /// Room for the runs of `plan`.
    pub fn for_plan(plan: &Plan) -> Self {
        Self {
            steps: Default::default(),
            pieces: vec![PieceRun::default(); plan.pieces.len()],
            time: None,
            charge: None,
        }
    }

    /// The settings of this run, to be kept.
    pub fn kept(&self) -> [Kept; MOST_STEPS] {
        self.steps.map(|s| Kept {
            set: s.set,
            time: s.time,
        })
    }
}

/// Runs `plan` with one set of values. Settings (current, time) are worked out for these values; outcomes follow `kept`
/// where given, else the settings of this same run.
pub fn run(plan: &Plan, inputs: &Inputs, kept: Option<&[Kept; MOST_STEPS]>, out: &mut Run) {
    for (piece, slot) in plan.pieces.iter().zip(&mut out.pieces) {
        *slot = PieceRun {
            area: piece_area(piece, inputs),
            wire_area: wire_area(piece, inputs),
            ..PieceRun::default()
        };
    }
    let total = wetted(plan, out);
    // What would be reached with these values' own settings, and what is reached with the kept ones.
    let mut aimed = Reached::default();
    let mut time = Some(Time::seconds(0.0));
    let mut charge = Some(Charge::from_si(0.0));
    for (n, step) in plan.steps.iter().enumerate() {
        let mut s = StepRun {
            wanted: total.and_then(|a| wanted(step, a)),
            ..StepRun::default()
        };
        s.set = s
            .wanted
            .map(|w| plan.bench.as_ref().map_or(w, |b| bench::shown(b, w)));
        s.time = plan.bath.as_ref().and_then(|bath| {
            let flows = bench::flowing(plan.bench.as_ref(), s.set?);
            aimed.step(plan, bath, step, inputs, out, total?, flows, time)
        });
        let now = kept.map_or(
            Kept {
                set: s.set,
                time: s.time,
            },
            |k| k[n],
        );
        if let (Some(bath), Some(total)) = (&plan.bath, total) {
            grow(plan, bath, inputs, now, total, n == 0, &mut s, out);
        }
        s.mean_after = sum(
            n.checked_sub(1)
                .map_or(Some(Thickness::um(0.0)), |p| out.steps[p].mean_after),
            laid(&s, now),
        );
        time = sum(time, s.time);
        charge = sum(charge, s.charge);
        out.steps[n] = s;
    }
    out.time = time;
    out.charge = charge;
    let mean = plan
        .steps
        .len()
        .checked_sub(1)
        .and_then(|last| out.steps[last].mean_after);
    for (piece, slot) in plan.pieces.iter().zip(&mut out.pieces) {
        finish(piece, inputs, mean, slot);
    }
}

fn sum<Q: core::ops::Add<Output = Q>>(a: Option<Q>, b: Option<Q>) -> Option<Q> {
    a.zip(b).map(|(a, b)| a + b)
}

fn laid(step: &StepRun, now: Kept) -> Option<Thickness> {
    step.growth.zip(now.time).map(|(rate, time)| rate * time)
}

/// The full wetted area of all pieces and wires: what sets the current.
fn wetted(plan: &Plan, out: &Run) -> Option<WorkArea> {
    let mut total = WorkArea::from_si(0.0);
    for (piece, slot) in plan.pieces.iter().zip(&out.pieces) {
        total = total + (slot.area? + slot.wire_area) * f64::from(piece.count);
    }
    (total.si() > 0.0).then_some(total)
}

/// Surface of a piece without its wires.
fn piece_area(piece: &PlanPiece, inputs: &Inputs) -> Option<WorkArea> {
    let factor: Ratio = inputs.get(piece.factor);
    let area = match piece.surface.as_ref()? {
        PlanSurface::Area(one_side, sides, texture) => {
            inputs.get::<WorkArea>(*one_side)
                * f64::from(*sides)
                * inputs.get::<Ratio>(*texture).si()
        }
        PlanSurface::Parts(parts) => parts
            .iter()
            .map(|part| {
                let surface = part
                    .shape
                    .map_sizes(|n, _| inputs.get(part.sizes[n]))
                    .surface();
                let texture: Ratio = inputs.get(part.texture);
                let rim = rim(part, inputs);
                ((surface.outside - rim) * texture.si() + rim + surface.inside)
                    * f64::from(part.times)
            })
            .sum(),
    };
    Some(area * factor.si())
}

/// The flat rim of a cap's wall: it is cut, so it has none of the outside's texture.
fn rim(part: &PlanPart, inputs: &Inputs) -> WorkArea {
    match part.shape.map_sizes(|n, _| inputs.get(part.sizes[n])) {
        Shape::Cap {
            outer_d, inner_d, ..
        } => (outer_d.by(outer_d) - inner_d.by(inner_d)) * core::f64::consts::FRAC_PI_4,
        _ => WorkArea::from_si(0.0),
    }
}

fn wire_area(piece: &PlanPiece, inputs: &Inputs) -> WorkArea {
    piece
        .wires
        .map_or(WorkArea::from_si(0.0), |(d, wet, wires)| {
            wire_side(inputs.get(d), inputs.get(wet)) * f64::from(wires)
        })
}

fn wanted(step: &PlanStep, total: WorkArea) -> Option<Current> {
    match step.drive? {
        PlanDrive::Density(i) => Some(i * total),
        PlanDrive::Current(current) => Some(current),
        PlanDrive::Advised => None,
    }
}

/// Share of the charge that makes metal, cut at 1.
fn efficiency(bath: &PlanBath, inputs: &Inputs) -> Option<Fraction> {
    bath.efficiency.map(|id| inputs.get(id))
}

fn growth(bath: &PlanBath, inputs: &Inputs, i: CurrentDensity) -> Option<GrowthRate> {
    let e = efficiency(bath, inputs)?;
    Some(faraday::growth_rate(
        bath.equivalent,
        bath.metal.density.value,
        e,
        i,
    ))
}

/// How evenly a piece grows at `i`: from the table by its Wagner number, the thinnest place by the person's own ratio
/// where they gave one.
pub fn spread_on(
    piece: &PlanPiece,
    bath: &PlanBath,
    inputs: &Inputs,
    i: CurrentDensity,
) -> (Option<Ratio>, Option<Evenness>) {
    let from_table = || {
        let row = piece.row?;
        let kappa = inputs.get(bath.conductivity?);
        let factor: Ratio = inputs.get(bath.evenness_factor?);
        let reach = kinetics::evenness_length(kappa, bath.slope?.value, i) * factor.si();
        let wa = wagner(reach, scale(piece, inputs)?);
        Some((wa, evenness(row, wa)))
    };
    match from_table() {
        Some((wa, e)) => (Some(wa), Some(e)),
        None => (None, None),
    }
}

/// Half the longest size: the scale evenness is judged on.
pub fn scale(piece: &PlanPiece, inputs: &Inputs) -> Option<Length> {
    match piece.surface.as_ref()? {
        PlanSurface::Parts(parts) => {
            let part = parts.first()?;
            let shape = part.shape.map_sizes(|n, _| inputs.get(part.sizes[n]));
            Some(shape.surface().longest / 2.0)
        }
        PlanSurface::Area(..) => None,
    }
}

/// Thinnest over mean: the person's own ratio before the table's.
pub fn min_ratio(piece: &PlanPiece, inputs: &Inputs, table: Option<Evenness>) -> Option<Ratio> {
    match piece.own_ratio {
        Some(own) => Some(inputs.get(own)),
        None => table.map(|e| e.min_over_mean),
    }
}

/// What has been reached so far in one set of settings.
#[derive(Default)]
struct Reached {
    mean: f64,
    thinnest: f64,
    mass: f64,
}

impl Reached {
    /// How long this step takes from here, and what is reached after it.
    #[allow(clippy::too_many_arguments)]
    fn step(
        &mut self,
        plan: &Plan,
        bath: &PlanBath,
        step: &PlanStep,
        inputs: &Inputs,
        out: &Run,
        total: WorkArea,
        flows: Current,
        elapsed: Option<Time>,
    ) -> Option<Time> {
        let i = flows / total;
        let rate = growth(bath, inputs, i)?;
        let ratio = plan
            .pieces
            .iter()
            .filter_map(|p| min_ratio(p, inputs, spread_on(p, bath, inputs, i).1))
            .map(Quantity::si)
            .reduce(|a, b| if b < a { b } else { a });
        let on_pieces: WorkArea = plan
            .pieces
            .iter()
            .zip(&out.pieces)
            .filter_map(|(p, slot)| Some(slot.area? * f64::from(p.count)))
            .sum();
        let e = efficiency(bath, inputs)?;
        let mass_rate = faraday::mass(bath.equivalent, e, flows * Time::seconds(1.0)).si()
            * (on_pieces / total);
        // Where nothing grows, what is left is never reached.
        let still = |target: f64, reached: f64, per_second: f64| {
            let left = target - reached;
            let seconds = if left > 0.0 { left / per_second } else { 0.0 };
            seconds.is_finite().then_some(Time::seconds(seconds))
        };
        let time = match step.until? {
            PlanUntil::Time(t) => t,
            PlanUntil::Mean(t) => still(t.si(), self.mean, rate.si())?,
            PlanUntil::Thinnest(t) => still(t.si(), self.thinnest, rate.si() * ratio?)?,
            PlanUntil::Mass(m) => still(m.si(), self.mass, mass_rate)?,
            PlanUntil::Clock(minute) => plan.start?.0.plus(elapsed?).until_minute(minute),
        };
        self.mean += rate.si() * time.si();
        self.thinnest += rate.si() * time.si() * ratio.unwrap_or(0.0);
        self.mass += mass_rate * time.si();
        Some(time)
    }
}

/// One step's outcome with the settings that are kept.
#[allow(clippy::too_many_arguments)]
fn grow(
    plan: &Plan,
    bath: &PlanBath,
    inputs: &Inputs,
    now: Kept,
    total: WorkArea,
    first: bool,
    s: &mut StepRun,
    out: &mut Run,
) {
    let Some(set) = now.set else { return };
    let noise: Current = plan
        .display
        .map_or(Current::from_si(0.0), |id| inputs.get(id));
    let flows = bench::flowing(plan.bench.as_ref(), set) + noise;
    // A display that shows less than half a step may hide no current at all.
    let flows = if flows.si() > 0.0 {
        flows
    } else {
        Current::from_si(0.0)
    };
    let i = flows / total;
    s.real = Some(flows);
    s.density = Some(i);
    s.charge = now.time.map(|t| flows * t);
    s.growth = growth(bath, inputs, i);
    s.volts = volts(bath, inputs, i);
    let grown = laid(s, now);
    let e = efficiency(bath, inputs);
    let mut worst: Option<Ratio> = None;
    for (piece, slot) in plan.pieces.iter().zip(&mut out.pieces) {
        let (wa, table) = if i.si() > 0.0 {
            spread_on(piece, bath, inputs, i)
        } else {
            (None, None)
        };
        slot.wagner = wa;
        slot.evenness = table;
        let zero = Some(Thickness::um(0.0));
        let add = |before: Option<Thickness>, ratio: Option<Ratio>| {
            let here = grown.zip(ratio).map(|(t, r)| t * r.si());
            sum(if first { zero } else { before }, here)
        };
        slot.thinnest = add(slot.thinnest, min_ratio(piece, inputs, table));
        slot.thickest = add(slot.thickest, table.map(|t| t.max_over_mean));
        let moved = s
            .charge
            .zip(e)
            .map(|(q, e)| faraday::mass(bath.equivalent, e, q));
        let share = |area: WorkArea| moved.map(|m| m * (area / total));
        let none = Some(Mass::from_si(0.0));
        slot.mass = sum(
            if first { none } else { slot.mass },
            slot.area.and_then(share),
        );
        slot.wire_mass = sum(
            if first { none } else { slot.wire_mass },
            share(slot.wire_area),
        );
        slot.mean = sum(if first { zero } else { slot.mean }, grown);
        if let Some(t) = table
            && worst.is_none_or(|w| w.si() < t.max_over_mean.si())
        {
            worst = Some(t.max_over_mean);
        }
    }
    s.densest = worst.map(|w| i * w.si());
}

/// What the supply shows while growing: the solution's own drop and both surfaces with the leads.
fn volts(bath: &PlanBath, inputs: &Inputs, i: CurrentDensity) -> Option<Voltage> {
    let kappa: quantity::Conductivity = inputs.get(bath.conductivity?);
    let distance: Length = inputs.get(bath.distance?);
    let surface: Voltage = inputs.get(bath.surface_volts?);
    Some(i * (distance / kappa) + surface)
}

/// What follows from the whole growth.
fn finish(piece: &PlanPiece, inputs: &Inputs, mean: Option<Thickness>, slot: &mut PieceRun) {
    slot.mean = mean;
    let twice = mean.map(|t| t.as_length() * 2.0);
    slot.bore_after = piece
        .bore
        .zip(twice)
        .map(|(bore, t)| inputs.get::<Length>(bore) - t);
    slot.bore_to_make = piece.wanted_bore.zip(twice).map(|(bore, t)| bore + t);
}
