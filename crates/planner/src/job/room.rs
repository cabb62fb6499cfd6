//! The room a bath stands in.

use super::tree::{Node, Problems};
use crate::fields;
use quantity::{Fraction, Temperature};
use serde::Serialize;

/// The room; what is not given is taken as usual, and the Answer says so.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Room {
    /// How warm it is.
    #[serde(rename = "temperature_K", skip_serializing_if = "Option::is_none")]
    pub temperature: Option<Temperature>,
    /// How damp its air is, relative to air that holds all it can.
    #[serde(rename = "humidity_frac", skip_serializing_if = "Option::is_none")]
    pub humidity: Option<Fraction>,
    /// How its air moves over the bath.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub draught: Option<Draught>,
}

/// How the air moves over a bath.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Draught {
    /// Not.
    #[default]
    Still,
    /// 0.3 m/s.
    Light,
    /// 0.5 m/s.
    Strong,
}

/// The words for how the air moves.
pub const DRAUGHTS: [(&str, Draught); 3] = [
    ("still", Draught::Still),
    ("light", Draught::Light),
    ("strong", Draught::Strong),
];

/// The room of a Job.
pub fn read(node: &mut Node<'_>, problems: &mut Problems) -> Option<Room> {
    let mut n = node.group("room", problems)?;
    let room = Room {
        temperature: n.number(&fields::ROOM_TEMPERATURE, problems),
        humidity: n.number(&fields::HUMIDITY, problems),
        draught: n.word("draught", &DRAUGHTS, problems),
    };
    n.finish(problems);
    Some(room)
}
