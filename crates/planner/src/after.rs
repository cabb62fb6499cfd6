//! After an accident: what is left on the work, how it enters again, and the job that remains.

mod left;

pub use left::answer;

use crate::fields;
use crate::job::tree::{Node, Problems};
use crate::job::{self, Job};
use crate::path::FieldPath;
use crate::question::with_job;
use crate::reentry::Reentry;
use quantity::{Current, Mass, Range, Thickness, Time, WorkArea};
use serde::Serialize;
use serde_json::Value;

/// What happened in a job, and when.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct After {
    /// Format of the text.
    pub format: u32,
    /// The job as it was planned.
    pub job: Job,
    /// The step it happened in.
    pub step: String,
    /// So long after the step's start.
    #[serde(rename = "after_s")]
    pub at: Time,
    /// What happened.
    pub what: Accident,
}

/// What can happen to a run. In the text of a question it stands beside the job: `"power_cut": {"gap_s": 900}`.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Accident {
    /// The current was away, the work in the bath.
    PowerCut {
        /// How long; not known counts as a night.
        #[serde(rename = "gap_s")]
        gap: Option<Time>,
    },
    /// The leads were the wrong way round.
    Reversed {
        /// How long.
        #[serde(rename = "for_s")]
        lasted: Time,
        /// What flowed; else what was set.
        #[serde(rename = "current_A")]
        current: Option<Current>,
    },
    /// Nodules or burnt edges were filed off.
    Filed {
        /// From which piece; else the step's first.
        piece: Option<String>,
        /// How much.
        #[serde(rename = "mass_kg")]
        mass: Option<Mass>,
        /// Or how much of it is bare now.
        #[serde(rename = "area_m2")]
        area: Option<WorkArea>,
    },
}

/// What is left after an accident.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Left {
    /// How the work enters again.
    pub reentry: Reentry,
    /// Piece by piece, of those that hung.
    pub pieces: Vec<LeftOn>,
}

/// What is left on one piece: mean of the layer being laid; in an etch the depth of a flat floor.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct LeftOn {
    /// The piece.
    pub id: String,
    /// What was there when it happened.
    pub had: Range<Thickness>,
    /// What went.
    pub lost: Range<Thickness>,
    /// What is there now.
    pub left: Range<Thickness>,
    /// So thin over a coat that it may be gone in places: measure its ohms first.
    #[serde(skip_serializing_if = "core::ops::Not::not")]
    pub measure_ohms: bool,
}

/// Reads the question.
pub fn read(value: &Value, problems: &mut Problems) -> Option<After> {
    let (mut node, job) = with_job(value, problems)?;
    let step = node.needed_text("step", problems);
    let at = node.needed(&fields::AFTER, problems);
    let what = accident(&mut node, problems);
    node.finish(problems);
    Some(After {
        format: job::FORMAT,
        job: job?,
        step: step?,
        at: at?,
        what: what?,
    })
}

fn accident(node: &mut Node<'_>, problems: &mut Problems) -> Option<Accident> {
    let (key, inner) = node.choice(&["power_cut", "reversed", "filed"], problems)?;
    let mut n = Node::new(inner, FieldPath::new(key), problems)?;
    let what = match key {
        "power_cut" => Some(Accident::PowerCut {
            gap: n.number(&fields::GAP, problems),
        }),
        "reversed" => {
            let current = n.number(&fields::CURRENT, problems);
            let lasted = n.needed(&fields::REVERSED, problems);
            lasted.map(|lasted| Accident::Reversed { lasted, current })
        }
        _ => {
            let piece = n.text("piece", problems);
            let area = n.number(&fields::FILED_BARE, problems);
            let mass = match area {
                Some(_) => n.number(&fields::FILED, problems),
                None => n.needed(&fields::FILED, problems),
            };
            (mass.is_some() || area.is_some()).then_some(Accident::Filed { piece, mass, area })
        }
    };
    n.finish(problems);
    what
}
