//! Fair share: when each piece leaves so that all have the same layer, whenever they joined and however well they touch.

use crate::answer::Answer;
use crate::job::{Job, Moment, Until};
use crate::run::si;
use crate::ways::Tried;
use chemistry::{Catalogue, Process};
use quantity::{Quantity, Thickness, Time};
use serde::Serialize;

/// When each piece is lifted out. Likely values.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FairShare {
    /// What all then have, mean of the layer being laid.
    #[serde(rename = "mean_m")]
    pub mean: Thickness,
    /// The last step, whose start the times below count from.
    pub step: String,
    /// Piece by piece, in the job's order; those that leave earlier anyway are not there.
    pub leaves: Vec<Lifted>,
    /// From the first step's start to the last piece's end.
    #[serde(rename = "time_s")]
    pub time: Time,
    /// The whole job with these moments in it: its stages are the ladder of what to set.
    #[serde(skip)]
    pub job: Job,
}

/// A piece and when it is lifted out.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Lifted {
    /// The piece.
    pub id: String,
    /// After the step's start.
    #[serde(rename = "after_s")]
    pub after: Time,
}

/// Below this share two layers are the same.
const ALIKE: f64 = 0.01;

/// The mean that all pieces of a planned job could have: what its last step aims at, else what the piece has that gets least.
/// None where they have the same already, in an etch, and where they hang in several vessels.
pub fn common_mean(job: &Job, answer: &Answer) -> Option<Thickness> {
    let last = job.steps.last()?;
    if last.kind == Process::Etch || last.places.len() != 1 {
        return None;
    }
    let means = || answer.pieces.iter().filter_map(|p| p.mean.known());
    let each = means().map(|m| m.likely);
    let least = each.reduce(|a, b| if b < a { b } else { a })?;
    let differ = means().any(|m| m.likely > least * (1.0 + ALIKE));
    differ.then_some(match last.until {
        Some(Until::Mean(aim)) => aim,
        _ => least,
    })
}

/// The same layer on all: each piece leaves the last step when it has `mean`, the others go on. None where a piece that
/// leaves has its layer before the last step, and where the job cannot be planned.
pub fn fair_share(catalogue: &Catalogue, job: &Job, mean: Thickness) -> Option<FairShare> {
    let mut job = job.clone();
    let last = job.steps.len().checked_sub(1)?;
    let step = job.steps[last].id.clone();
    // What leaves in this step leaves when it has its share; what leaves before is not in it.
    for piece in &mut job.pieces {
        piece.leaves = piece.leaves.take().filter(|m| m.step != step);
    }
    job.steps[last].until = Some(Until::Mean(mean));
    let mut leaves: Vec<Lifted> = Vec::new();
    loop {
        let tried = Tried::of(catalogue, &job);
        let begun: f64 = tried.likely.steps[..last].iter().map(|s| si(s.time)).sum();
        let time = tried.likely.time?;
        if !tried.sound {
            return None;
        }
        // The one that has most passes the layer first.
        let held = |p: usize| tried.likely.now[p].real.mean;
        let hangs = tried.plan.stages.last()?.hung.iter().flatten().copied();
        let most = hangs
            .clone()
            .reduce(|a, b| if held(b) > held(a) { b } else { a })?;
        let target = mean.si();
        if held(most) <= target * (1.0 + 1e-6) || hangs.clone().count() < 2 {
            let whole = time.si() - begun;
            let of = |id: &str| FairShare::lifted(&leaves, id, whole);
            let hung = tried.plan.steps[last]
                .vessels
                .iter()
                .flat_map(|v| &v.pieces);
            let mut order: Vec<usize> = hung.copied().collect();
            order.sort_unstable();
            let leaves = order
                .iter()
                .map(|p| of(&tried.plan.pieces[*p].id))
                .collect();
            return Some(FairShare {
                mean,
                step,
                leaves,
                time,
                job,
            });
        }
        // It grows nearly straight: each round of the secant mends most of what is left.
        let stage = tried.plan.stages.last()?;
        let from = stage.from.si();
        // Those alike leave together.
        let alike = |p: &usize| held(*p) >= held(most) * (1.0 - 1e-9);
        let ids: Vec<String> = hangs
            .filter(alike)
            .map(|p| tried.plan.pieces[p].id.clone())
            .collect();
        let (mut t0, mut m0) = (time.si() - begun, held(most));
        let mut after = from + (t0 - from) * target / m0;
        for _ in 0..8 {
            if !(after > from && after.is_finite()) {
                return None;
            }
            for piece in job.pieces.iter_mut().filter(|p| ids.contains(&p.id)) {
                piece.leaves = Some(Moment {
                    step: step.clone(),
                    after: Time::from_si(after),
                });
            }
            let got = Tried::of(catalogue, &job).likely.now[most].real.mean;
            if (got - target).abs() <= 1e-9 * target {
                break;
            }
            let next = after + (target - got) * (after - t0) / (got - m0);
            (t0, m0, after) = (after, got, next);
        }
        let after = Time::from_si(after);
        leaves.extend(ids.into_iter().map(|id| Lifted { id, after }));
    }
}

impl FairShare {
    fn lifted(leaves: &[Lifted], id: &str, end: f64) -> Lifted {
        let found = leaves.iter().find(|l| l.id == id).cloned();
        found.unwrap_or_else(|| Lifted {
            id: id.to_owned(),
            after: Time::from_si(end),
        })
    }
}
