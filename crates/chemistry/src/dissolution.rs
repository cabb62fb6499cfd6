//! A metal in a solution: what a charge moves, part by part.

use crate::alloy::{Alloy, MetalId, PARTS_MOST, alloy_of, equivalent_of, whole};
use crate::element::{Element, ElementId, element_of};
use crate::faraday::equivalent;
use crate::solution::Solution;
use quantity::{Density, MassPerCharge, Quantity};

/// An element or an alloy of the catalogue.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Metal {
    /// A pure one.
    Element(&'static Element),
    /// A mixed one.
    Alloy(&'static Alloy),
}

impl Metal {
    /// The element or alloy of this id.
    pub fn of(id: &str) -> Option<Self> {
        element_of(id)
            .map(Metal::Element)
            .or_else(|| alloy_of(id).map(Metal::Alloy))
    }

    /// Its id.
    pub fn id(self) -> MetalId {
        match self {
            Metal::Element(e) => e.id,
            Metal::Alloy(a) => a.id,
        }
    }

    /// Its density.
    pub fn density(self) -> Density {
        match self {
            Metal::Element(e) => e.density.value,
            Metal::Alloy(a) => a.density.value,
        }
    }

    /// Mass moved per charge in this solution at an efficiency of 1. None where the metal's valence there is not
    /// known.
    pub fn equivalent_in(self, solution: &Solution) -> Option<MassPerCharge> {
        match self {
            Metal::Element(e) => Some(equivalent(e.molar_mass.value, valence_in(e.id, solution)?)),
            Metal::Alloy(a) => Some(dissolution(a, solution)?.equivalent),
        }
    }
}

/// The valence of an element in this solution: what the solution says, else its only one. None where it has several
/// and the solution does not say which.
pub fn valence_in(element: &str, solution: &Solution) -> Option<u8> {
    let said = solution
        .valences
        .value
        .iter()
        .find(|(id, _)| *id == element)
        .map(|(_, z)| *z);
    said.or(match element_of(element)?.valences.value {
        [only] => Some(*only),
        _ => None,
    })
}

/// What one charge takes out of an alloy, or lays down of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Dissolution {
    /// Mass of the alloy per charge at an efficiency of 1.
    pub equivalent: MassPerCharge,
    parts: [(ElementId, MassPerCharge); PARTS_MOST],
    count: usize,
}

impl Dissolution {
    /// Each part with its mass per charge, at an efficiency of 1, in the alloy's order. They add up to `equivalent`.
    pub fn parts(&self) -> &[(ElementId, MassPerCharge)] {
        &self.parts[..self.count]
    }

    /// Mass of this element per charge; none where the alloy has none of it.
    pub fn of(&self, element: &str) -> Option<MassPerCharge> {
        let found = self.parts().iter().find(|(id, _)| *id == element);
        found.map(|(_, mass)| *mass)
    }
}

/// How an alloy dissolves in (or comes out of) a solution: its parts in the proportion of the alloy, each with its
/// valence in that solution, or with the alloy's own where the solution says nothing. None where a part is unknown to
/// the catalogue.
pub fn dissolution(alloy: &Alloy, solution: &Solution) -> Option<Dissolution> {
    let parts = alloy.parts.value;
    if parts.len() > PARTS_MOST {
        return None;
    }
    let said = |element: ElementId| {
        let found = solution
            .valences
            .value
            .iter()
            .find(|(id, _)| *id == element);
        found.map(|(_, z)| *z)
    };
    let equivalent = equivalent_of(parts, |p| Some(said(p.element).unwrap_or(p.valence)))?;
    let whole = whole(parts);
    let mut out = [("", MassPerCharge::of_si(0.0)); PARTS_MOST];
    for (slot, part) in out.iter_mut().zip(parts) {
        *slot = (part.element, equivalent * (part.share.si() / whole));
    }
    Some(Dissolution {
        equivalent,
        parts: out,
        count: parts.len(),
    })
}
