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
    /// Edges and shapes in the plane and round an axis.
    Mensuration, "mensuration", "Elementary mensuration and Pappus's theorem, e.g. CRC Standard Mathematical Tables";
}

/// How a value that is no citation was worked out. Ids as in an Answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MethodId {
    /// Follows from other cited values by a formula in the working.
    Derived,
    /// Finite elements, axisymmetric or plane, insulating jar, unpolarised anode, linear kinetics.
    FiniteElements,
}

impl MethodId {
    /// The id as text.
    pub fn id(self) -> &'static str {
        match self {
            MethodId::Derived => "derived",
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
