//! The alloys: sheet and wire that are etched or plated, and the two that are laid down as alloys.

use crate::element::{ElementId, element_of};
use crate::faraday::FARADAY;
use crate::notes::{self, NoteId};
use crate::source::{Cited, MethodId, Source, WorkId};
use quantity::{Density, Fraction, MassPerCharge, Quantity};

/// The id of an alloy: its number in the unified numbering system where it has one, else its fineness or its symbols.
pub type AlloyId = &'static str;

/// The id of an element or an alloy.
pub type MetalId = &'static str;

/// One part of an alloy.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Part {
    /// The element.
    pub element: ElementId,
    /// Its share of the mass, above 0 to 1. The shares of an alloy may fall short of 1 by its traces.
    pub share: Fraction,
    /// The valence it is counted with where a solution says nothing of its own.
    pub valence: u8,
    /// The valence of dissolving at high density beyond the passive state, where that differs.
    pub valence_beyond: Option<u8>,
}

/// An alloy.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Alloy {
    /// Its id.
    pub id: AlloyId,
    /// What it is made of, the greatest part first.
    pub parts: Cited<&'static [Part]>,
    /// Density at room temperature.
    pub density: Cited<Density>,
    /// Where the equivalent is only a bound or no use as an etch rate: why.
    pub note: Option<NoteId>,
}

/// The most parts an alloy of the catalogue or of the person's own may have.
pub const PARTS_MOST: usize = 8;

impl Alloy {
    /// Mass dissolved or laid down per charge at an efficiency of 1, each part with its valence of the table:
    /// 1 / (F sum(share x valence / molar mass)), the shares scaled to 1. None where a part is no element of the
    /// catalogue.
    pub fn equivalent(&self) -> Option<MassPerCharge> {
        equivalent_of(self.parts.value, |p| Some(p.valence))
    }

    /// The same beyond the passive state; equal where no part changes its valence there.
    pub fn equivalent_beyond(&self) -> Option<MassPerCharge> {
        equivalent_of(self.parts.value, |p| {
            Some(p.valence_beyond.unwrap_or(p.valence))
        })
    }
}

/// The sum of the shares: what they are scaled by.
pub(crate) fn whole(parts: &[Part]) -> f64 {
    parts.iter().fold(0.0, |sum, p| sum + p.share.si())
}

/// Mass per charge of parts that leave in proportion, each with the valence that `valence` gives it.
pub(crate) fn equivalent_of(
    parts: &[Part],
    valence: impl Fn(&Part) -> Option<u8>,
) -> Option<MassPerCharge> {
    let whole = whole(parts);
    let mut per_mass = 0.0;
    for part in parts {
        let mass = element_of(part.element)?.molar_mass.value;
        per_mass += part.share.si() / whole * f64::from(valence(part)?) / mass.si();
    }
    (per_mass > 0.0).then(|| MassPerCharge::from_si(1.0 / (FARADAY.value.si() * per_mass)))
}

const fn percent(element: ElementId, percent: f64, valence: u8) -> Part {
    Part {
        element,
        share: Fraction::of_si(percent / 100.0),
        valence,
        valence_beyond: None,
    }
}

impl Part {
    const fn beyond(self, valence: u8) -> Self {
        Self {
            valence_beyond: Some(valence),
            ..self
        }
    }
}

const MEMORY: Source = Source::FromMemory;
const MIXED: Source = Source::Computed {
    method: MethodId::Mixing,
};
const FINENESS: Source = Source::Published {
    work: WorkId::Iso9202,
    locator: "fineness",
};

const fn alloy(
    id: AlloyId,
    parts: &'static [Part],
    parts_source: Source,
    g_per_cm3: f64,
    density_source: Source,
) -> Alloy {
    Alloy {
        id,
        parts: Cited::new(parts, parts_source),
        density: Cited::new(Density::g_per_cm3(g_per_cm3), density_source),
        note: None,
    }
}

impl Alloy {
    const fn noted(self, note: NoteId) -> Self {
        Self {
            note: Some(note),
            ..self
        }
    }
}

/// All alloys of the catalogue.
#[rustfmt::skip]
pub const ALLOYS: &[Alloy] = &[
    alloy(
        "C11000",
        &[percent("Cu", 99.95, 2)],
        Source::Published { work: WorkId::Cda2010, locator: "C11000, copper 99.90 at least" },
        8.89, MEMORY,
    ),
    alloy(
        "C26000",
        &[percent("Cu", 70.0, 2), percent("Zn", 30.0, 2)],
        Source::Published { work: WorkId::AstmB36, locator: "C26000, copper 68.5-71.5" },
        8.53, Source::Published { work: WorkId::AstmB36, locator: "C26000, density at 20 C" },
    ),
    alloy("C23000", &[percent("Cu", 85.0, 2), percent("Zn", 15.0, 2)], MEMORY, 8.75, MEMORY),
    alloy("C22000", &[percent("Cu", 90.0, 2), percent("Zn", 10.0, 2)], MEMORY, 8.8, MEMORY),
    alloy(
        "C51000",
        &[percent("Cu", 94.8, 2), percent("Sn", 5.0, 4), percent("P", 0.2, 5)],
        MEMORY, 8.86, MEMORY,
    ),
    alloy(
        "C65500",
        &[percent("Cu", 96.0, 2), percent("Si", 3.1, 4), percent("Mn", 0.9, 2)],
        MEMORY, 8.53, MEMORY,
    ),
    alloy(
        "C75200",
        &[percent("Cu", 65.0, 2), percent("Ni", 18.0, 2), percent("Zn", 17.0, 2)],
        MEMORY, 8.73, MEMORY,
    ),
    alloy("Ag999", &[percent("Ag", 100.0, 1)], FINENESS, 10.5, MEMORY),
    alloy(
        "Ag925",
        &[percent("Ag", 92.5, 1), percent("Cu", 7.5, 2)],
        Source::Published { work: WorkId::Cfr16, locator: "23.5, 925/1000" },
        10.36, MEMORY,
    ),
    alloy(
        "Au585",
        &[percent("Au", 58.5, 3), percent("Ag", 25.0, 1), percent("Cu", 16.5, 2)],
        FINENESS, 13.6, Source::CommonPractice,
    ).noted(notes::ALLOY_GOLD_DOES_NOT_ETCH),
    alloy(
        "Au750",
        &[percent("Au", 75.0, 3), percent("Ag", 12.5, 1), percent("Cu", 12.5, 2)],
        FINENESS, 15.45, MIXED,
    ).noted(notes::ALLOY_GOLD_DOES_NOT_ETCH),
    alloy(
        "S30400",
        &[percent("Fe", 71.5, 2).beyond(3), percent("Cr", 18.5, 3).beyond(6), percent("Ni", 8.5, 2), percent("Mn", 1.5, 2)],
        MEMORY, 7.93, MEMORY,
    ).noted(notes::ALLOY_STAINLESS_TWO_WAYS),
    alloy(
        "S31603",
        &[percent("Fe", 68.5, 2).beyond(3), percent("Cr", 17.0, 3).beyond(6), percent("Ni", 11.0, 2), percent("Mo", 2.1, 6),
          percent("Mn", 1.4, 2)],
        MEMORY, 8.0, MEMORY,
    ).noted(notes::ALLOY_STAINLESS_TWO_WAYS),
    alloy("R50400", &[percent("Ti", 99.7, 4)], MEMORY, 4.51, MEMORY).noted(notes::ALLOY_ANODISES),
    alloy("R04200", &[percent("Nb", 99.9, 5)], MEMORY, 8.57, MEMORY).noted(notes::ALLOY_ANODISES),
    alloy("A91100", &[percent("Al", 99.1, 3)], MEMORY, 2.71, MEMORY).noted(notes::ALLOY_ANODISES),
    // Laid down, not sheet.
    alloy(
        "PdNi20",
        &[percent("Pd", 80.0, 2), percent("Ni", 20.0, 2)],
        Source::Published { work: WorkId::Mfg11, locator: "p. 239, 75-85 % palladium" },
        11.2, MIXED,
    ),
    alloy("CuSn8", &[percent("Cu", 92.0, 2), percent("Sn", 8.0, 2)], MEMORY, 8.8, MEMORY)
        .noted(notes::ALLOY_MOVES_WITH_DENSITY),
];

/// The alloy of this id.
pub fn alloy_of(id: &str) -> Option<&'static Alloy> {
    ALLOYS.iter().find(|a| a.id == id)
}
