//! Several drafts: which is open, what is done to them as a whole, and the way back. Nothing here writes over a draft.

use super::{State, demo, demos};
use crate::words::drafts as words;
use notebook::{Book, Change, Draft, DraftId, Named};

/// How many steps back there are, over all drafts.
const MOST_BACK: usize = 50;

/// What a person does to drafts as a whole, or another window did.
#[derive(Clone, Debug, PartialEq)]
pub enum Act {
    /// Opened one.
    Opened(DraftId),
    /// Asked for a new one: the example, with their own supply.
    Began,
    /// Asked for the open one once more.
    Copied,
    /// Gave the open one another name.
    Renamed(String),
    /// Took one out.
    Removed(DraftId),
    /// Took in one that was sent.
    Took(Named),
    /// Started from an example, by its id.
    StartedFrom(String),
    /// Another window changed some.
    Found(Vec<Change>),
}

/// A step back.
#[derive(Clone, Debug, PartialEq)]
struct Step {
    /// Whose.
    id: DraftId,
    /// What it was then.
    named: Named,
    /// Whether it was made then: going back takes it out, unless something was done to it since that has no step of its own.
    made: bool,
    /// Which one was open.
    open: DraftId,
}

/// The drafts, and the way back.
#[derive(Clone, Debug, PartialEq)]
pub struct Drafts {
    /// All of them.
    pub book: Book,
    back: Vec<Step>,
}

impl Drafts {
    /// Begins with a book.
    pub fn new(book: Book) -> Self {
        Self {
            book,
            back: Vec::new(),
        }
    }

    /// Remembers the open draft as it stands in the book.
    pub fn remember(&mut self) {
        self.remember_one(self.book.open_id(), false);
    }

    fn remember_one(&mut self, id: DraftId, made: bool) {
        let Some(named) = self.book.get(id).cloned() else {
            return;
        };
        let open = self.book.open_id();
        self.back.push(Step {
            id,
            named,
            made,
            open,
        });
        if self.back.len() > MOST_BACK {
            self.back.remove(0);
        }
    }

    /// Puts the open draft into the book, where it changed.
    pub fn keep(&mut self, draft: &Draft) {
        if let Some(open) = self.book.open().filter(|open| *open.draft != *draft) {
            let named = Named {
                draft: draft.clone().into(),
                ..open.clone()
            };
            self.book.put(self.book.open_id(), named);
        }
    }

    /// The open draft, every field in it.
    pub fn open(&self) -> Draft {
        let open = self.book.open().map(|open| (*open.draft).clone());
        open.map_or_else(demo::demo, demo::complete)
    }

    /// The newest step that concerns what is open, or brings back what is not there any more.
    fn step(&self) -> Option<usize> {
        let concerns = |step: &Step| match self.book.get(step.id) {
            Some(_) => step.id == self.book.open_id(),
            None => !step.made,
        };
        self.back.iter().rposition(concerns)
    }

    /// Whether something can be taken back.
    pub fn can_undo(&self) -> bool {
        self.step().is_some()
    }

    /// Takes the last thing back.
    pub fn undo(&mut self) {
        let Some(at) = self.step() else { return };
        let step = self.back.remove(at);
        if step.made {
            self.book.turn_to(step.open);
            if self.book.get(step.id) == Some(&step.named) {
                self.book.remove(step.id);
            }
            return;
        }
        self.book.put(step.id, step.named);
        if step.open == step.id {
            self.book.turn_to(step.id);
        }
    }

    /// Adds a draft and opens it.
    fn begin(&mut self, named: Named) {
        let id = self.book.add(Named {
            draft: demo::complete((*named.draft).clone()).into(),
            ..named
        });
        self.remember_one(id, true);
        self.book.turn_to(id);
    }

    fn found(&mut self, change: Change) {
        match change {
            Change::Theirs(id, named) => self.book.put(id, named),
            Change::Gone(id) => {
                self.book.remove(id);
            }
            Change::Parted { from, to, theirs } => {
                if let Some(mine) = self.book.get(from).cloned() {
                    let name = words::other_window(&words::name(from, &mine.name));
                    self.book.put(to, Named { name, ..mine });
                }
                // The way back goes with what it leads back from.
                for step in &mut self.back {
                    for id in [&mut step.id, &mut step.open] {
                        if *id == from {
                            *id = to;
                        }
                    }
                }
                if self.book.open_id() == from {
                    self.book.turn_to(to);
                }
                match theirs {
                    Some(theirs) => self.book.put(from, theirs),
                    None => {
                        self.book.remove(from);
                    }
                }
            }
        }
    }
}

/// Does it.
pub fn act(state: &mut State, act: Act) {
    let typing = state.typing.take();
    let drafts = &mut state.drafts;
    match act {
        Act::Opened(id) => drafts.book.turn_to(id),
        Act::Began => {
            let own = |at: &str| at.starts_with("supply/") || at == crate::state::at::PLACE;
            let mut draft = demo::demo();
            for (at, text) in state.draft.texts.iter().filter(|(at, _)| own(at)) {
                draft.texts.insert(at.clone(), text.clone());
            }
            for (at, text) in state.draft.good.iter().filter(|(at, _)| own(at)) {
                draft.good.insert(at.clone(), text.clone());
            }
            drafts.begin(Named::new("", draft));
        }
        Act::Copied => {
            if let Some(open) = drafts.book.open().cloned() {
                let name = words::again(&words::name(drafts.book.open_id(), &open.name));
                drafts.begin(Named {
                    name,
                    copy: None,
                    ..open
                });
            }
        }
        Act::Renamed(name) => {
            // As with a field: all keystrokes are one step.
            if typing.as_deref() != Some(RENAMING) {
                drafts.remember();
            }
            state.typing = Some(RENAMING.to_owned());
            if let Some(open) = drafts.book.open().cloned() {
                drafts
                    .book
                    .put(drafts.book.open_id(), Named { name, ..open });
            }
        }
        Act::Removed(id) => {
            if drafts.book.count() > 1 {
                drafts.remember_one(id, false);
                drafts.book.remove(id);
            }
        }
        Act::Took(named) => drafts.begin(named),
        Act::StartedFrom(id) => {
            if let Some(draft) = demos::of(&id) {
                drafts.begin(Named::new(words::demo(&id), draft));
            }
        }
        Act::Found(changes) => {
            // A row of changes that another window typed is one step back.
            let open = drafts.book.open_id();
            let mine = |c: &Change| matches!(c, Change::Theirs(id, _) if *id == open);
            state.typing = typing;
            if changes.iter().any(mine) && state.typing.as_deref() != Some(ELSEWHERE) {
                drafts.remember();
                state.typing = Some(ELSEWHERE.to_owned());
            }
            for change in changes {
                drafts.found(change);
            }
        }
    }
    state.draft = state.drafts.open();
}

/// No field has these addresses.
const RENAMING: &str = "(name)";
const ELSEWHERE: &str = "(elsewhere)";
