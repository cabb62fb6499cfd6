//! A step: current, growth, time, evenness, volts.

use super::{Writer, density_source};
use crate::body::scale;
use crate::even::{Reaches, efficiency, reach, spread_on};
use crate::groove;
use crate::inputs::InputId;
use crate::path::FieldPath;
use crate::plan::{PlanBath, PlanPiece, PlanUntil};
use crate::run::{si, some};
use crate::value::Named;
use chemistry::source::{MethodId, Source, WorkId};
use quantity::{Length, Quantity, Ratio, Thickness, Time, WorkArea};

impl Writer<'_> {
    pub(super) fn step(&mut self, n: usize, bath: &PlanBath) {
        let step = &self.plan.steps[n];
        let at = FieldPath::new("steps").child(&step.id);
        let run = self.run.steps[n];
        // Of the layer, which another step of the same metal may have begun.
        let reached = match n.checked_sub(1) {
            Some(p) if self.plan.steps[p].layer == step.layer => self.run.steps[p].mean_after,
            _ => Some(Thickness::um(0.0)),
        };
        let (Some(flows), Some(i), Some(wanted)) = (run.real, run.density, run.wanted) else {
            return;
        };
        let Some(wetted) = self.wetted(n) else { return };
        if let Some(crate::plan::PlanDrive::Density(density)) = step.drive {
            self.add(
                "wanted",
                at.clone(),
                vec![Named::new("density", density), Named::new("wetted", wetted)],
                Named::new("wanted", wanted),
                &self.typical_source(n, bath),
            );
        }
        self.bar(n, bath, wanted, wetted, &at);
        let (Some(growth), Some(moved), Some(efficiency)) = (
            run.growth,
            self.plan.first_moved(step),
            efficiency(bath, self.inputs, i),
        ) else {
            return;
        };
        if self.plan.contacts {
            return;
        }
        // One density that stays: else the step is a sum of stages, or the areas grow, and has no one line.
        let plain = self.plain(n);
        let mut sources = self.source(bath.efficiency);
        sources.extend(density_source(&moved.id));
        let values = vec![
            Named::new("equivalent", moved.equivalent),
            Named::new("efficiency", efficiency),
            Named::new("flows", flows),
            Named::new("wetted", wetted),
            Named::new("metal_density", moved.density),
        ];
        self.add(
            "growth",
            at.clone(),
            values,
            Named::new("growth", growth),
            &sources,
        );
        if let (Some(time), Some(reached), Some(after)) = (run.time, reached, run.mean_after)
            && plain
        {
            self.time_and_mean(n, &at, growth, time, reached, after);
            if let Some(charge) = run.charge {
                let values = vec![Named::new("flows", flows), Named::new("time", time)];
                self.add(
                    "charge",
                    at.clone(),
                    values,
                    Named::new("charge", charge),
                    &[],
                );
                for p in self.hung(n) {
                    self.mass(p, &at, n, efficiency, charge, wetted);
                }
            }
            for p in self.hung(n) {
                self.evenness(p, &at, bath, n, i, growth * time);
            }
        }
        self.volts(&at, bath, i, n);
        self.stalls(n, &at, bath);
        self.bites(n, &at, bath);
        self.warms(n, &at, bath);
    }

    /// How unlike pieces share the current of a step's first stage, in its one vessel; the thief that a supply asks for.
    pub(super) fn bar(
        &mut self,
        n: usize,
        bath: &PlanBath,
        wanted: quantity::Current,
        wetted: WorkArea,
        at: &FieldPath,
    ) {
        let lowest = self.plan.bench.as_ref().and_then(|b| b.lowest);
        if let Some(lowest) = lowest.filter(|l| l.si() > wanted.si() && !bath.etches()) {
            let gauge = crate::ways::GAUGE;
            let more = wetted * (lowest / wanted - 1.0);
            let length = more.si() / (core::f64::consts::PI * gauge.si());
            let values = vec![
                Named::new("wetted", wetted),
                Named::new("lowest", lowest),
                Named::new("wanted", wanted),
                Named::new("gauge", gauge),
            ];
            let result = Named::new("thief", Length::from_si(length));
            self.add("thief", at.clone(), values, result, &[]);
        }
        let first = self.plan.first_stage(n);
        let ([hung], Some(k)) = (first.map_or(&[][..], |k| &self.plan.stages[k].hung), first)
        else {
            return;
        };
        // Areas as they are at the job's start.
        if hung.len() < 2 || n > 0 {
            return;
        }
        for p in hung.clone() {
            let (piece, run) = (&self.plan.pieces[p], &self.run.pieces[p]);
            let Some(area) = run.area else { continue };
            let at = FieldPath::new("pieces").child(&piece.id);
            let mut values = vec![
                Named::new("piece_area", area),
                Named::new("wire_area", run.wire_area),
            ];
            if !self.plan.contacts {
                let share = self.run.shared[k * self.plan.pieces.len() + p].share;
                values.push(Named::new("wetted", wetted));
                if let Some(share) = share {
                    self.add("share", at, values, Named::new("share", share), &[]);
                }
                continue;
            }
            let ohm = |id: Option<InputId>| {
                id.map_or(quantity::Resistance::of_si(0.0), |id| self.inputs.get(id))
            };
            let (Some(kappa), Some(slope), Some(distance), None, Some(i)) = (
                bath.conductivity,
                bath.slope,
                bath.distance,
                piece.clip,
                self.run.steps[n].density,
            ) else {
                continue;
            };
            let (contact, lead) = (ohm(piece.contact[0]), ohm(piece.contact[1]));
            let kappa: quantity::Conductivity = self.get(kappa);
            let distance: Length = self.get(distance);
            let by_area = slope.value.si() / i.si() + distance.si() / kappa.si();
            let all = contact.si() + lead.si() + by_area / (area + run.wire_area).si();
            values.extend([
                Named::new("contact", contact),
                Named::new("lead", lead),
                Named::new("slope", slope.value),
                Named::new("density", i),
                Named::new("distance", distance),
                Named::new("conductivity", kappa),
            ]);
            let result = Named::new("branch", quantity::Resistance::from_si(all));
            self.add("branch", at, values, result, &[]);
        }
    }

    pub(super) fn time_and_mean(
        &mut self,
        n: usize,
        at: &FieldPath,
        growth: quantity::GrowthRate,
        time: Time,
        reached: Thickness,
        after: Thickness,
    ) {
        if let Some(target) = self.aim(n, at)
            && target.si() > reached.si()
        {
            let values = vec![
                Named::new("target", target),
                Named::new("reached", reached),
                Named::new("growth", growth),
            ];
            self.add("time", at.clone(), values, Named::new("time", time), &[]);
        }
        let values = vec![
            Named::new("reached", reached),
            Named::new("growth", growth),
            Named::new("time", time),
        ];
        self.add("mean", at.clone(), values, Named::new("mean", after), &[]);
    }

    /// The mean layer or flat floor a step aims at, where all pieces share one.
    pub(super) fn aim(&mut self, n: usize, at: &FieldPath) -> Option<Thickness> {
        match self.plan.steps[n].until? {
            PlanUntil::Mean(target) => Some(target),
            PlanUntil::Depth(depth) if self.plan.pieces.len() == 1 => {
                let piece = &self.plan.pieces[0];
                let flat = groove::flat_for(piece, self.inputs, depth);
                if let Some(opening) = piece.art.opening.filter(|_| piece.art.groove) {
                    let values = vec![
                        Named::new("depth", depth),
                        Named::new(
                            "etch_factor",
                            Ratio::from_si(groove::etch_factor(piece, self.inputs)),
                        ),
                        Named::new("opening", opening),
                    ];
                    let derived = Source::Computed {
                        method: MethodId::Derived,
                    };
                    self.add(
                        "flat_for_groove",
                        at.clone(),
                        values,
                        Named::new("flat", flat),
                        &[derived],
                    );
                }
                Some(flat)
            }
            _ => None,
        }
    }

    pub(super) fn evenness(
        &mut self,
        p: usize,
        at: &FieldPath,
        bath: &PlanBath,
        n: usize,
        i: quantity::CurrentDensity,
        grown: Thickness,
    ) {
        let piece: &PlanPiece = &self.plan.pieces[p];
        let row = self.plan.steps[n]
            .vessels
            .first()
            .and_then(|v| piece.rows[v.bath]);
        let even = scale(piece, self.inputs)
            .and_then(|size| spread_on(piece, row, size, reach(bath, self.inputs, i)));
        let (wa, table) = (even.map(|e| e.0), si(even.map(|e| e.1.min_over_mean)));
        let fem = Source::Computed {
            method: MethodId::FiniteElements,
        };
        if let (Some(wa), Some(slope), Some(size), Some(k), Some(f)) = (
            wa,
            bath.slope,
            scale(piece, self.inputs),
            bath.conductivity,
            bath.evenness_factor,
        ) {
            let mut sources = self.source(bath.conductivity);
            sources.push(slope.source);
            sources.push(Source::Published {
                work: WorkId::EcsDistribution,
                locator: "Wagner number",
            });
            self.add(
                "wagner",
                at.clone(),
                vec![
                    Named::new("conductivity", self.get::<quantity::Conductivity>(k)),
                    Named::new("evenness_factor", self.get::<Ratio>(f)),
                    Named::new("slope", slope.value),
                    Named::new("density", i),
                    Named::new("scale", size),
                ],
                Named::new("wagner", wa),
                &sources,
            );
        }
        let ratio = some(Reaches::new(bath, self.inputs).thin_over_mean(piece.own_ratio, table));
        if let Some::<Ratio>(ratio) = ratio {
            let sources: &[Source] = if piece.own_ratio.is_some() {
                &[]
            } else {
                &[fem]
            };
            self.add(
                "thinnest",
                at.clone(),
                vec![
                    Named::new("grown", grown),
                    Named::new("min_over_mean", ratio),
                ],
                Named::new("thinnest", grown * ratio.si()),
                sources,
            );
        }
    }

    pub(super) fn volts(
        &mut self,
        at: &FieldPath,
        bath: &PlanBath,
        i: quantity::CurrentDensity,
        n: usize,
    ) {
        if self.plan.contacts || self.plan.steps[n].vessels.len() != 1 {
            return;
        }
        let (Some(volts), Some(d), Some(k), Some(s)) = (
            self.run.steps[n].volts,
            bath.distance,
            bath.conductivity,
            bath.surface_volts,
        ) else {
            return;
        };
        let mut sources = self.source(bath.conductivity);
        sources.extend(self.source(bath.surface_volts));
        self.add(
            "volts",
            at.clone(),
            vec![
                Named::new("density", i),
                Named::new("distance", self.get::<Length>(d)),
                Named::new("conductivity", self.get::<quantity::Conductivity>(k)),
                Named::new("surface_volts", self.get::<quantity::Voltage>(s)),
            ],
            Named::new("volts", volts),
            &sources,
        );
    }
}
