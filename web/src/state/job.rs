//! From the draft to a Job. Every field goes through its one declaration; what cannot be read is a Problem, and the
//! last good entry stands in for it.

use super::draft::Draft;
use super::entries::{self, at};
use planner::fields::{self, CountField, Field};
use planner::job::{
    Area, Assume, Base, Bath, Bench, Coat, Coated, Counter, Drive, Extent, Fit, Hanger, InBath,
    Method, NIGHT_FROM, NIGHT_TO, Part, Piece, Place, Start, Step, Stock, Supply, Until, bath,
    piece, step,
};
use planner::{Arrangement, FieldPath, Job, Problem, Shape};
use quantity::Quantity;

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
    let mut r = Reader {
        draft,
        problems: Vec::new(),
        stands_in: false,
    };
    let job = Job {
        pieces: vec![r.piece()],
        baths: vec![r.bath()],
        steps: r.steps(),
        supply: Some(r.supply()),
        assume: r.assume(),
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
        ..Job::default()
    };
    Read {
        job,
        problems: r.problems,
        stands_in: r.stands_in,
    }
}

struct Reader<'a> {
    draft: &'a Draft,
    problems: Vec<Problem>,
    stands_in: bool,
}

impl Reader<'_> {
    /// Reads the text at an address with `read`; where that fails, the last good text.
    fn stand_in<T>(
        &mut self,
        address: &str,
        read: impl Fn(&str, &FieldPath) -> Result<T, Problem>,
    ) -> Option<T> {
        let text = self.draft.text(address);
        let path = FieldPath::new(address);
        if text.trim().is_empty() && entries::OPTIONAL.contains(&address) {
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
        self.stand_in(address, |text, path| {
            field.read_text(text, path).map(|r| r.value)
        })
    }

    fn count(&mut self, field: &CountField, address: &str) -> Option<u32> {
        self.stand_in(address, |text, path| field.read_text(text, path))
    }

    fn pick<T: Copy>(&self, address: &str, words: &[(&'static str, T)], otherwise: T) -> T {
        let text = self.draft.text(address);
        words
            .iter()
            .find(|(w, _)| *w == text)
            .map_or(otherwise, |(_, v)| *v)
    }

    fn piece(&mut self) -> Piece {
        let extent = self.extent();
        let wire_d = self.number(&fields::HANGER_WIRE, at::HANGER_WIRE);
        let wet = self.number(&fields::HANGER_WET, at::HANGER_WET);
        let wanted = self.number(&fields::WANTED_BORE, at::WANTED_BORE);
        Piece {
            id: "p1".to_owned(),
            label: String::new(),
            count: self.count(&fields::COUNT, at::COUNT).unwrap_or(1),
            extent,
            base: self.base(),
            open: None,
            hanger: wire_d.zip(wet).map(|(wire_d, wet)| Hanger {
                wire_d,
                wet,
                wires: 1,
            }),
            contact: None,
            opening: None,
            min_over_mean: None,
            fit: wanted.map(|wanted| Fit {
                bore: None,
                wanted: Some(wanted),
            }),
            artwork: None,
            joins: None,
            leaves: None,
        }
    }

    fn extent(&mut self) -> Option<Extent> {
        let shape = match self.draft.text(at::SHAPE) {
            "area" => {
                let one_side = self.number(&fields::ONE_SIDE, at::AREA)?;
                let method = self.pick(at::METHOD, &piece::METHODS, Method::Eye);
                return Some(Extent::Area(Area {
                    one_side,
                    sides: 1,
                    texture: None,
                    method: Some(method),
                }));
            }
            "torus" => {
                let bore = self.number(&fields::BORE, at::TORUS_BORE);
                let wire_d = self.number(&fields::RING_WIRE, at::TORUS_WIRE);
                bore.zip(wire_d)
                    .map(|(bore, wire_d)| Shape::Torus { bore, wire_d })
            }
            _ => {
                let bore = self.number(&fields::BORE, at::BAND_BORE);
                let wall = self.number(&fields::WALL, at::BAND_WALL);
                let width = self.number(&fields::WIDTH, at::BAND_WIDTH);
                bore.zip(wall)
                    .zip(width)
                    .map(|((bore, wall), width)| Shape::Band { bore, wall, width })
            }
        };
        shape.map(|shape| {
            Extent::Parts(vec![Part {
                id: "a".to_owned(),
                shape,
                texture_outside: None,
                times: 1,
            }])
        })
    }

    fn base(&self) -> Option<Base> {
        let coat = match self.draft.text(at::BASE) {
            "graphite" => Coat::Graphite,
            "copper" => Coat::Copper,
            "silver" => Coat::Silver,
            "metal" => {
                return Some(Base::Metal(Stock {
                    id: "Cu".to_owned(),
                    thickness: None,
                }));
            }
            _ => return Some(Base::Unknown),
        };
        Some(Base::Nonconductor(Coated {
            coat,
            sheet: None,
            contacts: 1,
            girth: None,
            height: None,
        }))
    }

    fn bath(&mut self) -> Bath {
        Bath {
            id: "b1".to_owned(),
            solution: "cu_acid_form".to_owned(),
            volume: None,
            passed: None,
            holds: Vec::new(),
            counter: Some(Counter {
                material: Some("Cu".to_owned()),
                facing: None,
                distance: self.number(&fields::DISTANCE, at::DISTANCE),
                arrangement: Some(self.pick(
                    at::ARRANGEMENT,
                    &bath::ARRANGEMENTS,
                    Arrangement::OneSide,
                )),
            }),
        }
    }

    fn steps(&mut self) -> Vec<Step> {
        let mut steps = Vec::new();
        if self.draft.text(at::COVER) == "on" {
            let density = self.number(&fields::DENSITY, at::COVER_DENSITY);
            let time = self.number(&entries::COVER_MINUTES, at::COVER_TIME);
            steps.push(self.step("s1", density.map(Drive::Density), time.map(Until::Time)));
        }
        let drive = match self.draft.text(at::DRIVE) {
            "density" => self
                .number(&fields::DENSITY, at::DENSITY)
                .map(Drive::Density),
            "current" => self
                .number(&fields::CURRENT, at::CURRENT)
                .map(Drive::Current),
            _ => Some(Drive::Advised),
        };
        let until = self.until();
        steps.push(self.step("s2", drive, until));
        steps
    }

    fn until(&mut self) -> Option<Until> {
        match self.draft.text(at::UNTIL) {
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

    fn step(&self, id: &str, drive: Option<Drive>, until: Option<Until>) -> Step {
        Step {
            id: id.to_owned(),
            places: vec![InBath {
                bath: "b1".to_owned(),
                pieces: vec!["p1".to_owned()],
            }],
            kind: planner::Process::Electroform,
            stirring: self.pick(at::STIRRING, &step::STIRRINGS, Default::default()),
            temperature: None,
            ceiling: None,
            drive,
            until,
        }
    }

    fn supply(&mut self) -> Supply {
        let mut bench = Bench {
            lowest: self.number(&fields::LOWEST, at::LOWEST),
            highest: self.number(&fields::HIGHEST, at::HIGHEST),
            display_step: self.number(&fields::DISPLAY_STEP, at::DISPLAY_STEP),
            offset: None,
            highest_volts: self.number(&fields::HIGHEST_VOLTS, at::VOLTS),
        };
        self.problems.extend(planner::job::supply::upside_down(
            &mut bench,
            &FieldPath::new("supply/constant_current"),
        ));
        Supply::ConstantCurrent(bench)
    }

    fn assume(&mut self) -> Vec<Assume> {
        self.number(&fields::EFFICIENCY, at::EFFICIENCY)
            .map(|e| Assume {
                at: FieldPath::new(at::EFFICIENCY),
                value: e.into(),
            })
            .into_iter()
            .collect()
    }

    fn time_of_day(&mut self, address: &str) -> Option<String> {
        let declared = entries::declared(address)?;
        self.stand_in(address, |text, path| {
            declared.echo(text, path).map(|e| e.text)
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
