//! What holds a job back, and the hazards at its steps. One rule a function.

use crate::advise::{limiting, tree_density, window};
use crate::answer::{Caution, CautionKind, Limit, LimitKind, When};
use crate::job::{Base, Job, Place};
use crate::path::FieldPath;
use crate::plan::{Plan, PlanBath, PlanStep};
use crate::run::{Run, StepRun};
use crate::value::Named;
use quantity::{CurrentDensity, Fraction, Quantity, Time, Voltage};

/// A display step above this share of the current asks for a meter in series. Common practice, no source.
pub const COARSE: f64 = 0.03;

/// A run longer than this is one that people walk away from. Common practice, no source.
const LONG: Time = Time::hours(1.0);

/// What holds the job back, in the order of the steps.
pub fn limits(plan: &Plan, likely: &Run) -> Vec<Limit> {
    let mut all = Vec::new();
    let mut elapsed = Some(Time::seconds(0.0));
    for (step, run) in plan.steps.iter().zip(&likely.steps) {
        let at = FieldPath::new("steps").child(&step.id);
        let mut add = |kind, numbers| {
            all.push(Limit {
                kind,
                at: at.clone(),
                numbers,
            });
        };
        supply(plan, run, &mut add);
        if let Some(bath) = &plan.bath {
            densities(bath, step, run, &mut add);
            volts(plan, step, run, &mut add);
        }
        if let Some((start, from, to)) = plan.start
            && let Some((before, length)) = elapsed.zip(run.time)
        {
            let night = start.plus(before).overlap(length, from, to);
            if night.si() > 0.0 {
                add(LimitKind::Night, vec![Named::new("in_the_night", night)]);
            }
        }
        elapsed = elapsed.zip(run.time).map(|(a, b)| a + b);
    }
    for (piece, run) in plan.pieces.iter().zip(&likely.pieces) {
        if let Some(after) = run.bore_after
            && after.si() <= 0.0
        {
            all.push(Limit {
                kind: LimitKind::BoreCloses,
                at: FieldPath::new("pieces").child(&piece.id),
                numbers: Vec::new(),
            });
        }
    }
    all
}

fn supply(plan: &Plan, run: &StepRun, add: &mut impl FnMut(LimitKind, Vec<Named>)) {
    let (Some(bench), Some(wanted), Some(set)) = (&plan.bench, run.wanted, run.set) else {
        return;
    };
    // Half a display step is rounding, not a limit.
    let slack = 1.0 + 1e-9;
    if let Some(highest) = bench.highest
        && wanted.si() > highest.si() * slack
    {
        add(
            LimitKind::SupplyTooSmall,
            vec![Named::new("wanted", wanted), Named::new("highest", highest)],
        );
    }
    if let Some(lowest) = bench.lowest
        && wanted.si() * slack < lowest.si()
    {
        add(
            LimitKind::SupplyTooLarge,
            vec![Named::new("wanted", wanted), Named::new("lowest", lowest)],
        );
    }
    if let Some(step) = bench.display_step {
        let share = step / set;
        if share > COARSE {
            add(
                LimitKind::DisplayTooCoarse,
                vec![
                    Named::new("step", step),
                    Named::new("set", set),
                    Named::new("share", Fraction::from_si(share)),
                ],
            );
        }
    }
}

fn densities(
    bath: &PlanBath,
    step: &PlanStep,
    run: &StepRun,
    add: &mut impl FnMut(LimitKind, Vec<Named>),
) {
    let Some(i) = run.density else { return };
    if let Some((lowest, highest)) = window(bath, step.stirring) {
        let numbers = || {
            vec![
                Named::new("density", i),
                Named::new("lowest", lowest),
                Named::new("highest", highest),
            ]
        };
        if i.si() > highest.si() {
            add(LimitKind::AboveWindow, numbers());
        }
        if i.si() < lowest.si() {
            add(LimitKind::BelowWindow, numbers());
        }
    }
    if let (Some(edge), Some(bound), Some(limit)) = (
        run.densest,
        tree_density(bath, step.stirring),
        limiting(bath, step.stirring),
    ) && edge.si() > bound.si()
    {
        add(
            LimitKind::EdgesBurn,
            vec![
                Named::new("densest", edge),
                Named::new("bound", bound),
                Named::new::<CurrentDensity>("limiting", limit),
            ],
        );
    }
}

fn volts(plan: &Plan, step: &PlanStep, run: &StepRun, add: &mut impl FnMut(LimitKind, Vec<Named>)) {
    let Some(expected) = run.volts else { return };
    let supply = plan.bench.as_ref().and_then(|b| b.highest_volts);
    let ceiling: Option<Voltage> = match (supply, step.ceiling) {
        (Some(a), Some(b)) => Some(if b.si() < a.si() { b } else { a }),
        (a, b) => a.or(b),
    };
    if let Some(ceiling) = ceiling
        && expected.si() > ceiling.si()
    {
        add(
            LimitKind::VoltsTooFew,
            vec![
                Named::new("expected", expected),
                Named::new("ceiling", ceiling),
            ],
        );
    }
}

/// The hazards, each at its step. They stand whether or not the numbers do.
pub fn cautions(job: &Job, plan: &Plan, likely: &Run) -> Vec<Caution> {
    let mut all = Vec::new();
    let mut add = |kind, at: FieldPath, when| all.push(Caution { kind, at, when });
    for piece in &job.pieces {
        let at = FieldPath::new("pieces").child(&piece.id);
        match &piece.base {
            Some(Base::Nonconductor(_)) => add(CautionKind::CoatFumes, at, When::Before),
            Some(Base::Unknown) => add(CautionKind::BaseUnknown, at, When::Before),
            Some(Base::Metal(_)) | None => {}
        }
    }
    let (Some(first), Some(last)) = (plan.steps.first(), plan.steps.last()) else {
        return all;
    };
    let step = |s: &PlanStep| FieldPath::new("steps").child(&s.id);
    if plan.bath.as_ref().is_some_and(|b| b.metal.id == "Cu") {
        add(CautionKind::CopperBathSplash, step(first), When::Before);
        add(CautionKind::CopperWaste, step(last), When::After);
    }
    add(CautionKind::SupplyAndLiquid, step(first), When::Before);
    if job.place == Place::Class {
        add(CautionKind::ClassAttended, step(first), When::During);
    } else if likely.time.is_some_and(|t| t.si() > LONG.si()) {
        add(CautionKind::Unattended, step(last), When::During);
    }
    all
}
