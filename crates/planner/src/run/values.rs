//! What one run gives, and what stands in it while it runs.

use crate::body::{Body, Growing};
use crate::even::curve;
use crate::inputs::InputId;
use crate::moved::Moved;
use crate::plan::{MOST_METALS, Plan};
use crate::share::Branch;
use field::{Curve, ThinAt};
use quantity::{
    Charge, Current, CurrentDensity, Fraction, GrowthRate, Length, Mass, Power, Quantity, Ratio,
    Thickness, Time, Voltage, WorkArea,
};

/// What one run gives. A value is absent where the plan lacks what it needs; that never depends on the sample.
#[derive(Clone, Debug)]
pub struct Run {
    /// Step by step.
    pub steps: Vec<StepRun>,
    /// Stage by stage. Empty in a sample of many.
    pub stages: Vec<StageRun>,
    /// Stage by stage, piece by piece within the stage; nothing for those that do not hang. Empty in a sample of many.
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
    /// Bath by bath, piece by piece within the bath.
    pub(crate) rates: Vec<Rates>,
    pub(crate) follows: Follows,
    /// Piece by piece, as it stands in the run.
    pub(crate) now: Vec<PieceNow>,
    /// What is wet in the stage's vessels: as it really is, and as own settings would have it.
    pub(crate) wetted: Vec<[Growing; 2]>,
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
    /// Share of the current that hanger wires take; absent in a sample of many.
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
    pub(super) fn kept(&self) -> Kept {
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

impl LayerRun {
    /// Of layers over one another; absent where one of them is.
    pub(crate) fn sum(each: &[Self]) -> Self {
        let sum = |read: fn(&Self) -> f64| each.iter().map(read).sum();
        Self {
            mean: some(sum(|l| si(l.mean))),
            thinnest: some(sum(|l| si(l.thinnest))),
            thickest: some(sum(|l| si(l.thickest))),
            mass: some(sum(|l| si(l.mass))),
        }
    }
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
    /// Mean of all layers as far as it is known: what the area has grown with.
    known: f64,
    /// Density of the metal being laid.
    metal: f64,
    /// Mean of all layers as far as they are weighed below.
    weighed: f64,
    /// Mass of the layer being laid on the piece itself, as far as that.
    mass: f64,
    /// Mass of all layers on its wires, as far as that.
    wire_mass: f64,
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
    /// How far the bath evened out; not a number where it is not known.
    pub(crate) reach: f64,
}

impl PieceNow {
    pub(crate) fn coat(&self, aimed: bool) -> &Coat {
        if aimed { &self.aimed } else { &self.real }
    }

    /// Wetted area with the wires, under what is really there or under what own settings would have laid.
    pub(crate) fn area(&self, aimed: bool) -> f64 {
        self.coat(aimed).area(&self.body)
    }
}

impl Coat {
    /// Wetted area with the wires, as it is now.
    pub(crate) fn area(&self, body: &Body) -> f64 {
        body.both.area(self.known)
    }

    /// Mass of the layer being laid, on the piece itself.
    pub(crate) fn mass(&self, body: &Body) -> f64 {
        self.mass + self.since(&body.own)
    }

    /// Mass of all layers on its wires.
    pub(crate) fn wire_mass(&self, body: &Body) -> f64 {
        self.wire_mass + self.since(&body.wire)
    }

    /// What is not weighed yet: once for many passes, since how the area grows tells the whole of them.
    fn since(&self, grows: &Growing) -> f64 {
        if self.all == self.weighed {
            return 0.0;
        }
        self.metal * grows.volume(self.weighed, self.all - self.weighed)
    }

    fn weigh(&mut self, body: &Body) {
        (self.mass, self.wire_mass) = (self.mass(body), self.wire_mass(body));
        self.weighed = self.all;
    }

    /// Another metal comes on top.
    pub(crate) fn begin_layer(&mut self, body: &Body) {
        self.weigh(body);
        (self.mean, self.thin, self.thick, self.mass) = (0.0, 0.0, 0.0, 0.0);
    }

    /// `x` more of a metal of this density. Where that is not known, for want of an efficiency, its area is counted as it was:
    /// what is set must not go unsaid for it.
    #[inline]
    pub(crate) fn grow(&mut self, x: f64, metal: f64, body: &Body) {
        if metal != self.metal {
            self.weigh(body);
            self.metal = metal;
        }
        self.all += x;
        self.mean += x;
        if !self.all.is_nan() {
            self.known = self.all;
        }
    }

    /// It is not known what is laid.
    pub(crate) fn forget(&mut self) {
        (self.mean, self.thin, self.thick) = (f64::NAN, f64::NAN, f64::NAN);
        (self.mass, self.wire_mass, self.inside) = (f64::NAN, f64::NAN, f64::NAN);
    }
}

/// What a charge moves of a piece's metal in a bath; not a number where it is not known.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Rates {
    /// Layer by effective charge over the area.
    pub(crate) layer: f64,
    /// Density of the metal.
    pub(crate) density: f64,
    /// How it spreads.
    pub(crate) curve: Curve,
    /// The person's own thinnest over mean.
    pub(crate) own_ratio: Option<InputId>,
    /// Mass by charge of each of the metals that the bath's balance is kept of; 0 of what is not in it.
    pub(crate) booked: [f64; MOST_METALS],
}

impl Rates {
    pub(super) fn of(plan: &Plan, piece: usize, bath: usize) -> Self {
        let moved = plan.moved(piece, bath);
        let read = |read: fn(&Moved) -> f64| moved.map_or(f64::NAN, read);
        let piece = &plan.pieces[piece];
        let row = piece.rows.get(bath).copied().flatten();
        let mut booked = [0.0; MOST_METALS];
        for (hold, k) in plan.baths[bath].metals.iter().zip(&mut booked) {
            let parts = moved.map_or(&[][..], Moved::parts);
            let same = parts.iter().filter(|(id, _)| *id == hold.metal);
            *k = same.map(|(_, k)| k.si()).sum();
        }
        Self {
            layer: read(Moved::layer_per_charge),
            density: read(|m| m.density.si()),
            curve: curve(piece, row),
            own_ratio: piece.own_ratio,
            booked,
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
