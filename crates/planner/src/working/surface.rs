//! Surfaces, what hangs together, and the metal a charge moves.

use super::{Writer, count};
use crate::advise::{diffusivity, limiting, metal_content};
use crate::path::FieldPath;
use crate::plan::{PlanBath, PlanSurface};
use crate::value::Named;
use chemistry::element::element_of;
use chemistry::faraday::FARADAY;
use chemistry::limiting::diffusion_layer;
use chemistry::source::{Source, WorkId};
use geometry::shape::wire_side;
use quantity::{Charge, Fraction, Length, Quantity, WorkArea};

impl Writer<'_> {
    pub(super) fn areas(&mut self, n: usize) {
        let piece = &self.plan.pieces[n];
        let at = FieldPath::new("pieces").child(&piece.id);
        let mensuration = Source::Published {
            work: WorkId::Mensuration,
            locator: "Pappus's theorem; cylinders and annuli",
        };
        if let Some(PlanSurface::Parts(parts)) = &piece.surface {
            for part in parts {
                let id = match part.shape.id() {
                    "torus" => "area_torus",
                    "band" => "area_band",
                    _ => continue,
                };
                let values = part
                    .shape
                    .size_names()
                    .iter()
                    .zip(&part.sizes)
                    .map(|(name, size)| Named::new(name, self.get::<Length>(*size)))
                    .collect();
                let result = Named::new("smooth_area", part.shape.surface().total());
                self.add(id, part.at.clone(), values, result, &[mensuration]);
            }
        }
        if let Some((d, wet, wires)) = piece.wires {
            let (d, wet): (Length, Length) = (self.get(d), self.get(wet));
            let values = vec![
                Named::new("wire_d", d),
                Named::new("wet", wet),
                count("wires", f64::from(wires)),
            ];
            let result = Named::new("wire_area", wire_side(d, wet) * f64::from(wires));
            self.add("wire_area", at.child("hanger"), values, result, &[]);
        }
        if let Some(area) = self.run.pieces[n].area {
            let wire = self.run.pieces[n].wire_area;
            let all = f64::from(piece.count);
            self.add(
                "wetted",
                at,
                vec![
                    Named::new("piece_area", area),
                    Named::new("wire_area", wire),
                    count("count", all),
                ],
                Named::new("wetted", (area + wire) * all),
                &[],
            );
        }
    }

    /// What a charge moves, and how fast ions arrive, in the bath of a step: at the bath's last step.
    pub(super) fn equivalent(&mut self, bath: &PlanBath, n: usize, last: usize) {
        let at = FieldPath::new("baths").child(&bath.id);
        // An alloy's is a sum over its parts, each with its own valence: its result stands in the growth.
        if let Some(moved) = self.plan.first_moved(&self.plan.steps[n])
            && let Some(element) = element_of(&moved.id)
            && let [(only, _)] = moved.parts()
            && *only == element.id
        {
            // As it was counted with: the solution's, or what the person's own label says.
            let per_mole = element.molar_mass.value.si() / FARADAY.value.si();
            let valence = (per_mole / moved.equivalent.si()).round();
            let result = Named::new("equivalent", moved.equivalent);
            self.add(
                "equivalent",
                at.clone(),
                vec![
                    Named::new("molar_mass", element.molar_mass.value),
                    count("valence", valence),
                    Named::new("faraday", FARADAY.value),
                ],
                result,
                &[element.molar_mass.source, FARADAY.source],
            );
        }
        let Some(element) = element_of(bath.solution.metal).filter(|_| !bath.etches()) else {
            return;
        };
        let step = &self.plan.steps[last];
        if let (Some(c), Some(d), Some(limit)) = (
            metal_content(bath),
            diffusivity(bath, step),
            limiting(bath, step),
        ) {
            let said = bath
                .metals
                .iter()
                .any(|m| m.metal == bath.solution.metal && m.now.is_some());
            let content = bath.solution.metal_content.source().filter(|_| !said);
            let spreads = bath.solution.diffusivity;
            let layer = diffusion_layer(step.stirring);
            let sources: Vec<Source> = [content, spreads.source(), Some(layer.source)]
                .into_iter()
                .flatten()
                .collect();
            self.add(
                "limiting",
                at,
                vec![
                    count("valence", f64::from(bath.solution.valence)),
                    Named::new("faraday", FARADAY.value),
                    Named::new("diffusivity", d),
                    Named::new("metal_content", c),
                    Named::new("molar_mass", element.molar_mass.value),
                    Named::new("layer", layer.value),
                ],
                Named::new("limiting", limit),
                &sources,
            );
        }
    }

    /// What hangs in a step's one vessel.
    pub(super) fn hung(&self, n: usize) -> Vec<usize> {
        match &self.plan.steps[n].vessels[..] {
            [only] => only.pieces.clone(),
            _ => Vec::new(),
        }
    }

    /// Whether a step is one stage in one vessel with areas that stay.
    pub(super) fn plain(&self, n: usize) -> bool {
        let stages = self.plan.stages.iter().filter(|s| s.step == n);
        let filling = crate::cover::passes(&self.plan.steps[n]) < 1.0;
        !filling
            && !self.plan.growth
            && stages.count() == 1
            && self.plan.steps[n].vessels.len() == 1
    }

    /// The wetted area that a step's current is for.
    pub(super) fn wetted(&self, n: usize) -> Option<WorkArea> {
        self.run.stages[self.plan.first_stage(n)?].area
    }

    /// What one piece takes of a step's charge.
    pub(super) fn mass(
        &mut self,
        p: usize,
        at: &FieldPath,
        n: usize,
        efficiency: Fraction,
        charge: Charge,
        wetted: WorkArea,
    ) {
        let Some(area) = self.run.pieces[p].area else {
            return;
        };
        let bath = self.plan.steps[n].vessels.first().map(|v| v.bath);
        let Some(metal) = bath.and_then(|b| self.plan.moved(p, b)) else {
            return;
        };
        let equivalent = metal.equivalent;
        let moved = chemistry::faraday::mass(equivalent, efficiency, charge);
        self.add(
            "mass",
            at.clone(),
            vec![
                Named::new("equivalent", equivalent),
                Named::new("efficiency", efficiency),
                Named::new("charge", charge),
                Named::new("piece_area", area),
                Named::new("wetted", wetted),
            ],
            Named::new("mass", moved * (area / wetted)),
            &[],
        );
    }

    pub(super) fn typical_source(&self, n: usize, bath: &PlanBath) -> Vec<Source> {
        let typical = bath.solution.window_still.typical();
        match self.plan.steps[n].drive {
            Some(crate::plan::PlanDrive::Density(i)) if Some(i) == typical => {
                bath.solution.window_still.source().into_iter().collect()
            }
            _ => Vec::new(),
        }
    }
}
