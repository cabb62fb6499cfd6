//! The density to use when nobody gives one.

use crate::answer::Ruling;
use crate::cover;
use crate::even::{reach, spread_on};
use crate::inputs::Inputs;
use crate::plan::{Plan, PlanBath, PlanDrive, PlanStep, PlanVessel};
use crate::run::{Run, some};
use chemistry::element::element_of;
use chemistry::limiting::{TREE_SHARE, diffusion_layer, diffusivity_at, limiting_density};
use chemistry::{Datum, Stirring};
use quantity::{Concentration, CurrentDensity, Diffusivity, Quantity};

/// The lowest and highest density a solution takes with this stirring.
pub fn window(bath: &PlanBath, stirring: Stirring) -> Option<(CurrentDensity, CurrentDensity)> {
    let Datum::Band(still) = bath.solution.window_still else {
        return None;
    };
    let highest = match (stirring, bath.solution.highest_stirred) {
        (Stirring::Still, _) | (_, Datum::Unknown) => still.value.max,
        (_, Datum::Value(v)) => v.value,
        (Stirring::Gentle, Datum::Band(b)) => b.value.min,
        (Stirring::Vigorous, Datum::Band(b)) => b.value.max,
    };
    Some((still.value.min, highest))
}

/// The density above which copper grows trees and powder: a share of the limiting density. None where metal dissolves,
/// and for solutions whose limiting density is not known.
pub fn tree_density(bath: &PlanBath, step: &PlanStep) -> Option<CurrentDensity> {
    if bath.etches() {
        return None;
    }
    limiting(bath, step).map(|i| i * TREE_SHARE.value)
}

/// How fast the metal's ion spreads: the catalogue's figure, at the step's temperature where that is given.
pub fn diffusivity(bath: &PlanBath, step: &PlanStep) -> Option<Diffusivity> {
    let typical = bath.solution.diffusivity.typical()?;
    Some(
        step.temperature
            .map_or(typical, |t| diffusivity_at(typical, t)),
    )
}

/// The metal in the bath: what the job says it holds now, else the catalogue's figure.
pub fn metal_content(bath: &PlanBath) -> Option<Concentration> {
    let said = bath
        .metals
        .iter()
        .find(|m| m.metal == bath.solution.metal)
        .and_then(|m| m.now);
    said.or(bath.solution.metal_content.typical())
}

/// The limiting density with this step's stirring and temperature.
pub fn limiting(bath: &PlanBath, step: &PlanStep) -> Option<CurrentDensity> {
    let solution = &bath.solution;
    Some(limiting_density(
        solution.valence,
        diffusivity(bath, step)?,
        metal_content(bath)?,
        element_of(solution.metal)?.molar_mass.value,
        diffusion_layer(step.stirring).value,
    ))
}

/// Fills in every advised density, from the likely values, and says what ruled it: the solution's typical density for
/// this stirring, at most what the edges of every piece bear and what the supply gives.
pub fn advise(plan: &mut Plan) -> Vec<Option<Ruling>> {
    let inputs = plan.inputs.likely();
    let mut rulings = vec![None; plan.steps.len()];
    // From the back: what covers follows what grows after it.
    for n in (0..plan.steps.len()).rev() {
        if plan.steps[n].drive != Some(PlanDrive::Advised) {
            continue;
        }
        if let Some((i, ruling)) = advised(plan, n, &inputs) {
            let (i, ruling) = match within_supply(plan, n, &inputs, i) {
                Some(less) => {
                    plan.steps[n].beyond_supply = Some(i);
                    (less, Ruling::Supply)
                }
                None => (i, ruling),
            };
            plan.steps[n].drive = Some(PlanDrive::Density(i));
            rulings[n] = Some(ruling);
        }
    }
    rulings
}

fn advised(plan: &Plan, n: usize, inputs: &Inputs) -> Option<(CurrentDensity, Ruling)> {
    let step = &plan.steps[n];
    let bath = plan.bath(step)?;
    let typical = bath.solution.window_still.typical()?;
    let mut out = Run::for_plan(plan);
    out.measure(plan, inputs);
    let mut best = cover::advised(plan, n, &out, typical).unwrap_or((typical, Ruling::Typical));
    for vessel in &step.vessels {
        let bath = &plan.baths[vessel.bath];
        if let Some(bound) = tree_density(bath, step) {
            let edge = |i| worst_edge(plan, vessel, &out, inputs, i);
            if edge(best.0).si() > bound.si() {
                best = (bisect(edge, bound, best.0), Ruling::Edges);
            }
        }
    }
    Some(best)
}

/// The density of all that the supply gives, where `i` asks for more.
fn within_supply(
    plan: &Plan,
    n: usize,
    inputs: &Inputs,
    i: CurrentDensity,
) -> Option<CurrentDensity> {
    let highest = plan.bench.as_ref()?.highest?;
    let mut out = Run::for_plan(plan);
    out.measure(plan, inputs);
    let hung = &plan.stages[plan.first_stage(n)?].hung;
    let areas = hung.iter().map(|h| out.bare_area(h));
    // Nothing known hangs there: nothing to divide by.
    let least = areas.reduce(|a, b| if b < a { b } else { a })?;
    let asks = (i * least).si();
    (least.si() > 0.0 && asks > highest.si()).then(|| highest / least)
}

/// Density at the thickest place of the worst piece of a vessel.
pub(crate) fn worst_edge(
    plan: &Plan,
    vessel: &PlanVessel,
    measured: &Run,
    inputs: &Inputs,
    i: CurrentDensity,
) -> CurrentDensity {
    let ratio = vessel
        .pieces
        .iter()
        .filter_map(|p| edge_of(plan, vessel, *p, measured, inputs, i))
        .fold(1.0, |a: f64, b| if b > a { b } else { a });
    i * ratio
}

/// Thickest over mean of a piece, where that is known.
pub(crate) fn edge_of(
    plan: &Plan,
    vessel: &PlanVessel,
    p: usize,
    measured: &Run,
    inputs: &Inputs,
    i: CurrentDensity,
) -> Option<f64> {
    let (piece, bath) = (&plan.pieces[p], &plan.baths[vessel.bath]);
    let scale = some(measured.now[p].body.scale)?;
    let (_, even) = spread_on(
        piece,
        piece.rows[vessel.bath],
        scale,
        reach(bath, inputs, i),
    )?;
    Some(even.max_over_mean.si())
}

/// The highest density at or below `from` whose edge stays at `bound`; the edge rises with the density.
fn bisect(
    edge: impl Fn(CurrentDensity) -> CurrentDensity,
    bound: CurrentDensity,
    from: CurrentDensity,
) -> CurrentDensity {
    let (mut low, mut high) = (0.0, from.si());
    for _ in 0..60 {
        let middle = (low + high) / 2.0;
        if edge(CurrentDensity::from_si(middle)).si() > bound.si() {
            high = middle;
        } else {
            low = middle;
        }
    }
    CurrentDensity::from_si(low)
}
