//! When somebody is there, and by when it must be done.

use super::Reader;
use crate::state::at;
use crate::state::entries::DateAndTime;
use planner::clock::Local;
use planner::fields;
use planner::job::Attend;

impl Reader<'_> {
    /// None where nothing is said of it.
    pub(super) fn attend(&mut self) -> Option<Attend> {
        let attend = Attend {
            session: self.number(&fields::SESSION, at::SESSION),
            between: self.number(&fields::BETWEEN, at::BETWEEN),
            due: self.stand_in(at::DUE, DateAndTime::read).map(Local::text),
            cure: self.number(&fields::CURE, at::CURE),
            dry: self.number(&fields::DRY, at::DRY),
        };
        (attend != Attend::default()).then_some(attend)
    }
}
