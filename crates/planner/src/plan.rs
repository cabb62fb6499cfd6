//! A Job resolved against the catalogue: what is needed is there, the rest has a Problem.

use crate::answer::{Origin, UseBand};
use crate::arrangement;
use crate::clock::{Local, time_of_day};
use crate::inputs::{Input, InputId, InputList};
use crate::job::{
    Base, Bath, Bench, Drive, Extent, Job, Method, Piece, Step, Supply, Switch, Until,
};
use crate::path::FieldPath;
use crate::problem::{Problem, ProblemKind};
use crate::uses;
use chemistry::solution::Solution;
use chemistry::{Catalogue, Cited, Datum, Element, Process, Stirring};
use field::Row;
use geometry::Shape;
use quantity::{
    AnyQuantity, Band, Current, CurrentDensity, Length, Mass, MassPerCharge, Quantity, Ratio,
    Spread, Thickness, Time, Voltage,
};

/// A job ready to run.
#[derive(Clone, Debug)]
pub struct Plan {
    /// The pieces.
    pub pieces: Vec<PlanPiece>,
    /// The steps.
    pub steps: Vec<PlanStep>,
    /// The bath; none where it has a Problem.
    pub bath: Option<PlanBath>,
    /// The supply; none where it is not known.
    pub bench: Option<Bench>,
    /// The display's reading error.
    pub display: Option<InputId>,
    /// The uncertain inputs.
    pub inputs: InputList,
    /// Start on the wall clock, night from, night to.
    pub start: Option<(Local, Time, Time)>,
    /// Addresses whose Problems keep the currents and everything after them from being computed.
    pub stopped_by: Vec<FieldPath>,
}

/// A piece ready to run.
#[derive(Clone, Debug)]
pub struct PlanPiece {
    /// Its id.
    pub id: String,
    /// How many alike.
    pub count: u32,
    /// Its surface; none where it has a Problem.
    pub surface: Option<PlanSurface>,
    /// Factor on the surface for what the model leaves out; its likely value is 1.
    pub factor: InputId,
    /// Its hanger wires: diameter, wetted length, how many.
    pub wires: Option<(InputId, InputId, u32)>,
    /// Row of the evenness table.
    pub row: Option<Row>,
    /// The person's own thinnest over mean.
    pub own_ratio: Option<InputId>,
    /// A bore that grows shut.
    pub bore: Option<InputId>,
    /// The bore wanted after growth.
    pub wanted_bore: Option<Length>,
}

/// The surface of a piece.
#[derive(Clone, Debug)]
pub enum PlanSurface {
    /// The sum of shapes.
    Parts(Vec<PlanPart>),
    /// Measured: one side, sides, texture.
    Area(InputId, u32, InputId),
}

/// One shape.
#[derive(Clone, Debug)]
pub struct PlanPart {
    /// Its address.
    pub at: FieldPath,
    /// With its likely sizes.
    pub shape: Shape,
    /// Its sizes, in the shape's own order.
    pub sizes: Vec<InputId>,
    /// Real over smooth surface outside.
    pub texture: InputId,
    /// How often it stands on the piece.
    pub times: u32,
}

/// The bath.
#[derive(Clone, Debug)]
pub struct PlanBath {
    /// Its id.
    pub id: String,
    /// Its solution.
    pub solution: &'static Solution,
    /// The metal it lays down.
    pub metal: &'static Element,
    /// Electrochemical equivalent in this solution.
    pub equivalent: MassPerCharge,
    /// Share of the charge that makes metal.
    pub efficiency: Option<InputId>,
    /// Conductivity.
    pub conductivity: Option<InputId>,
    /// Factor on the evenness length.
    pub evenness_factor: Option<InputId>,
    /// Slope of the polarisation curve.
    pub slope: Option<Cited<Voltage>>,
    /// Overvoltage of both surfaces and leads.
    pub surface_volts: Option<InputId>,
    /// Distance to the counter electrode.
    pub distance: Option<InputId>,
}

/// A step.
#[derive(Clone, Debug)]
pub struct PlanStep {
    /// Its id.
    pub id: String,
    /// What happens.
    pub kind: Process,
    /// How the solution is moved.
    pub stirring: Stirring,
    /// What is set.
    pub drive: Option<PlanDrive>,
    /// When it ends.
    pub until: Option<PlanUntil>,
    /// What the use asks for.
    pub use_band: Option<UseBand>,
    /// The person's own ceiling.
    pub ceiling: Option<Voltage>,
}

/// What is set, resolved.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum PlanDrive {
    /// A density.
    Density(CurrentDensity),
    /// A current.
    Current(Current),
    /// A density still to be worked out from solution, edges and supply.
    Advised,
}

/// When a step ends, resolved.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum PlanUntil {
    /// After a time.
    Time(Time),
    /// At a mean thickness from the job's start.
    Mean(Thickness),
    /// At the thinnest place, likewise; the first piece with a known evenness rules.
    Thinnest(Thickness),
    /// At a mass on all pieces together.
    Mass(Mass),
    /// At a minute of the day.
    Clock(i64),
}

/// Most steps this program plans.
pub const MOST_STEPS: usize = 2;

/// Resolves `job`. Problems are added to `problems`; what they do not touch is planned all the same.
pub fn resolve(catalogue: &Catalogue, job: &Job, problems: &mut Vec<Problem>) -> Plan {
    let mut r = Resolver {
        catalogue,
        job,
        problems,
        inputs: InputList::default(),
        stopped_by: Vec::new(),
    };
    r.refuse_what_comes_later();
    let bath = r.bath();
    let arrangement = job
        .baths
        .first()
        .and_then(|b| b.counter.as_ref())
        .and_then(|c| c.arrangement)
        .unwrap_or_default();
    let pieces = r.pieces(arrangement);
    let bench = r.bench();
    let display = r.display(bench.as_ref());
    let start = job
        .start
        .as_ref()
        .and_then(|s| Local::parse(&s.local).map(|l| (l, s.night_from, s.night_to)));
    let steps = r.steps(bench.as_ref(), start.is_some(), &pieces);
    r.check_addresses();
    Plan {
        pieces,
        steps,
        bath,
        bench,
        display,
        start,
        stopped_by: r.stopped_by,
        inputs: r.inputs,
    }
}

struct Resolver<'a> {
    catalogue: &'a Catalogue,
    job: &'a Job,
    problems: &'a mut Vec<Problem>,
    inputs: InputList,
    stopped_by: Vec<FieldPath>,
}

const ANY: (f64, f64) = (0.0, f64::INFINITY);
const SHARE: (f64, f64) = (1e-9, 1.0);

impl Resolver<'_> {
    fn problem(&mut self, at: FieldPath, kind: ProblemKind) {
        self.problems.push(Problem::at(at, kind));
    }

    /// A Problem without which nothing electrical can be computed.
    fn stop(&mut self, at: FieldPath, kind: ProblemKind) {
        self.stopped_by.push(at.clone());
        self.problem(at, kind);
    }

    /// What later editions will compute is refused here, never ignored.
    fn refuse_what_comes_later(&mut self) {
        let job = self.job;
        let at = FieldPath::new;
        for bath in job.baths.iter().skip(1) {
            self.stop(at("baths").child(&bath.id), ProblemKind::NotYet);
        }
        for step in job.steps.iter().skip(MOST_STEPS) {
            self.stop(at("steps").child(&step.id), ProblemKind::NotYet);
        }
        if job.effects.growth == Switch::On {
            self.stop(at("effects/growth"), ProblemKind::NotYet);
        }
        if job.effects.contacts == Switch::On {
            self.stop(at("effects/contacts"), ProblemKind::NotYet);
        }
        for piece in &job.pieces {
            let path = at("pieces").child(&piece.id);
            for (there, key) in [
                (piece.joins.is_some(), "joins"),
                (piece.leaves.is_some(), "leaves"),
                (piece.artwork.is_some(), "artwork"),
                (piece.open.is_some(), "open"),
            ] {
                if there {
                    self.stop(path.child(key), ProblemKind::NotYet);
                }
            }
        }
        if !job.own.metals.is_empty() {
            self.problem(at("own/metals"), ProblemKind::NotYet);
        }
        if !job.own.solutions.is_empty() {
            self.problem(at("own/solutions"), ProblemKind::NotYet);
        }
        if !job.prices.is_empty() {
            self.problem(at("prices"), ProblemKind::NotYet);
        }
        if job.class.is_some() {
            self.problem(at("class"), ProblemKind::NotYet);
        }
    }

    fn spread(&self, at: &FieldPath, otherwise: Spread) -> Spread {
        match self.job.spreads.iter().find(|s| s.at == *at) {
            Some(own) if own.spread.si() > 0.0 => Spread::Lognormal {
                frac: own.spread.si(),
            },
            Some(_) => Spread::None,
            None => otherwise,
        }
    }

    fn given<Q: Quantity>(
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
    fn catalogued<Q: Quantity>(
        &mut self,
        at: FieldPath,
        datum: &Datum<Q>,
        bounds: (f64, f64),
    ) -> Option<InputId> {
        let own = self.job.assume.iter().find(|a| a.at == at);
        let (likely, spread, origin): (AnyQuantity, Spread, Origin) = match (own, datum) {
            (Some(own), _) => (own.value, Spread::None, Origin::Assumed),
            (None, Datum::Unknown) => return None,
            (None, Datum::Value(v)) => (v.value.into(), Spread::None, Origin::Catalogue(v.source)),
            (None, Datum::Band(b)) => {
                let band: &Band<Q> = &b.value;
                (
                    band.typ.into(),
                    Spread::of_band(band),
                    Origin::Catalogue(b.source),
                )
            }
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

    fn bath(&mut self) -> Option<PlanBath> {
        let Some(bath) = self.job.baths.first() else {
            self.stop(FieldPath::new("baths"), ProblemKind::Missing);
            return None;
        };
        let path = FieldPath::new("baths").child(&bath.id);
        let solution = self.solution(bath, &path)?;
        let Some(metal) = self.catalogue.element(solution.metal) else {
            self.stop(path.child("solution"), ProblemKind::UnknownId);
            return None;
        };
        let distance = bath.counter.as_ref().and_then(|c| c.distance).map(|d| {
            self.given(
                path.child("counter").child("distance"),
                d,
                Spread::None,
                ANY,
            )
        });
        Some(PlanBath {
            id: bath.id.clone(),
            solution,
            metal,
            equivalent: chemistry::faraday::equivalent(metal.molar_mass.value, solution.valence),
            efficiency: self.catalogued(path.child("efficiency"), &solution.efficiency, SHARE),
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
            distance,
        })
    }

    fn solution(&mut self, bath: &Bath, path: &FieldPath) -> Option<&'static Solution> {
        let found = self.catalogue.solution(&bath.solution);
        if found.is_none() {
            let at = path.child("solution");
            self.stopped_by.push(at.clone());
            self.problems.push(
                Problem::at(at, ProblemKind::UnknownId)
                    .reading(bath.solution.as_str())
                    .one_of(self.catalogue.solutions.iter().map(|s| s.id)),
            );
        }
        found
    }

    fn pieces(&mut self, arrangement: field::Arrangement) -> Vec<PlanPiece> {
        let job = self.job;
        if job.pieces.is_empty() {
            self.stop(FieldPath::new("pieces"), ProblemKind::Missing);
        }
        job.pieces
            .iter()
            .map(|p| self.piece(p, arrangement))
            .collect()
    }

    fn piece(&mut self, piece: &Piece, arrangement: field::Arrangement) -> PlanPiece {
        let path = FieldPath::new("pieces").child(&piece.id);
        let extent = path.child("extent");
        let surface = self.surface(piece, &extent);
        let factor = self.given(
            extent,
            Ratio::of_si(1.0),
            Spread::Lognormal {
                frac: usual_spread(piece),
            },
            ANY,
        );
        let wires = piece.hanger.as_ref().map(|h| {
            let at = path.child("hanger");
            let d = self.given(at.child("wire_d"), h.wire_d, Spread::None, ANY);
            // The liquid's level on a wire is judged by eye.
            let wet = self.given(at.child("wet"), h.wet, Spread::Lognormal { frac: 0.1 }, ANY);
            (d, wet, h.wires)
        });
        let row = match &piece.extent {
            Some(Extent::Parts(parts)) if parts.len() == 1 => {
                arrangement::row(&parts[0].shape, arrangement)
            }
            _ => None,
        };
        let own_ratio = piece
            .min_over_mean
            .map(|r| self.given(path.child("min_over_mean"), r, Spread::None, (1e-9, 1.0)));
        let bore = match (piece.fit.as_ref().and_then(|f| f.bore), &surface) {
            (Some(bore), _) => {
                Some(self.given(path.child("fit").child("bore"), bore, Spread::None, ANY))
            }
            (None, Some(PlanSurface::Parts(parts))) => parts
                .iter()
                .find_map(|p| p.shape.surface().bore.map(|_| p.sizes[0])),
            _ => None,
        };
        if let Some(Base::Metal(stock)) = &piece.base
            && self.catalogue.element(&stock.id).is_none()
        {
            self.problems.push(
                Problem::at(
                    path.child("base").child("metal").child("id"),
                    ProblemKind::UnknownId,
                )
                .reading(stock.id.as_str())
                .one_of(self.catalogue.elements.iter().map(|e| e.id)),
            );
        }
        PlanPiece {
            id: piece.id.clone(),
            count: piece.count,
            surface,
            factor,
            wires,
            row,
            own_ratio,
            bore,
            wanted_bore: piece.fit.as_ref().and_then(|f| f.wanted),
        }
    }

    fn surface(&mut self, piece: &Piece, at: &FieldPath) -> Option<PlanSurface> {
        match &piece.extent {
            None => {
                // Where the extent was there but unreadable, its own fields have said so.
                if self.problems.iter().any(|p| p.field.within(at.as_str())) {
                    self.stopped_by.push(at.clone());
                } else {
                    self.stop(at.clone(), ProblemKind::Missing);
                }
                None
            }
            Some(Extent::Area(area)) => {
                let at = at.child("area");
                let one_side = self.given(at.child("one_side"), area.one_side, Spread::None, ANY);
                let texture = self.given(
                    at.child("texture"),
                    area.texture.unwrap_or(Ratio::of_si(1.0)),
                    Spread::None,
                    ANY,
                );
                Some(PlanSurface::Area(one_side, area.sides, texture))
            }
            Some(Extent::Parts(parts)) => {
                let planned = parts
                    .iter()
                    .map(|part| {
                        let at = at.child("parts").child(&part.id);
                        let sizes_at = at.child("shape").child(part.shape.id());
                        let mut sizes = Vec::new();
                        part.shape.map_sizes(|n, size| {
                            let name = part.shape.size_names()[n];
                            sizes.push(self.given(sizes_at.child(name), size, Spread::None, ANY));
                            size
                        });
                        let texture = self.given(
                            at.child("texture_outside"),
                            part.texture_outside.unwrap_or(Ratio::of_si(1.0)),
                            Spread::None,
                            ANY,
                        );
                        PlanPart {
                            at: sizes_at,
                            shape: part.shape,
                            sizes,
                            texture,
                            times: part.times,
                        }
                    })
                    .collect();
                Some(PlanSurface::Parts(planned))
            }
        }
    }

    fn bench(&mut self) -> Option<Bench> {
        match &self.job.supply {
            None => None,
            Some(Supply::ConstantCurrent(bench)) => Some(bench.clone()),
            Some(_) => {
                self.stop(FieldPath::new("supply"), ProblemKind::NotYet);
                None
            }
        }
    }

    fn display(&mut self, bench: Option<&Bench>) -> Option<InputId> {
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

    fn steps(
        &mut self,
        bench: Option<&Bench>,
        has_start: bool,
        pieces: &[PlanPiece],
    ) -> Vec<PlanStep> {
        let job = self.job;
        if job.steps.is_empty() {
            self.problem(FieldPath::new("steps"), ProblemKind::Missing);
        }
        job.steps
            .iter()
            .take(MOST_STEPS)
            .map(|s| self.step(s, bench, has_start, pieces))
            .collect()
    }

    fn step(
        &mut self,
        step: &Step,
        bench: Option<&Bench>,
        has_start: bool,
        pieces: &[PlanPiece],
    ) -> PlanStep {
        let path = FieldPath::new("steps").child(&step.id);
        if step.kind != Process::Electroform {
            self.stop(path.child("kind"), ProblemKind::NotYet);
        }
        self.who_is_in(step, &path);
        let drive = self.drive(step, bench, &path);
        let until = self.until(step, has_start, pieces, &path);
        let use_band = match step.until {
            Some(Until::Use(of)) => Some(uses::copper_shell(of)),
            _ => None,
        };
        PlanStep {
            id: step.id.clone(),
            kind: step.kind,
            stirring: step.stirring,
            drive,
            until,
            use_band,
            ceiling: step.ceiling,
        }
    }

    /// Every step must hold all pieces in the one bath.
    fn who_is_in(&mut self, step: &Step, path: &FieldPath) {
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

    fn drive(&mut self, step: &Step, bench: Option<&Bench>, path: &FieldPath) -> Option<PlanDrive> {
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

    fn until(
        &mut self,
        step: &Step,
        has_start: bool,
        pieces: &[PlanPiece],
        path: &FieldPath,
    ) -> Option<PlanUntil> {
        let at = path.child("until");
        match &step.until {
            None => {
                self.missing_unless_said(at);
                None
            }
            Some(Until::Time(t)) => Some(PlanUntil::Time(*t)),
            Some(Until::Mean(t)) => Some(PlanUntil::Mean(*t)),
            Some(Until::Mass(m)) => Some(PlanUntil::Mass(*m)),
            Some(Until::Use(of)) => Some(PlanUntil::Mean(uses::copper_shell(*of).middle)),
            Some(Until::Thinnest(t)) => {
                if pieces
                    .iter()
                    .any(|p| p.row.is_some() || p.own_ratio.is_some())
                {
                    return Some(PlanUntil::Thinnest(*t));
                }
                let piece = pieces.first().map_or("p1", |p| p.id.as_str());
                self.missing_unless_said(
                    FieldPath::new("pieces").child(piece).child("min_over_mean"),
                );
                None
            }
            Some(Until::Depth(_)) => {
                self.problem(at.child("depth"), ProblemKind::NotYet);
                None
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

    fn missing_unless_said(&mut self, at: FieldPath) {
        if !self.problems.iter().any(|p| p.field.within(at.as_str())) {
            self.problem(at, ProblemKind::Missing);
        }
    }

    /// Own values and spreads must name an input of this job.
    fn check_addresses(&mut self) {
        let own = self.job.assume.iter().map(|a| &a.at);
        let spreads = self.job.spreads.iter().map(|s| &s.at);
        for at in own.chain(spreads) {
            if !self.inputs.has(at) {
                self.problems
                    .push(Problem::at(at.clone(), ProblemKind::UnknownId).reading(at.as_str()));
            }
        }
    }
}

/// Two in three, by how the surface was found: measured figures of the trade, common practice, no source.
fn usual_spread(piece: &Piece) -> f64 {
    match &piece.extent {
        Some(Extent::Area(area)) => match area.method {
            Some(Method::Mesh) => 0.03,
            Some(Method::Photo) => 0.05,
            Some(Method::Tracing) => 0.04,
            Some(Method::Foil) => 0.25,
            Some(Method::Sizes) => 0.10,
            Some(Method::Eye) => 0.60,
            None => 0.20,
        },
        _ => 0.10,
    }
}
