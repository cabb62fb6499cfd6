//! The ground floor: quantities as types, their units, the one reader and printer of numbers with units, values with
//! a spread, and the fixed sample points behind every range.
//!
//! Inside the program every quantity is in SI; a unit appears only where a person types or reads. Two things with the
//! same dimension but a different meaning (the work's area, the counter electrode's area) are two types.
//!
//! Does not: know any metal, shape or job; print sentences; convert between kinds.

pub mod gauge;
pub mod kinds;
pub mod print;
mod products;
pub mod read;
pub mod spread;
pub mod unit;
pub mod variate;

pub use kinds::*;
pub use read::{Reading, Unreadable, read, read_any};
pub use spread::{Band, Range, Spread};
pub use unit::Unit;
pub use variate::{POINTS, Variate};
