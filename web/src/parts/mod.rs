//! Parts: fields, choices, figures. They know no metal and no job.

pub mod choice;
pub mod formula;
pub mod layer;
pub mod note;
pub mod number_field;
pub mod outline;

pub use choice::{Cards, Select};
pub use number_field::NumberField;
