//! What the baths and their counter electrodes gain and lose.

use crate::value::Maybe;
use crate::warmth::Warmth;
use quantity::{Concentration, CounterArea, CurrentDensity, CurrentPerVolume, Mass, Range, Ratio};
use serde::Serialize;

/// What a bath gains and loses.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct BathAnswer {
    /// The bath's id.
    pub id: String,
    /// Metal by metal.
    pub metals: Vec<MetalAnswer>,
    /// What the counter electrode gains; below 0 it loses.
    pub counter: Maybe<Range<Mass>>,
    /// Likely current through a volume of it, at its highest.
    #[serde(rename = "load_A_per_m3", skip_serializing_if = "Option::is_none")]
    pub load: Option<CurrentPerVolume>,
    /// Facing area of the counter electrode over the wetted area of the work, where that is most.
    #[serde(rename = "counter_ratio", skip_serializing_if = "Option::is_none")]
    pub counter_ratio: Option<Ratio>,
    /// Density on the counter electrode, at its highest.
    #[serde(
        rename = "counter_density_A_per_m2",
        skip_serializing_if = "Option::is_none"
    )]
    pub counter_density: Option<CurrentDensity>,
    /// Facing area it was counted with, where that was worked out.
    #[serde(rename = "facing_m2", skip_serializing_if = "Option::is_none")]
    pub facing: Option<CounterArea>,
    /// How it warms, what water it loses, what holds it.
    pub warmth: Maybe<Warmth>,
}

/// The balance of one metal in a bath.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct MetalAnswer {
    /// The metal.
    pub metal: String,
    /// What the bath gains of it; below 0 it loses.
    pub gained: Maybe<Range<Mass>>,
    /// How much is in it after.
    pub after: Maybe<Range<Concentration>>,
    /// Whole jobs like this one until the floor is reached.
    #[serde(
        rename = "jobs_until_floor_count",
        skip_serializing_if = "Option::is_none"
    )]
    pub jobs_until_floor: Option<u32>,
}
