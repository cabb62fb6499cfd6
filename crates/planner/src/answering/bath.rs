//! What a bath and its counter electrode gain and lose.

use super::Builder;
use super::absent::known;
use crate::answer::{BathAnswer, MetalAnswer};
use crate::path::FieldPath;
use crate::plan::Plan;
use crate::ranges::Ranges;
use crate::run::Run;
use crate::warmth;
use quantity::{
    Concentration, Current, CurrentDensity, Mass, Quantity, Range, Ratio, Volume, WorkArea,
};

fn larger<Q: Quantity>(most: &mut Option<Q>, x: Option<Q>) {
    if let Some(x) = x
        && most.is_none_or(|m| x.si() > m.si())
    {
        *most = Some(x);
    }
}

impl Builder<'_> {
    pub(super) fn baths(&self, ranges: &Ranges) -> Vec<BathAnswer> {
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

    pub(super) fn metal(&self, m: usize, n: usize, at: &FieldPath, ranges: &Ranges) -> MetalAnswer {
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
