//! The arithmetic of a job, for one set of input values. Called once for the likely values and once for every sample;
//! nothing is allocated here.

use crate::bench;
use crate::inputs::Inputs;
use crate::plan::{
    MOST_METALS, MOST_STEPS, Plan, PlanBath, PlanDrive, PlanPart, PlanPiece, PlanStep, PlanSurface,
    PlanUntil,
};
use crate::{balance, groove};
use chemistry::efficiency::at;
use chemistry::kinetics;
use field::{Evenness, evenness, wagner};
use geometry::Shape;
use geometry::shape::wire_side;
use quantity::{
    Charge, ChargePerArea, Current, CurrentDensity, Fraction, GrowthRate, Length, Mass, Power,
    Quantity, Ratio, Thickness, Time, Voltage, WorkArea,
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
    /// What the bath gains of each of its metals over all steps; below 0 it loses.
    pub gained: [Option<Mass>; MOST_METALS],
    /// What the counter electrode gains; below 0 it loses.
    pub counter: Option<Mass>,
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
    /// The solution's own share of that.
    pub ohmic: Option<Voltage>,
    /// What it takes.
    pub power: Option<Power>,
    /// Effective charge per area: what would move the same layer at an efficiency of 1.
    pub effective: Option<ChargePerArea>,
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
    /// Mean thickness laid down, or mean depth of a flat floor.
    pub mean: Option<Thickness>,
    /// At the thinnest place.
    pub thinnest: Option<Thickness>,
    /// At the thickest place.
    pub thickest: Option<Thickness>,
    /// Mean of the inside.
    pub inside: Option<Thickness>,
    /// Wagner number of the last step.
    pub wagner: Option<Ratio>,
    /// How evenly the last step grows.
    pub evenness: Option<Evenness>,
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
            gained: [None; MOST_METALS],
            counter: None,
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
    let mut effective = Some(ChargePerArea::from_si(0.0));
    for (n, step) in plan.steps.iter().enumerate() {
        let mut s = StepRun {
            wanted: total.and_then(|a| wanted(step, a)),
            ..StepRun::default()
        };
        s.set = s
            .wanted
            .map(|w| plan.bench.as_ref().map_or(w, |b| bench::shown(b, w)));
        s.time = plan.bath.as_ref().zip(total).and_then(|(bath, total)| {
            let job = Sample {
                plan,
                bath,
                inputs,
                total,
            };
            let flows = bench::flowing(plan.bench.as_ref(), s.set?);
            aimed.step(&job, step, out, flows, time)
        });
        let now = kept.map_or(
            Kept {
                set: s.set,
                time: s.time,
            },
            |k| k[n],
        );
        if let (Some(bath), Some(total)) = (&plan.bath, total) {
            let job = Sample {
                plan,
                bath,
                inputs,
                total,
            };
            job.pass(now, n == 0, &mut s, out);
        }
        effective = sum(effective, s.effective);
        s.mean_after = plan
            .first_moved()
            .zip(effective)
            .map(|(m, q)| Thickness::from_si(m.layer_per_charge() * q.si()));
        time = sum(time, s.time);
        charge = sum(charge, s.charge);
        out.steps[n] = s;
    }
    // Without any step nothing is known, which is not the same as nothing.
    let some = !plan.steps.is_empty();
    out.time = time.filter(|_| some);
    out.charge = charge.filter(|_| some);
    let effective = effective.filter(|_| some);
    for (piece, slot) in plan.pieces.iter().zip(&mut out.pieces) {
        finish(plan, piece, inputs, effective, slot);
    }
    balance::keep(plan, out);
}

fn sum<Q: core::ops::Add<Output = Q>>(a: Option<Q>, b: Option<Q>) -> Option<Q> {
    a.zip(b).map(|(a, b)| a + b)
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
    if let Some(open) = piece.open {
        return exposed(piece, inputs).map(|a| a * factor.si() * inputs.get::<Fraction>(open).si());
    }
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
                let surface = if part.in_recess {
                    surface.in_recess()
                } else {
                    surface
                };
                let texture: Ratio = inputs.get(part.texture);
                let rim = if part.in_recess {
                    WorkArea::from_si(0.0)
                } else {
                    rim(part, inputs)
                };
                ((surface.outside - rim) * texture.si() + rim + surface.inside)
                    * f64::from(part.times)
            })
            .sum(),
    };
    Some(area * factor.si())
}

/// The masked faces of a sheet in an etch: one, or both where it is etched from both; its edges are taped.
fn exposed(piece: &PlanPiece, inputs: &Inputs) -> Option<WorkArea> {
    let faces = if piece.art.both { 2.0 } else { 1.0 };
    match piece.surface.as_ref()? {
        PlanSurface::Area(one_side, sides, texture) => Some(
            inputs.get::<WorkArea>(*one_side)
                * f64::from(*sides)
                * inputs.get::<Ratio>(*texture).si(),
        ),
        PlanSurface::Parts(parts) => Some(
            parts
                .iter()
                .map(|part| {
                    let shape = part.shape.map_sizes(|n, _| inputs.get(part.sizes[n]));
                    face(&shape, faces) * f64::from(part.times)
                })
                .sum(),
        ),
    }
}

/// So many faces of a flat shape without its edges; of any other shape all its surface.
fn face(shape: &Shape, faces: f64) -> WorkArea {
    match *shape {
        Shape::Sheet { length, width, .. } => length.by(width) * faces,
        Shape::Disc { diameter, .. } => {
            diameter.by(diameter) * (core::f64::consts::FRAC_PI_4 * faces)
        }
        _ => shape.surface().total(),
    }
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

/// Share of the charge that moves metal at `i`: as given, or along the solution's curve.
pub fn efficiency(bath: &PlanBath, inputs: &Inputs, i: CurrentDensity) -> Option<Fraction> {
    let typical: Fraction = inputs.get(bath.efficiency?);
    Some(match &bath.curve {
        Some(c) if c.exponent.si() > 0.0 => at(typical, c.exponent, c.typical_at, i, c.limits),
        _ => typical,
    })
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
        let found = evenness(row, wa);
        Some((
            wa,
            if piece.pointed {
                found.on_points()
            } else {
                found
            },
        ))
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
            Some(shape.scale())
        }
        PlanSurface::Area(..) => None,
    }
}

/// Thinnest over mean: the person's own ratio, or the table's with what a thin finish varies by. No exponent of the
/// efficiency is counted on here: a thinnest place is kept on the safe side.
pub fn min_ratio(
    piece: &PlanPiece,
    bath: &PlanBath,
    inputs: &Inputs,
    table: Option<Evenness>,
) -> Option<Ratio> {
    match piece.own_ratio {
        Some(own) => Some(inputs.get(own)),
        None => {
            let batch = bath.batch.map_or(1.0, |id| inputs.get::<Ratio>(id).si());
            table.map(|e| Ratio::from_si(e.min_over_mean.si() * batch))
        }
    }
}

/// One set of values of a job whose bath and surfaces are known.
struct Sample<'a> {
    plan: &'a Plan,
    bath: &'a PlanBath,
    inputs: &'a Inputs,
    total: WorkArea,
}

/// What has been reached so far in one set of settings, as effective charge per area (C/m2): layer and mass of every
/// piece follow from it.
#[derive(Default)]
struct Reached {
    mean: f64,
    thinnest: f64,
}

impl Reached {
    /// How long this step takes from here, and what is reached after it.
    fn step(
        &mut self,
        job: &Sample,
        step: &PlanStep,
        out: &Run,
        flows: Current,
        elapsed: Option<Time>,
    ) -> Option<Time> {
        let Sample {
            plan,
            bath,
            inputs,
            total,
        } = *job;
        let i = flows / total;
        // Not known where nobody knows the efficiency: only an end that asks for metal needs it.
        let rate = efficiency(bath, inputs, i).map(|e| i.si() * e.si());
        let ratio = plan
            .pieces
            .iter()
            .filter_map(|p| min_ratio(p, bath, inputs, spread_on(p, bath, inputs, i).1))
            .map(Quantity::si)
            .reduce(|a, b| if b < a { b } else { a });
        // Where nothing moves, what is left is never reached.
        let still = |target: f64, reached: f64, per_second: f64| {
            let left = target - reached;
            let seconds = if left > 0.0 { left / per_second } else { 0.0 };
            seconds.is_finite().then_some(Time::seconds(seconds))
        };
        let time = match step.until? {
            PlanUntil::Time(t) => t,
            PlanUntil::Mean(t) => still(plan.first_moved()?.charge_for(t), self.mean, rate?)?,
            PlanUntil::Thinnest(t) => still(
                plan.first_moved()?.charge_for(t),
                self.thinnest,
                rate? * ratio?,
            )?,
            PlanUntil::Depth(d) => still(plan.charge_to_depth(inputs, d)?, self.mean, rate?)?,
            PlanUntil::Mass(m) => still(m.si() / job.mass_per_charge(out)?, self.mean, rate?)?,
            PlanUntil::Clock(minute) => plan.start?.0.plus(elapsed?).until_minute(minute),
        };
        let rate = rate.unwrap_or(0.0);
        self.mean += rate * time.si();
        self.thinnest += rate * time.si() * ratio.unwrap_or(0.0);
        Some(time)
    }
}

impl Sample<'_> {
    /// Mass moved on all pieces by an effective charge per area of 1 C/m2.
    fn mass_per_charge(&self, out: &Run) -> Option<f64> {
        let mut sum = 0.0;
        for (piece, slot) in self.plan.pieces.iter().zip(&out.pieces) {
            let moved = self.plan.moved(piece)?;
            sum += moved.equivalent.si() * slot.area?.si() * f64::from(piece.count);
        }
        (sum > 0.0).then_some(sum)
    }

    /// One step's outcome with the settings that are kept.
    fn pass(&self, now: Kept, first: bool, s: &mut StepRun, out: &mut Run) {
        let Sample {
            plan,
            bath,
            inputs,
            total,
        } = *self;
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
        let e = efficiency(bath, inputs, i);
        s.real = Some(flows);
        s.density = Some(i);
        s.charge = now.time.map(|t| flows * t);
        s.growth = plan
            .first_moved()
            .zip(e)
            .map(|(m, e)| GrowthRate::from_si(m.layer_per_charge() * e.si() * i.si()));
        s.ohmic = ohmic(bath, inputs, i);
        s.volts = volts(bath, inputs, s.ohmic);
        s.power = s.volts.map(|v| v * flows);
        s.effective = now.time.zip(e).map(|(t, e)| i * t * e.si());
        let mut worst: Option<Ratio> = None;
        for (piece, slot) in plan.pieces.iter().zip(&mut out.pieces) {
            let (wa, table) = if i.si() > 0.0 {
                spread_on(piece, bath, inputs, i)
            } else {
                (None, None)
            };
            slot.current = slot.area.map(|a| i * (a + slot.wire_area));
            slot.wagner = wa;
            slot.evenness = table;
            let moved = plan.moved(piece);
            let layer = moved
                .zip(s.effective)
                .map(|(m, q)| m.layer_per_charge() * q.si());
            let zero = Some(Thickness::um(0.0));
            let add = |before: Option<Thickness>, ratio: Option<Ratio>| {
                let here = layer
                    .zip(ratio)
                    .map(|(t, r)| Thickness::from_si(t * r.si()));
                sum(if first { zero } else { before }, here)
            };
            slot.thinnest = add(slot.thinnest, min_ratio(piece, bath, inputs, table));
            slot.thickest = add(slot.thickest, table.map(|t| t.max_over_mean));
            slot.inside = add(slot.inside, table.and_then(|t| t.inside_over_mean));
            if let Some(t) = table
                && worst.is_none_or(|w| w.si() < t.max_over_mean.si())
            {
                worst = Some(t.max_over_mean);
            }
        }
        s.densest = worst.map(|w| i * w.si());
    }
}

/// The solution's own drop between the work and the counter electrode.
fn ohmic(bath: &PlanBath, inputs: &Inputs, i: CurrentDensity) -> Option<Voltage> {
    let kappa: quantity::Conductivity = inputs.get(bath.conductivity?);
    let distance: Length = inputs.get(bath.distance?);
    Some(i * (distance / kappa))
}

/// What the supply shows: the solution's own drop and both surfaces with the leads; for a solution whose surfaces are
/// not known apart, what its cells usually show.
fn volts(bath: &PlanBath, inputs: &Inputs, ohmic: Option<Voltage>) -> Option<Voltage> {
    match (bath.surface_volts, ohmic) {
        (Some(surface), Some(ohmic)) => Some(ohmic + inputs.get(surface)),
        (Some(_), None) => None,
        (None, _) => bath.cell_volts.map(|id| inputs.get(id)),
    }
}

/// What follows from the whole job.
fn finish(
    plan: &Plan,
    piece: &PlanPiece,
    inputs: &Inputs,
    effective: Option<ChargePerArea>,
    slot: &mut PieceRun,
) {
    let Some((moved, q)) = plan.moved(piece).zip(effective) else {
        return;
    };
    let flat = Thickness::from_si(moved.layer_per_charge() * q.si());
    slot.mean = Some(flat);
    let mass = |area: WorkArea| moved.equivalent * (q * area);
    slot.mass = slot.area.map(mass);
    slot.wire_mass = Some(mass(slot.wire_area));
    if plan.bath.as_ref().is_some_and(PlanBath::etches) {
        groove::etched(piece, inputs, flat, slot);
        return;
    }
    let twice = flat.as_length() * 2.0;
    slot.bore_after = piece.bore.map(|bore| inputs.get::<Length>(bore) - twice);
    slot.bore_to_make = piece.wanted_bore.map(|bore| bore + twice);
}
