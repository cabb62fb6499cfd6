//! The catalogue: everything the program knows before a job is asked.

use crate::element::{ELEMENTS, Element};
use crate::solution::{SOLUTIONS, Solution};
use crate::source::{WORKS, Work};

/// What is known: elements, solutions, works. A person's own metals and solutions stand in the Job, never here.
#[derive(Clone, Copy, Debug)]
pub struct Catalogue {
    /// Named by every Answer; changes when a value or an id changes.
    pub version: &'static str,
    /// The elements.
    pub elements: &'static [Element],
    /// The solutions.
    pub solutions: &'static [Solution],
    /// The cited works.
    pub works: &'static [Work],
}

impl Catalogue {
    /// The one that ships with the program.
    pub const fn standard() -> Self {
        Self {
            version: "1",
            elements: ELEMENTS,
            solutions: SOLUTIONS,
            works: WORKS,
        }
    }

    /// The element of this symbol.
    pub fn element(&self, id: &str) -> Option<&'static Element> {
        self.elements.iter().find(|e| e.id == id)
    }

    /// The solution of this id.
    pub fn solution(&self, id: &str) -> Option<&'static Solution> {
        self.solutions.iter().find(|s| s.id == id)
    }
}

impl Default for Catalogue {
    fn default() -> Self {
        Self::standard()
    }
}
