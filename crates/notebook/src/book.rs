//! Several drafts, one of them open.

use crate::named::Named;
use std::collections::BTreeMap;
use std::fmt;

/// The id of a draft: d1, d2, ... in order of making, never reused.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct DraftId(u32);

impl DraftId {
    /// Its number: 1 for d1.
    pub fn number(self) -> u32 {
        self.0
    }

    /// From `d12`; nothing else is an id.
    pub fn read(text: &str) -> Option<Self> {
        let digits = text.strip_prefix('d')?;
        let number: u32 = digits.parse().ok()?;
        // One id has one spelling.
        (number > 0 && number < u32::MAX && digits == number.to_string()).then_some(Self(number))
    }

    pub(crate) fn next(self) -> Self {
        Self(self.0.saturating_add(1))
    }

    pub(crate) const FIRST: DraftId = DraftId(1);
}

impl fmt::Display for DraftId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "d{}", self.0)
    }
}

/// The drafts. There is always one, and always one open.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Book {
    drafts: BTreeMap<DraftId, Named>,
    open: DraftId,
    next: DraftId,
}

impl Book {
    /// A book with one draft, under the first free id.
    pub fn new(first: Named) -> Self {
        Self::beginning_at(DraftId::FIRST, first)
    }

    pub(crate) fn beginning_at(id: DraftId, first: Named) -> Self {
        Self {
            drafts: BTreeMap::from([(id, first)]),
            open: id,
            next: id.next(),
        }
    }

    /// Which is open.
    pub fn open_id(&self) -> DraftId {
        self.open
    }

    /// The one that is open; absent never, in a book made by these functions.
    pub fn open(&self) -> Option<&Named> {
        self.drafts.get(&self.open)
    }

    /// The draft with this id.
    pub fn get(&self, id: DraftId) -> Option<&Named> {
        self.drafts.get(&id)
    }

    /// All of them, in order of making.
    pub fn iter(&self) -> impl DoubleEndedIterator<Item = (DraftId, &Named)> {
        self.drafts.iter().map(|(id, named)| (*id, named))
    }

    /// How many there are; at least one.
    pub fn count(&self) -> usize {
        self.drafts.len()
    }

    /// The first id that was never used.
    pub fn next_id(&self) -> DraftId {
        self.next
    }

    /// Opens a draft; an id that is not there changes nothing.
    pub fn turn_to(&mut self, id: DraftId) {
        if self.drafts.contains_key(&id) {
            self.open = id;
        }
    }

    /// Adds a draft under an id of its own. The open one stays open.
    pub fn add(&mut self, named: Named) -> DraftId {
        let id = self.next;
        self.put(id, named);
        id
    }

    /// Puts a draft at an id: a change, or one that comes back.
    pub fn put(&mut self, id: DraftId, named: Named) {
        self.drafts.insert(id, named);
        self.reserve(id.next());
    }

    /// Takes a draft out; the last one stays. Where it was the open one, the one before it is opened, or the first.
    pub fn remove(&mut self, id: DraftId) -> Option<Named> {
        if self.drafts.len() < 2 {
            return None;
        }
        let named = self.drafts.remove(&id)?;
        if self.open == id {
            let before = self.drafts.range(..id).next_back();
            let beside = before.or_else(|| self.drafts.iter().next());
            if let Some((beside, _)) = beside {
                self.open = *beside;
            }
        }
        Some(named)
    }

    /// Ids below this one are used.
    pub(crate) fn reserve(&mut self, next: DraftId) {
        self.next = self.next.max(next);
    }
}
