//! A bad contact and its signs: what the piece and the others get, and what the supply shows, beside the same with a bright clip.

use crate::inputs::Inputs;
use crate::plan::Plan;
use crate::run::{Run, run};
use crate::vessel::poor;
use quantity::{CurrentDensity, Resistance, Voltage};
use serde::Serialize;

/// A spring clip that is bright: the best of it. Common practice, no source.
const BRIGHT: Resistance = Resistance::of_si(0.02);

/// A contact that takes too much. Likely values, at the start of the stage in which that shows first.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct BadContact {
    /// The piece; of several on one clip each.
    pub id: String,
    /// What a meter shows from bar to piece's clip: more than 20 mV is bad.
    #[serde(rename = "clip_V")]
    pub clip: Voltage,
    /// Its density.
    #[serde(rename = "density_A_per_m2")]
    pub density: CurrentDensity,
    /// Its density with a bright clip.
    #[serde(
        rename = "density_bright_A_per_m2",
        skip_serializing_if = "Option::is_none"
    )]
    pub density_bright: Option<CurrentDensity>,
    /// The most that another piece in the same vessel then gets.
    #[serde(rename = "others_A_per_m2", skip_serializing_if = "Option::is_none")]
    pub others: Option<CurrentDensity>,
    /// The same with a bright clip.
    #[serde(
        rename = "others_bright_A_per_m2",
        skip_serializing_if = "Option::is_none"
    )]
    pub others_bright: Option<CurrentDensity>,
    /// What the supply shows at the step's start, where the piece hangs then.
    #[serde(rename = "supply_V", skip_serializing_if = "Option::is_none")]
    pub supply: Option<Voltage>,
    /// The same with a bright clip.
    #[serde(rename = "supply_bright_V", skip_serializing_if = "Option::is_none")]
    pub supply_bright: Option<Voltage>,
}

/// All of them.
pub(crate) fn bad(plan: &Plan, inputs: &Inputs, likely: &Run) -> Vec<BadContact> {
    let mut all = Vec::new();
    for found in poor(plan, likely) {
        let [Some(contact), _] = plan.pieces[found.piece].contact else {
            continue;
        };
        let mut bright = Run::for_plan(plan);
        let inputs = inputs.with(contact, BRIGHT);
        run(plan, &inputs, Some(&likely.kept()), &mut bright);
        let stage = &plan.stages[found.stage];
        let of_stage = found.stage * plan.pieces.len();
        let hung = stage.hung.iter().find(|h| h.contains(&found.piece));
        let others = |run: &Run| {
            let each = hung.into_iter().flatten().filter(|p| **p != found.piece);
            each.filter_map(|p| run.shared[of_stage + p].density)
                .reduce(|a, b| if b > a { b } else { a })
        };
        let first = plan.first_stage(stage.step) == Some(found.stage);
        let volts = |run: &Run| run.steps[stage.step].volts.filter(|_| first);
        all.push(BadContact {
            id: plan.pieces[found.piece].id.clone(),
            clip: found.volts,
            density: found.density,
            density_bright: bright.shared[of_stage + found.piece].density,
            others: others(likely),
            others_bright: others(&bright),
            supply: volts(likely),
            supply_bright: volts(&bright),
        });
    }
    all
}
