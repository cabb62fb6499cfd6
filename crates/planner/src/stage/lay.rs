//! What a stage lays on each piece, and what shows as it begins.

use super::{Pass, Sample, Vessel, surface};
use crate::even::Reaches;
use crate::meter;
use crate::run::{BathRun, PieceNow, Rates, Run, Shown, some};
use crate::share::{Load, volts};
use quantity::Quantity;

/// Books what a charge of effective current moves of each of a metal's elements.
fn take(v: Vessel, rates: &Rates, charge: f64, bath: &mut BathRun) {
    let booked = &rates.booked[..v.bath.metals.len()];
    for (k, taken) in booked.iter().zip(&mut bath.taken) {
        // What is not in it is not taken, even of a charge that is not known.
        if *k != 0.0 {
            *taken += charge * k;
        }
    }
}

/// What comes on each piece.
#[derive(Clone, Copy)]
enum Lays {
    /// An effective charge by area.
    ByCharge(f64),
    /// A layer.
    This(f64),
}

impl Lays {
    #[inline]
    fn on(self, rates: &Rates) -> f64 {
        match self {
            Lays::ByCharge(common) => rates.layer * common,
            Lays::This(x) => x,
        }
    }
}

/// Coats some pieces of a vessel, where the bath evens out as it was asked last. Gives the thickest place over the mean among
/// them.
// By itself, so that all it works with stays in registers: a sample goes through here for each piece at every stage.
#[inline(never)]
fn coat(
    some: &[usize],
    every: &mut [PieceNow],
    rates: &[Rates],
    reaches: &Reaches,
    lays: Lays,
) -> f64 {
    let mut thickest = f64::NEG_INFINITY;
    for p in some {
        let (now, rates) = (&mut every[*p], &rates[*p]);
        let even = rates.curve.ends(&reaches.along(&now.body));
        let thick = even.max_over_mean.si();
        thickest = if thick > thickest { thick } else { thickest };
        let x = lays.on(rates);
        let coat = &mut now.real;
        // Nothing laid is nothing at every place, however uneven.
        if x != 0.0 {
            let thin = reaches.thin_over_mean(rates.own_ratio, even.min_over_mean.si());
            coat.thin += x * thin;
            coat.thick += x * thick;
            coat.inside += x * even.inside_over_mean.si();
        }
        coat.grow(x, rates.density, &now.body);
    }
    thickest
}

impl<'a> Sample<'a> {
    /// Metal that an effective charge lays as a layer over an area: of the first piece in a vessel. Growing areas are of metal
    /// laid down, and that is one in a vessel.
    pub(super) fn first_layer(&self, v: Vessel, out: &Run) -> f64 {
        let first = v.hung.first();
        first.map_or(f64::NAN, |p| self.rates(v, out)[*p].layer)
    }

    /// Where all pieces have one density: the effective charge by area that a pass lays on each, and that of all.
    pub(super) fn common_charge(
        &self,
        v: Vessel,
        load: &Load,
        pass: Pass,
        out: &Run,
    ) -> (f64, f64) {
        let charge = self.efficiency(v, load.density) * pass.flows * pass.seconds;
        if self.plan.contacts || !self.plan.growth {
            return (charge / load.area, charge);
        }
        let layer = self.first_layer(v, out);
        let wetted = &out.wetted[v.nth][usize::from(pass.aimed)];
        (wetted.layer(layer * charge) / layer, charge)
    }

    /// What is wet in a vessel grows with what lies on all its pieces, where they have one density.
    fn grow_all(&self, v: Vessel, common: f64, aimed: bool, out: &mut Run) {
        if self.plan.contacts || !self.plan.growth {
            return;
        }
        let x = self.first_layer(v, out) * common;
        let wetted = &mut out.wetted[v.nth][usize::from(aimed)];
        *wetted = wetted.from(x);
    }

    /// The layer that a pass lays on one piece, and the effective charge it takes where areas do not grow; `common` where all
    /// have one density.
    pub(super) fn laid(
        &self,
        v: Vessel,
        load: &Load,
        common: f64,
        pass: Pass,
        now: &PieceNow,
        rates: &Rates,
    ) -> (f64, f64) {
        if !self.plan.contacts {
            return (rates.layer * common, common * now.area(pass.aimed));
        }
        let b = load.branch(now, pass.aimed);
        let charge = self.efficiency(v, b.density) * pass.flows * b.share * pass.seconds;
        let x = if self.plan.growth {
            let on = now.coat(pass.aimed).all;
            now.body.both.from(on).layer(rates.layer * charge)
        } else {
            rates.layer * charge / b.area
        };
        (x, charge)
    }

    /// Counts what so many seconds would lay with own settings.
    pub(crate) fn lay_aimed(&self, flows: f64, seconds: f64, out: &mut Run) {
        let pass = Pass {
            flows,
            seconds,
            aimed: true,
        };
        let thinnest = out.follows.thinnest;
        for v in self.vessels() {
            let load = self.share(v, flows, out, true);
            let (common, _) = self.common_charge(v, &load, pass, out);
            let mut reaches = Reaches::new(v.bath, self.inputs);
            let pieces = self.plan.pieces.len();
            let rates = &out.rates[v.place * pieces..][..pieces];
            let every = &mut out.now[..pieces];
            for p in v.hung {
                let (now, rates) = (&mut every[*p], &rates[*p]);
                let x = if self.plan.contacts {
                    self.laid(v, &load, common, pass, now, rates).0
                } else {
                    rates.layer * common
                };
                // Nothing laid is nothing at every place, however uneven.
                if thinnest && x != 0.0 {
                    reaches.at(load.density(now));
                    now.aimed.thin += x * reaches.thin_ratio(&now.body, rates);
                }
                now.aimed.grow(x, rates.density, &now.body);
            }
            self.grow_all(v, common, true, out);
        }
    }

    /// Lays on each piece what the kept settings lay: `flows` through the vessels, of which the share `filling` passes while a
    /// coat fills, for so many seconds. Gives the density, and leaves with step `tells` what else shows at the stage's start
    /// and with each piece its part in it, where that is looked at: in its last stage, or with `shows` in each.
    pub(crate) fn lay(
        &self,
        flows: f64,
        filling: f64,
        seconds: f64,
        tells: Option<usize>,
        shows: bool,
        out: &mut Run,
    ) -> f64 {
        let pass = Pass {
            flows: flows * filling,
            seconds,
            aimed: false,
        };
        // Of what is not a number none is the densest; of nothing at all this stays endless, and absent.
        let (mut density, mut densest) = (f64::NEG_INFINITY, f64::NEG_INFINITY);
        // Of no vessel and of no current there is nothing to say.
        let nothing = if self.step.vessels.is_empty() || flows.is_nan() {
            f64::NAN
        } else {
            0.0
        };
        let (mut ohmic, mut all_volts, mut surfaces) = (nothing, nothing, nothing);
        let mut growth = None;
        let raise = |most: &mut f64, x: f64| *most = if x > *most { x } else { *most };
        for v in self.vessels() {
            let load = self.share(v, flows, out, false);
            raise(&mut density, load.density);
            if tells.is_some() {
                let (own, whole) = volts(v.bath, self.inputs, &load);
                ohmic += own;
                all_volts += whole;
                surfaces += surface(v.bath, self.inputs);
                // Said of the first piece.
                if let (None, Some(p)) = (growth, v.hung.first()) {
                    let i = load.density(&out.now[*p]);
                    growth = Some(self.rates(v, out)[*p].layer * self.efficiency(v, i) * i);
                }
            }
            let mut reaches = Reaches::new(v.bath, self.inputs);
            for p in if shows { v.hung } else { v.last } {
                let now = &mut out.now[*p];
                let branch = load.branch(now, false);
                reaches.at(branch.density);
                now.shown = Some(Shown {
                    flows,
                    branch,
                    bath: v.place,
                    reach: reaches.reach(),
                });
            }
            let (common, all) = self.common_charge(v, &load, pass, out);
            let metal = v.bath.lays.as_ref();
            let mut charge = 0.0;
            let pieces = self.plan.pieces.len();
            let rates = &out.rates[v.place * pieces..][..pieces];
            let every = &mut out.now[..pieces];
            if self.plan.contacts || metal.is_none() {
                let bath = &mut out.baths[v.place];
                for p in v.hung {
                    let now = &every[*p];
                    let i = load.density(now);
                    reaches.at(i);
                    let (x, one) = self.laid(v, &load, common, pass, now, &rates[*p]);
                    let one = now.body.count * one;
                    charge += one;
                    if metal.is_none() {
                        take(v, &rates[*p], one, bath);
                    }
                    let thick = coat(&[*p], every, rates, &reaches, Lays::This(x));
                    raise(&mut densest, i * thick);
                }
            } else {
                reaches.at(load.density);
                let thick = coat(v.hung, every, rates, &reaches, Lays::ByCharge(common));
                raise(&mut densest, load.density * thick);
            }
            if let (Some(_), Some(first)) = (metal, v.hung.first()) {
                // What is laid on one whose area is not known is not known either.
                let of_all = if common.is_nan() { common } else { all };
                let charge = if self.plan.contacts { charge } else { of_all };
                take(v, &rates[*first], charge, &mut out.baths[v.place]);
            }
            self.grow_all(v, common, false, out);
        }
        if let Some(step) = tells {
            let s = &mut out.steps[step];
            s.densest = some(densest);
            s.growth = growth.and_then(some);
            s.ohmic = some(ohmic);
            s.volts = some(all_volts);
            s.power = some(all_volts * flows);
            s.bites = meter::bites(self.plan, self.step, flows, surfaces, all_volts);
        }
        density
    }
}
