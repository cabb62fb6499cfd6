//! What a step and its stages are told.

use crate::cover::Covering;
use crate::job::{Lead, Use};
use crate::meter::{Ammeter, Meter};
use crate::value::Maybe;
use chemistry::Process;
use quantity::{
    Charge, Current, CurrentDensity, Fraction, GrowthRate, Power, Range, Ratio, Thickness, Time,
    Voltage,
};
use serde::Serialize;

/// What to do in one step.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct StepAnswer {
    /// The step's id.
    pub id: String,
    /// What happens.
    pub kind: Process,
    /// What to set.
    pub current: Maybe<Setting>,
    /// What rules the density where the person gave none.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ruled_by: Option<Ruling>,
    /// Density over the wetted area that comes of it.
    pub density: Maybe<Range<CurrentDensity>>,
    /// Density at the thickest place.
    pub densest: Maybe<Range<CurrentDensity>>,
    /// The densities its solution takes with this stirring.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub window: Option<Window>,
    /// How the work enters the bath; none where the bath is not known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub entry: Option<Entry>,
    /// The socket of a multimeter in series; none without a current, and above what a multimeter bears.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub socket: Option<Socket>,
    /// The lead on the work.
    pub work_lead: Lead,
    /// The voltage ceiling to set.
    pub ceiling: Maybe<Ceiling>,
    /// The solution's own share of the voltage.
    pub ohmic: Maybe<Range<Voltage>>,
    /// What it takes.
    pub power: Maybe<Range<Power>>,
    /// How long.
    pub time: Maybe<Range<Time>>,
    /// From the first step's start.
    pub starts: Maybe<Moment>,
    /// From the first step's start.
    pub ends: Maybe<Moment>,
    /// Charge passed.
    pub charge: Maybe<Range<Charge>>,
    /// Growth of the layer.
    pub growth: Maybe<Range<GrowthRate>>,
    /// Mean thickness at its end, counted from the job's start; in an etch the flat depth of the first piece.
    pub mean_after: Maybe<Range<Thickness>>,
    /// Density at its end, where the area grows with the layer.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub density_after: Option<Range<CurrentDensity>>,
    /// Likely share of the current that hanger wires take: waste.
    #[serde(rename = "wasted_frac", skip_serializing_if = "Option::is_none")]
    pub wasted: Option<Fraction>,
    /// The voltage to set, where the supply holds that and the current follows.
    #[serde(rename = "set_V", skip_serializing_if = "Option::is_none")]
    pub set_volts: Option<Voltage>,
    /// The rule of thumb for growing copper, beside this step's own density.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub thumb: Option<Thumb>,
    /// The thickness band a use asks for, where the step has one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub use_band: Option<UseBand>,
    /// What the voltmeter should show, where the volts are known and the supply does not hold them.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub meter: Option<Meter>,
    /// What the ammeter should show, where the supply holds the voltage and the current it drives is known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ammeter: Option<Ammeter>,
    /// Of a step that covers a coat.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub covering: Option<Covering>,
    /// Wetted area at its end over the bare one, where it grows by more than a twentieth, counted or not: so much less is the
    /// density of a current that is kept.
    #[serde(rename = "fatter_ratio", skip_serializing_if = "Option::is_none")]
    pub fatter: Option<Ratio>,
}

/// A current to set.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Setting {
    /// What would be right, exactly.
    pub wanted: Range<Current>,
    /// What this display can show; everything else follows it.
    #[serde(rename = "set_A")]
    pub set: Current,
    /// What then flows.
    pub real: Range<Current>,
}

/// A part of a step during which the same pieces hang. Likely values.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct StageAnswer {
    /// The step's id.
    pub step: String,
    /// When it begins.
    pub starts: Maybe<Moment>,
    /// When it ends.
    pub ends: Maybe<Moment>,
    /// Pieces that join at its start; at the job's start none, since all that hang then are there.
    pub joins: Vec<String>,
    /// Pieces that leave at its start.
    pub leaves: Vec<String>,
    /// The current that would be right from then on.
    #[serde(rename = "wanted_A", skip_serializing_if = "Option::is_none")]
    pub wanted: Option<Current>,
    /// What the display can show of it.
    #[serde(rename = "set_A", skip_serializing_if = "Option::is_none")]
    pub set: Option<Current>,
    /// The voltage to set, where the supply holds that.
    #[serde(rename = "set_V", skip_serializing_if = "Option::is_none")]
    pub set_volts: Option<Voltage>,
    /// What then flows.
    #[serde(rename = "real_A", skip_serializing_if = "Option::is_none")]
    pub real: Option<Current>,
    /// Each piece's part in it.
    pub pieces: Vec<Shared>,
    /// What happens if nobody changes the setting of the stage before.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub unchanged: Option<Unchanged>,
}

/// One piece's part in a current, wires included.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Shared {
    /// The piece.
    pub id: String,
    /// How many alike.
    pub count: u32,
    /// Share of the current of its vessel that one takes.
    #[serde(rename = "share_frac")]
    pub share: Fraction,
    /// Its density.
    #[serde(rename = "density_A_per_m2")]
    pub density: CurrentDensity,
    /// Mean thickness of the layer being laid when the stage ends; in an etch the depth of a flat floor.
    #[serde(rename = "mean_after_m", skip_serializing_if = "Option::is_none")]
    pub mean_after: Option<Thickness>,
}

/// What comes of a setting that is not changed when a piece joins or leaves.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Unchanged {
    /// The density then.
    #[serde(rename = "density_A_per_m2")]
    pub density: CurrentDensity,
    /// The least the solution takes.
    #[serde(rename = "lowest_A_per_m2", skip_serializing_if = "Option::is_none")]
    pub lowest: Option<CurrentDensity>,
    /// The most.
    #[serde(rename = "highest_A_per_m2", skip_serializing_if = "Option::is_none")]
    pub highest: Option<CurrentDensity>,
    /// Density at the thickest place, where that is known.
    #[serde(rename = "densest_A_per_m2", skip_serializing_if = "Option::is_none")]
    pub densest: Option<CurrentDensity>,
    /// Above this copper grows trees and powder.
    #[serde(rename = "bound_A_per_m2", skip_serializing_if = "Option::is_none")]
    pub bound: Option<CurrentDensity>,
    /// What it comes to.
    pub verdict: Verdict,
}

/// What a density comes to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Verdict {
    /// Within what the solution takes.
    Fine,
    /// Above what the solution takes, or its edges burn.
    Burns,
    /// Below what the solution takes: it only goes slower.
    Slow,
}

impl Verdict {
    /// Every verdict, for tables that must be complete.
    pub const ALL: &'static [Verdict] = &[Self::Fine, Self::Burns, Self::Slow];
}

/// A voltage ceiling.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Ceiling {
    /// To set: the expected volts, rounded up to a tenth.
    #[serde(rename = "set_V")]
    pub set: Voltage,
    /// What the supply is expected to show while growing.
    pub expected: Range<Voltage>,
}

/// A moment of the job.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Moment {
    /// After the first step's start.
    #[serde(rename = "after_s")]
    pub after: Time,
    /// On the wall clock, where the start is given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub local: Option<String>,
}

/// The densities a solution takes.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Window {
    /// Lowest.
    #[serde(rename = "least_A_per_m2")]
    pub least: CurrentDensity,
    /// Usual, without stirring.
    #[serde(rename = "typical_A_per_m2", skip_serializing_if = "Option::is_none")]
    pub typical: Option<CurrentDensity>,
    /// Highest with the step's stirring.
    #[serde(rename = "most_A_per_m2")]
    pub most: CurrentDensity,
    /// Above this the metal grows trees and powder, where that is known.
    #[serde(rename = "bound_A_per_m2", skip_serializing_if = "Option::is_none")]
    pub bound: Option<CurrentDensity>,
}

/// How the work enters a bath.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Entry {
    /// Current on before it touches the liquid.
    Live,
    /// Current on as soon as it hangs.
    AtOnce,
    /// Connected and hung with the current off.
    CurrentOff,
}

impl Entry {
    /// Every way, for tables that must be complete.
    pub const ALL: &'static [Entry] = &[Self::Live, Self::AtOnce, Self::CurrentOff];
}

/// The socket of a multimeter that its red lead goes into.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Socket {
    /// Marked mA.
    Fine,
    /// Marked 10 A.
    Coarse,
}

impl Socket {
    /// Every socket, for tables that must be complete.
    pub const ALL: &'static [Socket] = &[Self::Fine, Self::Coarse];
}

/// What rules the advised density.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Ruling {
    /// The solution's typical value.
    Typical,
    /// The edges would burn above it.
    Edges,
    /// The supply gives no more.
    Supply,
    /// What covers the coat.
    Covering,
}

impl Ruling {
    /// Every ruling, for tables that must be complete.
    pub const ALL: &'static [Ruling] = &[Self::Typical, Self::Edges, Self::Supply, Self::Covering];
}

/// The rule of thumb: 100 mA per square inch (common practice, no source), and what it would mean here.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Thumb {
    /// Its density.
    #[serde(rename = "density_A_per_m2")]
    pub density: CurrentDensity,
    /// Its current on this job's wetted area.
    #[serde(rename = "current_A")]
    pub current: Current,
    /// The density it would mean at the thickest place, where that is known.
    #[serde(rename = "densest_A_per_m2", skip_serializing_if = "Option::is_none")]
    pub densest: Option<CurrentDensity>,
    /// Above this copper grows trees and powder.
    #[serde(rename = "bound_A_per_m2", skip_serializing_if = "Option::is_none")]
    pub bound: Option<CurrentDensity>,
    /// The one over the other: near 1 the edges are near burning, above it they burn.
    #[serde(
        rename = "densest_over_bound_ratio",
        skip_serializing_if = "Option::is_none"
    )]
    pub densest_over_bound: Option<Ratio>,
}

/// What a layer is counted by.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Counts {
    /// Its mean.
    Mean,
    /// Its thinnest place.
    Thinnest,
}

/// The layer a use asks for.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct UseBand {
    /// The use.
    #[serde(rename = "use")]
    pub of: Use,
    /// What it is counted by.
    pub counts: Counts,
    /// Thinnest usual.
    #[serde(rename = "least_m")]
    pub least: Thickness,
    /// Aimed at.
    #[serde(rename = "middle_m")]
    pub middle: Thickness,
    /// Thickest usual.
    #[serde(rename = "most_m")]
    pub most: Thickness,
}
