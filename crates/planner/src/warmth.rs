//! How a beaker warms by its own current, what water it loses, and the heater that holds it.
//!
//! Losses of dry walls and usual sizes are a table by volume (derived: free convection and radiation, 3 mm wall, bench side
//! 2.5 W/m2K); water by the pool formula of the ASHRAE handbook (from memory; one field study in still air found 1.4 times
//! less).

use crate::answer::{Limit, LimitKind};
use crate::job::Draught;
use crate::path::FieldPath;
use crate::plan::{Plan, PlanBath};
use crate::ranges::{OfStep, Ranges};
use crate::run::Run;
use crate::value::{Maybe, Named};
use chemistry::{Cited, Source};
use quantity::{
    Band, BathSurface, Fraction, Mass, Power, Quantity, Range, Temperature, TemperatureDifference,
    Time, Volume,
};
use serde::Serialize;

/// What a bath does by itself over the job in its room.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Warmth {
    /// Above the room, if the hottest step went on for ever.
    pub steady: Range<TemperatureDifference>,
    /// Above the room, at the end of the last step.
    pub at_end: Range<TemperatureDifference>,
    /// After this time it is two thirds of the way there.
    #[serde(rename = "tau_s")]
    pub tau: Time,
    /// Open surface it was counted with.
    #[serde(rename = "surface_m2")]
    pub surface: BathSurface,
    /// Water that goes in all the time, the level 2 to 4 cm under the rim.
    pub water: Range<Mass>,
    /// The room it was counted with.
    pub room: RoomUsed,
    /// To hold the hottest temperature asked for, beside the current's own warmth.
    #[serde(rename = "hold_W", skip_serializing_if = "Option::is_none")]
    pub hold: Option<Power>,
    /// Until the heater at hand has warmed it; none where that is too small.
    #[serde(rename = "warm_s", skip_serializing_if = "Option::is_none")]
    pub warm: Option<Time>,
}

/// The room a bath was counted in.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct RoomUsed {
    /// How warm.
    #[serde(rename = "temperature_K")]
    pub temperature: Temperature,
    /// How damp.
    #[serde(rename = "humidity_frac")]
    pub humidity: Fraction,
    /// How its air moves.
    pub draught: Draught,
    /// What of it nobody gave: taken as usual.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub assumed: Vec<FieldPath>,
}

/// A room ready to be counted with: likely, lowest, highest.
#[derive(Clone, Debug, PartialEq)]
pub struct PlanRoom {
    /// How warm.
    pub temperature: [Temperature; 3],
    /// How damp.
    pub humidity: [Fraction; 3],
    /// How its air moves.
    pub draught: Draught,
    /// What of it nobody gave.
    pub assumed: Vec<FieldPath>,
}

impl PlanRoom {
    /// Its air with the temperature and the humidity at one of their three places.
    fn air(&self, warm: usize, damp: usize) -> Air {
        Air {
            room: self.temperature[warm],
            humidity: self.humidity[damp],
            draught: self.draught,
        }
    }
}

/// A room that is lived in: 18 to 26 C. Common practice, no source.
pub(crate) const TEMPERATURE: Cited<Band<Temperature>> = Cited::new(
    Band {
        min: Temperature::celsius(18.0),
        typ: ROOM.room,
        max: Temperature::celsius(26.0),
    },
    Source::CommonPractice,
);
/// Its air: three to seven tenths of what it can hold. Common practice, no source.
pub(crate) const HUMIDITY: Cited<Band<Fraction>> = Cited::new(
    Band {
        min: Fraction::of_si(0.3),
        typ: ROOM.humidity,
        max: Fraction::of_si(0.7),
    },
    Source::CommonPractice,
);

/// The air over a bath.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Air {
    /// Temperature of the room.
    pub room: Temperature,
    /// Relative humidity.
    pub humidity: Fraction,
    /// How it moves.
    pub draught: Draught,
}

/// The usual room: 22 C, half its humidity, no draught.
pub const ROOM: Air = Air {
    room: Temperature::celsius(22.0),
    humidity: Fraction::of_si(0.5),
    draught: Draught::Still,
};

/// Water with its salts: 1.16 kg/L, 3.6 kJ/(kg K), from memory; J/(m3 K).
const CAPACITY: f64 = 4.18e6;
/// By volume in m3: losses of dry walls in W/K from a bath little warmer than the room to one much warmer, and the open
/// surface in m2.
const VESSELS: [[f64; 4]; 4] = [
    [0.25e-3, 0.18, 0.23, 0.003_632],
    [1e-3, 0.44, 0.55, 0.008_659],
    [5e-3, 1.2, 1.5, 0.028_353],
    [20e-3, 2.9, 3.6, 0.070_686],
];
/// What evaporation adds to the losses of a bath that warms itself a little, W/m2K (derived from the same table).
const DAMP: f64 = 26.5;
/// Of the water from a level at the rim, what still goes where it lies 2 to 4 cm under: 0.3 to 0.7, common practice.
const FREEBOARD: [f64; 3] = [0.3, 0.5, 0.7];

fn celsius(t: Temperature) -> f64 {
    t.si() - 273.15
}

/// Pressure of saturated vapour in kPa over water at so many C (Magnus form).
fn saturated(t: f64) -> f64 {
    0.6109 * libm::exp(17.625 * t / (t + 243.04))
}

/// Heat of evaporation, kJ/kg.
fn latent_heat(t: f64) -> f64 {
    2501.0 - 2.36 * t
}

/// Water lost from an open surface, kg/(m2 s); none where the air is damper than the bath.
fn rate(t: f64, air: &Air) -> f64 {
    let draught = match air.draught {
        Draught::Still => 0.0,
        Draught::Light => 0.3,
        Draught::Strong => 0.5,
    };
    let drives = 0.97 * saturated(t) - air.humidity.si() * saturated(celsius(air.room));
    let rate = drives * (0.089 + 0.0782 * draught) / latent_heat(t);
    if rate > 0.0 { rate } else { 0.0 }
}

/// Water that evaporates from a surface in a time.
pub fn evaporated(surface: BathSurface, time: Time, bath: Temperature, air: &Air) -> Mass {
    Mass::from_si(rate(celsius(bath), air) * surface.si() * time.si())
}

/// The heat that goes with it.
pub fn latent(surface: BathSurface, bath: Temperature, air: &Air) -> Power {
    let t = celsius(bath);
    Power::from_si(rate(t, air) * latent_heat(t) * 1000.0 * surface.si())
}

/// A beaker with its losses.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Beaker {
    /// Its open surface.
    pub surface: BathSurface,
    dry: [f64; 2],
    capacity: f64,
}

impl Beaker {
    /// A usual one for a volume, along straight lines on log scales; with its own open surface where that is known.
    pub fn of(volume: Volume, surface: Option<BathSurface>) -> Self {
        let v = volume.si();
        let over = VESSELS[1..3].iter().filter(|row| v > row[0]).count();
        let (a, b) = (VESSELS[over], VESSELS[over + 1]);
        let u = libm::log(v / a[0]) / libm::log(b[0] / a[0]);
        let at = |n: usize| a[n] * libm::pow(b[n] / a[n], u);
        Self {
            surface: surface.unwrap_or(BathSurface::from_si(at(3))),
            dry: [at(1), at(2)],
            capacity: CAPACITY * v,
        }
    }

    /// W/K of a bath that warms itself; `along` the dry walls' band, 0.5 likely.
    pub(crate) fn loss(&self, along: f64) -> f64 {
        self.dry[0] + along * (self.dry[1] - self.dry[0]) + DAMP * self.surface.si()
    }

    /// W/K of a heated one, evaporation with it.
    fn held_loss(&self, bath: Temperature, air: &Air) -> f64 {
        let over = bath.si() - air.room.si();
        let damp = latent(self.surface, bath, air).si() / over;
        self.dry[0] + 0.5 * (self.dry[1] - self.dry[0]) + damp
    }

    /// How far power in it warms it in the end.
    pub fn steady(&self, power: Power) -> TemperatureDifference {
        TemperatureDifference::from_si(power.si() / self.loss(0.5))
    }

    /// After this time it is two thirds of the way there.
    pub fn tau(&self) -> Time {
        Time::seconds(self.capacity / self.loss(0.5))
    }

    /// Where it is after a time with power in it, from `now` on.
    fn later(&self, now: f64, power: f64, time: f64, along: f64) -> f64 {
        let loss = self.loss(along);
        let end = power / loss;
        end + (now - end) * libm::exp(-time * loss / self.capacity)
    }

    /// How far power has warmed it after a time.
    pub fn rise(&self, power: Power, time: Time) -> TemperatureDifference {
        TemperatureDifference::from_si(self.later(0.0, power.si(), time.si(), 0.5))
    }

    /// Power that holds it at a temperature; none at the room's and below. Much warmer than the room, dry walls lose nearly
    /// the most of their band.
    pub fn hold(&self, bath: Temperature, air: &Air) -> Option<Power> {
        let over = bath.si() - air.room.si();
        let dry = self.dry[0] + 0.75 * (self.dry[1] - self.dry[0]);
        (over > 0.0).then(|| latent(self.surface, bath, air) + Power::from_si(dry * over))
    }

    /// Time in which a heater warms it from the room to a temperature; none where it never does.
    pub fn warm(&self, heater: Power, bath: Temperature, air: &Air) -> Option<Time> {
        let over = bath.si() - air.room.si();
        if over <= 0.0 {
            return Some(Time::seconds(0.0));
        }
        let loss = self.held_loss(bath, air);
        let left = 1.0 - loss * over / heater.si();
        (left > 0.0).then(|| Time::seconds(-self.capacity / loss * libm::log(left)))
    }
}

/// The hottest temperature asked for in a bath.
fn asked(plan: &Plan, n: usize) -> Option<Temperature> {
    let uses = plan
        .steps
        .iter()
        .filter(|s| s.vessels.iter().any(|v| v.bath == n));
    uses.filter_map(|s| s.temperature)
        .reduce(|a, b| if b > a { b } else { a })
}

fn beaker(plan: &Plan, bath: &PlanBath) -> Option<Beaker> {
    let volume: Volume = plan.inputs.likely().get(bath.volume?);
    Some(Beaker::of(volume, bath.surface))
}

/// What bath `n` does by itself over the job; absent without its volume, and where the volts of a step are not known.
pub(crate) fn warmth(plan: &Plan, likely: &Run, ranges: &Ranges, n: usize) -> Maybe<Warmth> {
    let bath = &plan.baths[n];
    let at = FieldPath::new("baths").child(&bath.id);
    let (Some(beaker), Some(room)) = (beaker(plan, bath), &plan.room) else {
        return Maybe::needs(at.child("volume"));
    };
    // Likely; then colder, warmer, drier, damper.
    let airs = [(0, 0), (1, 0), (2, 0), (0, 1), (0, 2)].map(|(t, h)| room.air(t, h));
    // Likely, coolest, warmest: now, and the most it could come to.
    let mut now = [0.0; 3];
    let mut most = [0.0; 3];
    let mut water = [0.0; 5];
    let along = [0.5, 1.0, 0.0];
    let mut own = Power::from_si(0.0);
    for (s, step) in plan.steps.iter().enumerate() {
        let here = step.vessels.iter().any(|v| v.bath == n);
        let power: Option<Range<Power>> = ranges.step(s, OfStep::Power);
        let Some((time, power)) = likely.steps[s].time.zip(power) else {
            return Maybe::needs(at.child("counter/distance"));
        };
        // Vessels in series are alike.
        let share = if here {
            1.0 / step.vessels.len() as f64
        } else {
            0.0
        };
        let watts = [power.likely, power.low, power.high].map(|p| p.si() * share);
        let before = now[0];
        for k in 0..3 {
            now[k] = beaker.later(now[k], watts[k], time.si(), along[k]);
            let end = watts[k] / beaker.loss(along[k]);
            most[k] = if end > most[k] { end } else { most[k] };
        }
        own = if watts[0] > own.si() {
            Power::from_si(watts[0])
        } else {
            own
        };
        for (sum, air) in water.iter_mut().zip(&airs) {
            let warm = air.room.si() + (before + now[0]) / 2.0;
            let asked = step.temperature.filter(|_| here);
            let bath = asked.unwrap_or(Temperature::from_si(warm));
            *sum += evaporated(beaker.surface, time, bath, air).si();
        }
    }
    let rise = |x: [f64; 3]| Range {
        likely: TemperatureDifference::from_si(x[0]),
        low: TemperatureDifference::from_si(x[1]),
        high: TemperatureDifference::from_si(x[2]),
    };
    let air = &airs[0];
    let asked = asked(plan, n);
    let hold = asked.and_then(|t| beaker.hold(t, air)).map(|p| {
        let rest = p.si() - own.si();
        Power::from_si(if rest > 0.0 { rest } else { 0.0 })
    });
    Maybe::Known(Warmth {
        steady: rise(most),
        at_end: rise(now),
        tau: beaker.tau(),
        surface: beaker.surface,
        water: lost(water),
        room: RoomUsed {
            temperature: air.room,
            humidity: air.humidity,
            draught: air.draught,
            assumed: room.assumed.clone(),
        },
        hold,
        warm: bath
            .heater
            .zip(asked)
            .and_then(|(p, t)| beaker.warm(p, t, air)),
    })
}

/// Water that is lost: of what would go from a level at the rim in the likely room, and in a colder, warmer, drier and damper
/// one. Freeboard, temperature and humidity know nothing of one another: their parts are added as squares.
fn lost(water: [f64; 5]) -> Range<Mass> {
    let [low, typ, high] = FREEBOARD;
    let likely = water[0] * typ;
    let (mut below, mut above) = (0.0, 0.0);
    let [_, colder, warmer, drier, damper] = water.map(|w| w * typ);
    for (a, b) in [
        (water[0] * low, water[0] * high),
        (colder, warmer),
        (drier, damper),
    ] {
        let (least, most) = if a < b { (a, b) } else { (b, a) };
        below += (likely - least) * (likely - least);
        above += (most - likely) * (most - likely);
    }
    let least = likely - below.sqrt();
    Range {
        likely: Mass::from_si(likely),
        low: Mass::from_si(if least > 0.0 { least } else { 0.0 }),
        high: Mass::from_si(likely + above.sqrt()),
    }
}

/// A heater that never brings its bath to the temperature asked for.
pub(crate) fn limits(plan: &Plan, all: &mut Vec<Limit>) {
    for (n, bath) in plan.baths.iter().enumerate() {
        let Some(((beaker, t), heater)) = beaker(plan, bath).zip(asked(plan, n)).zip(bath.heater)
        else {
            continue;
        };
        let Some(air) = plan.room.as_ref().map(|r| r.air(0, 0)) else {
            continue;
        };
        let Some(hold) = beaker.hold(t, &air).filter(|p| p.si() > heater.si()) else {
            continue;
        };
        all.push(Limit {
            kind: LimitKind::HeaterTooSmall,
            at: FieldPath::new("baths").child(&bath.id).child("heater"),
            numbers: vec![Named::new("heater", heater), Named::new("hold", hold)],
            pieces: Vec::new(),
            note: None,
        });
    }
}
