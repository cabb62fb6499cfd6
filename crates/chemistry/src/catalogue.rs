//! The catalogue: everything the program knows before a job is asked.

use crate::alloy::{ALLOYS, Alloy};
use crate::element::{ELEMENTS, Element};
use crate::material::{MATERIALS, Material};
use crate::solution::{Choosable, SOLUTIONS, Setting, Solution};
use crate::source::{WORKS, Work};
use crate::substance::{SUBSTANCES, Substance};

/// What is known: elements, alloys, substances, materials, solutions, works. A person's own metals and solutions stand in the Job, never here.
#[derive(Clone, Copy, Debug)]
pub struct Catalogue {
    /// Named by every Answer; changes when a value or an id changes.
    pub version: &'static str,
    /// The elements.
    pub elements: &'static [Element],
    /// The alloys.
    pub alloys: &'static [Alloy],
    /// What solutions are made up from.
    pub substances: &'static [Substance],
    /// What counter electrodes are made of.
    pub materials: &'static [Material],
    /// The solutions.
    pub solutions: &'static [Solution],
    /// The cited works.
    pub works: &'static [Work],
}

impl Catalogue {
    /// The one that ships with the program.
    pub const fn standard() -> Self {
        Self {
            version: "2",
            elements: ELEMENTS,
            alloys: ALLOYS,
            substances: SUBSTANCES,
            materials: MATERIALS,
            solutions: SOLUTIONS,
            works: WORKS,
        }
    }

    /// The element of this symbol.
    pub fn element(&self, id: &str) -> Option<&'static Element> {
        self.elements.iter().find(|e| e.id == id)
    }

    /// The alloy of this id.
    pub fn alloy(&self, id: &str) -> Option<&'static Alloy> {
        self.alloys.iter().find(|a| a.id == id)
    }

    /// The solutions to offer somebody who works at `setting`, unasked: never one that needs a shop elsewhere, is never
    /// chosen, or has no window.
    pub fn offered(&self, setting: Setting) -> impl Iterator<Item = &'static Solution> {
        self.solutions
            .iter()
            .filter(move |s| s.choosable(setting) == Choosable::Offered)
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
