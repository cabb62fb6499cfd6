//! Job in, Answer out.

mod absent;
mod bath;
mod piece;
mod step;

pub(crate) use bath::heaviest;

use crate::advise::advise;
use crate::answer::{Answer, Moment, Ruling};
use crate::checks;
use crate::class;
use crate::inputs::Inputs;
use crate::job::{FORMAT, Job};
use crate::moments;
use crate::plan::Plan;
use crate::problem::Problem;
use crate::ranges::Ranges;
use crate::resolve::resolve;
use crate::run::{Run, run};
use crate::sessions;
use crate::value::{Because, Maybe};
use crate::working;
use chemistry::Catalogue;
use quantity::{Mass, Money, Quantity, Time};

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

struct Builder<'a> {
    job: &'a Job,
    plan: &'a Plan,
    inputs: &'a Inputs,
    likely: &'a Run,
}

impl Builder<'_> {
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
