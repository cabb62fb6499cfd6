//! Where on the surface it happens: thinnest and thickest place over the mean.
//!
//! Numbers in, numbers out. Does not: know metals, solutions, jobs or people's words.

pub mod evenness;
#[rustfmt::skip]
mod table;
pub mod wagner;

pub use evenness::{
    Along, Arrangement, Curve, Ends, Evenness, Opening, Row, ThinAt, evenness, thin_at,
};
pub use table::COLUMNS;
pub use wagner::wagner;
