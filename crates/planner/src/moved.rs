//! What a charge moves: the metal laid on the pieces, or taken from them.

use crate::job::OwnAlloy;
use chemistry::alloy::PARTS_MOST;
use chemistry::element::element_of;
use chemistry::own;
use chemistry::{Electrode, ElementId, Metal, Solution, dissolution, faraday, valence_in};
use quantity::{Density, MassPerCharge, Quantity};

/// A metal as one solution lays it down or takes it away.
#[derive(Clone, Debug, PartialEq)]
pub struct Moved {
    /// The element or alloy, of the catalogue or of the Job.
    pub id: String,
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
            id: metal.id().to_owned(),
            density: metal.density(),
            equivalent,
            parts,
            count,
        })
    }

    /// A pure metal of this valence.
    pub fn of_element(element: &'static chemistry::Element, valence: u8) -> Self {
        let equivalent = faraday::equivalent(element.molar_mass.value, valence);
        let mut parts = [("", MassPerCharge::of_si(0.0)); PARTS_MOST];
        parts[0] = (element.id, equivalent);
        Self {
            id: element.id.to_owned(),
            density: element.density.value,
            equivalent,
            parts,
            count: 1,
        }
    }

    /// A metal of the person's own, its elements in the proportion given, each with the valence given. The field of the
    /// part that cannot be used otherwise.
    pub fn of_own(own: &OwnAlloy) -> Result<Self, OwnFault> {
        if own.parts.len() > PARTS_MOST {
            return Err(OwnFault::Parts);
        }
        let mut known = Vec::new();
        for part in &own.parts {
            let element = element_of(&part.id).ok_or_else(|| OwnFault::Element(part.id.clone()))?;
            known.push((element, part));
        }
        let parts: Vec<own::OwnPart> = known
            .iter()
            .map(|(element, part)| own::OwnPart {
                molar_mass: element.molar_mass.value,
                valence: part.valence as u8,
                share: part.share,
            })
            .collect();
        let metal = own::OwnMetal::alloy(&parts, own.density).map_err(|_| OwnFault::Parts)?;
        let whole: f64 = own.parts.iter().map(|p| p.share.si()).sum();
        let mut each = [("", MassPerCharge::of_si(0.0)); PARTS_MOST];
        for (slot, (element, part)) in each.iter_mut().zip(&known) {
            *slot = (element.id, metal.equivalent * (part.share.si() / whole));
        }
        Ok(Self {
            id: own.id.clone(),
            density: own.density,
            equivalent: metal.equivalent,
            parts: each,
            count: known.len(),
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
}

/// Why an own metal cannot be used.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum OwnFault {
    /// An element the catalogue does not have.
    Element(String),
    /// Too many parts, or shares that do not add up to the whole.
    Parts,
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
