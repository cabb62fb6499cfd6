//! Job in, Answer out.

use crate::advise::{advise, edge_of, tree_density, window};
use crate::answer::{
    Answer, BathAnswer, Ceiling, Etched, LayerAnswer, MetalAnswer, Moment, PieceAnswer, Ruling,
    Section, Setting, StepAnswer, Thumb, Window,
};
use crate::begin;
use crate::body::measure;
use crate::checks;
use crate::class;
use crate::cover;
use crate::groove;
use crate::inputs::Inputs;
use crate::job::{FORMAT, Job, Lead};
use crate::meter;
use crate::moments;
use crate::path::FieldPath;
use crate::plan::{Plan, PlanBath, PlanHold, PlanPiece, PlanStep};
use crate::problem::Problem;
use crate::ranges::{OfLayer, OfPiece, OfStep, Ranges};
use crate::resolve::resolve;
use crate::run::{Run, run};
use crate::sessions;
use crate::value::{Absence, Because, Maybe};
use crate::warmth;
use crate::working;
use chemistry::{Catalogue, Process};
use quantity::{
    Concentration, Current, CurrentDensity, Mass, Money, Quantity, Range, Ratio, Time, Voltage,
    Volume, WorkArea,
};

/// What to set, for how long, and what comes of it.
pub fn answer(catalogue: &Catalogue, job: &Job) -> Answer {
    answer_with(catalogue, job, Vec::new())
}

/// A job resolved, its advised densities filled in, and what ruled each.
pub(crate) fn prepare(
    catalogue: &Catalogue,
    job: &Job,
    problems: &mut Vec<Problem>,
) -> (Plan, Vec<Option<Ruling>>) {
    let mut plan = resolve(catalogue, job, problems);
    if !plan.stopped_by.is_empty() {
        for step in &mut plan.steps {
            step.drive = None;
        }
    }
    let rulings = advise(&mut plan);
    (plan, rulings)
}

/// The same for a job in whose reading `problems` were met.
pub fn answer_with(catalogue: &Catalogue, job: &Job, problems: Vec<Problem>) -> Answer {
    answer_by(catalogue, job, problems, Ranges::of)
}

/// The same without ranges: every low and high is the likely value. About fifty times as fast.
pub fn answer_likely(catalogue: &Catalogue, job: &Job) -> Answer {
    answer_by(catalogue, job, Vec::new(), Ranges::exactly)
}

fn answer_by(
    catalogue: &Catalogue,
    job: &Job,
    mut problems: Vec<Problem>,
    ranges: fn(&Plan, &Run) -> Ranges,
) -> Answer {
    let (plan, rulings) = prepare(catalogue, job, &mut problems);
    let inputs = plan.inputs.likely();
    let mut likely = Run::for_plan(&plan);
    run(&plan, &inputs, None, &mut likely);
    let ranges = ranges(&plan, &likely);
    let b = Builder {
        job,
        plan: &plan,
        inputs: &inputs,
        likely: &likely,
    };
    let mut elapsed = Some(Time::seconds(0.0));
    let steps = (0..plan.steps.len())
        .map(|n| {
            let starts = elapsed;
            elapsed = elapsed.zip(likely.steps[n].time).map(|(a, t)| a + t);
            b.step(n, rulings[n], starts, elapsed, &ranges)
        })
        .collect();
    Answer {
        format: FORMAT,
        catalogue: catalogue.version,
        limits: checks::limits(job, &plan, &likely),
        cautions: checks::cautions(job, &plan, &likely),
        steps,
        stages: moments::stages(&plan, &inputs, &likely, |after| b.moment(after)),
        pieces: (0..plan.pieces.len())
            .map(|n| b.piece(n, &ranges))
            .collect(),
        baths: b.baths(&ranges),
        contacts: crate::clips::bad(&plan, &inputs, &likely),
        class: class::of(catalogue, job, &plan, &likely),
        time: b.or_step_absence(ranges.time()),
        charge: b.or_step_absence(ranges.charge()),
        sessions: sessions::sessions(job, &plan, &likely),
        after: None,
        asked: None,
        inputs: plan.inputs.used(),
        working: working::write(&plan, &inputs, &likely, &rulings, job.class.as_ref()),
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
        stages: Vec::new(),
        pieces: Vec::new(),
        baths: Vec::new(),
        contacts: Vec::new(),
        class: None,
        time: Maybe::absent(Because::InputMissing),
        charge: Maybe::absent(Because::InputMissing),
        sessions: Vec::new(),
        after: None,
        asked: None,
        inputs: Vec::new(),
        working: Vec::new(),
    }
}

/// 100 mA per square inch. Common practice, no source.
const THUMB: CurrentDensity = CurrentDensity::of_si(0.1 / 0.000_645_16);

struct Builder<'a> {
    job: &'a Job,
    plan: &'a Plan,
    inputs: &'a Inputs,
    likely: &'a Run,
}

impl Builder<'_> {
    fn step(
        &self,
        n: usize,
        ruled_by: Option<Ruling>,
        starts: Option<Time>,
        ends: Option<Time>,
        ranges: &Ranges,
    ) -> StepAnswer {
        let step = &self.plan.steps[n];
        let set = self.likely.steps[n].set;
        let first = self.plan.first_stage(n).map(|k| self.likely.stages[k]);
        let current = match (
            ranges.step(n, OfStep::Wanted),
            ranges.step(n, OfStep::Real),
            set,
        ) {
            (Some(wanted), Some(real), Some(set)) => Maybe::Known(Setting { wanted, set, real }),
            _ => Maybe::Absent(self.no_current(step)),
        };
        let ceiling = self.ceiling(n, ranges);
        StepAnswer {
            id: step.id.clone(),
            kind: step.kind,
            current,
            ruled_by,
            density: known(ranges.step(n, OfStep::Density), || self.no_current(step)),
            densest: known(ranges.step(n, OfStep::Densest), || self.no_evenness(step)),
            window: self.window(step),
            entry: self
                .plan
                .bath(step)
                .map(|b| begin::entry(&self.job.pieces, b)),
            socket: set.and_then(begin::socket),
            meter: ceiling.as_ref().and_then(|c| self.meter(n, c, ranges)),
            ammeter: self.ammeter(n, ranges),
            covering: cover::covering(self.plan, self.likely, n),
            fatter: self.fatter(n),
            ceiling: known(ceiling, || self.no_volts(step)),
            time: known(ranges.step(n, OfStep::Time), || self.no_time(step)),
            starts: self.moment(starts),
            ends: self.moment(ends),
            charge: known(ranges.step(n, OfStep::Charge), || self.no_time(step)),
            growth: known(ranges.step(n, OfStep::Growth), || self.no_growth(step)),
            ohmic: known(ranges.step(n, OfStep::Ohmic), || self.no_volts(step)),
            power: known(ranges.step(n, OfStep::Power), || self.no_volts(step)),
            work_lead: self.work_lead(step),
            thumb: self.thumb(n),
            mean_after: known(ranges.step(n, OfStep::MeanAfter), || self.no_time(step)),
            use_band: step.use_band,
            density_after: ranges
                .step(n, OfStep::DensityAfter)
                .filter(|_| self.plan.growth),
            wasted: self.likely.steps[n].wasted,
            set_volts: first.and_then(|s| s.volts),
        }
    }

    /// The expected volts, rounded up to a tenth, at most what the supply has.
    fn ceiling(&self, n: usize, ranges: &Ranges) -> Option<Ceiling> {
        let grows = cover::ceiling_of(self.plan, self.likely, n);
        let expected: Range<Voltage> = ranges.step(grows, OfStep::Volts)?;
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

    /// What the voltmeter shows; none where the supply holds the volts.
    fn meter(&self, n: usize, ceiling: &Ceiling, ranges: &Ranges) -> Option<meter::Meter> {
        let step = &self.plan.steps[n];
        let expected = ranges
            .step(n, OfStep::Volts)
            .filter(|_| self.plan.volts.is_none())?;
        Some(meter::meter(
            step,
            ceiling,
            expected,
            ranges.step(n, OfStep::Bites),
        ))
    }

    /// What the ammeter shows, where the supply holds the volts.
    fn ammeter(&self, n: usize, ranges: &Ranges) -> Option<meter::Ammeter> {
        let supply = self.plan.volts.as_ref()?;
        let expected = ranges.step(n, OfStep::Real)?;
        let ohmic = self.likely.steps[n].ohmic;
        let most = supply.highest_current;
        let step = &self.plan.steps[n];
        Some(meter::ammeter(step, expected, ohmic, self.fatter(n), most))
    }

    /// How much more area there is at a step's end, growing areas counted whether or not the job wants it.
    fn fatter(&self, n: usize) -> Option<Ratio> {
        let etches = self.plan.etches();
        let k = self
            .plan
            .stages
            .iter()
            .rposition(|s| s.step == n && !etches)?;
        let shared = &self.likely.shared[k * self.plan.pieces.len()..];
        let mut area = [0.0; 2];
        for p in self.plan.stages[k].hung.iter().flatten() {
            let body = measure(true, &self.plan.pieces[*p], self.inputs).both;
            let count = f64::from(self.plan.pieces[*p].count);
            area[0] += count * body.area(0.0);
            area[1] += count * body.area(shared[*p].mean_after?.si());
        }
        meter::fatter(area)
    }

    /// What the solution takes.
    fn window(&self, step: &PlanStep) -> Option<Window> {
        let bath = self.plan.bath(step)?;
        let (least, most) = window(bath, step.stirring)?;
        Some(Window {
            least,
            typical: bath.solution.window_still.typical(),
            most,
            bound: tree_density(bath, step),
        })
    }

    /// Plus in an etch, minus where metal is laid down.
    fn work_lead(&self, step: &PlanStep) -> Lead {
        match step.kind {
            Process::Etch => Lead::Plus,
            Process::Electroform | Process::Electroplate => Lead::Minus,
        }
    }

    /// The rule of thumb beside a step that grows copper.
    fn thumb(&self, n: usize) -> Option<Thumb> {
        let step = &self.plan.steps[n];
        let bath = self.plan.bath(step)?;
        if step.kind != Process::Electroform || bath.solution.metal != "Cu" {
            return None;
        }
        // Only where a current is known: without one the step itself says nothing either.
        self.likely.steps[n].density?;
        let hung = &self.plan.stages[self.plan.first_stage(n)?].hung;
        let areas = hung.iter().map(|h| self.likely.bare_area(h));
        let total = areas.reduce(|a, b| if b < a { b } else { a })?;
        let vessel = step.vessels.first()?;
        let edges = vessel
            .pieces
            .iter()
            .filter_map(|p| edge_of(self.plan, vessel, *p, self.likely, self.inputs, THUMB));
        let worst = edges.reduce(|a, b| if b > a { b } else { a });
        let densest = worst.map(|w| THUMB * if w > 1.0 { w } else { 1.0 });
        let bound = tree_density(bath, step);
        Some(Thumb {
            density: THUMB,
            current: THUMB * total,
            densest,
            bound,
            // A bath without metal bears nothing: no ratio to it.
            densest_over_bound: densest
                .zip(bound)
                .filter(|(_, b)| b.si() > 0.0)
                .map(|(d, b)| Ratio::from_si(d / b)),
        })
    }

    fn baths(&self, ranges: &Ranges) -> Vec<BathAnswer> {
        (0..self.plan.baths.len())
            .map(|n| {
                let bath = &self.plan.baths[n];
                let at = FieldPath::new("baths").child(&bath.id);
                let metals = 0..bath.metals.len();
                let (current, area) = heaviest(self.plan, self.likely, n);
                let volume = bath.volume.map(|id| self.inputs.get::<Volume>(id));
                BathAnswer {
                    id: bath.id.clone(),
                    metals: metals.map(|m| self.metal(m, n, &at, ranges)).collect(),
                    counter: known(ranges.counter(n), || self.no_balance(bath, &at)),
                    load: current.zip(volume).map(|(i, v)| i / v),
                    counter_ratio: bath
                        .facing
                        .zip(area)
                        .map(|(c, a)| Ratio::from_si(c.si() / a.si())),
                    counter_density: bath
                        .facing
                        .zip(current)
                        .map(|(c, i)| CurrentDensity::from_si(i.si() / c.si())),
                    facing: bath.facing,
                    warmth: warmth::warmth(self.plan, self.likely, ranges, n),
                }
            })
            .collect()
    }

    fn metal(&self, m: usize, n: usize, at: &FieldPath, ranges: &Ranges) -> MetalAnswer {
        let bath = &self.plan.baths[n];
        let hold = &bath.metals[m];
        let gained: Option<Range<Mass>> = ranges.gained(n, m);
        let volume: Option<Volume> = bath.volume.map(|id| self.inputs.get(id));
        // The volume is taken as read here: what it may be off by is small beside the charge's range.
        let now = hold.now.zip(volume);
        let after = gained.zip(now).map(|(g, (now, volume))| {
            // A bath cannot hold less than none; that it would is a Limit.
            let then = |m: Mass| {
                let after = now.si() + m.si() / volume.si();
                Concentration::from_si(if after > 0.0 { after } else { 0.0 })
            };
            Range {
                likely: then(g.likely),
                low: then(g.low),
                high: then(g.high),
            }
        });
        let jobs = gained
            .zip(now)
            .zip(hold.floor)
            .and_then(|((g, (now, volume)), floor)| {
                let room = (now.si() - floor.si()) * volume.si();
                let lost = -g.likely.si();
                (lost > 0.0 && room >= 0.0).then(|| (room / lost).floor())
            });
        MetalAnswer {
            metal: hold.metal.clone(),
            gained: known(gained, || self.no_balance(bath, at)),
            after: known(after, || self.no_content(bath, hold, at)),
            jobs_until_floor: jobs.filter(|n| *n < 1e9).map(|n| n as u32),
        }
    }

    /// What keeps the balance absent: the outcome, or what the counter electrode is made of.
    fn no_balance(&self, bath: &PlanBath, at: &FieldPath) -> Absence {
        if self.likely.charge.is_some() && bath.counter.is_none() {
            return needs(at.child("counter/material"));
        }
        self.no_outcome()
    }

    fn no_content(&self, bath: &PlanBath, hold: &PlanHold, at: &FieldPath) -> Absence {
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

    fn etched(&self, n: usize, ranges: &Ranges) -> Option<Etched> {
        let piece = &self.plan.pieces[n];
        if !self.plan.etches() {
            return None;
        }
        let at = FieldPath::new("pieces").child(&piece.id);
        let art = at.child("artwork");
        let or_needs = |there: bool, path: FieldPath| {
            if there {
                self.no_outcome()
            } else {
                needs(path)
            }
        };
        Some(Etched {
            depth: known(ranges.piece(n, OfPiece::Depth), || self.no_outcome()),
            flat_depth: known(ranges.piece(n, OfPiece::Mean), || self.no_outcome()),
            fine_line: known(ranges.piece(n, OfPiece::FineLine), || {
                or_needs(piece.art.opening.is_some(), art.child("opening"))
            }),
            left: known(ranges.piece(n, OfPiece::Left), || {
                or_needs(piece.stock.is_some(), at.child("base/metal/thickness"))
            }),
            opening_after: known(ranges.piece(n, OfPiece::OpeningAfter), || {
                or_needs(piece.art.opening.is_some(), art.child("opening"))
            }),
            line_to_draw: known(ranges.piece(n, OfPiece::LineToDraw), || {
                or_needs(piece.art.land.is_some(), art.child("land_wanted"))
            }),
            section: self.section(n),
        })
    }

    fn section(&self, n: usize) -> Option<Section> {
        let piece = &self.plan.pieces[n];
        let run = &self.likely.pieces[n];
        Some(Section {
            undercut: run.depth?.as_length() / groove::etch_factor(piece, self.inputs),
            opening: piece.art.opening,
            line: run.line_to_draw,
            stock: piece.stock,
            film: piece.art.resist.map(groove::film),
            sides: if piece.art.both { 2 } else { 1 },
        })
    }

    /// What the metals on a piece and its wires cost, layer by layer, by the person's own prices; wires count with the
    /// last layer's price where there are several, in proportion to its share.
    fn cost(
        &self,
        n: usize,
        mass: Option<Range<Mass>>,
        wire: Option<Range<Mass>>,
    ) -> Maybe<Range<Money>> {
        let metals = layer_metals(self.plan);
        if metals.is_empty() {
            return Maybe::absent(Because::DoesNotApply);
        }
        let of_piece = &self.likely.layers[n * self.plan.layers..(n + 1) * self.plan.layers];
        let (mut money, mut grams) = (0.0, 0.0);
        for (metal, layer) in metals.iter().zip(of_piece) {
            let found = self.job.prices.iter().find(|p| p.metal == **metal);
            let Some(price) = found else {
                return Maybe::Absent(needs(FieldPath::new("prices").child(metal)));
            };
            let mass = layer.mass.map_or(f64::NAN, Quantity::si);
            money += price.price.si() * mass;
            grams += mass;
        }
        // One price for all of it: the ends are added, a little wide where a longer wire takes from the piece.
        let only = self
            .job
            .prices
            .iter()
            .find(|p| *p.metal == **metals.first().unwrap_or(&""));
        let per_kg = match (metals.len(), only) {
            (1, Some(price)) => price.price.si(),
            _ if grams > 0.0 => money / grams,
            _ => 0.0,
        };
        known(
            mass.zip(wire).map(|(m, w)| Range {
                likely: Money::from_si(per_kg * (m.likely + w.likely).si()),
                low: Money::from_si(per_kg * (m.low + w.low).si()),
                high: Money::from_si(per_kg * (m.high + w.high).si()),
            }),
            || self.no_outcome(),
        )
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

    fn piece(&self, n: usize, ranges: &Ranges) -> PieceAnswer {
        let piece = &self.plan.pieces[n];
        let at = FieldPath::new("pieces").child(&piece.id);
        let extent = || Absence {
            because: Because::InputMissing,
            needs: vec![at.child("extent")],
        };
        let last = || self.no_outcome();
        let uneven = || self.no_ratio(piece);
        let hollow = || match self.likely.pieces[n].thin_at {
            Some(_) => does_not_apply(at.child("extent")),
            None => self.no_ratio(piece),
        };
        let mass = ranges.piece(n, OfPiece::Mass);
        let wire_mass = ranges.piece(n, OfPiece::WireMass);
        let etches = self.plan.etches();
        let no_bore = || match piece.bore {
            Some(_) if !etches => self.no_outcome(),
            _ => does_not_apply(at.child("fit").child("bore")),
        };
        let no_wanted = || match piece.wanted_bore {
            Some(_) if !etches => self.no_outcome(),
            _ => does_not_apply(at.child("fit").child("wanted_bore")),
        };
        PieceAnswer {
            id: piece.id.clone(),
            count: piece.count,
            area: known(ranges.piece(n, OfPiece::Area), extent),
            wire_area: known(ranges.piece(n, OfPiece::WireArea), extent),
            wetted: known(ranges.piece(n, OfPiece::Wetted), extent),
            current: known(ranges.piece(n, OfPiece::Current), last),
            metal: self.metal_on(n),
            share: known(ranges.piece(n, OfPiece::Share), last),
            density: known(ranges.piece(n, OfPiece::Density), last),
            layers: self.layers(n, ranges),
            mean: known(ranges.piece(n, OfPiece::Mean), last),
            thinnest: known(ranges.piece(n, OfPiece::Thinnest), uneven),
            thickest: known(ranges.piece(n, OfPiece::Thickest), uneven),
            thin_place: known(self.likely.pieces[n].thin_at, uneven),
            inside: known(ranges.piece(n, OfPiece::Inside), hollow),
            wagner: known(ranges.piece(n, OfPiece::Wagner), uneven),
            mass: known(mass, last),
            wire_mass: known(wire_mass, last),
            cost: self.cost(n, mass, wire_mass),
            bore_after: known(ranges.piece(n, OfPiece::BoreAfter), no_bore),
            bore_to_make: known(ranges.piece(n, OfPiece::BoreToMake), no_wanted),
            etched: self.etched(n, ranges),
        }
    }

    /// The metal laid on a piece in the last step it hangs in, or taken from it.
    fn metal_on(&self, n: usize) -> Option<String> {
        let steps = self.plan.steps.iter().rev();
        let mut vessels = steps.flat_map(|s| &s.vessels);
        let vessel = vessels.find(|v| v.pieces.contains(&n))?;
        self.plan.moved(n, vessel.bath).map(|m| m.id.clone())
    }

    /// The layers of a stack on a piece; empty where there is only one.
    fn layers(&self, n: usize, ranges: &Ranges) -> Vec<LayerAnswer> {
        if self.plan.layers < 2 {
            return Vec::new();
        }
        let last = || self.no_outcome();
        let uneven = || self.no_ratio(&self.plan.pieces[n]);
        let metals = layer_metals(self.plan);
        let each = metals.iter().enumerate();
        each.map(|(l, metal)| LayerAnswer {
            metal: (*metal).to_owned(),
            mean: known(ranges.layer(n, l, OfLayer::Mean), last),
            thinnest: known(ranges.layer(n, l, OfLayer::Thinnest), uneven),
            thickest: known(ranges.layer(n, l, OfLayer::Thickest), uneven),
            mass: known(ranges.layer(n, l, OfLayer::Mass), last),
        })
        .collect()
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

    /// The address of an efficiency that nobody knows: a weighed strip tells it.
    fn unweighed(&self) -> Option<FieldPath> {
        let bath = self.plan.baths.iter().find(|b| b.efficiency.is_none())?;
        Some(FieldPath::new("baths").child(&bath.id).child("efficiency"))
    }

    /// What keeps growth absent: the current, or the share of it that moves metal.
    fn no_growth(&self, step: &PlanStep) -> Absence {
        match self.unweighed() {
            Some(at) if step.drive.is_some() => Absence {
                because: Because::NotInCatalogue,
                needs: vec![at],
            },
            _ => self.no_current(step),
        }
    }

    /// What keeps the time of a step absent: its own until, or whatever an earlier step lacks.
    fn no_time(&self, step: &PlanStep) -> Absence {
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
    fn no_outcome(&self) -> Absence {
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

    fn or_step_absence<T>(&self, value: Option<T>) -> Maybe<T> {
        known(value, || self.no_outcome())
    }

    /// What keeps evenness absent: the outcome itself, or a row for the shape.
    fn no_ratio(&self, piece: &PlanPiece) -> Absence {
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
    fn unknown_evenness(&self) -> Option<FieldPath> {
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

    fn no_evenness(&self, step: &PlanStep) -> Absence {
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

    fn no_volts(&self, step: &PlanStep) -> Absence {
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

/// The metals laid down, layer by layer; none in an etch.
pub(crate) fn layer_metals(plan: &Plan) -> Vec<&str> {
    let mut all: Vec<&str> = Vec::new();
    for step in &plan.steps {
        let lays = plan.bath(step).and_then(|b| b.lays.as_ref());
        if let Some(moved) = lays
            && all.len() == step.layer
        {
            all.push(&moved.id);
        }
    }
    all
}

/// What the metal on all pieces costs with one metal and its price known; wires counted.
pub(crate) fn cost(job: &Job, plan: &Plan, likely: &Run) -> Option<Money> {
    let [metal] = layer_metals(plan)[..] else {
        return None;
    };
    let price = job.prices.iter().find(|p| p.metal == metal)?.price;
    let mut sum = Mass::from_si(0.0);
    for (piece, run) in plan.pieces.iter().zip(&likely.pieces) {
        sum = sum + (run.mass? + run.wire_mass?) * f64::from(piece.count);
    }
    Some(price * sum)
}

/// The highest current through a bath, and the largest wetted area in it, bare.
pub(crate) fn heaviest(plan: &Plan, likely: &Run, n: usize) -> (Option<Current>, Option<WorkArea>) {
    let (mut current, mut area) = (None, None);
    for (stage, run) in plan.stages.iter().zip(&likely.stages) {
        let vessels = plan.steps[stage.step].vessels.iter().zip(&stage.hung);
        for (_, hung) in vessels.filter(|(v, _)| v.bath == n) {
            larger(&mut current, run.real);
            larger(
                &mut area,
                Some(likely.bare_area(hung)).filter(|a| a.si() > 0.0),
            );
        }
    }
    (current, area)
}

fn larger<Q: Quantity>(most: &mut Option<Q>, x: Option<Q>) {
    if let Some(x) = x
        && most.is_none_or(|m| x.si() > m.si())
    {
        *most = Some(x);
    }
}

fn known<T>(value: Option<T>, otherwise: impl FnOnce() -> Absence) -> Maybe<T> {
    match value {
        Some(value) => Maybe::Known(value),
        None => Maybe::Absent(otherwise()),
    }
}

fn needs(path: FieldPath) -> Absence {
    Absence {
        because: Because::InputMissing,
        needs: vec![path],
    }
}

fn does_not_apply(needs: FieldPath) -> Absence {
    Absence {
        because: Because::DoesNotApply,
        needs: vec![needs],
    }
}
