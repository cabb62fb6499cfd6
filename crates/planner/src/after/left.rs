//! What an accident leaves, and the job that remains.

use super::{Accident, After, Left, LeftOn};
use crate::answer::{Answer, Caution, CautionKind, Entry, When};
use crate::answering::{answer_with, layer_metals, prepare};
use crate::body::Growing;
use crate::clock::Local;
use crate::fields;
use crate::job::{self, Drive, Job, Piece, Until};
use crate::moved::Moved;
use crate::path::FieldPath;
use crate::plan::{Plan, PlanDrive, PlanUntil};
use crate::problem::{Problem, ProblemKind};
use crate::ranges::{OfLayer, OfPiece, Ranges};
use crate::reentry::{self, Gap};
use crate::run::{Run, run, si};
use crate::sessions::Doing;
use chemistry::Catalogue;
use chemistry::solution::Family;
use quantity::{Mass, Quantity, Range, Thickness, Time};

/// A layer thinner than this may be gone in places. Common practice.
const THIN: Thickness = Thickness::um(1.0);

/// What is left, and the answer to the job that remains. Its base is the metal that is on it by now, and areas that grow are
/// counted from there.
pub fn answer(catalogue: &Catalogue, asked: &After, mut problems: Vec<Problem>) -> Answer {
    let mut job = asked.job.clone();
    let found = job.steps.iter().position(|s| s.id == asked.step);
    let Some(n) = found else {
        let problem = Problem::at(FieldPath::new("step"), ProblemKind::UnknownId);
        let ids = job.steps.iter().map(|s| s.id.as_str());
        problems.push(problem.reading(asked.step.as_str()).one_of(ids));
        return answer_with(catalogue, &asked.job, problems);
    };
    // As it was to be: with what is wrong in it said by the job that remains.
    let (plan, _) = prepare(catalogue, &job, &mut Vec::new());
    let inputs = plan.inputs.likely();
    let mut whole = Run::for_plan(&plan);
    run(&plan, &inputs, None, &mut whole);
    for (step, planned) in job.steps.iter_mut().zip(&plan.steps) {
        if let Some(PlanDrive::Density(i)) = planned.drive {
            step.drive = Some(Drive::Density(i));
        }
    }
    if let Some(problem) = refused(asked, &plan, &whole, n) {
        problems.push(problem);
        return answer_with(catalogue, &asked.job, problems);
    }
    let (until, _) = prepare(catalogue, &before(&job, n, asked.at), &mut Vec::new());
    let mut had = Run::for_plan(&until);
    run(&until, &until.inputs.likely(), None, &mut had);
    let scene = Scene {
        asked,
        plan: &until,
        had: &had,
        ranges: Ranges::of(&until, &had),
    };
    let left = scene.left(n);
    let rest = scene.rest(&job, &plan, &whole, n, left.as_ref());
    let mut answer = answer_with(catalogue, &rest, problems);
    let filed = matches!(asked.what, Accident::Filed { .. });
    let dust: &[CautionKind] = if filed {
        &[CautionKind::MetalDust]
    } else {
        &[]
    };
    let dips = left.as_ref().map_or(&[][..], |l| l.reentry.kind.hazards());
    let at = FieldPath::new("steps").child(&asked.step);
    for kind in dust.iter().chain(dips) {
        let said = |c: &Caution| c.kind == *kind && c.at == at;
        if !answer.cautions.iter().any(said) {
            answer.cautions.push(Caution {
                kind: *kind,
                at: at.clone(),
                when: When::Before,
            });
        }
    }
    answer.sessions.retain(|s| s.doing == Doing::Session);
    // What is left is part of what a session ends with, as long as the same layer is being laid.
    for session in &mut answer.sessions {
        let step = rest
            .steps
            .iter()
            .position(|s| session.step.as_ref() == Some(&s.id));
        let same = step.filter(|m| plan.steps[n + m].layer == plan.steps[n].layer);
        let first = same.and_then(|m| rest.steps[m].places.first()?.pieces.first());
        let kept = left
            .iter()
            .flat_map(|l| &l.pieces)
            .find(|p| Some(&p.id) == first);
        session.mean_after = session.mean_after.zip(same).map(|(mean, _)| match kept {
            Some(p) => mean + p.left.likely,
            None => mean,
        });
    }
    // What is begun again after dips is begun live.
    if let Some(step) = answer.steps.first_mut().filter(|_| !dips.is_empty()) {
        step.entry = Some(Entry::Live);
    }
    answer.after = left;
    answer
}

/// What cannot have happened: after the step's end; the wrong way round or filed in an etch; to a piece that did not hang.
fn refused(asked: &After, plan: &Plan, whole: &Run, n: usize) -> Option<Problem> {
    let step = plan.steps.get(n)?;
    if let Some(time) = whole.steps[n].time.filter(|t| asked.at.si() > t.si()) {
        let named = crate::value::Named::new::<Time>;
        let accepted = crate::problem::Accepted::Between {
            least: named("least", fields::AFTER.least),
            most: named("most", time),
        };
        let problem = Problem::at(FieldPath::new("after"), ProblemKind::TooLarge);
        return Some(
            problem
                .reading(asked.at.si().to_string())
                .accepting(accepted),
        );
    }
    let etches = plan.bath(step).is_some_and(|b| b.etches());
    let at = match &asked.what {
        Accident::Reversed { .. } if etches => "reversed",
        Accident::Filed { .. } if etches => "filed",
        Accident::Filed {
            piece: Some(id), ..
        } => {
            let hung = step.vessels.iter().flat_map(|v| &v.pieces);
            let ids: Vec<&str> = hung.map(|p| plan.pieces[*p].id.as_str()).collect();
            if !ids.contains(&id.as_str()) {
                let problem = Problem::at(FieldPath::new("filed/piece"), ProblemKind::UnknownId);
                return Some(problem.reading(id.as_str()).one_of(ids));
            }
            return None;
        }
        _ => return None,
    };
    Some(Problem::at(FieldPath::new(at), ProblemKind::Contradiction))
}

/// When a piece joins or leaves, by the place of the step and the seconds after its start.
fn moment(job: &Job, moment: Option<&job::Moment>) -> Option<(usize, f64)> {
    let moment = moment?;
    let n = job.steps.iter().position(|s| s.id == moment.step)?;
    Some((n, moment.after.si()))
}

fn takes_out(job: &mut Job, gone: impl Fn(&Piece) -> bool) {
    let ids: Vec<String> = job
        .pieces
        .iter()
        .filter(|p| gone(p))
        .map(|p| p.id.clone())
        .collect();
    for place in job.steps.iter_mut().flat_map(|s| &mut s.places) {
        place.pieces.retain(|p| !ids.contains(p));
    }
    job.pieces.retain(|p| !ids.contains(&p.id));
}

/// The job up to the moment it happened.
fn before(job: &Job, n: usize, at: Time) -> Job {
    let now = (n, at.si());
    let mut had = job.clone();
    had.steps.truncate(n + 1);
    had.steps[n].until = Some(Until::Time(at));
    takes_out(&mut had, |p| {
        moment(job, p.joins.as_ref()).is_some_and(|m| m > now)
    });
    for piece in &mut had.pieces {
        if moment(job, piece.leaves.as_ref()).is_some_and(|m| m > now) {
            piece.leaves = None;
        }
    }
    had
}

struct Scene<'a> {
    asked: &'a After,
    plan: &'a Plan,
    had: &'a Run,
    ranges: Ranges,
}

impl Scene<'_> {
    fn left(&self, n: usize) -> Option<Left> {
        let step = self.plan.steps.get(n)?;
        let bath = self.plan.bath(step)?;
        let gap = match &self.asked.what {
            Accident::PowerCut { gap } => Gap::InBath(*gap),
            Accident::Reversed { .. } | Accident::Filed { .. } => Gap::Bared,
        };
        let run = self.had.steps[n];
        let hung = self
            .plan
            .stages
            .iter()
            .rfind(|s| s.step == n)?
            .hung
            .iter()
            .flatten();
        let mut pieces = Vec::new();
        for p in hung {
            let piece = &self.plan.pieces[*p];
            let had: Range<Thickness> = match self.plan.layers {
                1 => self.ranges.piece(*p, OfPiece::Mean),
                all => self.ranges.layer(*p, all - 1, OfLayer::Mean),
            }?;
            // No more goes than there is.
            let most = |t: f64, of: Thickness| if t < of.si() { t } else { of.si() };
            let [likely, low, high] = self.lost(n, *p, had.likely);
            let range = |likely: f64, low: f64, high: f64| Range {
                likely: Thickness::from_si(likely),
                low: Thickness::from_si(low),
                high: Thickness::from_si(high),
            };
            let (likely, low) = (most(likely, had.likely), most(low, had.likely));
            let high = most(high, had.high);
            let floor = |t: f64| if t > 0.0 { t } else { 0.0 };
            let left = range(
                had.likely.si() - likely,
                floor(had.low.si() - high),
                had.high.si() - low,
            );
            pieces.push(LeftOn {
                id: piece.id.clone(),
                had,
                lost: range(likely, low, high),
                measure_ohms: piece.coat.is_some()
                    && likely > 0.0
                    && left.likely.si() < THIN.si()
                    && !bath.etches(),
                left,
            });
        }
        Some(Left {
            reentry: reentry::reentry(bath, gap, run.set, run.density),
            pieces,
        })
    }

    /// Mean thickness that went from a piece: likely, least, most.
    fn lost(&self, n: usize, p: usize, had: Thickness) -> [f64; 3] {
        let step = &self.plan.steps[n];
        let body = &self.had.now[p].body;
        let place = step.vessels.iter().find(|v| v.pieces.contains(&p));
        let Some((place, moved)) = place.and_then(|v| Some((v.bath, self.plan.moved(p, v.bath)?)))
        else {
            return [f64::NAN; 3];
        };
        let bath = &self.plan.baths[place];
        // The layer that so much of the metal makes, taken off from where the area has grown to.
        let on = self.had.now[p].real.all;
        let taken = |body: &Growing, volume: f64| {
            let x = -body.from(on).layer(-volume);
            if x <= had.si() { x } else { had.si() }
        };
        match &self.asked.what {
            Accident::PowerCut { gap } => reentry::dissolved(bath, *gap).map(Quantity::si),
            Accident::Reversed { lasted, current } => {
                // As an anode the layer goes by its own charge; noble metals and passive nickel may hold.
                let flows = current.map_or(si(self.had.steps[n].real), Quantity::si);
                let share = self.had.pieces[p].share.map_or(f64::NAN, Quantity::si);
                let charge = flows * share * lasted.si();
                let gone = taken(&body.both, Moved::layer_per_charge(moved) * charge);
                use Family as F;
                let surely = matches!(
                    bath.solution.family,
                    F::AcidCopper | F::MildCopper | F::Silver
                );
                [gone, if surely { gone } else { 0.0 }, gone]
            }
            Accident::Filed { piece, mass, area } => {
                let own = &self.plan.pieces[p].id;
                let first = step.vessels.iter().flat_map(|v| &v.pieces).next();
                let here = match piece {
                    Some(id) => id == own,
                    None => first == Some(&p),
                };
                let gone = match (mass, area) {
                    _ if !here => 0.0,
                    (Some(m), _) => taken(&body.own, m.si() / moved.density.si()),
                    (None, Some(a)) => had.si() * a.si() / body.own.area(on),
                    (None, None) => 0.0,
                };
                [gone; 3]
            }
        }
    }

    /// The job that remains: the steps from `n` on, what they aim at less what is left.
    fn rest(&self, job: &Job, plan: &Plan, whole: &Run, n: usize, left: Option<&Left>) -> Job {
        let now = (n, self.asked.at.si());
        let mut rest = job.clone();
        takes_out(&mut rest, |p| {
            moment(job, p.leaves.as_ref()).is_some_and(|m| m <= now)
        });
        for piece in &mut rest.pieces {
            if moment(job, piece.joins.as_ref()).is_some_and(|m| m <= now) {
                piece.joins = None;
            }
            let here = [piece.joins.as_mut(), piece.leaves.as_mut()];
            for m in here
                .into_iter()
                .flatten()
                .filter(|m| m.step == self.asked.step)
            {
                m.after = m.after - self.asked.at;
            }
        }
        rest.steps.drain(..n);
        // Sealing and painting lie behind it, and so does bare coat once it is covered.
        if let Some(attend) = &mut rest.attend {
            attend.cure = Some(Time::seconds(0.0));
            attend.dry = attend.cure;
        }
        let covers = rest
            .steps
            .iter()
            .any(|s| s.purpose == job::Purpose::Cover || s.until == Some(Until::Covered));
        let metals = layer_metals(self.plan);
        let each = self.plan.pieces.iter().enumerate();
        for (p, planned) in each.filter(|_| !self.plan.etches()) {
            let Some(piece) = rest.pieces.iter_mut().find(|r| r.id == planned.id) else {
                continue;
            };
            let own = left.and_then(|l| l.pieces.iter().find(|l| l.id == planned.id));
            let gone = own.map_or(0.0, |l| l.lost.likely.si());
            let on = self.had.now[p].real.all - gone;
            let coat = matches!(piece.base, Some(job::Base::Nonconductor(_)));
            let lies = if coat {
                // Under a thin first layer the coat may show again.
                !covers && on >= THIN.si()
            } else {
                !self.bared(&planned.id)
            };
            if let Some(metal) = self.topmost(p, own, &metals).filter(|_| lies) {
                piece.base = Some(job::Base::Metal(job::Stock {
                    id: metal.to_owned(),
                    thickness: None,
                }));
            }
            let grown = planned.grown.si() + if on > 0.0 { on } else { 0.0 };
            piece.grown = Some(Thickness::from_si(grown)).filter(|t| t.si() > 0.0);
        }
        for (m, step) in rest.steps.iter_mut().enumerate() {
            if plan
                .steps
                .get(n + m)
                .is_some_and(|s| s.layer == plan.steps[n].layer)
            {
                self.aim(step, plan, whole, (n, n + m), left);
            }
        }
        let mut elapsed: f64 = whole.steps[..n].iter().map(|s| si(s.time)).sum();
        elapsed += self.asked.at.si();
        if let Accident::PowerCut { gap } = &self.asked.what {
            elapsed += gap.unwrap_or(reentry::NIGHT).si();
        }
        rest.start = rest.start.take().and_then(|start| {
            let local = Local::parse(&start.local).filter(|_| elapsed.is_finite())?;
            Some(job::Start {
                local: local.plus(Time::seconds(elapsed)).text(),
                ..start
            })
        });
        rest
    }

    /// Whether a piece was filed down to its base somewhere.
    fn bared(&self, id: &str) -> bool {
        match &self.asked.what {
            Accident::Filed { piece, area, .. } => {
                let step = self.plan.steps.last();
                let mut hung = step.into_iter().flat_map(|s| &s.vessels);
                let first = hung.find_map(|v| v.pieces.first());
                let first = first.map(|p| self.plan.pieces[*p].id.as_str());
                area.is_some() && piece.as_deref().or(first) == Some(id)
            }
            Accident::PowerCut { .. } | Accident::Reversed { .. } => false,
        }
    }

    /// The metal that lies on top of a piece all over: of the layer being laid, if some of it surely is left, else of the one
    /// under it.
    fn topmost<'m>(&self, p: usize, own: Option<&LeftOn>, metals: &[&'m str]) -> Option<&'m str> {
        let layers = self.plan.layers;
        let last = layers - 1;
        (0..layers).rev().find_map(|l| {
            let there = match own.filter(|_| l == last) {
                Some(left) => left.left.low.si(),
                None => si(self.had.layers[p * layers + l].mean),
            };
            metals.get(l).copied().filter(|_| there > 0.0)
        })
    }

    /// What a step of the remaining job aims at; `n` are the step it happened in and this one.
    fn aim(
        &self,
        step: &mut job::Step,
        plan: &Plan,
        whole: &Run,
        (n, m): (usize, usize),
        left: Option<&Left>,
    ) {
        let least = left.and_then(|l| {
            l.pieces
                .iter()
                .reduce(|a, b| if b.left.likely < a.left.likely { b } else { a })
        });
        let Some(least) = least else { return };
        let kept = least.left.likely.si();
        let share = if least.had.likely.si() > 0.0 {
            kept / least.had.likely.si()
        } else {
            0.0
        };
        let over = |t: f64| if t > 0.0 { t } else { 0.0 };
        let etches = self.plan.etches();
        // Of the layer being laid alone.
        let layers = self.plan.layers;
        let here = || self.had.layers.iter().skip(layers - 1).step_by(layers);
        let until = match plan.steps[m].until {
            Some(PlanUntil::Mean(t)) => Until::Mean(Thickness::from_si(over(t.si() - kept))),
            Some(PlanUntil::Thinnest(t)) => {
                let thin = here().filter_map(|l| l.thinnest);
                let thin = thin.reduce(|a, b| if b < a { b } else { a });
                Until::Thinnest(Thickness::from_si(over(t.si() - si(thin) * share)))
            }
            Some(PlanUntil::Mass(t)) if !etches => {
                let each = self.plan.pieces.iter().zip(here());
                let had: f64 = each.map(|(p, r)| f64::from(p.count) * si(r.mass)).sum();
                Until::Mass(Mass::from_si(over(t.si() - had * share)))
            }
            Some(PlanUntil::Clock(_)) | None => return,
            // By its time, and what makes good what went.
            Some(_) if m == n => {
                let time = si(whole.steps[n].time) - self.asked.at.si();
                let again = least.lost.likely.si() / si(whole.steps[n].growth);
                let time = over(time) + if again > 0.0 { again } else { 0.0 };
                Until::Time(Time::seconds(time))
            }
            Some(_) => return,
        };
        step.until = Some(until);
    }
}
