//! The Answer: what to set, how long, what they will have, its range and its working.

mod bath;
mod input;
mod notice;
mod piece;
mod step;

pub use bath::{BathAnswer, MetalAnswer};
pub use input::{InputUsed, Origin, SourceText, Whence, Working};
pub use notice::{Caution, CautionKind, Limit, LimitKind, When};
pub use piece::{Etched, LayerAnswer, PieceAnswer, Section};
pub use step::{
    Ceiling, Counts, Entry, Moment, Ruling, Setting, Shared, Socket, StageAnswer, StepAnswer,
    Thumb, Unchanged, UseBand, Verdict, Window,
};

use crate::after::Left;
use crate::problem::Problem;
use crate::sessions::Session;
use crate::value::Maybe;
use quantity::{Charge, Range, Time};
use serde::Serialize;

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
