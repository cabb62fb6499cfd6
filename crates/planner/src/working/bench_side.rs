//! The working of what stands beside the layer: where a coat stalls, where the ceiling bites, how a bath warms.

use super::*;
use crate::cover;
use crate::meter;
use crate::warmth::Beaker;
use quantity::{TemperatureDifference, Voltage, Volume};

impl Writer<'_> {
    /// The density below which a graphite coat is never covered, in the first step it comes into.
    pub(super) fn stalls(&mut self, n: usize, at: &FieldPath, bath: &PlanBath) {
        let step = &self.plan.steps[n];
        if !cover::on_bare_graphite(self.plan, n) {
            return;
        }
        let Some(limiting) = limiting(bath, step) else {
            return;
        };
        self.add(
            "stalls",
            at.clone(),
            vec![
                Named::new("bare_volts", cover::BARE),
                Named::new("front", cover::FRONT),
                Named::new("limiting", limiting),
            ],
            Named::new("stalls_below", cover::stall(bath, step)),
            &[],
        );
    }

    /// The current at which the ceiling is reached, of one vessel without contacts.
    pub(super) fn bites(&mut self, n: usize, at: &FieldPath, bath: &PlanBath) {
        let step = &self.plan.steps[n];
        let run = self.run.steps[n];
        let (Some(flows), Some(volts), Some(bites), Some(ceiling), Some(s)) = (
            run.real,
            run.volts,
            run.bites,
            meter::ceiling(self.plan, step),
            bath.surface_volts,
        ) else {
            return;
        };
        let surface: Voltage = self.get(s);
        if step.vessels.len() != 1 || ceiling.si() <= surface.si() {
            return;
        }
        let values = vec![
            Named::new("flows", flows),
            Named::new("ceiling", ceiling),
            Named::new("surface_volts", surface),
            Named::new("volts", volts),
        ];
        let sources = self.source(bath.surface_volts);
        self.add(
            "bites",
            at.clone(),
            values,
            Named::new("bites", bites),
            &sources,
        );
    }

    /// How far a bath has warmed when the first step is over, where it is the one that is used.
    pub(super) fn warms(&mut self, n: usize, at: &FieldPath, bath: &PlanBath) {
        let (Some(volume), Some(power), Some(time)) =
            (bath.volume, self.run.steps[n].power, self.run.steps[n].time)
        else {
            return;
        };
        if n > 0 || self.plan.steps[n].vessels.len() != 1 {
            return;
        }
        let volume: Volume = self.get(volume);
        let beaker = Beaker::of(volume, bath.surface);
        let rise: TemperatureDifference = beaker.rise(power, time);
        let loss = Named {
            name: "heat_loss",
            value: AnyQuantity {
                key_unit: "W_per_K",
                si: beaker.loss(0.5),
            },
        };
        let values = vec![
            Named::new("power", power),
            loss,
            Named::new("time", time),
            Named::new("tau", beaker.tau()),
        ];
        let derived = Source::Computed {
            method: MethodId::Derived,
        };
        self.add(
            "warms",
            at.clone(),
            values,
            Named::new("rise", rise),
            &[derived],
        );
    }
}
