//! A way out of a limit as the texts that carry it into the draft.

use super::at;
use super::draft::Draft;
use super::entries;
use super::pieces;
use super::units::Units;
use crate::words::{self, number};
use planner::WayOut;
use planner::answer::LimitKind;
use planner::fair::FairShare;
use planner::ways::{Thief, To, Way};
use quantity::{AnyQuantity, Quantity};

/// The texts, by address; none where the page has no field for the change.
pub fn texts(draft: &Draft, way: &WayOut) -> Option<Vec<(String, String)>> {
    if let Some(wire) = &way.thief {
        return thief(draft, wire);
    }
    let address = address(way.change.at.as_str());
    // Covering at the advised current is covering as the coat needs.
    if address == at::COVER_DRIVE {
        return Some(vec![(at::COVER.to_owned(), "coat".to_owned())]);
    }
    if address == at::START {
        let local = &way.job.start.as_ref()?.local;
        let (_, time) = local.split_once('T')?;
        return Some(vec![(address, time.to_owned())]);
    }
    let text = match way.change.to {
        To::Word(word) => word.to_owned(),
        To::Quantity(q) => typed(draft, &address, q, up(&address, way))?,
    };
    if !draft.texts.contains_key(&address) && entries::declared(&address).is_none() {
        return None;
    }
    let mut all = vec![(address.clone(), text)];
    // A density of one's own is asked for only where it was picked.
    match address.strip_suffix("/density") {
        Some(at::COVER_DRIVE) => all.push((at::COVER.to_owned(), "on".to_owned())),
        Some(drive) if drive.ends_with("/drive") => {
            all.push((drive.to_owned(), "density".to_owned()));
        }
        _ => (),
    }
    Some(all)
}

/// One more piece on the bar: a bare wire, of copper where the work is coated, else of the work's own metal.
fn thief(draft: &Draft, wire: &Thief) -> Option<Vec<(String, String)>> {
    let id = pieces::next(draft);
    let own = |address: &str| at::of(address, &id);
    let mut with = draft.clone();
    pieces::add(&mut with);
    let base = draft.scope(&own(at::BASE));
    let metal = if base == own(at::BASE) {
        "Cu"
    } else {
        draft.scoped(at::BASE)
    };
    for (address, text) in [
        (own(at::LABEL), words::ways::THIEF),
        (draft.scope(&own(at::SHAPE)), "rod"),
        (base, metal),
        (own(at::HANGER_WIRE), ""),
        (own(at::HANGER_WET), ""),
    ] {
        with.put(&address, text, true);
    }
    for (size, length) in [("diameter", wire.wire), ("length", wire.length)] {
        let address = own(&["pieces/p1/extent/parts/a/shape/rod/", size].concat());
        let text = typed(draft, &address, length.into(), true)?;
        with.put(&address, &text, true);
    }
    let new = |(address, text): &(&String, &String)| draft.texts.get(*address) != Some(*text);
    let all = with.texts.iter().filter(new);
    Some(all.map(|(at, text)| (at.clone(), text.clone())).collect())
}

/// The moments at which each piece is taken out for the same layer on all, and that layer as the aim.
pub fn fair(draft: &Draft, share: &FairShare) -> Vec<(String, String)> {
    let mut all = vec![(at::UNTIL.to_owned(), "mean".to_owned())];
    let mean = typed(draft, at::MEAN, share.mean.into(), false);
    all.extend(mean.map(|text| (at::MEAN.to_owned(), text)));
    let last = share.leaves.iter().map(|l| l.after.si());
    let end = last.fold(0.0, |a, b| if b > a { b } else { a });
    for leaves in &share.leaves {
        let address = at::of(at::LEAVES, &leaves.id);
        let early = leaves.after.si() < end * (1.0 - 1e-9);
        let text = early.then(|| typed(draft, &address, leaves.after.into(), false));
        all.push((address, text.flatten().unwrap_or_default()));
    }
    all
}

/// Where the page asks for it: stirring, vessels and ceiling are for all steps, and vessels like the first are not described apart.
fn address(at: &str) -> String {
    let shared = [
        ("steps/s1/stirring", at::STIRRING),
        ("steps/s1/in", at::VESSELS),
        ("steps/s1/ceiling", at::CEILING),
    ];
    if let Some((_, here)) = shared.iter().find(|(one, _)| *one == at) {
        return (*here).to_owned();
    }
    let mut parts: Vec<&str> = at.split('/').collect();
    if let [whole, id, ..] = &mut parts[..]
        && (*whole == "baths" || *whole == "pieces")
    {
        *id = id.split('_').next().unwrap_or(id);
    }
    parts.join("/")
}

/// Whether the number is rounded up: away from the bound it must not pass, so that rounding does not bring the limit back.
fn up(address: &str, way: &WayOut) -> bool {
    match way.way {
        Way::Setting => matches!(
            way.lifts,
            LimitKind::BelowWindow | LimitKind::EtchTooSlow | LimitKind::SupplyTooLarge
        ),
        Way::Supply => !(address.ends_with("/lowest") || address.ends_with("/display_step")),
        Way::Counter | Way::Volume => true,
        _ => false,
    }
}

fn unit(draft: &Draft, address: &str) -> Option<&'static str> {
    let metric = entries::declared(address)?.unit();
    Some(Units::of(draft).symbol(metric))
}

/// Three digits at most, or all of a count.
fn typed(draft: &Draft, address: &str, q: AnyQuantity, up: bool) -> Option<String> {
    let (value, _) = number::in_unit_of(q, unit(draft, address)?);
    let step = fine_step(value);
    let steps = value / step;
    // A hair beyond a round number is that number, unless a density must stay under a bound.
    let near = steps.round();
    let whole = if (steps - near).abs() < 1e-2 && !address.ends_with("/density") {
        near
    } else if up {
        steps.ceil()
    } else {
        steps.floor()
    };
    Some(number::plain(quantity::print::significant(whole * step, 4)))
}

/// A hundredth to a thousandth of a value: a power of ten.
fn fine_step(value: f64) -> f64 {
    let mut step = 1.0;
    while step * 1000.0 < value {
        step *= 10.0;
    }
    while step * 100.0 > value && step > 1e-6 {
        step /= 10.0;
    }
    step
}
