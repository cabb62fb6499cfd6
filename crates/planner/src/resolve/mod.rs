//! From a Job to a Plan: what is needed is looked up, the rest has a Problem.

mod bath;
mod piece;
mod room;
mod stage;
mod step;
mod supply;

use crate::answer::{Counts, Origin};
use crate::arrangement;
use crate::clock::{Local, time_of_day};
use crate::cover;
use crate::facing;
use crate::fields;
use crate::inputs::{Input, InputId, InputList};
use crate::job::{
    Base, Bath, Bench, Drive, Extent, Faces, Job, Method, Model, OwnAlloy, OwnSolution, Piece,
    Place, Purpose, Sides, Step, Supply, Switch, Until,
};
use crate::moved::{Moved, OwnFault, deposited_on_counter};
use crate::path::FieldPath;
use crate::problem::{Problem, ProblemKind};
use crate::uses;
use chemistry::efficiency::{self, Curve};
use chemistry::material::{Anode, Material, material_of};
use chemistry::solution::label::Label;
use chemistry::solution::{Choosable, Electrode, Setting, Solution};
use chemistry::{Catalogue, Cited, Datum, Metal, Process};
use geometry::Shape;
use quantity::{AnyQuantity, Band, Current, Quantity, Ratio, Spread, Thickness};

use crate::plan::*;

/// Resolves `job`. Problems are added to `problems`; what they do not touch is planned all the same.
pub fn resolve(catalogue: &Catalogue, job: &Job, problems: &mut Vec<Problem>) -> Plan {
    let mut r = Resolver {
        catalogue,
        job,
        problems,
        inputs: InputList::default(),
        stopped_by: Vec::new(),
        refused: Vec::new(),
    };
    r.refuse_what_comes_later();
    let baths = r.baths();
    let pieces = r.pieces(&baths);
    let baths = r.with_metals(baths, &pieces);
    let room = r.room(&baths);
    let (bench, volts, fixed) = r.supply();
    let display = r.display(bench.as_ref());
    let start = job
        .start
        .as_ref()
        .and_then(|s| Local::parse(&s.local).map(|l| (l, s.night_from, s.night_to)));
    let mut plan = Plan {
        pieces,
        steps: Vec::new(),
        stages: Vec::new(),
        baths,
        room,
        layers: 1,
        bench,
        volts,
        fixed,
        display,
        growth: job.effects.growth == Switch::On,
        contacts: job.effects.contacts == Switch::On,
        start,
        stopped_by: Vec::new(),
        inputs: InputList::default(),
    };
    r.steps(&mut plan);
    r.stages(&mut plan);
    r.check_metals();
    r.check_addresses();
    plan.stopped_by = r.stopped_by;
    plan.inputs = r.inputs;
    plan.growth &= !plan.etches();
    plan
}

struct Resolver<'a> {
    catalogue: &'a Catalogue,
    job: &'a Job,
    problems: &'a mut Vec<Problem>,
    inputs: InputList,
    stopped_by: Vec<FieldPath>,
    /// Own values that cannot be used.
    refused: Vec<FieldPath>,
}

const ANY: (f64, f64) = (0.0, f64::INFINITY);
const SHARE: (f64, f64) = (1e-9, 1.0);

impl Resolver<'_> {
    pub(super) fn problem(&mut self, at: FieldPath, kind: ProblemKind) {
        self.problems.push(Problem::at(at, kind));
    }

    /// Whether there is a Problem at just this address.
    pub(super) fn said(&self, at: &FieldPath) -> bool {
        self.problems.iter().any(|p| p.field == *at)
    }

    /// A whole list that no job can do without; one that is no list has been said.
    pub(super) fn stop_without_list(&mut self, key: &str) {
        let at = FieldPath::new(key);
        self.stopped_by.push(at.clone());
        if !self.said(&at) {
            self.problem(at, ProblemKind::Missing);
        }
    }

    /// What an etch cannot do without; where it was there but unreadable, its own fields have said so.
    pub(super) fn stop_without(&mut self, at: FieldPath) {
        if !self.stopped_by.contains(&at) {
            self.stopped_by.push(at.clone());
        }
        self.missing_unless_said(at);
    }

    /// A Problem without which nothing electrical can be computed.
    pub(super) fn stop(&mut self, at: FieldPath, kind: ProblemKind) {
        self.stopped_by.push(at.clone());
        self.problem(at, kind);
    }

    /// What this program does not compute is refused here, never ignored.
    pub(super) fn refuse_what_comes_later(&mut self) {
        for step in self.job.steps.iter().skip(MOST_STEPS) {
            self.stop(FieldPath::new("steps").child(&step.id), ProblemKind::NotYet);
        }
    }

    pub(super) fn spread(&self, at: &FieldPath, otherwise: Spread) -> Spread {
        match self.job.spreads.iter().find(|s| s.at == *at) {
            Some(own) if own.spread.si() > 0.0 => Spread::Lognormal {
                frac: own.spread.si(),
            },
            Some(_) => Spread::None,
            None => otherwise,
        }
    }

    pub(super) fn given<Q: Quantity>(
        &mut self,
        at: FieldPath,
        value: Q,
        spread: Spread,
        bounds: (f64, f64),
    ) -> InputId {
        let spread = self.spread(&at, spread);
        self.inputs.add(Input {
            at,
            likely: value.into(),
            spread,
            origin: Origin::Given,
            bounds,
        })
    }

    /// A catalogue value, or the person's own in its place.
    pub(super) fn catalogued<Q: Quantity>(
        &mut self,
        at: FieldPath,
        datum: &Datum<Q>,
        bounds: (f64, f64),
    ) -> Option<InputId> {
        let found = match datum {
            Datum::Unknown => None,
            Datum::Value(v) => Some((v.value.into(), Spread::None, v.source)),
            Datum::Band(b) => Some((b.value.typ.into(), Spread::of_band(&b.value), b.source)),
        };
        self.any_catalogued(at, found, bounds)
    }

    /// The same for a value of any kind with its spread and source.
    #[inline(never)]
    fn any_catalogued(
        &mut self,
        at: FieldPath,
        found: Option<(AnyQuantity, Spread, chemistry::Source)>,
        bounds: (f64, f64),
    ) -> Option<InputId> {
        let own = self.job.assume.iter().find(|a| a.at == at);
        let own = own.filter(|_| !self.refused.contains(&at));
        let (likely, spread, origin) = match (own, found) {
            (Some(own), _) => (own.value, Spread::None, Origin::Assumed),
            (None, None) => return None,
            (None, Some((likely, spread, source))) => (likely, spread, Origin::Catalogue(source)),
        };
        let spread = self.spread(&at, spread);
        Some(self.inputs.add(Input {
            at,
            likely,
            spread,
            origin,
            bounds,
        }))
    }

    pub(super) fn setting(&self) -> Setting {
        match self.job.place {
            Place::Home => Setting::Home,
            Place::Class => Setting::Class,
            Place::Shop => Setting::Shop,
        }
    }

    pub(super) fn missing_unless_said(&mut self, at: FieldPath) {
        if !self.problems.iter().any(|p| p.field.within(at.as_str())) {
            self.problem(at, ProblemKind::Missing);
        }
    }

    /// A metal that a bath holds or that has a price must be one that there is.
    pub(super) fn check_metals(&mut self) {
        let job = self.job;
        let held = job.baths.iter().flat_map(|bath| {
            let at = FieldPath::new("baths").child(&bath.id).child("holds");
            bath.holds
                .iter()
                .map(move |h| (at.child(&h.metal), &h.metal))
        });
        let at = FieldPath::new("prices");
        let priced = job.prices.iter().map(|p| (at.child(&p.metal), &p.metal));
        let elements = self.catalogue.elements.iter().map(|e| e.id);
        let alloys = self.catalogue.alloys.iter().map(|a| a.id);
        let known: Vec<&str> = elements.chain(alloys).collect();
        for (at, metal) in held.chain(priced) {
            if !known.contains(&metal.as_str()) && !job.own.metals.iter().any(|m| m.id == *metal) {
                self.problems.push(
                    Problem::at(at.child("metal"), ProblemKind::UnknownId)
                        .reading(metal.as_str())
                        .one_of(known.iter().copied()),
                );
            }
        }
    }

    /// Own values and spreads must name an input of this job.
    pub(super) fn check_addresses(&mut self) {
        let own = self.job.assume.iter().map(|a| &a.at);
        let spreads = self.job.spreads.iter().map(|s| &s.at);
        for at in own.chain(spreads) {
            if !self.inputs.has(at) && !self.refused.contains(at) {
                self.problems
                    .push(Problem::at(at.clone(), ProblemKind::UnknownId).reading(at.as_str()));
            }
        }
    }
}
