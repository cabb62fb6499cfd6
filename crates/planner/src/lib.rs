//! What to set and for how long: one pure function from a [`Job`] to an [`Answer`].
//!
//! ```
//! use planner::{Catalogue, answer_text};
//! let text = answer_text(&Catalogue::standard(), r#"{"plan":{"format":1,
//!   "pieces":[{"id":"p1","extent":{"area":{"one_side_m2":0.00114}}}],
//!   "baths":[{"id":"b1","solution":"cu_acid_form"}],
//!   "steps":[{"id":"s1","in":[{"bath":"b1","pieces":["p1"]}],"kind":"electroform",
//!             "drive":{"density_A_per_m2":120},"until":{"mean_m":0.0002}}]}}"#);
//! assert!(text.contains("\"likely_A\":0.1368"));
//! ```
//!
//! Does not: print words, draw, store, read a clock or a random number; know the page.

// A Problem is made once for an input that cannot be used, and there is one Question a line: boxes would only make them
// harder to read.
#![allow(clippy::result_large_err, clippy::large_enum_variant)]

pub mod advise;
pub mod after;
pub mod answer;
pub mod answering;
pub mod arrangement;
pub mod asked;
mod balance;
pub mod batches;
pub mod begin;
pub mod bench;
mod body;
pub mod checks;
pub mod class;
mod clips;
pub mod clock;
pub mod cover;
pub mod deal;
pub mod even;
pub mod expr;
pub mod facing;
pub mod fair;
pub mod fields;
pub mod groove;
pub mod hazards;
pub mod inputs;
pub mod job;
pub mod meter;
mod moments;
pub mod moved;
pub mod narrowing;
pub mod path;
pub mod plan;
pub mod problem;
pub mod question;
pub mod ranges;
pub mod reentry;
pub mod resolve;
pub mod run;
pub mod sessions;
mod share;
mod stage;
pub mod uses;
pub mod value;
mod vessel;
pub mod warmth;
pub mod ways;
pub mod whence;
pub mod working;

pub use answer::Answer;
pub use answering::{answer, answer_likely, answer_with};
pub use batches::batches;
pub use chemistry::solution;
pub use chemistry::{
    Catalogue, Choosable, Process, Setting, Stirring, source::MethodId, source::Source,
};
pub use fair::fair_share;
pub use field::{Arrangement, Opening, ThinAt};
pub use geometry::measure;
pub use geometry::preset::Preset;
pub use geometry::{Shape, outline};
pub use job::Job;
pub use narrowing::{Narrowed, measure_first, narrowing};
pub use path::FieldPath;
pub use problem::{Accepted, Problem, ProblemKind};
pub use question::{answer_line, answer_text};
pub use value::{Maybe, Named};
pub use ways::{WayOut, thief_of, ways_out};
