//! One stage of a step: what to set, how long, what is laid.

use crate::bench;
use crate::body::Growing;
use crate::cover;
use crate::even::{Reaches, efficiency, min_ratio};
use crate::groove;
use crate::inputs::Inputs;
use crate::meter;
use crate::moved::Moved;
use crate::plan::{Plan, PlanBath, PlanDrive, PlanStage, PlanStep, PlanUntil};
use crate::run::{Kept, Lays, PieceNow, Run, Shown, StageRun, StepRun, si, some};
use crate::share::{Load, share, volts};
use field::{Along, wagner};
use quantity::{Current, CurrentDensity, Fraction, Quantity, Ratio, Time, Voltage};

/// One stage of a step with one set of values.
pub(crate) struct Sample<'a> {
    pub(crate) plan: &'a Plan,
    pub(crate) inputs: &'a Inputs,
    pub(crate) step: &'a PlanStep,
    pub(crate) stage: &'a PlanStage,
    /// What own settings would lay is followed apart from what the kept ones do.
    pub(crate) followed: bool,
}

/// So much current for so long, on what own settings would give (`aimed`) or on what is really there.
#[derive(Clone, Copy)]
struct Pass {
    flows: f64,
    seconds: f64,
    aimed: bool,
}

/// A vessel of the stage.
#[derive(Clone, Copy)]
struct Vessel<'a> {
    bath: &'a PlanBath,
    /// Its place in the plan.
    place: usize,
    hung: &'a [usize],
}

impl<'a> Sample<'a> {
    fn vessels(&self) -> impl Iterator<Item = Vessel<'a>> + use<'a> {
        let plan = self.plan;
        let vessels = self.step.vessels.iter().zip(&self.stage.hung);
        vessels.map(move |(v, hung)| Vessel {
            bath: &plan.baths[v.bath],
            place: v.bath,
            hung,
        })
    }

    fn moved(&self, piece: usize, vessel: Vessel) -> Option<&'a Moved> {
        self.plan.moved(piece, vessel.place)
    }

    /// What a charge moves of a piece's metal.
    fn lays<'r>(&self, piece: usize, vessel: Vessel, out: &'r Run) -> &'r Lays {
        &out.lays[piece * self.plan.baths.len() + vessel.place]
    }

    /// Wetted area now in the vessel that has least.
    pub(crate) fn least_area(&self, out: &Run, aimed: bool) -> f64 {
        self.vessels()
            .map(|v| {
                let each = v.hung.iter();
                each.map(|p| out.now[*p].body.count * out.now[*p].coat(aimed).area)
                    .sum()
            })
            .reduce(|a: f64, b| if b < a || b.is_nan() { b } else { a })
            .unwrap_or(f64::NAN)
    }

    /// What own settings would be, with what then flows: a density is held in the vessel that has least area.
    pub(crate) fn settings(&self, out: &mut Run, started: f64) -> (StageRun, f64) {
        let area = self.least_area(out, self.followed);
        let wanted = match self.step.drive {
            Some(PlanDrive::Density(i)) if area > 0.0 => i.si() * area,
            Some(PlanDrive::Current(current)) if area > 0.0 => current.si(),
            _ => f64::NAN,
        };
        let (set, set_volts, flows) = self.set(wanted, out);
        let time = if flows.is_nan() {
            f64::NAN
        } else {
            self.time(flows * cover::passes(self.step), started, out)
        };
        let st = StageRun {
            wanted: some(wanted),
            area: some(area),
            set: some(set),
            volts: some(set_volts),
            time: some(time),
            ..StageRun::default()
        };
        (st, flows)
    }

    /// What to set for a current, the voltage where the supply holds that, and what then flows.
    fn set(&self, wanted: f64, out: &mut Run) -> (f64, f64, f64) {
        let plan = self.plan;
        if wanted.is_nan() {
            return (f64::NAN, f64::NAN, f64::NAN);
        }
        if let Some(supply) = &plan.volts {
            let right = self.volts_at(wanted, out);
            let set = si(some::<Voltage>(right).map(|v| bench::shown_volts(supply, v)));
            let flows = self.current_at(set, wanted, out);
            return (flows, set, flows);
        }
        let set = match plan.bench.as_ref() {
            Some(bench) => bench::shown(bench, &plan.fixed, Current::from_si(wanted)),
            None => Current::from_si(wanted),
        };
        (
            set.si(),
            f64::NAN,
            bench::flowing(plan.bench.as_ref(), set).si(),
        )
    }

    /// What flows with the settings that are kept, the display's error counted; `own` with own settings.
    pub(crate) fn flowing(&self, now: Kept, own: f64, kept: bool, out: &mut Run) -> f64 {
        let flows = match now.set {
            None => f64::NAN,
            Some(_) if self.plan.volts.is_some() && kept => {
                self.current_at(si(now.volts), own, out)
            }
            Some(_) if self.plan.volts.is_some() => own,
            Some(set) => {
                let noise = self
                    .plan
                    .display
                    .map_or(0.0, |id| self.inputs.get::<Current>(id).si());
                bench::flowing(self.plan.bench.as_ref(), set).si() + noise
            }
        };
        // A display that shows less than half a step may hide no current at all.
        if flows < 0.0 { 0.0 } else { flows }
    }

    /// Volts over all vessels at a current.
    fn volts_at(&self, current: f64, out: &mut Run) -> f64 {
        self.vessels()
            .map(|v| volts(v.bath, self.inputs, &self.share(v, current, out, false)).1)
            .sum()
    }

    /// The current at which the vessels take so many volts, near a guess: the solution's drop and the links' grow with
    /// the current, the surfaces' own is taken as it stands. Never more than the supply gives.
    fn current_at(&self, set: f64, near: f64, out: &mut Run) -> f64 {
        let surface: f64 = self.vessels().map(|v| surface(v.bath, self.inputs)).sum();
        let mut current = near;
        for _ in 0..12 {
            let ohms = (self.volts_at(current, out) - surface) / current;
            let next = (set - surface) / ohms;
            let done = (next - current).abs() <= 1e-12 * current;
            current = if next < 0.0 { 0.0 } else { next };
            // At no current nothing more can be learned; without contacts the first is exact.
            if done || current == 0.0 || current.is_nan() || !self.plan.contacts {
                break;
            }
        }
        let most = self.plan.volts.as_ref().and_then(|v| v.highest_current);
        most.map_or(current, |most| {
            if current > most.si() {
                most.si()
            } else {
                current
            }
        })
    }

    /// Shares `current` among what hangs in a vessel, into each one's branch.
    fn share(&self, v: Vessel, current: f64, out: &mut Run, aimed: bool) -> Load {
        share(
            self.plan,
            v.bath,
            self.inputs,
            v.hung,
            current,
            aimed,
            &mut out.now,
        )
    }

    fn efficiency(&self, v: Vessel, density: f64) -> f64 {
        let i = CurrentDensity::from_si(density);
        si(efficiency(v.bath, self.inputs, i))
    }

    /// Thinnest over mean of a piece at a density; not a number where it is not known.
    fn thin_ratio(&self, p: usize, v: Vessel, i: f64, reaches: &mut Reaches, out: &Run) -> f64 {
        let piece = &self.plan.pieces[p];
        let curve = self.lays(p, v, out).curve.as_ref();
        let table = curve.filter(|_| piece.own_ratio.is_none()).and_then(|c| {
            let (_, along) = self.wagner(p, v, i, reaches, out)?;
            Some(c.thinnest(&along))
        });
        si(min_ratio(piece, v.bath, self.inputs, table))
    }

    /// The Wagner number of a piece at a density; none where it is not known.
    fn wagner(
        &self,
        p: usize,
        v: Vessel,
        i: f64,
        reaches: &mut Reaches,
        out: &Run,
    ) -> Option<(Ratio, Along)> {
        let body = &out.now[p].body;
        let (reach, ln_reach) = reaches.at(v.bath, self.inputs, i)?;
        let wa = wagner(reach, some(body.scale)?);
        Some((wa, Along::of_ln(wa, ln_reach - body.ln_scale)))
    }

    /// Seconds of this stage with own settings; `started` is when the step began.
    fn time(&self, flows: f64, started: f64, out: &mut Run) -> f64 {
        let from = self.stage.from.si();
        let to = self.stage.to.map(|to| to.si() - from);
        let left = match self.step.until {
            None => f64::NAN,
            Some(PlanUntil::Time(t)) => t.si() - from,
            Some(PlanUntil::Covered(id)) => self.inputs.get::<Time>(id).si() - from,
            Some(PlanUntil::Clock(minute)) => match self.plan.start {
                Some((start, ..)) if started.is_finite() => {
                    let all = start.plus(Time::seconds(started)).until_minute(minute);
                    all.si() - from
                }
                _ => f64::NAN,
            },
            // What is asked for counts once nothing more joins or leaves.
            Some(_) if to.is_some() => f64::INFINITY,
            Some(PlanUntil::Mass(m)) => self.time_to_mass(m.si(), flows, out),
            Some(until) => self.time_to_layer(until, flows, out),
        };
        let left = if left < 0.0 { 0.0 } else { left };
        match to {
            Some(to) if to < left => to,
            _ => left,
        }
    }

    /// Seconds until every piece that hangs has what is asked for.
    fn time_to_layer(&self, until: PlanUntil, flows: f64, out: &mut Run) -> f64 {
        let mut longest = f64::NAN;
        for v in self.vessels() {
            let load = self.share(v, flows, out, self.followed);
            // Effective charge by area that is left for the one that lacks most.
            let mut most = f64::NAN;
            let mut waits = false;
            let mut reaches = Reaches::new();
            for p in v.hung {
                let now = &out.now[*p];
                let coat = *now.coat(self.followed);
                let b = load.branch(now, coat.area);
                let left = match until {
                    PlanUntil::Mean(t) => t.si() - coat.mean,
                    PlanUntil::Thinnest(t) => {
                        (t.si() - coat.thin) / self.thin_ratio(*p, v, b.density, &mut reaches, out)
                    }
                    PlanUntil::Depth(d) => {
                        groove::flat_for(&self.plan.pieces[*p], self.inputs, d).si() - coat.mean
                    }
                    PlanUntil::Time(_)
                    | PlanUntil::Clock(_)
                    | PlanUntil::Mass(_)
                    | PlanUntil::Covered(_) => f64::NAN,
                };
                // Of pieces whose evenness is not known nothing can be waited for; the others rule.
                if left.is_nan() && matches!(until, PlanUntil::Thinnest(_)) {
                    continue;
                }
                waits = true;
                let u = left / self.lays(*p, v, out).layer;
                if self.plan.contacts {
                    let charge = self.charge(v, *p, coat.all, u, out);
                    let t = charge / (self.efficiency(v, b.density) * flows * b.share);
                    longest = larger(longest, if u > 0.0 || u.is_nan() { t } else { 0.0 });
                } else {
                    most = larger(most, u);
                }
            }
            // A vessel in which nothing can be waited for follows the others.
            if !self.plan.contacts && waits {
                let each = v.hung.iter();
                let charge: f64 = if self.plan.growth {
                    each.map(|p| {
                        let now = &out.now[*p];
                        let on = now.coat(self.followed).all;
                        now.body.count * self.charge(v, *p, on, most, out)
                    })
                    .sum()
                } else {
                    most * load.area
                };
                let t = charge / (self.efficiency(v, load.density) * flows);
                longest = larger(longest, if most > 0.0 || most.is_nan() { t } else { 0.0 });
            }
        }
        longest
    }

    /// Effective charge that lays an effective charge by area `u` on a growing piece with its wires.
    fn charge(&self, v: Vessel, p: usize, on: f64, u: f64, out: &Run) -> f64 {
        let layer = self.lays(p, v, out).layer;
        out.now[p].body.both.volume(on, layer * u) / layer
    }

    /// Seconds until so much mass in all lies on the pieces.
    fn time_to_mass(&self, mass: f64, flows: f64, out: &mut Run) -> f64 {
        let each = out.now.iter();
        let each = each.map(|n| n.body.count * n.coat(self.followed).mass);
        let left = mass - each.sum::<f64>();
        if left <= 0.0 {
            return 0.0;
        }
        // Nearly straight: where the area grows it bends a little, and each round mends most of what is left of that.
        let mut t = left / self.mass_after(flows, 1.0, out);
        if self.plan.growth {
            for _ in 0..30 {
                let over = left / self.mass_after(flows, t, out);
                t *= over;
                if (over - 1.0).abs() < 1e-15 {
                    break;
                }
            }
        }
        t
    }

    /// Mass that so many seconds lay on all pieces.
    fn mass_after(&self, flows: f64, seconds: f64, out: &mut Run) -> f64 {
        let pass = Pass {
            flows,
            seconds,
            aimed: self.followed,
        };
        let mut sum = 0.0;
        for v in self.vessels() {
            let load = self.share(v, flows, out, pass.aimed);
            let common = self.common_charge(v, &load, pass, out);
            for p in v.hung {
                let now = &out.now[*p];
                let x = self.laid(v, *p, &load, common, pass, out);
                let volume = now.body.own.volume(now.coat(pass.aimed).all, x);
                sum += now.body.count * self.lays(*p, v, out).density * volume;
            }
        }
        sum
    }

    /// Where all pieces have one density: the effective charge by area that a pass lays on each.
    fn common_charge(&self, v: Vessel, load: &Load, pass: Pass, out: &Run) -> f64 {
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
        let layer = first.map_or(f64::NAN, |p| self.lays(*p, v, out).layer);
        sum.layer(0.0, layer * charge) / layer
    }

    /// The layer that a pass lays on one piece; `common` where all have one density.
    #[inline]
    fn laid(&self, v: Vessel, p: usize, load: &Load, common: f64, pass: Pass, out: &Run) -> f64 {
        if self.plan.contacts {
            self.laid_apart(v, p, load, pass, out)
        } else {
            self.lays(p, v, out).layer * common
        }
    }

    /// The same where contacts and leads count.
    fn laid_apart(&self, v: Vessel, p: usize, load: &Load, pass: Pass, out: &Run) -> f64 {
        let layer = self.lays(p, v, out).layer;
        let now = &out.now[p];
        let coat = now.coat(pass.aimed);
        let b = load.branch(now, coat.area);
        let charge = self.efficiency(v, b.density) * pass.flows * b.share * pass.seconds;
        if !self.plan.growth {
            return layer * charge / b.area;
        }
        now.body.both.layer(coat.all, layer * charge)
    }

    /// Lays what so many seconds lay: on what own settings would give (`aimed`), or on what is really there.
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
                        let density = out.lays[*p * self.plan.baths.len() + v.place].density;
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
                let Lays {
                    density,
                    equivalent,
                    ..
                } = *self.lays(*p, v, out);
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

    /// What shows at the stage's start, and each piece's part in it.
    pub(crate) fn shows(&self, flows: f64, out: &mut Run) -> StepRun {
        let mut density = f64::NAN;
        let mut densest = f64::NAN;
        out.loads.clear();
        // Of no vessel and of no current there is nothing to say.
        let nothing = if self.step.vessels.is_empty() || flows.is_nan() {
            f64::NAN
        } else {
            0.0
        };
        let (mut ohmic, mut all, mut wasted) = (nothing, nothing, nothing);
        let mut surfaces = nothing;
        let mut growth = None;
        let raise = |most: &mut f64, x: f64| {
            if !x.is_nan() {
                *most = larger(*most, x);
            }
        };
        for v in self.vessels() {
            let load = self.share(v, flows, out, false);
            out.loads.push(load);
            raise(&mut density, load.density);
            let (own, whole) = volts(v.bath, self.inputs, &load);
            ohmic += own;
            all += whole;
            surfaces += surface(v.bath, self.inputs);
            let mut reaches = Reaches::new();
            for p in v.hung {
                let now = &out.now[*p];
                let b = load.branch(now, now.real.area);
                let piece = &self.plan.pieces[*p];
                let curve = self.lays(*p, v, out).curve.as_ref();
                let even = curve.and_then(|curve| {
                    let (wa, along) = self.wagner(*p, v, b.density, &mut reaches, out)?;
                    let found = curve.ends(&along);
                    let found = if piece.pointed {
                        found.on_points()
                    } else {
                        found
                    };
                    Some((wa, found))
                });
                if let Some((_, e)) = even {
                    raise(&mut densest, b.density * e.max_over_mean.si());
                }
                let wire = now.body.wire.area(now.real.all);
                wasted += now.body.count * b.share * wire / b.area;
                growth.get_or_insert_with(|| {
                    let layer = self.lays(*p, v, out).layer;
                    layer * self.efficiency(v, b.density) * b.density
                });
                out.now[*p].shown = Some(Shown {
                    flows,
                    branch: b,
                    bath: v.place,
                    wagner: even.map(|(wa, _)| wa),
                    even: even.map(|(_, e)| e),
                });
            }
        }
        let vessels = self.step.vessels.len() as f64;
        StepRun {
            density: some(density),
            densest: some(densest),
            growth: growth.and_then(some),
            ohmic: some(ohmic),
            volts: some(all),
            power: some(all * flows),
            wasted: some::<Fraction>(wasted / vessels),
            bites: meter::bites(self.plan, self.step, flows, surfaces, all),
            ..StepRun::default()
        }
    }
}

/// What both surfaces of a vessel and its leads take; not a number where they are not known apart.
fn surface(bath: &PlanBath, inputs: &Inputs) -> f64 {
    bath.surface_volts
        .map_or(f64::NAN, |id| inputs.get::<Voltage>(id).si())
}

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

/// The larger of two; what is not a number rules from the right, not from the left.
fn larger(most: f64, x: f64) -> f64 {
    if most >= x { most } else { x }
}
