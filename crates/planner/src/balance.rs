//! What the baths and their counter electrodes gain and lose.

use crate::moved::{deposited_on_counter, dissolved};
use crate::plan::{Plan, PlanBath};
use crate::run::{Run, some};
use chemistry::material::Anode;
use quantity::{Charge, Mass, MassPerCharge, Quantity};

/// Writes the balance of a whole run: of each metal what the work and its wires give less what they take, and what the
/// counter electrode gives or takes at an efficiency of 1. Absent where the counter electrode is not known.
pub(crate) fn keep(plan: &Plan, out: &mut Run, known: bool) {
    for (bath, run) in plan.baths.iter().zip(&mut out.baths) {
        let Some(charge) = some::<Charge>(run.passed).filter(|_| known) else {
            continue;
        };
        run.charge = Some(charge);
        let none = ("", Mass::from_si(0.0));
        let given = if bath.etches() {
            let laid = deposited_on_counter(&bath.solution).map(|(id, k)| (id, k * charge));
            run.counter = laid.map(|(_, m)| m);
            // What is laid on it leaves the bath.
            laid.map(|(id, m)| (id, m * -1.0))
        } else {
            let given = given_by_counter(bath, charge).map(|g| g.unwrap_or(none));
            run.counter = given.map(|(_, m)| if m.si() == 0.0 { m } else { m * -1.0 });
            given
        };
        let Some((counter_id, from_counter)) = given else {
            continue;
        };
        let sign = if bath.etches() { 1.0 } else { -1.0 };
        for (n, hold) in bath.metals.iter().enumerate() {
            let other = if hold.metal == counter_id {
                from_counter.si()
            } else {
                0.0
            };
            let work = sign * run.taken[n];
            // What cancels is nothing, not the last digit that is left of it.
            let sum = work + other;
            let cancels = sum.abs() <= 1e-13 * (work.abs() + other.abs());
            run.gained[n] = some(if cancels { 0.0 } else { sum });
        }
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
