//! What the meters should show in a step, and which reading is an alarm.

use crate::answer::Ceiling;
use crate::cover::FIRST;
use crate::job::Coat;
use crate::plan::{Plan, PlanStep};
use crate::run::some;
use crate::value::Named;
use quantity::{Current, Quantity, Range, Ratio, Time, Voltage};
use serde::Serialize;

/// What the voltmeter should show in a step. Where the supply holds the voltage there is none: see [`Ammeter`].
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Meter {
    /// In the first minute, before it settles.
    pub first_minute: Range<Voltage>,
    /// At the step's end.
    pub at_end: Range<Voltage>,
    /// The current at which the ceiling is reached: no more than this will flow.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ceiling_bites: Option<Range<Current>>,
    /// Readings that mean something is wrong.
    pub alarms: Vec<Alarm>,
}

/// What the ammeter should show in a step whose voltage the supply holds: the current tells there what the volts tell else.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Ammeter {
    /// In the first minute, before it settles.
    pub first_minute: Range<Current>,
    /// At the step's end.
    pub at_end: Range<Current>,
    /// Readings that mean something is wrong.
    pub alarms: Vec<Alarm>,
}

/// A reading that means something is wrong. Its numbers: `above`, `below` or `near` so many volts, or amperes where the voltage
/// is held; `within` a time.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Alarm {
    /// Which.
    pub kind: AlarmKind,
    /// Its numbers.
    pub numbers: Vec<Named>,
}

/// Kinds of alarm.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum AlarmKind {
    /// It rises in the first minute, or stands at the ceiling: contact, clip, polarity.
    AtCeiling,
    /// While covering it does not fall within 20 minutes: coat or contact.
    NoFall,
    /// A tenth more within an hour: a film on the anode, salt.
    Rising,
    /// Three tenths more: the anode is passive.
    Passive,
    /// Suddenly three tenths less: a short, or a tree.
    Short,
    /// Half: the area is double what was told, or a short.
    Half,
    /// Twice: half the area, a contact, or a cold bath or one low in acid.
    Twice,
    /// At a held voltage hardly any current: a clip is open, a lead off, the polarity wrong.
    NoCurrent,
    /// While covering it does not rise within 20 minutes: coat or contact.
    NoRise,
    /// A tenth less within an hour: a film on the anode, salt.
    Falling,
    /// A quarter less: the anode is passive.
    Stifled,
    /// Suddenly half as much again: a short, or a tree.
    Surge,
    /// Twice the current: the area is double what was told, or a short.
    DoubleCurrent,
    /// Half the current: half the area, a contact, or a cold bath or one low in acid.
    HalfCurrent,
    /// All that the supply gives: the voltage is no longer held.
    AtMost,
}

impl AlarmKind {
    /// Every kind, for tables that must be complete.
    pub const ALL: &'static [AlarmKind] = &[
        Self::AtCeiling,
        Self::NoFall,
        Self::Rising,
        Self::Passive,
        Self::Short,
        Self::Half,
        Self::Twice,
        Self::NoCurrent,
        Self::NoRise,
        Self::Falling,
        Self::Stifled,
        Self::Surge,
        Self::DoubleCurrent,
        Self::HalfCurrent,
        Self::AtMost,
    ];
}

/// The current at which a step's ceiling is reached: the solution's drop and the links' grow with the current, the surfaces'
/// own is taken as it stands. None without a ceiling, and where surfaces are not known apart.
pub(crate) fn bites(
    plan: &Plan,
    step: &PlanStep,
    flows: f64,
    surfaces: f64,
    volts: f64,
) -> Option<Current> {
    let ceiling = ceiling(plan, step)?.si();
    let left = (ceiling - surfaces) / (volts - surfaces);
    some(if left < 0.0 { 0.0 } else { flows * left })
}

/// The lower of the person's own ceiling and what the supply has; none where the supply holds the voltage.
pub(crate) fn ceiling(plan: &Plan, step: &PlanStep) -> Option<Voltage> {
    let supply = plan.bench.as_ref().and_then(|b| b.highest_volts);
    match (supply, step.ceiling) {
        _ if plan.volts.is_some() => None,
        (Some(a), Some(b)) => Some(if b.si() < a.si() { b } else { a }),
        (a, b) => a.or(b),
    }
}

/// What the voltmeter shows in a step that is expected to take `ceiling.expected`. All shares are common practice, no source.
pub(crate) fn meter(
    step: &PlanStep,
    ceiling: &Ceiling,
    expected: Range<Voltage>,
    ceiling_bites: Option<Range<Current>>,
) -> Meter {
    let scaled = |low: f64, likely: f64, high: f64| Range {
        likely: expected.likely * likely,
        low: expected.low * low,
        high: expected.high * high,
    };
    let plus = |low: f64, likely: f64, high: f64| Range {
        likely: expected.likely + Voltage::volt(likely),
        low: expected.low + Voltage::volt(low),
        high: expected.high + Voltage::volt(high),
    };
    let metal = matches!(step.covers, Some(Coat::Copper | Coat::Silver));
    let first_minute = match step.covers {
        // It falls by 0.02 to 0.5 V as the paint is covered.
        Some(_) if metal => plus(0.02, 0.13, 0.5),
        // Flat at the ceiling.
        Some(_) => Range::exactly(ceiling.set),
        // A jump, then a fall of 5 to 20 %.
        None => scaled(1.0 / 0.95, 1.0 / 0.9, 1.0 / 0.8),
    };
    // At constant current it falls by up to a tenth over hours; a covered coat is growth.
    let at_end = match step.covers {
        Some(_) => expected,
        None => scaled(0.9, 0.95, 1.0),
    };
    let likely = expected.likely;
    let volts = |name, share: f64| Named::new(name, likely * share);
    let mut alarms = vec![Alarm {
        kind: AlarmKind::AtCeiling,
        numbers: vec![Named::new("above", ceiling.set)],
    }];
    let mut add = |kind, numbers| alarms.push(Alarm { kind, numbers });
    if step.covers.is_some() {
        let numbers = vec![
            Named::new("above", first_minute.likely),
            Named::new("within", Time::minutes(20.0)),
        ];
        add(AlarmKind::NoFall, numbers);
    } else {
        let hour = Named::new("within", Time::hours(1.0));
        add(AlarmKind::Rising, vec![volts("above", 1.1), hour]);
        add(AlarmKind::Passive, vec![volts("above", 1.3)]);
    }
    add(AlarmKind::Short, vec![volts("below", 0.7)]);
    add(AlarmKind::Half, vec![volts("near", 0.5)]);
    add(AlarmKind::Twice, vec![volts("near", 2.0)]);
    Meter {
        first_minute,
        at_end,
        ceiling_bites,
        alarms,
    }
}

/// What the ammeter shows in a step of which so much current is expected at the voltage that is held, `ohmic` of it in the
/// solution; the area at its end over the bare one, where that is much. What takes a share more volts at a current lets that
/// share less current flow at a voltage (derived); the shares are those of [`meter`], common practice, no source.
pub(crate) fn ammeter(
    step: &PlanStep,
    expected: Range<Current>,
    ohmic: Option<Voltage>,
    fatter: Option<Ratio>,
    most: Option<Current>,
) -> Ammeter {
    let scaled = |low: f64, likely: f64, high: f64| Range {
        likely: expected.likely * likely,
        low: expected.low * low,
        high: expected.high * high,
    };
    let metal = matches!(step.covers, Some(Coat::Copper | Coat::Silver));
    let first_minute = match (step.covers, ohmic) {
        // The paint takes 0.02 to 0.5 V beside what the solution does.
        (Some(_), Some(ohmic)) if metal => {
            let left = |volts: f64| {
                let left = 1.0 - volts / ohmic.si();
                if left > 0.0 { left } else { 0.0 }
            };
            scaled(left(0.5), left(0.13), left(0.02))
        }
        (Some(_), _) if !metal => scaled(FIRST, FIRST, FIRST),
        // 5 to 20 % more volts, or so much less current.
        _ => scaled(0.8, 0.9, 0.95),
    };
    // What falls by up to a tenth in volts rises so in current; and with the area, which no alarm may mistake for a short.
    let area = fatter.map_or(1.0, Quantity::si);
    let at_end = match step.covers {
        Some(_) => expected,
        None => scaled(1.0, area / 0.95, area / 0.9),
    };
    let amps = |name, share: f64| Named::new(name, expected.likely * share);
    let mut alarms = Vec::new();
    let mut add = |kind, numbers| alarms.push(Alarm { kind, numbers });
    let least = first_minute.low;
    add(AlarmKind::NoCurrent, vec![Named::new("below", least * 0.5)]);
    if step.covers.is_some() {
        let numbers = vec![
            Named::new("below", first_minute.likely),
            Named::new("within", Time::minutes(20.0)),
        ];
        add(AlarmKind::NoRise, numbers);
    } else {
        let hour = Named::new("within", Time::hours(1.0));
        add(AlarmKind::Falling, vec![amps("below", 1.0 / 1.1), hour]);
        add(AlarmKind::Stifled, vec![amps("below", 1.0 / 1.3)]);
    }
    add(AlarmKind::Surge, vec![amps("above", area / 0.7)]);
    add(AlarmKind::DoubleCurrent, vec![amps("near", area * 2.0)]);
    if step.covers.is_none() {
        add(AlarmKind::HalfCurrent, vec![amps("near", 0.5)]);
    }
    if let Some(most) = most {
        add(AlarmKind::AtMost, vec![Named::new("near", most)]);
    }
    Ammeter {
        first_minute,
        at_end,
        alarms,
    }
}

/// How much more area there is at a step's end, where it grows by more than a twentieth: what a setting that is kept is then
/// short of. Whether or not the job counts it.
pub(crate) fn fatter(area: [f64; 2]) -> Option<Ratio> {
    some::<Ratio>(area[1] / area[0]).filter(|r| r.si() > 1.05)
}
