//! The supply as the planner uses it: which current its display can show, and what then flows.

use crate::job::{Bench, VoltBench};
use quantity::{Current, Quantity, Voltage};

/// What this supply makes of a wanted current: the nearest its display can show within its limits, less its offset.
/// Without a display step the wanted current itself. Where no step lies within the limits, the one below them. The step
/// is at most the highest current ([`crate::job::supply::upside_down`]).
///
/// Where the supply has a few settings only, the highest of them that is not above what is wanted, else the lowest.
pub fn shown(bench: &Bench, fixed: &[Current], wanted: Current) -> Current {
    if let Some(lowest) = fixed.first() {
        let under = fixed
            .iter()
            .rev()
            .find(|c| c.si() <= wanted.si() * (1.0 + 1e-9));
        return *under.unwrap_or(lowest);
    }
    let offset = bench.offset.map_or(0.0, Quantity::si);
    let highest = bench.highest.map_or(f64::INFINITY, Quantity::si);
    let lowest = bench.lowest.map_or(0.0, Quantity::si);
    let aim = wanted.si() - offset;
    let aim = if aim > highest { highest } else { aim };
    let aim = if aim < lowest { lowest } else { aim };
    let Some(step) = bench.display_step.map(Quantity::si) else {
        return Current::from_si(aim);
    };
    let mut steps = (aim / step).round();
    // Rounding must not leave the supply's limits, nor show nothing at all.
    if steps * step > highest * (1.0 + 1e-12) {
        steps -= 1.0;
    }
    let too_low = steps < 1.0 || steps * step < lowest * (1.0 - 1e-12);
    if too_low && (steps + 1.0) * step <= highest * (1.0 + 1e-12) {
        steps += 1.0;
    }
    Current::from_si(times(steps, step))
}

/// The voltage to set for a wanted one: the nearest its display can show within its limits.
pub fn shown_volts(bench: &VoltBench, wanted: Voltage) -> Voltage {
    let mut volts = wanted.si();
    if let Some(step) = bench.display_step.map(Quantity::si) {
        volts = times((volts / step).round(), step);
    }
    let least = bench.lowest.map_or(0.0, Quantity::si);
    let most = bench.highest.map_or(f64::INFINITY, Quantity::si);
    Voltage::from_si(volts.clamp(least, if most > least { most } else { least }))
}

/// `steps` display steps, as the decimal the display shows: 7 steps of 0.01 are 0.07, not 0.07 and a rounding error.
fn times(steps: f64, step: f64) -> f64 {
    let per_unit = 1.0 / step;
    if (per_unit - per_unit.round()).abs() < 1e-9 * per_unit {
        steps / per_unit.round()
    } else {
        steps * step
    }
}

/// What flows while `set` is shown, display noise aside. Never below 0: a supply does not pull.
pub fn flowing(bench: Option<&Bench>, set: Current) -> Current {
    let offset = bench.and_then(|b| b.offset).map_or(0.0, Quantity::si);
    let flows = set.si() + offset;
    Current::from_si(if flows > 0.0 { flows } else { 0.0 })
}
