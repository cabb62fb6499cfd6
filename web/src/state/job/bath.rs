//! The baths.

use super::Reader;
use crate::state::{at, layers};
use planner::fields;
use planner::job::{Bath, Counter, Form, Holds, Price, bath};
use planner::solution::Solution;
use planner::{Arrangement, Catalogue};

impl Reader<'_> {
    /// The first bath, and one for each layer that has another.
    pub(super) fn baths(&mut self) -> Vec<Bath> {
        let mut all = Vec::new();
        for step in self.step_ids() {
            self.step = step;
            if self.scoped(at::SOLUTION) != layers::SAME {
                all.push(self.bath());
            }
        }
        self.step = super::FIRST.to_owned();
        all
    }

    /// The id of the bath of the step that is being read.
    pub(super) fn bath_id(&self) -> String {
        let own = self.scoped(at::SOLUTION) != layers::SAME;
        let number = self.step.trim_start_matches('s');
        match number {
            number if own && self.step != super::FIRST => ["b", number].concat(),
            _ => "b1".to_owned(),
        }
    }

    fn bath(&mut self) -> Bath {
        Bath {
            id: self.bath_id(),
            solution: self.scoped(at::SOLUTION).to_owned(),
            volume: self.number(&fields::VOLUME, at::VOLUME),
            passed: self.number(&fields::PASSED, at::PASSED),
            holds: self.holds(),
            counter: Some(Counter {
                over_bar: None,
                material: self.counter(),
                facing: self.number(&fields::FACING, at::FACING),
                form: self.form(),
                distance: self.number(&fields::DISTANCE, at::DISTANCE),
                arrangement: Some(self.pick(
                    at::ARRANGEMENT,
                    &bath::ARRANGEMENTS,
                    Arrangement::OneSide,
                )),
            }),
            surface: self.number(&fields::SURFACE, at::SURFACE),
            heater: self.number(&fields::HEATER, at::HEATER),
        }
    }

    /// The counter electrode by its sizes, where that was picked and all are known.
    fn form(&mut self) -> Option<Form> {
        let word = self.draft.text(&self.here(at::FORM)).to_owned();
        Some(match word.as_str() {
            "plate" => Form::Plate {
                width: self.number(&fields::PLATE_WIDTH, at::PLATE_WIDTH)?,
                height: self.number(&fields::PLATE_HEIGHT, at::PLATE_HEIGHT)?,
                plates: self.count(&fields::PLATES, at::PLATES).unwrap_or(1),
            },
            "coil" => Form::Coil {
                wire_d: self.number(&fields::COIL_WIRE, at::COIL_WIRE)?,
                length: self.number(&fields::COIL_LENGTH, at::COIL_LENGTH)?,
            },
            "scrap" => Form::Scrap {
                mass: self.number(&fields::SCRAP, at::SCRAP)?,
                thickness: self.number(&fields::SCRAP_STOCK, at::SCRAP_THICK)?,
            },
            "vessel" => Form::Vessel {
                diameter: self.number(&fields::VESSEL_D, at::VESSEL_D)?,
                height: self.number(&fields::PLATE_HEIGHT, at::VESSEL_HEIGHT)?,
            },
            _ => return None,
        })
    }

    pub(super) fn solution(&self) -> Option<&'static Solution> {
        Catalogue::standard().solution(self.scoped(at::SOLUTION))
    }

    /// The counter electrode picked, where the solution takes it; else the one it usually has.
    fn counter(&self) -> Option<String> {
        let counters = self.solution()?.counters.value;
        let picked = self.scoped(at::COUNTER);
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

    /// The price of each metal there is.
    pub(super) fn prices(&mut self) -> Vec<Price> {
        let mut all: Vec<Price> = Vec::new();
        for step in self.step_ids() {
            self.step = step;
            let metal = self.solution().map_or("", |s| s.metal);
            if all.iter().any(|p| p.metal == metal) {
                continue;
            }
            all.extend(
                self.number(&fields::PRICE, &at::price(metal))
                    .map(|price| Price {
                        metal: metal.to_owned(),
                        price,
                    }),
            );
        }
        self.step = super::FIRST.to_owned();
        all
    }
}
