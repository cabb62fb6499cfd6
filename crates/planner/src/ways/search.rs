//! One change tried: the job planned and run again with it.

use super::{Change, Search, To, Way, WayOut};
use crate::answer::Limit;
use crate::answering::{cost, prepare};
use crate::checks;
use crate::job::Job;
use crate::path::FieldPath;
use crate::plan::Plan;
use crate::run::{Run, run};
use chemistry::Catalogue;
use quantity::{Money, Quantity};

/// A job planned and run with the likely values alone: quick enough to try many.
pub(crate) struct Tried {
    pub(crate) plan: Plan,
    pub(crate) likely: Run,
    pub(crate) limits: Vec<Limit>,
    pub(crate) sound: bool,
}

impl Tried {
    pub(crate) fn of(catalogue: &Catalogue, job: &Job) -> Self {
        let mut problems = Vec::new();
        let (plan, _) = prepare(catalogue, job, &mut problems);
        let mut likely = Run::for_plan(&plan);
        run(&plan, &plan.inputs.likely(), None, &mut likely);
        Self {
            limits: checks::limits(job, &plan, &likely),
            sound: problems.is_empty(),
            plan,
            likely,
        }
    }

    fn has(&self, limit: &Limit) -> bool {
        self.limits
            .iter()
            .any(|l| l.kind == limit.kind && l.at == limit.at)
    }
}

impl Search<'_> {
    /// Tries a change; keeps it where it lifts the limit and brings no other.
    pub(super) fn attempt(
        &mut self,
        way: Way,
        at: FieldPath,
        to: To,
        change: impl FnOnce(&mut Job),
    ) -> bool {
        self.attempt_batches(way, at, to, 1.0, change)
    }

    pub(super) fn attempt_batches(
        &mut self,
        way: Way,
        at: FieldPath,
        to: To,
        batches: f64,
        change: impl FnOnce(&mut Job),
    ) -> bool {
        let mut job = self.job.clone();
        change(&mut job);
        let tried = Tried::of(self.catalogue, &job);
        let lifts = !tried.has(self.limit) && tried.likely.time.is_some();
        let new = |l: &Limit| !self.now.has(l);
        if !tried.sound || !lifts || tried.limits.iter().any(new) {
            return false;
        }
        let first = tried.likely.pieces.first();
        self.found.push(WayOut {
            lifts: self.limit.kind,
            at: self.limit.at.clone(),
            way,
            change: Change { at, to },
            set: tried.likely.steps.first().and_then(|s| s.set),
            time: tried.likely.time.map(|t| t * batches),
            thickness: first.and_then(|p| p.depth.or(p.mean)),
            cost: cost(&job, &tried.plan, &tried.likely).map(|c| Money::from_si(c.si() * batches)),
            job,
        });
        true
    }

    pub(super) fn number<Q: Quantity>(&self, name: &str) -> Option<Q> {
        let named = self.limit.numbers.iter().find(|n| n.name == name)?;
        Some(Q::from_si(named.value.si))
    }

    /// The step the limit stands at, else the first.
    pub(super) fn step(&self) -> usize {
        let at = |id: &str| FieldPath::new("steps").child(id);
        let found = self
            .job
            .steps
            .iter()
            .position(|s| self.limit.at == at(&s.id));
        found.unwrap_or(0)
    }

    pub(super) fn at_step(&self, key: &str) -> FieldPath {
        let id = self
            .job
            .steps
            .get(self.step())
            .map_or("", |s| s.id.as_str());
        FieldPath::new("steps").child(id).child(key)
    }

    /// Wetted area that the step's current is for.
    pub(super) fn area(&self) -> Option<quantity::WorkArea> {
        let k = self.now.plan.first_stage(self.step())?;
        self.now.likely.stages[k].area
    }

    /// The piece the limit stands at.
    pub(super) fn piece(&self) -> Option<usize> {
        let at = |id: &str| FieldPath::new("pieces").child(id);
        self.job
            .pieces
            .iter()
            .position(|p| self.limit.at == at(&p.id))
    }
}
