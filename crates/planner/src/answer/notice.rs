//! What holds a job back, and what to take care of.

use crate::path::FieldPath;
use crate::value::Named;
use chemistry::NoteId;
use serde::Serialize;

/// Kinds of limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum LimitKind {
    /// The current wanted is above what the supply gives.
    SupplyTooSmall,
    /// The current wanted is below what the supply holds.
    SupplyTooLarge,
    /// A display step is too large a share of the current.
    DisplayTooCoarse,
    /// The supply has not the volts.
    VoltsTooFew,
    /// The density is above what the solution takes.
    AboveWindow,
    /// The density is below what the solution takes.
    BelowWindow,
    /// The density is above what an etch takes.
    EtchTooFast,
    /// The density is below what an etch takes.
    EtchTooSlow,
    /// The thickest place would burn or grow trees.
    EdgesBurn,
    /// The step runs into the night.
    Night,
    /// The bore closes before the layer is grown.
    BoreCloses,
    /// The solution needs a shop, and this is none.
    NotForThisPlace,
    /// The base needs another layer first.
    NeedsStrike,
    /// The base must never go into this solution.
    WrongBase,
    /// The base is a licensed shop's work.
    SendOut,
    /// The etch is on the wrong lead: the sheet would be plated.
    WrongLead,
    /// The etch is deeper than the sheet bears.
    TooDeepForStock,
    /// The etch is deeper than the film lasts.
    TooDeepForResist,
    /// The line vanishes: the undercut from both sides meets.
    LineVanishes,
    /// The bath runs below its floor of metal.
    BathRunsLow,
    /// Vessels in series hold unlike areas.
    VesselsUneven,
    /// A contact takes so many volts that its piece falls behind and the others get more.
    PoorContact,
    /// The counter electrode is small beside the work.
    CounterTooSmall,
    /// The counter electrode carries more than it bears.
    CounterTooDense,
    /// More current than the bath's volume bears.
    BathOverloaded,
    /// The ends of a bar get more, or less, than its middle.
    BarEnds,
    /// A constant current that never covers all of a graphite coat.
    CoveringStalls,
    /// The sheet touches the wall of the vessel that is its counter electrode, or nearly.
    TouchesWall,
    /// The heater never brings the bath to its temperature.
    HeaterTooSmall,
    /// It cannot be done by the date.
    TooLate,
    /// Left as it was when a piece leaves, the current burns what stays.
    BurnsIfLeft,
}

impl LimitKind {
    /// Every kind, for tables that must be complete.
    pub const ALL: &'static [LimitKind] = &[
        Self::SupplyTooSmall,
        Self::SupplyTooLarge,
        Self::DisplayTooCoarse,
        Self::VoltsTooFew,
        Self::AboveWindow,
        Self::BelowWindow,
        Self::EtchTooFast,
        Self::EtchTooSlow,
        Self::EdgesBurn,
        Self::Night,
        Self::BoreCloses,
        Self::NotForThisPlace,
        Self::NeedsStrike,
        Self::WrongBase,
        Self::SendOut,
        Self::WrongLead,
        Self::TooDeepForStock,
        Self::TooDeepForResist,
        Self::LineVanishes,
        Self::BathRunsLow,
        Self::VesselsUneven,
        Self::PoorContact,
        Self::CounterTooSmall,
        Self::CounterTooDense,
        Self::BathOverloaded,
        Self::BarEnds,
        Self::CoveringStalls,
        Self::TouchesWall,
        Self::HeaterTooSmall,
        Self::TooLate,
        Self::BurnsIfLeft,
    ];
}

/// Something that is computed but holds the job back.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Limit {
    /// What.
    pub kind: LimitKind,
    /// The step or piece it is about.
    pub at: FieldPath,
    /// Of a step or a bath: the pieces it concerns, where several hang and it may concern only some. Its numbers are those of
    /// the worst of them.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub pieces: Vec<String>,
    /// Its numbers.
    pub numbers: Vec<Named>,
    /// The catalogue's note on it, where there is one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub note: Option<NoteId>,
}

/// Kinds of caution.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum CautionKind {
    /// Copper sulfate with acid: eyes and skin.
    CopperBathSplash,
    /// Live leads over liquid.
    SupplyAndLiquid,
    /// A run that nobody watches.
    Unattended,
    /// A class is never left alone with it.
    ClassAttended,
    /// Used bath and rinse water are waste.
    CopperWaste,
    /// The coat's solvent and dust.
    CoatFumes,
    /// Unknown metal must not be iron, zinc, aluminium or soft solder.
    BaseUnknown,
    /// Strong acid in the bath: burns.
    AcidBurns,
    /// Nitrates feed fire when dry; used sodium nitrate holds ammonia and nitrite.
    NitrateFeedsFire,
    /// Silver nitrate: burns, blindness, explosive with ammonia or alcohol.
    SilverNitrate,
    /// Silver baths: caustic or irritating; never with acid or ammonia that the sheet does not name.
    SilverBath,
    /// Nickel salts: allergy, asthma, cancer by mist, the unborn child.
    NickelAllergy,
    /// Nickel in skin work: the law.
    NickelSkinLaw,
    /// Cyanide may be in it: never acid.
    Cyanide,
    /// A bought gold solution: its sheet rules; it may hold cyanide.
    GoldSheet,
    /// Rhodium: acid burn, allergy, mist.
    RhodiumAcid,
    /// Palladium with ammonia: vapour, allergy; never bleach or silver.
    PalladiumAmmonia,
    /// Chloride with an inert anode makes chlorine.
    ChlorideGas,
    /// An inert anode makes acid mist and gas: cover and extract.
    InertAnodeMist,
    /// Hydrogen collects under a lid.
    HydrogenVent,
    /// The sheet is on plus.
    EtchLead,
    /// Stainless must stay negative: as an anode it gives chromium(VI).
    StainlessCathodeOnly,
    /// Silver grows as crystals that creep to the sheet.
    SilverCrystals,
    /// Used etch is metal waste.
    EtchWaste,
    /// Noble metal rinses go back to the bath or to a refiner.
    NobleWaste,
    /// Never for food or drink.
    NotFood,
    /// No under-age or pregnant person near it.
    UnderAge,
    /// Names of gold layers are law, and differ between countries.
    PlatingNames,
    /// A solution of the person's own: its own sheet rules.
    OwnSheet,
    /// Persulfate: an oxidiser.
    Oxidiser,
    /// Metal dust from filing.
    MetalDust,
    /// A heater in a bath.
    HeaterInBath,
}

impl CautionKind {
    /// Every kind, for tables that must be complete.
    pub const ALL: &'static [CautionKind] = &[
        Self::CopperBathSplash,
        Self::SupplyAndLiquid,
        Self::Unattended,
        Self::ClassAttended,
        Self::CopperWaste,
        Self::CoatFumes,
        Self::BaseUnknown,
        Self::AcidBurns,
        Self::NitrateFeedsFire,
        Self::SilverNitrate,
        Self::SilverBath,
        Self::NickelAllergy,
        Self::NickelSkinLaw,
        Self::Cyanide,
        Self::GoldSheet,
        Self::RhodiumAcid,
        Self::PalladiumAmmonia,
        Self::ChlorideGas,
        Self::InertAnodeMist,
        Self::HydrogenVent,
        Self::EtchLead,
        Self::StainlessCathodeOnly,
        Self::SilverCrystals,
        Self::EtchWaste,
        Self::NobleWaste,
        Self::NotFood,
        Self::UnderAge,
        Self::PlatingNames,
        Self::OwnSheet,
        Self::Oxidiser,
        Self::MetalDust,
        Self::HeaterInBath,
    ];
}

/// When in a step a caution is due.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum When {
    /// Before it begins.
    Before,
    /// While it runs.
    During,
    /// When it is over.
    After,
}

/// A hazard at a step.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Caution {
    /// What.
    pub kind: CautionKind,
    /// The step or piece.
    pub at: FieldPath,
    /// When.
    pub when: When,
}
