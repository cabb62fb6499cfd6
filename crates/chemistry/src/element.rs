//! The elements.

use crate::source::{Cited, Datum, Source, WorkId};
use quantity::{Density, MolarMass, Resistivity, Temperature};

/// Chemical symbol, the id of an element.
pub type ElementId = &'static str;

/// A pure metal, or another element that stands in an alloy.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Element {
    /// Symbol.
    pub id: ElementId,
    /// Atomic number, 1 or more.
    pub number: u8,
    /// Mass of a mole.
    pub molar_mass: Cited<MolarMass>,
    /// Density of the bulk metal at room temperature.
    pub density: Cited<Density>,
    /// Resistivity of the bulk metal; unknown for elements that are no metals.
    pub resistivity: Datum<Resistivity>,
    /// The temperature of the resistivity.
    pub resistivity_at: Temperature,
    /// Every valence it has in some bath or etch, rising, never empty. Which one applies is said by the solution.
    pub valences: Cited<&'static [u8]>,
    /// Whether it can be laid down from water at all.
    pub deposits: bool,
}

const MASSES: Source = Source::Published {
    work: WorkId::Ciaaw2021,
    locator: "standard atomic weights, abridged table",
};
const MASSES_2009: Source = Source::Published {
    work: WorkId::Wieser2009,
    locator: "abstract",
};
const MASSES_2016: Source = Source::Published {
    work: WorkId::Meija2016,
    locator: "abstract",
};
const CRC: Source = Source::Published {
    work: WorkId::Crc97,
    locator: "sec. 4, density of the elements",
};

const fn element(
    id: ElementId,
    number: u8,
    g_per_mol: f64,
    mass_source: Source,
    g_per_cm3: f64,
    valences: &'static [u8],
) -> Element {
    Element {
        id,
        number,
        molar_mass: Cited::new(MolarMass::g_per_mol(g_per_mol), mass_source),
        density: Cited::new(Density::g_per_cm3(g_per_cm3), CRC),
        resistivity: Datum::Unknown,
        resistivity_at: Temperature::celsius(20.0),
        valences: Cited::new(valences, Source::FromMemory),
        deposits: true,
    }
}

impl Element {
    const fn resisting_nohm_m(self, value: f64) -> Self {
        Self {
            resistivity: Datum::Value(Cited::new(Resistivity::nohm_m(value), Source::FromMemory)),
            ..self
        }
    }

    const fn at_0_celsius(self) -> Self {
        Self {
            resistivity_at: Temperature::celsius(0.0),
            ..self
        }
    }

    const fn never_from_water(self) -> Self {
        Self {
            deposits: false,
            ..self
        }
    }
}

/// All elements of the catalogue.
#[rustfmt::skip]
pub const ELEMENTS: &[Element] = &[
    element("Cu", 29, 63.546, MASSES, 8.96, &[1, 2]).resisting_nohm_m(16.78),
    element("Ag", 47, 107.8682, MASSES, 10.5, &[1]).resisting_nohm_m(15.87),
    element("Au", 79, 196.966_570, MASSES_2016, 19.3, &[1, 3]).resisting_nohm_m(22.14),
    element("Ni", 28, 58.6934, MASSES_2009, 8.9, &[2]).resisting_nohm_m(69.3),
    element("Zn", 30, 65.38, MASSES_2009, 7.134, &[2]).resisting_nohm_m(59.0),
    element("Sn", 50, 118.710, MASSES, 7.287, &[2, 4]).resisting_nohm_m(115.0).at_0_celsius(),
    element("Fe", 26, 55.845, MASSES, 7.87, &[2, 3]).resisting_nohm_m(96.1),
    element("Pd", 46, 106.42, MASSES, 12.0, &[2]).resisting_nohm_m(105.4),
    element("Pt", 78, 195.084, MASSES, 21.5, &[2, 4]).resisting_nohm_m(105.0),
    element("Rh", 45, 102.905_49, MASSES, 12.4, &[3]).resisting_nohm_m(43.3).at_0_celsius(),
    element("Cr", 24, 51.9961, MASSES, 7.15, &[3, 6]).resisting_nohm_m(125.0),
    element("Co", 27, 58.933_194, MASSES_2016, 8.86, &[2]).resisting_nohm_m(56.0).at_0_celsius(),
    element("In", 49, 114.818, MASSES, 7.31, &[3]).resisting_nohm_m(80.0).at_0_celsius(),
    element("Ru", 44, 101.07, MASSES, 12.1, &[3, 4]).resisting_nohm_m(71.0).at_0_celsius(),
    element("Pb", 82, 207.2, MASSES, 11.3, &[2]).resisting_nohm_m(208.0),
    element("Ti", 22, 47.867, MASSES, 4.506, &[3, 4]).resisting_nohm_m(390.0).never_from_water(),
    element("Al", 13, 26.981_538_4, MASSES, 2.7, &[3]).resisting_nohm_m(26.5).never_from_water(),
    element("Cd", 48, 112.414, MASSES_2016, 8.69, &[2]).resisting_nohm_m(68.0),
    element("Mn", 25, 54.938_043, MASSES, 7.3, &[2]).resisting_nohm_m(1440.0).never_from_water(),
    element("Mo", 42, 95.95, MASSES_2016, 10.2, &[6]).resisting_nohm_m(53.4).never_from_water(),
    element("Nb", 41, 92.906_37, MASSES, 8.57, &[5]).resisting_nohm_m(152.0).never_from_water(),
    element("Si", 14, 28.085, MASSES, 2.3296, &[4]).never_from_water(),
    element("P", 15, 30.973_761_998, MASSES, 1.82, &[5]).never_from_water(),
];

/// The element of this symbol.
pub fn element_of(id: &str) -> Option<&'static Element> {
    ELEMENTS.iter().find(|e| e.id == id)
}
