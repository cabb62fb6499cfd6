//! Ways out in words: what to do, and what would come of it.

use super::{labels, number};
use planner::WayOut;
use planner::ways::{To, Way};
use quantity::AnyQuantity;

/// Before the ways out of a limit.
pub const WAYS: &str = "What would lift it";
/// Stands after a way out was tried.
pub const TRIED: &str = "Changed as you asked.";

/// What a thief is called on the bar.
pub const THIEF: &str = "thief";

/// Heading of the same layer on all.
pub const FAIR: &str = "The same on all";
/// Between a piece and when it is taken out.
pub const OUT_AFTER: &str = ": take out after ";
/// Puts it into the plan.
pub const TRY: &str = "Plan it so";
/// No moments make it the same.
pub const NOT_FAIR: &str = "Not here: a piece has more than that before this step.";

/// What each then has.
pub fn all_get(mean: quantity::Thickness) -> String {
    ["Each gets ", &number::thickness(mean), ":"].concat()
}

/// What to do.
pub fn what(way: &WayOut) -> String {
    let at = way.change.at.as_str();
    let ends = |end: &str| at.ends_with(end);
    let value = match way.change.to {
        To::Quantity(q) if q.key_unit == "A" => {
            number::short_current(quantity::Current::of_si(q.si))
        }
        To::Word(word) => labels::option_label(&at.replacen("/s1/", "/s2/", 1), word).to_owned(),
        To::Quantity(q) => said(q),
    };
    let (before, after) = match way.way {
        Way::Turn if ends("/sides") => return "Etch it from both sides".to_owned(),
        Way::Turn => return "Turn the pieces half-way".to_owned(),
        Way::Stir => ("The bath ", ""),
        Way::Setting if ends("/drive") => return "Take the advised current".to_owned(),
        Way::Setting => ("Use ", ""),
        Way::Contact => ("A clean clip: ", ""),
        Way::Time if ends("/local") => return starts(way),
        Way::Time => ("Stop at ", ""),
        Way::Distance => ("Put the anode ", " off"),
        Way::Counter if ends("/over_bar") => {
            return "An anode as long as the row of pieces".to_owned();
        }
        Way::Counter => ("A counter electrode of ", ""),
        Way::Volume => ("Take ", " of bath"),
        Way::Resist => ("Take ", " as film"),
        Way::Batches => ("Hang ", " at once"),
        Way::Thief => (
            "A thief along with it: ",
            " of copper wire, 1\u{a0}mm thick",
        ),
        Way::Series => ("Take ", " vessels, one behind the other"),
        Way::Supply if ends("/display_step") => ("A supply or meter in steps of ", ""),
        Way::Supply if ends("/lowest") => ("A supply from ", " on"),
        Way::Supply => ("A supply up to ", ""),
    };
    [before, &value, after].concat()
}

fn said(q: AnyQuantity) -> String {
    match q.key_unit {
        "A_per_m2" => number::density(quantity::CurrentDensity::of_si(q.si)),
        "m2" => number::area(quantity::WorkArea::of_si(q.si)),
        _ => number::any(q),
    }
}

fn starts(way: &WayOut) -> String {
    let local = way.job.start.as_ref().map_or("", |s| s.local.as_str());
    ["Start by ", local.split_once('T').map_or(local, |(_, t)| t)].concat()
}

/// What would then be set, how long it would take, how thick, and at what cost.
pub fn then(way: &WayOut) -> String {
    let parts = [
        way.set.map(|c| number::current(c, None)),
        way.time.map(number::time),
        way.thickness.map(number::thickness),
        way.cost.map(|c| number::any(c.into())),
    ];
    parts.into_iter().flatten().collect::<Vec<_>>().join(", ")
}
