//! Batches: how many pieces fit at once by the supply, the bath's load and the counter electrode, and how long all of them
//! take one batch after the other.

use crate::job::{Drive, Job};
use crate::plan::{Plan, PlanDrive, PlanStep};
use crate::run::Run;
use crate::vessel::{highest, lowest};
use crate::ways::Tried;
use chemistry::Catalogue;
use quantity::{Current, CurrentDensity, Quantity, Time, Volume};
use serde::Serialize;

/// What bounds how many hang at once.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum FitBy {
    /// The highest current of the supply.
    Current,
    /// The current that the bath's volume bears.
    Load,
    /// The counter electrode's area beside the work's.
    Counter,
}

impl FitBy {
    /// Every bound, for tables that must be complete.
    pub const ALL: &'static [FitBy] = &[Self::Current, Self::Load, Self::Counter];
}

/// So many by one bound.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Fits {
    /// The bound.
    pub by: FitBy,
    /// How many pieces of the mean size hang at once by it, in all vessels together.
    #[serde(rename = "at_once_count")]
    pub at_once: u32,
}

/// How many of a kind.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Counted {
    /// The piece.
    pub id: String,
    /// How many of it.
    pub count: u32,
}

/// What hangs together.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Group {
    /// The pieces.
    pub pieces: Vec<Counted>,
    /// What is then set at the last step.
    #[serde(rename = "set_A")]
    pub set: Current,
    /// How long it takes, all steps.
    #[serde(rename = "time_s")]
    pub time: Time,
}

/// How many at once, how many batches, how long in all. Likely values.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Batches {
    /// The density it is counted at: the person's own, else the solution's typical one.
    #[serde(rename = "density_A_per_m2")]
    pub density: CurrentDensity,
    /// How many pieces there are.
    #[serde(rename = "pieces_count")]
    pub pieces: u32,
    /// How many fit, bound by bound; those that are not known are left out.
    pub fits: Vec<Fits>,
    /// The bound that rules; none where none is known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ruled_by: Option<FitBy>,
    /// The batches, where not all fit at once: the fewest that hold every bound, areas dealt out evenly. Empty where all
    /// fit, where one piece alone does not, and for vessels in series.
    pub groups: Vec<Group>,
    /// How long they take one after the other.
    #[serde(rename = "time_s", skip_serializing_if = "Option::is_none")]
    pub time: Option<Time>,
}

/// More batches than this are not an evening's work, and not searched for.
const MOST: usize = 24;

/// The batches of a job: by the density and the vessels of its last step. None where no current or no area is known.
pub fn batches(catalogue: &Catalogue, job: &Job) -> Option<Batches> {
    let tried = Tried::of(catalogue, job);
    of(catalogue, job, &tried.plan, &tried.likely)
}

/// The density to count with.
fn density(job: &Job, plan: &Plan, step: &PlanStep) -> Option<CurrentDensity> {
    let said = job.steps.iter().find(|s| s.id == step.id)?;
    match (&said.drive, step.drive) {
        (Some(Drive::Density(i)), Some(PlanDrive::Density(_))) => Some(*i),
        _ => plan.bath(step)?.solution.window_still.typical(),
    }
}

/// The most area that each bound lets into vessel `v` of a step.
fn bounds(plan: &Plan, step: &PlanStep, v: usize, i: CurrentDensity) -> [(FitBy, Option<f64>); 3] {
    let bath = &plan.baths[step.vessels[v].bath];
    let volume = bath.volume.map(|id| plan.inputs.likely().get::<Volume>(id));
    let supply = plan.bench.as_ref().and_then(|b| b.highest);
    let load = volume.zip(highest(&bath.solution.load));
    let counter = bath.facing.zip(lowest(&bath.solution.counter_ratio));
    [
        (FitBy::Current, supply.map(|c| c.si() / i.si())),
        (FitBy::Load, load.map(|(v, l)| l.si() * v.si() / i.si())),
        (FitBy::Counter, counter.map(|(a, r)| a.si() / r.si())),
    ]
}

/// The same of a job planned and run.
pub(crate) fn of(catalogue: &Catalogue, job: &Job, plan: &Plan, likely: &Run) -> Option<Batches> {
    let step = plan.steps.last()?;
    let i = density(job, plan, step).filter(|i| i.si() > 0.0)?;
    let hung = || step.vessels.iter().flat_map(|v| &v.pieces);
    let pieces: u32 = hung().map(|p| plan.pieces[*p].count).sum();
    let all: Vec<usize> = hung().copied().collect();
    let area = likely.bare_area(&all).si();
    let mean = area / f64::from(pieces);
    // An area that is not known is no number, and compares as neither.
    if pieces == 0 || mean.is_nan() || mean <= 0.0 {
        return None;
    }
    let mut fits: Vec<Fits> = Vec::new();
    let mut most = f64::INFINITY;
    for n in 0..3 {
        let each = (0..step.vessels.len()).map(|v| bounds(plan, step, v, i)[n]);
        let (mut sum, mut by) = (Some(0.0), FitBy::Current);
        for (of, bound) in each {
            by = of;
            sum = sum.zip(bound).map(|(s, b)| {
                most = if b < most { b } else { most };
                s + (b / mean * (1.0 + 1e-9)).floor()
            });
        }
        if let Some(sum) = sum {
            let at_once = sum as u32;
            fits.push(Fits { by, at_once });
        }
    }
    let ruling = fits.iter().min_by_key(|f| f.at_once);
    let mut found = Batches {
        density: i,
        pieces,
        ruled_by: ruling.map(|f| f.by),
        groups: Vec::new(),
        time: likely.time,
        fits,
    };
    let one_vessel = plan.steps.iter().all(|s| s.vessels.len() == 1);
    if area > most * (1.0 + 1e-9) {
        found.time = None;
        if one_vessel {
            found.groups = groups(catalogue, job, plan, likely, &all, most).unwrap_or_default();
            let times = found.groups.iter().map(|g| g.time);
            found.time = times.reduce(|a, b| a + b);
        }
    }
    Some(found)
}

/// The fewest groups that each hold no more area than `most`, each planned by itself.
fn groups(
    catalogue: &Catalogue,
    job: &Job,
    plan: &Plan,
    likely: &Run,
    all: &[usize],
    most: f64,
) -> Option<Vec<Group>> {
    let area = |p: usize| likely.now[p].body.both.area(0.0);
    let mut each: Vec<usize> = Vec::new();
    for p in all {
        for _ in 0..plan.pieces[*p].count {
            each.push(*p);
        }
    }
    // The largest first, each to the group that holds least.
    each.sort_unstable_by(|a, b| area(*b).total_cmp(&area(*a)).then(a.cmp(b)));
    for number in 2..=MOST.min(each.len()) {
        let mut held: Vec<(f64, Vec<u32>)> = vec![(0.0, vec![0; plan.pieces.len()]); number];
        for p in &each {
            let mut least = 0;
            for n in 1..number {
                if held[n].0 < held[least].0 {
                    least = n;
                }
            }
            held[least].0 += area(*p);
            held[least].1[*p] += 1;
        }
        if held.iter().any(|g| g.0 > most * (1.0 + 1e-9)) {
            continue;
        }
        let mut found = Vec::new();
        for (_, counts) in &held {
            found.push(group(catalogue, job, plan, counts)?);
        }
        return Some(found);
    }
    None
}

fn group(catalogue: &Catalogue, job: &Job, plan: &Plan, counts: &[u32]) -> Option<Group> {
    let mut job = job.clone();
    let of = |id: &str| {
        plan.pieces
            .iter()
            .position(|p| p.id == id)
            .map_or(0, |n| counts[n])
    };
    job.pieces.retain_mut(|piece| {
        piece.count = of(&piece.id);
        piece.count > 0
    });
    for place in job.steps.iter_mut().flat_map(|s| &mut s.places) {
        place.pieces.retain(|id| of(id) > 0);
    }
    let tried = Tried::of(catalogue, &job);
    Some(Group {
        set: tried.likely.steps.last()?.set?,
        time: tried.likely.time?,
        pieces: job
            .pieces
            .into_iter()
            .map(|p| Counted {
                id: p.id,
                count: p.count,
            })
            .collect(),
    })
}
