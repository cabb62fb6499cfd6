//! The address of an input.

use core::fmt;
use serde::{Serialize, Serializer};

/// The one address of an input: the JSON keys that lead to it, joined by `/`, without their unit endings; an element of
/// a list goes by its id, never by its index. `pieces/p1/extent/parts/a/shape/band/bore`.
///
/// It is a Problem's field, the page's element id and the name of the input's random variate.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct FieldPath(String);

impl FieldPath {
    /// The address of the question as a whole.
    pub fn root() -> Self {
        Self::default()
    }

    /// From its text.
    pub fn new(text: &str) -> Self {
        Self(text.to_owned())
    }

    /// One step further in; no name is no step.
    pub fn child(&self, name: &str) -> Self {
        if name.is_empty() {
            self.clone()
        } else if self.0.is_empty() {
            Self(name.to_owned())
        } else {
            Self([&self.0, "/", name].concat())
        }
    }

    /// The address as text.
    pub fn as_str(&self) -> &str {
        &self.0
    }

    /// Whether this is or lies inside the one called `id` of a list.
    pub(crate) fn within_one_of(&self, list: &str, id: &str) -> bool {
        let rest = self.0.strip_prefix(list).and_then(|r| r.strip_prefix('/'));
        rest.and_then(|r| r.strip_prefix(id))
            .is_some_and(|rest| rest.is_empty() || rest.starts_with('/'))
    }

    /// Whether this is `other` or lies inside it.
    pub fn within(&self, other: &str) -> bool {
        other.is_empty()
            || self
                .0
                .strip_prefix(other)
                .is_some_and(|rest| rest.is_empty() || rest.starts_with('/'))
    }
}

impl fmt::Display for FieldPath {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl Serialize for FieldPath {
    fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        s.serialize_str(&self.0)
    }
}

/// A JSON key without its unit ending: `bore_m` is `bore`.
pub fn name_of<'k>(key: &'k str, key_unit: &str) -> &'k str {
    key.strip_suffix(key_unit)
        .and_then(|k| k.strip_suffix('_'))
        .unwrap_or(key)
}
