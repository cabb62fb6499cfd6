//! The steps: what hangs where, what is set, and until when.

use super::*;

impl Resolver<'_> {
    pub(super) fn steps(&mut self, plan: &mut Plan) {
        let job = self.job;
        if job.steps.is_empty() && !self.said(&FieldPath::new("steps")) {
            self.problem(FieldPath::new("steps"), ProblemKind::Missing);
        }
        let mut lays: Option<String> = None;
        for step in job.steps.iter().take(MOST_STEPS) {
            let mut planned = self.step(step, plan);
            // A layer lasts as long as the metal stays the same.
            let metal = plan
                .bath(&planned)
                .and_then(|b| b.lays.as_ref())
                .map(|m| m.id.clone());
            if lays.is_some() && metal.is_some() && lays != metal {
                plan.layers += 1;
            }
            lays = metal.or(lays);
            planned.layer = plan.layers - 1;
            plan.steps.push(planned);
        }
    }

    fn step(&mut self, step: &Step, plan: &Plan) -> PlanStep {
        let path = FieldPath::new("steps").child(&step.id);
        let vessels = self.vessels(step, plan, &path);
        let bath = match vessels.first() {
            Some(vessel) => plan.baths.get(vessel.bath),
            None => plan.baths.first(),
        };
        self.check_kind(step, &vessels, plan, &path);
        let drive = self.drive(step, plan.bench.as_ref(), &path);
        let pieces: Vec<&PlanPiece> = vessels
            .iter()
            .flat_map(|v| &v.pieces)
            .map(|p| &plan.pieces[*p])
            .collect();
        let covers = self.covers(step, &pieces, &path);
        let until = self.until(step, bath, plan.start.is_some(), &pieces, &vessels, &path);
        let use_band = match step.until {
            Some(Until::Use(of)) => bath
                .filter(|b| !b.etches())
                .and_then(|b| uses::layer(of, b.solution.metal)),
            _ => None,
        };
        PlanStep {
            id: step.id.clone(),
            kind: step.kind,
            vessels,
            layer: 0,
            stirring: step.stirring,
            temperature: step.temperature,
            drive,
            beyond_supply: None,
            until,
            use_band,
            ceiling: step.ceiling,
            covers,
        }
    }

    /// The slowest coat among the pieces of a step that is there to cover it; one without a coat is a slip.
    fn covers(
        &mut self,
        step: &Step,
        pieces: &[&PlanPiece],
        path: &FieldPath,
    ) -> Option<crate::job::Coat> {
        if step.purpose != Purpose::Cover {
            return None;
        }
        let coat = cover::slowest(pieces.iter().copied());
        if coat.is_none() && !pieces.is_empty() {
            self.problem(path.child("purpose"), ProblemKind::Contradiction);
        }
        coat
    }

    /// Laying metal down and taking it away are two solutions' work, and two jobs'.
    fn check_kind(&mut self, step: &Step, vessels: &[PlanVessel], plan: &Plan, path: &FieldPath) {
        let etches = step.kind == Process::Etch;
        let baths = if vessels.is_empty() {
            plan.baths.iter().take(1).collect::<Vec<_>>()
        } else {
            vessels.iter().map(|v| &plan.baths[v.bath]).collect()
        };
        let at = path.child("kind");
        if let Some(bath) = baths.iter().find(|b| b.etches() != etches) {
            self.stopped_by.push(at.clone());
            let fits: &[&str] = if bath.etches() {
                &["etch"]
            } else {
                &["electroform", "electroplate"]
            };
            self.problems
                .push(Problem::at(at, ProblemKind::Contradiction).one_of(fits.iter().copied()));
        } else if !baths.is_empty() && etches != plan.etches() {
            self.stop(at, ProblemKind::NotYet);
        }
    }

    /// Which pieces hang in which bath; the vessels of a step are in series. Empty where a Problem keeps that from being
    /// known.
    fn vessels(&mut self, step: &Step, plan: &Plan, path: &FieldPath) -> Vec<PlanVessel> {
        let at = path.child("in");
        if step.places.is_empty() {
            self.stop(at, ProblemKind::Missing);
            return Vec::new();
        }
        let job = self.job;
        let mut vessels: Vec<PlanVessel> = Vec::new();
        let mut whole = true;
        for place in &step.places {
            if !job.baths.iter().any(|b| b.id == place.bath) {
                self.stopped_by.push(at.clone());
                self.problems.push(
                    Problem::at(at.child("bath"), ProblemKind::UnknownId)
                        .reading(place.bath.as_str())
                        .one_of(job.baths.iter().map(|b| b.id.as_str())),
                );
                whole = false;
                continue;
            }
            // One liquid cannot be two vessels, nor one piece in two.
            let bath = plan.baths.iter().position(|b| b.id == place.bath);
            if bath.is_some() && vessels.iter().any(|v| Some(v.bath) == bath) {
                self.again(at.child("bath"), &place.bath);
                whole = false;
            }
            let mut pieces = Vec::new();
            for id in &place.pieces {
                let Some(p) = job.pieces.iter().position(|p| p.id == *id) else {
                    self.stopped_by.push(at.clone());
                    self.problems.push(
                        Problem::at(at.child("pieces"), ProblemKind::UnknownId)
                            .reading(id.as_str())
                            .one_of(job.pieces.iter().map(|p| p.id.as_str())),
                    );
                    whole = false;
                    continue;
                };
                if pieces.contains(&p) || vessels.iter().any(|v| v.pieces.contains(&p)) {
                    self.again(at.child("pieces"), id);
                    whole = false;
                }
                pieces.push(p);
            }
            if place.pieces.is_empty() && !job.pieces.is_empty() {
                self.stop(at.child("pieces"), ProblemKind::Missing);
                whole = false;
            }
            match bath {
                Some(bath) => vessels.push(PlanVessel { bath, pieces }),
                None => whole = false,
            }
        }
        if whole {
            self.check_distance(&vessels, plan);
            vessels
        } else {
            Vec::new()
        }
    }

    /// A held voltage, and contacts that count, ask how far the counter electrode is.
    fn check_distance(&mut self, vessels: &[PlanVessel], plan: &Plan) {
        for v in vessels {
            let bath = &plan.baths[v.bath];
            let linked = |p: &usize| plan.pieces[*p].contact.iter().any(Option::is_some);
            let asked = plan.volts.is_some() || v.pieces.iter().any(linked);
            let at = FieldPath::new("baths")
                .child(&bath.id)
                .child("counter/distance");
            if asked && bath.distance.is_none() && !self.said(&at) {
                self.stop(at, ProblemKind::Missing);
            }
        }
    }

    /// The same id in two places of a step.
    pub(super) fn again(&mut self, at: FieldPath, id: &str) {
        self.stopped_by.push(at.clone());
        self.problems
            .push(Problem::at(at, ProblemKind::Contradiction).reading(id));
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
                    let kind = match &self.job.supply {
                        Some(Supply::ConstantVoltage(_)) => "constant_voltage",
                        Some(Supply::Both(_)) => "both",
                        _ => "constant_current",
                    };
                    let at = FieldPath::new("supply").child(kind).child("highest");
                    self.missing_unless_said(at);
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
        pieces: &[&PlanPiece],
        vessels: &[PlanVessel],
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
            Some(Until::Covered) => {
                let Some(coat) = cover::slowest(pieces.iter().copied()) else {
                    if !pieces.is_empty() {
                        self.problem(at, ProblemKind::Contradiction);
                    }
                    return None;
                };
                let takes = cover::takes(coat);
                self.catalogued(path.child("covering"), &takes, ANY)
                    .map(PlanUntil::Covered)
            }
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
                    Counts::Thinnest => self.thinnest(band.middle, bath, pieces, vessels),
                }
            }
            Some(Until::Wear(wear)) => match uses::worn(wear.of, wear.lasts) {
                Some(layer) => self.thinnest(layer, bath, pieces, vessels),
                None => {
                    self.problem(at.child("wear"), ProblemKind::Contradiction);
                    None
                }
            },
            Some(Until::Thinnest(t)) => self.thinnest(*t, bath, pieces, vessels),
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
        pieces: &[&PlanPiece],
        vessels: &[PlanVessel],
    ) -> Option<PlanUntil> {
        let place = vessels.first().map_or(0, |v| v.bath);
        // A row says something only where the bath's reach is known.
        let reaches = bath.is_some_and(|b| {
            b.conductivity.is_some() && b.evenness_factor.is_some() && b.slope.is_some()
        });
        if pieces.iter().any(|p| {
            p.own_ratio.is_some() || (reaches && p.rows.get(place).is_some_and(Option::is_some))
        }) {
            return Some(PlanUntil::Thinnest(t));
        }
        let piece = pieces.first().map_or("p1", |p| p.id.as_str());
        self.missing_unless_said(FieldPath::new("pieces").child(piece).child("min_over_mean"));
        None
    }
}
