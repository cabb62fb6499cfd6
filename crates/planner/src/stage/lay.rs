//! What a stage lays on each piece.

use super::{Pass, Sample, Vessel};
use crate::body::Growing;
use crate::even::{Reaches, min_ratio};
use crate::moved::Moved;
use crate::run::{PieceNow, Rates, Run, si};
use crate::share::Load;
use quantity::Quantity;

/// Books what a charge of effective current moves of each of a metal's elements.
fn take(v: Vessel, moved: &Moved, charge: f64, out: &mut Run) {
    for (n, hold) in v.bath.metals.iter().enumerate() {
        for (id, k) in moved.parts() {
            if *id == hold.metal {
                out.baths[v.place].taken[n] += charge * k.si();
            }
        }
    }
}

impl<'a> Sample<'a> {
    /// Where all pieces have one density: the effective charge by area that a pass lays on each.
    pub(super) fn common_charge(&self, v: Vessel, load: &Load, pass: Pass, out: &Run) -> f64 {
        let charge = self.efficiency(v, load.density) * pass.flows * pass.seconds;
        if self.plan.contacts || !self.plan.growth {
            return charge / load.area;
        }
        let mut sum = Growing([load.area, 0.0, 0.0]);
        for p in v.hung {
            let now = &out.now[*p];
            sum.widen(&now.body.both, now.coat(pass.aimed).all, now.body.count);
        }
        // Growing areas are of metal laid down: one metal in a vessel.
        let first = v.hung.first();
        let layer = first.map_or(f64::NAN, |p| self.rates(*p, v, out).layer);
        sum.layer(0.0, layer * charge) / layer
    }

    /// The layer that a pass lays on one piece; `common` where all have one density.
    #[inline]
    pub(super) fn laid(
        &self,
        v: Vessel,
        p: usize,
        load: &Load,
        common: f64,
        pass: Pass,
        out: &Run,
    ) -> f64 {
        if self.plan.contacts {
            self.laid_apart(v, p, load, pass, out)
        } else {
            self.rates(p, v, out).layer * common
        }
    }

    /// The same where contacts and leads count.
    fn laid_apart(&self, v: Vessel, p: usize, load: &Load, pass: Pass, out: &Run) -> f64 {
        let layer = self.rates(p, v, out).layer;
        let now = &out.now[p];
        let coat = now.coat(pass.aimed);
        let b = load.branch(now, coat.area);
        let charge = self.efficiency(v, b.density) * pass.flows * b.share * pass.seconds;
        if !self.plan.growth {
            return layer * charge / b.area;
        }
        now.body.both.layer(coat.all, layer * charge)
    }

    /// Rates what so many seconds lay: on what own settings would give (`aimed`), or on what is really there.
    pub(crate) fn lay(&self, flows: f64, seconds: f64, out: &mut Run, aimed: bool) {
        let pass = Pass {
            flows,
            seconds,
            aimed,
        };
        for (n, v) in self.vessels().enumerate() {
            // What is really there has been shared as it was shown.
            let load = match out.loads.get(n) {
                Some(load) if !aimed => *load,
                _ => self.share(v, flows, out, aimed),
            };
            let common = self.common_charge(v, &load, pass, out);
            let lays = v.bath.lays.as_ref();
            let mut charge = 0.0;
            let mut reaches = Reaches::new();
            for p in v.hung {
                let x = self.laid(v, *p, &load, common, pass, out);
                // Nothing laid is nothing at every place, however uneven.
                let at = |ratio: f64| if x == 0.0 { 0.0 } else { x * ratio };
                if aimed {
                    let thin = if out.follows.thinnest {
                        let now = &out.now[*p];
                        let i = load.branch(now, now.aimed.area).density;
                        at(self.thin_ratio(*p, v, i, &mut reaches, out))
                    } else {
                        0.0
                    };
                    let PieceNow {
                        body, aimed: coat, ..
                    } = &mut out.now[*p];
                    if out.follows.mass {
                        let density = out.rates[*p * self.plan.baths.len() + v.place].density;
                        coat.mass += density * body.own.volume(coat.all, x);
                    }
                    coat.thin += thin;
                    coat.grow(x, body);
                    continue;
                }
                let piece = &self.plan.pieces[*p];
                let table = out.now[*p].shown.and_then(|s| s.even);
                let least = table.map(|t| t.min_over_mean);
                let thin = si(min_ratio(piece, v.bath, self.inputs, least));
                let Rates {
                    density,
                    equivalent,
                    ..
                } = *self.rates(*p, v, out);
                let PieceNow {
                    body, real: coat, ..
                } = &mut out.now[*p];
                let own = density * body.own.volume(coat.all, x);
                let wire = density * body.wire.volume(coat.all, x);
                coat.mass += own;
                coat.wire_mass += wire;
                coat.thin += at(thin);
                coat.thick += at(si(table.map(|t| t.max_over_mean)));
                coat.inside += at(si(table.and_then(|t| t.inside_over_mean)));
                coat.grow(x, body);
                let by_mass = body.count * (own + wire) / equivalent;
                if lays.is_some() {
                    charge += by_mass;
                } else if let Some(moved) = self.moved(*p, v) {
                    take(v, moved, by_mass, out);
                }
            }
            if let Some(moved) = lays {
                take(v, moved, charge, out);
            }
        }
    }
}
