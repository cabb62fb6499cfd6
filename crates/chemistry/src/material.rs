//! Counter electrodes: what they are made of and whether they dissolve.

use crate::element::ElementId;

/// The id of a material.
pub type MaterialId = &'static str;

/// What a counter electrode does as the anode.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Anode {
    /// It dissolves and keeps the bath's metal up.
    Dissolves(ElementId),
    /// It stays: the bath's metal goes down, gas comes off.
    Stays,
}

/// A material of a counter electrode.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Material {
    /// Its id.
    pub id: MaterialId,
    /// What it does as the anode.
    pub anode: Anode,
}

const fn dissolves(id: MaterialId, metal: ElementId) -> Material {
    Material {
        id,
        anode: Anode::Dissolves(metal),
    }
}

const fn stays(id: MaterialId) -> Material {
    Material {
        id,
        anode: Anode::Stays,
    }
}

/// All materials. A pure metal's id is its element's.
pub const MATERIALS: &[Material] = &[
    dissolves("Cu", "Cu"),
    // 0.02 to 0.08 % phosphorus.
    dissolves("phosphorised_copper", "Cu"),
    dissolves("oxygen_free_copper", "Cu"),
    dissolves("Ni", "Ni"),
    // With sulfur, so that it stays active.
    dissolves("sulfur_nickel", "Ni"),
    dissolves("Ag", "Ag"),
    dissolves("Pd", "Pd"),
    stays("Pt"),
    stays("platinised_titanium"),
    stays("mixed_oxide_titanium"),
    stays("stainless"),
    stays("S31603"),
    stays("graphite"),
    stays("steel"),
    stays("lead_alloy"),
];

/// The material of this id.
pub fn material_of(id: &str) -> Option<&'static Material> {
    MATERIALS.iter().find(|m| m.id == id)
}
