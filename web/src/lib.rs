//! The page: places, parts, state, words, storage.
//!
//! Does not: compute. Every number comes from the planner, every word from [`words`].

// A Problem is made when a person mistypes, not in a loop: its size costs nothing, a box would cost every reader.
#![allow(clippy::result_large_err)]

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
