//! What the bath and the counter electrode gain and lose.

use crate::moved::{deposited_on_counter, dissolved};
use crate::plan::{Plan, PlanBath};
use crate::run::Run;
use chemistry::material::Anode;
use quantity::{Charge, Mass, MassPerCharge, Quantity};

/// Writes the balance of a whole run: of each metal what the work and its wires give less what they take, and what the
/// counter electrode gives or takes at an efficiency of 1. Absent where the counter electrode is not known.
pub fn keep(plan: &Plan, out: &mut Run) {
    out.gained = Default::default();
    out.counter = None;
    let (Some(bath), Some(charge)) = (&plan.bath, out.charge) else {
        return;
    };
    let counter = if bath.etches() {
        let taken = deposited_on_counter(&bath.solution);
        out.counter = taken.map(|(_, k)| k * charge);
        // What is laid on it leaves the bath.
        taken.map(|(id, k)| (id, k * charge * -1.0))
    } else {
        match given_by_counter(bath, charge) {
            Some(given) => {
                out.counter = Some(given.map_or(Mass::from_si(0.0), |(_, m)| m * -1.0));
                Some(given.unwrap_or(("", Mass::from_si(0.0))))
            }
            None => None,
        }
    };
    let Some((counter_id, from_counter)) = counter else {
        return;
    };
    for (n, hold) in bath.metals.iter().enumerate() {
        let Some(work) = from_work(plan, bath, out, &hold.metal) else {
            return;
        };
        let other = if hold.metal == counter_id {
            from_counter
        } else {
            Mass::from_si(0.0)
        };
        out.gained[n] = Some(work + other);
    }
}

/// What a soluble anode gives: its metal, or nothing where it stays. None where its material is not known.
fn given_by_counter(bath: &PlanBath, charge: Charge) -> Option<Option<(&'static str, Mass)>> {
    match bath.counter?.anode {
        Anode::Stays => Some(None),
        Anode::Dissolves(element) => {
            let (id, k): (_, MassPerCharge) = dissolved(element, &bath.solution)?;
            Some(Some((id, k * charge)))
        }
    }
}

/// What all pieces and wires give to the bath of one metal; below 0 they take it.
fn from_work(plan: &Plan, bath: &PlanBath, out: &Run, metal: &str) -> Option<Mass> {
    let sign = if bath.etches() { 1.0 } else { -1.0 };
    let mut sum = Mass::from_si(0.0);
    for (piece, slot) in plan.pieces.iter().zip(&out.pieces) {
        let moved = plan.moved(piece)?;
        let all = (slot.mass? + slot.wire_mass?) * f64::from(piece.count);
        let share = moved
            .parts()
            .iter()
            .filter(|(id, _)| *id == metal)
            .map(|(_, k)| *k / moved.equivalent)
            .sum::<f64>();
        sum = sum + all * (share * sign);
    }
    Some(sum)
}
