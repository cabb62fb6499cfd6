//! Another supply.

use super::{Search, To, Way};
use crate::job::Supply;
use crate::path::FieldPath;
use quantity::{AnyQuantity, Current};

impl Search<'_> {
    pub(super) fn bench(&mut self, change: impl FnOnce(&mut crate::job::Bench, &Self)) -> bool {
        let mut supply = self.job.supply.clone();
        let (key, bench) = match &mut supply {
            Some(Supply::ConstantCurrent(bench)) => ("constant_current", bench),
            Some(Supply::Both(bench)) => ("both", bench),
            _ => return false,
        };
        let before = bench.clone();
        change(bench, self);
        let changed: Option<(&str, AnyQuantity)> = if bench.lowest != before.lowest {
            bench.lowest.map(|q| ("lowest", q.into()))
        } else if bench.highest != before.highest {
            bench.highest.map(|q| ("highest", q.into()))
        } else if bench.display_step != before.display_step {
            bench.display_step.map(|q| ("display_step", q.into()))
        } else {
            bench.highest_volts.map(|q| ("highest_volts", q.into()))
        };
        let Some((name, to)) = changed else {
            return false;
        };
        let at = FieldPath::new("supply").child(key).child(name);
        self.attempt(Way::Supply, at, To::Quantity(to), |j| j.supply = supply)
    }

    /// A supply that gives what is wanted; where the supply ruled, what the solution's typical density takes.
    pub(super) fn larger_supply(&mut self, wanted: Option<Current>) {
        let typical = self
            .now
            .plan
            .steps
            .get(self.step())
            .and_then(|s| self.now.plan.bath(s))
            .and_then(|b| b.solution.window_still.typical())
            .zip(self.area())
            .map(|(i, a)| i * a);
        if let Some(wanted) = wanted.or(typical) {
            // With more at hand an advised current rises, and what covers the coat with it.
            for times in [1.0 + 1e-9, 1.5, 2.0, 3.0, 4.0, 6.0] {
                if self.bench(|b, _| b.highest = Some(wanted * times)) {
                    return;
                }
            }
        }
    }
}
