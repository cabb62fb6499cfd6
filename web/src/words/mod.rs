//! Every word of the page, in one place, so that it can be translated. Ids come in, sentences go out.

pub mod labels;
pub mod notices;
pub mod number;
pub mod still;
pub mod working;

pub use labels::*;
pub use notices::{caution, limit, problem};
