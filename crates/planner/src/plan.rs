//! A Job resolved against the catalogue: what is needed is there, the rest has a Problem.

use crate::answer::{Counts, Origin, UseBand};
use crate::arrangement;
use crate::clock::{Local, time_of_day};
use crate::fields;
use crate::inputs::{Input, InputId, InputList};
use crate::job::{
    Base, Bath, Bench, Drive, Extent, Faces, Job, Lead, Method, Model, OwnAlloy, OwnSolution,
    Piece, Place, Resist, Sides, Step, Supply, Switch, Until,
};
use crate::moved::{Moved, OwnFault, deposited_on_counter};
use crate::path::FieldPath;
use crate::problem::{Problem, ProblemKind};
use crate::uses;
use chemistry::efficiency::{self, Curve};
use chemistry::material::{Anode, Material, material_of};
use chemistry::solution::label::Label;
use chemistry::solution::{Choosable, Electrode, Setting, Solution};
use chemistry::{Catalogue, Cited, Datum, Metal, Process, Stirring};
use field::Row;
use geometry::Shape;
use quantity::{
    AnyQuantity, Band, Concentration, Current, CurrentDensity, Length, Mass, Quantity, Ratio,
    Spread, Temperature, Thickness, Time, Voltage,
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

impl Plan {
    /// The metal laid on a piece or taken from it.
    pub fn moved<'p>(&'p self, piece: &'p PlanPiece) -> Option<&'p Moved> {
        match self.bath.as_ref()?.lays.as_ref() {
            Some(lays) => Some(lays),
            None => piece.gives.as_ref(),
        }
    }

    /// The same of the first piece: what growth and depth of a step are said for.
    pub fn first_moved(&self) -> Option<&Moved> {
        self.pieces.first().and_then(|p| self.moved(p))
    }

    /// The effective charge per area (C/m2) after which every piece is at least this deep.
    pub(crate) fn charge_to_depth(
        &self,
        inputs: &crate::inputs::Inputs,
        depth: Thickness,
    ) -> Option<f64> {
        let mut most: Option<f64> = None;
        for piece in &self.pieces {
            let flat = crate::groove::flat_for(piece, inputs, depth);
            let q = self.moved(piece)?.charge_for(flat);
            if most.is_none_or(|m| q > m) {
                most = Some(q);
            }
        }
        most
    }
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
    /// The metal taken from it in an etch.
    pub gives: Option<Moved>,
    /// Open share of a masked sheet.
    pub open: Option<InputId>,
    /// Thickness of the sheet.
    pub stock: Option<Length>,
    /// What is etched.
    pub art: PlanArt,
    /// Points or hairs: the thickest place passes the table's.
    pub pointed: bool,
}

/// What is etched, as far as it is known.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct PlanArt {
    /// Width of an opening in the resist.
    pub opening: Option<Length>,
    /// Width of metal to be left.
    pub land: Option<Length>,
    /// Depth over undercut; 1 unless given.
    pub etch_factor: Option<InputId>,
    /// Grooves of that opening, or a flat floor.
    pub groove: bool,
    /// From both sides.
    pub both: bool,
    /// The film.
    pub resist: Option<Resist>,
    /// The lead on the sheet.
    pub lead: Option<Lead>,
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
    /// Whether it stands in a hollow of the piece.
    pub in_recess: bool,
}

/// The bath.
#[derive(Clone, Debug)]
pub struct PlanBath {
    /// Its id.
    pub id: String,
    /// Its solution, of the catalogue or from a label.
    pub solution: Solution,
    /// The metal it lays down; none in an etch, where each piece has its own.
    pub lays: Option<Moved>,
    /// Share of the charge that moves metal, at the solution's typical density.
    pub efficiency: Option<InputId>,
    /// How that share changes with the density; none where the person gave their own, which counts as given.
    pub curve: Option<Curve>,
    /// Thinnest over mean from batch to batch and place to place, beside what the table says: thin finishes only.
    pub batch: Option<InputId>,
    /// Conductivity.
    pub conductivity: Option<InputId>,
    /// Factor on the evenness length.
    pub evenness_factor: Option<InputId>,
    /// Slope of the polarisation curve.
    pub slope: Option<Cited<Voltage>>,
    /// Overvoltage of both surfaces and leads.
    pub surface_volts: Option<InputId>,
    /// Voltage of the whole cell, for solutions whose surfaces are not known apart.
    pub cell_volts: Option<InputId>,
    /// Distance to the counter electrode.
    pub distance: Option<InputId>,
    /// Volume.
    pub volume: Option<InputId>,
    /// The counter electrode's material.
    pub counter: Option<&'static Material>,
    /// Metals whose balance is kept: each with what the job says of it.
    pub metals: Vec<PlanHold>,
}

impl PlanBath {
    /// Whether the work dissolves.
    pub fn etches(&self) -> bool {
        self.solution.work == Electrode::Anode
    }
}

/// A metal in the bath.
#[derive(Clone, Debug, PartialEq)]
pub struct PlanHold {
    /// The element.
    pub metal: String,
    /// How much is in it now.
    pub now: Option<Concentration>,
    /// Below this the bath is renewed.
    pub floor: Option<Concentration>,
}

/// Most metals of a bath whose balance is kept.
pub const MOST_METALS: usize = 8;

/// A step.
#[derive(Clone, Debug)]
pub struct PlanStep {
    /// Its id.
    pub id: String,
    /// What happens.
    pub kind: Process,
    /// How the solution is moved.
    pub stirring: Stirring,
    /// Temperature of the bath, where it is given.
    pub temperature: Option<Temperature>,
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
    /// At the thinnest place, likewise; of the pieces whose evenness is known the least even one rules.
    Thinnest(Thickness),
    /// At a depth on every piece.
    Depth(Thickness),
    /// At a mass moved on all pieces together.
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
        refused: Vec::new(),
    };
    r.refuse_what_comes_later();
    let bath = r.bath();
    let arrangement = job
        .baths
        .first()
        .and_then(|b| b.counter.as_ref())
        .and_then(|c| c.arrangement)
        .unwrap_or_default();
    let pieces = r.pieces(bath.as_ref(), arrangement);
    let bath = r.with_metals(bath, &pieces);
    let bench = r.bench();
    let display = r.display(bench.as_ref());
    let start = job
        .start
        .as_ref()
        .and_then(|s| Local::parse(&s.local).map(|l| (l, s.night_from, s.night_to)));
    let steps = r.steps(bath.as_ref(), bench.as_ref(), start.is_some(), &pieces);
    r.check_metals();
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
    /// Own values that cannot be used.
    refused: Vec<FieldPath>,
}

const ANY: (f64, f64) = (0.0, f64::INFINITY);
const SHARE: (f64, f64) = (1e-9, 1.0);

impl Resolver<'_> {
    fn problem(&mut self, at: FieldPath, kind: ProblemKind) {
        self.problems.push(Problem::at(at, kind));
    }

    /// Whether there is a Problem at just this address.
    fn said(&self, at: &FieldPath) -> bool {
        self.problems.iter().any(|p| p.field == *at)
    }

    /// A whole list that no job can do without; one that is no list has been said.
    fn stop_without_list(&mut self, key: &str) {
        let at = FieldPath::new(key);
        self.stopped_by.push(at.clone());
        if !self.said(&at) {
            self.problem(at, ProblemKind::Missing);
        }
    }

    /// What an etch cannot do without; where it was there but unreadable, its own fields have said so.
    fn stop_without(&mut self, at: FieldPath) {
        if !self.stopped_by.contains(&at) {
            self.stopped_by.push(at.clone());
        }
        self.missing_unless_said(at);
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
            ] {
                if there {
                    self.stop(path.child(key), ProblemKind::NotYet);
                }
            }
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
        let own = own.filter(|_| !self.refused.contains(&at));
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
            self.stop_without_list("baths");
            return None;
        };
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
        let distance = counter
            .and_then(|c| c.distance)
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
            metals: Vec::new(),
        })
    }

    /// Whether the person gave an efficiency. Of laying metal down none is above 1: such a one is refused, and the
    /// catalogue's stands.
    fn own_efficiency(&mut self, at: &FieldPath, etches: bool) -> bool {
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
    fn counter_material(&mut self, bath: &Bath, path: &FieldPath) -> Option<&'static Material> {
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

    /// Which metals the balance is kept of: the bath's own, what the pieces give, and what the person named.
    fn with_metals(&mut self, bath: Option<PlanBath>, pieces: &[PlanPiece]) -> Option<PlanBath> {
        let mut bath = bath?;
        let holds = self
            .job
            .baths
            .first()
            .map(|b| b.holds.as_slice())
            .unwrap_or_default();
        let mut ids: Vec<&str> = Vec::new();
        let moved = bath
            .lays
            .iter()
            .chain(pieces.iter().filter_map(|p| p.gives.as_ref()));
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
        Some(bath)
    }

    /// The metal a solution lays down, with the valence an own one's label gives.
    fn lays(&self, bath: &Bath, solution: &Solution) -> Option<Moved> {
        match Metal::of(solution.metal)? {
            Metal::Element(e) if self.own_solution(bath).is_some() => {
                Some(Moved::of_element(e, solution.valence))
            }
            metal => Moved::of(metal, solution),
        }
    }

    fn own_solution(&self, bath: &Bath) -> Option<&OwnSolution> {
        self.job
            .own
            .solutions
            .iter()
            .find(|s| s.id == bath.solution)
    }

    /// A solution of the person's own. Its label must say a density; its efficiency may follow from what a charge moves.
    fn labelled(&mut self, own: &OwnSolution) -> Option<Solution> {
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
    fn solution(&mut self, bath: &Bath, path: &FieldPath) -> Option<Solution> {
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

    fn setting(&self) -> Setting {
        match self.job.place {
            Place::Home => Setting::Home,
            Place::Class => Setting::Class,
            Place::Shop => Setting::Shop,
        }
    }

    fn pieces(
        &mut self,
        bath: Option<&PlanBath>,
        arrangement: field::Arrangement,
    ) -> Vec<PlanPiece> {
        let job = self.job;
        if job.pieces.is_empty() {
            self.stop_without_list("pieces");
        }
        job.pieces
            .iter()
            .map(|p| self.piece(p, bath, arrangement))
            .collect()
    }

    fn piece(
        &mut self,
        piece: &Piece,
        bath: Option<&PlanBath>,
        arrangement: field::Arrangement,
    ) -> PlanPiece {
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
        let etches = bath.is_some_and(PlanBath::etches);
        let distance = self.counter_distance();
        let single = match &piece.extent {
            Some(Extent::Parts(parts)) if parts.len() == 1 && parts[0].faces == Faces::Open => {
                Some(&parts[0].shape)
            }
            _ => None,
        };
        // The table is of layers that grow; an etch is nearly primary, and its resist has edges of its own.
        let row = single
            .filter(|_| !etches)
            .and_then(|shape| arrangement::row_for(shape, arrangement, piece.opening, distance));
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
        let gives = self.gives(piece, bath, &path);
        if etches && piece.open.is_none() {
            self.stop_without(path.child("open"));
        }
        let open = piece.open.map(|o| {
            self.given(
                path.child("open"),
                o,
                Spread::Lognormal { frac: 0.1 },
                SHARE,
            )
        });
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
            gives,
            open: open.filter(|_| etches),
            stock: match &piece.base {
                Some(Base::Metal(stock)) => stock.thickness,
                _ => None,
            },
            art: self.art(piece, etches, &path.child("artwork")),
            pointed: single.is_some_and(Shape::pointed),
        }
    }

    fn counter_distance(&self) -> Option<Length> {
        self.job.baths.first()?.counter.as_ref()?.distance
    }

    /// The metal an etch takes from a piece. A base that is no known metal is a Problem, and stops an etch.
    fn gives(&mut self, piece: &Piece, bath: Option<&PlanBath>, path: &FieldPath) -> Option<Moved> {
        let at = path.child("base").child("metal").child("id");
        let etch = bath.filter(|b| b.etches());
        let Some(Base::Metal(stock)) = &piece.base else {
            if etch.is_some() {
                self.stop_without(path.child("base"));
            }
            return None;
        };
        if let Some(own) = self.job.own.metals.iter().find(|m| m.id == stock.id) {
            return self.own_metal(own, etch.is_some());
        }
        let metal = Metal::of(&stock.id);
        let moved = metal.zip(etch).and_then(|(m, b)| Moved::of(m, &b.solution));
        if metal.is_none() || (etch.is_some() && moved.is_none()) {
            if etch.is_some() {
                self.stopped_by.push(at.clone());
            }
            let elements = self.catalogue.elements.iter().map(|e| e.id);
            let alloys = self.catalogue.alloys.iter().map(|a| a.id);
            // A known metal that this solution dissolves in no known way.
            let kind = match metal {
                Some(_) => ProblemKind::Contradiction,
                None => ProblemKind::UnknownId,
            };
            let dissolves = |id: &&str| {
                etch.is_none_or(|b| {
                    Metal::of(id)
                        .and_then(|m| Moved::of(m, &b.solution))
                        .is_some()
                })
            };
            self.problems.push(
                Problem::at(at, kind)
                    .reading(stock.id.as_str())
                    .one_of(elements.chain(alloys).filter(dissolves)),
            );
        }
        moved
    }

    /// A metal of the person's own, where it is etched.
    fn own_metal(&mut self, own: &OwnAlloy, etches: bool) -> Option<Moved> {
        let at = FieldPath::new("own/metals").child(&own.id).child("parts");
        match Moved::of_own(own) {
            Ok(moved) => etches.then_some(moved),
            Err(fault) => {
                if etches {
                    self.stopped_by.push(at.clone());
                }
                let problem = match fault {
                    OwnFault::Element(id) => Problem::at(at.child(&id), ProblemKind::UnknownId)
                        .reading(id)
                        .one_of(self.catalogue.elements.iter().map(|e| e.id)),
                    OwnFault::Parts => Problem::at(at, ProblemKind::Contradiction),
                };
                self.problems.push(problem);
                None
            }
        }
    }

    fn art(&mut self, piece: &Piece, etches: bool, at: &FieldPath) -> PlanArt {
        let Some(art) = &piece.artwork else {
            if etches {
                // Which lead is on the sheet is asked before every etch.
                self.missing_unless_said(at.child("lead"));
            }
            return PlanArt::default();
        };
        if etches && art.lead.is_none() {
            self.missing_unless_said(at.child("lead"));
        }
        let ef = art.etch_factor.unwrap_or(Ratio::of_si(1.0));
        // A stirred film-forming bath may reach 2 (from memory); 1 is the safe guess.
        let etch_factor = self.given(
            at.child("etch_factor"),
            ef,
            Spread::Lognormal { frac: 0.2 },
            (0.1, 10.0),
        );
        PlanArt {
            opening: art.opening,
            land: art.land_wanted,
            etch_factor: Some(etch_factor),
            groove: art.model == Some(Model::Groove),
            both: art.sides == Some(Sides::Both),
            resist: art.resist,
            lead: art.lead,
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
                            in_recess: part.faces == Faces::Recess,
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

    fn step(
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
    fn thinnest(
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

    fn missing_unless_said(&mut self, at: FieldPath) {
        if !self.problems.iter().any(|p| p.field.within(at.as_str())) {
            self.problem(at, ProblemKind::Missing);
        }
    }

    /// A metal that a bath holds or that has a price must be one that there is.
    fn check_metals(&mut self) {
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
    fn check_addresses(&mut self) {
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
        // Sizes of something smooth, or of something grown.
        Some(Extent::Parts(parts)) if parts.iter().any(|p| natural(&p.shape)) => 0.20,
        _ => 0.10,
    }
}

/// Whether a shape stands for a find rather than for something made.
fn natural(shape: &Shape) -> bool {
    matches!(
        shape,
        Shape::Leaf { .. }
            | Shape::Feather { .. }
            | Shape::Twig { .. }
            | Shape::SeedHead { .. }
            | Shape::Shell { .. }
            | Shape::Snail { .. }
            | Shape::Crystal { .. }
    )
}
