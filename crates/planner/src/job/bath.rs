//! The baths: solution, volume, what they hold, the counter electrode.

use super::tree::{Node, Problems, id_of};
use crate::fields;
use crate::path::FieldPath;
use crate::problem::{Problem, ProblemKind};
use field::Arrangement;
use quantity::{
    BathSurface, Charge, Concentration, CounterArea, Length, Mass, Power, Ratio, Volume,
};
use serde::Serialize;
use serde_json::Value;

/// A vessel with a solution.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Bath {
    /// `b1`, `b2`.
    pub id: String,
    /// The solution's id.
    pub solution: String,
    /// How much of it.
    #[serde(rename = "volume_m3", skip_serializing_if = "Option::is_none")]
    pub volume: Option<Volume>,
    /// Charge it has passed so far.
    #[serde(rename = "passed_C", skip_serializing_if = "Option::is_none")]
    pub passed: Option<Charge>,
    /// Metals dissolved in it.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub holds: Vec<Holds>,
    /// The counter electrode.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub counter: Option<Counter>,
    /// Its open surface; without it, that of a usual vessel of the volume.
    #[serde(rename = "surface_m2", skip_serializing_if = "Option::is_none")]
    pub surface: Option<BathSurface>,
    /// Power of the heater at hand.
    #[serde(rename = "heater_W", skip_serializing_if = "Option::is_none")]
    pub heater: Option<Power>,
}

/// A metal dissolved in a bath.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Holds {
    /// The metal.
    pub metal: String,
    /// Now.
    #[serde(rename = "now_kg_per_m3", skip_serializing_if = "Option::is_none")]
    pub now: Option<Concentration>,
    /// Below this the bath is renewed.
    #[serde(rename = "floor_kg_per_m3", skip_serializing_if = "Option::is_none")]
    pub floor: Option<Concentration>,
}

/// The other electrode.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Counter {
    /// Its material.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub material: Option<String>,
    /// Area facing the work.
    #[serde(rename = "facing_m2", skip_serializing_if = "Option::is_none")]
    pub facing: Option<CounterArea>,
    /// What it is, where its area is to be worked out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub form: Option<Form>,
    /// Distance to the work.
    #[serde(rename = "distance_m", skip_serializing_if = "Option::is_none")]
    pub distance: Option<Length>,
    /// Its length along the bar over the length from the centre of the first piece to that of the last.
    #[serde(rename = "over_bar_ratio", skip_serializing_if = "Option::is_none")]
    pub over_bar: Option<Ratio>,
    /// Where it stands.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub arrangement: Option<Arrangement>,
}

/// What a counter electrode is, for its facing area.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Form {
    /// Flat plates: one face of each looks at the work.
    Plate {
        /// Width.
        #[serde(rename = "width_m")]
        width: Length,
        /// Wetted height.
        #[serde(rename = "height_m")]
        height: Length,
        /// How many.
        #[serde(rename = "plates_count")]
        plates: u32,
    },
    /// A coil of wire: half of it looks at the work.
    Coil {
        /// Diameter of the wire.
        #[serde(rename = "wire_d_m")]
        wire_d: Length,
        /// Wetted length of the wire.
        #[serde(rename = "length_m")]
        length: Length,
    },
    /// Scrap sheet in a basket: half of it looks at the work.
    Scrap {
        /// How much of it.
        #[serde(rename = "mass_kg")]
        mass: Mass,
        /// How thick it is.
        #[serde(rename = "thickness_m")]
        thickness: Length,
    },
    /// The round vessel itself, the work in its middle.
    Vessel {
        /// Inner diameter.
        #[serde(rename = "diameter_m")]
        diameter: Length,
        /// Wetted height.
        #[serde(rename = "height_m")]
        height: Length,
    },
}

fn form(node: &mut Node<'_>, problems: &mut Problems) -> Option<Form> {
    let mut outer = node.group("form", problems)?;
    let (kind, value) = outer.choice(&["plate", "coil", "scrap", "vessel"], problems)?;
    let mut n = Node::new(value, outer.path.child(kind), problems)?;
    let form = match kind {
        "plate" => {
            let width = n.needed(&fields::PLATE_WIDTH, problems);
            let height = n.needed(&fields::PLATE_HEIGHT, problems);
            let plates = n.count(&fields::PLATES, 1, problems);
            width
                .zip(height)
                .zip(plates)
                .map(|((width, height), plates)| Form::Plate {
                    width,
                    height,
                    plates,
                })
        }
        "coil" => {
            let wire_d = n.needed(&fields::COIL_WIRE, problems);
            let length = n.needed(&fields::COIL_LENGTH, problems);
            wire_d
                .zip(length)
                .map(|(wire_d, length)| Form::Coil { wire_d, length })
        }
        "scrap" => {
            let mass = n.needed(&fields::SCRAP, problems);
            let thickness = n.needed(&fields::SCRAP_STOCK, problems);
            mass.zip(thickness)
                .map(|(mass, thickness)| Form::Scrap { mass, thickness })
        }
        _ => {
            let diameter = n.needed(&fields::VESSEL_D, problems);
            let height = n.needed(&fields::PLATE_HEIGHT, problems);
            diameter
                .zip(height)
                .map(|(diameter, height)| Form::Vessel { diameter, height })
        }
    };
    n.finish(problems);
    outer.finish(problems);
    form
}

/// The words for where the counter electrode stands.
pub const ARRANGEMENTS: [(&str, Arrangement); 4] = [
    ("one_side", Arrangement::OneSide),
    ("both_sides", Arrangement::BothSides),
    ("turned", Arrangement::Turned),
    ("all_round", Arrangement::AllRound),
];

/// All baths of a Job.
pub fn read_all(items: &[Value], path: &FieldPath, problems: &mut Problems) -> Vec<Bath> {
    let mut ids = Vec::new();
    let mut baths = Vec::new();
    for item in items {
        if let Some(id) = id_of(item, path, &ids, problems) {
            ids.push(id.clone());
            if let Some(node) = Node::new(item, path.child(&id), problems) {
                baths.extend(read(id, node, problems));
            }
        }
    }
    baths
}

fn read(id: String, mut node: Node<'_>, problems: &mut Problems) -> Option<Bath> {
    node.get("id");
    let solution = node.text("solution", problems);
    if !node.has("solution") {
        problems.push(Problem::at(
            node.path.child("solution"),
            ProblemKind::Missing,
        ));
    }
    let volume = node.number(&fields::VOLUME, problems);
    let passed = node.number(&fields::PASSED, problems);
    let mut holds = Vec::new();
    let holds_path = node.path.child("holds");
    for item in node.list("holds", problems) {
        let name = item.get("metal").and_then(Value::as_str).unwrap_or("");
        if let Some(mut n) = Node::new(item, holds_path.child(name), problems) {
            let metal = n.needed_text("metal", problems);
            let now = n.number(&fields::HOLDS_NOW, problems);
            let floor = n.number(&fields::HOLDS_FLOOR, problems);
            n.finish(problems);
            holds.extend(metal.map(|metal| Holds { metal, now, floor }));
        }
    }
    let counter = node.group("counter", problems).map(|mut n| {
        let counter = Counter {
            material: n.text("material", problems),
            facing: n.number(&fields::FACING, problems),
            form: form(&mut n, problems),
            distance: n.number(&fields::DISTANCE, problems),
            over_bar: n.number(&fields::OVER_BAR, problems),
            arrangement: n.word("arrangement", &ARRANGEMENTS, problems),
        };
        n.finish(problems);
        counter
    });
    let surface = node.number(&fields::SURFACE, problems);
    let heater = node.number(&fields::HEATER, problems);
    node.finish(problems);
    solution.map(|solution| Bath {
        id,
        solution,
        volume,
        passed,
        holds,
        counter,
        surface,
        heater,
    })
}
