//! What a solution is made up from.

use crate::element::ElementId;
use crate::source::{Cited, Datum, MethodId, Source};
use quantity::{Concentration, Fraction, Ratio};

/// The id of a substance: its formula where it has one.
pub type SubstanceId = &'static str;

/// A substance.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Substance {
    /// Its id.
    pub id: SubstanceId,
    /// The metal it brings.
    pub metal: Option<ElementId>,
    /// The share of its mass that is that metal; unknown where it brings none or has no fixed formula.
    pub metal_share: Datum<Fraction>,
}

/// How much of a substance.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Amount {
    /// Mass of the substance as named, per volume.
    Mass(Datum<Concentration>),
    /// Mass of the metal in it, per volume.
    MassOfMetal(Datum<Concentration>),
    /// Volume of it as bought, per volume.
    Volume(Datum<Ratio>),
    /// By its own sheet, or until something is reached.
    AsNeeded,
}

/// A substance in a solution.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ingredient {
    /// Which.
    pub what: SubstanceId,
    /// How much.
    pub amount: Amount,
}

const fn brings(id: SubstanceId, metal: ElementId, share: f64) -> Substance {
    Substance {
        id,
        metal: Some(metal),
        metal_share: Datum::Value(Cited::new(
            Fraction::of_si(share),
            Source::Computed {
                method: MethodId::Derived,
            },
        )),
    }
}

const fn with(id: SubstanceId, metal: ElementId) -> Substance {
    Substance {
        id,
        metal: Some(metal),
        metal_share: Datum::Unknown,
    }
}

const fn plain(id: SubstanceId) -> Substance {
    Substance {
        id,
        metal: None,
        metal_share: Datum::Unknown,
    }
}

/// All substances. The shares follow from the formulas.
pub const SUBSTANCES: &[Substance] = &[
    brings("CuSO4.5H2O", "Cu", 0.254_51),
    brings("Cu2P2O7.3H2O", "Cu", 0.357_93),
    brings("Cu(NO3)2.3H2O", "Cu", 0.263_02),
    brings("CuCN", "Cu", 0.709_50),
    brings("NiSO4.6H2O", "Ni", 0.223_31),
    brings("NiCl2.6H2O", "Ni", 0.246_94),
    brings("Ni(SO3NH2)2", "Ni", 0.233_97),
    brings("AgNO3", "Ag", 0.635_00),
    brings("AgCH3SO3", "Ag", 0.531_47),
    brings("KAg(CN)2", "Ag", 0.542_04),
    brings("KAu(CN)2", "Au", 0.683_67),
    with("gold_salt", "Au"),
    with("silver_salt", "Ag"),
    with("rhodium_salt", "Rh"),
    with("palladium_chloride", "Pd"),
    with("palladium_diamminedinitrite", "Pd"),
    with("palladium_tetrammine_chloride", "Pd"),
    with("palladium_salt", "Pd"),
    with("nickel_salt", "Ni"),
    with("cobalt_salt", "Co"),
    with("copper_salt", "Cu"),
    with("tin_salt", "Sn"),
    brings("CrO3", "Cr", 0.520_00),
    plain("H2SO4"),
    plain("HCl"),
    plain("HNO3"),
    plain("NaNO3"),
    plain("NaCl"),
    plain("chloride"),
    plain("H3BO3"),
    plain("K4P2O7"),
    plain("KNO3"),
    plain("NH4OH"),
    plain("NH4Cl"),
    plain("KCN"),
    plain("NaCN"),
    plain("K2CO3"),
    plain("K2HPO4"),
    plain("KOH"),
    plain("KCl"),
    plain("K2SO4"),
    plain("sodium_citrate"),
    plain("sulfite"),
    plain("phosphate_citrate"),
    plain("conducting_salts"),
    plain("dimethylhydantoin"),
    plain("succinimide"),
    plain("borax"),
    plain("ammonium_sulfamate"),
    plain("silver_complexant"),
    plain("acid_or_pyrophosphate"),
    plain("leveller_brightener"),
];

/// The substance of this id.
pub fn substance_of(id: &str) -> Option<&'static Substance> {
    SUBSTANCES.iter().find(|s| s.id == id)
}

impl Ingredient {
    /// Where its amount comes from; none where it is by need.
    pub fn source(&self) -> Option<Source> {
        match &self.amount {
            Amount::Mass(d) | Amount::MassOfMetal(d) => d.source(),
            Amount::Volume(d) => d.source(),
            Amount::AsNeeded => None,
        }
    }
}
