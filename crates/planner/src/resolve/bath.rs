//! The bath: its solution, its counter electrode, the metals in it.

use super::*;

impl Resolver<'_> {
    /// Every bath that has no Problem.
    pub(super) fn baths(&mut self) -> Vec<PlanBath> {
        let job = self.job;
        if job.baths.is_empty() {
            self.stop_without_list("baths");
        }
        job.baths.iter().filter_map(|b| self.bath(b)).collect()
    }

    fn bath(&mut self, bath: &Bath) -> Option<PlanBath> {
        let path = FieldPath::new("baths").child(&bath.id);
        let solution = &self.solution(bath, &path)?;
        let etches = solution.work == Electrode::Anode;
        let lays = self.lays(bath, solution);
        if !etches && lays.is_none() {
            self.stop(path.child("solution"), ProblemKind::NotYet);
            return None;
        }
        let counter_path = path.child("counter");
        let counter = bath.counter.as_ref();
        let form = counter.and_then(|c| c.form.as_ref());
        let gap = form.and_then(|f| facing::gap(f, self.job, &bath.id));
        let distance = counter
            .and_then(|c| c.distance)
            .or(gap.filter(|g| g.si() > 0.0))
            .map(|d| self.given(counter_path.child("distance"), d, Spread::None, ANY));
        let volume = bath.volume.map(|v| {
            self.given(
                path.child("volume"),
                v,
                Spread::Lognormal { frac: 0.03 },
                ANY,
            )
        });
        let efficiency_at = path.child("efficiency");
        let own = self.own_efficiency(&efficiency_at, etches);
        let share = (1e-9, efficiency::highest(solution.work).si());
        let batch = (solution.process == Process::Electroplate)
            .then(|| self.catalogued(path.child("batch"), &BATCH, SHARE))
            .flatten();
        Some(PlanBath {
            id: bath.id.clone(),
            solution: *solution,
            lays: if etches { None } else { lays },
            efficiency: self.catalogued(efficiency_at, &solution.efficiency, share),
            curve: if own { None } else { Curve::of(solution) },
            batch,
            conductivity: self.catalogued(path.child("conductivity"), &solution.conductivity, ANY),
            evenness_factor: self.catalogued(
                path.child("evenness_factor"),
                &solution.evenness_factor,
                ANY,
            ),
            slope: match solution.slope {
                Datum::Value(v) => Some(v),
                _ => None,
            },
            surface_volts: self.catalogued(
                path.child("surface_volts"),
                &solution.surface_volts,
                ANY,
            ),
            cell_volts: self.catalogued(path.child("cell_volts"), &solution.cell_volts, ANY),
            distance,
            volume,
            counter: self.counter_material(bath, &counter_path),
            over_bar: counter.and_then(|c| c.over_bar),
            facing: self.facing(bath, form, &counter_path),
            gap,
            surface: bath.surface,
            heater: bath.heater,
            metals: Vec::new(),
        })
    }

    /// The counter electrode's facing area: as given, else from what it is. A vessel serves where the work dissolves.
    fn facing(
        &mut self,
        bath: &Bath,
        form: Option<&crate::job::Form>,
        at: &FieldPath,
    ) -> Option<quantity::CounterArea> {
        let counter = bath.counter.as_ref()?;
        let form = form.filter(|_| counter.facing.is_none());
        let Some(form) = form else {
            return counter.facing;
        };
        let id = counter.material.as_deref();
        let found = facing::area(form, id.and_then(material_of));
        if found.is_none() && id.is_none() {
            self.problem(at.child("material"), ProblemKind::Missing);
        }
        found
    }

    /// Whether the person gave an efficiency. Of laying metal down none is above 1: such a one is refused, and the
    /// catalogue's stands.
    pub(super) fn own_efficiency(&mut self, at: &FieldPath, etches: bool) -> bool {
        let Some(own) = self.job.assume.iter().find(|a| a.at == *at) else {
            return false;
        };
        let share = quantity::Fraction::from_si(own.value.si);
        if !etches
            && let Err(problem) =
                fields::CATHODE_EFFICIENCY.check(share, at, &own.value.si.to_string())
        {
            self.problems.push(problem);
            self.refused.push(at.clone());
            return false;
        }
        true
    }

    /// The counter electrode's material; an unknown one is a Problem, and its balance is then not known.
    pub(super) fn counter_material(
        &mut self,
        bath: &Bath,
        path: &FieldPath,
    ) -> Option<&'static Material> {
        let id = bath.counter.as_ref()?.material.as_ref()?;
        let found = material_of(id);
        if found.is_none() {
            self.problems.push(
                Problem::at(path.child("material"), ProblemKind::UnknownId)
                    .reading(id.as_str())
                    .one_of(chemistry::material::MATERIALS.iter().map(|m| m.id)),
            );
        }
        found
    }

    /// Which metals the balances are kept of: each bath's own, what the pieces give, and what the person named.
    pub(super) fn with_metals(
        &mut self,
        baths: Vec<PlanBath>,
        pieces: &[PlanPiece],
    ) -> Vec<PlanBath> {
        let each = baths.into_iter().enumerate();
        each.map(|(n, bath)| self.with_its_metals(n, bath, pieces))
            .collect()
    }

    fn with_its_metals(&self, place: usize, mut bath: PlanBath, pieces: &[PlanPiece]) -> PlanBath {
        let said = self.job.baths.iter().find(|b| b.id == bath.id);
        let holds = said.map(|b| b.holds.as_slice()).unwrap_or_default();
        let mut ids: Vec<&str> = Vec::new();
        let moved = bath
            .lays
            .iter()
            .chain(pieces.iter().filter_map(|p| p.gives[place].as_ref()));
        ids.extend(deposited_on_counter(&bath.solution).map(|(id, _)| id));
        ids.extend(moved.flat_map(|m| m.parts().iter().map(|(id, _)| *id)));
        // An anode of another metal than the bath's spoils it: that is counted too.
        if let Some(Anode::Dissolves(id)) = bath.counter.map(|m| m.anode)
            && !bath.etches()
        {
            ids.push(id);
        }
        ids.extend(holds.iter().map(|h| h.metal.as_str()));
        for id in ids {
            if bath.metals.len() < MOST_METALS && !bath.metals.iter().any(|m| m.metal == id) {
                let said = holds.iter().find(|h| h.metal == id);
                bath.metals.push(PlanHold {
                    metal: id.to_owned(),
                    now: said.and_then(|h| h.now),
                    floor: said.and_then(|h| h.floor),
                });
            }
        }
        bath
    }

    /// The metal a solution lays down, with the valence an own one's label gives.
    pub(super) fn lays(&self, bath: &Bath, solution: &Solution) -> Option<Moved> {
        match Metal::of(solution.metal)? {
            Metal::Element(e) if self.own_solution(bath).is_some() => {
                Some(Moved::of_element(e, solution.valence))
            }
            metal => Moved::of(metal, solution),
        }
    }

    pub(super) fn own_solution(&self, bath: &Bath) -> Option<&OwnSolution> {
        self.job
            .own
            .solutions
            .iter()
            .find(|s| s.id == bath.solution)
    }

    /// A solution of the person's own. Its label must say a density; its efficiency may follow from what a charge moves.
    pub(super) fn labelled(&mut self, own: &OwnSolution) -> Option<Solution> {
        let at = FieldPath::new("own/solutions").child(&own.id);
        let Some(metal) = Metal::of(&own.metal) else {
            self.stopped_by.push(at.child("metal"));
            self.problems.push(
                Problem::at(at.child("metal"), ProblemKind::UnknownId).reading(own.metal.as_str()),
            );
            return None;
        };
        let valence = own.valence.map_or_else(
            || match metal {
                Metal::Element(e) => e.valences.value.first().copied().unwrap_or(1),
                Metal::Alloy(_) => 2,
            },
            |v| v as u8,
        );
        let whole = match metal {
            Metal::Element(e) => Some(chemistry::faraday::equivalent(e.molar_mass.value, valence)),
            Metal::Alloy(a) => a.equivalent(),
        };
        let from_moves = own
            .moves
            .zip(whole)
            .map(|(m, k)| quantity::Fraction::from_si(m / k));
        if own.density.is_none() {
            // Volts and seconds alone say neither how thick nor how much current: a weighed strip does.
            self.stop(at.child("density"), ProblemKind::NoWindow);
            return None;
        }
        let label = Label {
            process: own.process,
            metal: metal.id(),
            valence,
            density: own.density,
            highest: own.highest,
            efficiency: own.efficiency.or(from_moves),
            conductivity: own.conductivity,
            volts: own.volts,
        };
        let solution = Solution::from_label(&label);
        if let Some(e) = label.efficiency
            && !efficiency::possible(e, solution.work)
        {
            self.problems.push(
                Problem::at(
                    at.child(if own.efficiency.is_some() {
                        "efficiency"
                    } else {
                        "moves"
                    }),
                    ProblemKind::TooLarge,
                )
                .reading(e.si().to_string())
                .accepting(fields::CATHODE_EFFICIENCY.accepted()),
            );
            return Some(Solution::from_label(&Label {
                efficiency: None,
                ..label
            }));
        }
        Some(solution)
    }

    /// The solution, where it is one that can be chosen; else a Problem that names those which can.
    pub(super) fn solution(&mut self, bath: &Bath, path: &FieldPath) -> Option<Solution> {
        if let Some(own) = self.own_solution(bath).cloned() {
            return self.labelled(&own);
        }
        let found = self.catalogue.solution(&bath.solution);
        let kind = match found.map(|s| s.choosable(self.setting())) {
            Some(Choosable::Offered | Choosable::NeedsShop) => return found.copied(),
            Some(Choosable::Never { .. }) => ProblemKind::NotOffered,
            Some(Choosable::NoWindow) => ProblemKind::NoWindow,
            None => ProblemKind::UnknownId,
        };
        let at = path.child("solution");
        self.stopped_by.push(at.clone());
        self.problems.push(
            Problem::at(at, kind)
                .reading(bath.solution.as_str())
                .one_of(self.catalogue.offered(self.setting()).map(|s| s.id)),
        );
        None
    }
}

/// Thinnest over mean beside what the table says: from batch to batch, contact shadows. Common practice, no source, until
/// strips are weighed.
const BATCH: Datum<Ratio> = Datum::Band(Cited::new(
    Band {
        min: Ratio::of_si(0.75),
        typ: Ratio::of_si(0.85),
        max: Ratio::of_si(0.95),
    },
    chemistry::Source::CommonPractice,
));
