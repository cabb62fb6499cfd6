//! "Measure this first": how much of the range remains if one input were known exactly.

use crate::answering::prepare;
use crate::inputs::Draws;
use crate::job::Job;
use crate::path::FieldPath;
use crate::plan::{Plan, PlanUntil};
use crate::run::{Kept, PieceRun, Run, run};
use chemistry::Catalogue;
use quantity::{POINTS, Quantity, Range, Ratio, Thickness};
use serde::Serialize;

/// What knowing one input exactly would do to the range.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Narrowed {
    /// The input.
    pub at: FieldPath,
    /// What remains of the range's width, 0 to 1; 0 where this input alone makes the range.
    #[serde(rename = "remains_ratio")]
    pub remains: Ratio,
}

/// Less than this is not worth a measurement.
const WORTH: f64 = 0.02;

/// For every uncertain input what remains of the range of the main outcome if it lay exactly at its likely value; the one
/// that narrows most first. Inputs that narrow it by less than 2 % are left out.
///
/// The main outcome is what the layer or the etch comes to: the depth in an etch, the thinnest place where the last step
/// ends by it, else the mean; of several pieces the average of their ranges, each as a share of its own likely value.
/// Where no layer can be said (no efficiency is known), it is the time.
pub fn narrowing(catalogue: &Catalogue, job: &Job) -> Vec<Narrowed> {
    let mut begun = Narrowing::begin(catalogue, job);
    while begun.step() {}
    begun.found()
}

/// "Measure this first": the one input whose knowledge narrows the main outcome most. None where none is worth measuring.
pub fn measure_first(catalogue: &Catalogue, job: &Job) -> Option<Narrowed> {
    narrowing(catalogue, job).into_iter().next()
}

/// The same an input at a time, so that a page can do it between two keystrokes.
pub struct Narrowing {
    plan: Plan,
    draws: Draws,
    /// The settings of the likely run.
    kept: Vec<Kept>,
    sample: Run,
    outcome: Outcome,
    likely: Vec<f64>,
    /// The uncertain inputs not looked at yet, the next one last.
    left: Vec<usize>,
    whole: f64,
    found: Vec<Narrowed>,
}

impl Narrowing {
    /// Plans the job; no input is looked at yet.
    pub fn begin(catalogue: &Catalogue, job: &Job) -> Self {
        let (plan, _) = prepare(catalogue, job, &mut Vec::new());
        let draws = plan.inputs.draws();
        let mut once = Run::for_plan(&plan);
        run(&plan, &plan.inputs.likely(), None, &mut once);
        let outcome = Outcome::of(&plan, &once);
        let likely = (0..outcome.slots(&plan))
            .map(|n| outcome.read(n, &once))
            .collect();
        let mut left: Vec<usize> = draws.uncertain().collect();
        left.reverse();
        let mut begun = Self {
            kept: once.kept(),
            sample: Run::for_samples(&plan),
            plan,
            draws,
            outcome,
            likely,
            left,
            whole: 0.0,
            found: Vec::new(),
        };
        begun.whole = begun.width(None);
        begun
    }

    /// Looks at one more input; false when none was left.
    pub fn step(&mut self) -> bool {
        let Some(n) = self.left.pop() else {
            return false;
        };
        let remains = self.width(Some(n)) / self.whole;
        if remains < 1.0 - WORTH {
            self.found.push(Narrowed {
                at: self.plan.inputs.at(n).clone(),
                remains: Ratio::from_si(remains),
            });
        }
        true
    }

    /// What was found, the one that narrows most first.
    pub fn found(mut self) -> Vec<Narrowed> {
        self.found
            .sort_by(|a, b| a.remains.si().total_cmp(&b.remains.si()));
        self.found
    }

    /// How wide the outcome's range is with one input held at its likely value.
    fn width(&mut self, held: Option<usize>) -> f64 {
        let mut samples = vec![[0.0; POINTS]; self.likely.len()];
        let Self {
            plan,
            draws,
            kept,
            sample,
            outcome,
            likely,
            ..
        } = self;
        draws.each(
            |n| held == Some(n),
            |point, inputs| {
                run(plan, inputs, Some(kept), sample);
                for (n, column) in samples.iter_mut().enumerate() {
                    column[point] = outcome.read(n, sample);
                }
            },
        );
        let each = samples.iter().zip(likely);
        each.filter(|(_, likely)| **likely > 0.0)
            .map(|(column, likely)| {
                let range = Range::of_samples(Ratio::from_si(*likely), column);
                (range.high.si() - range.low.si()) / *likely
            })
            .sum()
    }
}

/// Which number stands for the whole answer.
enum Outcome {
    /// Of each piece.
    Layer(fn(&PieceRun) -> Option<Thickness>),
    /// Of the whole job.
    Time,
}

impl Outcome {
    fn of(plan: &Plan, likely: &Run) -> Self {
        let by_thinnest = plan
            .steps
            .last()
            .is_some_and(|s| matches!(s.until, Some(PlanUntil::Thinnest(_))));
        let read: fn(&PieceRun) -> Option<Thickness> = if plan.etches() {
            |p| p.depth
        } else if by_thinnest && likely.pieces.iter().all(|p| p.thinnest.is_some()) {
            |p| p.thinnest
        } else {
            |p| p.mean
        };
        if likely.pieces.iter().any(|p| read(p).is_some()) {
            Self::Layer(read)
        } else {
            Self::Time
        }
    }

    fn slots(&self, plan: &Plan) -> usize {
        match self {
            Self::Layer(_) => plan.pieces.len(),
            Self::Time => 1,
        }
    }

    /// 0 where it is absent: that never depends on the sample.
    fn read(&self, n: usize, out: &Run) -> f64 {
        match self {
            Self::Layer(read) => read(&out.pieces[n]).map_or(0.0, Quantity::si),
            Self::Time => out.time.map_or(0.0, Quantity::si),
        }
    }
}
