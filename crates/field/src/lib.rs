//! Where on the surface it happens: thinnest and thickest place over the mean.
//!
//! Numbers in, numbers out. Does not: know metals, solutions, jobs or people's words.

pub mod evenness;
pub mod wagner;

pub use evenness::{Arrangement, Evenness, Opening, Row, ThinPlace, evenness};
pub use wagner::wagner;
