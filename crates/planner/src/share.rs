//! How the pieces on one bar share a current, and the volts a vessel takes.

use crate::inputs::Inputs;
use crate::plan::{Plan, PlanBath};
use crate::run::PieceNow;
use quantity::{Conductivity, Length, Quantity, Resistance, Voltage};

/// One piece's part of a vessel's current.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Branch {
    /// Share of the current that one piece takes with its wires.
    pub(crate) share: f64,
    /// Wetted area of one piece with its wires, as it is now.
    pub(crate) area: f64,
    /// Its density.
    pub(crate) density: f64,
}

/// What a vessel as a whole takes.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Load {
    /// Through it.
    pub(crate) current: f64,
    /// Wetted area of all in it.
    pub(crate) area: f64,
    /// One over that.
    per_area: f64,
    /// Mean density.
    pub(crate) density: f64,
    /// Volts that contacts and leads take.
    pub(crate) links: f64,
    /// Whether all have one density: contacts and leads do not count.
    pub(crate) by_area: bool,
}

impl Load {
    /// Of so much wetted area, where contacts and leads do not count.
    pub(crate) fn by_area(area: f64, current: f64) -> Self {
        let per_area = 1.0 / area;
        Self {
            current,
            area,
            per_area,
            density: current * per_area,
            links: 0.0,
            by_area: true,
        }
    }

    /// One piece's density.
    pub(crate) fn density(&self, now: &PieceNow) -> f64 {
        if self.by_area {
            self.density
        } else {
            now.branch.density
        }
    }

    /// One piece's part, by what is really on it or by what own settings would have laid.
    pub(crate) fn branch(&self, now: &PieceNow, aimed: bool) -> Branch {
        if !self.by_area {
            return now.branch;
        }
        let area = now.area(aimed);
        Branch {
            share: area * self.per_area,
            area,
            density: self.density,
        }
    }
}

/// Resistance of the solution between work and counter electrode, by area.
fn ohms(bath: &PlanBath, inputs: &Inputs) -> Option<f64> {
    let kappa: Conductivity = inputs.get(bath.conductivity?);
    Some((inputs.get::<Length>(bath.distance?) / kappa).si())
}

/// Shares the current of a vessel, `whole` by area, among the pieces that hang in it, by what is really on them or what own
/// settings would have laid.
///
/// By conductance: 1 / R of each branch with R = contact + lead + (b / i + d / kappa) / A (derived: each piece sees its own
/// strip of the counter electrode; b / i is the surface's own resistance at the mean density). Pieces on one clip share its
/// contact: (1 / Rest) / (1 + contact x sum of 1 / Rest) of each. By area where the solution's figures are not known, and
/// where nothing flows.
pub(crate) fn by_contacts(
    plan: &Plan,
    bath: &PlanBath,
    inputs: &Inputs,
    hung: &[usize],
    whole: Load,
    aimed: bool,
    out: &mut [PieceNow],
) -> Load {
    let body = |out: &[PieceNow], p: usize| (out[p].body.count, out[p].area(aimed));
    let Load {
        current, density, ..
    } = whole;
    let known = ohms(bath, inputs).zip(bath.slope);
    let Some((solution, slope)) = known.filter(|_| density > 0.0) else {
        return whole;
    };
    let by_area = slope.value.si() / density + solution;
    let ohm = |p: usize, n: usize| {
        plan.pieces[p].contact[n].map_or(0.0, |id| inputs.get::<Resistance>(id).si())
    };
    let mut sum = 0.0;
    for p in hung {
        let (n, own) = body(out, *p);
        let (contact, behind) = (ohm(*p, 0), ohm(*p, 1) + by_area / own);
        let conductance = match plan.pieces[*p].clip {
            None => 1.0 / (contact + behind),
            // On one clip: the contact carries all of them, what is behind it shares that.
            clip => {
                let on = hung.iter().filter(|q| plan.pieces[**q].clip == clip);
                let all: f64 = on
                    .map(|q| {
                        let (n, own) = body(out, *q);
                        n / (ohm(*q, 1) + by_area / own)
                    })
                    .sum();
                1.0 / (behind * (contact * all + 1.0))
            }
        };
        sum += n * conductance;
        out[*p].branch = Branch {
            share: conductance,
            area: own,
            density: 0.0,
        };
    }
    for p in hung {
        let branch = &mut out[*p].branch;
        branch.share /= sum;
        branch.density = current * branch.share / branch.area;
    }
    Load {
        links: current / sum - density * by_area,
        by_area: false,
        ..whole
    }
}

/// The volts of a vessel: the solution's own share of them, and all. Both surfaces and the leads add to the solution's
/// drop; for a solution whose surfaces are not known apart, what its cells usually show. Not a number where not known.
pub(crate) fn volts(bath: &PlanBath, inputs: &Inputs, load: &Load) -> (f64, f64) {
    let ohmic = ohms(bath, inputs).map_or(f64::NAN, |r| load.density * r);
    let volts = |id| inputs.get::<Voltage>(id).si();
    let all = match (bath.surface_volts, bath.cell_volts) {
        (Some(id), _) => ohmic + load.links + volts(id),
        (None, Some(id)) => volts(id),
        (None, None) => f64::NAN,
    };
    (ohmic, all)
}
