//! The shelf: where the draft is kept. Behind a trait, so that the page works the same without one.

mod local;

pub use local::LocalShelf;

use crate::state::Draft;
use crate::state::draft::Unread;

/// Why something could not be kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ShelfProblem {
    /// The browser refuses storage here.
    Refused,
    /// No room is left.
    Full,
}

/// A place that keeps texts by name.
pub trait Shelf {
    /// The text under a name.
    fn load(&self, name: &str) -> Option<String>;
    /// Keeps a text under a name.
    fn save(&self, name: &str, text: &str) -> Result<(), ShelfProblem>;
}

/// The draft's name. Every page opened from a file shares one shelf with all others: the prefix keeps ours apart.
const DRAFT: &str = "ionwright.draft";
/// Where a text is put that could not be read as a draft.
const ASIDE: &str = "ionwright.draft.aside";

/// What was found on the shelf.
#[derive(Clone, Debug, PartialEq)]
pub struct Found {
    /// The draft, if there is one that can be read.
    pub draft: Option<Draft>,
    /// A text that could not be read, and why. It stays on the shelf under another name.
    pub aside: Option<(String, Unread)>,
}

/// Loads the draft; what cannot be read is set aside, not dropped.
pub fn load(shelf: &dyn Shelf) -> Found {
    let Some(text) = shelf.load(DRAFT) else {
        return Found {
            draft: None,
            aside: None,
        };
    };
    match Draft::from_text(&text) {
        Ok(draft) => Found {
            draft: Some(draft),
            aside: None,
        },
        Err(why) => {
            // The first text set aside stays: it is the one with the person's work in it.
            if shelf.load(ASIDE).is_none() {
                let _ = shelf.save(ASIDE, &text);
            }
            Found {
                draft: None,
                aside: Some((text, why)),
            }
        }
    }
}

/// Keeps the draft.
pub fn save(shelf: &dyn Shelf, draft: &Draft) -> Result<(), ShelfProblem> {
    shelf.save(DRAFT, &draft.to_text())
}

/// A shelf that keeps nothing: storage is refused, or the page runs without a browser.
pub struct NoShelf;

impl Shelf for NoShelf {
    fn load(&self, _: &str) -> Option<String> {
        None
    }
    fn save(&self, _: &str, _: &str) -> Result<(), ShelfProblem> {
        Err(ShelfProblem::Refused)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::state::demo::demo;
    use std::cell::RefCell;
    use std::collections::BTreeMap;

    #[derive(Default)]
    struct Memory(RefCell<BTreeMap<String, String>>);

    impl Shelf for Memory {
        fn load(&self, name: &str) -> Option<String> {
            self.0.borrow().get(name).cloned()
        }
        fn save(&self, name: &str, text: &str) -> Result<(), ShelfProblem> {
            self.0.borrow_mut().insert(name.to_owned(), text.to_owned());
            Ok(())
        }
    }

    #[test]
    fn a_saved_draft_comes_back_as_it_was_typed() {
        let shelf = Memory::default();
        let mut draft = demo();
        draft.put("pieces/p1/count", "2,", false);
        assert_eq!(save(&shelf, &draft), Ok(()));
        assert_eq!(load(&shelf).draft, Some(draft));
    }

    #[test]
    fn what_cannot_be_read_is_set_aside_and_kept() {
        for (text, why) in [
            ("{\"format\":1,\"texts\":", Unread::NotADraft),
            ("{\"format\":2,\"texts\":{}}", Unread::Newer),
            ("[]", Unread::NotADraft),
            ("{\"format\":1,\"texts\":{},\"more\":1}", Unread::NotADraft),
        ] {
            let shelf = Memory::default();
            let _ = shelf.save(DRAFT, text);
            let found = load(&shelf);
            assert_eq!(found.draft, None, "{text}");
            assert_eq!(found.aside, Some((text.to_owned(), why)));
            assert_eq!(shelf.load(ASIDE).as_deref(), Some(text));
        }
    }
}
