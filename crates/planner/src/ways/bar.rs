//! What hangs otherwise: fewer at once, several vessels, a better contact.

use super::{Search, To, Way, counted};
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
        let [step] = &self.job.steps[..] else { return };
        let [place] = &step.places[..] else { return };
        let joins = |p: &crate::job::Piece| p.joins.is_some() || p.leaves.is_some();
        let Some(bath) = self.job.baths.iter().find(|b| b.id == place.bath) else {
            return;
        };
        if self.job.pieces.iter().any(joins) {
            return;
        }
        for vessels in 2..=4 {
            let at = self.at_step("in");
            let to = To::Quantity(counted(vessels));
            let (place, bath) = (place.clone(), bath.clone());
            let worked = self.attempt(Way::Series, at, to, |j| {
                deal(j, &place.pieces, &bath, vessels);
            });
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

/// Deals the pieces of the one step out over several vessels, each with a bath like `bath`: of those in numbers an equal
/// part each, the rest and the single ones to the vessels in turn, back and forth.
fn deal(job: &mut Job, pieces: &[String], bath: &crate::job::Bath, vessels: u32) {
    let mut places: Vec<crate::job::InBath> = Vec::new();
    for v in 0..vessels {
        let id = if v == 0 {
            bath.id.clone()
        } else {
            format!("{}_{}", bath.id, v + 1)
        };
        if v > 0 {
            job.baths.push(crate::job::Bath {
                id: id.clone(),
                ..bath.clone()
            });
            let of_bath = format!("baths/{}/", bath.id);
            for own in job.assume.clone() {
                if let Some(rest) = own.at.as_str().strip_prefix(&of_bath) {
                    job.assume.push(crate::job::Assume {
                        at: FieldPath::new("baths").child(&id).child(rest),
                        value: own.value,
                    });
                }
            }
        }
        places.push(crate::job::InBath {
            bath: id,
            pieces: Vec::new(),
        });
    }
    let mut turn = 0u32;
    let mut next = || {
        let round = turn % (2 * vessels);
        turn += 1;
        if round < vessels {
            round
        } else {
            2 * vessels - 1 - round
        }
    };
    for piece in std::mem::take(&mut job.pieces) {
        if !pieces.contains(&piece.id) {
            job.pieces.push(piece);
            continue;
        }
        let mut counts = vec![piece.count / vessels; vessels as usize];
        for _ in 0..piece.count % vessels {
            counts[next() as usize] += 1;
        }
        let mut first = true;
        for (v, count) in counts.into_iter().enumerate() {
            if count == 0 {
                continue;
            }
            // The first part keeps the piece's own address, and with it its spread.
            let id = if first {
                piece.id.clone()
            } else {
                format!("{}_{}", piece.id, v + 1)
            };
            first = false;
            places[v].pieces.push(id.clone());
            job.pieces.push(crate::job::Piece {
                id,
                count,
                ..piece.clone()
            });
        }
    }
    if let Some(step) = job.steps.first_mut() {
        step.places = places;
    }
}
