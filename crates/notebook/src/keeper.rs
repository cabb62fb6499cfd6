//! Keeps a book on a shelf that other windows write to as well.
//!
//! One entry for each draft, `ionwright.draft.d1`, and a line about all, `ionwright.drafts`. Before a draft is written, the entry is
//! read again and compared with what this window last read or wrote there: what somebody else wrote is never overwritten.

use crate::book::{Book, DraftId};
use crate::draft::{Draft, Unread};
use crate::named::Named;
use crate::shelf::{Shelf, ShelfProblem, mark};
use std::collections::{BTreeMap, BTreeSet};

/// Every page opened from a file shares one shelf with all others: the prefix keeps ours apart.
const ENTRY: &str = "ionwright.draft.";
/// Format, first free id, the draft opened last, the mark of the single draft taken over: `1 d4 d2 85944171f73967e8`.
const INDEX: &str = "ionwright.drafts";
const INDEX_FORMAT: &str = "1";
/// The one draft of an earlier edition. It is taken over and left where it is, since that edition may still be opened.
const SINGLE: &str = "ionwright.draft";
/// Where that one is put when it cannot be read.
const ASIDE: &str = "ionwright.draft.aside";

/// What this window last read or wrote.
#[derive(Clone, Debug)]
struct Seen {
    named: Named,
    text: String,
}

/// Keeps a book on a shelf.
#[derive(Clone, Debug, Default)]
pub struct Keeper {
    seen: BTreeMap<DraftId, Seen>,
    /// The mark of the single draft that was taken over.
    single: String,
}

/// A text that could not be read. It stays on the shelf.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Aside {
    /// The text.
    pub text: String,
    /// Why.
    pub why: Unread,
}

/// What another window did, to be done to this one's book.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Change {
    /// A draft is new or was changed there, and not here: it is now so.
    Theirs(DraftId, Named),
    /// A draft was taken out there, and neither changed nor open here.
    Gone(DraftId),
    /// A draft was changed here and there: this window's stands under a new id, theirs under the old.
    Parted {
        /// The old id.
        from: DraftId,
        /// Where this window's is now.
        to: DraftId,
        /// What stands under the old id; none where it cannot be read, and then that id is out of the book.
        theirs: Option<Named>,
    },
}

/// How keeping went.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Kept {
    /// What is to be done to the book.
    pub changes: Vec<Change>,
    /// Whether everything is on the shelf.
    pub stored: Result<(), ShelfProblem>,
}

#[derive(Default)]
struct Index {
    next: Option<DraftId>,
    open: Option<DraftId>,
    single: String,
}

impl Index {
    /// A line that cannot be read says nothing: the drafts are found by their entries.
    fn read(shelf: &dyn Shelf) -> Self {
        let text = shelf.load(INDEX).unwrap_or_default();
        let mut words = text.split_whitespace();
        if words.next() != Some(INDEX_FORMAT) {
            return Self::default();
        }
        Self {
            next: words.next().and_then(DraftId::read),
            open: words.next().and_then(DraftId::read),
            single: words.next().unwrap_or_default().to_owned(),
        }
    }
}

fn entry(id: DraftId) -> String {
    let mut name = ENTRY.to_owned();
    name.push_str(&id.to_string());
    name
}

/// The ids that have an entry on the shelf.
fn ids(shelf: &dyn Shelf) -> BTreeSet<DraftId> {
    let names = shelf.names();
    names
        .iter()
        .filter_map(|name| DraftId::read(name.strip_prefix(ENTRY)?))
        .collect()
}

impl Keeper {
    /// The book on the shelf; where there is none, one with `first`. `last_open` is the draft this window had open before it
    /// was loaded again.
    pub fn load(
        shelf: &dyn Shelf,
        last_open: Option<DraftId>,
        first: impl FnOnce() -> Named,
    ) -> (Self, Book, Vec<Aside>) {
        let index = Index::read(shelf);
        let mut keeper = Keeper {
            seen: BTreeMap::new(),
            single: index.single.clone(),
        };
        let mut aside = Vec::new();
        let mut next = index.next.unwrap_or(DraftId::FIRST);
        for id in ids(shelf) {
            // An entry that cannot be read keeps its id too: nothing is ever written over it.
            next = next.max(id.next());
            let Some(text) = shelf.load(&entry(id)) else {
                continue;
            };
            match Named::from_text(&text) {
                Ok(named) => {
                    keeper.seen.insert(id, Seen { named, text });
                }
                Err(why) => aside.push(Aside { text, why }),
            }
        }
        let mut drafts: Vec<(DraftId, Named)> = keeper
            .seen
            .iter()
            .map(|(id, seen)| (*id, seen.named.clone()))
            .collect();
        if let Some(named) = keeper.take_over(shelf, &mut aside) {
            drafts.push((next, named));
        }
        let mut drafts = drafts.into_iter();
        let mut book = match drafts.next() {
            Some((id, named)) => Book::beginning_at(id, named),
            None => Book::beginning_at(next, first()),
        };
        for (id, named) in drafts {
            book.put(id, named);
            book.turn_to(id);
        }
        book.reserve(next);
        for id in [index.open, last_open].into_iter().flatten() {
            book.turn_to(id);
        }
        (keeper, book, aside)
    }

    /// The single draft of an earlier edition, where it was not taken over before.
    fn take_over(&mut self, shelf: &dyn Shelf, aside: &mut Vec<Aside>) -> Option<Named> {
        let text = shelf.load(SINGLE)?;
        let found = mark(&text);
        if found == self.single {
            return None;
        }
        self.single = found;
        match Draft::from_text(&text) {
            Ok(draft) => Some(Named::new("", draft)),
            Err(why) => {
                // The first text set aside stays: it is the one with the person's work in it.
                if shelf.load(ASIDE).is_none() {
                    let _ = shelf.save(ASIDE, &text);
                }
                aside.push(Aside { text, why });
                None
            }
        }
    }

    /// Writes what changed in this window.
    pub fn keep(&mut self, shelf: &dyn Shelf, book: &Book) -> Kept {
        let mine: BTreeSet<DraftId> = book.iter().map(|(id, _)| id).collect();
        let gone = self.seen.keys().filter(|id| !mine.contains(id)).copied();
        let changed = book
            .iter()
            .filter(|(id, named)| self.seen.get(id).map(|s| &s.named) != Some(named))
            .map(|(id, _)| id);
        let ids = gone.chain(changed).collect();
        let (mut kept, next) = self.settle(shelf, book, ids);
        if kept.stored.is_ok() {
            kept.stored = self.write_index(shelf, book, next);
        }
        kept
    }

    /// Looks for what changed elsewhere. The line about all stays as it is: two windows that answer each other with it would never
    /// come to an end.
    pub fn look(&mut self, shelf: &dyn Shelf, book: &Book) -> Kept {
        let mut all = ids(shelf);
        all.extend(book.iter().map(|(id, _)| id));
        all.extend(self.seen.keys());
        self.settle(shelf, book, all).0
    }

    fn settle(
        &mut self,
        shelf: &dyn Shelf,
        book: &Book,
        ids: BTreeSet<DraftId>,
    ) -> (Kept, DraftId) {
        let mut kept = Kept {
            changes: Vec::new(),
            stored: Ok(()),
        };
        let mut next = book.next_id();
        for id in ids {
            if let Err(problem) = self.settle_one(shelf, book, id, &mut next, &mut kept.changes) {
                kept.stored = Err(problem);
            }
        }
        (kept, next)
    }

    fn settle_one(
        &mut self,
        shelf: &dyn Shelf,
        book: &Book,
        id: DraftId,
        next: &mut DraftId,
        changes: &mut Vec<Change>,
    ) -> Result<(), ShelfProblem> {
        let mine = book.get(id);
        let seen = self.seen.get(&id);
        let changed_here = mine != seen.map(|s| &s.named);
        let stored = shelf.load(&entry(id));
        if stored.as_deref() == seen.map(|s| s.text.as_str()) {
            return match mine {
                Some(named) if changed_here => self.write(shelf, id, named),
                None if changed_here => {
                    shelf.remove(&entry(id));
                    self.seen.remove(&id);
                    Ok(())
                }
                _ => Ok(()),
            };
        }
        let theirs = stored.map(|text| Named::from_text(&text).map(|named| Seen { named, text }));
        match (theirs, mine) {
            // Taken out there. What was changed here since, or is in hand, stays.
            (None, Some(named)) if changed_here => self.write(shelf, id, named),
            (None, Some(_)) if id == book.open_id() => Ok(()),
            (None, _) => {
                self.seen.remove(&id);
                changes.extend(mine.map(|_| Change::Gone(id)));
                Ok(())
            }
            (Some(theirs), Some(named))
                if changed_here && theirs.as_ref().map(|t| &t.named) != Ok(named) =>
            {
                let to = free(shelf, next);
                self.write(shelf, to, named)?;
                let theirs = theirs.ok();
                changes.push(Change::Parted {
                    from: id,
                    to,
                    theirs: theirs.as_ref().map(|t| t.named.clone()),
                });
                match theirs {
                    Some(theirs) => self.seen.insert(id, theirs),
                    None => self.seen.remove(&id),
                };
                Ok(())
            }
            // What cannot be read is left alone.
            (Some(Err(_)), _) => Ok(()),
            (Some(Ok(theirs)), _) => {
                if mine != Some(&theirs.named) {
                    changes.push(Change::Theirs(id, theirs.named.clone()));
                }
                self.seen.insert(id, theirs);
                Ok(())
            }
        }
    }

    fn write(&mut self, shelf: &dyn Shelf, id: DraftId, named: &Named) -> Result<(), ShelfProblem> {
        let text = named.to_text();
        shelf.save(&entry(id), &text)?;
        let named = named.clone();
        self.seen.insert(id, Seen { named, text });
        Ok(())
    }

    fn write_index(
        &self,
        shelf: &dyn Shelf,
        book: &Book,
        next: DraftId,
    ) -> Result<(), ShelfProblem> {
        let index = Index::read(shelf);
        let next = index.next.map_or(next, |there| there.max(next));
        let mut text = INDEX_FORMAT.to_owned();
        for word in [&next.to_string(), &book.open_id().to_string(), &self.single] {
            text.push(' ');
            text.push_str(word);
        }
        let text = text.trim_end();
        if shelf.load(INDEX).as_deref() == Some(text) {
            return Ok(());
        }
        shelf.save(INDEX, text)
    }
}

/// The first id that no window has used so far.
fn free(shelf: &dyn Shelf, next: &mut DraftId) -> DraftId {
    let used = ids(shelf).last().map_or(DraftId::FIRST, |id| id.next());
    let there = Index::read(shelf).next.unwrap_or(DraftId::FIRST);
    let id = (*next).max(used).max(there);
    *next = id.next();
    id
}
