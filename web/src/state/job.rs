//! From the draft to a Job. Every field goes through its one declaration; what cannot be read is a Problem, and the
//! last good entry stands in for it.

use super::at;
use super::draft::Draft;
use super::entries;
use super::kinds;
use super::pieces;
use super::units::Units;
use planner::fields::{self, Bare, CountField, Field};
use planner::job::{
    Area, Artwork, Assume, Base, Bath, Bench, Coat, Coated, Counter, Drive, Extent, Fit, Hanger,
    Holds, InBath, Lead, Method, Model, NIGHT_FROM, NIGHT_TO, Part, Piece, Place, Price, Resist,
    Sides, SpreadAt, Start, Step, Stock, Supply, Until, bath, own, piece, step,
};
use planner::solution::Solution;
use planner::{Arrangement, Catalogue, FieldPath, Job, Opening, Problem, Process};
use quantity::{AnyQuantity, Length, Quantity, Unit};

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
        units: Units::of(draft),
        piece: String::new(),
        problems: Vec::new(),
        stands_in: false,
    };
    let job = Job {
        pieces: pieces::ids(draft)
            .into_iter()
            .map(|id| r.piece(id))
            .collect(),
        baths: vec![r.bath()],
        steps: r.steps(),
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
    units: Units,
    /// The piece that is being read.
    piece: String,
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
        let address = &at::of(address, &self.piece);
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
        let text = self.draft.text(&at::of(address, &self.piece));
        words
            .iter()
            .find(|(w, _)| *w == text)
            .map_or(otherwise, |(_, v)| *v)
    }

    fn scoped(&self, address: &str) -> &str {
        self.draft.scoped(&at::of(address, &self.piece))
    }

    fn piece(&mut self, id: &str) -> Piece {
        self.piece = id.to_owned();
        let extent = self.extent();
        let wire_d = self.number(&fields::HANGER_WIRE, at::HANGER_WIRE);
        let wet = self.number(&fields::HANGER_WET, at::HANGER_WET);
        let etches = self.process() == Process::Etch;
        let fit = Fit {
            bore: self.number(&fields::FIT_BORE, at::BORE),
            wanted: self.number(&fields::WANTED_BORE, at::WANTED_BORE),
        };
        let wires = self.count(&fields::WIRES, at::HANGER_WIRES);
        Piece {
            id: id.to_owned(),
            label: self.draft.text(&at::of(at::LABEL, id)).trim().to_owned(),
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
                wires: wires.unwrap_or(1),
            }),
            contact: None,
            opening: Some(self.pick(
                at::OPENING_WAY,
                &[("to", Opening::To), ("away", Opening::Away)],
                Opening::To,
            )),
            min_over_mean: self.number(&fields::MIN_OVER_MEAN, at::RATIO),
            fit: (!etches && (fit.bore.is_some() || fit.wanted.is_some())).then_some(fit),
            artwork: if etches { Some(self.artwork()) } else { None },
            joins: None,
            leaves: None,
        }
    }

    fn extent(&mut self) -> Option<Extent> {
        let Some(kind) = kinds::of(self.scoped(at::SHAPE)) else {
            let one_side = self.number(&fields::ONE_SIDE, at::AREA)?;
            let method = self.pick(at::METHOD, &piece::METHODS, Method::Eye);
            return Some(Extent::Area(Area {
                one_side,
                sides: self.pick(at::AREA_SIDES, &[("one", 1), ("both", 2)], 1),
                texture: self.number(&fields::TEXTURE, at::AREA_TEXTURE),
                method: Some(method),
            }));
        };
        let texture = self.number(&fields::TEXTURE_OUTSIDE, at::TEXTURE);
        let first = kind.parts.first()?;
        let sizes: Vec<Option<Length>> = kinds::addresses(&self.piece, &kind)
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
                texture_outside: texture.filter(|_| n == 0).or(part.texture),
                times: part.times,
                faces: Default::default(),
            })
            .collect();
        Some(Extent::Parts(parts))
    }

    fn base(&mut self) -> Option<Base> {
        let coat = match self.scoped(at::BASE) {
            "graphite" => Coat::Graphite,
            "copper" => Coat::Copper,
            "silver" => Coat::Silver,
            "unknown" => return Some(Base::Unknown),
            id => {
                let id = id.to_owned();
                let thickness = match self.process() {
                    Process::Etch => self.number(&fields::STOCK, at::STOCK),
                    _ => None,
                };
                return Some(Base::Metal(Stock { id, thickness }));
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
            length: self.number(&fields::ART_LENGTH, at::ART_LENGTH),
            etch_factor: self.number(&fields::ETCH_FACTOR, at::ETCH_FACTOR),
            sides: Some(self.pick(
                at::SIDES,
                &[("one", Sides::One), ("both", Sides::Both)],
                Sides::One,
            )),
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
            passed: self.number(&fields::PASSED, at::PASSED),
            holds: self.holds(),
            counter: Some(Counter {
                over_bar: None,
                material: self.counter(),
                facing: self.number(&fields::FACING, at::FACING),
                form: None,
                distance: self.number(&fields::DISTANCE, at::DISTANCE),
                arrangement: Some(self.pick(
                    at::ARRANGEMENT,
                    &bath::ARRANGEMENTS,
                    Arrangement::OneSide,
                )),
            }),
            surface: None,
            heater: None,
        }
    }

    fn solution(&self) -> Option<&'static Solution> {
        Catalogue::standard().solution(self.draft.scoped(at::SOLUTION))
    }

    /// The counter electrode picked, where the solution takes it; else the one it usually has.
    fn counter(&self) -> Option<String> {
        let counters = self.solution()?.counters.value;
        let picked = self.draft.scoped(at::COUNTER);
        let found = counters.iter().find(|id| **id == picked);
        found.or(counters.first()).map(|id| (*id).to_owned())
    }

    /// What the person knows of the metal in the bath.
    fn holds(&mut self) -> Vec<Holds> {
        let Some(metal) = self.solution().map(|s| s.metal) else {
            return Vec::new();
        };
        let now = self.number(&fields::HOLDS_NOW, &at::holds(metal, "now"));
        let floor = self.number(&fields::HOLDS_FLOOR, &at::holds(metal, "floor"));
        let known = now.is_some() || floor.is_some();
        known
            .then(|| Holds {
                metal: metal.to_owned(),
                now,
                floor,
            })
            .into_iter()
            .collect()
    }

    fn prices(&mut self) -> Vec<Price> {
        let metal = self.solution().map_or("", |s| s.metal);
        self.number(&fields::PRICE, &at::price(metal))
            .map(|price| Price {
                metal: metal.to_owned(),
                price,
            })
            .into_iter()
            .collect()
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
                bath: "b1".to_owned(),
                pieces: self.ids(),
            }],
            kind: self.process(),
            purpose: Default::default(),
            stirring: self.pick(at::STIRRING, &step::STIRRINGS, Default::default()),
            temperature: self.number(&fields::TEMPERATURE, at::TEMPERATURE),
            ceiling: self.number(&fields::CEILING, at::CEILING),
            drive,
            until,
        }
    }

    fn supply(&mut self) -> Supply {
        let mut bench = Bench {
            lowest: self.number(&fields::LOWEST, at::LOWEST),
            highest: self.number(&fields::HIGHEST, at::HIGHEST),
            display_step: self.number(&fields::DISPLAY_STEP, at::DISPLAY_STEP),
            offset: self.number(&fields::OFFSET, at::OFFSET),
            highest_volts: self.number(&fields::HIGHEST_VOLTS, at::VOLTS),
        };
        self.problems.extend(planner::job::supply::upside_down(
            &mut bench,
            &FieldPath::new("supply/constant_current"),
        ));
        Supply::ConstantCurrent(bench)
    }

    fn assume(&mut self) -> Vec<Assume> {
        let mut all = Vec::new();
        let mut own = |at: &str, value: Option<AnyQuantity>| {
            all.extend(value.map(|value| Assume {
                at: FieldPath::new(at),
                value,
            }));
        };
        own(
            at::EFFICIENCY,
            self.number(&fields::EFFICIENCY, at::EFFICIENCY)
                .map(Into::into),
        );
        own(
            at::CONDUCTIVITY,
            self.number(&fields::CONDUCTIVITY, at::CONDUCTIVITY)
                .map(Into::into),
        );
        own(
            at::SURFACE_VOLTS,
            self.number(&fields::SURFACE_VOLTS, at::SURFACE_VOLTS)
                .map(Into::into),
        );
        for (at, field) in [
            (at::BATCH, &fields::BATCH),
            (at::EVENNESS_FACTOR, &fields::EVENNESS_FACTOR),
        ] {
            own(at, self.number(field, at).map(Into::into));
        }
        all
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
