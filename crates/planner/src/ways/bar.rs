//! What hangs otherwise: fewer at once, several vessels, a better contact.

use super::{Search, To, Way, counted};
use crate::deal::deal;
use crate::job::Job;
use crate::path::FieldPath;

impl Search<'_> {
    /// Fewer of what hangs in numbers, one batch after the other: the largest number that helps.
    pub(super) fn batches(&mut self) {
        for (p, piece) in self.job.pieces.iter().enumerate() {
            for batches in 2..=piece.count.min(8) {
                let count = piece.count.div_ceil(batches);
                let at = FieldPath::new("pieces").child(&piece.id).child("count");
                let to = To::Quantity(counted(count));
                let set = |j: &mut Job| j.pieces[p].count = count;
                if self.attempt_batches(Way::Batches, at, to, f64::from(batches), set) {
                    break;
                }
            }
        }
    }

    /// The pieces over several vessels, each with a bath like the first: what hangs in numbers is dealt out.
    pub(super) fn series(&mut self) {
        for vessels in 2..=4 {
            let at = self.at_step("in");
            let to = To::Quantity(counted(vessels));
            let mut dealt = self.job.clone();
            if !deal(&mut dealt, vessels) {
                return;
            }
            let worked = self.attempt(Way::Series, at, to, |j| *j = dealt);
            if worked {
                return;
            }
        }
    }

    /// A bright clip's resistance, the usual one of the trade.
    pub(super) fn better_contact(&mut self) {
        let Some(p) = self.piece() else { return };
        for ohm in [0.02, 0.005] {
            let to = quantity::Resistance::of_si(ohm);
            let at = self.limit.at.child("contact/contact");
            let set = |j: &mut Job| {
                if let Some(c) = &mut j.pieces[p].contact {
                    c.contact = Some(to);
                }
            };
            if self.attempt(Way::Contact, at, To::Quantity(to.into()), set) {
                return;
            }
        }
    }
}
