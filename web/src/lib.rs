//! The page: places, parts, state, words, storage.
//!
//! Does not: compute. Every number comes from the planner, every word from [`words`].

pub mod app;
pub mod browser;
pub mod interface;
pub mod parts;
pub mod places;
pub mod state;
pub mod still;
pub mod storage;
pub mod words;

pub use app::App;
