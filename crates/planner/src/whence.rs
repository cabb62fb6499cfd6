//! Where each value of the working comes from, by its name.

use crate::answer::{Origin, Ruling, Whence};
use crate::inputs::InputId;
use crate::path::FieldPath;
use crate::plan::{Plan, PlanPiece, PlanStep, PlanSurface, PlanUntil};
use chemistry::element::element_of;
use chemistry::faraday::FARADAY;
use chemistry::limiting::diffusion_layer;
use chemistry::source::{MethodId, Source};

const WORKED: Whence = Whence::Worked;
const GIVEN: Whence = Whence::From(Origin::Given);

fn from(source: Option<Source>) -> Whence {
    source.map_or(GIVEN, |s| Whence::From(Origin::Catalogue(s)))
}

/// Where the value `name` of the formula `id` at `at` comes from. A value that is the result of an earlier step is
/// worked out: the caller looks for that first.
pub fn whence(
    plan: &Plan,
    rulings: &[Option<Ruling>],
    id: &str,
    name: &str,
    at: &FieldPath,
) -> Whence {
    let input = |id: Option<InputId>| id.map_or(WORKED, |id| Whence::From(plan.inputs.origin(id)));
    let of_step = |step: &PlanStep| at.within_one_of("steps", &step.id);
    let of_piece = |p: &&PlanPiece| at.within_one_of("pieces", &p.id);
    let n = plan.steps.iter().position(of_step).unwrap_or_default();
    let step = plan.steps.get(n).or(plan.steps.last());
    let Some(bath) = step.map_or(plan.baths.first(), |s| plan.bath(s)) else {
        return GIVEN;
    };
    let piece = plan.pieces.iter().find(of_piece).or(plan.pieces.first());
    let ruled = rulings.get(n).copied().flatten();
    let metal = step
        .and_then(|s| plan.first_moved(s))
        .map_or("", |m| m.id.as_str());
    match name {
        "bare_volts" | "front" | "heat_loss" | "tau" => from(Some(Source::Computed {
            method: MethodId::Derived,
        })),
        "power" => WORKED,
        "faraday" => from(Some(FARADAY.source)),
        "molar_mass" => from(
            element_of(metal)
                .or(element_of(bath.solution.metal))
                .map(|e| e.molar_mass.source),
        ),
        "valence" => from(Some(bath.solution.valences.source)),
        "metal_density" => from(crate::working::density_source(metal)),
        "density" if id == "wanted" => match ruled {
            Some(Ruling::Typical) => from(bath.solution.window_still.source()),
            Some(_) => WORKED,
            None => GIVEN,
        },
        "efficiency" => input(bath.efficiency),
        "conductivity" => input(bath.conductivity),
        "evenness_factor" => input(bath.evenness_factor),
        "slope" => from(bath.slope.map(|s| s.source)),
        "surface_volts" => input(bath.surface_volts),
        "distance" => input(bath.distance),
        "diffusivity" => from(bath.solution.diffusivity.source()),
        "layer" => from(step.map(|s| diffusion_layer(s.stirring).source)),
        "metal_content" => {
            let said = bath
                .metals
                .iter()
                .any(|m| m.metal == bath.solution.metal && m.now.is_some());
            from(bath.solution.metal_content.source().filter(|_| !said))
        }
        "target" => match step.and_then(|s| s.use_band) {
            // What a use asks for: see `uses`.
            Some(_) => from(Some(Source::CommonPractice)),
            None if bath.etches() => WORKED,
            None => GIVEN,
        },
        "etch_factor" => match piece.and_then(|p| p.art.etch_factor) {
            Some(id) => input(Some(id)),
            None => from(Some(Source::CommonPractice)),
        },
        "min_over_mean" => match piece.and_then(|p| p.own_ratio) {
            Some(id) => input(Some(id)),
            None => from(Some(Source::Computed {
                method: MethodId::FiniteElements,
            })),
        },
        "piece_area" => match piece.and_then(|p| p.surface.as_ref()) {
            Some(PlanSurface::Area(id, ..)) => input(Some(*id)),
            _ => WORKED,
        },
        "time" if matches!(step.and_then(|s| s.until), Some(PlanUntil::Time(_))) => GIVEN,
        "gauge" => from(Some(Source::CommonPractice)),
        "contact" => input(piece.and_then(|p| p.contact[0])),
        "lead" => input(piece.and_then(|p| p.contact[1])),
        "density" if id == "branch" => WORKED,
        "equivalent" | "wire_area" | "wetted" | "flows" | "density" | "growth" | "reached"
        | "time" | "charge" | "mean" | "grown" | "scale" | "wagner" => WORKED,
        _ => GIVEN,
    }
}
