//! Going on after the current was away: what happened to the work meanwhile, and how it enters again.

use crate::answer::CautionKind;
use crate::plan::PlanBath;
use crate::value::Named;
use chemistry::solution::Family;
use quantity::{Current, CurrentDensity, Fraction, Quantity, Thickness, Time};
use serde::Serialize;

/// How long, and where the work was meanwhile.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Gap {
    /// In the bath without current; not known how long counts as overnight.
    InBath(Option<Time>),
    /// Lifted out, rinsed and dried.
    Dry,
    /// Its surface was dissolved or filed.
    Bared,
}

/// Ways to enter again. Common practice, no source.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum ReentryKind {
    /// Nothing happened: go on.
    GoOn,
    /// Additive film: rinse, dip, live at half the current, then go on.
    HalfCurrent,
    /// A skin: pumice or mild persulfate, dip, live at a low current, then go on.
    MildEtch,
    /// Oxide and prints: degrease, mild etch, dip, water break, live.
    Afresh,
    /// Passive, or another metal came down: prepare as the base and strike again.
    StrikeAgain,
    /// A sheet that is etched: look at the film, patch it, wet it and go on.
    LookAtFilm,
}

impl ReentryKind {
    /// Every kind, for tables that must be complete.
    pub const ALL: &'static [ReentryKind] = &[
        Self::GoOn,
        Self::HalfCurrent,
        Self::MildEtch,
        Self::Afresh,
        Self::StrikeAgain,
        Self::LookAtFilm,
    ];
}

impl ReentryKind {
    /// What is dangerous in it.
    pub fn hazards(self) -> &'static [CautionKind] {
        match self {
            Self::HalfCurrent => &[CautionKind::AcidBurns],
            Self::MildEtch | Self::Afresh => &[CautionKind::AcidBurns, CautionKind::Oxidiser],
            Self::GoOn | Self::StrikeAgain | Self::LookAtFilm => &[],
        }
    }
}

/// How to enter again. Its numbers: `etch`, `dip`, `acid` (share by volume), `current` and for how long it is `held`.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Reentry {
    /// Which way.
    pub kind: ReentryKind,
    /// Its numbers.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub numbers: Vec<Named>,
}

/// At this density a skin is lived down again. Common practice.
const LOW: CurrentDensity = CurrentDensity::amp_per_dm2(0.5);
/// Copper that still acid takes in twelve hours: 0.1 to 0.25 um, derived from the work on copper in acid cupric sulfate; more
/// where air is blown in.
const TWELVE_HOURS: [f64; 3] = [0.175e-6, 0.1e-6, 0.25e-6];
/// In less than this nothing happens to copper; up to half an hour it gets a film of the additive.
const SHORT: Time = Time::minutes(2.0);
const FILM: Time = Time::minutes(30.0);
/// In more than this other metals turn passive, or are covered by displacement.
const PASSIVE: Time = Time::seconds(10.0);
/// A gap nobody knows counts as a night.
pub const NIGHT: Time = Time::hours(12.0);

/// The way in again after `gap`, where a step sets `current` on a density of `density`.
pub fn reentry(
    bath: &PlanBath,
    gap: Gap,
    current: Option<Current>,
    density: Option<CurrentDensity>,
) -> Reentry {
    let copper = matches!(
        bath.solution.family,
        Family::AcidCopper | Family::MildCopper
    );
    let away = match gap {
        Gap::InBath(t) => t.unwrap_or(NIGHT),
        Gap::Dry | Gap::Bared => NIGHT,
    };
    use ReentryKind as K;
    let kind = match gap {
        _ if bath.etches() => K::LookAtFilm,
        _ if !copper && away.si() > PASSIVE.si() => K::StrikeAgain,
        Gap::Dry => K::Afresh,
        Gap::Bared => K::MildEtch,
        Gap::InBath(_) if away.si() < SHORT.si() => K::GoOn,
        Gap::InBath(_) if away.si() <= FILM.si() => K::HalfCurrent,
        Gap::InBath(_) => K::MildEtch,
    };
    let (etch, dip, acid) = match kind {
        K::HalfCurrent => (0.0, 15.0, 0.05),
        K::MildEtch | K::Afresh => (45.0, 30.0, 0.10),
        _ => (0.0, 0.0, 0.0),
    };
    let mut numbers = Vec::new();
    if etch > 0.0 {
        numbers.push(Named::new("etch", Time::seconds(etch)));
    }
    if dip > 0.0 {
        numbers.push(Named::new("dip", Time::seconds(dip)));
        numbers.push(Named::new("acid", Fraction::of_si(acid)));
        let share = match kind {
            K::HalfCurrent => Some(0.5),
            // Never more than the step itself sets.
            _ => density.map(|d| if LOW.si() < d.si() { LOW / d } else { 1.0 }),
        };
        if let Some((share, current)) = share.zip(current) {
            numbers.push(Named::new("current", current * share));
            numbers.push(Named::new("held", Time::minutes(5.0)));
        }
    }
    Reentry { kind, numbers }
}

/// What a stay without current takes of a copper layer in acid copper: likely, least, most.
pub fn dissolved(bath: &PlanBath, away: Option<Time>) -> [Thickness; 3] {
    let away = away.unwrap_or(NIGHT);
    let nights = away / NIGHT;
    let acid = bath.solution.family == Family::AcidCopper && away.si() >= SHORT.si();
    TWELVE_HOURS.map(|t| Thickness::from_si(if acid { t * nights } else { 0.0 }))
}
