//! Job in, Answer out.

use crate::advise::advise;
use crate::answer::{Answer, Ceiling, Moment, PieceAnswer, Ruling, Setting, StepAnswer};
use crate::checks;
use crate::job::{FORMAT, Job};
use crate::path::FieldPath;
use crate::plan::{Plan, PlanPiece, PlanStep, resolve};
use crate::problem::Problem;
use crate::ranges::{OfPiece, OfStep, Ranges};
use crate::run::{Run, run};
use crate::value::{Absence, Because, Maybe};
use crate::working;
use chemistry::Catalogue;
use quantity::{Quantity, Range, Time, Voltage};

/// What to set, for how long, and what comes of it.
pub fn answer(catalogue: &Catalogue, job: &Job) -> Answer {
    answer_with(catalogue, job, Vec::new())
}

/// The same for a job in whose reading `problems` were met.
pub fn answer_with(catalogue: &Catalogue, job: &Job, mut problems: Vec<Problem>) -> Answer {
    let mut plan = resolve(catalogue, job, &mut problems);
    if !plan.stopped_by.is_empty() {
        for step in &mut plan.steps {
            step.drive = None;
        }
    }
    let rulings = advise(&mut plan);
    let inputs = plan.inputs.likely();
    let mut likely = Run::for_plan(&plan);
    run(&plan, &inputs, None, &mut likely);
    let mut ranges = Ranges::of(&plan, &likely);
    let b = Builder {
        plan: &plan,
        likely: &likely,
    };
    let mut elapsed = Some(Time::seconds(0.0));
    let steps = (0..plan.steps.len())
        .map(|n| {
            let starts = elapsed;
            elapsed = elapsed.zip(likely.steps[n].time).map(|(a, t)| a + t);
            b.step(n, rulings[n], starts, elapsed, &mut ranges)
        })
        .collect();
    Answer {
        format: FORMAT,
        catalogue: catalogue.version,
        limits: checks::limits(&plan, &likely),
        cautions: checks::cautions(job, &plan, &likely),
        steps,
        pieces: (0..plan.pieces.len())
            .map(|n| b.piece(n, &mut ranges))
            .collect(),
        time: b.or_step_absence(ranges.time()),
        charge: b.or_step_absence(ranges.charge()),
        inputs: plan.inputs.used(),
        working: working::write(&plan, &inputs, &likely),
        problems,
    }
}

/// An answer that has nothing but problems: what was asked could not even be taken apart.
pub fn only_problems(catalogue: &Catalogue, problems: Vec<Problem>) -> Answer {
    Answer {
        format: FORMAT,
        catalogue: catalogue.version,
        problems,
        limits: Vec::new(),
        cautions: Vec::new(),
        steps: Vec::new(),
        pieces: Vec::new(),
        time: Maybe::absent(Because::InputMissing),
        charge: Maybe::absent(Because::InputMissing),
        inputs: Vec::new(),
        working: Vec::new(),
    }
}

struct Builder<'a> {
    plan: &'a Plan,
    likely: &'a Run,
}

impl Builder<'_> {
    fn step(
        &self,
        n: usize,
        ruled_by: Option<Ruling>,
        starts: Option<Time>,
        ends: Option<Time>,
        ranges: &mut Ranges,
    ) -> StepAnswer {
        let step = &self.plan.steps[n];
        let set = self.likely.steps[n].set;
        let current = match (
            ranges.step(n, OfStep::Wanted),
            ranges.step(n, OfStep::Real),
            set,
        ) {
            (Some(wanted), Some(real), Some(set)) => Maybe::Known(Setting { wanted, set, real }),
            _ => Maybe::Absent(self.no_current(step)),
        };
        StepAnswer {
            id: step.id.clone(),
            kind: step.kind,
            current,
            ruled_by,
            density: known(ranges.step(n, OfStep::Density), || self.no_current(step)),
            densest: known(ranges.step(n, OfStep::Densest), || self.no_evenness(step)),
            ceiling: known(self.ceiling(n, ranges), || self.no_volts(step)),
            time: known(ranges.step(n, OfStep::Time), || self.no_time(step)),
            starts: self.moment(starts),
            ends: self.moment(ends),
            charge: known(ranges.step(n, OfStep::Charge), || self.no_time(step)),
            growth: known(ranges.step(n, OfStep::Growth), || self.no_current(step)),
            mean_after: known(ranges.step(n, OfStep::MeanAfter), || self.no_time(step)),
            use_band: step.use_band,
        }
    }

    /// The expected volts, rounded up to a tenth, at most what the supply has.
    fn ceiling(&self, n: usize, ranges: &mut Ranges) -> Option<Ceiling> {
        let expected: Range<Voltage> = ranges.step(n, OfStep::Volts)?;
        // A hair under a whole tenth is that tenth.
        let tenths = (expected.likely.si() * 10.0 - 1e-9).ceil();
        let set = Voltage::from_si(tenths / 10.0);
        let highest = self.plan.bench.as_ref().and_then(|b| b.highest_volts);
        let set = match highest {
            Some(highest) if highest.si() < set.si() => highest,
            _ => set,
        };
        Some(Ceiling { set, expected })
    }

    fn moment(&self, after: Option<Time>) -> Maybe<Moment> {
        let Some(after) = after else {
            return self.or_step_absence(None);
        };
        Maybe::Known(Moment {
            after,
            local: self
                .plan
                .start
                .map(|(start, _, _)| start.plus(after).text()),
        })
    }

    fn piece(&self, n: usize, ranges: &mut Ranges) -> PieceAnswer {
        let piece = &self.plan.pieces[n];
        let at = FieldPath::new("pieces").child(&piece.id);
        let extent = || Absence {
            because: Because::InputMissing,
            needs: vec![at.child("extent")],
        };
        let last = || self.no_outcome();
        let uneven = || self.no_ratio(piece);
        let no_bore = || match piece.bore {
            Some(_) => self.no_outcome(),
            None => does_not_apply(at.child("fit").child("bore")),
        };
        let no_wanted = || match piece.wanted_bore {
            Some(_) => self.no_outcome(),
            None => does_not_apply(at.child("fit").child("wanted_bore")),
        };
        PieceAnswer {
            id: piece.id.clone(),
            count: piece.count,
            area: known(ranges.piece(n, OfPiece::Area), extent),
            wire_area: known(ranges.piece(n, OfPiece::WireArea), extent),
            wetted: known(ranges.piece(n, OfPiece::Wetted), extent),
            mean: known(ranges.piece(n, OfPiece::Mean), last),
            thinnest: known(ranges.piece(n, OfPiece::Thinnest), uneven),
            thickest: known(ranges.piece(n, OfPiece::Thickest), uneven),
            thin_place: known(self.likely.pieces[n].evenness.map(|e| e.thin_place), uneven),
            wagner: known(ranges.piece(n, OfPiece::Wagner), uneven),
            mass: known(ranges.piece(n, OfPiece::Mass), last),
            wire_mass: known(ranges.piece(n, OfPiece::WireMass), last),
            bore_after: known(ranges.piece(n, OfPiece::BoreAfter), no_bore),
            bore_to_make: known(ranges.piece(n, OfPiece::BoreToMake), no_wanted),
        }
    }

    /// What keeps the current of a step absent.
    fn no_current(&self, step: &PlanStep) -> Absence {
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

    /// What keeps the time of a step absent: its own until, or whatever an earlier step lacks.
    fn no_time(&self, step: &PlanStep) -> Absence {
        if step.drive.is_none() {
            return self.no_current(step);
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
    fn no_outcome(&self) -> Absence {
        let open = |s: &&PlanStep| s.drive.is_none() || s.until.is_none();
        match self.plan.steps.iter().find(open) {
            Some(step) => self.no_time(step),
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

    fn or_step_absence<T>(&self, value: Option<T>) -> Maybe<T> {
        known(value, || self.no_outcome())
    }

    /// What keeps evenness absent: the outcome itself, or a row for the shape.
    fn no_ratio(&self, piece: &PlanPiece) -> Absence {
        if piece.row.is_none() {
            return Absence {
                because: Because::NoEvennessRow,
                needs: vec![
                    FieldPath::new("pieces")
                        .child(&piece.id)
                        .child("min_over_mean"),
                ],
            };
        }
        self.no_outcome()
    }

    fn no_evenness(&self, step: &PlanStep) -> Absence {
        if step.drive.is_none() {
            return self.no_current(step);
        }
        match self.plan.pieces.first() {
            Some(piece) => self.no_ratio(piece),
            None => self.no_outcome(),
        }
    }

    fn no_volts(&self, step: &PlanStep) -> Absence {
        match &self.plan.bath {
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

fn known<T>(value: Option<T>, otherwise: impl FnOnce() -> Absence) -> Maybe<T> {
    match value {
        Some(value) => Maybe::Known(value),
        None => Maybe::Absent(otherwise()),
    }
}

fn does_not_apply(needs: FieldPath) -> Absence {
    Absence {
        because: Because::DoesNotApply,
        needs: vec![needs],
    }
}
