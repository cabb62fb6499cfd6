//! Questions about a job beside its plan: how many fit at once, a fair share, a thief, what to measure first, the ways out.
//! Each is answered with the job's whole Answer and, in [`Answer::asked`], with what was asked for.

use crate::answer::Answer;
use crate::answering::answer_with;
use crate::batches::{Batches, batches};
use crate::fair::{FairShare, fair_share};
use crate::fields;
use crate::job::tree::Problems;
use crate::job::{self, Job};
use crate::narrowing::{Narrowed, narrowing};
use crate::path::FieldPath;
use crate::problem::Problem;
use crate::question::with_job;
use crate::value::{Absence, Because, Maybe};
use crate::ways::{GAUGE, WayOut, thief_of, ways_out};
use chemistry::Catalogue;
use quantity::{Length, Thickness};
use serde::Serialize;
use serde_json::Value;

/// The same layer on all.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Fair {
    /// Format of the text.
    pub format: u32,
    /// The job.
    pub job: Job,
    /// What each shall have.
    #[serde(rename = "mean_m")]
    pub mean: Thickness,
}

/// Metal hung beside the work.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ThiefOf {
    /// Format of the text.
    pub format: u32,
    /// The job.
    pub job: Job,
    /// Gauge of the wire at hand; 1 mm unless given.
    #[serde(rename = "wire_d_m", skip_serializing_if = "Option::is_none")]
    pub wire: Option<Length>,
}

/// What was asked for beside the plan.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Asked {
    /// How many at once, and the batches.
    Batches(Maybe<Batches>),
    /// When each leaves. All the rest of the answer is of the job in which they do.
    FairShare(Maybe<FairShare>),
    /// The wire to hang. All the rest of the answer is of the job in which it hangs.
    Thief(Maybe<WayOut>),
    /// The inputs worth measuring, the one that narrows the outcome most first.
    MeasureFirst(Vec<Narrowed>),
    /// The ways out of every limit.
    WaysOut(Vec<WayOut>),
}

/// How many of a job's pieces fit at once, with its answer.
pub fn batches_of(catalogue: &Catalogue, job: &Job, problems: Vec<Problem>) -> Answer {
    let mut answer = answer_with(catalogue, job, problems);
    let found = batches(catalogue, job).map_or_else(|| no_area(job), Maybe::Known);
    answer.asked = Some(Asked::Batches(found));
    answer
}

/// Which inputs are worth measuring, with the job's answer.
pub fn measure(catalogue: &Catalogue, job: &Job, problems: Vec<Problem>) -> Answer {
    let mut answer = answer_with(catalogue, job, problems);
    answer.asked = Some(Asked::MeasureFirst(narrowing(catalogue, job)));
    answer
}

/// The ways out of a job's limits, with its answer.
pub fn ways(catalogue: &Catalogue, job: &Job, problems: Vec<Problem>) -> Answer {
    let mut answer = answer_with(catalogue, job, problems);
    answer.asked = Some(Asked::WaysOut(ways_out(catalogue, job)));
    answer
}

/// A fair share, with the answer to the job in which it is dealt.
pub fn fair(catalogue: &Catalogue, asked: &Fair, problems: Vec<Problem>) -> Answer {
    let found = fair_share(catalogue, &asked.job, asked.mean);
    let job = found.as_ref().map_or(&asked.job, |f| &f.job);
    let mut answer = answer_with(catalogue, job, problems);
    // What cannot be timed at all, or a layer that some piece has before the last step.
    let why = match &answer.time {
        Maybe::Absent(why) => why.clone(),
        Maybe::Known(_) => does_not_apply("mean"),
    };
    answer.asked = Some(Asked::FairShare(
        found.map_or(Maybe::Absent(why), Maybe::Known),
    ));
    answer
}

/// A thief, with the answer to the job in which it hangs.
pub fn thief(catalogue: &Catalogue, asked: &ThiefOf, problems: Vec<Problem>) -> Answer {
    let found = thief_of(catalogue, &asked.job, asked.wire.unwrap_or(GAUGE));
    let job = found.as_ref().map_or(&asked.job, |w| &w.job);
    let mut answer = answer_with(catalogue, job, problems);
    let found = match found {
        Some(way) => Maybe::Known(way),
        None if asked.job.supply.is_none() => Maybe::needs(FieldPath::new("supply")),
        None => Maybe::Absent(does_not_apply("supply")),
    };
    answer.asked = Some(Asked::Thief(found));
    answer
}

fn does_not_apply(at: &str) -> Absence {
    Absence {
        because: Because::DoesNotApply,
        needs: vec![FieldPath::new(at)],
    }
}

/// What keeps batches from being counted: pieces without a surface, else a step without a current.
fn no_area(job: &Job) -> Maybe<Batches> {
    let bare = job.pieces.iter().filter(|p| p.extent.is_none());
    let mut needs: Vec<FieldPath> = bare
        .map(|p| FieldPath::new("pieces").child(&p.id).child("extent"))
        .collect();
    if needs.is_empty() {
        let last = job.steps.last();
        needs.extend(last.map(|s| FieldPath::new("steps").child(&s.id).child("drive")));
    }
    Maybe::Absent(Absence {
        because: Because::InputMissing,
        needs,
    })
}

/// Reads a job with a mean for all.
pub fn read_fair(value: &Value, problems: &mut Problems) -> Option<Fair> {
    let (mut node, job) = with_job(value, problems)?;
    let mean = node.needed(&fields::UNTIL_MEAN, problems);
    node.finish(problems);
    Some(Fair {
        format: job::FORMAT,
        job: job?,
        mean: mean?,
    })
}

/// Reads a job with the gauge of a wire.
pub fn read_thief(value: &Value, problems: &mut Problems) -> Option<ThiefOf> {
    let (mut node, job) = with_job(value, problems)?;
    let wire = node.number(&fields::HANGER_WIRE, problems);
    node.finish(problems);
    Some(ThiefOf {
        format: job::FORMAT,
        job: job?,
        wire,
    })
}
