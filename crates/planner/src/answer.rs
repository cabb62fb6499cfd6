//! The Answer: what to set, how long, what they will have, its range and its working.

use crate::job::Use;
use crate::path::FieldPath;
use crate::problem::Problem;
use crate::value::{Maybe, Named};
use chemistry::{Process, Source};
use field::ThinPlace;
use quantity::{
    Charge, Current, CurrentDensity, GrowthRate, Length, Mass, Range, Ratio, Thickness, Time,
    Voltage, WorkArea,
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
    /// What each piece will have.
    pub pieces: Vec<PieceAnswer>,
    /// From the first step's start to the last one's end.
    pub time: Maybe<Range<Time>>,
    /// Charge of all steps.
    pub charge: Maybe<Range<Charge>>,
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
    /// The voltage ceiling to set.
    pub ceiling: Maybe<Ceiling>,
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
    /// Mean thickness at its end, counted from the job's start.
    pub mean_after: Maybe<Range<Thickness>>,
    /// The thickness band a use asks for, where the step has one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub use_band: Option<UseBand>,
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
}

impl Ruling {
    /// Every ruling, for tables that must be complete.
    pub const ALL: &'static [Ruling] = &[Self::Typical, Self::Edges, Self::Supply];
}

/// The mean thickness a use asks for.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct UseBand {
    /// The use.
    #[serde(rename = "use")]
    pub of: Use,
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
    /// Mean thickness.
    pub mean: Maybe<Range<Thickness>>,
    /// At the thinnest place.
    pub thinnest: Maybe<Range<Thickness>>,
    /// At the thickest place.
    pub thickest: Maybe<Range<Thickness>>,
    /// Where it is thinnest.
    pub thin_place: Maybe<ThinPlace>,
    /// Wagner number of the last step.
    pub wagner: Maybe<Range<Ratio>>,
    /// Mass grown on the piece.
    pub mass: Maybe<Range<Mass>>,
    /// Mass grown on its wires.
    pub wire_mass: Maybe<Range<Mass>>,
    /// Inner diameter after growth.
    pub bore_after: Maybe<Range<Length>>,
    /// Inner diameter to make so that the wanted one comes of it.
    pub bore_to_make: Maybe<Range<Length>>,
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
    /// The thickest place would burn or grow trees.
    EdgesBurn,
    /// The step runs into the night.
    Night,
    /// The bore closes before the layer is grown.
    BoreCloses,
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
        Self::EdgesBurn,
        Self::Night,
        Self::BoreCloses,
    ];
}

/// Something that is computed but holds the job back.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Limit {
    /// What.
    pub kind: LimitKind,
    /// The step or piece it is about.
    pub at: FieldPath,
    /// Its numbers.
    pub numbers: Vec<Named>,
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
    /// What is under the coat or unknown metal must not be iron, zinc, aluminium or soft solder.
    BaseUnknown,
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
        let mut map = s.serialize_map(Some(3))?;
        map.serialize_entry("at", &self.at)?;
        map.serialize_entry(&format!("value_{}", self.value.key_unit), &self.value.si)?;
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
    /// What comes out.
    pub result: Named,
    /// Where the values come from.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub sources: Vec<SourceText>,
}
