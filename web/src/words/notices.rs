//! Sentences for Problems, Limits and Cautions.

use super::{labels, number};
use crate::state::entries;
use planner::answer::{CautionKind, Limit, LimitKind};
use planner::value::{Absence, Because};
use planner::{Accepted, Named, Problem, ProblemKind};
use quantity::{Concentration, Current, CurrentDensity, Length, Quantity, Time, Voltage};

/// A Problem in words, for the field labelled `label`.
pub fn problem(problem: &Problem, label: &str) -> String {
    let read = problem.read.as_deref().unwrap_or_default();
    let unit = entries::declared(problem.field.as_str()).map_or("", |d| d.unit());
    let accepted = problem
        .accepted
        .as_ref()
        .map(|a| accepted(a, unit))
        .unwrap_or_default();
    match problem.kind {
        ProblemKind::Missing => format!("{label}: type a number{accepted}."),
        ProblemKind::NotANumber => format!("“{read}” is no number{accepted}."),
        ProblemKind::TwoMarks => format!("“{read}” has two decimal marks: which one is meant?"),
        ProblemKind::UnknownUnit => format!("“{read}” is no unit for this{accepted}."),
        ProblemKind::NotFinite => format!("“{read}” is beyond all bounds{accepted}."),
        ProblemKind::TooSmall => format!("{read} is too little{accepted}."),
        ProblemKind::TooLarge => format!("{read} is too much{accepted}."),
        ProblemKind::UnknownWord => format!("“{read}” is not understood{accepted}."),
        ProblemKind::WrongType => format!("{read} is not what belongs here{accepted}."),
        ProblemKind::UnknownField => format!("“{read}” is not known here."),
        ProblemKind::UnknownId => format!("“{read}” is not known{accepted}."),
        ProblemKind::DuplicateId => format!("“{read}” is there twice."),
        ProblemKind::NewerFormat => format!("Written by a newer edition (format {read})."),
        ProblemKind::NotYet => "This edition cannot work this out yet.".to_owned(),
        ProblemKind::NotJson => "This is no question in JSON.".to_owned(),
        ProblemKind::Contradiction => format!("{label}: this contradicts another entry{accepted}."),
        ProblemKind::NotOffered => format!("“{read}” is explained but never used here{accepted}."),
        ProblemKind::NoWindow => {
            format!(
                "How much current “{read}” takes is not known: its own sheet is needed{accepted}."
            )
        }
    }
}

fn accepted(accepted: &Accepted, unit: &str) -> String {
    match accepted {
        Accepted::Between { least, most } => {
            let say = |n: &Named| number::in_symbol(n.value, unit, 4);
            format!("; from {} to {} is fine", say(least), say(most))
        }
        Accepted::OneOf(words) => format!("; try {}", words.join(", ")),
        Accepted::Type(name) => format!("; a {name} is expected"),
        Accepted::Format(n) => format!("; up to format {n}"),
    }
}

/// Seconds as a time, up to the next minute.
fn whole_minutes(seconds: f64) -> Time {
    Time::minutes((seconds / 60.0).ceil())
}

fn get<Q: Quantity>(numbers: &[Named], name: &str) -> Q {
    Q::from_si(
        numbers
            .iter()
            .find(|n| n.name == name)
            .map_or(0.0, |n| n.value.si),
    )
}

/// Limits of one kind in words: a short statement, and what lifts it. The first speaks; only a coarse display names
/// every current it blurs, and hours of the night add up.
pub fn limit(same: &[&Limit]) -> (String, String) {
    let Some(limit) = same.first() else {
        return Default::default();
    };
    let n = &limit.numbers;
    let amps = |name| number::current(get::<Current>(n, name), None);
    let dens = |name| number::density(get::<CurrentDensity>(n, name));
    let times = |name| number::short(get::<quantity::Ratio>(n, name).si(), 2);
    let len = |name| number::any(get::<Length>(n, name).into());
    // The catalogue's own reason, before what to do about it.
    let why = |then: &str| match limit.note.map(super::notes::note) {
        Some(why) if !why.is_empty() => [why, then].join(" "),
        _ => then.to_owned(),
    };
    match limit.kind {
        LimitKind::SupplyTooSmall => {
            // Of several steps the one that wants most.
            let wants = same.iter().map(|l| get::<Current>(&l.numbers, "wanted"));
            let most = wants.reduce(|a, b| if b.si() > a.si() { b } else { a });
            (
            format!("Your supply gives {}, {} would be right.", amps("highest"), most.map_or_else(String::new, |c| number::current(c, None))),
            "The time counts with what it gives. Fewer pieces at once, or another supply, make it quicker.".to_owned(),
        )}
        LimitKind::SupplyTooLarge => (
            format!("Your supply holds no less than {}, {} would be right.", amps("lowest"), amps("wanted")),
            "Hang something else along with it, or put a meter and a finer supply on.".to_owned(),
        ),
        LimitKind::DisplayTooCoarse => {
            let step: Current = get(n, "step");
            let mut blurred: Vec<String> = same
                .iter()
                .map(|l| {
                    let set: Current = get(&l.numbers, "set");
                    let ends = |name| get::<Current>(&l.numbers, name);
                    // Half a step has one decimal more than the display.
                    let fine = Some(step / 2.0);
                    format!(
                        "{} may be {} to {}",
                        number::current(set, Some(step)),
                        number::current_parts(ends("at_least"), fine).0,
                        number::current_parts(ends("at_most"), fine).0
                    )
                })
                .collect();
            blurred.dedup();
            (
                format!("Your supply shows steps of {}:", number::current(step, Some(step))),
                format!(
                    "{}. A meter in series settles it; it takes about {}\u{a0}V itself.",
                    blurred.join(", "),
                    number::tenth_volts(get::<Voltage>(n, "meter_takes"))
                ),
            )
        }
        LimitKind::VoltsTooFew => (
            format!(
                "About {}\u{a0}V are needed, the ceiling is {}\u{a0}V.",
                number::tenth_volts(get::<Voltage>(n, "expected")),
                number::tenth_volts(get::<Voltage>(n, "ceiling"))
            ),
            "The supply will give less current than set. Bring the electrodes nearer, or use less current.".to_owned(),
        ),
        LimitKind::AboveWindow => (
            format!("{} is more than this bath takes ({}).", dens("density"), dens("highest")),
            "The layer gets rough and burnt. Less current, or move the bath.".to_owned(),
        ),
        LimitKind::BelowWindow => (
            format!("{} is less than this bath likes ({}).", dens("density"), dens("lowest")),
            "It grows, but slowly and often dull or uneven.".to_owned(),
        ),
        LimitKind::EtchTooFast => (
            format!("{} is more than this etch takes ({}).", dens("density"), dens("highest")),
            "Salt stands at the sheet: crystals, a rough floor, a film that lifts. Less current, or move the bath.".to_owned(),
        ),
        LimitKind::EtchTooSlow => (
            format!("{} is less than this etch likes ({}).", dens("density"), dens("lowest")),
            "It goes deeper, but slowly: the film has to last as long.".to_owned(),
        ),
        LimitKind::EdgesBurn => (
            format!("The edges get {}; above {} copper burns there.", dens("densest"), dens("bound")),
            "Less current, move the bath, or put the anode all round.".to_owned(),
        ),
        LimitKind::Night => (
            format!(
                "{} of it lie in the night.",
                number::time(whole_minutes(
                    same.iter()
                        .map(|l| get::<Time>(&l.numbers, "in_the_night").si())
                        .sum()
                ))
            ),
            "Start earlier, make it thinner, or split it: lift out, rinse, and go on tomorrow with a fresh acid dip.".to_owned(),
        ),
        LimitKind::NotForThisPlace => (
            "This solution needs a ventilated shop with trained people.".to_owned(),
            why("The numbers stand for such a shop. At home or in a class choose another, or send the piece out."),
        ),
        LimitKind::NeedsStrike => (
            "This base needs another layer first.".to_owned(),
            why("Without it the layer peels."),
        ),
        LimitKind::WrongBase => (
            "This base must not go into this solution.".to_owned(),
            why("Choose another solution, or another base."),
        ),
        LimitKind::SendOut => (
            "This base is work for a licensed shop.".to_owned(),
            why("What it needs is not for a studio."),
        ),
        LimitKind::WrongLead => (
            "The sheet is on the minus lead: it would be plated.".to_owned(),
            "For an etch the sheet goes on plus, the counter electrode on minus.".to_owned(),
        ),
        LimitKind::TooDeepForStock => (
            format!("{} deep is much for a sheet of {}.", len("depth"), len("stock")),
            "At most half of it from one side, a quarter from each of both.".to_owned(),
        ),
        LimitKind::TooDeepForResist => (
            format!("{} deep: this film stays crisp to about {}.", len("depth"), len("lasts")),
            "Etch less deep, take a thicker film, or patch it at every look.".to_owned(),
        ),
        LimitKind::LineVanishes => (
            format!("A land of {} needs a line of {}.", len("land"), len("line")),
            "The undercut from both sides nearly meets: draw it wider, or etch less deep.".to_owned(),
        ),
        LimitKind::BathRunsLow => (
            format!(
                "After this the bath holds {}, less than its floor of {}.",
                number::in_symbol(get::<Concentration>(n, "after").into(), "g/L", 3),
                number::in_symbol(get::<Concentration>(n, "floor").into(), "g/L", 3)
            ),
            "Renew or strengthen it first.".to_owned(),
        ),
        LimitKind::VesselsUneven => (
            format!("The vessels in series hold {} and {}.", number::any(get::<quantity::WorkArea>(n, "least").into()), number::any(get::<quantity::WorkArea>(n, "most").into())),
            "Each takes the whole current: move pieces until the areas are alike.".to_owned(),
        ),
        LimitKind::PoorContact => (
            format!("A poor contact: this piece gets {}, the others about {}.", dens("density"), dens("mean")),
            "Clean and tighten clip and hook, or wind the wire on before you paint.".to_owned(),
        ),
        LimitKind::CounterTooSmall => (
            format!("The counter electrode is {} times the work, at least {} is usual.", times("ratio"), times("least")),
            "Add a plate, or hang less at once.".to_owned(),
        ),
        LimitKind::CounterTooDense => (
            format!("The counter electrode carries {}, it bears {}.", dens("density"), dens("highest")),
            "Add a plate, or use less current.".to_owned(),
        ),
        LimitKind::BathOverloaded => (
            "More current than this volume of bath bears.".to_owned(),
            "Take more bath, or less current.".to_owned(),
        ),
        LimitKind::BarEnds => (
            format!("The end pieces get {} to {} times what the middle ones do.", times("low"), times("high")),
            "Let the anode reach from the middle of the first piece to that of the last, or swap the pieces halfway.".to_owned(),
        ),
        LimitKind::CoveringStalls => (
            format!("{} on bare graphite stalls; above {} it covers all.", dens("density"), dens("stalls_below")),
            "The plated part takes all the current. Set the growth current, with the ceiling at the volts it then needs.".to_owned(),
        ),
        LimitKind::TouchesWall => (
            format!("The sheet is {} from the vessel's wall.", len("gap")),
            "It must not touch: take a wider vessel, or a plate beside it.".to_owned(),
        ),
        LimitKind::HeaterTooSmall => (
            "The heater never brings this bath to its temperature.".to_owned(),
            "Cover the bath, or take a stronger heater.".to_owned(),
        ),
        LimitKind::TooLate => (
            format!("It would have had to begin {} earlier.", number::time(get::<Time>(n, "late"))),
            "Thinner, denser, longer sessions, or a later date.".to_owned(),
        ),
        LimitKind::BurnsIfLeft => (
            format!("When a piece leaves, the same current burns the others ({}).", dens("density")),
            "Turn the current down as you lift it out.".to_owned(),
        ),
        LimitKind::BoreCloses => (
            "The ring would grow shut.".to_owned(),
            "Make it thinner, or start with a wider ring.".to_owned(),
        ),
    }
}

/// A caution in plain words.
pub fn caution(kind: CautionKind) -> &'static str {
    match kind {
        CautionKind::CopperBathSplash => {
            "Splash goggles and nitrile gloves before the lid comes off: the bath harms eyes and skin. If it gets in an eye, rinse 20 minutes and see a doctor. Its safety data sheet and your local rules decide."
        }
        CautionKind::SupplyAndLiquid => {
            "An isolated low-voltage bench supply, fused just above the job, on an outlet with a residual-current switch. It stands higher and to the side; dry hands; no bare clips over the liquid; never reach in to both electrodes with the current on."
        }
        CautionKind::Unattended => {
            "If you leave it: fused and limited supply, tray on a bare hard surface, smoke alarm, lid loose so that gas can leave, children and animals out. If you cannot, lift out and go on later."
        }
        CautionKind::ClassAttended => {
            "In a class the tank is never left alone. One person touches the supply, only the teacher handles acid, eye rinse within ten seconds' walk."
        }
        CautionKind::CopperWaste => {
            "Used bath and rinse water kill water life: never into a drain. Collect, label, and take them where your local authority says."
        }
        CautionKind::CoatFumes => {
            "Sealer and conductive paint: fresh air, no flame while they dry, gloves with resin; dust mask for loose graphite or metal powder."
        }
        CautionKind::AcidBurns => {
            "Strong acid: it burns. Face shield, long gloves, apron; always acid into water, slowly, never water into acid. Eyes: rinse and call an ambulance."
        }
        CautionKind::NitrateFeedsFire => {
            "Nitrates feed fire when dry: never let paper or cloth wetted with them dry, keep them from acid and aluminium. A used sodium nitrate bath holds ammonia and nitrite: fresh air."
        }
        CautionKind::SilverNitrate => {
            "Silver nitrate burns, can blind, and stains skin for weeks. Goggles and gloves; never together with ammonia, alcohol, acetylene or chloride. Eyes: rinse 20 minutes, ambulance."
        }
        CautionKind::SilverBath => {
            "Silver baths are caustic or irritating: goggles and gloves. No acid into them, never keep silver with ammonia. The bottle's own sheet decides."
        }
        CautionKind::NickelAllergy => {
            "Nickel salts give an allergy for life and asthma; their mist can give cancer and harms the unborn child. Exhaust, gloves, no splash, wash after; not at home."
        }
        CautionKind::NickelSkinLaw => {
            "Nickel near skin is governed by law; a nickel layer under thin gold counts too. Say so honestly, and none in pierced jewellery."
        }
        CautionKind::Cyanide => "Cyanide can kill in minutes: not for a studio, never near acid.",
        CautionKind::Oxidiser => {
            "Persulfate feeds fire and eats skin: goggles, gloves, a vented bottle, away from rags and solvents. Its sheet rules."
        }
        CautionKind::MetalDust => {
            "Copper dust harms lungs and eyes: file wet, wear a P2 mask and goggles, sweep up wet. The dust is metal waste."
        }
        CautionKind::HeaterInBath => {
            "A heater in a bath: one made for acid, on an RCD outlet, always under the liquid, off before you reach in. Hot acid burns worse and mists."
        }
        CautionKind::GoldSheet => {
            "A bought gold solution's own sheet comes first: many hold gold cyanide. Gloves; never let it turn more acid than its sheet says."
        }
        CautionKind::RhodiumAcid => {
            "Rhodium baths are strong acid and can give allergy: goggles and gloves, extract the mist, no base metal and no cyanide near."
        }
        CautionKind::PalladiumAmmonia => {
            "Palladium baths can give allergy; with ammonia also vapour: exhaust, gloves. Never bleach or silver with ammonia."
        }
        CautionKind::ChlorideGas => {
            "Chloride with an inert anode makes chlorine; stainless in it gives chromium(VI). Do not do it in a studio. Choking gas: leave, hospital if you cough."
        }
        CautionKind::InertAnodeMist => {
            "An inert anode makes gas and acid mist: cover loosely, extract, keep the current low."
        }
        CautionKind::HydrogenVent => {
            "Hydrogen comes off: never a tight lid, no flame, an open window high up."
        }
        CautionKind::EtchLead => {
            "Before every etch: which lead is on the sheet? The sheet goes on plus, the counter electrode on minus. Connect with the supply off."
        }
        CautionKind::StainlessCathodeOnly => {
            "Stainless is safe only on minus. On plus, or left standing in the bath, it gives off chromium(VI): take it out when the current is off."
        }
        CautionKind::SilverCrystals => {
            "Silver grows as crystals that creep towards the sheet: knock them off hourly, plastic tray, keep and weigh them."
        }
        CautionKind::EtchWaste => {
            "The used etch holds dissolved metal: never into a drain. Collect, label, take it where your local authority says."
        }
        CautionKind::NobleWaste => {
            "First rinses hold noble or harmful metal: their own labelled jar, back to the bath or to a refiner."
        }
        CautionKind::NotFood => {
            "Copper greens food and drink: never for vessels. On skin, lacquer or plate it."
        }
        CautionKind::UnderAge => {
            "Nobody under age, pregnant, nursing or with asthma near this one; a qualified person in charge."
        }
        CautionKind::PlatingNames => {
            "What a gold layer may be called is law, counted as fine gold at the thinnest place, and differs between countries. Name the country before you name the piece."
        }
        CautionKind::OwnSheet => {
            "What is in this bottle only its own sheet says: read hazards, gloves, and first aid there before you open it."
        }
        CautionKind::BaseUnknown => {
            "Iron, steel, zinc, aluminium, pewter and soft solder must not go into this bath: copper coats them by itself and peels, or they dissolve. Find out first: a magnet, the maker, an assay."
        }
    }
}

/// Why a number is missing, and which inputs would bring it.
pub fn absence(absence: &Absence) -> String {
    let first = absence
        .needs
        .first()
        .map(|p| labels::field(p.as_str()))
        .unwrap_or_default();
    match absence.because {
        Because::InputMissing if first.is_empty() => "waits for an entry".to_owned(),
        Because::InputMissing => format!("waits for “{first}”"),
        Because::NoEvennessRow => "not known for this shape in this arrangement".to_owned(),
        Because::NotInCatalogue => "not known for this bath".to_owned(),
        Because::DoesNotApply => String::new(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use planner::FieldPath;

    #[test]
    fn every_caution_limit_problem_and_absence_has_words() {
        for kind in CautionKind::ALL {
            assert!(caution(*kind).len() > 20, "{kind:?}");
        }
        for kind in LimitKind::ALL {
            let (short, lifts) = limit(&[&Limit {
                kind: *kind,
                at: FieldPath::root(),
                pieces: Vec::new(),
                numbers: Vec::new(),
                note: None,
            }]);
            assert!(!short.is_empty() && !lifts.is_empty(), "{kind:?}");
        }
        for kind in ProblemKind::ALL {
            let said = problem(&Problem::at(FieldPath::root(), *kind).reading("x"), "Width");
            assert!(said.ends_with(['.', '?']), "{kind:?}: {said}");
        }
        for because in Because::ALL {
            let said = absence(&Absence {
                because: *because,
                needs: Vec::new(),
            });
            assert!(
                !said.is_empty() || *because == Because::DoesNotApply,
                "{because:?}"
            );
        }
    }

    #[test]
    fn a_unit_that_does_not_fit_is_said_with_what_does() {
        let at = FieldPath::new(crate::state::at::HANGER_WET);
        let Err(p) = planner::fields::HANGER_WET.read_text("15 mn", &at) else {
            panic!("15 mn was read");
        };
        assert_eq!(
            problem(&p, "Wire").replace('\u{a0}', " "),
            "“mn” is no unit for this; from 0 mm to 1000 mm is fine."
        );
    }
}
