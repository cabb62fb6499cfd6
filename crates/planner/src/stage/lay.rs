//! What a stage lays on each piece, and what shows as it begins.

use super::{Pass, Sample, Vessel, surface};
use crate::even::Reaches;
use crate::meter;
use crate::moved::Moved;
use crate::run::{BathRun, PieceNow, Rates, Run, Shown, StepRun, some};
use crate::share::{Load, volts};
use quantity::Quantity;

/// Books what a charge of effective current moves of each of a metal's elements.
fn take(v: Vessel, moved: &Moved, charge: f64, bath: &mut BathRun) {
    for (hold, taken) in v.bath.metals.iter().zip(&mut bath.taken) {
        for (id, k) in moved.parts() {
            if *id == hold.metal {
                *taken += charge * k.si();
            }
        }
    }
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
    #[inline]
    pub(super) fn laid(
        &self,
        v: Vessel,
        load: &Load,
        common: f64,
        pass: Pass,
        now: &PieceNow,
        rates: &Rates,
    ) -> (f64, f64) {
        if self.plan.contacts {
            self.laid_apart(v, load, pass, now, rates)
        } else {
            (rates.layer * common, common * now.coat(pass.aimed).area)
        }
    }

    /// The same where contacts and leads count.
    fn laid_apart(
        &self,
        v: Vessel,
        load: &Load,
        pass: Pass,
        now: &PieceNow,
        rates: &Rates,
    ) -> (f64, f64) {
        let coat = now.coat(pass.aimed);
        let b = load.branch(now, coat.area);
        let charge = self.efficiency(v, b.density) * pass.flows * b.share * pass.seconds;
        let x = if self.plan.growth {
            now.body.both.from(coat.all).layer(rates.layer * charge)
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
            let rates = &out.rates[v.place * self.plan.pieces.len()..];
            for p in v.hung {
                let (now, rates) = (&mut out.now[*p], &rates[*p]);
                let (x, _) = self.laid(v, &load, common, pass, now, rates);
                // Nothing laid is nothing at every place, however uneven.
                if thinnest && x != 0.0 {
                    let i = load.branch(now, now.aimed.area).density;
                    let ratio = reaches.thin_ratio(i, &now.body, rates);
                    now.aimed.thin += x * ratio;
                }
                now.aimed.grow(x, rates.density, &now.body);
            }
            self.grow_all(v, common, true, out);
        }
    }

    /// Lays on each piece what the kept settings lay: `flows` through the vessels, of which the share `filling` passes while a
    /// coat fills, for so many seconds. Gives what shows at the stage's start, and leaves with each piece its part in it.
    pub(crate) fn lay(&self, flows: f64, filling: f64, seconds: f64, out: &mut Run) -> StepRun {
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
            let (own, whole) = volts(v.bath, self.inputs, &load);
            ohmic += own;
            all_volts += whole;
            surfaces += surface(v.bath, self.inputs);
            let (common, all) = self.common_charge(v, &load, pass, out);
            let mut charge = 0.0;
            let mut reaches = Reaches::new(v.bath, self.inputs);
            let rates = &out.rates[v.place * self.plan.pieces.len()..];
            let bath = &mut out.baths[v.place];
            let lays = v.bath.lays.as_ref();
            // Said of the first piece.
            if let (None, Some(p)) = (growth, v.hung.first()) {
                let now = &out.now[*p];
                let i = load.branch(now, now.real.area).density;
                growth = Some(rates[*p].layer * self.efficiency(v, i) * i);
            }
            for p in v.hung {
                let (now, rates) = (&mut out.now[*p], &rates[*p]);
                let b = load.branch(now, now.real.area);
                let even = rates.curve.ends(&reaches.along(b.density, &now.body));
                let (thin, thick) = (even.min_over_mean.si(), even.max_over_mean.si());
                raise(&mut densest, b.density * thick);
                now.shown = Some(Shown {
                    flows,
                    branch: b,
                    bath: v.place,
                    reach: reaches.reach(),
                });
                let (x, one) = self.laid(v, &load, common, pass, now, rates);
                let coat = &mut now.real;
                // Nothing laid is nothing at every place, however uneven.
                if x != 0.0 {
                    coat.thin += x * reaches.thin_over_mean(rates.own_ratio, thin);
                    coat.thick += x * thick;
                    coat.inside += x * even.inside_over_mean.si();
                }
                coat.grow(x, rates.density, &now.body);
                charge += now.body.count * one;
                if lays.is_none()
                    && let Some(moved) = self.moved(*p, v)
                {
                    take(v, moved, now.body.count * one, bath);
                }
            }
            if let Some(moved) = lays {
                // What is laid on one whose area is not known is not known either.
                let of_all = if common.is_nan() { common } else { all };
                take(
                    v,
                    moved,
                    if self.plan.contacts { charge } else { of_all },
                    bath,
                );
            }
            self.grow_all(v, common, false, out);
        }
        StepRun {
            density: some(density),
            densest: some(densest),
            growth: growth.and_then(some),
            ohmic: some(ohmic),
            volts: some(all_volts),
            power: some(all_volts * flows),
            bites: meter::bites(self.plan, self.step, flows, surfaces, all_volts),
            ..StepRun::default()
        }
    }
}
