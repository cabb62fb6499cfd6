//! What happens to metal when charge passes: elements, electrolytes, Faraday's laws, limiting density, kinetics, and
//! the catalogue in which every value carries its source.
//!
//! Does not: know shapes, jobs or people's words. Adds no text beyond ids and the titles of cited works.

pub mod catalogue;
pub mod element;
pub mod faraday;
pub mod kinetics;
pub mod limiting;
pub mod solution;
pub mod source;

pub use catalogue::Catalogue;
pub use element::{Element, ElementId};
pub use solution::{Process, Solution, SolutionId, Stirring};
pub use source::{Cited, Datum, MethodId, Source, Work, WorkId};
