//! One question a line in, one answer a line out.
//!
//! A question is an object with one key: `{"plan": {..}}`; `batches`, `measure_first` and `ways_out` ask more of a job,
//! `after`, `fair_share` and `thief` hold one beside what they ask. The rest exist as types; what they answer comes with their
//! issue, and until then they are refused with a Problem.

use crate::after::{self, After};
use crate::answer::Answer;
use crate::answering::{answer_with, only_problems};
use crate::asked::{self, Fair, ThiefOf};
use crate::job::tree::{Node, Problems};
use crate::job::{self, Job};
use crate::path::FieldPath;
use crate::problem::{Problem, ProblemKind};
use chemistry::Catalogue;
use quantity::{
    AreaResistance, Concentration, Current, Density, Fraction, Length, Mass, Resistance, Time,
    Voltage, Volume, WorkArea,
};
use serde::Serialize;
use serde_json::Value;

/// What can be asked.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Question {
    /// What to set and for how long.
    Plan(Job),
    /// Is the coat good enough.
    Coat(Coat),
    /// How is the bath made up.
    Makeup(Makeup),
    /// What did the weighing say.
    Weighed(Weighed),
    /// What is left after an accident, and how to go on.
    After(After),
    /// How many pieces fit at once, and the batches.
    Batches(Job),
    /// When each piece leaves so that all have the same layer.
    FairShare(Fair),
    /// The wire to hang beside the work where the supply gives too much.
    Thief(ThiefOf),
    /// Which inputs narrow the outcome most.
    MeasureFirst(Job),
    /// The changes that lift each limit.
    WaysOut(Job),
}

/// A reading on a conductive coat.
#[derive(Clone, Debug, PartialEq, Default, Serialize)]
pub struct Coat {
    /// Format of the text.
    pub format: u32,
    /// Between two tips.
    #[serde(rename = "tips_ohm")]
    pub tips: Option<Resistance>,
    /// Distance of the tips.
    #[serde(rename = "tips_apart_m")]
    pub tips_apart: Option<Length>,
    /// Radius of a tip.
    #[serde(rename = "tip_radius_m")]
    pub tip_radius: Option<Length>,
    /// Polarisation resistance at the front.
    #[serde(rename = "polarisation_ohm_m2")]
    pub polarisation: Option<AreaResistance>,
    /// Overvoltage allowed at the contact.
    #[serde(rename = "over_V")]
    pub over: Option<Voltage>,
    /// Girth at the contact.
    #[serde(rename = "girth_m")]
    pub girth: Option<Length>,
    /// Height of the piece.
    #[serde(rename = "height_m")]
    pub height: Option<Length>,
}

/// A bath to be made up.
#[derive(Clone, Debug, PartialEq, Default, Serialize)]
pub struct Makeup {
    /// Format of the text.
    pub format: u32,
    /// How much bath.
    #[serde(rename = "volume_m3")]
    pub volume: Option<Volume>,
    /// What it shall hold.
    pub wanted: Vec<Wanted>,
    /// The acid at hand.
    pub acid: Option<Acid>,
}

/// Something a bath shall hold.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Wanted {
    /// Its formula.
    pub what: String,
    /// How much of it.
    #[serde(rename = "wanted_kg_per_m3")]
    pub wanted: Concentration,
}

/// Acid as bought.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Acid {
    /// Share by mass.
    #[serde(rename = "strength_frac")]
    pub strength: Fraction,
    /// Its density.
    #[serde(rename = "density_kg_per_m3")]
    pub density: Density,
}

/// A piece weighed after a run.
#[derive(Clone, Debug, PartialEq, Default, Serialize)]
pub struct Weighed {
    /// Format of the text.
    pub format: u32,
    /// The solution.
    pub solution: String,
    /// The current shown.
    #[serde(rename = "current_A")]
    pub current: Option<Current>,
    /// How long.
    #[serde(rename = "time_s")]
    pub time: Option<Time>,
    /// What the piece gained.
    #[serde(rename = "piece_gain_kg")]
    pub piece_gain: Option<Mass>,
    /// What its wires gained.
    #[serde(rename = "wire_gain_kg")]
    pub wire_gain: Option<Mass>,
    /// The piece's own surface.
    #[serde(rename = "piece_m2")]
    pub piece: Option<WorkArea>,
}

const WORDS: [&str; 10] = [
    "plan",
    "coat",
    "makeup",
    "weighed",
    "after",
    "batches",
    "fair_share",
    "thief",
    "measure_first",
    "ways_out",
];

/// Answers one line. A blank line, or one that is not JSON, is answered with one Problem.
pub fn answer_line(catalogue: &Catalogue, line: &str) -> Answer {
    match serde_json::from_str::<Value>(line) {
        Ok(tree) => answer_tree(catalogue, &tree),
        Err(_) => only_problems(
            catalogue,
            vec![Problem::at(FieldPath::root(), ProblemKind::NotJson).reading(cut(line))],
        ),
    }
}

/// Answers one question given as a tree.
pub fn answer_tree(catalogue: &Catalogue, tree: &Value) -> Answer {
    let mut problems = Problems::new();
    let found = question(tree, &mut problems);
    let answered = match found {
        None => None,
        Some(("after", inner)) => after::read(inner, &mut problems)
            .map(|q| after::answer(catalogue, &q, std::mem::take(&mut problems))),
        Some(("fair_share", inner)) => asked::read_fair(inner, &mut problems)
            .map(|q| asked::fair(catalogue, &q, std::mem::take(&mut problems))),
        Some(("thief", inner)) => asked::read_thief(inner, &mut problems)
            .map(|q| asked::thief(catalogue, &q, std::mem::take(&mut problems))),
        Some((word, inner)) => about(word)
            .ok_or_else(|| Problem::at(FieldPath::new(word), ProblemKind::NotYet))
            .map_err(|p| problems.push(p))
            .ok()
            .and_then(|answer| {
                let (job, more) = job::read(inner);
                problems.extend(more);
                job.map(|job| answer(catalogue, &job, std::mem::take(&mut problems)))
            }),
    };
    answered.unwrap_or_else(|| only_problems(catalogue, problems))
}

/// What answers a question that is a job and nothing else.
type OfJob = fn(&Catalogue, &Job, Vec<Problem>) -> Answer;

fn about(word: &str) -> Option<OfJob> {
    match word {
        "plan" => Some(answer_with),
        "batches" => Some(asked::batches_of),
        "measure_first" => Some(asked::measure),
        "ways_out" => Some(asked::ways),
        _ => None,
    }
}

fn question<'a>(tree: &'a Value, problems: &mut Problems) -> Option<(&'static str, &'a Value)> {
    let mut node = Node::new(tree, FieldPath::root(), problems)?;
    let found = node.choice(&WORDS, problems);
    node.finish(problems);
    found
}

/// A question about a job: its format is known, and the job is read at its own addresses.
pub(crate) fn with_job<'a>(
    value: &'a Value,
    problems: &mut Problems,
) -> Option<(Node<'a>, Option<Job>)> {
    let mut node = Node::new(value, FieldPath::root(), problems)?;
    if !job::format_is_known(&mut node, problems) {
        return None;
    }
    if !node.has("job") {
        problems.push(Problem::at(FieldPath::new("job"), ProblemKind::Missing));
    }
    let job = node.get("job").and_then(|inner| {
        let (job, more) = job::read(inner);
        problems.extend(more);
        job
    });
    Some((node, job))
}

/// The answer as its one line of text.
pub fn answer_text(catalogue: &Catalogue, line: &str) -> String {
    to_line(&answer_line(catalogue, line))
}

/// Any answer or question as one line of text. Keys and numbers of these types always serialize; should one ever not,
/// the line says so instead of ending the program.
pub fn to_line(value: &impl Serialize) -> String {
    serde_json::to_string(value)
        .unwrap_or_else(|e| format!("{{\"unwritable\":{:?}}}", e.to_string()))
}

fn cut(line: &str) -> String {
    line.chars().take(60).collect()
}
