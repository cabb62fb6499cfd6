//! When somebody is there, and by when it must be done.

use super::tree::{Node, Problems};
use crate::clock::Local;
use crate::fields;
use crate::problem::{Problem, ProblemKind};
use quantity::Time;
use serde::Serialize;

/// Sessions somebody attends, and a date to be met.
#[derive(Clone, Debug, PartialEq, Default, Serialize)]
pub struct Attend {
    /// The longest session.
    #[serde(rename = "session_s", skip_serializing_if = "Option::is_none")]
    pub session: Option<Time>,
    /// From the end of one to the start of the next; without it one session a day, the work lifted out and dried.
    #[serde(rename = "between_s", skip_serializing_if = "Option::is_none")]
    pub between: Option<Time>,
    /// Local date and time of the fair or the bell.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub due: Option<String>,
    /// Time the sealer takes to cure before the coat.
    #[serde(rename = "cure_s", skip_serializing_if = "Option::is_none")]
    pub cure: Option<Time>,
    /// Time the coat takes to dry before the bath.
    #[serde(rename = "dry_s", skip_serializing_if = "Option::is_none")]
    pub dry: Option<Time>,
}

pub(super) fn read(node: &mut Node<'_>, problems: &mut Problems) -> Option<Attend> {
    let mut n = node.group("attend", problems)?;
    let mut attend = Attend {
        session: n.number(&fields::SESSION, problems),
        between: n.number(&fields::BETWEEN, problems),
        due: n.text("due", problems),
        cure: n.number(&fields::CURE, problems),
        dry: n.number(&fields::DRY, problems),
    };
    if let Some(due) = attend.due.take_if(|due| Local::parse(due).is_none()) {
        problems.push(
            Problem::at(n.path.child("due"), ProblemKind::UnknownWord)
                .reading(due)
                .one_of(["2026-05-01T10:00"]),
        );
    }
    n.finish(problems);
    Some(attend)
}
