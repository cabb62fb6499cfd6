//! The stages of a job as an Answer says them: what to set when a piece joins or leaves, and what comes of it if nobody
//! does.

use crate::advise::{edge_of, tree_density, window};
use crate::answer::{Limit, LimitKind, Moment, Shared, StageAnswer, Unchanged, Verdict};
use crate::checks::named;
use crate::inputs::Inputs;
use crate::path::FieldPath;
use crate::plan::Plan;
use crate::run::Run;
use crate::value::{Maybe, Named};
use quantity::{Current, CurrentDensity, Quantity, Time};

/// All stages, in order.
pub(crate) fn stages(
    plan: &Plan,
    inputs: &Inputs,
    likely: &Run,
    moment: impl Fn(Option<Time>) -> Maybe<Moment>,
) -> Vec<StageAnswer> {
    let mut elapsed = Some(Time::seconds(0.0));
    let mut before: Option<usize> = None;
    let mut all = Vec::new();
    for (k, (stage, run)) in plan.stages.iter().zip(&likely.stages).enumerate() {
        let starts = elapsed;
        elapsed = elapsed.zip(run.time).map(|(a, t)| a + t);
        let shared = &likely.shared[k * plan.pieces.len()..(k + 1) * plan.pieces.len()];
        let name = |p: &usize| plan.pieces[*p].id.clone();
        let hangs = |k: usize, p: &usize| plan.stages[k].hung.iter().flatten().any(|q| q == p);
        let hung: Vec<usize> = stage.hung.iter().flatten().copied().collect();
        let (mut joins, mut leaves) = (Vec::new(), Vec::new());
        if let Some(last) = before {
            joins.extend(hung.iter().filter(|p| !hangs(last, p)).map(name));
            let gone = plan.stages[last].hung.iter().flatten();
            leaves.extend(gone.filter(|p| !hangs(k, p)).map(name));
        }
        // A new step is a new setting by itself; within one it is easily forgotten.
        let left = before
            .filter(|last| plan.stages[*last].step == stage.step && plan.volts.is_none())
            .and_then(|last| likely.stages[last].real);
        all.push(StageAnswer {
            step: plan.steps[stage.step].id.clone(),
            starts: moment(starts),
            ends: moment(elapsed),
            joins,
            leaves,
            wanted: run.wanted,
            set: run.set.filter(|_| plan.volts.is_none()),
            set_volts: run.volts,
            real: run.real,
            pieces: hung
                .iter()
                .filter_map(|p| {
                    Some(Shared {
                        id: plan.pieces[*p].id.clone(),
                        count: plan.pieces[*p].count,
                        share: shared[*p].share?,
                        density: shared[*p].density?,
                        mean_after: shared[*p].mean_after,
                    })
                })
                .collect(),
            unchanged: left.and_then(|current| unchanged(plan, inputs, likely, k, current)),
        });
        before = Some(k);
    }
    all
}

/// Steps in which a current that nobody turns down burns what stays: the first such moment of each.
pub(crate) fn left(plan: &Plan, likely: &Run) -> Vec<Limit> {
    let inputs = plan.inputs.likely();
    let mut all: Vec<Limit> = Vec::new();
    for k in 1..plan.stages.len() {
        let (before, now) = (&likely.stages[k - 1], &likely.stages[k]);
        let stage = &plan.stages[k];
        let at = FieldPath::new("steps").child(&plan.steps[stage.step].id);
        let Some((old, set)) = before.real.zip(now.real) else {
            continue;
        };
        let same = plan.stages[k - 1].step == stage.step && plan.volts.is_none();
        // Turned up, or as it should be anyway: nothing is forgotten.
        if !same || old.si() <= set.si() * (1.0 + 1e-9) || all.iter().any(|l| l.at == at) {
            continue;
        }
        let Some(left) = unchanged(plan, &inputs, likely, k, old) else {
            continue;
        };
        if left.verdict == Verdict::Burns {
            let mut numbers = vec![
                Named::new("after", stage.from),
                Named::new("density", left.density),
            ];
            numbers.extend(left.highest.map(|i| Named::new("highest", i)));
            numbers.push(Named::new("set", set));
            all.push(Limit {
                kind: LimitKind::BurnsIfLeft,
                at,
                numbers,
                // Who stays.
                pieces: named(plan, stage.hung.iter().flatten().copied()),
                note: None,
            });
        }
    }
    all
}

/// What a current left as it was makes of stage `k`: at the densest vessel.
fn unchanged(
    plan: &Plan,
    inputs: &Inputs,
    likely: &Run,
    k: usize,
    current: Current,
) -> Option<Unchanged> {
    let step = &plan.steps[plan.stages[k].step];
    let bath = plan.bath(step)?;
    let density = current / likely.stages[k].area?;
    let vessels = step.vessels.iter().zip(&plan.stages[k].hung);
    let edges = vessels.flat_map(|(v, hung)| {
        hung.iter()
            .filter_map(|p| edge_of(plan, v, *p, likely, inputs, density))
    });
    let densest = edges
        .reduce(|a, b| if b > a { b } else { a })
        .map(|w| density * w);
    let (lowest, highest) = window(bath, step.stirring).unzip();
    let bound = tree_density(bath, step);
    // A rim takes two to four times the mean (from memory): where none is known, the lower of that is reckoned with.
    let rim = densest.unwrap_or(density * 2.0);
    let above = |a: Option<CurrentDensity>, b: Option<CurrentDensity>| {
        a.zip(b).is_some_and(|(a, b)| a.si() > b.si())
    };
    let verdict = if above(Some(density), highest) || above(Some(rim), bound) {
        Verdict::Burns
    } else if above(lowest, Some(density)) {
        Verdict::Slow
    } else {
        Verdict::Fine
    };
    Some(Unchanged {
        density,
        lowest,
        highest,
        densest,
        bound,
        verdict,
    })
}
