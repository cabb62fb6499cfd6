//! A run split into sessions somebody attends, and the latest each can begin so that it is done by a date.

use crate::answer::{Limit, LimitKind, Origin};
use crate::clock::Local;
use crate::job::{Attend, Job, NIGHT_FROM, NIGHT_TO};
use crate::path::FieldPath;
use crate::plan::Plan;
use crate::reentry::{Gap, Reentry, reentry};
use crate::run::{Run, si, some};
use crate::value::Named;
use chemistry::Source;
use quantity::{Quantity, Thickness, Time};
use serde::Serialize;

/// What is done in a stretch of time.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Doing {
    /// The sealer cures.
    Cure,
    /// The coat dries.
    Dry,
    /// The current is on, and somebody is there.
    Session,
}

impl Doing {
    /// Every kind, for tables that must be complete.
    pub const ALL: &'static [Doing] = &[Self::Cure, Self::Dry, Self::Session];
}

/// A stretch of time, in order. Likely values.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Session {
    /// What is done.
    pub doing: Doing,
    /// How long.
    #[serde(rename = "time_s")]
    pub time: Time,
    /// Where that comes from, for curing and drying.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub origin: Option<Origin>,
    /// The step it begins in.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub step: Option<String>,
    /// How long that step has run by then.
    #[serde(rename = "after_s", skip_serializing_if = "Option::is_none")]
    pub after: Option<Time>,
    /// Mean thickness of the layer being laid when it ends, on the piece named first; in an etch the depth of a flat floor.
    #[serde(rename = "mean_after_m", skip_serializing_if = "Option::is_none")]
    pub mean_after: Option<Thickness>,
    /// How the work enters again.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reentry: Option<Reentry>,
    /// Where a date is given: the latest it can begin, by the clock on the wall.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub latest: Option<String>,
}

/// A sealer cures for a day and a coat dries overnight: common practice, no source.
const CURE: Time = Time::hours(24.0);
const DRY: Time = Time::hours(12.0);
/// Work that waits longer than this is lifted out and dried.
const WAITS: Time = Time::minutes(30.0);
const DAY: Time = Time::hours(24.0);
/// The clock on the wall shows whole minutes.
const MINUTE: Time = Time::minutes(1.0);

/// The stretches of a job that says how it is attended, and the first one's latest start; none where its time is not known.
fn all(job: &Job, plan: &Plan, likely: &Run) -> (Vec<Session>, Option<Local>) {
    let Some((attend, time)) = job.attend.as_ref().zip(likely.time) else {
        return (Vec::new(), None);
    };
    let longest = attend.session.unwrap_or(time);
    let count = (time.si() / longest.si() - 1e-9).ceil();
    // So many that nobody reads them: then there is nothing to split.
    let count = if (1.0..=999.0).contains(&count) {
        count
    } else {
        1.0
    };
    let each = time / count;
    let mut list = Vec::new();
    if plan.pieces.iter().any(|p| p.coat.is_some()) {
        let wait = |doing, own: Option<Time>, usual| Session {
            doing,
            time: own.unwrap_or(usual),
            origin: Some(own.map_or(Origin::Catalogue(Source::CommonPractice), |_| Origin::Given)),
            step: None,
            after: None,
            mean_after: None,
            reentry: None,
            latest: None,
        };
        list.push(wait(Doing::Cure, attend.cure, CURE));
        list.push(wait(Doing::Dry, attend.dry, DRY));
    }
    for k in 0..count as usize {
        list.push(session(plan, likely, attend, each * k as f64, each));
    }
    let due = attend.due.as_deref().and_then(Local::parse);
    let first = due.map(|due| backwards(plan, attend, due, &mut list));
    (list, first)
}

/// The stretches of a job; empty where it does not say how it is attended.
pub(crate) fn sessions(job: &Job, plan: &Plan, likely: &Run) -> Vec<Session> {
    all(job, plan, likely).0
}

/// The step that runs at a time, and how long it has run.
fn at(plan: &Plan, likely: &Run, time: f64) -> (usize, f64) {
    let mut before = 0.0;
    let last = plan.steps.len().saturating_sub(1);
    for (n, run) in likely.steps.iter().enumerate() {
        let length = si(run.time);
        // What has just ended is over.
        if n == last || time < (before + length) * (1.0 - 1e-12) {
            return (n, time - before);
        }
        before += length;
    }
    (last, 0.0)
}

/// Mean of the layer being laid at a time: straight between the ends of a step.
fn mean(plan: &Plan, likely: &Run, time: f64) -> Option<Thickness> {
    let (n, into) = at(plan, likely, time);
    let step = plan.steps.get(n)?;
    let before = match n.checked_sub(1) {
        Some(p) if plan.steps[p].layer == step.layer => likely.steps[p].mean_after?.si(),
        _ => 0.0,
    };
    let run = likely.steps[n];
    let share = into / si(run.time);
    some(before + (run.mean_after?.si() - before) * if share < 1.0 { share } else { 1.0 })
}

fn session(plan: &Plan, likely: &Run, attend: &Attend, from: Time, time: Time) -> Session {
    let (n, after) = at(plan, likely, from.si());
    let gap = match attend.between {
        Some(t) if t.si() <= WAITS.si() => Gap::InBath(Some(t)),
        _ => Gap::Dry,
    };
    let step = plan.steps.get(n);
    let bath = step.and_then(|s| plan.bath(s)).filter(|_| from.si() > 0.0);
    Session {
        doing: Doing::Session,
        time,
        origin: None,
        step: step.map(|s| s.id.clone()),
        after: Some(Time::seconds(if after > 0.0 { after } else { 0.0 })),
        // A hair before the end: a step that ends there is still the one that is meant.
        mean_after: mean(plan, likely, (from + time).si() * (1.0 - 1e-9)),
        reentry: bath.map(|b| reentry(b, gap, likely.steps[n].set, likely.steps[n].density)),
        latest: None,
    }
}

/// Sets each stretch's latest start, from the last one back: sessions keep out of the night where they can, in quarters of
/// an hour; without a time between them there is one a day. Gives the first one's.
fn backwards(plan: &Plan, attend: &Attend, due: Local, list: &mut [Session]) -> Local {
    let (from, to) = plan
        .start
        .map_or((NIGHT_FROM, NIGHT_TO), |(_, f, t)| (f, t));
    let mut end = due;
    let mut first = due;
    for s in list.iter_mut().rev() {
        let start = |end: Local| end.plus(s.time * -1.0);
        if s.doing == Doing::Session {
            let quarters = (0..96).map(|q| end.plus(Time::minutes(-15.0 * f64::from(q))));
            let mut by_day =
                quarters.filter(|e| start(*e).overlap(s.time, from, to).si() <= MINUTE.si());
            end = by_day.next().unwrap_or(end);
        }
        first = start(end);
        s.latest = Some(first.text());
        // The end of what comes before.
        end = match attend.between {
            _ if s.doing != Doing::Session => first,
            Some(between) => first.plus(between * -1.0),
            None => {
                let yesterday = end.plus(DAY * -1.0);
                if yesterday < first { yesterday } else { first }
            }
        };
        if s.after.is_some_and(|a| a.si() == 0.0) && s.reentry.is_none() {
            // Before the very first session nothing waits in a bath.
            end = first;
        }
    }
    first
}

/// A date that cannot be met from the start that is given.
pub(crate) fn limits(job: &Job, plan: &Plan, likely: &Run, out: &mut Vec<Limit>) {
    let (_, first) = all(job, plan, likely);
    let Some(((start, ..), first)) = plan.start.zip(first) else {
        return;
    };
    let late = start.since(first);
    if late.si() > 0.0 {
        out.push(Limit {
            kind: LimitKind::TooLate,
            at: FieldPath::new("attend/due"),
            numbers: vec![Named::new("late", late)],
            pieces: Vec::new(),
            note: None,
        });
    }
}
