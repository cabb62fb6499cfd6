//! Words of the answer: outcome, drawings, densities, the clock, the first two minutes.

use super::number;
use crate::parts::layer::Layer;
use planner::answer::{Entry, Ruling, Section, Socket, Thumb, Unchanged, Verdict, Window};
use planner::job::Lead;
use quantity::print::significant;
use quantity::{CurrentDensity, Quantity, Range, Thickness, Voltage};

/// Over the layer drawn on a hollow's inside.
pub const INSIDE: &str = "inside";
/// Over the layer drawn where it is thin.
pub const THIN_SIDE: &str = "the thin side";
/// After a drawing of which a part is cut short.
pub const CUT_SHORT: &str = " A wavy edge is cut short.";
/// Heading of the density band.
pub const DENSITY: &str = "Current density";
/// Heading of the steps against the clock.
pub const CLOCK: &str = "By the clock";
/// Heading of the first two minutes.
pub const FIRST: &str = "First two minutes";
/// Heads of the table of pieces, in order; the third and fourth of an etch apart.
pub const PIECE_HEADS: [&str; 5] = ["Each", "takes", "average", "thinnest", "metal"];
/// The same of an etch.
pub const ETCH_HEADS: [&str; 5] = ["Each", "takes", "deep", "left", "loses"];
/// Between a time's or thickness's two ends.
pub const TO: &str = " to ";

/// Names of what is told beside the drawings and the densities.
pub mod term {
    /// At the thickest place.
    pub const THICKEST: &str = "At the thickest";
    /// Mean of the inside.
    pub const INSIDE: &str = "Inside, on average";
    /// Bore after growth.
    pub const BORE_AFTER: &str = "Inside across, after";
    /// Bore to make.
    pub const BORE_TO_MAKE: &str = "Inside across, to make";
    /// Mass on the piece.
    pub const MASS: &str = "Metal on the piece";
    /// What that costs, with the wires'.
    pub const COST: &str = "The metal costs";
    /// Wetted area.
    pub const WETTED: &str = "Gets wet";
    /// Fine lines' charge.
    pub const FINE_LINES: &str = "Fine lines need";
    /// Openings after.
    pub const OPENINGS: &str = "Openings, after";
    /// Line to draw.
    pub const LINE: &str = "Line to draw";
    /// Undercut.
    pub const UNDERCUT: &str = "Undercut, each edge";
    /// Metal dissolved.
    pub const DISSOLVED: &str = "Dissolved";
    /// Open area.
    pub const OPEN: &str = "Open to the bath";
    /// This step's density.
    pub const DENSITY: &str = "▲ on average";
    /// An earlier step's.
    pub const COVERING: &str = "△ while covering";
    /// At the densest place.
    pub const DENSEST: &str = "◆ densest place";
    /// The rule of thumb.
    pub const THUMB: &str = "□ rule of thumb";
    /// Where trees grow.
    pub const BOUND: &str = "╱ trees grow from";
}

/// What comes of a current that nobody changes when a piece comes or goes.
pub fn unchanged(u: &Unchanged) -> String {
    let verdict = match u.verdict {
        Verdict::Fine => "still fine",
        Verdict::Burns => "it burns",
        Verdict::Slow => "only slower",
    };
    format!("left as it was: {}, {verdict}", number::density(u.density))
}

/// Heading of vessels in series.
pub const SERIES: &str = "Vessels, one behind the other";

/// What hangs in a vessel.
pub fn vessel(n: usize, hung: &[String]) -> String {
    format!("Vessel {n}: {}", hung.join(", "))
}

/// So many pieces of an area each.
pub fn hung(name: &str, count: u32, area: &str) -> String {
    format!("{name} × {count}, each {area}")
}

/// How vessels in series are wired.
pub fn wiring(etches: bool) -> &'static str {
    if etches {
        "Minus goes to the counter electrode of the first vessel, each sheet to the next counter electrode, the last sheet to plus. Each vessel carries the whole current, the volts add up, one open clip stops all. Vessels, baths and electrodes must not touch."
    } else {
        "Plus goes to the anode of the first vessel, its pieces to the next anode, the last pieces to minus. Each vessel carries the whole current, the volts add up, one open clip stops all. Vessels, baths and electrodes must not touch."
    }
}

/// So many of a piece.
pub fn times(name: &str, count: u32) -> String {
    format!("{name} × {count}")
}

/// A piece in one of several vessels.
pub fn in_vessel(name: &str, vessel: &str) -> String {
    [name, ", vessel ", vessel].concat()
}

/// One of several of the same kind.
pub fn numbered(name: &str, n: usize) -> String {
    format!("{name} {n}")
}

/// The mean and the thinnest place of a layer; `place` where that is, if it is known.
pub fn have(thinnest: Option<&str>, place: &str) -> (&'static str, String) {
    match thinnest {
        Some(_) if place.is_empty() => (" on average, about ", " at the thinnest".to_owned()),
        Some(_) => (" on average, about ", format!(" {place}")),
        None => (" on average", String::new()),
    }
}

/// The depth of an etch, and what is left where that is known.
pub fn etched(left: bool) -> (&'static str, &'static str) {
    if left {
        (" deep, ", " left under it")
    } else {
        (" deep", "")
    }
}

/// Nothing is left under an etch.
pub const THROUGH: &str = " deep, cut through";

/// The range a thickness lands in, and at the thinnest place.
pub fn lands(mean: &Range<Thickness>, thinnest: Option<&Range<Thickness>>) -> String {
    let two = |t| number::micrometres(t, 2);
    let mut said = format!(
        "{} {} and {}",
        super::RANGE_NOTE,
        two(mean.low),
        two(mean.high)
    );
    if let Some(t) = thinnest {
        said.push_str(&format!(
            ", at the thinnest {} to {}",
            two(t.low),
            two(t.high)
        ));
    }
    said
}

/// The scale of a drawing: `scale` of its units a micrometre, a unit being 1/96 inch on a phone.
pub fn enlarged(scale: f64) -> String {
    format!(
        "Heights drawn about {} times as large.",
        significant(scale * 25_400.0 / 96.0, 2)
    )
}

/// The layer's drawing for those who cannot see it.
pub fn wall_said(layer: &Layer, sticks: &str) -> String {
    let mut said = format!(
        "{}. {} on average",
        super::WALL,
        number::thickness(layer.mean)
    );
    for (name, value) in [
        ("at the thickest", layer.thickest),
        ("at the thinnest", layer.thinnest),
        ("inside on average", layer.inside),
    ] {
        if let Some(t) = value {
            said.push_str(&format!(", {name} {}", number::thickness(t)));
        }
    }
    said.push_str(&format!(". Beside it {sticks}."));
    said
}

/// The same of an etched sheet.
pub fn sheet_said(section: &Section, depth: Thickness, sticks: &str) -> String {
    let mut said = format!(
        "A section through the sheet, to scale: {} deep, undercut {} at each edge",
        number::thickness(depth),
        number::millimetres(section.undercut)
    );
    for (name, value) in [
        ("opening", section.opening),
        ("film between openings", section.line),
        ("sheet", section.stock),
    ] {
        if let Some(l) = value {
            said.push_str(&format!(", {name} {}", number::millimetres(l)));
        }
    }
    if section.sides > 1 {
        said.push_str(", from both sides");
    }
    said.push_str(&format!(". Beside it {sticks}."));
    said
}

/// Where a density lies in what its solution takes.
pub fn in_window(density: CurrentDensity, window: &Window) -> String {
    let says = if density.si() > window.most.si() {
        "more than this bath takes"
    } else if density.si() < window.least.si() {
        "less than this bath likes"
    } else {
        "within what this bath takes"
    };
    format!(
        "{} is {says}: {} to {}.",
        number::density(density),
        number::density_parts(window.least),
        number::density(window.most)
    )
}

/// The rule of thumb, what it would mean here, and why ours differs.
pub fn thumb(thumb: &Thumb, ruled: Option<Ruling>) -> String {
    let rule = format!(
        "The rule of thumb, 100\u{a0}mA per square inch, would set {}.",
        number::current(thumb.current, None)
    );
    let why = match (thumb.densest, thumb.bound, ruled) {
        (Some(densest), Some(bound), _) if densest.si() > bound.si() => format!(
            "It knows neither bath nor edges: at the densest place it means {}, and from {} on trees grow.",
            number::density(densest),
            number::density(bound)
        ),
        (.., Some(Ruling::Supply)) => "Your supply gives less.".to_owned(),
        (.., Some(Ruling::Typical)) => {
            "It fits a stirred bath; ours is what this one usually takes.".to_owned()
        }
        (.., Some(Ruling::Edges | Ruling::Covering)) => "It does not know your edges.".to_owned(),
        (.., None) => "The density here is your own.".to_owned(),
    };
    format!("{rule} {why}")
}

/// The steps against the clock in a sentence: the start, then what happens when.
pub fn course(starts: &str, turns: &[String], night: bool) -> String {
    let mut said = format!("From {starts}");
    for turn in turns {
        said.push_str(&format!("; {turn}"));
    }
    said.push_str(if night {
        ". The shaded part is night."
    } else {
        "."
    });
    said
}

/// The leads, by which one is on the work.
pub fn leads(work: Lead) -> &'static str {
    match work {
        Lead::Minus => "Supply off. Minus (black) to the piece, plus (red) to the anode.",
        Lead::Plus => {
            "Supply off. Plus (red) to the sheet, minus (black) to the counter electrode."
        }
    }
}

/// The ceiling, set on open leads.
pub fn set_ceiling(volts: Option<Voltage>) -> String {
    let to = match volts {
        Some(v) => format!("{}\u{a0}V, the ceiling", number::tenth_volts(v)),
        None => "its lowest: what this cell needs is not known".to_owned(),
    };
    format!("Leads apart, current at zero, supply on. Turn the voltage to {to}.")
}

/// The meter in series.
pub fn meter(socket: Socket) -> &'static str {
    match socket {
        Socket::Fine => "A meter belongs in the plus lead: red in its mA socket, black in COM.",
        Socket::Coarse => {
            "A meter belongs in the plus lead: red in its 10\u{a0}A socket, black in COM."
        }
    }
}

/// The current, set on leads that touch.
pub fn set_current(current: &str) -> String {
    format!(
        "Touch the bare ends together, away from the liquid. Turn the current up to {current}, then part them."
    )
}

/// How the work goes in.
pub fn entry(entry: Entry) -> &'static str {
    match entry {
        Entry::Live => {
            "Live entry: anode in, clip the piece on, then lower it in with the current on. Shake off bubbles."
        }
        Entry::AtOnce => "Hang the piece in and switch on at once. Shake off bubbles.",
        Entry::CurrentOff => {
            "Supply off: hang sheet and counter electrode in, look at the leads once more, switch on."
        }
    }
}

/// What the meters show in the first minute, and what else it may mean.
pub fn first_minute(current: &str, volts: Option<&Range<Voltage>>) -> String {
    let Some(v) = volts else {
        return format!(
            "In the first minute the meter shows {current}. Less: a contact, a clip, the ceiling."
        );
    };
    let tenth = number::tenth_volts;
    format!(
        "In the first minute: {current} at about {}\u{a0}V ({} to {}), a jump, then 5 to 20\u{a0}% less. Rising to the ceiling: a contact, a clip, the polarity. Half: a short, or more area than said. Twice: a contact, less area, a cold bath.",
        tenth(v.likely),
        tenth(v.low),
        tenth(v.high)
    )
}

/// While it covers.
pub const COVERS: &str =
    "While it covers, the volts fall. No fall within 20 minutes: the coat, or its contact.";

/// The name of a counter electrode's material.
pub fn material(id: &str) -> &'static str {
    match id {
        "Cu" => "copper",
        "phosphorised_copper" => "phosphorised copper",
        "oxygen_free_copper" => "oxygen-free copper",
        "Ni" => "nickel",
        "sulfur_nickel" => "nickel with sulfur",
        "Ag" => "fine silver",
        "Pd" => "palladium",
        "Pt" => "platinum",
        "platinised_titanium" => "platinised titanium",
        "mixed_oxide_titanium" => "titanium with mixed oxide",
        "stainless" => "stainless steel",
        "S31603" => "stainless steel, 316L",
        "graphite" => "graphite",
        "steel" => "steel",
        "lead_alloy" => "lead alloy",
        _ => "",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_counter_material_entry_and_socket_has_words() {
        for m in chemistry::material::MATERIALS {
            assert!(!material(m.id).is_empty(), "{}", m.id);
        }
        assert!(Entry::ALL.iter().all(|e| entry(*e).len() > 20));
        assert!(Socket::ALL.iter().all(|s| meter(*s).len() > 20));
    }

    #[test]
    fn a_drawing_says_how_much_larger_it_is() {
        // 84 units for 100 um: 0.84 x 264.6 um a pixel.
        assert_eq!(enlarged(0.84), "Heights drawn about 220 times as large.");
    }
}
