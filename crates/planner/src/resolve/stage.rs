//! When pieces join and leave: the steps cut into stages.

use super::*;
use crate::job::Moment;
use quantity::Time;

/// When a piece hangs: from and until a moment, each as the place of a step and a time after its start.
type Hangs = (Option<(usize, f64)>, Option<(usize, f64)>);

impl Resolver<'_> {
    pub(super) fn stages(&mut self, plan: &mut Plan) {
        let job = self.job;
        let hangs: Vec<Hangs> = job
            .pieces
            .iter()
            .map(|p| {
                let at = FieldPath::new("pieces").child(&p.id);
                let joins = self.moment(p, p.joins.as_ref(), &at.child("joins"));
                let leaves = self.moment(p, p.leaves.as_ref(), &at.child("leaves"));
                if joins.is_some() && leaves.is_some() && leaves <= joins {
                    self.stop(at.child("leaves"), ProblemKind::Contradiction);
                }
                (joins, leaves)
            })
            .collect();
        self.all_hang_somewhere(plan);
        for (n, step) in plan.steps.iter().enumerate() {
            let ends = match step.until {
                Some(PlanUntil::Time(t)) => t.si(),
                _ => f64::INFINITY,
            };
            let mut cuts: Vec<f64> = vec![0.0];
            for (joins, leaves) in &hangs {
                cuts.extend(
                    [joins, leaves]
                        .into_iter()
                        .flatten()
                        .filter(|m| m.0 == n)
                        .map(|m| m.1),
                );
            }
            cuts.retain(|t| *t < ends);
            cuts.sort_by(f64::total_cmp);
            cuts.dedup();
            for (c, from) in cuts.iter().enumerate() {
                let hung: Vec<Vec<usize>> = step
                    .vessels
                    .iter()
                    .map(|v| {
                        let there = |p: &&usize| {
                            let (joins, leaves) = hangs[**p];
                            let now = (n, *from);
                            joins.is_none_or(|j| j <= now) && leaves.is_none_or(|l| now < l)
                        };
                        v.pieces.iter().filter(there).copied().collect()
                    })
                    .collect();
                if hung.iter().any(Vec::is_empty) && !step.vessels.is_empty() {
                    let at = FieldPath::new("steps").child(&step.id).child("in/pieces");
                    if !self.said(&at) {
                        self.stop(at, ProblemKind::Contradiction);
                    }
                }
                plan.stages.push(PlanStage {
                    step: n,
                    from: Time::seconds(*from),
                    to: cuts.get(c + 1).map(|t| Time::seconds(*t)),
                    hung_before: plan.stages.last().is_some_and(|s| s.hung == hung),
                    last: Vec::new(),
                    hung,
                });
            }
        }
        let mut seen = vec![false; plan.pieces.len()];
        for stage in plan.stages.iter_mut().rev() {
            stage.last = stage.hung.clone();
            for p in stage.last.iter_mut() {
                p.retain(|p| !core::mem::replace(&mut seen[*p], true));
            }
        }
    }

    /// The moment a piece joins or leaves; a step that there is not, that does not hold it, or that has ended by then is a
    /// Problem.
    fn moment(
        &mut self,
        piece: &Piece,
        moment: Option<&Moment>,
        at: &FieldPath,
    ) -> Option<(usize, f64)> {
        let moment = moment?;
        let job = self.job;
        let Some(n) = job.steps.iter().position(|s| s.id == moment.step) else {
            let at = at.child("step");
            self.stopped_by.push(at.clone());
            self.problems.push(
                Problem::at(at, ProblemKind::UnknownId)
                    .reading(moment.step.as_str())
                    .one_of(job.steps.iter().map(|s| s.id.as_str())),
            );
            return None;
        };
        let step = &job.steps[n];
        if !step.places.iter().any(|p| p.pieces.contains(&piece.id)) {
            self.again(at.child("step"), &moment.step);
            return None;
        }
        if let Some(Until::Time(t)) = step.until
            && moment.after.si() > t.si()
        {
            let at = at.child("after");
            self.stopped_by.push(at.clone());
            let named = crate::value::Named::new::<Time>;
            self.problems.push(
                Problem::at(at, ProblemKind::TooLarge)
                    .reading(moment.after.si().to_string())
                    .accepting(crate::problem::Accepted::Between {
                        least: named("least", fields::AFTER.least),
                        most: named("most", t),
                    }),
            );
            return None;
        }
        Some((n, moment.after.si()))
    }

    /// A piece that no step holds is a slip.
    fn all_hang_somewhere(&mut self, plan: &Plan) {
        if plan.steps.is_empty() || plan.steps.iter().any(|s| s.vessels.is_empty()) {
            return;
        }
        for (n, piece) in plan.pieces.iter().enumerate() {
            let held = |s: &PlanStep| s.vessels.iter().any(|v| v.pieces.contains(&n));
            if !plan.steps.iter().any(held) {
                let at = FieldPath::new("pieces").child(&piece.id);
                self.problems
                    .push(Problem::at(at, ProblemKind::Contradiction));
            }
        }
    }
}
