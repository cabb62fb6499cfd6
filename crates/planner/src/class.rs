//! A class around the tank: what fits at once, what each has at the bell, what is still owed.

use crate::batches::{self, Batches};
use crate::job::{Class, Job};
use crate::plan::Plan;
use crate::run::{Kept, Run, run, si, some};
use crate::vessel::{highest, lowest};
use chemistry::Catalogue;
use quantity::{Charge, CounterArea, Current, Length, Quantity, Thickness, Time, Volume};
use serde::Serialize;

/// What a class can have. Likely values.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ClassAnswer {
    /// Students for whom no piece is in the job.
    #[serde(rename = "without_count")]
    pub without: u32,
    /// What fits at once, and the batches where not all do.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub batches: Option<Batches>,
    /// What all of them at once would need, at the density of the batches.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub needs: Option<Needs>,
    /// What all hanging together have at the bell; none without a lesson's length, or without a current.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bell: Option<Bell>,
    /// How long all hanging together take to the end at the same setting.
    #[serde(rename = "time_s", skip_serializing_if = "Option::is_none")]
    pub time: Option<Time>,
    /// How many lessons that is, the first counted.
    #[serde(rename = "lessons_count", skip_serializing_if = "Option::is_none")]
    pub lessons: Option<u32>,
    /// What calipers then read on the witness wire.
    #[serde(rename = "witness_end_m", skip_serializing_if = "Option::is_none")]
    pub witness_end: Option<Length>,
}

/// What all pieces at once need. Each is for one vessel, the largest.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Needs {
    /// Of the supply.
    #[serde(rename = "current_A")]
    pub current: Current,
    /// Of the bath.
    #[serde(rename = "volume_m3", skip_serializing_if = "Option::is_none")]
    pub volume: Option<Volume>,
    /// Of the counter electrode.
    #[serde(rename = "facing_m2", skip_serializing_if = "Option::is_none")]
    pub facing: Option<CounterArea>,
}

/// What is there when the bell rings.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Bell {
    /// After the first step's start.
    #[serde(rename = "after_s")]
    pub after: Time,
    /// Charge passed.
    #[serde(rename = "charge_C", skip_serializing_if = "Option::is_none")]
    pub charge: Option<Charge>,
    /// Piece by piece.
    pub pieces: Vec<Owed>,
    /// What calipers read on the witness wire.
    #[serde(rename = "witness_m", skip_serializing_if = "Option::is_none")]
    pub witness: Option<Length>,
}

/// One piece at the bell.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Owed {
    /// The piece.
    pub id: String,
    /// Mean thickness it has; in an etch the depth of a flat floor.
    #[serde(rename = "mean_m")]
    pub mean: Thickness,
    /// What it lacks of its end.
    #[serde(rename = "owed_m", skip_serializing_if = "Option::is_none")]
    pub owed: Option<Thickness>,
}

/// The witness wire where nothing else is said. Common practice, no source.
pub const WITNESS: Length = Length::mm(1.0);

/// What calipers read on a bare copper wire that hung on the same bar all the time, where a flat sheet has `layer`.
///
/// Where areas count as they are at the start, the wire gets the charge of a flat sheet and d becomes sqrt(d^2 + 4 d T): its
/// metal is pi/4 (d1^2 - d^2) a length, the charge's is pi d T. Where areas grow, every surface has the same density at every
/// moment and so the same layer: d + 2 T.
pub fn witness(d: Length, layer: Thickness, growth: bool) -> Length {
    let (d, t) = (d.si(), layer.si());
    Length::from_si(if growth {
        d + 2.0 * t
    } else {
        (d * d + 4.0 * d * t).sqrt()
    })
}

/// A job's class; `likely` is its run.
pub(crate) fn of(
    catalogue: &Catalogue,
    job: &Job,
    plan: &Plan,
    likely: &Run,
) -> Option<ClassAnswer> {
    let class = job.class.as_ref()?;
    let pieces: u32 = job.pieces.iter().map(|p| p.count).sum();
    let batches = batches::of(catalogue, job, plan, likely);
    let bell = class
        .lesson
        .and_then(|lesson| bell(plan, likely, class, lesson));
    let lessons = class.lesson.zip(likely.time).map(|(lesson, time)| {
        // A bell at the very end is not yet another lesson.
        let n = (time / lesson - 1e-9).ceil();
        if n < 1.0 { 1 } else { n as u32 }
    });
    Some(ClassAnswer {
        without: class.students.saturating_sub(pieces),
        needs: batches.as_ref().and_then(|b| needs(plan, likely, b)),
        batches,
        bell,
        time: likely.time,
        lessons,
        witness_end: read(plan, likely, class),
    })
}

/// The witness wire beside the first piece that hangs all the time; a wire dissolves in an etch, and layers of several metals
/// hide each other.
fn read(plan: &Plan, run: &Run, class: &Class) -> Option<Length> {
    let copper = plan.layers == 1 && plan.first_moved(plan.steps.first()?)?.id == "Cu";
    if plan.etches() || !copper || plan.contacts {
        return None;
    }
    let always = |p: &usize| {
        plan.stages
            .iter()
            .all(|s| s.hung.iter().flatten().any(|q| q == p))
    };
    let n = (0..plan.pieces.len()).find(always)?;
    let layer = run.pieces[n].mean?;
    Some(witness(
        class.witness.unwrap_or(WITNESS),
        layer,
        plan.growth,
    ))
}

fn needs(plan: &Plan, likely: &Run, batches: &Batches) -> Option<Needs> {
    let step = plan.steps.last()?;
    let areas = step.vessels.iter().map(|v| likely.bare_area(&v.pieces));
    let area = areas.reduce(|a, b| if b.si() > a.si() { b } else { a })?;
    let current = batches.density * area;
    let solution = &plan.bath(step)?.solution;
    Some(Needs {
        current,
        volume: highest(&solution.load).map(|load| Volume::from_si(current.si() / load.si())),
        facing: lowest(&solution.counter_ratio).map(|r| CounterArea::from_si(area.si() * r.si())),
    })
}

/// The run cut off at the bell: settings as they are, no stage beyond it.
fn bell(plan: &Plan, likely: &Run, class: &Class, lesson: Time) -> Option<Bell> {
    let whole = likely.time?;
    let mut left = lesson;
    let kept: Vec<Kept> = likely
        .kept()
        .into_iter()
        .map(|mut kept| {
            if let Some(time) = kept.time {
                let now = if time.si() < left.si() { time } else { left };
                kept.time = Some(now);
                left = left - now;
            }
            kept
        })
        .collect();
    let mut out = Run::for_plan(plan);
    run(plan, &plan.inputs.likely(), Some(&kept), &mut out);
    let pieces = plan
        .pieces
        .iter()
        .zip(out.pieces.iter().zip(&likely.pieces));
    let pieces = pieces
        .filter_map(|(piece, (now, end))| {
            let owed = si(end.mean) - si(now.mean);
            Some(Owed {
                id: piece.id.clone(),
                mean: now.mean?,
                owed: some(if owed < 0.0 { 0.0 } else { owed }),
            })
        })
        .collect();
    Some(Bell {
        after: if whole.si() < lesson.si() {
            whole
        } else {
            lesson
        },
        charge: out.charge,
        pieces,
        witness: read(plan, &out, class),
    })
}
