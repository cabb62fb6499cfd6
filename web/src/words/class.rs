//! Words of a class around one tank.

use super::number;
use planner::batches::{Batches, FitBy, Group};
use planner::class::{Bell, Needs};
use quantity::{Length, Time, WorkArea};

/// Heading.
pub const CLASS: &str = "The class";
/// Heads of the table at the bell.
pub const HEADS: [&str; 3] = ["Each", "has at the bell", "still owed"];

/// What keeps more from hanging at once.
pub fn fit(by: FitBy) -> &'static str {
    match by {
        FitBy::Current => "the supply\u{2019}s current",
        FitBy::Load => "the litres of bath",
        FitBy::Counter => "the counter electrode",
    }
}

/// How many fit at once, by each, and which of them rules.
pub fn fits(b: &Batches) -> String {
    let each: Vec<String> = b
        .fits
        .iter()
        .map(|f| format!("{} by {}", f.at_once, fit(f.by)))
        .collect();
    let ruled = b.ruled_by.map_or("", fit);
    format!(
        "{} pieces. At once fit: {}. What rules is {ruled}.",
        b.pieces,
        each.join(", ")
    )
}

/// One group after the other.
pub fn group(n: usize, hung: &str, g: &Group) -> String {
    format!(
        "Group {n}: {hung}, {}, {}",
        number::current(g.set, None),
        number::time(g.time)
    )
}

/// How long all groups take.
pub fn in_all(time: Time, lessons: Option<u32>) -> String {
    let lessons = lessons.map_or(String::new(), |n| format!(", {n} lessons"));
    format!("All of it takes {}{lessons}.", number::time(time))
}

/// What would let all hang at once.
pub fn needs(n: &Needs) -> String {
    let mut said = format!(
        "All at once would need {}",
        number::current(n.current, None)
    );
    if let Some(volume) = n.volume {
        said.push_str(", ");
        said.push_str(&number::volume(volume));
    }
    if let Some(facing) = n.facing {
        said.push_str(", a counter electrode of ");
        said.push_str(&number::area(WorkArea::of_si(quantity::Quantity::si(
            facing,
        ))));
    }
    said.push('.');
    said
}

/// What the calipers read at the bell, and at the end.
pub fn witness(bell: Option<&Bell>, end: Option<Length>) -> Option<String> {
    let mm = number::millimetres;
    let at_bell = bell.and_then(|b| b.witness).map(mm);
    let end = end.map(mm);
    let said: Vec<String> = at_bell
        .map(|w| format!("{w} at the bell"))
        .into_iter()
        .chain(end.map(|w| format!("{w} at the end")))
        .collect();
    (!said.is_empty()).then(|| {
        format!(
            "A bare copper wire beside them tells without instruments: the calipers read {}.",
            said.join(", ")
        )
    })
}

/// Some have no piece.
pub fn without(n: u32) -> String {
    format!("{n} students have no piece in this plan.")
}
