//! Every word of the page, in one place, so that it can be translated. Ids come in, sentences go out.

pub mod after;
pub mod answer;
pub mod class;
pub mod drafts;
pub mod labels;
pub mod meter;
pub mod notes;
pub mod notices;
pub mod number;
pub mod still;
pub mod ways;
pub mod working;

pub use answer::*;
pub use labels::*;
pub use notices::{caution, limit, problem};
