//! Parts: fields, choices, figures. They know no metal and no job.

pub mod band;
pub mod card;
pub mod choice;
pub mod course;
pub mod fold;
pub mod formula;
pub mod groove;
pub mod layer;
pub mod list;
pub mod note;
pub mod number_field;
pub mod outline;
pub mod picture;
pub mod series;
pub mod terms;
pub mod yardstick;

pub use choice::{Cards, Select};
pub use fold::Fold;
pub use number_field::NumberField;
