//! Words of the meters, of covering a coat, and of the bath beside the work.

use super::number;
use planner::cover::Covering;
use planner::meter::{Alarm, AlarmKind, Ammeter, Meter};
use planner::warmth::Warmth;
use quantity::{Current, Quantity, Range, Ratio, Time, Voltage};

/// Heading of the meters.
pub const METER: &str = "What the meters show";
/// Heading of a step that covers the coat.
pub const COVERING: &str = "While it covers";
/// Before the readings that mean something is wrong.
pub const ALARMS: &str = "Something is wrong where the volts stand:";
/// The same where the supply holds the volts.
pub const CURRENT_ALARMS: &str = "Something is wrong where the current stands:";
/// Heading of the bath.
pub const BATH: &str = "The bath by itself";

/// Names of what is told of a bath.
pub mod term {
    /// Metal it holds after.
    pub const AFTER: &str = "holds after";
    /// Jobs until it must be renewed.
    pub const JOBS: &str = "jobs like this until it is low";
    /// What the counter electrode loses.
    pub const COUNTER_LOSES: &str = "Counter electrode loses";
    /// What it gains.
    pub const COUNTER_GAINS: &str = "Counter electrode gains";
    /// Its area over the work's.
    pub const RATIO: &str = "Counter electrode over work";
    /// Density on it.
    pub const DENSITY: &str = "Density on it";
    /// Its facing area.
    pub const FACING: &str = "It faces the work with";
    /// Current through the volume.
    pub const LOAD: &str = "Current through a litre";
    /// Warmer than the room.
    pub const WARMER: &str = "Warmer than the room at the end";
    /// Water gone.
    pub const WATER: &str = "Water that dries away";
    /// Heater that holds it.
    pub const HOLDS: &str = "Heater that keeps it warm";
    /// Time the heater takes.
    pub const WARMS: &str = "Your heater warms it in";
}

fn volts(v: Voltage) -> String {
    number::tenth_volts(v)
}

fn between<Q: Quantity>(r: &Range<Q>, say: impl Fn(Q) -> String) -> String {
    [say(r.low), say(r.high)].join(" to ")
}

/// How a coat is covered: how long it takes, what flows first, below what it stalls.
pub fn covering(c: &Covering) -> Vec<String> {
    let mut all = vec![format!(
        "Real coats like this take {} to be covered.",
        between(&c.usual, number::time)
    )];
    if let Some(first) = c.first {
        all.push(format!(
            "At the first touch about {} flow under the ceiling; it rises by itself.",
            number::current(first, None)
        ));
    }
    if let Some(stalls) = c.stalls_below {
        all.push(format!(
            "A current below {} never covers all of it: the plated part takes the whole.",
            number::current(stalls, None)
        ));
    }
    all
}

/// Instead of a ceiling: moments and currents.
pub fn by_hand(moments: &str) -> String {
    format!("By hand instead: {moments}.")
}

/// What the voltmeter shows first and at the end.
pub fn volts_shown(m: &Meter) -> String {
    let say = |v| volts(v) + "\u{a0}V";
    readings(&m.first_minute, &m.at_end, say, volts)
}

/// What the ammeter shows first and at the end, where the supply holds the volts.
pub fn current_shown(m: &Ammeter) -> String {
    let say = |c| number::current(c, None);
    readings(&m.first_minute, &m.at_end, say, say)
}

/// Both readings, each with what it may lie between.
fn readings<Q: Quantity>(
    first: &Range<Q>,
    end: &Range<Q>,
    say: impl Fn(Q) -> String,
    short: impl Fn(Q) -> String,
) -> String {
    format!(
        "About {} in the first minute ({}), {} at the end ({}).",
        say(first.likely),
        between(first, &short),
        say(end.likely),
        between(end, &short)
    )
}

/// Where the ceiling is reached.
pub fn bites(r: &Range<Current>) -> String {
    let say = |c| number::current(c, None);
    format!(
        "The ceiling is reached at about {} ({}): more will not flow. Nearer electrodes or a higher ceiling lift it.",
        say(r.likely),
        between(r, say)
    )
}

/// A reading that means something is wrong: of the volts, or of the current where the volts are held.
pub fn alarm(alarm: &Alarm) -> String {
    let number_of = |name: &str| alarm.numbers.iter().find(|n| n.name == name);
    let within = number_of("within").map_or(0.0, |n| n.value.si);
    let within = number::time(Time::seconds(within));
    let (side, value) = ["above", "below", "near"]
        .iter()
        .find_map(|side| Some((*side, number_of(side)?.value)))
        .map_or(("", String::new()), |(side, value)| {
            let said = match value.key_unit {
                "A" => number::current(Current::of_si(value.si), None),
                _ => volts(Voltage::of_si(value.si)) + "\u{a0}V",
            };
            (side, said)
        });
    let at = match side {
        "above" => ["above ", &value].concat(),
        "below" => ["below ", &value].concat(),
        _ => ["near ", &value].concat(),
    };
    use AlarmKind as K;
    match alarm.kind {
        K::AtCeiling => {
            format!(
                "at the ceiling ({value}), or rise in the first minute: contact, clip, polarity"
            )
        }
        K::AtMost => format!("at {value}, all your supply gives: the volts are no longer held"),
        K::NoCurrent => format!("{at}: an open clip, a lead that is off, the polarity"),
        K::NoFall => format!("still at {value} after {within}: the coat, or its contact"),
        K::NoRise => format!("still {at} after {within}: the coat, or its contact"),
        K::Rising | K::Falling => format!("{at} {within} later: a film on the anode, or salt"),
        K::Passive | K::Stifled => format!("{at}: the anode has gone passive"),
        K::Short | K::Surge => format!("suddenly {at}: a short, or a tree that touches"),
        K::Half | K::DoubleCurrent => format!("{at}: twice the area you said, or a short"),
        K::Twice | K::HalfCurrent => {
            format!("{at}: half the area, a contact, a cold bath or one low in acid")
        }
    }
}

/// How much more area there is at the end, and what that does where the current stays, or where the volts are held.
pub fn fatter(r: Ratio, held: bool) -> String {
    let then = if held {
        "more is the current at the same volts"
    } else {
        "less is the density at the same current"
    };
    format!(
        "It grows fatter: at the end {} times the area, so much {then}.",
        number::short(r.si(), 3)
    )
}

/// By how much a bath is warmer, and how warm it would get.
pub fn warmer(w: &Warmth) -> String {
    let kelvin = |t: quantity::TemperatureDifference| number::significant(t.si(), 2) + "\u{a0}K";
    format!(
        "{} ({})",
        kelvin(w.at_end.likely),
        between(&w.at_end, kelvin)
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_alarm_has_words() {
        for kind in AlarmKind::ALL {
            let said = alarm(&Alarm {
                kind: *kind,
                numbers: Vec::new(),
            });
            assert!(said.len() > 20, "{kind:?}");
        }
    }
}
