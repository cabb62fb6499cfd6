//! The hazards of a solution, and when in the job they are due. The safety data sheets, local codes and licensed practice
//! come first; these are the usual cautions of the trade.

use crate::answer::{CautionKind, When};
use crate::job::{Job, Place};
use crate::plan::PlanBath;
use CautionKind::*;
use When::{After, Before, During};
use chemistry::material::Anode;
use chemistry::notes;
use chemistry::solution::Family;

/// The cautions of this bath, each once.
pub fn of(bath: &PlanBath, job: &Job) -> Vec<(CautionKind, When)> {
    let mut all = of_family(bath.solution.family).to_vec();
    let mut add = |kind, when| {
        if !all.iter().any(|(k, _)| *k == kind) {
            all.push((kind, when));
        }
    };
    let hazards = bath.solution.hazards.value;
    // Burns by the made-up solution's own sheet; what is said of silver nitrate and rhodium includes it. The H314 of the
    // general acid copper is of the acid as bought: diluted it irritates, and the bath's own caution says what to do.
    let diluted = bath.solution.family == Family::AcidCopper && bath.solution.id != "cu_acid_throw";
    let said = diluted || matches!(bath.solution.family, Family::SilverEtch | Family::Rhodium);
    if hazards.contains(&"H314") && !said {
        add(AcidBurns, Before);
    }
    // Acid frees a deadly gas from it.
    if hazards.contains(&"EUH032") {
        add(Cyanide, Before);
        add(UnderAge, Before);
    }
    // Also nickel that comes out of a sheet, or goes down with another metal.
    if bath.metals.iter().any(|m| m.metal == "Ni") {
        add(NickelAllergy, Before);
        add(UnderAge, Before);
        if !bath.etches() {
            add(NickelSkinLaw, After);
        }
    }
    let inert = bath.counter.is_some_and(|m| m.anode == Anode::Stays);
    if inert && !bath.etches() {
        add(InertAnodeMist, During);
        if bath.solution.composition.iter().any(|i| chloride(i.what)) {
            add(ChlorideGas, Before);
        }
    }
    // Hydrogen where the charge does not all make metal, and in acid that holds no metal yet.
    let typical = bath
        .solution
        .efficiency
        .typical()
        .map(quantity::Quantity::si);
    let starts_bare = bath
        .solution
        .rules
        .iter()
        .any(|r| r.value == notes::RULE_HYDROGEN_AT_FIRST);
    if starts_bare || (!bath.etches() && typical.is_some_and(|e| e < 0.97)) {
        add(HydrogenVent, During);
    }
    if job.place == Place::Class && bath.solution.family != Family::AcidCopper {
        add(UnderAge, Before);
    }
    all
}

/// Whether a substance is a chloride in quantity; the trace that brighteners ask for goes by the plain word.
fn chloride(substance: &str) -> bool {
    substance.contains("Cl") || substance.ends_with("_chloride")
}

fn of_family(family: Family) -> &'static [(CautionKind, When)] {
    match family {
        Family::Own => &[(OwnSheet, Before), (NobleWaste, After)],
        Family::AcidCopper => &[
            (CopperBathSplash, Before),
            (CopperWaste, After),
            (NotFood, After),
        ],
        Family::MildCopper => &[(CopperBathSplash, Before), (CopperWaste, After)],
        Family::CyanideCopper => &[(Cyanide, Before), (CopperWaste, After)],
        Family::Nickel | Family::NickelStrike => &[
            (NickelAllergy, Before),
            (UnderAge, Before),
            (NickelSkinLaw, After),
            (NobleWaste, After),
        ],
        Family::Silver => &[(SilverBath, Before), (NobleWaste, After)],
        Family::Gold => &[
            (GoldSheet, Before),
            (PlatingNames, After),
            (NobleWaste, After),
        ],
        Family::Rhodium => &[(RhodiumAcid, Before), (NobleWaste, After)],
        Family::Palladium => &[(PalladiumAmmonia, Before), (NobleWaste, After)],
        Family::Bronze => &[(CopperBathSplash, Before), (CopperWaste, After)],
        Family::Chromium => &[(NickelAllergy, Before)],
        Family::SulfateEtch => &[
            (EtchLead, Before),
            (CopperBathSplash, Before),
            (StainlessCathodeOnly, Before),
            (EtchWaste, After),
        ],
        Family::SulfuricEtch => &[
            (EtchLead, Before),
            (AcidBurns, Before),
            (StainlessCathodeOnly, Before),
            (EtchWaste, After),
        ],
        Family::CopperNitrateEtch | Family::SodiumNitrateEtch => &[
            (EtchLead, Before),
            (NitrateFeedsFire, Before),
            (StainlessCathodeOnly, Before),
            (EtchWaste, After),
        ],
        Family::SilverEtch => &[
            (EtchLead, Before),
            (SilverNitrate, Before),
            (UnderAge, Before),
            (StainlessCathodeOnly, Before),
            (SilverCrystals, During),
            (NobleWaste, After),
        ],
        Family::ChlorideEtch => &[
            (EtchLead, Before),
            (ChlorideGas, Before),
            (EtchWaste, After),
        ],
        Family::NitricEtch | Family::SteelEtch => {
            &[(EtchLead, Before), (AcidBurns, Before), (EtchWaste, After)]
        }
    }
}
