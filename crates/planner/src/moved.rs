//! What a charge moves: the metal laid on the pieces, or taken from them.

use chemistry::alloy::{MetalId, PARTS_MOST};
use chemistry::{Electrode, ElementId, Metal, Solution, dissolution, faraday, valence_in};
use quantity::{Density, MassPerCharge, Quantity, Thickness};

/// A metal as one solution lays it down or takes it away.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Moved {
    /// The element or alloy.
    pub id: MetalId,
    /// Its density.
    pub density: Density,
    /// Mass moved per charge at an efficiency of 1.
    pub equivalent: MassPerCharge,
    parts: [(ElementId, MassPerCharge); PARTS_MOST],
    count: usize,
}

impl Moved {
    /// A metal in a solution. None where a valence in it is not known.
    pub fn of(metal: Metal, solution: &Solution) -> Option<Self> {
        let equivalent = metal.equivalent_in(solution)?;
        let mut parts = [("", MassPerCharge::of_si(0.0)); PARTS_MOST];
        let count = match metal {
            Metal::Element(e) => {
                parts[0] = (e.id, equivalent);
                1
            }
            Metal::Alloy(a) => {
                let all = dissolution(a, solution)?;
                for (slot, part) in parts.iter_mut().zip(all.parts()) {
                    *slot = *part;
                }
                all.parts().len()
            }
        };
        Some(Self {
            id: metal.id(),
            density: metal.density(),
            equivalent,
            parts,
            count,
        })
    }

    /// Each element of it with its mass per charge.
    pub fn parts(&self) -> &[(ElementId, MassPerCharge)] {
        &self.parts[..self.count]
    }

    /// The layer that a charge of 1 C over 1 m2 moves, at an efficiency of 1: metre per (coulomb per square metre).
    pub(crate) fn layer_per_charge(&self) -> f64 {
        self.equivalent.si() / self.density.si()
    }

    /// The effective charge per area behind a layer, in SI.
    pub(crate) fn charge_for(&self, layer: Thickness) -> f64 {
        layer.si() / self.layer_per_charge()
    }
}

/// What is laid on the counter electrode while the work dissolves: the bath's own metal, the first its solution names.
pub fn deposited_on_counter(solution: &Solution) -> Option<(ElementId, MassPerCharge)> {
    if solution.work == Electrode::Cathode {
        return None;
    }
    let (element, _) = *solution.valences.value.first()?;
    dissolved(element, solution)
}

/// An element with its mass per charge in a solution.
pub fn dissolved(element: ElementId, solution: &Solution) -> Option<(ElementId, MassPerCharge)> {
    let valence = valence_in(element, solution)?;
    let mass = chemistry::element::element_of(element)?.molar_mass.value;
    Some((element, faraday::equivalent(mass, valence)))
}
