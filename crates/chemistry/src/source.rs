//! Where every value comes from.

use quantity::Band;

/// A work that values are taken from. Its id is never renamed or reused.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Work {
    /// Its id.
    pub id: WorkId,
    /// Author, title, edition, year.
    pub title: &'static str,
}

macro_rules! works {
    ($($(#[$doc:meta])* $variant:ident, $id:literal, $title:literal;)+) => {
        /// The ids of all cited works.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
        pub enum WorkId { $($(#[$doc])* $variant),+ }

        /// Every cited work, once.
        pub const WORKS: &[Work] = &[$(Work { id: WorkId::$variant, title: $title }),+];

        impl WorkId {
            /// The id as text, as it stands in an Answer.
            pub fn id(self) -> &'static str {
                match self { $(WorkId::$variant => $id),+ }
            }
        }
    };
}

works! {
    /// The SI.
    SiBrochure9, "si_brochure_9", "BIPM, The International System of Units (SI Brochure), 9th ed., 2019";
    /// Atomic masses.
    Ciaaw2021, "ciaaw_2021", "Prohaska et al., Standard atomic weights of the elements 2021, Pure Appl. Chem. 94 (2022) 573";
    /// Handbook of densities.
    Crc97, "crc_97", "CRC Handbook of Chemistry and Physics, 97th ed., sec. 4, physical constants of inorganic compounds";
    /// Plating handbook.
    Mfg11, "mfg_11", "Metal Finishing Guide Book 2011-2012";
    /// Limiting current of copper.
    Imf70, "imf_70", "High speed electrodeposition of copper from conventional sulphate electrolytes, Trans. Inst. Metal Finishing 48 (1970) 35-42";
    /// Current distribution.
    EcsDistribution, "ecs_distribution", "Popov, Pavlovic, Zivkovic, Current density distribution in electrochemical cells, Electrochemistry Encyclopedia, The Electrochemical Society, 2011";
    /// Conductivity of acid copper.
    AcidCopperConductivity, "acid_copper_conductivity", "textbook passage on acid copper resistivity (4.2-4.3 ohm cm at 50 g/L free acid, 1.6-1.9 at 200), seen second-hand";
    /// Atomic masses of nickel and zinc.
    Wieser2009, "wieser_2009", "Wieser, Berglund, Atomic weights of the elements 2007, Pure Appl. Chem. 81 (2009) 2131";
    /// Atomic masses of gold, cobalt, cadmium, molybdenum.
    Meija2016, "meija_2016", "Meija et al., Atomic weights of the elements 2013, Pure Appl. Chem. 88 (2016) 265";
    /// Wrought copper alloys.
    Cda2010, "cda_2010", "Copper Development Association, wrought copper alloy designations, 2010";
    /// Cartridge brass.
    AstmB36, "astm_b36", "ASTM B36, brass plate, sheet, strip and rolled bar, data for C26000";
    /// Fineness of silver and gold.
    Iso9202, "iso_9202", "ISO 9202, Fineness of precious metal alloys";
    /// What sterling means.
    Cfr16, "cfr_16_23", "US 16 CFR Part 23, Guides for the Jewelry, Precious Metals and Pewter Industries, 2018";
    /// Plating handbook.
    Mfg12, "mfg_12", "Metal Finishing Guide Book 2012-2013";
    /// Plating handbook.
    Mfg13, "mfg_13", "Metal Finishing Guide Book 2013";
    /// Copper from citrate.
    CitrateCopper64, "citrate_copper_64", "Copper from 0.5 M sulfate and 1.0 M citrate, Journal of the Metal Finishing Society of Japan 15(10) (1964)";
    /// What stops copper in gold.
    Heliyon24, "heliyon_24", "Heliyon 2024, PMC11214454: layers of nickel, palladium and bronze between copper and gold";
    /// Valence of dissolving copper.
    Kinoshita70, "kinoshita_70", "Kinoshita, Landolt, Muller et al., Stoichiometry of anodic copper dissolution at high current densities, J. Electrochem. Soc. 117 (1970)";
    /// Dissolving brass.
    CopperZinc00, "copper_zinc_00", "Cu-Zn alloys in acetate buffer, J. Braz. Chem. Soc. 11(4) (2000) 387-392";
    /// Copper etched in sulfuric acid.
    Papapanoyiotou98, "papapanoyiotou_98", "Papapanoyiotou, Deligianni, Alkire, through-resist etching of copper in sulfuric acid, J. Electrochem. Soc. 145 (1998) 3016";
    /// Silver refining.
    Aji20, "aji_20", "Aji, Aromaa, Lundstrom, Metals 10(12) (2020) 1596";
    /// Silver refining on stainless or graphite.
    SilverRefining, "silver_refining", "Conference abstract on silver electro-refining, AgNO3 0.1-2.0 M on stainless or graphite cathodes";
    /// Silver nitrate.
    SilverNitrateProfile, "silver_nitrate_profile", "Chemical information profile of silver nitrate, J. Chem. Educ.";
    /// Rhodium.
    RhodiumFormulary, "rhodium_formulary", "older formulary entry on rhodium baths, seen, original not identified";
    /// Silver from hydantoin.
    Hydantoin12, "hydantoin_12", "Electrodeposition of silver from the bath based on 5,5-dimethylhydantoin, Galvanotekhnika i obrabotka poverkhnosti 20(2) (2012) 16-20";
    /// Silver from succinimide.
    Succinimide97, "succinimide_97", "Bright silver coatings from silver-succinimide baths, J. Surface Finishing Soc. Japan 48(5)";
    /// Nickel and health.
    HseNickel, "hse_nickel", "UK Health and Safety Executive, guidance on nickel plating";
    /// Nitrogen dioxide.
    NioshNo2, "niosh_no2", "NIOSH Publication 2017-202, IDLH value profile, nitrogen dioxide";
    /// Nitrate at a copper cathode.
    NitrateReduction23, "nitrate_reduction_23", "Materials 16(11) (2023) 4000, review of nitrate reduction to ammonia";
    /// Nickel on steel.
    NickelPredip, "nickel_predip", "US National Metal Finishing Resource Center, note on the pre-dip before nickel";
    /// Nickel and skin.
    Reach27, "reach_27", "Regulation (EC) 1907/2006, Annex XVII, entry 27";
    /// Diffusion of copper with temperature.
    Moats2000, "moats_2000", "Moats, Hiskey, Collins, Hydrometallurgy 56 (2000) 255";
    /// Nickel transport.
    NickelFilling, "nickel_filling", "NIST study of nickel filling of through-silicon vias, PMC7537468";
    /// Edges and shapes in the plane and round an axis.
    Mensuration, "mensuration", "Elementary mensuration and Pappus's theorem, e.g. CRC Standard Mathematical Tables";
}

/// How a value that is no citation was worked out. Ids as in an Answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MethodId {
    /// Follows from other cited values by a formula in the working.
    Derived,
    /// Of an alloy from its parts: what a charge moves by 1 / sum(share x valence / molar mass), what a volume weighs
    /// by 1 / sum(share / density). The first is the way known as percentage by weight in electrochemical machining.
    Mixing,
    /// Finite elements, axisymmetric or plane, insulating jar, unpolarised anode, linear kinetics.
    FiniteElements,
}

impl MethodId {
    /// The id as text.
    pub fn id(self) -> &'static str {
        match self {
            MethodId::Derived => "derived",
            MethodId::Mixing => "mixing",
            MethodId::FiniteElements => "finite_elements",
        }
    }
}

/// The source of one value.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Source {
    /// Printed in a work, at a place in it.
    Published {
        /// The work.
        work: WorkId,
        /// Page, table or section.
        locator: &'static str,
    },
    /// Worked out here.
    Computed {
        /// How.
        method: MethodId,
    },
    /// A fact of the trade without a source.
    CommonPractice,
    /// Recalled, not looked up.
    FromMemory,
}

impl Source {
    /// Whether a person may put their own value in its place.
    pub fn may_be_overridden(self) -> bool {
        !matches!(self, Source::Published { .. })
    }
}

/// A value and where it comes from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cited<T> {
    /// The value.
    pub value: T,
    /// Its source.
    pub source: Source,
}

impl<T> Cited<T> {
    /// Pairs a value with its source.
    pub const fn new(value: T, source: Source) -> Self {
        Self { value, source }
    }
}

/// What a catalogue field can hold.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Datum<Q> {
    /// Not known: ask the solution's own sheet.
    Unknown,
    /// One value.
    Value(Cited<Q>),
    /// Lowest, typical, highest.
    Band(Cited<Band<Q>>),
}

impl<Q: Copy> Datum<Q> {
    /// The value, or a band's typical one.
    pub fn typical(&self) -> Option<Q> {
        match self {
            Datum::Unknown => None,
            Datum::Value(v) => Some(v.value),
            Datum::Band(b) => Some(b.value.typ),
        }
    }

    /// The source, where there is a value.
    pub fn source(&self) -> Option<Source> {
        match self {
            Datum::Unknown => None,
            Datum::Value(v) => Some(v.source),
            Datum::Band(b) => Some(b.source),
        }
    }
}
