//! The shelf: where drafts are kept, and how this window begins.

mod elsewhere;
mod local;

pub use elsewhere::use_elsewhere;
pub use local::{LocalShelf, last_open, remember_open};
pub use notebook::{NoShelf, Shelf, ShelfProblem};

use crate::state::{demo, demos};
use crate::words::drafts as words;
use notebook::{Aside, Book, DraftId, Keeper, Named, carried};

/// What a window begins with.
#[derive(Clone, Debug)]
pub struct Found {
    /// Keeps the drafts from here on.
    pub keeper: Keeper,
    /// The drafts.
    pub book: Book,
    /// Texts that could not be read, and why. They stay where they are.
    pub aside: Vec<Aside>,
}

/// Loads the drafts. `last_open` is the one this window had open before it was loaded again; otherwise the job is opened that
/// the page carries, if it is a saved copy with one.
pub fn load(shelf: &dyn Shelf, last_open: Option<DraftId>, copy: Option<&str>) -> Found {
    let first = || {
        let id = demos::ids().next().unwrap_or_default();
        Named::new(words::demo(id), demos::first())
    };
    let (keeper, mut book, mut aside) = Keeper::load(shelf, last_open, first);
    match copy.map(|text| (text, carried::read(text))) {
        Some((_, Ok(named))) if last_open.is_none() => {
            let draft = demo::complete((*named.draft).clone()).into();
            carried::join(&mut book, Named { draft, ..named }, words::from_copy);
        }
        Some((text, Err(why))) => aside.push(Aside {
            text: text.to_owned(),
            why,
        }),
        _ => {}
    }
    Found {
        keeper,
        book,
        aside,
    }
}
