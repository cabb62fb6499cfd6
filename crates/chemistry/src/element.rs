//! The elements.

use crate::source::{Cited, Source, WorkId};
use quantity::{Density, MolarMass};

/// Chemical symbol, the id of an element.
pub type ElementId = &'static str;

/// A pure metal.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Element {
    /// Symbol.
    pub id: ElementId,
    /// Mass of a mole.
    pub molar_mass: Cited<MolarMass>,
    /// Density of the bulk metal at room temperature.
    pub density: Cited<Density>,
}

const ABRIDGED: Source = Source::Published {
    work: WorkId::Ciaaw2021,
    locator: "standard atomic weights, abridged table",
};
const CRC: Source = Source::Published {
    work: WorkId::Crc97,
    locator: "sec. 4, density of the elements",
};

/// All elements of the catalogue.
pub const ELEMENTS: &[Element] = &[Element {
    id: "Cu",
    molar_mass: Cited::new(MolarMass::g_per_mol(63.546), ABRIDGED),
    density: Cited::new(Density::g_per_cm3(8.96), CRC),
}];
