//! The supply and the steps: what is set, and until when.

use super::*;

impl Resolver<'_> {
    pub(super) fn bench(&mut self) -> Option<Bench> {
        match &self.job.supply {
            None => None,
            Some(Supply::ConstantCurrent(bench)) => Some(bench.clone()),
            Some(_) => {
                self.stop(FieldPath::new("supply"), ProblemKind::NotYet);
                None
            }
        }
    }

    pub(super) fn display(&mut self, bench: Option<&Bench>) -> Option<InputId> {
        let step = bench?.display_step?;
        let at = FieldPath::new("supply/constant_current/display_step");
        let spread = match self
            .job
            .spreads
            .iter()
            .any(|s| s.at == at && s.spread.si() == 0.0)
        {
            true => Spread::None,
            false => Spread::Uniform {
                half: step.si() / 2.0,
            },
        };
        Some(self.inputs.add(Input {
            at,
            likely: Current::from_si(0.0).into(),
            spread,
            origin: Origin::Given,
            bounds: (-f64::INFINITY, f64::INFINITY),
        }))
    }

    pub(super) fn steps(
        &mut self,
        bath: Option<&PlanBath>,
        bench: Option<&Bench>,
        has_start: bool,
        pieces: &[PlanPiece],
    ) -> Vec<PlanStep> {
        let job = self.job;
        if job.steps.is_empty() && !self.said(&FieldPath::new("steps")) {
            self.problem(FieldPath::new("steps"), ProblemKind::Missing);
        }
        job.steps
            .iter()
            .take(MOST_STEPS)
            .map(|s| self.step(s, bath, bench, has_start, pieces))
            .collect()
    }

    pub(super) fn step(
        &mut self,
        step: &Step,
        bath: Option<&PlanBath>,
        bench: Option<&Bench>,
        has_start: bool,
        pieces: &[PlanPiece],
    ) -> PlanStep {
        let path = FieldPath::new("steps").child(&step.id);
        // Laying metal down and taking it away are two solutions' work.
        let etches = step.kind == Process::Etch;
        if let Some(bath) = bath
            && bath.etches() != etches
        {
            let at = path.child("kind");
            self.stopped_by.push(at.clone());
            let fits: &[&str] = if bath.etches() {
                &["etch"]
            } else {
                &["electroform", "electroplate"]
            };
            self.problems
                .push(Problem::at(at, ProblemKind::Contradiction).one_of(fits.iter().copied()));
        }
        self.who_is_in(step, &path);
        let drive = self.drive(step, bench, &path);
        let until = self.until(step, bath, has_start, pieces, &path);
        let use_band = match step.until {
            Some(Until::Use(of)) => bath
                .filter(|b| !b.etches())
                .and_then(|b| uses::layer(of, b.solution.metal)),
            _ => None,
        };
        PlanStep {
            id: step.id.clone(),
            kind: step.kind,
            stirring: step.stirring,
            temperature: step.temperature,
            drive,
            until,
            use_band,
            ceiling: step.ceiling,
        }
    }

    /// Every step must hold all pieces in the one bath.
    pub(super) fn who_is_in(&mut self, step: &Step, path: &FieldPath) {
        let at = path.child("in");
        let [place] = &step.places[..] else {
            let kind = if step.places.is_empty() {
                ProblemKind::Missing
            } else {
                ProblemKind::NotYet
            };
            self.stop(at, kind);
            return;
        };
        if !self.job.baths.iter().any(|b| b.id == place.bath) {
            self.stopped_by.push(at.clone());
            self.problems.push(
                Problem::at(at.child("bath"), ProblemKind::UnknownId)
                    .reading(place.bath.as_str())
                    .one_of(self.job.baths.iter().map(|b| b.id.as_str())),
            );
            return;
        }
        for id in &place.pieces {
            if !self.job.pieces.iter().any(|p| p.id == *id) {
                self.stopped_by.push(at.clone());
                self.problems.push(
                    Problem::at(at.child("pieces"), ProblemKind::UnknownId)
                        .reading(id.as_str())
                        .one_of(self.job.pieces.iter().map(|p| p.id.as_str())),
                );
            }
        }
        if self
            .job
            .pieces
            .iter()
            .any(|p| !place.pieces.contains(&p.id))
        {
            self.stop(at.child("pieces"), ProblemKind::NotYet);
        }
    }

    pub(super) fn drive(
        &mut self,
        step: &Step,
        bench: Option<&Bench>,
        path: &FieldPath,
    ) -> Option<PlanDrive> {
        let at = path.child("drive");
        match step.drive {
            None => {
                self.missing_unless_said(at);
                None
            }
            Some(Drive::Density(i)) => Some(PlanDrive::Density(i)),
            Some(Drive::Current(i)) => Some(PlanDrive::Current(i)),
            Some(Drive::Advised) => Some(PlanDrive::Advised),
            Some(Drive::AllSupply) => {
                let highest = bench.and_then(|b| b.highest);
                if highest.is_none() {
                    self.missing_unless_said(FieldPath::new("supply/constant_current/highest"));
                }
                highest.map(PlanDrive::Current)
            }
        }
    }

    pub(super) fn until(
        &mut self,
        step: &Step,
        bath: Option<&PlanBath>,
        has_start: bool,
        pieces: &[PlanPiece],
        path: &FieldPath,
    ) -> Option<PlanUntil> {
        let at = path.child("until");
        let etches = bath.is_some_and(PlanBath::etches);
        match &step.until {
            None => {
                self.missing_unless_said(at);
                None
            }
            Some(Until::Time(t)) => Some(PlanUntil::Time(*t)),
            Some(Until::Mean(t)) if etches => Some(PlanUntil::Depth(*t)),
            Some(Until::Mean(t)) => Some(PlanUntil::Mean(*t)),
            Some(Until::Mass(m)) => Some(PlanUntil::Mass(*m)),
            Some(Until::Use(_)) if etches => {
                self.problem(at.child("use"), ProblemKind::Contradiction);
                None
            }
            Some(Until::Wear(_)) if etches => {
                self.problem(at.child("wear"), ProblemKind::Contradiction);
                None
            }
            Some(Until::Use(of)) => {
                let Some(band) = bath.and_then(|b| uses::layer(*of, b.solution.metal)) else {
                    if bath.is_some() {
                        self.problem(at.child("use"), ProblemKind::NotYet);
                    }
                    return None;
                };
                match band.counts {
                    Counts::Mean => Some(PlanUntil::Mean(band.middle)),
                    Counts::Thinnest => self.thinnest(band.middle, bath, pieces),
                }
            }
            Some(Until::Wear(wear)) => match uses::worn(wear.of, wear.lasts) {
                Some(layer) => self.thinnest(layer, bath, pieces),
                None => {
                    self.problem(at.child("wear"), ProblemKind::Contradiction);
                    None
                }
            },
            Some(Until::Thinnest(t)) => self.thinnest(*t, bath, pieces),
            Some(Until::Depth(t)) => {
                if bath.is_some_and(|b| !b.etches()) {
                    self.problem(at.child("depth"), ProblemKind::Contradiction);
                    return None;
                }
                Some(PlanUntil::Depth(*t))
            }
            Some(Until::Clock(text)) => {
                if !has_start {
                    self.missing_unless_said(FieldPath::new("start/local"));
                    return None;
                }
                time_of_day(text).map(PlanUntil::Clock)
            }
        }
    }

    /// An aim at the thinnest place, where some piece's evenness is known.
    pub(super) fn thinnest(
        &mut self,
        t: Thickness,
        bath: Option<&PlanBath>,
        pieces: &[PlanPiece],
    ) -> Option<PlanUntil> {
        // A row says something only where the bath's reach is known.
        let reaches = bath.is_some_and(|b| {
            b.conductivity.is_some() && b.evenness_factor.is_some() && b.slope.is_some()
        });
        if pieces
            .iter()
            .any(|p| p.own_ratio.is_some() || (reaches && p.row.is_some()))
        {
            return Some(PlanUntil::Thinnest(t));
        }
        let piece = pieces.first().map_or("p1", |p| p.id.as_str());
        self.missing_unless_said(FieldPath::new("pieces").child(piece).child("min_over_mean"));
        None
    }
}
