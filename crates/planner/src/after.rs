//! After an accident: what is left on the work, how it enters again, and the job that remains.

use crate::answer::{Answer, Caution, CautionKind, When};
use crate::answering::{answer_with, prepare};
use crate::clock::Local;
use crate::fields;
use crate::job::tree::{Node, Problems};
use crate::job::{self, Drive, Job, Piece, Until};
use crate::moved::Moved;
use crate::path::FieldPath;
use crate::plan::{Plan, PlanDrive, PlanUntil};
use crate::problem::{Problem, ProblemKind};
use crate::ranges::{OfLayer, OfPiece, Ranges};
use crate::reentry::{self, Gap, Reentry};
use crate::run::{Run, run, si};
use chemistry::Catalogue;
use chemistry::solution::Family;
use quantity::{Current, Mass, Quantity, Range, Thickness, Time, WorkArea};
use serde::Serialize;
use serde_json::Value;

/// What happened in a job, and when.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct After {
    /// Format of the text.
    pub format: u32,
    /// The job as it was planned.
    pub job: Job,
    /// The step it happened in.
    pub step: String,
    /// So long after the step's start.
    #[serde(rename = "after_s")]
    pub at: Time,
    /// What happened.
    pub what: Accident,
}

/// What can happen to a run. In the text of a question it stands beside the job: `"power_cut": {"gap_s": 900}`.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Accident {
    /// The current was away, the work in the bath.
    PowerCut {
        /// How long; not known counts as a night.
        #[serde(rename = "gap_s")]
        gap: Option<Time>,
    },
    /// The leads were the wrong way round.
    Reversed {
        /// How long.
        #[serde(rename = "for_s")]
        lasted: Time,
        /// What flowed; else what was set.
        #[serde(rename = "current_A")]
        current: Option<Current>,
    },
    /// Nodules or burnt edges were filed off.
    Filed {
        /// From which piece; else the step's first.
        piece: Option<String>,
        /// How much.
        #[serde(rename = "mass_kg")]
        mass: Option<Mass>,
        /// Or how much of it is bare now.
        #[serde(rename = "area_m2")]
        area: Option<WorkArea>,
    },
}

/// What is left after an accident.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Left {
    /// How the work enters again.
    pub reentry: Reentry,
    /// Piece by piece, of those that hung.
    pub pieces: Vec<LeftOn>,
}

/// What is left on one piece: mean of the layer being laid; in an etch the depth of a flat floor.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct LeftOn {
    /// The piece.
    pub id: String,
    /// What was there when it happened.
    pub had: Range<Thickness>,
    /// What went.
    pub lost: Range<Thickness>,
    /// What is there now.
    pub left: Range<Thickness>,
    /// So thin over a coat that it may be gone in places: measure its ohms first.
    #[serde(skip_serializing_if = "core::ops::Not::not")]
    pub measure_ohms: bool,
}

/// A layer thinner than this may be gone in places. Common practice.
const THIN: Thickness = Thickness::um(1.0);

/// Reads the question.
pub fn read(value: &Value, problems: &mut Problems) -> Option<After> {
    let mut node = Node::new(value, FieldPath::root(), problems)?;
    if !job::format_is_known(&mut node, problems) {
        return None;
    }
    let step = node.needed_text("step", problems);
    let at = node.needed(&fields::AFTER, problems);
    if !node.has("job") {
        problems.push(Problem::at(FieldPath::new("job"), ProblemKind::Missing));
    }
    let job = node.get("job").and_then(|inner| {
        let (job, more) = job::read(inner);
        problems.extend(more);
        job
    });
    let what = accident(&mut node, problems);
    node.finish(problems);
    Some(After {
        format: job::FORMAT,
        job: job?,
        step: step?,
        at: at?,
        what: what?,
    })
}

fn accident(node: &mut Node<'_>, problems: &mut Problems) -> Option<Accident> {
    let (key, inner) = node.choice(&["power_cut", "reversed", "filed"], problems)?;
    let mut n = Node::new(inner, FieldPath::new(key), problems)?;
    let what = match key {
        "power_cut" => Some(Accident::PowerCut {
            gap: n.number(&fields::GAP, problems),
        }),
        "reversed" => {
            let current = n.number(&fields::CURRENT, problems);
            let lasted = n.needed(&fields::REVERSED, problems);
            lasted.map(|lasted| Accident::Reversed { lasted, current })
        }
        _ => {
            let piece = n.text("piece", problems);
            let area = n.number(&fields::FILED_BARE, problems);
            let mass = match area {
                Some(_) => n.number(&fields::FILED, problems),
                None => n.needed(&fields::FILED, problems),
            };
            (mass.is_some() || area.is_some()).then_some(Accident::Filed { piece, mass, area })
        }
    };
    n.finish(problems);
    what
}

/// What is left, and the answer to the job that remains. Areas that grow are counted from bare again.
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
        let body = &self.had.bodies[p];
        let place = step.vessels.iter().find(|v| v.pieces.contains(&p));
        let Some((place, moved)) = place.and_then(|v| Some((v.bath, self.plan.moved(p, v.bath)?)))
        else {
            return [f64::NAN; 3];
        };
        let bath = &self.plan.baths[place];
        match &self.asked.what {
            Accident::PowerCut { gap } => reentry::dissolved(bath, *gap).map(Quantity::si),
            Accident::Reversed { lasted, current } => {
                // As an anode the layer goes by its own charge; noble metals and passive nickel may hold.
                let flows = current.map_or(si(self.had.steps[n].real), Quantity::si);
                let share = self.had.pieces[p].share.map_or(f64::NAN, Quantity::si);
                let charge = flows * share * lasted.si() / body.both.area(0.0);
                let gone = Moved::layer_per_charge(moved) * charge;
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
                    (Some(m), _) => m.si() / (moved.density.si() * body.own.area(0.0)),
                    (None, Some(a)) => had.si() * a.si() / body.own.area(0.0),
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
        let until = match plan.steps[m].until {
            Some(PlanUntil::Mean(t)) => Until::Mean(Thickness::from_si(over(t.si() - kept))),
            Some(PlanUntil::Thinnest(t)) => {
                let thin = self.had.pieces.iter().filter_map(|p| p.thinnest);
                let thin = thin.reduce(|a, b| if b < a { b } else { a });
                Until::Thinnest(Thickness::from_si(over(t.si() - si(thin) * share)))
            }
            Some(PlanUntil::Mass(t)) if !etches => {
                let each = self.plan.pieces.iter().zip(&self.had.pieces);
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
