//! What happens to metal when charge passes: elements, alloys, electrolytes, Faraday's laws, efficiency, limiting
//! density, kinetics, and the catalogue in which every value carries its source.
//!
//! Does not: know shapes, jobs or people's words. Adds no text beyond ids and the titles of cited works.

pub mod alloy;
pub mod catalogue;
pub mod dissolution;
pub mod efficiency;
pub mod element;
pub mod faraday;
pub mod kinetics;
pub mod limiting;
pub mod material;
pub mod notes;
pub mod own;
pub mod solution;
pub mod source;
pub mod substance;
pub mod touch;

pub use alloy::{Alloy, AlloyId, MetalId};
pub use catalogue::Catalogue;
pub use dissolution::{Dissolution, Metal, dissolution, valence_in};
pub use element::{Element, ElementId};
pub use notes::NoteId;
pub use own::{OwnMetal, OwnPart, OwnProblem};
pub use solution::{
    Choosable, Column, Electrode, Place, Process, Setting, Solution, SolutionId, Stirring,
};
pub use source::{Cited, Datum, MethodId, Source, Work, WorkId};
