//! The steps.

use super::Reader;
use crate::state::{at, entries, pieces};
use planner::Process;
use planner::fields;
use planner::job::{Drive, InBath, Purpose, Step, Until, step};

impl Reader<'_> {
    pub(super) fn steps(&mut self) -> Vec<Step> {
        let mut steps = Vec::new();
        // Covering is of a coat, before copper is grown on it.
        if self.process() == Process::Electroform {
            match self.draft.text(at::COVER) {
                "coat" if self.coated() => {
                    let mut step = self.step("s1", Some(Drive::Advised), Some(Until::Covered));
                    step.purpose = Purpose::Cover;
                    steps.push(step);
                }
                "on" => {
                    let density = self.number(&fields::DENSITY, at::COVER_DENSITY);
                    let time = self.number(&entries::COVER_MINUTES, at::COVER_TIME);
                    steps.push(self.step("s1", density.map(Drive::Density), time.map(Until::Time)));
                }
                _ => (),
            }
        }
        for id in self.step_ids() {
            self.step = id;
            let drive = self.drive();
            let until = self.until();
            let id = self.step.clone();
            steps.push(self.step(&id, drive, until));
        }
        self.step = super::FIRST.to_owned();
        steps
    }

    /// Whether any piece is a coated non-conductor.
    fn coated(&self) -> bool {
        let base = |id: &str| self.draft.scoped(&at::of(at::BASE, id));
        let mut bases = pieces::ids(self.draft).into_iter().map(base);
        bases.any(|b| ["copper", "graphite", "silver"].contains(&b))
    }

    fn drive(&mut self) -> Option<Drive> {
        match self.draft.text(&self.here(at::DRIVE)) {
            "density" => self
                .number(&fields::DENSITY, at::DENSITY)
                .map(Drive::Density),
            "current" => self
                .number(&fields::CURRENT, at::CURRENT)
                .map(Drive::Current),
            "all_supply" => Some(Drive::AllSupply),
            _ => Some(Drive::Advised),
        }
    }

    fn until(&mut self) -> Option<Until> {
        match self.scoped(at::UNTIL) {
            "depth" => self
                .number(&fields::UNTIL_DEPTH, at::DEPTH)
                .map(Until::Depth),
            "mass" => self.number(&fields::UNTIL_MASS, at::MASS).map(Until::Mass),
            "mean" => self.number(&fields::UNTIL_MEAN, at::MEAN).map(Until::Mean),
            "thinnest" => self
                .number(&fields::UNTIL_THINNEST, at::THINNEST)
                .map(Until::Thinnest),
            "time" => self.number(&fields::UNTIL_TIME, at::TIME).map(Until::Time),
            "clock" => self.time_of_day(at::CLOCK).map(Until::Clock),
            word => step::USES
                .iter()
                .find(|(w, _)| *w == word)
                .map(|(_, of)| Until::Use(*of)),
        }
    }

    /// What happens in a step: of a later layer its solution says it.
    fn kind(&self) -> Process {
        let later = self.step != super::FIRST && self.bath_id() != "b1";
        let own = self.solution().filter(|_| later);
        own.map_or(self.process(), |s| s.process)
    }

    fn ids(&self) -> Vec<String> {
        pieces::ids(self.draft)
            .into_iter()
            .map(str::to_owned)
            .collect()
    }

    fn step(&mut self, id: &str, drive: Option<Drive>, until: Option<Until>) -> Step {
        Step {
            id: id.to_owned(),
            places: vec![InBath {
                bath: self.bath_id(),
                pieces: self.ids(),
            }],
            kind: self.kind(),
            purpose: Default::default(),
            stirring: self.pick(at::STIRRING, &step::STIRRINGS, Default::default()),
            temperature: self.number(&fields::TEMPERATURE, at::TEMPERATURE),
            ceiling: self.number(&fields::CEILING, at::CEILING),
            drive,
            until,
        }
    }
}
