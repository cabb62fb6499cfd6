//! Values in an Answer: named, present or absent, never a bare number.

use crate::path::FieldPath;
use quantity::kinds::unsigned_zero;
use quantity::{AnyQuantity, Quantity};
use serde::Serialize;
use serde::ser::{SerializeMap, Serializer};

/// A quantity of any kind under a name. In JSON `{"name": "area", "value_m2": 0.00114}`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Named {
    /// The name, an id that the page has words for.
    pub name: &'static str,
    /// The quantity.
    pub value: AnyQuantity,
}

impl Named {
    /// Names a quantity.
    pub fn new<Q: Quantity>(name: &'static str, value: Q) -> Self {
        Self {
            name,
            value: value.into(),
        }
    }
}

impl Serialize for Named {
    fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        let mut map = s.serialize_map(Some(2))?;
        map.serialize_entry("name", self.name)?;
        map.serialize_entry(
            &["value_", self.value.key_unit].concat(),
            &unsigned_zero(self.value.si),
        )?;
        map.end()
    }
}

/// Why a number is not there.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Because {
    /// An input it needs has a Problem or was not given.
    InputMissing,
    /// No table row for this shape in this arrangement.
    NoEvennessRow,
    /// The solution has no figure for it.
    NotInCatalogue,
    /// The piece has nothing of the kind (a bore, a wire).
    DoesNotApply,
}

impl Because {
    /// Every reason, for tables that must be complete.
    pub const ALL: &'static [Because] = &[
        Self::InputMissing,
        Self::NoEvennessRow,
        Self::NotInCatalogue,
        Self::DoesNotApply,
    ];
}

/// What keeps a number absent.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Absence {
    /// Why.
    pub because: Because,
    /// The inputs that would bring it.
    pub needs: Vec<FieldPath>,
}

/// A number that is present, or absent with what keeps it so.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Maybe<T> {
    /// Present.
    Known(T),
    /// Absent.
    Absent(Absence),
}

impl<T> Maybe<T> {
    /// Absent for one reason and no input in particular.
    pub fn absent(because: Because) -> Self {
        Self::Absent(Absence {
            because,
            needs: Vec::new(),
        })
    }

    /// Absent until `field` is given.
    pub fn needs(field: FieldPath) -> Self {
        Self::Absent(Absence {
            because: Because::InputMissing,
            needs: vec![field],
        })
    }

    /// The number, where present.
    pub fn known(&self) -> Option<&T> {
        match self {
            Maybe::Known(value) => Some(value),
            Maybe::Absent(_) => None,
        }
    }
}
