//! The steps in order: covering, growing, a strike, a layer, an etch are all a drive and an until.

use super::tree::{Node, Problems, Tagged, id_of, tagged};
use crate::fields;
use crate::path::FieldPath;
use crate::problem::{Problem, ProblemKind};
use chemistry::{Process, Stirring};
use quantity::{Current, CurrentDensity, Mass, Temperature, Thickness, Time, Voltage};
use serde::Serialize;
use serde_json::Value;

/// One step.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Step {
    /// `s1`, `s2`.
    pub id: String,
    /// Which pieces hang in which bath; several entries are vessels in series.
    #[serde(rename = "in")]
    pub places: Vec<InBath>,
    /// What happens.
    pub kind: Process,
    /// What it is for.
    #[serde(skip_serializing_if = "Purpose::is_grow")]
    pub purpose: Purpose,
    /// How the solution is moved.
    pub stirring: Stirring,
    /// Temperature of the bath.
    #[serde(rename = "temperature_K", skip_serializing_if = "Option::is_none")]
    pub temperature: Option<Temperature>,
    /// The voltage ceiling the person sets.
    #[serde(rename = "ceiling_V", skip_serializing_if = "Option::is_none")]
    pub ceiling: Option<Voltage>,
    /// What is set.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub drive: Option<Drive>,
    /// When it ends.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub until: Option<Until>,
}

/// What a step is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Purpose {
    /// To grow a layer, or to take one away.
    #[default]
    Grow,
    /// To cover a conductive coat with its first metal.
    Cover,
}

impl Purpose {
    fn is_grow(&self) -> bool {
        *self == Self::Grow
    }
}

/// The words for what a step is for.
pub const PURPOSES: [(&str, Purpose); 2] = [("grow", Purpose::Grow), ("cover", Purpose::Cover)];

/// Pieces in a bath.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct InBath {
    /// The bath.
    pub bath: String,
    /// The pieces.
    pub pieces: Vec<String>,
}

/// What is set on the supply.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Drive {
    /// A density over the wetted area.
    #[serde(rename = "density_A_per_m2")]
    Density(CurrentDensity),
    /// A current.
    #[serde(rename = "current_A")]
    Current(Current),
    /// All the supply gives.
    AllSupply,
    /// What the solution and the piece take.
    Advised,
}

/// When a step ends. Thicknesses count from the start of the job, in the same metal.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Until {
    /// After a time.
    #[serde(rename = "time_s")]
    Time(Time),
    /// At a mean thickness.
    #[serde(rename = "mean_m")]
    Mean(Thickness),
    /// At a thickness at the thinnest place.
    #[serde(rename = "thinnest_m")]
    Thinnest(Thickness),
    /// At a depth.
    #[serde(rename = "depth_m")]
    Depth(Thickness),
    /// At a mass on the pieces.
    #[serde(rename = "mass_kg")]
    Mass(Mass),
    /// At the mean thickness a use asks for.
    Use(Use),
    /// At the thinnest layer that wear takes so long to go through.
    Wear(Wear),
    /// At a time of day, `16:20`; the next one after the step's start.
    Clock(String),
    /// When the coat is covered: as long as its kind usually takes.
    Covered,
}

/// How long a finish shall last.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Wear {
    /// How it is worn.
    #[serde(rename = "use")]
    pub of: Use,
    /// How long.
    #[serde(rename = "lasts_s")]
    pub lasts: Time,
}

/// What the piece is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Use {
    /// A thin shell that is framed.
    Keepsake,
    /// Earrings, under 5 g each.
    Earring,
    /// A pendant or a pin.
    Pendant,
    /// A ring to wear.
    Ring,
    /// A shell or box that is handled.
    Handled,
}

/// The words for what a piece is for.
pub const USES: [(&str, Use); 5] = [
    ("keepsake", Use::Keepsake),
    ("earring", Use::Earring),
    ("pendant", Use::Pendant),
    ("ring", Use::Ring),
    ("handled", Use::Handled),
];

/// The words for how the solution is moved.
pub const STIRRINGS: [(&str, Stirring); 3] = [
    ("still", Stirring::Still),
    ("gentle", Stirring::Gentle),
    ("vigorous", Stirring::Vigorous),
];

/// All steps of a Job.
pub fn read_all(items: &[Value], path: &FieldPath, problems: &mut Problems) -> Vec<Step> {
    let mut ids = Vec::new();
    let mut steps = Vec::new();
    for item in items {
        if let Some(id) = id_of(item, path, &ids, problems) {
            ids.push(id.clone());
            if let Some(node) = Node::new(item, path.child(&id), problems) {
                steps.extend(read(id, node, problems));
            }
        }
    }
    steps
}

fn read(id: String, mut node: Node<'_>, problems: &mut Problems) -> Option<Step> {
    node.get("id");
    let places_path = node.path.child("in");
    let mut places = Vec::new();
    for item in node.list("in", problems) {
        if let Some(mut n) = Node::new(item, places_path.clone(), problems) {
            let bath = n.needed_text("bath", problems);
            let pieces = n.texts("pieces", problems);
            n.finish(problems);
            places.extend(bath.map(|bath| InBath { bath, pieces }));
        }
    }
    let kind = node.word(
        "kind",
        &[
            ("electroform", Process::Electroform),
            ("electroplate", Process::Electroplate),
            ("etch", Process::Etch),
        ],
        problems,
    );
    if !node.has("kind") {
        problems.push(
            Problem::at(node.path.child("kind"), ProblemKind::Missing).one_of([
                "electroform",
                "electroplate",
                "etch",
            ]),
        );
    }
    let step = Step {
        id,
        places,
        kind: kind.unwrap_or(Process::Electroform),
        purpose: node
            .word("purpose", &PURPOSES, problems)
            .unwrap_or_default(),
        stirring: node
            .word("stirring", &STIRRINGS, problems)
            .unwrap_or_default(),
        temperature: node.number(&fields::TEMPERATURE, problems),
        ceiling: node.number(&fields::CEILING, problems),
        drive: drive(&mut node, problems),
        until: until(&mut node, problems),
    };
    node.finish(problems);
    kind.map(|_| step)
}

fn drive(node: &mut Node<'_>, problems: &mut Problems) -> Option<Drive> {
    let at = node.path.child("drive");
    let value = node.get("drive")?;
    match tagged(
        value,
        &at,
        &["all_supply", "advised"],
        &[fields::DENSITY.key, fields::CURRENT.key],
        problems,
    )? {
        Tagged::Word("advised") => Some(Drive::Advised),
        Tagged::Word(_) => Some(Drive::AllSupply),
        Tagged::Group(key, value, _) if key == fields::DENSITY.key => fields::DENSITY
            .read_json(value, &at.child(fields::DENSITY.name()))
            .map_err(|p| problems.push(p))
            .ok()
            .map(Drive::Density),
        Tagged::Group(_, value, _) => fields::CURRENT
            .read_json(value, &at.child(fields::CURRENT.name()))
            .map_err(|p| problems.push(p))
            .ok()
            .map(Drive::Current),
    }
}

fn until(node: &mut Node<'_>, problems: &mut Problems) -> Option<Until> {
    let at = node.path.child("until");
    if node.get("until")? == "covered" {
        return Some(Until::Covered);
    }
    let mut node = node.group("until", problems)?;
    let keys = [
        fields::UNTIL_TIME.key,
        fields::UNTIL_MEAN.key,
        fields::UNTIL_THINNEST.key,
        fields::UNTIL_DEPTH.key,
        fields::UNTIL_MASS.key,
        "use",
        "wear",
        "clock",
    ];
    let (key, value) = node.choice(&keys, problems)?;
    let result = match key {
        "use" => node.word("use", &USES, problems).map(Until::Use),
        "wear" => wear(&mut node, problems).map(Until::Wear),
        "clock" => clock(value, &at, problems).map(Until::Clock),
        key if key == fields::UNTIL_TIME.key => {
            node.number(&fields::UNTIL_TIME, problems).map(Until::Time)
        }
        key if key == fields::UNTIL_MEAN.key => {
            node.number(&fields::UNTIL_MEAN, problems).map(Until::Mean)
        }
        key if key == fields::UNTIL_THINNEST.key => node
            .number(&fields::UNTIL_THINNEST, problems)
            .map(Until::Thinnest),
        key if key == fields::UNTIL_DEPTH.key => node
            .number(&fields::UNTIL_DEPTH, problems)
            .map(Until::Depth),
        _ => node.number(&fields::UNTIL_MASS, problems).map(Until::Mass),
    };
    node.finish(problems);
    result
}

fn wear(node: &mut Node<'_>, problems: &mut Problems) -> Option<Wear> {
    let mut n = node.group("wear", problems)?;
    let of = n.word("use", &USES, problems);
    if !n.has("use") {
        problems.push(
            Problem::at(n.path.child("use"), ProblemKind::Missing).one_of(USES.map(|(w, _)| w)),
        );
    }
    let lasts = n.needed(&fields::LASTS, problems);
    n.finish(problems);
    Some(Wear {
        of: of?,
        lasts: lasts?,
    })
}

fn clock(value: &Value, at: &FieldPath, problems: &mut Problems) -> Option<String> {
    let text = value.as_str().unwrap_or_default();
    if crate::clock::time_of_day(text).is_some() {
        return Some(text.to_owned());
    }
    problems.push(
        Problem::at(at.child("clock"), ProblemKind::UnknownWord)
            .reading(super::tree::shown(value))
            .one_of(["00:00", "23:59"]),
    );
    None
}
