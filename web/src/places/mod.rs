//! Places: a screenful each. What they show comes in, what the person does goes out.

pub mod accident;
pub mod answer;
pub mod ask;
pub mod attend;
mod compare;
pub mod drafts;
pub mod edition;
pub mod emergency;
pub mod exact;
mod fair;
pub mod layers;
pub mod measure;
pub mod plan;
pub mod questions;
pub mod setup;
pub mod share;
pub mod top;
pub mod working;
