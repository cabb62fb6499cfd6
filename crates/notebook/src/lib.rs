//! What was written down: drafts with their names, the shelf they are kept on, a job as a short text, and the job that a saved
//! copy of the page carries.
//!
//! Nothing typed is ever lost: a text that cannot be read is set aside as it was, a draft that was changed elsewhere meanwhile is
//! kept beside one's own, and reading a job always makes a new draft.
//!
//! Does not: know what an address means or whether a text can be read as a number (the page says so), look at a clock, draw random
//! numbers, write a sentence for people.

pub mod book;
pub mod carried;
pub mod draft;
mod escape;
pub mod jobtext;
pub mod keeper;
pub mod named;
pub mod shelf;

pub use book::{Book, DraftId};
pub use draft::{Draft, Unread};
pub use keeper::{Aside, Change, Keeper, Kept};
pub use named::Named;
pub use shelf::{NoShelf, Shelf, ShelfProblem};
