//! Why a value is absent, and what would make it known.

use super::Builder;
use crate::path::FieldPath;
use crate::plan::{PlanBath, PlanHold, PlanPiece, PlanStep};
use crate::value::{Absence, Because, Maybe};

pub(super) fn known<T>(value: Option<T>, otherwise: impl FnOnce() -> Absence) -> Maybe<T> {
    match value {
        Some(value) => Maybe::Known(value),
        None => Maybe::Absent(otherwise()),
    }
}

pub(super) fn needs(path: FieldPath) -> Absence {
    Absence {
        because: Because::InputMissing,
        needs: vec![path],
    }
}

pub(super) fn does_not_apply(needs: FieldPath) -> Absence {
    Absence {
        because: Because::DoesNotApply,
        needs: vec![needs],
    }
}

impl Builder<'_> {
    /// What keeps the balance absent: the outcome, or what the counter electrode is made of.
    pub(super) fn no_balance(&self, bath: &PlanBath, at: &FieldPath) -> Absence {
        if self.likely.charge.is_some() && bath.counter.is_none() {
            return needs(at.child("counter/material"));
        }
        self.no_outcome()
    }

    pub(super) fn no_content(&self, bath: &PlanBath, hold: &PlanHold, at: &FieldPath) -> Absence {
        let mut needs = Vec::new();
        if bath.volume.is_none() {
            needs.push(at.child("volume"));
        }
        if hold.now.is_none() {
            needs.push(at.child("holds").child(&hold.metal).child("now"));
        }
        if needs.is_empty() {
            return self.no_balance(bath, at);
        }
        Absence {
            because: Because::InputMissing,
            needs,
        }
    }

    /// What keeps the current of a step absent.
    pub(super) fn no_current(&self, step: &PlanStep) -> Absence {
        let needs = if self.plan.stopped_by.is_empty() {
            vec![FieldPath::new("steps").child(&step.id).child("drive")]
        } else {
            self.plan.stopped_by.clone()
        };
        Absence {
            because: Because::InputMissing,
            needs,
        }
    }

    /// The address of an efficiency that nobody knows: a weighed strip tells it.
    pub(super) fn unweighed(&self) -> Option<FieldPath> {
        let bath = self.plan.baths.iter().find(|b| b.efficiency.is_none())?;
        Some(FieldPath::new("baths").child(&bath.id).child("efficiency"))
    }

    /// What keeps growth absent: the current, or the share of it that moves metal.
    pub(super) fn no_growth(&self, step: &PlanStep) -> Absence {
        match self.unweighed() {
            Some(at) if step.drive.is_some() => Absence {
                because: Because::NotInCatalogue,
                needs: vec![at],
            },
            _ => self.no_current(step),
        }
    }

    /// What keeps the time of a step absent: its own until, or whatever an earlier step lacks.
    pub(super) fn no_time(&self, step: &PlanStep) -> Absence {
        if step.drive.is_none() || self.unweighed().is_some() {
            return self.no_growth(step);
        }
        let first_open = self
            .plan
            .steps
            .iter()
            .find(|s| s.until.is_none())
            .unwrap_or(step);
        Absence {
            because: Because::InputMissing,
            needs: vec![FieldPath::new("steps").child(&first_open.id).child("until")],
        }
    }

    /// What keeps the outcome of the whole job absent.
    pub(super) fn no_outcome(&self) -> Absence {
        let open = |s: &&PlanStep| s.drive.is_none() || s.until.is_none();
        match self.plan.steps.iter().find(open) {
            Some(step) => self.no_time(step),
            None if self.unweighed().is_some() => Absence {
                because: Because::NotInCatalogue,
                needs: self.unweighed().into_iter().collect(),
            },
            None => Absence {
                because: Because::InputMissing,
                needs: if self.plan.stopped_by.is_empty() {
                    vec![FieldPath::new("steps")]
                } else {
                    self.plan.stopped_by.clone()
                },
            },
        }
    }

    pub(super) fn or_step_absence<T>(&self, value: Option<T>) -> Maybe<T> {
        known(value, || self.no_outcome())
    }

    /// What keeps evenness absent: the outcome itself, or a row for the shape.
    pub(super) fn no_ratio(&self, piece: &PlanPiece) -> Absence {
        if self.plan.baths.is_empty() {
            return self.no_outcome();
        }
        if piece.rows.iter().all(Option::is_none) {
            return Absence {
                because: Because::NoEvennessRow,
                needs: vec![
                    FieldPath::new("pieces")
                        .child(&piece.id)
                        .child("min_over_mean"),
                ],
            };
        }
        match self.unknown_evenness() {
            Some(at) => Absence {
                because: Because::NotInCatalogue,
                needs: vec![at],
            },
            None => self.no_outcome(),
        }
    }

    /// The figure of the bath that its evenness lacks.
    pub(super) fn unknown_evenness(&self) -> Option<FieldPath> {
        let bath = self.plan.baths.first()?;
        let at = FieldPath::new("baths").child(&bath.id);
        if bath.conductivity.is_none() {
            return Some(at.child("conductivity"));
        }
        if bath.slope.is_none() || bath.evenness_factor.is_none() {
            return Some(at.child("evenness_factor"));
        }
        None
    }

    pub(super) fn no_evenness(&self, step: &PlanStep) -> Absence {
        if step.drive.is_none() {
            return self.no_current(step);
        }
        let without = |p: &&PlanPiece| p.rows.iter().all(Option::is_none);
        match self
            .plan
            .pieces
            .iter()
            .find(without)
            .or(self.plan.pieces.first())
        {
            Some(piece) => self.no_ratio(piece),
            None => self.no_outcome(),
        }
    }

    pub(super) fn no_volts(&self, step: &PlanStep) -> Absence {
        match self.plan.bath(step) {
            Some(bath) if step.drive.is_some() && bath.distance.is_none() => Absence {
                because: Because::InputMissing,
                needs: vec![
                    FieldPath::new("baths")
                        .child(&bath.id)
                        .child("counter")
                        .child("distance"),
                ],
            },
            Some(_) if step.drive.is_some() => Absence {
                because: Because::NotInCatalogue,
                needs: Vec::new(),
            },
            _ => self.no_current(step),
        }
    }
}
