//! Covering a conductive coat with its first metal: what to set, how long it takes, and when it stalls.

use crate::advise::limiting;
use crate::answer::{Limit, LimitKind, Ruling};
use crate::bench;
use crate::checks::named;
use crate::job::Coat;
use crate::path::FieldPath;
use crate::plan::{Plan, PlanBath, PlanDrive, PlanPiece, PlanStep};
use crate::run::Run;
use crate::value::Named;
use chemistry::{Cited, Datum, Source};
use quantity::{
    AreaResistance, Band, Current, CurrentDensity, Fraction, Quantity, Range, Time, Voltage,
};
use serde::Serialize;

/// What a covering step does, and how it is done by hand.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Covering {
    /// The slowest coat among its pieces.
    pub coat: Coat,
    /// How long real coats of this kind usually take: common practice, no source.
    pub usual: Range<Time>,
    /// Of the current that is set, the share that passes on average until it is covered: charge and layer count with it.
    #[serde(rename = "passes_frac")]
    pub passes: Fraction,
    /// When it is covered: what the step after it sets.
    #[serde(rename = "then_A", skip_serializing_if = "Option::is_none")]
    pub then: Option<Current>,
    /// A constant current below this never covers all of it: the plated part takes the whole. On graphite.
    #[serde(rename = "stalls_below_A", skip_serializing_if = "Option::is_none")]
    pub stalls_below: Option<Current>,
    /// What flows at the first touch under the ceiling; it rises by itself. On graphite.
    #[serde(rename = "first_A", skip_serializing_if = "Option::is_none")]
    pub first: Option<Current>,
    /// Instead of a ceiling: what to set by hand, and when. Empty on metal paint, which is turned down once.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub by_hand: Vec<HandSet>,
}

/// A setting at a moment.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct HandSet {
    /// After the step's start.
    #[serde(rename = "after_s")]
    pub after: Time,
    /// What to set.
    #[serde(rename = "set_A")]
    pub set: Current,
}

/// Over this many volts bare graphite has to be pushed before it takes metal at all (read off the covering table, derived).
pub(crate) const BARE: Voltage = Voltage::volt(0.1);
/// Resistance of the surface at the growing front (derived, 8 ohm cm2).
pub(crate) const FRONT: AreaResistance = AreaResistance::of_si(8e-4);
/// Over the growth current on metal paint: 1.2 to 2 times. Common practice, no source.
const PAINT: f64 = 1.5;
/// By hand on graphite: minutes, and the share of the growth current that the part covered by then takes (derived, strip of
/// 60 mm on one contact, middle of three readings).
const BY_HAND: [(f64, f64); 7] = [
    (0.0, 0.04),
    (5.0, 0.06),
    (10.0, 0.10),
    (20.0, 0.18),
    (30.0, 0.25),
    (60.0, 0.44),
    (90.0, 0.62),
];
/// Under the ceiling at the growth volts graphite takes this of the set current at first (derived, 52 of 288 mA).
pub(crate) const FIRST: f64 = 0.18;
/// The same on average until it is covered (derived: 52, 145, 203, 251, 270, 288 mA at 0, 5, 10, 20, 30, 60 min).
const FILLING: f64 = 0.85;

fn is_metal(coat: Coat) -> bool {
    matches!(coat, Coat::Copper | Coat::Silver)
}

/// The slowest coat among some pieces.
pub fn slowest<'p>(pieces: impl Iterator<Item = &'p PlanPiece>) -> Option<Coat> {
    let rank = |c: &Coat| match c {
        Coat::Silver => 0,
        Coat::Copper => 1,
        Coat::Other => 2,
        Coat::Graphite => 3,
    };
    pieces.filter_map(|p| p.coat).max_by_key(rank)
}

/// How long real coats take to be covered. Common practice, no source: graphite 0.5 to 3 h, copper paint 5 to 30 min, silver
/// 1 to 5 min; the middle by ratio is taken as typical. Another coat is counted as graphite.
pub fn takes(coat: Coat) -> Datum<Time> {
    let (min, typ, max) = match coat {
        Coat::Silver => (1.0, 2.25, 5.0),
        Coat::Copper => (5.0, 12.0, 30.0),
        Coat::Graphite | Coat::Other => (30.0, 75.0, 180.0),
    };
    let band = Band {
        min: Time::minutes(min),
        typ: Time::minutes(typ),
        max: Time::minutes(max),
    };
    Datum::Band(Cited::new(band, Source::CommonPractice))
}

/// Of what is set, the share that passes on average: under a ceiling graphite lets the current rise by itself.
pub(crate) fn passes(step: &PlanStep) -> f64 {
    match step.covers {
        Some(coat) if !is_metal(coat) => FILLING,
        _ => 1.0,
    }
}

/// A plated front has no more than the volts that bare graphite needs once the current over the covered area falls to this
/// density: E / (R + E / limiting).
pub fn stall(bath: &PlanBath, step: &PlanStep) -> CurrentDensity {
    let from_limit = limiting(bath, step).map_or(0.0, |l| BARE.si() / l.si());
    CurrentDensity::from_si(BARE.si() / (FRONT.si() + from_limit))
}

/// The step after `n` that grows on the same pieces.
fn growth(plan: &Plan, n: usize) -> Option<usize> {
    let holds = |s: &PlanStep, p: &usize| s.vessels.iter().any(|v| v.pieces.contains(p));
    let first = plan.steps[n].vessels.first()?.pieces.first()?;
    (n + 1..plan.steps.len())
        .find(|m| plan.steps[*m].covers.is_none() && holds(&plan.steps[*m], first))
}

/// What covers: on graphite the growth density, at least one that does not stall; on metal paint one and a half times it.
/// None for a step that is not there to cover. Without a step after it, growth is at `typical`.
pub(crate) fn advised(
    plan: &Plan,
    n: usize,
    measured: &Run,
    typical: CurrentDensity,
) -> Option<(CurrentDensity, Ruling)> {
    let coat = plan.steps[n].covers?;
    let grows = growth(plan, n).and_then(|m| match plan.steps[m].drive? {
        PlanDrive::Density(i) => Some(i),
        PlanDrive::Current(c) => {
            let hung = &plan.stages[plan.first_stage(m)?].hung;
            let area = measured.bare_area(hung.first()?);
            (area.si() > 0.0).then(|| c / area)
        }
        PlanDrive::Advised => None,
    });
    let grows = grows.unwrap_or(typical);
    let i = if is_metal(coat) {
        grows * PAINT
    } else {
        // A hair above, so that rounding the setting does not stall it.
        let least = stall(plan.bath(&plan.steps[n])?, &plan.steps[n]) * 1.05;
        if least.si() > grows.si() {
            least
        } else {
            grows
        }
    };
    Some((i, Ruling::Covering))
}

/// Which step's volts are the ceiling of step `n`: on graphite those of the growth after it, unless covering itself must
/// take more so as not to stall.
pub(crate) fn ceiling_of(plan: &Plan, likely: &Run, n: usize) -> usize {
    let volts = |n: usize| likely.steps[n].volts.map_or(0.0, Quantity::si);
    match plan.steps[n].covers {
        Some(coat) if !is_metal(coat) => growth(plan, n)
            .filter(|m| volts(*m) > volts(n))
            .unwrap_or(n),
        _ => n,
    }
}

/// What there is to say of a covering step.
pub(crate) fn covering(plan: &Plan, likely: &Run, n: usize) -> Option<Covering> {
    let step = &plan.steps[n];
    let coat = step.covers?;
    let Datum::Band(usual) = takes(coat) else {
        return None;
    };
    let usual = usual.value;
    let after = growth(plan, n).and_then(|m| likely.steps[m].set);
    let set = likely.steps[n].set;
    let graphite = !is_metal(coat);
    let mut by_hand: Vec<HandSet> = Vec::new();
    let mut at = |after, current: Current| {
        let set = match &plan.bench {
            Some(bench) => bench::shown(bench, &plan.fixed, current),
            None => current,
        };
        if by_hand.last().is_none_or(|l| set.si() > l.set.si()) {
            by_hand.push(HandSet { after, set });
        }
    };
    if let Some(set) = set.filter(|_| graphite && plan.volts.is_none()) {
        for (minutes, share) in BY_HAND {
            at(Time::minutes(minutes), set * share);
        }
        at(usual.max, set);
    }
    let area = likely.stages[plan.first_stage(n)?].area;
    let stalls = plan.bath(step).map(|b| stall(b, step));
    Some(Covering {
        coat,
        usual: Range {
            likely: usual.typ,
            low: usual.min,
            high: usual.max,
        },
        passes: Fraction::from_si(passes(step)),
        then: after,
        stalls_below: stalls.zip(area).map(|(i, a)| i * a).filter(|_| graphite),
        first: set.map(|s| s * FIRST).filter(|_| graphite),
        by_hand,
    })
}

/// The pieces whose graphite coat comes into its first bath in step `n`.
fn bare_graphite(plan: &Plan, n: usize) -> impl Iterator<Item = usize> {
    let holds = |s: &PlanStep, p: &usize| s.vessels.iter().any(|v| v.pieces.contains(p));
    let hung = plan.steps[n].vessels.iter().flat_map(|v| &v.pieces);
    hung.copied().filter(move |p| {
        let coat = plan.pieces[*p].coat.is_some_and(|c| !is_metal(c));
        coat && !plan.steps[..n].iter().any(|s| holds(s, p))
    })
}

/// Whether a graphite coat comes into its first bath in step `n`.
pub(crate) fn on_bare_graphite(plan: &Plan, n: usize) -> bool {
    bare_graphite(plan, n).next().is_some()
}

/// A constant current that never covers a graphite coat in the first step it comes into.
pub(crate) fn limits(plan: &Plan, likely: &Run, all: &mut Vec<Limit>) {
    for (n, step) in plan.steps.iter().enumerate() {
        let (Some(bath), Some(density)) = (plan.bath(step), likely.steps[n].density) else {
            continue;
        };
        let least = stall(bath, step);
        // A held voltage lets the current rise by itself.
        let held = plan.volts.is_some() || bath.etches();
        if held || density.si() >= least.si() || !on_bare_graphite(plan, n) {
            continue;
        }
        all.push(Limit {
            kind: LimitKind::CoveringStalls,
            at: FieldPath::new("steps").child(&step.id),
            numbers: vec![
                Named::new("density", density),
                Named::new("stalls_below", least),
                Named::new("covers", Fraction::from_si(density / least)),
            ],
            pieces: named(plan, bare_graphite(plan, n)),
            note: None,
        });
    }
}
