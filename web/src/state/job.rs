//! From the draft to a Job. Every field goes through its one declaration; what cannot be read is a Problem, and the
//! last good entry stands in for it.

use super::draft::Draft;
use super::entries::{self, at};
use super::kinds;
use planner::fields::{self, CountField, Field};
use planner::job::{
    Area, Artwork, Assume, Base, Bath, Bench, Coat, Coated, Counter, Drive, Extent, Fit, Hanger,
    InBath, Lead, Method, Model, NIGHT_FROM, NIGHT_TO, Part, Piece, Place, Resist, Sides, Start,
    Step, Stock, Supply, Until, bath, own, piece, step,
};
use planner::{Arrangement, Catalogue, FieldPath, Job, Opening, Problem, Process};
use quantity::{Length, Quantity};

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

/// The words for the film.
const RESISTS: [(&str, Resist); 5] = [
    ("toner", Resist::Toner),
    ("pen", Resist::Pen),
    ("varnish", Resist::Varnish),
    ("dry_film", Resist::DryFilm),
    ("vinyl", Resist::Vinyl),
];

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
        let etches = self.process() == Process::Etch;
        let wanted = self
            .number(&fields::WANTED_BORE, at::WANTED_BORE)
            .filter(|_| !etches);
        Piece {
            id: "p1".to_owned(),
            label: String::new(),
            count: self.count(&fields::COUNT, at::COUNT).unwrap_or(1),
            extent,
            base: self.base(),
            open: if etches {
                self.number(&fields::OPEN, at::OPEN)
            } else {
                None
            },
            hanger: wire_d.zip(wet).map(|(wire_d, wet)| Hanger {
                wire_d,
                wet,
                wires: 1,
            }),
            contact: None,
            opening: Some(self.pick(
                at::OPENING_WAY,
                &[("to", Opening::To), ("away", Opening::Away)],
                Opening::To,
            )),
            min_over_mean: self.number(&fields::MIN_OVER_MEAN, at::RATIO),
            fit: wanted.map(|wanted| Fit {
                bore: None,
                wanted: Some(wanted),
            }),
            artwork: if etches { Some(self.artwork()) } else { None },
            joins: None,
            leaves: None,
        }
    }

    fn extent(&mut self) -> Option<Extent> {
        let Some(kind) = kinds::of(self.draft.scoped(at::SHAPE)) else {
            let one_side = self.number(&fields::ONE_SIDE, at::AREA)?;
            let method = self.pick(at::METHOD, &piece::METHODS, Method::Eye);
            return Some(Extent::Area(Area {
                one_side,
                sides: 1,
                texture: None,
                method: Some(method),
            }));
        };
        let first = kind.parts.first()?;
        let sizes: Vec<Option<Length>> = kinds::addresses(&kind)
            .iter()
            .zip(first.shape.size_names())
            .map(|(address, name)| {
                fields::shape_size(name).and_then(|field| self.number(field, address))
            })
            .collect();
        let sizes: Vec<Length> = sizes.into_iter().collect::<Option<_>>()?;
        let mut usual = None;
        first.shape.map_sizes(|n, size| {
            usual.get_or_insert(sizes[n] / size);
            size
        });
        let parts = kind
            .parts
            .iter()
            .enumerate()
            .map(|(n, part)| Part {
                id: kinds::part_id(n).to_owned(),
                // The others keep their proportion to the first size asked for.
                shape: part.shape.map_sizes(|k, size| {
                    if n == 0 {
                        sizes[k]
                    } else {
                        size * usual.unwrap_or(1.0)
                    }
                }),
                texture_outside: part.texture,
                times: part.times,
                faces: Default::default(),
            })
            .collect();
        Some(Extent::Parts(parts))
    }

    fn base(&mut self) -> Option<Base> {
        let coat = match self.draft.scoped(at::BASE) {
            "graphite" => Coat::Graphite,
            "copper" => Coat::Copper,
            "silver" => Coat::Silver,
            "unknown" => return Some(Base::Unknown),
            id => {
                let thickness = match self.process() {
                    Process::Etch => self.number(&fields::STOCK, at::STOCK),
                    _ => None,
                };
                return Some(Base::Metal(Stock {
                    id: id.to_owned(),
                    thickness,
                }));
            }
        };
        Some(Base::Nonconductor(Coated {
            coat,
            sheet: None,
            contacts: 1,
            girth: None,
            height: None,
        }))
    }

    fn process(&self) -> Process {
        self.pick(at::PROCESS, &own::PROCESSES, Process::Electroform)
    }

    fn artwork(&mut self) -> Artwork {
        Artwork {
            opening: self.number(&fields::ART_OPENING, at::OPENING),
            land_wanted: self.number(&fields::ART_LAND, at::LAND),
            length: None,
            etch_factor: None,
            sides: Some(Sides::One),
            model: Some(self.pick(
                at::MODEL,
                &[("flat", Model::Flat), ("groove", Model::Groove)],
                Model::Flat,
            )),
            resist: Some(self.pick(at::RESIST, &RESISTS, Resist::Varnish)),
            lead: Some(self.pick(
                at::LEAD,
                &[("plus", Lead::Plus), ("minus", Lead::Minus)],
                Lead::Plus,
            )),
        }
    }

    fn bath(&mut self) -> Bath {
        Bath {
            id: "b1".to_owned(),
            solution: self.draft.scoped(at::SOLUTION).to_owned(),
            volume: self.number(&fields::VOLUME, at::VOLUME),
            passed: None,
            holds: Vec::new(),
            counter: Some(Counter {
                over_bar: None,
                material: self.usual_counter(),
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

    /// The counter electrode this solution usually has.
    fn usual_counter(&self) -> Option<String> {
        let solution = Catalogue::standard().solution(self.draft.scoped(at::SOLUTION))?;
        solution.counters.value.first().map(|id| (*id).to_owned())
    }

    fn steps(&mut self) -> Vec<Step> {
        let mut steps = Vec::new();
        // Covering is of a coat, before copper is grown on it.
        if self.process() == Process::Electroform && self.draft.text(at::COVER) == "on" {
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
        match self.draft.scoped(at::UNTIL) {
            "depth" => self
                .number(&fields::UNTIL_DEPTH, at::DEPTH)
                .map(Until::Depth),
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
            kind: self.process(),
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
