//! The Answer: what to set, how long, what they will have, its range and its working.

use crate::after::Left;
use crate::cover::Covering;
use crate::job::{Lead, Use};
use crate::meter::{Ammeter, Meter};
use crate::path::FieldPath;
use crate::problem::Problem;
use crate::sessions::Session;
use crate::value::{Maybe, Named};
use crate::warmth::Warmth;
use chemistry::{NoteId, Process, Source};
use field::ThinAt;
use quantity::kinds::unsigned_zero;
use quantity::{
    Charge, Concentration, CounterArea, Current, CurrentDensity, CurrentPerVolume, Fraction,
    GrowthRate, Length, Mass, Money, Power, Range, Ratio, Thickness, Time, Voltage, WorkArea,
};
use serde::Serialize;
use serde::ser::{SerializeStruct, Serializer};

/// Everything that can be said about a Job.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Answer {
    /// Format of the text, the Job's own.
    pub format: u32,
    /// Version of the catalogue it was worked with.
    pub catalogue: &'static str,
    /// What cannot be computed.
    pub problems: Vec<Problem>,
    /// What holds the job back.
    pub limits: Vec<Limit>,
    /// Hazards at their step.
    pub cautions: Vec<Caution>,
    /// What to do, in order.
    pub steps: Vec<StepAnswer>,
    /// The steps cut wherever a piece joins or leaves, in order of time: what to set at each of these moments.
    pub stages: Vec<StageAnswer>,
    /// What each piece will have.
    pub pieces: Vec<PieceAnswer>,
    /// What each bath gains and loses.
    pub baths: Vec<BathAnswer>,
    /// Contacts that take too much, with their signs.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub contacts: Vec<crate::clips::BadContact>,
    /// What a class can have, where there is one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub class: Option<crate::class::ClassAnswer>,
    /// From the first step's start to the last one's end.
    pub time: Maybe<Range<Time>>,
    /// Charge of all steps.
    pub charge: Maybe<Range<Charge>>,
    /// Where the job says how it is attended: the sessions, and before them curing and drying.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub sessions: Vec<Session>,
    /// After an accident: what is left. All the rest of the answer is of the job that remains.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub after: Option<Left>,
    /// What was asked for beside the plan.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub asked: Option<crate::asked::Asked>,
    /// The inputs behind it, with their sources.
    pub inputs: Vec<InputUsed>,
    /// How it was worked out.
    pub working: Vec<Working>,
}

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

/// What one piece will have. Masses and areas are of one piece.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct PieceAnswer {
    /// The piece's id.
    pub id: String,
    /// How many alike.
    pub count: u32,
    /// Of the piece itself.
    pub area: Maybe<Range<WorkArea>>,
    /// Of its hanger wires.
    pub wire_area: Maybe<Range<WorkArea>>,
    /// Together: what sets the current.
    pub wetted: Maybe<Range<WorkArea>>,
    /// What one piece takes of the last step's current, its wires with it.
    pub current: Maybe<Range<Current>>,
    /// The metal laid on it or taken from it: an element's or alloy's id.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub metal: Option<String>,
    /// Its share of its vessel's current with its wires, while it last hung.
    pub share: Maybe<Range<Fraction>>,
    /// Its density then.
    pub density: Maybe<Range<CurrentDensity>>,
    /// Mean thickness, of all layers together.
    pub mean: Maybe<Range<Thickness>>,
    /// At the thinnest place.
    pub thinnest: Maybe<Range<Thickness>>,
    /// At the thickest place.
    pub thickest: Maybe<Range<Thickness>>,
    /// Layer by layer from below, where there are several metals.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub layers: Vec<LayerAnswer>,
    /// Where it is thinnest.
    pub thin_place: Maybe<ThinAt>,
    /// Mean of the inside of a hollow.
    pub inside: Maybe<Range<Thickness>>,
    /// Wagner number of the last step.
    pub wagner: Maybe<Range<Ratio>>,
    /// Mass grown on the piece, or dissolved from it in an etch.
    pub mass: Maybe<Range<Mass>>,
    /// The same on its wires.
    pub wire_mass: Maybe<Range<Mass>>,
    /// What the metal on piece and wires costs, by the person's own price.
    pub cost: Maybe<Range<Money>>,
    /// Inner diameter after growth.
    pub bore_after: Maybe<Range<Length>>,
    /// Inner diameter to make so that the wanted one comes of it.
    pub bore_to_make: Maybe<Range<Length>>,
    /// What an etch makes of it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub etched: Option<Etched>,
}

/// One layer of a stack on a piece.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct LayerAnswer {
    /// Its metal.
    pub metal: String,
    /// Mean thickness.
    pub mean: Maybe<Range<Thickness>>,
    /// At the thinnest place.
    pub thinnest: Maybe<Range<Thickness>>,
    /// At the thickest place.
    pub thickest: Maybe<Range<Thickness>>,
    /// Mass of it on the piece.
    pub mass: Maybe<Range<Mass>>,
}

/// What an etch makes of a sheet.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Etched {
    /// The depth reached: of a flat floor, or of grooves of the opening given.
    pub depth: Maybe<Range<Thickness>>,
    /// The depth of a flat floor by the same charge.
    pub flat_depth: Maybe<Range<Thickness>>,
    /// Charge of grooves of the opening given over that of a flat floor as deep.
    pub fine_line: Maybe<Range<Ratio>>,
    /// Metal left under the floor.
    pub left: Maybe<Range<Length>>,
    /// An opening after the etch.
    pub opening_after: Maybe<Range<Length>>,
    /// The line to draw for the land wanted.
    pub line_to_draw: Maybe<Range<Length>>,
    /// A section through it; none without a depth.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub section: Option<Section>,
}

/// What is thinner is gone: a thousandth of a micron, far under what arithmetic leaves of a sheet that is etched away.
const THROUGH: Length = Length::of_si(1e-9);

impl Etched {
    /// Whether nothing is left under the floor.
    pub fn through(&self) -> bool {
        self.left.known().is_some_and(|l| l.likely < THROUGH)
    }
}

/// A section through an etched sheet, at the likely values.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Section {
    /// How far the etch goes under the film at each edge.
    #[serde(rename = "undercut_m")]
    pub undercut: Length,
    /// Width of an opening in the film.
    #[serde(rename = "opening_m", skip_serializing_if = "Option::is_none")]
    pub opening: Option<Length>,
    /// Width of the film between two of them.
    #[serde(rename = "line_m", skip_serializing_if = "Option::is_none")]
    pub line: Option<Length>,
    /// Thickness of the sheet.
    #[serde(rename = "stock_m", skip_serializing_if = "Option::is_none")]
    pub stock: Option<Length>,
    /// Usual thickness of the film.
    #[serde(rename = "film_m", skip_serializing_if = "Option::is_none")]
    pub film: Option<Thickness>,
    /// From how many sides.
    #[serde(rename = "sides_count")]
    pub sides: u32,
}

/// What a bath gains and loses.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct BathAnswer {
    /// The bath's id.
    pub id: String,
    /// Metal by metal.
    pub metals: Vec<MetalAnswer>,
    /// What the counter electrode gains; below 0 it loses.
    pub counter: Maybe<Range<Mass>>,
    /// Likely current through a volume of it, at its highest.
    #[serde(rename = "load_A_per_m3", skip_serializing_if = "Option::is_none")]
    pub load: Option<CurrentPerVolume>,
    /// Facing area of the counter electrode over the wetted area of the work, where that is most.
    #[serde(rename = "counter_ratio", skip_serializing_if = "Option::is_none")]
    pub counter_ratio: Option<Ratio>,
    /// Density on the counter electrode, at its highest.
    #[serde(
        rename = "counter_density_A_per_m2",
        skip_serializing_if = "Option::is_none"
    )]
    pub counter_density: Option<CurrentDensity>,
    /// Facing area it was counted with, where that was worked out.
    #[serde(rename = "facing_m2", skip_serializing_if = "Option::is_none")]
    pub facing: Option<CounterArea>,
    /// How it warms, what water it loses, what holds it.
    pub warmth: Maybe<Warmth>,
}

/// The balance of one metal in a bath.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct MetalAnswer {
    /// The metal.
    pub metal: String,
    /// What the bath gains of it; below 0 it loses.
    pub gained: Maybe<Range<Mass>>,
    /// How much is in it after.
    pub after: Maybe<Range<Concentration>>,
    /// Whole jobs like this one until the floor is reached.
    #[serde(
        rename = "jobs_until_floor_count",
        skip_serializing_if = "Option::is_none"
    )]
    pub jobs_until_floor: Option<u32>,
}

/// Kinds of limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum LimitKind {
    /// The current wanted is above what the supply gives.
    SupplyTooSmall,
    /// The current wanted is below what the supply holds.
    SupplyTooLarge,
    /// A display step is too large a share of the current.
    DisplayTooCoarse,
    /// The supply has not the volts.
    VoltsTooFew,
    /// The density is above what the solution takes.
    AboveWindow,
    /// The density is below what the solution takes.
    BelowWindow,
    /// The density is above what an etch takes.
    EtchTooFast,
    /// The density is below what an etch takes.
    EtchTooSlow,
    /// The thickest place would burn or grow trees.
    EdgesBurn,
    /// The step runs into the night.
    Night,
    /// The bore closes before the layer is grown.
    BoreCloses,
    /// The solution needs a shop, and this is none.
    NotForThisPlace,
    /// The base needs another layer first.
    NeedsStrike,
    /// The base must never go into this solution.
    WrongBase,
    /// The base is a licensed shop's work.
    SendOut,
    /// The etch is on the wrong lead: the sheet would be plated.
    WrongLead,
    /// The etch is deeper than the sheet bears.
    TooDeepForStock,
    /// The etch is deeper than the film lasts.
    TooDeepForResist,
    /// The line vanishes: the undercut from both sides meets.
    LineVanishes,
    /// The bath runs below its floor of metal.
    BathRunsLow,
    /// Vessels in series hold unlike areas.
    VesselsUneven,
    /// A contact takes so many volts that its piece falls behind and the others get more.
    PoorContact,
    /// The counter electrode is small beside the work.
    CounterTooSmall,
    /// The counter electrode carries more than it bears.
    CounterTooDense,
    /// More current than the bath's volume bears.
    BathOverloaded,
    /// The ends of a bar get more, or less, than its middle.
    BarEnds,
    /// A constant current that never covers all of a graphite coat.
    CoveringStalls,
    /// The sheet touches the wall of the vessel that is its counter electrode, or nearly.
    TouchesWall,
    /// The heater never brings the bath to its temperature.
    HeaterTooSmall,
    /// It cannot be done by the date.
    TooLate,
    /// Left as it was when a piece leaves, the current burns what stays.
    BurnsIfLeft,
}

impl LimitKind {
    /// Every kind, for tables that must be complete.
    pub const ALL: &'static [LimitKind] = &[
        Self::SupplyTooSmall,
        Self::SupplyTooLarge,
        Self::DisplayTooCoarse,
        Self::VoltsTooFew,
        Self::AboveWindow,
        Self::BelowWindow,
        Self::EtchTooFast,
        Self::EtchTooSlow,
        Self::EdgesBurn,
        Self::Night,
        Self::BoreCloses,
        Self::NotForThisPlace,
        Self::NeedsStrike,
        Self::WrongBase,
        Self::SendOut,
        Self::WrongLead,
        Self::TooDeepForStock,
        Self::TooDeepForResist,
        Self::LineVanishes,
        Self::BathRunsLow,
        Self::VesselsUneven,
        Self::PoorContact,
        Self::CounterTooSmall,
        Self::CounterTooDense,
        Self::BathOverloaded,
        Self::BarEnds,
        Self::CoveringStalls,
        Self::TouchesWall,
        Self::HeaterTooSmall,
        Self::TooLate,
        Self::BurnsIfLeft,
    ];
}

/// Something that is computed but holds the job back.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Limit {
    /// What.
    pub kind: LimitKind,
    /// The step or piece it is about.
    pub at: FieldPath,
    /// Of a step or a bath: the pieces it concerns, where several hang and it may concern only some. Its numbers are those of
    /// the worst of them.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub pieces: Vec<String>,
    /// Its numbers.
    pub numbers: Vec<Named>,
    /// The catalogue's note on it, where there is one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub note: Option<NoteId>,
}

/// Kinds of caution.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum CautionKind {
    /// Copper sulfate with acid: eyes and skin.
    CopperBathSplash,
    /// Live leads over liquid.
    SupplyAndLiquid,
    /// A run that nobody watches.
    Unattended,
    /// A class is never left alone with it.
    ClassAttended,
    /// Used bath and rinse water are waste.
    CopperWaste,
    /// The coat's solvent and dust.
    CoatFumes,
    /// Unknown metal must not be iron, zinc, aluminium or soft solder.
    BaseUnknown,
    /// Strong acid in the bath: burns.
    AcidBurns,
    /// Nitrates feed fire when dry; used sodium nitrate holds ammonia and nitrite.
    NitrateFeedsFire,
    /// Silver nitrate: burns, blindness, explosive with ammonia or alcohol.
    SilverNitrate,
    /// Silver baths: caustic or irritating; never with acid or ammonia that the sheet does not name.
    SilverBath,
    /// Nickel salts: allergy, asthma, cancer by mist, the unborn child.
    NickelAllergy,
    /// Nickel in skin work: the law.
    NickelSkinLaw,
    /// Cyanide may be in it: never acid.
    Cyanide,
    /// A bought gold solution: its sheet rules; it may hold cyanide.
    GoldSheet,
    /// Rhodium: acid burn, allergy, mist.
    RhodiumAcid,
    /// Palladium with ammonia: vapour, allergy; never bleach or silver.
    PalladiumAmmonia,
    /// Chloride with an inert anode makes chlorine.
    ChlorideGas,
    /// An inert anode makes acid mist and gas: cover and extract.
    InertAnodeMist,
    /// Hydrogen collects under a lid.
    HydrogenVent,
    /// The sheet is on plus.
    EtchLead,
    /// Stainless must stay negative: as an anode it gives chromium(VI).
    StainlessCathodeOnly,
    /// Silver grows as crystals that creep to the sheet.
    SilverCrystals,
    /// Used etch is metal waste.
    EtchWaste,
    /// Noble metal rinses go back to the bath or to a refiner.
    NobleWaste,
    /// Never for food or drink.
    NotFood,
    /// No under-age or pregnant person near it.
    UnderAge,
    /// Names of gold layers are law, and differ between countries.
    PlatingNames,
    /// A solution of the person's own: its own sheet rules.
    OwnSheet,
    /// Persulfate: an oxidiser.
    Oxidiser,
    /// Metal dust from filing.
    MetalDust,
    /// A heater in a bath.
    HeaterInBath,
}

impl CautionKind {
    /// Every kind, for tables that must be complete.
    pub const ALL: &'static [CautionKind] = &[
        Self::CopperBathSplash,
        Self::SupplyAndLiquid,
        Self::Unattended,
        Self::ClassAttended,
        Self::CopperWaste,
        Self::CoatFumes,
        Self::BaseUnknown,
        Self::AcidBurns,
        Self::NitrateFeedsFire,
        Self::SilverNitrate,
        Self::SilverBath,
        Self::NickelAllergy,
        Self::NickelSkinLaw,
        Self::Cyanide,
        Self::GoldSheet,
        Self::RhodiumAcid,
        Self::PalladiumAmmonia,
        Self::ChlorideGas,
        Self::InertAnodeMist,
        Self::HydrogenVent,
        Self::EtchLead,
        Self::StainlessCathodeOnly,
        Self::SilverCrystals,
        Self::EtchWaste,
        Self::NobleWaste,
        Self::NotFood,
        Self::UnderAge,
        Self::PlatingNames,
        Self::OwnSheet,
        Self::Oxidiser,
        Self::MetalDust,
        Self::HeaterInBath,
    ];
}

/// When in a step a caution is due.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum When {
    /// Before it begins.
    Before,
    /// While it runs.
    During,
    /// When it is over.
    After,
}

/// A hazard at a step.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Caution {
    /// What.
    pub kind: CautionKind,
    /// The step or piece.
    pub at: FieldPath,
    /// When.
    pub when: When,
}

/// An input the answer rests on.
#[derive(Clone, Debug, PartialEq)]
pub struct InputUsed {
    /// Its address.
    pub at: FieldPath,
    /// Its likely value.
    pub value: quantity::AnyQuantity,
    /// Where it usually lies, in the value's own unit: a catalogue's lowest and highest, a display's half step to either
    /// side, else what two in three lie between. None for what is taken as exact.
    pub band: Option<(f64, f64)>,
    /// Where that comes from.
    pub origin: Origin,
}

/// Where an input's value comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Origin {
    /// The person gave it.
    Given,
    /// The person put it in the catalogue's place.
    Assumed,
    /// The catalogue's.
    Catalogue(Source),
}

impl Serialize for InputUsed {
    fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        use serde::ser::SerializeMap;
        let mut map = s.serialize_map(None)?;
        map.serialize_entry("at", &self.at)?;
        let mut number = |name: &str, si: f64| {
            let key = [name, self.value.key_unit].concat();
            map.serialize_entry(&key, &unsigned_zero(si))
        };
        number("value_", self.value.si)?;
        if let Some((low, high)) = self.band {
            number("low_", low)?;
            number("high_", high)?;
        }
        map.serialize_entry("origin", &self.origin)?;
        map.end()
    }
}

impl Serialize for Origin {
    fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        match self {
            Origin::Given => s.serialize_str("given"),
            Origin::Assumed => s.serialize_str("assumed"),
            Origin::Catalogue(source) => SourceText(*source).serialize(s),
        }
    }
}

/// Where a value of the working comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Whence {
    /// An input.
    From(Origin),
    /// Worked out from others, in a step of the working or beside it.
    Worked,
}

impl Serialize for Whence {
    fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        match self {
            Whence::From(origin) => origin.serialize(s),
            Whence::Worked => s.serialize_str("worked"),
        }
    }
}

/// A source as it stands in an Answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SourceText(pub Source);

impl Serialize for SourceText {
    fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        match self.0 {
            Source::Published { work, locator } => {
                let mut published = s.serialize_struct("published", 2)?;
                published.serialize_field("work", work.id())?;
                published.serialize_field("locator", locator)?;
                published.end()
            }
            Source::Computed { method } => s.serialize_str(method.id()),
            Source::CommonPractice => s.serialize_str("common_practice"),
            Source::FromMemory => s.serialize_str("from_memory"),
        }
    }
}

/// One step of the working. Its formula stands in [`crate::working::FORMULAS`] under the same id.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Working {
    /// Id of the formula.
    pub id: &'static str,
    /// The step or piece it is about.
    pub at: FieldPath,
    /// What goes in.
    pub values: Vec<Named>,
    /// Where each of them comes from, in the same order.
    pub whence: Vec<Whence>,
    /// What comes out.
    pub result: Named,
    /// Where the values and the formula come from, each source once.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub sources: Vec<SourceText>,
}
