//! What cannot be computed, and what would be accepted instead.

use crate::path::FieldPath;
use crate::value::Named;
use quantity::Unreadable;
use serde::Serialize;

/// Why an input could not be used.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum ProblemKind {
    /// Needed, but not given.
    Missing,
    /// No number where one is expected.
    NotANumber,
    /// Two decimal marks.
    TwoMarks,
    /// A unit this input is not measured in.
    UnknownUnit,
    /// A number beyond what a computer holds.
    NotFinite,
    /// Below what is accepted.
    TooSmall,
    /// Above what is accepted.
    TooLarge,
    /// Not one of the words that are accepted.
    UnknownWord,
    /// Text, number, list or group where another of these is expected.
    WrongType,
    /// A field that this format does not have.
    UnknownField,
    /// An id that nothing in the job or the catalogue has.
    UnknownId,
    /// Two of the same id.
    DuplicateId,
    /// Written by a newer program.
    NewerFormat,
    /// Understood, but this program cannot compute it.
    NotYet,
    /// The line is not JSON.
    NotJson,
    /// Two inputs that cannot both be true.
    Contradiction,
    /// A solution that is explained but never chosen.
    NotOffered,
    /// A solution whose densities are not known: its own sheet is needed.
    NoWindow,
}

impl ProblemKind {
    /// Every kind, for tables that must be complete.
    pub const ALL: &'static [ProblemKind] = &[
        Self::Missing,
        Self::NotANumber,
        Self::TwoMarks,
        Self::UnknownUnit,
        Self::NotFinite,
        Self::TooSmall,
        Self::TooLarge,
        Self::UnknownWord,
        Self::WrongType,
        Self::UnknownField,
        Self::UnknownId,
        Self::DuplicateId,
        Self::NewerFormat,
        Self::NotYet,
        Self::NotJson,
        Self::Contradiction,
        Self::NotOffered,
        Self::NoWindow,
    ];
}

/// What would have been accepted.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Accepted {
    /// A number from `least` to `most`, both included.
    Between {
        /// Lowest accepted.
        least: Named,
        /// Highest accepted.
        most: Named,
    },
    /// One of these words or ids.
    OneOf(Vec<String>),
    /// This JSON type.
    Type(&'static str),
    /// This format or an older one.
    #[serde(rename = "format")]
    Format(u32),
}

/// Something that cannot be computed.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Problem {
    /// Where.
    pub field: FieldPath,
    /// Why.
    pub kind: ProblemKind,
    /// What was read there, as given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub read: Option<String>,
    /// What would be accepted.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub accepted: Option<Accepted>,
}

impl Problem {
    /// A problem without further detail.
    pub fn at(field: FieldPath, kind: ProblemKind) -> Self {
        Self {
            field,
            kind,
            read: None,
            accepted: None,
        }
    }

    /// The same, with what was read.
    pub fn reading(mut self, text: impl Into<String>) -> Self {
        self.read = Some(text.into());
        self
    }

    /// The same, with what is accepted.
    pub fn accepting(mut self, accepted: Accepted) -> Self {
        self.accepted = Some(accepted);
        self
    }

    /// The same, with the words that are accepted.
    pub fn one_of<'a>(self, words: impl IntoIterator<Item = &'a str>) -> Self {
        self.accepting(Accepted::OneOf(
            words.into_iter().map(str::to_owned).collect(),
        ))
    }
}

/// The kind and the offending part of an unreadable text.
pub fn of_unreadable(why: &Unreadable) -> (ProblemKind, Option<&str>) {
    match why {
        Unreadable::Empty => (ProblemKind::Missing, None),
        Unreadable::NotANumber(text) => (ProblemKind::NotANumber, Some(text)),
        Unreadable::TwoMarks(text) => (ProblemKind::TwoMarks, Some(text)),
        Unreadable::UnknownUnit(text) => (ProblemKind::UnknownUnit, Some(text)),
        Unreadable::NotFinite(text) => (ProblemKind::NotFinite, Some(text)),
    }
}
