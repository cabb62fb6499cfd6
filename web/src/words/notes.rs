//! Words for the catalogue's notes, as far as they can reach the page: what a base metal is told by a solution, and why
//! a solution is not for this place.

/// A note in words; empty for one that never leaves the catalogue.
pub fn note(id: &str) -> &'static str {
    match id {
        "home_conditions" => {
            "It asks for a trained adult, good ventilation and a plan for its waste."
        }
        "home_trained_only" => "It holds a gold cyanide salt: trained people only.",
        "home_shop" => "It belongs in a shop.",
        "home_nickel_shop" => {
            "Nickel salts give allergy and harm by breathing, the unborn child too."
        }
        "class_no_silver_nitrate" => "No silver nitrate in a class.",
        "touch_displaced_film" => {
            "Metal comes down by itself and peels: a strike first, or live entry."
        }
        "touch_copper_migrates" => {
            "Copper wanders into the gold: nickel or palladium goes between."
        }
        "touch_barrier_below" => "Nickel or palladium goes below.",
        "touch_tarnishes_through" => {
            "Bare silver tarnishes through: palladium or nickel goes below."
        }
        "touch_displacement_copper" => "Copper comes down by itself and hardly holds.",
        "touch_not_directly" => "Other layers must lie between.",
        "touch_dissolves" => "It dissolves in this bath.",
        "touch_send_out_zinc" => "It needs a pyrophosphate or cyanide strike.",
        "touch_zincate" => "It needs a zincate first, which is not for here.",
        "touch_chloride_nickel_first" => "It needs a chloride nickel strike first.",
        "touch_stress_cracks" => "Stress cracks it on a coat: copper first.",
        "touch_silver_paint_lifts" => "Silver paint lifts here: copper first.",
        "touch_after_copper" => "Copper goes on the coat first.",
        "touch_citrate_first" => "A copper strike from citrate goes first.",
        "touch_gold_flash_first" => "A flash of gold goes first.",
        "touch_etch_nickel_shop" => "It puts nickel into the bath: only a shop set up for nickel.",
        "touch_etch_silver_mud" => "It makes oxide mud and ammonia, which together can explode.",
        "touch_etch_chloride_seals" => "Chloride seals its surface.",
        "touch_etch_chloride" => "Chlorine, and poor lines.",
        "touch_etch_fume" => "Brown fume that harms the lungs hours later.",
        "touch_etch_none_here" => {
            "No etch of this metal here: the wrong chemistry, or poison from it."
        }
        "touch_etch_displaces_silver" => "It draws the silver out of the bath and dissolves.",
        _ => "",
    }
}

#[cfg(test)]
mod tests {
    use super::note;
    use chemistry::solution::{Column, SOLUTIONS};
    use chemistry::touch::{Verdict, cells};
    use chemistry::{Choosable, Setting, notes};
    use std::collections::BTreeSet;

    /// A Limit carries a note in two cases only (`planner::checks`): a base that is not simply good in a solution, and a
    /// solution that needs a shop. All other notes stay in the catalogue: they explain single values, suitable work,
    /// mixing and waste, for which the page has its cautions.
    fn reach_the_page() -> BTreeSet<&'static str> {
        let mut all: BTreeSet<&str> = cells()
            .filter(|(_, _, t)| t.verdict != Verdict::Good)
            .map(|(_, _, t)| t.note)
            .collect();
        all.insert(notes::TOUCH_ETCH_NONE_HERE);
        for solution in SOLUTIONS {
            for setting in [Setting::Home, Setting::Class] {
                if solution.choosable(setting) == Choosable::NeedsShop {
                    all.insert(solution.home_note);
                    all.extend(solution.notes_on(Column::ClassUse));
                }
            }
        }
        all
    }

    #[test]
    fn every_note_that_can_reach_the_page_has_words_and_no_other() {
        let reach = reach_the_page();
        let wrong: Vec<&&str> = notes::ALL
            .iter()
            .filter(|id| note(id).is_empty() == reach.contains(*id))
            .collect();
        assert_eq!(wrong, Vec::<&&str>::new());
        let bytes: usize = notes::ALL.iter().map(|id| note(id).len()).sum();
        assert!(
            bytes < 70 * reach.len(),
            "{bytes} bytes for {}",
            reach.len()
        );
    }
}
