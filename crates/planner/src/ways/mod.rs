//! Ways out: for every Limit the changes that lift it, each planned again and with its own numbers. Likely values only.

mod bar;
mod bench;
mod etch;
mod search;
mod settings;
mod thief;
mod vessel;

use crate::answer::{Limit, LimitKind};
use crate::job::Job;
use crate::path::FieldPath;
use chemistry::Catalogue;
use quantity::kinds::unsigned_zero;
use quantity::{AnyQuantity, Current, Length, Mass, Money, Thickness, Time};
pub(crate) use search::Tried;
use serde::Serialize;
use serde::ser::{SerializeMap, Serializer};
pub use thief::{GAUGE, Thief};

/// What is changed, in the order in which ways out are offered.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Way {
    /// The piece is turned, or hung between two.
    Turn,
    /// The solution is stirred.
    Stir,
    /// Another current or density.
    Setting,
    /// Another contact.
    Contact,
    /// Thinner, shallower or at another time.
    Time,
    /// Nearer to the counter electrode, or farther.
    Distance,
    /// A larger counter electrode.
    Counter,
    /// More of the bath.
    Volume,
    /// Another film.
    Resist,
    /// Metal hung beside the work that takes what is too much.
    Thief,
    /// Fewer at once.
    Batches,
    /// Several vessels one behind the other.
    Series,
    /// Another supply, a meter, a stronger heater.
    Supply,
}

impl Way {
    /// Every way, for tables that must be complete.
    pub const ALL: &'static [Way] = &[
        Self::Turn,
        Self::Stir,
        Self::Setting,
        Self::Contact,
        Self::Time,
        Self::Distance,
        Self::Counter,
        Self::Volume,
        Self::Resist,
        Self::Thief,
        Self::Batches,
        Self::Series,
        Self::Supply,
    ];
}

/// The new value of an input.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum To {
    /// A quantity.
    Quantity(AnyQuantity),
    /// One of a few words.
    Word(&'static str),
}

/// One input and what it becomes. In JSON `{"at": .., "to": ..}` or `{"at": .., "to_m": ..}`.
#[derive(Clone, Debug, PartialEq)]
pub struct Change {
    /// The input.
    pub at: FieldPath,
    /// What it becomes.
    pub to: To,
}

impl Serialize for Change {
    fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        let mut map = s.serialize_map(Some(2))?;
        map.serialize_entry("at", &self.at)?;
        match self.to {
            To::Word(word) => map.serialize_entry("to", word)?,
            To::Quantity(q) => {
                map.serialize_entry(&["to_", q.key_unit].concat(), &unsigned_zero(q.si))?;
            }
        }
        map.end()
    }
}

/// A change that lifts a Limit and brings no new one.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct WayOut {
    /// The limit it lifts.
    pub lifts: LimitKind,
    /// Where that stands.
    pub at: FieldPath,
    /// What is changed.
    pub way: Way,
    /// The input and its new value.
    pub change: Change,
    /// What would then be set first.
    #[serde(rename = "set_A", skip_serializing_if = "Option::is_none")]
    pub set: Option<Current>,
    /// How long it would then take, all batches together.
    #[serde(rename = "time_s", skip_serializing_if = "Option::is_none")]
    pub time: Option<Time>,
    /// Mean thickness on the first piece; in an etch its depth.
    #[serde(rename = "thickness_m", skip_serializing_if = "Option::is_none")]
    pub thickness: Option<Thickness>,
    /// What the metal would then cost, by the person's own prices.
    #[serde(rename = "cost_money", skip_serializing_if = "Option::is_none")]
    pub cost: Option<Money>,
    /// The wire to hang beside the work, where that is the way out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub thief: Option<Thief>,
    /// Metal that the thief takes.
    #[serde(rename = "wasted_kg", skip_serializing_if = "Option::is_none")]
    pub wasted: Option<Mass>,
    /// The whole job with the change.
    #[serde(skip)]
    pub job: Job,
}

/// The ways out of every limit of a job, limit by limit in the Answer's order, within one the nearest at hand first: turn or
/// stir, setting, contact, time, distance, counter electrode and bath, batches or vessels in series, another supply. Only
/// those are given that lift the limit when planned again and bring no limit that was not there.
pub fn ways_out(catalogue: &Catalogue, job: &Job) -> Vec<WayOut> {
    let now = Tried::of(catalogue, job);
    let mut all = Vec::new();
    for limit in &now.limits {
        let mut search = Search {
            catalogue,
            job,
            now: &now,
            limit,
            found: Vec::new(),
        };
        search.candidates();
        search.found.sort_by_key(|w| w.way);
        all.append(&mut search.found);
    }
    all
}

/// The way out by a thief of another gauge than the usual one, for a job whose supply gives too much. None where that is
/// not so, and where no wire of that gauge helps.
pub fn thief_of(catalogue: &Catalogue, job: &Job, wire: Length) -> Option<WayOut> {
    let now = Tried::of(catalogue, job);
    let too_much = |l: &&Limit| l.kind == LimitKind::SupplyTooLarge;
    let limit = now.limits.iter().find(too_much)?;
    let mut search = Search {
        catalogue,
        job,
        now: &now,
        limit,
        found: Vec::new(),
    };
    search.thief(wire);
    search.found.pop()
}

struct Search<'a> {
    catalogue: &'a Catalogue,
    job: &'a Job,
    now: &'a Tried,
    limit: &'a Limit,
    found: Vec<WayOut>,
}

impl Search<'_> {
    fn candidates(&mut self) {
        use LimitKind as L;
        match self.limit.kind {
            L::AboveWindow | L::EtchTooFast => {
                self.stir();
                self.lower_density("highest");
            }
            L::EdgesBurn => {
                self.turn();
                self.stir();
                self.advised();
            }
            L::BelowWindow | L::EtchTooSlow => {
                self.raise_density("lowest");
                self.batches();
                self.series();
                self.larger_supply(None);
            }
            L::SupplyTooSmall => {
                self.advised();
                self.batches();
                self.series();
                let wanted = self.number("wanted");
                self.larger_supply(wanted);
            }
            L::SupplyTooLarge => {
                let lowest: Option<Current> = self.number("lowest");
                let area = self.area();
                if let Some((lowest, area)) = lowest.zip(area) {
                    self.density(lowest / area * (1.0 + 1e-6));
                }
                self.thief(GAUGE);
                self.bench(|b, s| b.lowest = s.number("wanted"));
            }
            L::DisplayTooCoarse => {
                self.bench(|b, _| b.display_step = Some(Current::milliampere(1.0)));
            }
            L::VoltsTooFew => {
                self.ceiling();
                self.distance();
                self.less_volts();
                self.bench(|b, s| b.highest_volts = s.number("expected"));
            }
            L::Night => {
                self.start_earlier();
                self.faster();
            }
            L::BoreCloses | L::TooDeepForStock | L::TooDeepForResist | L::LineVanishes => {
                self.shallower();
                self.both_sides();
                self.other_film();
            }
            L::CounterTooSmall | L::CounterTooDense => self.larger_counter(),
            L::BathOverloaded | L::BathRunsLow => self.more_bath(),
            L::PoorContact => self.better_contact(),
            L::BarEnds => self.rule_of_the_bar(),
            L::TouchesWall => self.wider_vessel(),
            L::HeaterTooSmall => self.stronger_heater(),
            L::TooLate => {
                self.start_earlier();
                self.faster();
                self.shallower();
            }
            L::CoveringStalls => self.raise_density("stalls_below"),
            L::VesselsUneven
            | L::BurnsIfLeft
            | L::NotForThisPlace
            | L::NeedsStrike
            | L::WrongBase
            | L::SendOut
            | L::WrongLead => {}
        }
    }
}

fn counted(n: u32) -> AnyQuantity {
    AnyQuantity {
        key_unit: "count",
        si: f64::from(n),
    }
}
