//! A shelf in memory and drafts to put on it.

use notebook::{Draft, Named, Shelf, ShelfProblem};
use std::cell::{Cell, RefCell};
use std::collections::BTreeMap;

/// A shelf that can be full or refuse.
#[derive(Default)]
pub struct Memory {
    pub texts: RefCell<BTreeMap<String, String>>,
    pub refuses: Cell<Option<ShelfProblem>>,
}

impl Shelf for Memory {
    fn load(&self, name: &str) -> Option<String> {
        self.texts.borrow().get(name).cloned()
    }
    fn save(&self, name: &str, text: &str) -> Result<(), ShelfProblem> {
        if let Some(problem) = self.refuses.get() {
            return Err(problem);
        }
        self.texts
            .borrow_mut()
            .insert(name.to_owned(), text.to_owned());
        Ok(())
    }
    fn remove(&self, name: &str) {
        self.texts.borrow_mut().remove(name);
    }
    fn names(&self) -> Vec<String> {
        self.texts.borrow().keys().cloned().collect()
    }
}

/// The base example of these tests.
pub fn base() -> Draft {
    let texts = [
        ("pieces/p1/count", "2"),
        ("pieces/p1/extent", "torus"),
        ("steps/s2/until/mean", "200"),
        ("supply/constant_current/highest", ""),
    ];
    let own = |(a, t): (&str, &str)| (a.to_owned(), t.to_owned());
    Draft::of(texts.into_iter().map(own).collect())
}

/// The base example under a name, with one text typed.
pub fn typed(name: &str, at: &str, text: &str) -> Named {
    let mut draft = base();
    draft.put(at, text, true);
    Named::new(name, draft)
}

/// The base example under a name.
pub fn plain(name: &str) -> Named {
    Named::new(name, base())
}
