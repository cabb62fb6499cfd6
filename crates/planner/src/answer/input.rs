//! The inputs an answer stands on, where they come from, and the working.

use crate::path::FieldPath;
use crate::value::Named;
use chemistry::Source;
use quantity::kinds::unsigned_zero;
use serde::Serialize;
use serde::ser::{SerializeStruct, Serializer};

/// An input the answer rests on.
#[derive(Clone, Debug, PartialEq)]
pub struct InputUsed {
    /// Its address.
    pub at: FieldPath,
    /// Its likely value.
    pub value: quantity::AnyQuantity,
    /// Where it usually lies, in the value's own unit: a catalogue's lowest and highest, a display's half step to either
    /// side, else what two in three lie between. None for what is taken as exact.
    pub band: Option<(f64, f64)>,
    /// Where that comes from.
    pub origin: Origin,
}

/// Where an input's value comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Origin {
    /// The person gave it.
    Given,
    /// The person put it in the catalogue's place.
    Assumed,
    /// The catalogue's.
    Catalogue(Source),
}

impl Serialize for InputUsed {
    fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        use serde::ser::SerializeMap;
        let mut map = s.serialize_map(None)?;
        map.serialize_entry("at", &self.at)?;
        let mut number = |name: &str, si: f64| {
            let key = [name, self.value.key_unit].concat();
            map.serialize_entry(&key, &unsigned_zero(si))
        };
        number("value_", self.value.si)?;
        if let Some((low, high)) = self.band {
            number("low_", low)?;
            number("high_", high)?;
        }
        map.serialize_entry("origin", &self.origin)?;
        map.end()
    }
}

impl Serialize for Origin {
    fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        match self {
            Origin::Given => s.serialize_str("given"),
            Origin::Assumed => s.serialize_str("assumed"),
            Origin::Catalogue(source) => SourceText(*source).serialize(s),
        }
    }
}

/// Where a value of the working comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Whence {
    /// An input.
    From(Origin),
    /// Worked out from others, in a step of the working or beside it.
    Worked,
}

impl Serialize for Whence {
    fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        match self {
            Whence::From(origin) => origin.serialize(s),
            Whence::Worked => s.serialize_str("worked"),
        }
    }
}

/// A source as it stands in an Answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SourceText(pub Source);

impl Serialize for SourceText {
    fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        match self.0 {
            Source::Published { work, locator } => {
                let mut published = s.serialize_struct("published", 2)?;
                published.serialize_field("work", work.id())?;
                published.serialize_field("locator", locator)?;
                published.end()
            }
            Source::Computed { method } => s.serialize_str(method.id()),
            Source::CommonPractice => s.serialize_str("common_practice"),
            Source::FromMemory => s.serialize_str("from_memory"),
        }
    }
}

/// One step of the working. Its formula stands in [`crate::working::FORMULAS`] under the same id.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Working {
    /// Id of the formula.
    pub id: &'static str,
    /// The step or piece it is about.
    pub at: FieldPath,
    /// What goes in.
    pub values: Vec<Named>,
    /// Where each of them comes from, in the same order.
    pub whence: Vec<Whence>,
    /// What comes out.
    pub result: Named,
    /// Where the values and the formula come from, each source once.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub sources: Vec<SourceText>,
}
