//! Sentences for Problems, Limits and Cautions.

use super::{labels, number};
use crate::state::entries;
use planner::answer::{CautionKind, Limit, LimitKind};
use planner::value::{Absence, Because};
use planner::{Accepted, Named, Problem, ProblemKind};
use quantity::{Current, CurrentDensity, Quantity, Time, Voltage};

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

fn get<Q: Quantity>(numbers: &[Named], name: &str) -> Q {
    Q::from_si(
        numbers
            .iter()
            .find(|n| n.name == name)
            .map_or(0.0, |n| n.value.si),
    )
}

/// Limits of one kind in words: a short statement, and what lifts it. The first speaks; only a coarse display names
/// every current it blurs.
pub fn limit(same: &[&Limit]) -> (String, String) {
    let Some(limit) = same.first() else {
        return Default::default();
    };
    let n = &limit.numbers;
    let amps = |name| number::current(get::<Current>(n, name), None);
    let dens = |name| number::density(get::<CurrentDensity>(n, name));
    match limit.kind {
        LimitKind::SupplyTooSmall => (
            format!("Your supply gives {}, {} would be right.", amps("highest"), amps("wanted")),
            "The time counts with what it gives. Fewer pieces at once, or another supply, make it quicker.".to_owned(),
        ),
        LimitKind::SupplyTooLarge => (
            format!("Your supply holds no less than {}, {} would be right.", amps("lowest"), amps("wanted")),
            "Hang something else along with it, or put a meter and a finer supply on.".to_owned(),
        ),
        LimitKind::DisplayTooCoarse => {
            let step: Current = get(n, "step");
            let blurred: Vec<String> = same
                .iter()
                .map(|l| {
                    let set: Current = get(&l.numbers, "set");
                    let half = step / 2.0;
                    format!(
                        "{} may be {} to {}",
                        number::current(set, Some(step)),
                        number::current_parts(set - half, Some(half)).0,
                        number::current_parts(set + half, Some(half)).0
                    )
                })
                .collect();
            (
                format!("Your supply shows steps of {}:", number::current(step, Some(step))),
                format!("{}. A meter in series settles it.", blurred.join(", ")),
            )
        }
        LimitKind::VoltsTooFew => (
            format!(
                "About {} V are needed, the ceiling is {} V.",
                number::tenth_volts(get::<Voltage>(n, "expected")),
                number::tenth_volts(get::<Voltage>(n, "ceiling"))
            ),
            "The supply will give less current than set. Bring the anode nearer, or use less current.".to_owned(),
        ),
        LimitKind::AboveWindow => (
            format!("{} is more than this bath takes ({}).", dens("density"), dens("highest")),
            "The layer gets rough and burnt. Less current, or move the bath.".to_owned(),
        ),
        LimitKind::BelowWindow => (
            format!("{} is less than this bath likes ({}).", dens("density"), dens("lowest")),
            "It grows, but slowly and often dull or uneven.".to_owned(),
        ),
        LimitKind::EdgesBurn => (
            format!("The edges get {}; above {} copper burns there.", dens("densest"), dens("bound")),
            "Less current, move the bath, or put the anode all round.".to_owned(),
        ),
        LimitKind::Night => (
            format!("{} of it lie in the night.", number::time(get::<Time>(n, "in_the_night"))),
            "Start earlier, make it thinner, or split it: lift out, rinse, and go on tomorrow with a fresh acid dip.".to_owned(),
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
                numbers: Vec::new(),
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
