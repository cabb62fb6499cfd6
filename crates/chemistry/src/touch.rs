//! What may touch what: a base metal in a solution.

use crate::notes::{self, NoteId};
use crate::solution::{Family, Process, Solution};
use crate::source::{MethodId, Source, WorkId};

/// Kinds of base that behave alike in a bath.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Base {
    /// Copper.
    Copper,
    /// Brass, gilding metal.
    Brass,
    /// Bronze with tin or silicon.
    Bronze,
    /// Copper, nickel and zinc.
    NickelSilver,
    /// Fine silver, sterling.
    Silver,
    /// Gold alloys of high carat; low ones are as brass.
    Gold,
    /// Platinum, palladium, rhodium, ruthenium.
    PlatinumGroup,
    /// Iron and steel.
    Steel,
    /// Stainless.
    Stainless,
    /// Nickel, old or passive.
    Nickel,
    /// Zinc alloy, tin, pewter, lead, tin-lead solder.
    ZincOrTin,
    /// Aluminium.
    Aluminium,
    /// Titanium, niobium.
    Valve,
    /// A conductive coat on what does not conduct.
    Coat,
}

/// What comes of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// It can be done, with what the note says.
    Good,
    /// Another layer first, as the note says.
    NeedsStrike,
    /// Never.
    Never,
    /// Not in a studio: a licensed shop does it.
    SendOut,
}

/// A base in a solution.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Touch {
    /// What comes of it.
    pub verdict: Verdict,
    /// Why, or what to do.
    pub note: NoteId,
    /// Where that comes from.
    pub source: Source,
}

/// The kind of base that an element's or alloy's id stands for; none for those nobody works on.
pub fn base_of(metal: &str) -> Option<Base> {
    Some(match metal {
        "Cu" | "C11000" => Base::Copper,
        "C26000" | "C23000" | "C22000" => Base::Brass,
        "C51000" | "C65500" | "CuSn8" => Base::Bronze,
        "C75200" => Base::NickelSilver,
        "Ag" | "Ag999" | "Ag925" => Base::Silver,
        "Au" | "Au585" | "Au750" => Base::Gold,
        "Pt" | "Pd" | "Rh" | "Ru" | "PdNi20" => Base::PlatinumGroup,
        "Fe" => Base::Steel,
        "S30400" | "S31603" => Base::Stainless,
        "Ni" => Base::Nickel,
        "Zn" | "Sn" | "Pb" => Base::ZincOrTin,
        "Al" | "A91100" => Base::Aluminium,
        "Ti" | "Nb" | "R50400" | "R04200" => Base::Valve,
        _ => return None,
    })
}

const CP: Source = Source::CommonPractice;
const MEM: Source = Source::FromMemory;
const DER: Source = Source::Computed {
    method: MethodId::Derived,
};
const BARRIER: Source = Source::Published {
    work: WorkId::Heliyon24,
    locator: "abstract",
};
const STEEL_COPPER: Source = Source::Published {
    work: WorkId::Mfg12,
    locator: "p. 325",
};
const STEEL_CITRATE: Source = Source::Published {
    work: WorkId::CitrateCopper64,
    locator: "abstract",
};
const STEEL_NICKEL: Source = Source::Published {
    work: WorkId::NickelPredip,
    locator: "2 % sulfuric dip",
};
const OLD_NICKEL: Source = Source::Published {
    work: WorkId::Mfg13,
    locator: "p. 156",
};

const SULFURIC: Source = Source::Published {
    work: WorkId::Papapanoyiotou98,
    locator: "abstract",
};

type Row = (Base, Family, Verdict, NoteId, Source);

#[rustfmt::skip]
const ROWS: &[Row] = {
    use Base::*;
    use Verdict::{Good, NeedsStrike, Never, SendOut};
    use notes::*;
    &[
        // Laying down.
        (Copper, Family::AcidCopper, Good, TOUCH_CLEAN_DIP, CP),
        (Copper, Family::MildCopper, Good, TOUCH_CLEAN_DIP, CP),
        (Copper, Family::Nickel, Good, TOUCH_CLEAN_DIP, CP),
        (Copper, Family::Silver, NeedsStrike, TOUCH_DISPLACED_FILM, DER),
        (Copper, Family::Gold, NeedsStrike, TOUCH_COPPER_MIGRATES, BARRIER),
        (Copper, Family::Rhodium, NeedsStrike, TOUCH_BARRIER_BELOW, CP),
        (Copper, Family::Palladium, NeedsStrike, TOUCH_DISPLACED_FILM, DER),
        (Copper, Family::Bronze, Good, TOUCH_CLEAN_DIP, MEM),
        (Brass, Family::AcidCopper, Good, TOUCH_CLEAN_DIP, CP),
        (Brass, Family::MildCopper, Good, TOUCH_CLEAN_DIP, CP),
        (Brass, Family::Nickel, Good, TOUCH_CLEAN_DIP, CP),
        (Brass, Family::Silver, NeedsStrike, TOUCH_DISPLACED_FILM, DER),
        (Brass, Family::Gold, NeedsStrike, TOUCH_COPPER_MIGRATES, BARRIER),
        (Brass, Family::Rhodium, NeedsStrike, TOUCH_BARRIER_BELOW, CP),
        (Brass, Family::Palladium, NeedsStrike, TOUCH_DISPLACED_FILM, DER),
        (Brass, Family::Bronze, Good, TOUCH_CLEAN_DIP, MEM),
        (Bronze, Family::AcidCopper, Good, TOUCH_CLEAN_DIP, CP),
        (Bronze, Family::MildCopper, Good, TOUCH_CLEAN_DIP, CP),
        (Bronze, Family::Nickel, NeedsStrike, TOUCH_CITRATE_FIRST, CP),
        (Bronze, Family::Silver, NeedsStrike, TOUCH_DISPLACED_FILM, DER),
        (Bronze, Family::Gold, NeedsStrike, TOUCH_COPPER_MIGRATES, BARRIER),
        (Bronze, Family::Rhodium, NeedsStrike, TOUCH_BARRIER_BELOW, CP),
        (Bronze, Family::Palladium, NeedsStrike, TOUCH_DISPLACED_FILM, DER),
        (NickelSilver, Family::AcidCopper, NeedsStrike, TOUCH_CITRATE_FIRST, CP),
        (NickelSilver, Family::MildCopper, Good, TOUCH_IS_THE_STRIKE, CP),
        (NickelSilver, Family::Nickel, NeedsStrike, TOUCH_CITRATE_FIRST, CP),
        (NickelSilver, Family::Silver, NeedsStrike, TOUCH_DISPLACED_FILM, DER),
        (NickelSilver, Family::Gold, NeedsStrike, TOUCH_COPPER_MIGRATES, BARRIER),
        (NickelSilver, Family::Rhodium, NeedsStrike, TOUCH_BARRIER_BELOW, CP),
        (NickelSilver, Family::Palladium, NeedsStrike, TOUCH_DISPLACED_FILM, DER),
        (Silver, Family::AcidCopper, Good, TOUCH_CLEAN, CP),
        (Silver, Family::MildCopper, Good, TOUCH_CLEAN, CP),
        (Silver, Family::Nickel, Good, TOUCH_CLEAN, CP),
        (Silver, Family::Silver, Good, TOUCH_CLEAN, CP),
        (Silver, Family::Gold, Good, TOUCH_THIN_GOLD_DARKENS, CP),
        (Silver, Family::Rhodium, NeedsStrike, TOUCH_TARNISHES_THROUGH, CP),
        (Gold, Family::Gold, NeedsStrike, TOUCH_GOLD_FLASH_FIRST, CP),
        (Gold, Family::Rhodium, Good, TOUCH_CLEAN, MEM),
        (Gold, Family::Palladium, Good, TOUCH_CLEAN, MEM),
        (PlatinumGroup, Family::Gold, Good, TOUCH_CLEAN, MEM),
        (PlatinumGroup, Family::Rhodium, Good, TOUCH_CLEAN, MEM),
        (PlatinumGroup, Family::Palladium, Good, TOUCH_CLEAN, MEM),
        (Steel, Family::AcidCopper, Never, TOUCH_DISPLACEMENT_COPPER, STEEL_COPPER),
        (Steel, Family::MildCopper, Good, TOUCH_IS_THE_STRIKE, STEEL_CITRATE),
        (Steel, Family::Nickel, Good, TOUCH_CLEAN_DIP, STEEL_NICKEL),
        (Steel, Family::Silver, Never, TOUCH_NOT_DIRECTLY, DER),
        (Steel, Family::Gold, Never, TOUCH_NOT_DIRECTLY, DER),
        (Steel, Family::Rhodium, Never, TOUCH_NOT_DIRECTLY, DER),
        (Steel, Family::Palladium, Never, TOUCH_NOT_DIRECTLY, DER),
        (ZincOrTin, Family::AcidCopper, Never, TOUCH_DISSOLVES, CP),
        (ZincOrTin, Family::MildCopper, SendOut, TOUCH_SEND_OUT_ZINC, STEEL_COPPER),
        (ZincOrTin, Family::Nickel, Never, TOUCH_NOT_DIRECTLY, CP),
        (ZincOrTin, Family::NickelStrike, Never, TOUCH_DISSOLVES, CP),
        (ZincOrTin, Family::Silver, Never, TOUCH_NOT_DIRECTLY, CP),
        (ZincOrTin, Family::Gold, Never, TOUCH_NOT_DIRECTLY, CP),
        (ZincOrTin, Family::Rhodium, Never, TOUCH_DISSOLVES, CP),
        (ZincOrTin, Family::Palladium, Never, TOUCH_NOT_DIRECTLY, CP),
        (Aluminium, Family::AcidCopper, Never, TOUCH_ZINCATE, CP),
        (Aluminium, Family::MildCopper, Never, TOUCH_ZINCATE, CP),
        (Aluminium, Family::Nickel, Never, TOUCH_ZINCATE, CP),
        (Aluminium, Family::Silver, Never, TOUCH_ZINCATE, CP),
        (Aluminium, Family::Gold, Never, TOUCH_ZINCATE, CP),
        (Aluminium, Family::Rhodium, Never, TOUCH_ZINCATE, CP),
        (Aluminium, Family::Palladium, Never, TOUCH_ZINCATE, CP),
        (Stainless, Family::AcidCopper, SendOut, TOUCH_CHLORIDE_NICKEL_FIRST, CP),
        (Stainless, Family::MildCopper, SendOut, TOUCH_CHLORIDE_NICKEL_FIRST, CP),
        (Stainless, Family::Nickel, SendOut, TOUCH_CHLORIDE_NICKEL_FIRST, CP),
        (Stainless, Family::NickelStrike, Good, TOUCH_IS_THE_STRIKE, OLD_NICKEL),
        (Nickel, Family::AcidCopper, Good, TOUCH_REACTIVATE, OLD_NICKEL),
        (Nickel, Family::Nickel, Good, TOUCH_REACTIVATE, OLD_NICKEL),
        (Nickel, Family::NickelStrike, Good, TOUCH_IS_THE_STRIKE, OLD_NICKEL),
        (Nickel, Family::Silver, NeedsStrike, TOUCH_DISPLACED_FILM, CP),
        (Nickel, Family::Gold, NeedsStrike, TOUCH_GOLD_FLASH_FIRST, CP),
        (Nickel, Family::Rhodium, Good, TOUCH_IF_ACTIVE, CP),
        (Nickel, Family::Palladium, Good, TOUCH_IF_ACTIVE, MEM),
        (Coat, Family::AcidCopper, Good, TOUCH_IF_COAT_GOOD, CP),
        (Coat, Family::MildCopper, Good, TOUCH_IF_COAT_GOOD, CP),
        (Coat, Family::Nickel, NeedsStrike, TOUCH_STRESS_CRACKS, CP),
        (Coat, Family::Silver, NeedsStrike, TOUCH_SILVER_PAINT_LIFTS, CP),
        (Coat, Family::Gold, NeedsStrike, TOUCH_AFTER_COPPER, CP),
        (Coat, Family::Rhodium, NeedsStrike, TOUCH_AFTER_COPPER, CP),
        (Coat, Family::Palladium, NeedsStrike, TOUCH_AFTER_COPPER, CP),
        // Etching.
        (Copper, Family::SulfateEtch, Good, TOUCH_ETCH_FIRST_CHOICE, CP),
        (Copper, Family::SulfuricEtch, Good, TOUCH_ETCH_SECOND_CHOICE, SULFURIC),
        (Copper, Family::CopperNitrateEtch, Good, TOUCH_ETCH_SECOND_CHOICE, CP),
        (Copper, Family::SodiumNitrateEtch, Good, TOUCH_ETCH_SECOND_CHOICE, CP),
        (Copper, Family::ChlorideEtch, Never, TOUCH_ETCH_CHLORIDE, CP),
        (Copper, Family::NitricEtch, Never, TOUCH_ETCH_FUME, CP),
        (Copper, Family::SilverEtch, Never, TOUCH_ETCH_DISPLACES_SILVER, DER),
        (Brass, Family::SulfateEtch, Good, TOUCH_ETCH_FIRST_CHOICE, CP),
        (Brass, Family::SodiumNitrateEtch, Good, TOUCH_ETCH_SECOND_CHOICE, CP),
        (Brass, Family::ChlorideEtch, Never, TOUCH_ETCH_CHLORIDE, CP),
        (Brass, Family::NitricEtch, Never, TOUCH_ETCH_FUME, CP),
        (Brass, Family::SilverEtch, Never, TOUCH_ETCH_DISPLACES_SILVER, DER),
        (Bronze, Family::SulfateEtch, Good, TOUCH_ETCH_TIN_SLUDGE, CP),
        (Bronze, Family::SodiumNitrateEtch, Good, TOUCH_ETCH_SECOND_CHOICE, CP),
        (Bronze, Family::ChlorideEtch, Never, TOUCH_ETCH_CHLORIDE, CP),
        (Bronze, Family::NitricEtch, Never, TOUCH_ETCH_FUME, CP),
        (Bronze, Family::SilverEtch, Never, TOUCH_ETCH_DISPLACES_SILVER, DER),
        (NickelSilver, Family::SulfateEtch, SendOut, TOUCH_ETCH_NICKEL_SHOP, CP),
        (NickelSilver, Family::ChlorideEtch, Never, TOUCH_ETCH_CHLORIDE, CP),
        (NickelSilver, Family::NitricEtch, Never, TOUCH_ETCH_FUME, CP),
        (NickelSilver, Family::SilverEtch, Never, TOUCH_ETCH_DISPLACES_SILVER, DER),
        (Silver, Family::SilverEtch, Good, TOUCH_ETCH_FIRST_CHOICE, CP),
        (Silver, Family::SodiumNitrateEtch, Never, TOUCH_ETCH_SILVER_MUD, CP),
        (Silver, Family::ChlorideEtch, Never, TOUCH_ETCH_CHLORIDE_SEALS, CP),
        (Silver, Family::NitricEtch, Never, TOUCH_ETCH_FUME, CP),
    ]
};

/// Bases that no etch here is for.
const NO_ETCH: &[Base] = &[
    Base::Gold,
    Base::PlatinumGroup,
    Base::Aluminium,
    Base::ZincOrTin,
    Base::Valve,
    Base::Steel,
    Base::Stainless,
];

/// What comes of `base` in `solution`; none where nobody has said.
pub fn touch(base: Base, solution: &Solution) -> Option<Touch> {
    if solution.process == Process::Etch && NO_ETCH.contains(&base) {
        return Some(Touch {
            verdict: Verdict::Never,
            note: notes::TOUCH_ETCH_NONE_HERE,
            source: CP,
        });
    }
    ROWS.iter()
        .find(|(b, family, ..)| *b == base && *family == solution.family)
        .map(|&(_, _, verdict, note, source)| Touch {
            verdict,
            note,
            source,
        })
}

/// The same for an element or an alloy by its id.
pub fn touch_metal(metal: &str, solution: &Solution) -> Option<Touch> {
    touch(base_of(metal)?, solution)
}

/// Every cell of the matrix, for whoever prints or checks it.
pub fn cells() -> impl Iterator<Item = (Base, Family, Touch)> {
    ROWS.iter().map(|&(base, family, verdict, note, source)| {
        (
            base,
            family,
            Touch {
                verdict,
                note,
                source,
            },
        )
    })
}
