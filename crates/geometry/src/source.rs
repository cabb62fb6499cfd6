//! Where a value of this crate comes from.

/// The kind of a value's source.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Source {
    /// The trade does it so; no source.
    CommonPractice,
    /// Recalled, not looked up.
    FromMemory,
    /// Follows by a formula that stands beside the value.
    Derived,
    /// Printed in a work.
    Published {
        /// Id of the work, one of [`WORKS`].
        work: &'static str,
        /// Where in it.
        locator: &'static str,
    },
}

impl Source {
    /// The kind as an id.
    pub fn id(self) -> &'static str {
        match self {
            Source::CommonPractice => "common_practice",
            Source::FromMemory => "from_memory",
            Source::Derived => "derived",
            Source::Published { .. } => "published",
        }
    }
}

/// A value and where it comes from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sourced<T> {
    /// The value.
    pub value: T,
    /// Its source.
    pub source: Source,
}

/// The works cited here: id, and author, title, year.
pub const WORKS: &[(&str, &str)] = &[
    (
        "apple_surface",
        "Clayton et al., Estimation of apple fruit surface area, 1995 (abstract seen; author and year from memory)",
    ),
    (
        "leaf_methods_1990",
        "A comparison of the accuracy, variability and speed of five different methods for estimating leaf area, Annals of Botany 65 (1990) 483-488 (abstract seen)",
    ),
    (
        "leaf_tracing_2011",
        "Pandey, Singh, Journal of Botany 2011, 658240 (abstract seen)",
    ),
];
