//! How much surface there is: shapes with their area, volume and outline, finds with their usual texture, and the ways of
//! measuring an area that no formula gives.
//!
//! Does not: know metals, baths, current or people's words; read mesh files.

mod carlson;
pub mod measure;
pub mod outline;
pub mod preset;
pub mod shape;
pub mod source;
pub mod surface;

pub use carlson::rg;
pub use outline::{Point, Ring};
pub use shape::{Contradiction, Covering, LeafForm, Limit, Recess, Shape};
pub use source::{Source, Sourced};
pub use surface::Surface;
