//! From the draft to a Job. Every field goes through its one declaration; what cannot be read is a Problem, and the
//! last good entry stands in for it.

mod attend;
mod bath;
mod happened;
mod piece;
mod steps;
mod supply;

pub use happened::{Happened, happened, hung, step_of};
pub use supply::SETTINGS;

use super::at;
use super::draft::Draft;
use super::entries;
use super::layers;
use super::pieces;
use super::units::Units;
use planner::fields::{self, Bare, CountField, Field};
use planner::job::{
    Assume, Class, Effects, NIGHT_FROM, NIGHT_TO, Place, SpreadAt, Start, Switch, own,
};
use planner::{FieldPath, Job, Problem, Process};
use quantity::{AnyQuantity, Quantity, Unit};

/// A job and how it was read.
#[derive(Clone, Debug, PartialEq)]
pub struct Read {
    /// The job, the last good entry standing in for every field that cannot be read.
    pub job: Job,
    /// The fields that cannot be read as they stand.
    pub problems: Vec<Problem>,
    /// Whether a last good entry stands in for any of them.
    pub stands_in: bool,
}

/// Reads a draft. `now` is the wall clock, `2026-05-01T10:00`; without it the answer has no clock times.
pub fn read(draft: &Draft, now: Option<&str>) -> Read {
    let mut r = Reader::of(draft);
    let pieces: Vec<_> = pieces::ids(draft)
        .into_iter()
        .map(|id| r.piece(id))
        .collect();
    let switch = |on| if on { Switch::On } else { Switch::Off };
    let mut job = Job {
        effects: Effects {
            growth: switch(draft.text(at::GROWTH) == "on"),
            contacts: switch(pieces.iter().any(|p| p.contact.is_some())),
        },
        pieces,
        baths: r.baths(),
        steps: r.steps(),
        own: r.own(),
        supply: Some(r.supply()),
        assume: r.assume(),
        spreads: r.spreads(),
        prices: r.prices(),
        place: r.pick(
            at::PLACE,
            &[
                ("home", Place::Home),
                ("class", Place::Class),
                ("shop", Place::Shop),
            ],
            Place::Home,
        ),
        start: r.start(now),
        attend: r.attend(),
        ..Job::default()
    };
    job.class = r.class();
    let vessels = r.count(&VESSELS, at::VESSELS).unwrap_or(1);
    planner::deal::deal(&mut job, vessels);
    Read {
        job,
        problems: r.problems,
        stands_in: r.stands_in,
    }
}

/// The step that addresses are written for.
const FIRST: &str = "s2";

/// How many vessels stand one behind the other.
pub const VESSELS: CountField = CountField {
    key: "vessels_count",
    least: 1,
    most: 6,
};

/// The id of the person's own solution.
pub const OWN: &str = "own";

struct Reader<'a> {
    draft: &'a Draft,
    units: Units,
    /// The piece that is being read.
    piece: String,
    /// The step that is being read, its bath with it.
    step: String,
    problems: Vec<Problem>,
    stands_in: bool,
}

impl<'a> Reader<'a> {
    fn of(draft: &'a Draft) -> Self {
        Self {
            draft,
            units: Units::of(draft),
            piece: String::new(),
            step: FIRST.to_owned(),
            problems: Vec::new(),
            stands_in: false,
        }
    }
}

impl Reader<'_> {
    /// The address for the piece and the step that are being read.
    fn here(&self, address: &str) -> String {
        at::in_step(&at::of(address, &self.piece), &self.step)
    }

    /// The ids of the growing step and of the layers after it.
    fn step_ids(&self) -> Vec<String> {
        let after = match self.process() {
            Process::Etch => Vec::new(),
            _ => layers::ids(self.draft),
        };
        let all = [FIRST].into_iter().chain(after);
        all.map(str::to_owned).collect()
    }

    /// Reads the text at an address with `read`; where that fails, the last good text.
    fn stand_in<T>(
        &mut self,
        address: &str,
        read: impl Fn(&str, &FieldPath) -> Result<T, Problem>,
    ) -> Option<T> {
        let address = &self.here(address);
        let text = self.draft.text(address);
        let path = FieldPath::new(address);
        if text.trim().is_empty() && entries::may_be_empty(address) {
            return None;
        }
        match read(text, &path) {
            Ok(value) => Some(value),
            Err(problem) => {
                self.problems.push(problem);
                let good = self
                    .draft
                    .good(address)
                    .and_then(|text| read(text, &path).ok());
                self.stands_in |= good.is_some();
                good
            }
        }
    }

    fn number<Q: Quantity>(&mut self, field: &Field<Q>, address: &str) -> Option<Q> {
        let unit = entries::unit_in(self.units, field);
        let found = self.any_number(field.bare(), unit, address);
        found.map(|q| Q::from_si(q.si))
    }

    /// Once for all kinds of number.
    #[inline(never)]
    fn any_number(
        &mut self,
        field: Bare,
        unit: &'static Unit,
        address: &str,
    ) -> Option<AnyQuantity> {
        self.stand_in(address, |text, path| {
            field.read_text(unit, text, path).map(|r| r.value)
        })
    }

    fn count(&mut self, field: &CountField, address: &str) -> Option<u32> {
        self.stand_in(address, |text, path| field.read_text(text, path))
    }

    fn pick<T: Copy>(&self, address: &str, words: &[(&'static str, T)], otherwise: T) -> T {
        let text = self.draft.text(&self.here(address));
        words
            .iter()
            .find(|(w, _)| *w == text)
            .map_or(otherwise, |(_, v)| *v)
    }

    fn scoped(&self, address: &str) -> &str {
        let here = self.here(address);
        // Only the first layer is asked apart for each process.
        if self.step == FIRST {
            self.draft.scoped(&here)
        } else {
            self.draft.text(&here)
        }
    }

    fn process(&self) -> Process {
        self.pick(at::PROCESS, &own::PROCESSES, Process::Electroform)
    }

    /// The person's own values in place of the catalogue's, bath by bath.
    fn assume(&mut self) -> Vec<Assume> {
        let mut all = Vec::new();
        for step in self.step_ids() {
            self.step = step;
            let own: [(&str, Option<AnyQuantity>); 5] = [
                (
                    at::EFFICIENCY,
                    self.own_value(&fields::EFFICIENCY, at::EFFICIENCY),
                ),
                (
                    at::CONDUCTIVITY,
                    self.own_value(&fields::CONDUCTIVITY, at::CONDUCTIVITY),
                ),
                (
                    at::SURFACE_VOLTS,
                    self.own_value(&fields::SURFACE_VOLTS, at::SURFACE_VOLTS),
                ),
                (at::BATCH, self.own_value(&fields::BATCH, at::BATCH)),
                (
                    at::EVENNESS_FACTOR,
                    self.own_value(&fields::EVENNESS_FACTOR, at::EVENNESS_FACTOR),
                ),
            ];
            for (at, value) in own {
                let at = FieldPath::new(&self.here(at));
                all.extend(value.map(|value| Assume { at, value }));
            }
        }
        self.step = FIRST.to_owned();
        all
    }

    fn own_value<Q: Quantity>(&mut self, field: &Field<Q>, address: &str) -> Option<AnyQuantity> {
        self.number(field, address).map(Into::into)
    }

    /// The solution of a bottle's label, where one is used.
    fn own(&mut self) -> own::Own {
        let mut own = own::Own::default();
        if self.scoped(at::SOLUTION) == OWN {
            own.solutions.push(own::OwnSolution {
                id: OWN.to_owned(),
                process: self.process(),
                metal: self.draft.text(at::OWN_METAL).to_owned(),
                valence: None,
                density: self.number(&fields::DENSITY, at::OWN_DENSITY),
                highest: self.number(&fields::OWN_HIGHEST, at::OWN_HIGHEST),
                efficiency: self.number(&fields::OWN_EFFICIENCY, at::OWN_EFFICIENCY),
                moves: self.number(&fields::MOVES, at::OWN_MOVES),
                conductivity: None,
                volts: self.number(&fields::OWN_VOLTS, at::OWN_VOLTS),
            });
        }
        own
    }

    /// How sure the person is of an input, wherever they said so.
    fn spreads(&mut self) -> Vec<SpreadAt> {
        let said: Vec<&String> = self.draft.texts.keys().collect();
        said.into_iter()
            .filter_map(|address| {
                let at = FieldPath::new(at::spread_of(address)?);
                let spread = self.number(&fields::SPREAD, address)?;
                Some(SpreadAt { at, spread })
            })
            .collect()
    }

    /// Those who share the tank, where the work is done in a class and their number is said.
    fn class(&mut self) -> Option<Class> {
        if self.draft.text(at::PLACE) != "class" {
            return None;
        }
        let lesson = self.number(&fields::LESSON, at::LESSON);
        let witness = self.number(&fields::WITNESS, at::WITNESS);
        let students = self.count(&fields::STUDENTS, at::STUDENTS)?;
        Some(Class {
            students,
            lesson,
            witness,
        })
    }

    fn time_of_day(&mut self, address: &str) -> Option<String> {
        let declared = entries::declared(address)?;
        self.stand_in(address, |text, path| {
            declared.echo(Units::Metric, text, path).map(|e| e.text)
        })
    }

    fn start(&mut self, now: Option<&str>) -> Option<Start> {
        let typed = self.time_of_day(at::START).unwrap_or_default();
        let now = now?;
        let local = match (planner::clock::time_of_day(&typed), now.split_once('T')) {
            (Some(minute), Some((day, _))) => {
                format!("{day}T{:02}:{:02}", minute / 60, minute % 60)
            }
            _ => now.to_owned(),
        };
        Some(Start {
            local,
            night_from: NIGHT_FROM,
            night_to: NIGHT_TO,
        })
    }
}
