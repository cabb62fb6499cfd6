//! The Job: what the person at the bench knows, complete in itself.
//!
//! Written by serde, read field by field ([`read`]): an unreadable field is a Problem and counts as absent. Every part
//! exists from the first format on; what cannot be computed yet is refused with a Problem when planned.

pub mod attend;
pub mod bath;
pub mod own;
pub mod piece;
pub mod room;
pub mod step;
pub mod supply;
pub mod tree;

use crate::fields;
use crate::path::FieldPath;
use crate::problem::{Accepted, Problem, ProblemKind};
use quantity::{AnyQuantity, Fraction, MoneyPerMass, Time};
use serde::Serialize;
use serde::ser::{SerializeMap, Serializer};
use serde_json::Value;
use tree::{Node, Problems, shown};

pub use attend::Attend;
pub use bath::{Bath, Counter, Form, Holds};
pub use own::{Own, OwnAlloy, OwnPart, OwnSolution};
pub use piece::{
    Area, Artwork, Base, Coat, Coated, Contact, Extent, Faces, Fit, Hanger, Lead, Method, Model,
    Moment, Part, Piece, Resist, Sides, Stock,
};
pub use room::{Draught, Room};
pub use step::{Drive, InBath, Purpose, Step, Until, Use, Wear};
pub use supply::{Bench, FixedSetting, Supply, VoltBench};

/// The format this program writes, and the newest it reads.
pub const FORMAT: u32 = 1;

/// A whole job.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Job {
    /// Format of the text.
    pub format: u32,
    /// What hangs in the bath.
    pub pieces: Vec<Piece>,
    /// The baths.
    pub baths: Vec<Bath>,
    /// What happens, in order.
    pub steps: Vec<Step>,
    /// The supply.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub supply: Option<Supply>,
    /// The person's own metals and solutions.
    #[serde(skip_serializing_if = "Own::is_empty")]
    pub own: Own,
    /// The person's own values in place of the catalogue's.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub assume: Vec<Assume>,
    /// The person's own spreads.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub spreads: Vec<SpreadAt>,
    /// Which finer effects are counted.
    pub effects: Effects,
    /// Where the work is done.
    pub place: Place,
    /// The room the baths stand in.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub room: Option<Room>,
    /// For rules that differ between countries.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub country: Option<String>,
    /// What metals cost.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub prices: Vec<Price>,
    /// A class around the tank.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub class: Option<Class>,
    /// When it begins.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub start: Option<Start>,
    /// How long somebody stays with it at a time, and when it must be done.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub attend: Option<Attend>,
}

impl Default for Job {
    fn default() -> Self {
        Self {
            format: FORMAT,
            pieces: Vec::new(),
            baths: Vec::new(),
            steps: Vec::new(),
            supply: None,
            own: Own::default(),
            assume: Vec::new(),
            spreads: Vec::new(),
            effects: Effects::default(),
            place: Place::default(),
            room: None,
            country: None,
            prices: Vec::new(),
            class: None,
            start: None,
            attend: None,
        }
    }
}

/// The person's own value in place of the catalogue's. In JSON `{"at": "baths/b1/efficiency", "value_frac": 0.98}`.
#[derive(Clone, Debug, PartialEq)]
pub struct Assume {
    /// Address of the value.
    pub at: FieldPath,
    /// The value.
    pub value: AnyQuantity,
}

impl Serialize for Assume {
    fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        let mut map = s.serialize_map(Some(2))?;
        map.serialize_entry("at", &self.at)?;
        map.serialize_entry(&format!("value_{}", self.value.key_unit), &self.value.si)?;
        map.end()
    }
}

/// The person's own spread of an input, two in three.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct SpreadAt {
    /// Address of the input.
    pub at: FieldPath,
    /// The spread as a share of the likely value.
    #[serde(rename = "spread_frac")]
    pub spread: Fraction,
}

/// A switch.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Switch {
    /// Not counted.
    #[default]
    Off,
    /// Counted.
    On,
}

/// Finer effects. A Job always says which it wants.
#[derive(Clone, Debug, PartialEq, Default, Serialize)]
pub struct Effects {
    /// The area grows with the layer.
    pub growth: Switch,
    /// Contacts and leads share the current unevenly.
    pub contacts: Switch,
}

/// Where the work is done.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Place {
    /// A home studio.
    #[default]
    Home,
    /// A class.
    Class,
    /// A ventilated shop.
    Shop,
}

/// What a metal costs.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Price {
    /// The metal.
    pub metal: String,
    /// In the person's own money.
    #[serde(rename = "price_money_per_kg")]
    pub price: MoneyPerMass,
}

/// A class.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Class {
    /// How many students.
    #[serde(rename = "students_count")]
    pub students: u32,
    /// Until the bell.
    #[serde(rename = "lesson_s", skip_serializing_if = "Option::is_none")]
    pub lesson: Option<Time>,
    /// Diameter of a bare copper wire that hangs on the same bar, as a check by calipers; 1 mm unless given.
    #[serde(rename = "witness_d_m", skip_serializing_if = "Option::is_none")]
    pub witness: Option<quantity::Length>,
}

/// When it begins, and which hours are night.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Start {
    /// Local date and time, `2026-05-01T10:00`.
    pub local: String,
    /// Nobody watches from this time of day.
    #[serde(rename = "night_from_s")]
    pub night_from: Time,
    /// Until this one.
    #[serde(rename = "night_to_s")]
    pub night_to: Time,
}

/// 22:00, common practice, no source.
pub const NIGHT_FROM: Time = Time::hours(22.0);
/// 06:00, common practice, no source.
pub const NIGHT_TO: Time = Time::hours(6.0);

/// Reads a Job from a tree at the address of the question. A newer format is one Problem and nothing is read.
pub fn read(value: &Value) -> (Option<Job>, Vec<Problem>) {
    let mut problems = Problems::new();
    let job = read_into(value, &mut problems);
    (job, problems)
}

fn read_into(value: &Value, problems: &mut Problems) -> Option<Job> {
    let mut node = Node::new(value, FieldPath::root(), problems)?;
    if !format_is_known(&mut node, problems) {
        return None;
    }
    let at = |key: &str| FieldPath::new(key);
    let job = Job {
        format: FORMAT,
        pieces: piece::read_all(node.list("pieces", problems), &at("pieces"), problems),
        baths: bath::read_all(node.list("baths", problems), &at("baths"), problems),
        steps: step::read_all(node.list("steps", problems), &at("steps"), problems),
        supply: supply::read(&mut node, problems),
        own: own::read(&mut node, problems),
        assume: assume(node.list("assume", problems), problems),
        spreads: spreads(node.list("spreads", problems), problems),
        effects: effects(&mut node, problems),
        place: node
            .word(
                "place",
                &[
                    ("home", Place::Home),
                    ("class", Place::Class),
                    ("shop", Place::Shop),
                ],
                problems,
            )
            .unwrap_or_default(),
        room: room::read(&mut node, problems),
        country: node.text("country", problems),
        prices: prices(node.list("prices", problems), problems),
        class: class(&mut node, problems),
        start: start(&mut node, problems),
        attend: attend::read(&mut node, problems),
    };
    node.finish(problems);
    Some(job)
}

/// Checks the format of a question; a newer one is a Problem and nothing more is read.
pub fn format_is_known(node: &mut Node<'_>, problems: &mut Problems) -> bool {
    let at = node.path.child("format");
    let problem = match node.get("format") {
        None => Problem::at(at, ProblemKind::Missing),
        Some(value) => match value.as_u64() {
            Some(n) if n == u64::from(FORMAT) => return true,
            Some(n) if n > u64::from(FORMAT) => {
                Problem::at(at, ProblemKind::NewerFormat).reading(n.to_string())
            }
            _ => Problem::at(at, ProblemKind::WrongType).reading(shown(value)),
        },
    };
    problems.push(problem.accepting(Accepted::Format(FORMAT)));
    false
}

fn addressed<'a>(
    item: &'a Value,
    list: &str,
    problems: &mut Problems,
) -> Option<(Node<'a>, FieldPath)> {
    let mut node = Node::new(item, FieldPath::new(list), problems)?;
    let at = node.text("at", problems);
    if !node.has("at") {
        problems.push(Problem::at(node.path.child("at"), ProblemKind::Missing));
    }
    let at = FieldPath::new(&at?);
    node.path = at.clone();
    Some((node, at))
}

fn assume(items: &[Value], problems: &mut Problems) -> Vec<Assume> {
    let mut all = Vec::new();
    for item in items {
        let Some((mut node, at)) = addressed(item, "assume", problems) else {
            continue;
        };
        // The last part of the address says what is assumed, and with it the unit of the key.
        let value: Option<AnyQuantity> = match at.as_str().rsplit('/').next() {
            Some("efficiency") => own_value(&mut node, fields::EFFICIENCY.bare(), problems),
            Some("conductivity") => own_value(&mut node, fields::CONDUCTIVITY.bare(), problems),
            Some("evenness_factor") => {
                own_value(&mut node, fields::EVENNESS_FACTOR.bare(), problems)
            }
            Some("surface_volts" | "cell_volts") => {
                own_value(&mut node, fields::SURFACE_VOLTS.bare(), problems)
            }
            Some("covering") => own_value(&mut node, fields::COVERING.bare(), problems),
            Some("batch") => own_value(&mut node, fields::BATCH.bare(), problems),
            _ => {
                problems.push(
                    Problem::at(FieldPath::new("assume"), ProblemKind::UnknownId)
                        .reading(at.as_str())
                        .one_of(ASSUMABLE),
                );
                continue;
            }
        };
        node.finish(problems);
        all.extend(value.map(|value| Assume { at, value }));
    }
    all
}

/// What the last part of an `assume` address may be.
pub const ASSUMABLE: [&str; 7] = [
    "efficiency",
    "conductivity",
    "evenness_factor",
    "surface_volts",
    "cell_volts",
    "batch",
    "covering",
];

/// An own value's address is the catalogue value's, not `…/value` inside it.
fn own_value(
    node: &mut Node<'_>,
    field: fields::Bare,
    problems: &mut Problems,
) -> Option<AnyQuantity> {
    let at = node.path.clone();
    match node.get(field.key) {
        None => {
            problems.push(Problem::at(at, ProblemKind::Missing).accepting(field.accepted()));
            None
        }
        Some(value) => field
            .read_json(value, &at)
            .map_err(|p| problems.push(p))
            .ok()
            .map(|si| field.named(si)),
    }
}

fn spreads(items: &[Value], problems: &mut Problems) -> Vec<SpreadAt> {
    let mut all = Vec::new();
    for item in items {
        let Some((mut node, at)) = addressed(item, "spreads", problems) else {
            continue;
        };
        let spread = node.needed(&fields::SPREAD, problems);
        node.finish(problems);
        all.extend(spread.map(|spread| SpreadAt { at, spread }));
    }
    all
}

fn effects(node: &mut Node<'_>, problems: &mut Problems) -> Effects {
    let words = [("off", Switch::Off), ("on", Switch::On)];
    node.group("effects", problems)
        .map_or_else(Effects::default, |mut n| {
            let effects = Effects {
                growth: n.word("growth", &words, problems).unwrap_or_default(),
                contacts: n.word("contacts", &words, problems).unwrap_or_default(),
            };
            n.finish(problems);
            effects
        })
}

fn prices(items: &[Value], problems: &mut Problems) -> Vec<Price> {
    let mut all = Vec::new();
    for item in items {
        let name = item.get("metal").and_then(Value::as_str).unwrap_or("");
        let Some(mut node) = Node::new(item, FieldPath::new("prices").child(name), problems) else {
            continue;
        };
        let metal = node.needed_text("metal", problems);
        let price = node.needed(&fields::PRICE, problems);
        node.finish(problems);
        all.extend(
            metal
                .zip(price)
                .map(|(metal, price)| Price { metal, price }),
        );
    }
    all
}

fn class(node: &mut Node<'_>, problems: &mut Problems) -> Option<Class> {
    let mut n = node.group("class", problems)?;
    let students = n.count(&fields::STUDENTS, 1, problems);
    let lesson = n.number(&fields::LESSON, problems);
    let witness = n.number(&fields::WITNESS, problems);
    n.finish(problems);
    students.map(|students| Class {
        students,
        lesson,
        witness,
    })
}

fn start(node: &mut Node<'_>, problems: &mut Problems) -> Option<Start> {
    let mut n = node.group("start", problems)?;
    let local = n.needed_text("local", problems);
    let at = n.path.child("local");
    let night_from = n
        .number(&fields::OF_DAY_FROM, problems)
        .unwrap_or(NIGHT_FROM);
    let night_to = n.number(&fields::OF_DAY_TO, problems).unwrap_or(NIGHT_TO);
    n.finish(problems);
    let local = local?;
    if crate::clock::Local::parse(&local).is_none() {
        problems.push(
            Problem::at(at, ProblemKind::UnknownWord)
                .reading(local)
                .one_of(["2026-05-01T10:00"]),
        );
        return None;
    }
    Some(Start {
        local,
        night_from,
        night_to,
    })
}
