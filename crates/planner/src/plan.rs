//! A Job ready to run: what the arithmetic needs, with every input's place in the list.

use crate::answer::UseBand;
use crate::clock::Local;
use crate::inputs::{InputId, InputList};
use crate::job::{Bench, Coat, Lead, Resist, VoltBench};
use crate::moved::Moved;
use crate::path::FieldPath;
use crate::run::Follows;
use crate::warmth::PlanRoom;
use chemistry::efficiency::Curve;
use chemistry::material::Material;
use chemistry::solution::{Electrode, Solution};
use chemistry::{Cited, Process, Stirring};
use field::Row;
use geometry::Shape;
use quantity::{
    BathSurface, Concentration, CounterArea, Current, CurrentDensity, Length, Mass, Power, Ratio,
    Temperature, Thickness, Time, Voltage,
};

/// A job ready to run.
#[derive(Clone, Debug)]
pub struct Plan {
    /// The pieces.
    pub pieces: Vec<PlanPiece>,
    /// The steps.
    pub steps: Vec<PlanStep>,
    /// The steps cut wherever a piece joins or leaves, in order.
    pub stages: Vec<PlanStage>,
    /// The baths that have no Problem.
    pub baths: Vec<PlanBath>,
    /// How many layers of different metals the steps lay down; an etch counts as one.
    pub layers: usize,
    /// The supply; none where it is not known.
    pub bench: Option<Bench>,
    /// A supply that holds a voltage: the current follows.
    pub volts: Option<VoltBench>,
    /// The few settings a supply has, lowest first; empty where any can be set.
    pub fixed: Vec<Current>,
    /// The display's reading error.
    pub display: Option<InputId>,
    /// The area grows with the layer.
    pub growth: bool,
    /// Contacts and leads share the current unevenly.
    pub contacts: bool,
    /// The uncertain inputs.
    pub inputs: InputList,
    /// The room the baths stand in; none where no bath's warmth is worked out.
    pub room: Option<PlanRoom>,
    /// Start on the wall clock, night from, night to.
    pub start: Option<(Local, Time, Time)>,
    /// Addresses whose Problems keep the currents and everything after them from being computed.
    pub stopped_by: Vec<FieldPath>,
}

impl Plan {
    /// The bath of a step's first vessel, else the job's first.
    pub fn bath(&self, step: &PlanStep) -> Option<&PlanBath> {
        match step.vessels.first() {
            Some(vessel) => self.baths.get(vessel.bath),
            None => self.baths.first(),
        }
    }

    /// The metal laid on a piece in a bath, or taken from it.
    pub fn moved(&self, piece: usize, bath: usize) -> Option<&Moved> {
        match self.baths.get(bath)?.lays.as_ref() {
            Some(lays) => Some(lays),
            None => self.pieces.get(piece)?.gives.get(bath)?.as_ref(),
        }
    }

    /// The same of a step's first piece: what growth and depth of a step are said for.
    pub fn first_moved(&self, step: &PlanStep) -> Option<&Moved> {
        let vessel = step.vessels.first()?;
        self.moved(*vessel.pieces.first()?, vessel.bath)
    }

    /// Whether the job takes metal away.
    pub fn etches(&self) -> bool {
        self.baths.first().is_some_and(PlanBath::etches)
    }

    /// Which ends and densities depend on what is laid.
    pub(crate) fn follows(&self) -> Follows {
        let timed = |u: &Option<PlanUntil>| {
            matches!(
                u,
                Some(PlanUntil::Time(_) | PlanUntil::Clock(_) | PlanUntil::Covered(_))
            )
        };
        let any =
            |ends: fn(PlanUntil) -> bool| self.steps.iter().any(|s| s.until.is_some_and(ends));
        Follows {
            any: self.growth || !self.steps.iter().all(|s| timed(&s.until)),
            thinnest: any(|u| matches!(u, PlanUntil::Thinnest(_))),
        }
    }

    /// A step's first stage.
    pub fn first_stage(&self, step: usize) -> Option<usize> {
        self.stages.iter().position(|s| s.step == step)
    }
}

/// A vessel of a step with what hangs in it over the whole of it; the vessels of a step are in series.
#[derive(Clone, Debug, PartialEq)]
pub struct PlanVessel {
    /// Place of its bath in [`Plan::baths`].
    pub bath: usize,
    /// Places of its pieces in [`Plan::pieces`].
    pub pieces: Vec<usize>,
}

/// A part of a step during which the same pieces hang.
#[derive(Clone, Debug, PartialEq)]
pub struct PlanStage {
    /// Place of its step.
    pub step: usize,
    /// From this time after the step's start.
    pub from: Time,
    /// To this one; none for the last stage, which ends as the step ends.
    pub to: Option<Time>,
    /// What hangs, vessel by vessel.
    pub hung: Vec<Vec<usize>>,
    /// The same as in the stage before.
    pub hung_before: bool,
    /// What of that hangs in no later stage, vessel by vessel.
    pub last: Vec<Vec<usize>>,
}

/// A piece ready to run.
#[derive(Clone, Debug)]
pub struct PlanPiece {
    /// Its id.
    pub id: String,
    /// How many alike.
    pub count: u32,
    /// Its surface; none where it has a Problem.
    pub surface: Option<PlanSurface>,
    /// Factor on the surface for what the model leaves out; its likely value is 1.
    pub factor: InputId,
    /// Mean of the layers that are already on it.
    pub grown: Thickness,
    /// Its hanger wires: diameter, wetted length, how many.
    pub wires: Option<(InputId, InputId, u32)>,
    /// Row of the evenness table, bath by bath.
    pub rows: Vec<Option<Row>>,
    /// The person's own thinnest over mean.
    pub own_ratio: Option<InputId>,
    /// A bore that grows shut.
    pub bore: Option<InputId>,
    /// The bore wanted after growth.
    pub wanted_bore: Option<Length>,
    /// The metal taken from it in an etch, bath by bath.
    pub gives: Vec<Option<Moved>>,
    /// Resistance of its contact and of its lead.
    pub contact: [Option<InputId>; 2],
    /// The first piece on the same clip, whose contact all on it share; none where it hangs alone.
    pub clip: Option<usize>,
    /// Open share of a masked sheet.
    pub open: Option<InputId>,
    /// Thickness of the sheet.
    pub stock: Option<Length>,
    /// What is etched.
    pub art: PlanArt,
    /// What it is sealed with, where a coat must first be covered.
    pub coat: Option<Coat>,
    /// Points or hairs: the thickest place passes the table's.
    pub pointed: bool,
}

/// What is etched, as far as it is known.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct PlanArt {
    /// Width of an opening in the resist.
    pub opening: Option<Length>,
    /// Width of metal to be left.
    pub land: Option<Length>,
    /// Depth over undercut; 1 unless given.
    pub etch_factor: Option<InputId>,
    /// Grooves of that opening, or a flat floor.
    pub groove: bool,
    /// From both sides.
    pub both: bool,
    /// The film.
    pub resist: Option<Resist>,
    /// The lead on the sheet.
    pub lead: Option<Lead>,
}

/// The surface of a piece.
#[derive(Clone, Debug)]
pub enum PlanSurface {
    /// The sum of shapes.
    Parts(Vec<PlanPart>),
    /// Measured: one side, sides, texture.
    Area(InputId, u32, InputId),
}

/// One shape.
#[derive(Clone, Debug)]
pub struct PlanPart {
    /// Its address.
    pub at: FieldPath,
    /// With its likely sizes.
    pub shape: Shape,
    /// Its sizes, in the shape's own order.
    pub sizes: Vec<InputId>,
    /// Real over smooth surface outside.
    pub texture: InputId,
    /// How often it stands on the piece.
    pub times: u32,
    /// Whether it stands in a hollow of the piece.
    pub in_recess: bool,
}

/// The bath.
#[derive(Clone, Debug)]
pub struct PlanBath {
    /// Its id.
    pub id: String,
    /// Its solution, of the catalogue or from a label.
    pub solution: Solution,
    /// The metal it lays down; none in an etch, where each piece has its own.
    pub lays: Option<Moved>,
    /// Share of the charge that moves metal, at the solution's typical density.
    pub efficiency: Option<InputId>,
    /// How that share changes with the density; none where the person gave their own, which counts as given.
    pub curve: Option<Curve>,
    /// Thinnest over mean from batch to batch and place to place, beside what the table says: thin finishes only.
    pub batch: Option<InputId>,
    /// Conductivity.
    pub conductivity: Option<InputId>,
    /// Factor on the evenness length.
    pub evenness_factor: Option<InputId>,
    /// Slope of the polarisation curve.
    pub slope: Option<Cited<Voltage>>,
    /// Overvoltage of both surfaces and leads.
    pub surface_volts: Option<InputId>,
    /// Voltage of the whole cell, for solutions whose surfaces are not known apart.
    pub cell_volts: Option<InputId>,
    /// Distance to the counter electrode.
    pub distance: Option<InputId>,
    /// Volume.
    pub volume: Option<InputId>,
    /// The counter electrode's material.
    pub counter: Option<&'static Material>,
    /// Its length over that of the bar.
    pub over_bar: Option<Ratio>,
    /// Its facing area.
    pub facing: Option<CounterArea>,
    /// Where the vessel itself is the counter electrode: from the work's edge to its wall, below 0 where it does not fit.
    pub gap: Option<Length>,
    /// Its open surface, where that is given.
    pub surface: Option<BathSurface>,
    /// Power of the heater at hand.
    pub heater: Option<Power>,
    /// Metals whose balance is kept: each with what the job says of it.
    pub metals: Vec<PlanHold>,
}

impl PlanBath {
    /// Whether the work dissolves.
    pub fn etches(&self) -> bool {
        self.solution.work == Electrode::Anode
    }
}

/// A metal in the bath.
#[derive(Clone, Debug, PartialEq)]
pub struct PlanHold {
    /// The element.
    pub metal: String,
    /// How much is in it now.
    pub now: Option<Concentration>,
    /// Below this the bath is renewed.
    pub floor: Option<Concentration>,
}

/// Most metals of a bath whose balance is kept.
pub const MOST_METALS: usize = 8;

/// A step.
#[derive(Clone, Debug)]
pub struct PlanStep {
    /// Its id.
    pub id: String,
    /// What happens.
    pub kind: Process,
    /// Vessels in series; none where a Problem keeps them from being known.
    pub vessels: Vec<PlanVessel>,
    /// Which layer of metal it works on.
    pub layer: usize,
    /// How the solution is moved.
    pub stirring: Stirring,
    /// Temperature of the bath, where it is given.
    pub temperature: Option<Temperature>,
    /// What is set.
    pub drive: Option<PlanDrive>,
    /// The density that would have been advised, where the supply gives less.
    pub beyond_supply: Option<CurrentDensity>,
    /// When it ends.
    pub until: Option<PlanUntil>,
    /// What the use asks for.
    pub use_band: Option<UseBand>,
    /// The person's own ceiling.
    pub ceiling: Option<Voltage>,
    /// The slowest coat among its pieces, where the step is there to cover it.
    pub covers: Option<Coat>,
}

/// What is set, resolved.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum PlanDrive {
    /// A density.
    Density(CurrentDensity),
    /// A current.
    Current(Current),
    /// A density still to be worked out from solution, edges and supply.
    Advised,
}

/// When a step ends, resolved.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum PlanUntil {
    /// After a time.
    Time(Time),
    /// At a mean thickness from the job's start.
    Mean(Thickness),
    /// At the thinnest place, likewise; of the pieces whose evenness is known the least even one rules.
    Thinnest(Thickness),
    /// At a depth on every piece.
    Depth(Thickness),
    /// At a mass moved on all pieces together.
    Mass(Mass),
    /// At a minute of the day.
    Clock(i64),
    /// When the coat is covered.
    Covered(InputId),
}

/// Most steps this program plans.
pub const MOST_STEPS: usize = 12;
