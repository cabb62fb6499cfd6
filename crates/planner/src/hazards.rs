//! The hazards of a solution, and when in the job they are due. The safety data sheets, local codes and licensed practice
//! come first; these are the usual cautions of the trade.

use crate::answer::{CautionKind, When};
use crate::job::{Job, Place};
use crate::plan::PlanBath;
use CautionKind::*;
use When::{After, Before, During};
use chemistry::material::Anode;
use chemistry::solution::Family;

/// The cautions of this bath.
pub fn of(bath: &PlanBath, job: &Job) -> Vec<(CautionKind, When)> {
    let mut all = of_family(bath.solution.family).to_vec();
    let hazards = bath.solution.hazards.value;
    // Burns by the made-up solution's own sheet.
    if hazards.contains(&"H314")
        && !all
            .iter()
            .any(|(k, _)| *k == SilverNitrate || *k == RhodiumAcid)
    {
        all.push((AcidBurns, Before));
    }
    let inert = bath.counter.is_some_and(|m| m.anode == Anode::Stays);
    if inert && !bath.etches() {
        all.push((InertAnodeMist, During));
    }
    // Hydrogen where the charge does not all make metal.
    if !bath.etches()
        && bath
            .solution
            .efficiency
            .typical()
            .is_some_and(|e| quantity::Quantity::si(e) < 0.97)
    {
        all.push((HydrogenVent, During));
    }
    if job.place == Place::Class && bath.solution.family != Family::AcidCopper {
        all.push((UnderAge, Before));
    }
    all
}

fn of_family(family: Family) -> &'static [(CautionKind, When)] {
    match family {
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
        Family::Bronze | Family::Chromium => &[(NickelAllergy, Before)],
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
