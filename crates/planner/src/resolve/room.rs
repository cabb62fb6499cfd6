//! The room: as given, else as usual.

use super::*;
use crate::job::Room;
use crate::warmth::{HUMIDITY, PlanRoom, TEMPERATURE};

impl Resolver<'_> {
    /// The room, where some bath's warmth is worked out.
    pub(super) fn room(&mut self, baths: &[PlanBath]) -> Option<PlanRoom> {
        baths.iter().find(|b| b.volume.is_some())?;
        let usual = Room::default();
        let room = self.job.room.as_ref().unwrap_or(&usual);
        let (temperature, humidity) = (room.temperature, room.humidity);
        let mut assumed: Vec<FieldPath> = Vec::new();
        let mut at = |name: &str, given: bool| {
            let at = FieldPath::new("room").child(name);
            if !given {
                assumed.push(at.clone());
            }
            at
        };
        let warm = at("temperature", temperature.is_some());
        let damp = at("humidity", humidity.is_some());
        at("draught", room.draught.is_some());
        let draught = room.draught.unwrap_or_default();
        Some(PlanRoom {
            temperature: self.beside(warm, temperature, &TEMPERATURE, ANY),
            humidity: self.beside(damp, humidity, &HUMIDITY, (0.0, 1.0)),
            draught,
            assumed,
        })
    }

    /// An input that no sample draws: likely, lowest, highest.
    fn beside<Q: Quantity>(
        &mut self,
        at: FieldPath,
        given: Option<Q>,
        usual: &Cited<Band<Q>>,
        bounds: (f64, f64),
    ) -> [Q; 3] {
        let (likely, spread, origin) = match given {
            Some(own) => (own, Spread::None, Origin::Given),
            None => (
                usual.value.typ,
                Spread::of_band(&usual.value),
                Origin::Catalogue(usual.source),
            ),
        };
        let input = Input {
            spread: self.spread(&at, spread),
            at,
            likely: likely.into(),
            origin,
            bounds,
        };
        let (low, high) = input.band().unwrap_or((likely.si(), likely.si()));
        self.inputs.add_beside(input);
        [likely, Q::from_si(low), Q::from_si(high)]
    }
}
