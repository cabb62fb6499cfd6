//! Words for sessions, for what went wrong, and for the way in again.

use super::{labels, number};
use crate::state::at;
use planner::Named;
use planner::reentry::{Reentry, ReentryKind};
use planner::sessions::Doing;
use quantity::{AnyQuantity, Quantity, Range, Thickness};

/// Heading of when somebody is there.
pub const ATTEND: &str = "When are you there?";
/// Under it.
pub const ATTEND_NOTE: &str = "A long run in sessions that somebody attends, back from a date. With nothing between them it is one session a day, the work lifted out, rinsed and dried.";
/// Heading of the sessions.
pub const SESSIONS: &str = "Sessions";
/// Heading of an accident.
pub const WRONG: &str = "Something went wrong";
/// What was there, what went, what is left.
pub const HAD: &str = "Was there";
/// What went.
pub const LOST: &str = "Went";
/// What is left.
pub const LEFT: &str = "Is left";
/// A layer that may be gone in places.
pub const MEASURE_OHMS: &str = "So thin over the coat, it may be gone in places. Rinse, dry, and measure the ohms from end to end before you go on; paint again where it does not conduct.";
/// Heading of the way in.
pub const GO_ON: &str = "How to go on";
/// Heading of the job that remains.
pub const REMAINS: &str = "What remains";

/// What is still to be said.
pub fn say_first(label: &str) -> String {
    ["Say first: ", label, "."].concat()
}

/// The label of a field.
pub(super) fn field(plain: &str) -> &'static str {
    match plain {
        at::SESSION => "Longest session",
        at::BETWEEN => "Between two sessions",
        at::DUE => "Done by, like 2026-12-05 16:00",
        at::CURE => "Sealer cures",
        at::DRY => "Coat dries",
        at::HAPPENED => "What happened",
        at::HAPPENED_IN => "In which step",
        at::HAPPENED_AT => "How long after its start",
        at::GAP => "Current was away for, if known",
        at::REVERSED_FOR => "Wrong way round for",
        at::REVERSED_CURRENT => "Current meanwhile",
        at::FILED_PIECE => "From which piece",
        at::FILED_MASS => "Filed off, by mass",
        at::FILED_AREA => "or: bare now",
        _ => "",
    }
}

/// What stands in an empty field.
pub(super) fn empty(address: &str) -> &'static str {
    match address {
        at::SESSION => "any",
        at::DUE => "no date",
        at::CURE | at::DRY => "usual",
        at::REVERSED_CURRENT => "as set",
        _ => "–",
    }
}

/// Words of a choice and their labels.
pub(super) fn options(plain: &str) -> &'static [(&'static str, &'static str)] {
    match plain {
        at::HAPPENED => &[
            ("power_cut", "the current was away"),
            ("reversed", "the leads were swapped"),
            ("filed", "nodules were filed off"),
        ],
        _ => &[],
    }
}

/// A step: the one that covers the coat, or what it runs in.
pub fn step<'a>(id: &str, bath: &'a str) -> &'a str {
    if id == "s1" { "covering" } else { bath }
}

/// A stretch of time: what is done, the how many-th session of all.
pub fn stretch(doing: Doing, n: usize, of: usize) -> String {
    match doing {
        Doing::Cure => "The sealer cures".to_owned(),
        Doing::Dry => "The coat dries".to_owned(),
        Doing::Session if of < 2 => "Session".to_owned(),
        Doing::Session => format!("Session {n} of {of}"),
    }
}

/// The latest start, what there is at the end, and where a time comes from.
pub fn by_then(latest: Option<&str>, layer: Option<Thickness>, deep: bool) -> String {
    let mut said = Vec::new();
    if let Some(local) = latest {
        said.push(["Begin by ", &day(local), "."].concat());
    }
    if let Some(t) = layer {
        let end = if deep { " deep." } else { " on average." };
        said.push(["Then ", &number::thickness(t), end].concat());
    }
    said.join(" ")
}

/// Before which sessions.
pub fn before_sessions(which: &[String]) -> String {
    ["Before session ", &which.join(", "), ":"].concat()
}

const MONTHS: [&str; 12] = [
    "Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec",
];

/// `Sat 5 Dec, 16:00`, from `2026-12-05T16:00`.
pub fn day(local: &str) -> String {
    let part = |from: usize, to: usize| local.get(from..to).unwrap_or_default();
    let month: usize = part(5, 7).parse().unwrap_or_default();
    let weekday = labels::weekday(number::weekday_index(part(0, 10)));
    let day = part(8, 10).trim_start_matches('0');
    let month = MONTHS
        .get(month.wrapping_sub(1))
        .copied()
        .unwrap_or_default();
    [weekday, "\u{a0}", day, "\u{a0}", month, ", ", part(11, 16)].concat()
}

/// A thickness and between what it lies.
pub fn range(range: &Range<Thickness>) -> String {
    let mut said = number::thickness(range.likely);
    if range.low != range.high {
        let two = |t| number::micrometres(t, 2);
        said.push_str(&[" (", &two(range.low), super::TO, &two(range.high), ")"].concat());
    }
    said
}

/// How to enter again, with its numbers; what has none is left out.
pub fn reenter(reentry: &Reentry) -> String {
    let of = |name: &str| reentry.numbers.iter().find(|n: &&Named| n.name == name);
    let say = |name: &str| {
        of(name).map_or(String::new(), |n| match n.value {
            AnyQuantity { key_unit: "s", si } => number::time(quantity::Time::from_si(si)),
            AnyQuantity {
                key_unit: "frac",
                si,
            } => number::percent(si),
            value => number::any(value),
        })
    };
    let first = match reentry.kind {
        ReentryKind::GoOn => return "Nothing happened to the layer: go on.".to_owned(),
        ReentryKind::StrikeAgain => {
            return "The surface is passive by now, or another metal came down on it: clean it as its base asks for, strike again, then go on.".to_owned();
        }
        ReentryKind::LookAtFilm => {
            return "Look at the film and patch it where it lifts. Wet the sheet, look at the leads once more, and go on.".to_owned();
        }
        ReentryKind::HalfCurrent => "Rinse".to_owned(),
        ReentryKind::MildEtch => [
            "Rub with wet pumice, or mild persulfate for ",
            &say("etch"),
            ". Rinse",
        ]
        .concat(),
        ReentryKind::Afresh => ["Degrease, mild persulfate for ", &say("etch"), ". Rinse"].concat(),
    };
    let film = match reentry.kind {
        ReentryKind::Afresh => " Water must stay on it as a film.",
        _ => "",
    };
    let mut said = [
        &first,
        ", dip for ",
        &say("dip"),
        " in sulfuric acid, ",
        &say("acid"),
        " by volume, rinse.",
        film,
    ]
    .concat();
    if of("current").is_some() {
        said.push_str(
            &[
                " Hang it in with the current on, at ",
                &say("current"),
                " for ",
                &say("held"),
                ", then go on.",
            ]
            .concat(),
        );
    }
    said
}

/// What to take care of in it.
pub fn care(kind: ReentryKind) -> &'static str {
    match kind {
        ReentryKind::GoOn => "Dry hands; supply off before you touch clips or leads.",
        ReentryKind::HalfCurrent | ReentryKind::MildEtch | ReentryKind::Afresh => {
            "Acid and persulfate burn, persulfate feeds fire: goggles, nitrile gloves, fresh air; acid into water, never water into acid; persulfate in a vented bottle, away from anything that burns. Used dips are metal waste. Their safety data sheets and your local rules decide."
        }
        ReentryKind::StrikeAgain => {
            "Cleaners, dips and strikes burn: goggles, nitrile gloves, fresh air; no acid where cyanide may be. A strike that is a shop's work stays one. The safety data sheets and your local rules decide."
        }
        ReentryKind::LookAtFilm => {
            "Supply off before you reach in; goggles and nitrile gloves; varnish dries in fresh air, away from flames. The safety data sheets decide."
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_way_in_and_every_stretch_has_words_and_care() {
        for kind in ReentryKind::ALL {
            let reentry = Reentry {
                kind: *kind,
                numbers: Vec::new(),
            };
            assert!(reenter(&reentry).len() > 20, "{kind:?}");
            assert!(care(*kind).len() > 20, "{kind:?}");
        }
        for doing in Doing::ALL {
            assert!(!stretch(*doing, 1, 1).is_empty(), "{doing:?}");
        }
    }

    #[test]
    fn the_numbers_of_a_way_in_are_said() {
        use quantity::{Current, Fraction, Time};
        let reentry = Reentry {
            kind: ReentryKind::MildEtch,
            numbers: vec![
                Named::new("etch", Time::seconds(45.0)),
                Named::new("dip", Time::seconds(30.0)),
                Named::new("acid", Fraction::of_si(0.1)),
                Named::new("current", Current::milliampere(58.0)),
                Named::new("held", Time::minutes(5.0)),
            ],
        };
        let said = reenter(&reentry).replace('\u{a0}', " ");
        for number in ["45 s", "30 s", "10 %", "58.0 mA", "5 min"] {
            assert!(said.contains(number), "{number}: {said}");
        }
    }

    #[test]
    fn a_day_is_named_with_its_date() {
        // 5 December 2026 is a Saturday: any calendar.
        assert_eq!(
            day("2026-12-05T16:00").replace('\u{a0}', " "),
            "Sat 5 Dec, 16:00"
        );
    }
}
