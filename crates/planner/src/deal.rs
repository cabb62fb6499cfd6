//! The pieces of one bath dealt out over several vessels in series.

use crate::job::{Assume, Bath, InBath, Job, Piece, SpreadAt};
use crate::path::FieldPath;

/// Deals the pieces of the first step's bath out over so many vessels, each with a bath like it: of those in numbers an
/// equal part each, the rest and the single ones to the vessels in turn, back and forth. Every step in that bath then runs in
/// all of them. A copy of bath or piece has its id with `_2`, `_3` behind it; own values and spreads go with it. False, and
/// nothing is changed, where there is one vessel, less than one piece for each, several vessels already, or a piece
/// that joins or leaves: then the areas are alike only for a while.
pub fn deal(job: &mut Job, vessels: u32) -> bool {
    let moves = |p: &Piece| p.joins.is_some() || p.leaves.is_some();
    let Some([place]) = job.steps.first().map(|s| &s.places[..]) else {
        return false;
    };
    let InBath { bath, pieces } = place.clone();
    let hung = |p: &&Piece| pieces.contains(&p.id);
    let count: u32 = job.pieces.iter().filter(hung).map(|p| p.count).sum();
    let one = job.steps.iter().all(|s| s.places.len() == 1);
    if vessels < 2 || count < vessels || !one || job.pieces.iter().any(moves) {
        return false;
    }
    let Some(like) = job.baths.iter().find(|b| b.id == bath).cloned() else {
        return false;
    };
    let mut places = Vec::new();
    for v in 0..vessels {
        let id = copy_id(&bath, v);
        if v > 0 {
            own_too(job, "baths", &bath, &id);
            job.baths.push(Bath {
                id: id.clone(),
                ..like.clone()
            });
        }
        places.push(InBath {
            bath: id,
            pieces: Vec::new(),
        });
    }
    let mut turn = 0;
    for piece in std::mem::take(&mut job.pieces) {
        if !pieces.contains(&piece.id) {
            job.pieces.push(piece);
            continue;
        }
        let mut counts = vec![piece.count / vessels; vessels as usize];
        for _ in 0..piece.count % vessels {
            counts[back_and_forth(&mut turn, vessels)] += 1;
        }
        // The first part keeps the piece's own address.
        let parts = counts.into_iter().enumerate().filter(|(_, n)| *n > 0);
        for (nth, (v, count)) in parts.enumerate() {
            let id = copy_id(&piece.id, if nth == 0 { 0 } else { v as u32 });
            if nth > 0 {
                own_too(job, "pieces", &piece.id, &id);
            }
            places[v].pieces.push(id.clone());
            job.pieces.push(Piece {
                id,
                count,
                ..piece.clone()
            });
        }
    }
    let all: Vec<String> = job.pieces.iter().map(|p| p.id.clone()).collect();
    for step in &mut job.steps {
        match &mut step.places[..] {
            [place] if place.bath != bath => place.pieces.clone_from(&all),
            _ => step.places.clone_from(&places),
        }
    }
    true
}

fn copy_id(id: &str, v: u32) -> String {
    if v == 0 {
        id.to_owned()
    } else {
        format!("{id}_{}", v + 1)
    }
}

fn back_and_forth(turn: &mut u32, vessels: u32) -> usize {
    let round = *turn % (2 * vessels);
    *turn += 1;
    let v = if round < vessels {
        round
    } else {
        2 * vessels - 1 - round
    };
    v as usize
}

/// What the person knows better of the one holds for its copy.
fn own_too(job: &mut Job, whole: &str, id: &str, copy: &str) {
    let of = [whole, "/", id, "/"].concat();
    let turned = |at: &FieldPath| {
        let rest = at.as_str().strip_prefix(&of)?;
        Some(FieldPath::new(whole).child(copy).child(rest))
    };
    let own: Vec<Assume> = job
        .assume
        .iter()
        .filter_map(|a| {
            Some(Assume {
                at: turned(&a.at)?,
                value: a.value,
            })
        })
        .collect();
    let sure: Vec<SpreadAt> = job
        .spreads
        .iter()
        .filter_map(|s| {
            Some(SpreadAt {
                at: turned(&s.at)?,
                spread: s.spread,
            })
        })
        .collect();
    job.assume.extend(own);
    job.spreads.extend(sure);
}
