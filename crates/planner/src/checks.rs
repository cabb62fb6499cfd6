//! What holds a job back, and the hazards at its steps. One rule a function.

use crate::advise::{edge_of, limiting, tree_density, window};
use crate::answer::{Caution, CautionKind, Limit, LimitKind, When};
use crate::cover;
use crate::facing;
use crate::groove;
use crate::hazards;
use crate::job::{Base, Job, Lead, Piece, Place, Resist};
use crate::meter;
use crate::path::FieldPath;
use crate::plan::{Plan, PlanBath, PlanDrive, PlanPiece, PlanStep};
use crate::run::{BathRun, PieceRun, Run, StepRun};
use crate::sessions;
use crate::value::Named;
use crate::vessel;
use crate::warmth;
use chemistry::solution::Column;
use chemistry::touch::{Verdict, touch, touch_metal};
use chemistry::{Choosable, NoteId, Setting};
use quantity::{
    Concentration, CurrentDensity, Fraction, Quantity, Thickness, Time, Voltage, Volume,
};

/// A display step above this share of the current asks for a meter in series. Common practice, no source.
pub const COARSE: f64 = 0.03;

/// What a multimeter in series takes of the voltage on its ampere range: 0.1 to 0.3 V, from memory.
pub const METER_TAKES: Voltage = Voltage::volt(0.2);

/// A run longer than this is one that people walk away from. Common practice, no source.
const LONG: Time = Time::hours(1.0);

/// What holds the job back, in the order of the steps.
pub fn limits(job: &Job, plan: &Plan, likely: &Run) -> Vec<Limit> {
    let mut all = Vec::new();
    let mut elapsed = Some(Time::seconds(0.0));
    for (n, (step, run)) in plan.steps.iter().zip(&likely.steps).enumerate() {
        let at = FieldPath::new("steps").child(&step.id);
        let add = |all: &mut Vec<Limit>, kind, numbers| {
            all.push(Limit {
                kind,
                at: at.clone(),
                pieces: Vec::new(),
                numbers,
                note: None,
            });
        };
        supply(plan, step, run, &mut |kind, numbers| {
            add(&mut all, kind, numbers)
        });
        densities(plan, likely, n, &at, &mut all);
        volts(plan, step, run, &mut |kind, numbers| {
            add(&mut all, kind, numbers);
        });
        if let Some((start, from, to)) = plan.start
            && let Some((before, length)) = elapsed.zip(run.time)
        {
            let night = start.plus(before).overlap(length, from, to);
            if night.si() > 0.0 {
                let numbers = vec![Named::new("in_the_night", night)];
                add(&mut all, LimitKind::Night, numbers);
            }
        }
        elapsed = elapsed.zip(run.time).map(|(a, b)| a + b);
    }
    all.extend(plan.baths.iter().filter_map(|bath| place(job, bath)));
    for (n, piece) in plan.pieces.iter().enumerate() {
        all.extend(touching(n, &job.pieces[n], plan));
        all.extend(bore(piece, &likely.pieces[n]));
        etch(piece, &likely.pieces[n], plan, &mut all);
    }
    cover::limits(plan, likely, &mut all);
    vessel::limits(plan, likely, &mut all);
    facing::limits(job, plan, &mut all);
    warmth::limits(plan, &mut all);
    sessions::limits(job, plan, likely, &mut all);
    all.extend(crate::moments::left(plan, likely));
    let baths = plan.baths.iter().zip(&likely.baths);
    all.extend(baths.filter_map(|(bath, run)| runs_low(plan, bath, run)));
    all
}

fn of_piece(id: &str, kind: LimitKind, numbers: Vec<Named>, note: Option<NoteId>) -> Limit {
    Limit {
        kind,
        at: FieldPath::new("pieces").child(id),
        numbers,
        pieces: Vec::new(),
        note,
    }
}

fn bore(piece: &PlanPiece, run: &PieceRun) -> Option<Limit> {
    let after = run.bore_after?;
    (after.si() <= 0.0).then(|| of_piece(&piece.id, LimitKind::BoreCloses, Vec::new(), None))
}

/// A solution that needs a shop, where this is none.
fn place(job: &Job, bath: &PlanBath) -> Option<Limit> {
    let setting = match job.place {
        Place::Home => Setting::Home,
        Place::Class => Setting::Class,
        Place::Shop => Setting::Shop,
    };
    let why = match setting {
        Setting::Class => bath.solution.notes_on(Column::ClassUse).next(),
        Setting::Home | Setting::Shop => None,
    };
    (bath.solution.choosable(setting) == Choosable::NeedsShop).then(|| Limit {
        kind: LimitKind::NotForThisPlace,
        at: FieldPath::new("baths").child(&bath.id).child("solution"),
        pieces: Vec::new(),
        numbers: Vec::new(),
        note: Some(why.unwrap_or(bath.solution.home_note)),
    })
}

/// What the base is in the first solution it comes into. An unknown one is a Caution, not a Limit.
fn touching(n: usize, piece: &Piece, plan: &Plan) -> Option<Limit> {
    let mut vessels = plan.steps.iter().flat_map(|s| &s.vessels);
    let first = vessels
        .find(|v| v.pieces.contains(&n))
        .map_or(0, |v| v.bath);
    let solution = &plan.baths.get(first)?.solution;
    let touch = match piece.base.as_ref()? {
        Base::Metal(stock) => touch_metal(&stock.id, solution),
        Base::Nonconductor(_) => touch(chemistry::touch::Base::Coat, solution),
        Base::Unknown => None,
    }?;
    let kind = match touch.verdict {
        Verdict::Good => return None,
        Verdict::NeedsStrike => LimitKind::NeedsStrike,
        Verdict::Never => LimitKind::WrongBase,
        Verdict::SendOut => LimitKind::SendOut,
    };
    Some(of_piece(&piece.id, kind, Vec::new(), Some(touch.note)))
}

/// Of a sheet etched from one side at most half may go, a quarter from each of both; jewellery practice, no source.
const STOCK_SHARE: f64 = 0.5;

/// How deep a film lasts crisp at an etch factor of 1, in um: it breaks off at an undercut of 8 times its thickness when
/// brushed (common practice and derived).
fn crisp(resist: Resist) -> Thickness {
    Thickness::um(match resist {
        Resist::Toner => 100.0,
        Resist::Pen => 120.0,
        Resist::Varnish => 320.0,
        Resist::DryFilm => 400.0,
        Resist::Vinyl => 640.0,
    })
}

fn etch(piece: &PlanPiece, run: &PieceRun, plan: &Plan, all: &mut Vec<Limit>) {
    if !plan.etches() {
        return;
    }
    let mut add = |kind, numbers| all.push(of_piece(&piece.id, kind, numbers, None));
    if piece.art.lead == Some(Lead::Minus) {
        add(LimitKind::WrongLead, Vec::new());
    }
    let Some(depth) = run.depth else { return };
    if let Some(stock) = piece.stock {
        let share = if piece.art.both {
            STOCK_SHARE / 2.0
        } else {
            STOCK_SHARE
        };
        if depth.si() > stock.si() * share {
            add(
                LimitKind::TooDeepForStock,
                vec![Named::new("depth", depth), Named::new("stock", stock)],
            );
        }
    }
    if let Some(resist) = piece.art.resist {
        let lasts = crisp(resist) * groove::etch_factor(piece, &plan.inputs.likely());
        if depth.si() > lasts.si() {
            add(
                LimitKind::TooDeepForResist,
                vec![Named::new("depth", depth), Named::new("lasts", lasts)],
            );
        }
    }
    if let (Some(line), Some(land)) = (run.line_to_draw, piece.art.land)
        && (line - land).si() > land.si() * 4.0
    {
        add(
            LimitKind::LineVanishes,
            vec![Named::new("line", line), Named::new("land", land)],
        );
    }
}

/// A metal that is below its floor after this job.
fn runs_low(plan: &Plan, bath: &PlanBath, run: &BathRun) -> Option<Limit> {
    let volume: Volume = plan.inputs.likely().get(bath.volume?);
    bath.metals
        .iter()
        .zip(&run.gained)
        .find_map(|(hold, gained)| {
            let after = hold.now?.si() + (*gained)?.si() / volume.si();
            let floor = hold.floor?;
            (after < floor.si()).then(|| Limit {
                kind: LimitKind::BathRunsLow,
                at: FieldPath::new("baths")
                    .child(&bath.id)
                    .child("holds")
                    .child(&hold.metal),
                numbers: vec![
                    Named::new(
                        "after",
                        Concentration::from_si(if after > 0.0 { after } else { 0.0 }),
                    ),
                    Named::new("floor", floor),
                ],
                pieces: Vec::new(),
                note: None,
            })
        })
}

fn supply(
    plan: &Plan,
    step: &PlanStep,
    run: &StepRun,
    add: &mut impl FnMut(LimitKind, Vec<Named>),
) {
    let (Some(bench), Some(wanted), Some(set)) = (&plan.bench, run.wanted, run.set) else {
        return;
    };
    // Half a display step is rounding, not a limit.
    let slack = 1.0 + 1e-9;
    // What the supply allows to be advised is not yet what would be right.
    let right = match (step.beyond_supply, step.drive) {
        (Some(all), Some(PlanDrive::Density(less))) => wanted * (all.si() / less.si()),
        _ => wanted,
    };
    if let Some(highest) = bench.highest
        && right.si() > highest.si() * slack
    {
        add(
            LimitKind::SupplyTooSmall,
            vec![Named::new("wanted", right), Named::new("highest", highest)],
        );
    }
    if let Some(lowest) = bench.lowest
        && wanted.si() * slack < lowest.si()
    {
        add(
            LimitKind::SupplyTooLarge,
            vec![Named::new("wanted", wanted), Named::new("lowest", lowest)],
        );
    }
    if let Some(step) = bench.display_step {
        let share = step / wanted;
        if share > COARSE {
            add(
                LimitKind::DisplayTooCoarse,
                vec![
                    Named::new("step", step),
                    Named::new("set", set),
                    Named::new("share", Fraction::from_si(share)),
                    Named::new("at_least", set - step / 2.0),
                    Named::new("at_most", set + step / 2.0),
                    Named::new("meter_takes", METER_TAKES),
                ],
            );
        }
    }
}

/// Densities outside what the solution takes, and edges that burn, at a step's start: each with the pieces it concerns.
fn densities(plan: &Plan, likely: &Run, n: usize, at: &FieldPath, all: &mut Vec<Limit>) {
    let (step, run) = (&plan.steps[n], &likely.steps[n]);
    let (Some(bath), Some(i)) = (plan.bath(step), run.density) else {
        return;
    };
    let inputs = plan.inputs.likely();
    let first = plan.first_stage(n);
    let of_stage = first.unwrap_or_default() * plan.pieces.len();
    let own = |p: usize| likely.shared.get(of_stage + p)?.density;
    let hung: &[Vec<usize>] = first.map_or(&[], |k| &plan.stages[k].hung);
    let each = || hung.iter().flatten().filter_map(|p| Some((*p, own(*p)?)));
    // Alike where contacts do not count; else each its own.
    let (mut least, mut most) = (i, i);
    for (_, d) in each() {
        least = if d < least { d } else { least };
        most = if d > most { d } else { most };
    }
    let mut add = |kind, pieces, numbers| {
        all.push(Limit {
            kind,
            at: at.clone(),
            pieces,
            numbers,
            note: None,
        });
    };
    if let Some((lowest, highest)) = window(bath, step.stirring) {
        let numbers = |density: CurrentDensity| {
            vec![
                Named::new("density", density),
                Named::new("lowest", lowest),
                Named::new("highest", highest),
            ]
        };
        let (fast, slow) = if bath.etches() {
            (LimitKind::EtchTooFast, LimitKind::EtchTooSlow)
        } else {
            (LimitKind::AboveWindow, LimitKind::BelowWindow)
        };
        if most > highest {
            let which = each().filter(|(_, d)| *d > highest).map(|(p, _)| p);
            add(fast, named(plan, which), numbers(most));
        }
        if least < lowest {
            let which = each().filter(|(_, d)| *d < lowest).map(|(p, _)| p);
            add(slow, named(plan, which), numbers(least));
        }
    }
    if let (Some(edge), Some(bound), Some(limit)) =
        (run.densest, tree_density(bath, step), limiting(bath, step))
        && edge.si() > bound.si()
    {
        let mut which = Vec::new();
        for (vessel, hung) in step.vessels.iter().zip(hung) {
            which.extend(hung.iter().copied().filter(|p| {
                let edge =
                    own(*p).and_then(|i| Some(i * edge_of(plan, vessel, *p, likely, &inputs, i)?));
                edge.is_some_and(|e| e > bound)
            }));
        }
        let numbers = vec![
            Named::new("densest", edge),
            Named::new("bound", bound),
            Named::new::<CurrentDensity>("limiting", limit),
        ];
        add(
            LimitKind::EdgesBurn,
            named(plan, which.into_iter()),
            numbers,
        );
    }
}

/// The pieces a limit concerns, where the job has several.
pub(crate) fn named(plan: &Plan, pieces: impl Iterator<Item = usize>) -> Vec<String> {
    let several = plan.pieces.len() > 1;
    pieces
        .filter(|_| several)
        .map(|p| plan.pieces[p].id.clone())
        .collect()
}

fn volts(plan: &Plan, step: &PlanStep, run: &StepRun, add: &mut impl FnMut(LimitKind, Vec<Named>)) {
    let Some(expected) = run.volts else { return };
    // Where the supply holds the voltage, what it has is what it holds.
    let held = plan.volts.as_ref().and_then(|v| v.highest);
    if let Some(ceiling) = meter::ceiling(plan, step).or(held)
        && expected.si() > ceiling.si()
    {
        let mut numbers = vec![
            Named::new("expected", expected),
            Named::new("ceiling", ceiling),
        ];
        // At most this flows.
        numbers.extend(run.bites.map(|i| Named::new("bites", i)));
        add(LimitKind::VoltsTooFew, numbers);
    }
}

/// The hazards, each at its step. They stand whether or not the numbers do.
pub fn cautions(job: &Job, plan: &Plan, likely: &Run) -> Vec<Caution> {
    let mut all = Vec::new();
    let mut add = |kind, at: FieldPath, when| all.push(Caution { kind, at, when });
    for piece in &job.pieces {
        let at = FieldPath::new("pieces").child(&piece.id);
        match &piece.base {
            Some(Base::Nonconductor(_)) => add(CautionKind::CoatFumes, at, When::Before),
            Some(Base::Unknown) => add(CautionKind::BaseUnknown, at, When::Before),
            Some(Base::Metal(_)) | None => {}
        }
    }
    let (Some(first), Some(last)) = (plan.steps.first(), plan.steps.last()) else {
        return all;
    };
    let step = |s: &PlanStep| FieldPath::new("steps").child(&s.id);
    let mut seen: Vec<(CautionKind, FieldPath)> = Vec::new();
    for (n, bath) in plan.baths.iter().enumerate() {
        // A bath's hazards stand at the steps that use it; where a Problem hides which, at the job's own first and last.
        let uses = |s: &&PlanStep| s.vessels.iter().any(|v| v.bath == n);
        let (begins, ends) = (
            plan.steps.iter().find(uses).unwrap_or(first),
            plan.steps.iter().rfind(uses).unwrap_or(last),
        );
        for (kind, when) in hazards::of(bath, job) {
            let at = step(if when == When::After { ends } else { begins });
            // Two baths of one family at one step share a hazard.
            if !seen.contains(&(kind, at.clone())) {
                seen.push((kind, at.clone()));
                add(kind, at, when);
            }
        }
    }
    for session in sessions::sessions(job, plan, likely) {
        let (Some(way), Some(id)) = (session.reentry, session.step) else {
            continue;
        };
        let at = FieldPath::new("steps").child(&id);
        for kind in way.kind.hazards() {
            if !seen.contains(&(*kind, at.clone())) {
                seen.push((*kind, at.clone()));
                add(*kind, at.clone(), When::Before);
            }
        }
    }
    for (n, bath) in plan.baths.iter().enumerate() {
        let uses = |s: &&PlanStep| s.vessels.iter().any(|v| v.bath == n);
        let heated = plan.steps.iter().find(uses);
        let Some(at) = heated.filter(|_| bath.heater.is_some()).map(step) else {
            continue;
        };
        if !seen.contains(&(CautionKind::HeaterInBath, at.clone())) {
            seen.push((CautionKind::HeaterInBath, at.clone()));
            add(CautionKind::HeaterInBath, at, When::Before);
        }
    }
    add(CautionKind::SupplyAndLiquid, step(first), When::Before);
    if job.place == Place::Class {
        add(CautionKind::ClassAttended, step(first), When::During);
    } else if likely.time.is_some_and(|t| t.si() > LONG.si()) {
        add(CautionKind::Unattended, step(last), When::During);
    }
    all
}
