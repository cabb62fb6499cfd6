//! What was typed, and what the person did to it. No element of the page is known here: everything is tested natively.

pub mod at;
pub mod demo;
pub mod demos;
pub mod drafts;
pub mod entries;
pub mod job;
pub mod kinds;
pub mod layers;
pub mod measured;
pub mod pieces;
pub mod sent;
pub mod units;
pub mod ways;

pub use notebook::draft::{self, Draft};

use drafts::{Act, Drafts};
use notebook::{Book, Named};
use std::rc::Rc;
use units::Units;
use yew::Reducible;

/// The open draft, all drafts and the way back.
#[derive(Clone, Debug, PartialEq)]
pub struct State {
    /// The open one as it stands.
    pub draft: Draft,
    /// All of them, the open one among them as it stands, and the way back.
    drafts: Drafts,
    /// The field being typed in: its keystrokes are one step back.
    typing: Option<String>,
    /// A way out was just tried.
    tried: bool,
}

/// What a person does.
#[derive(Clone, Debug, PartialEq)]
pub enum Action {
    /// Typed in a field: address and the whole text.
    Typed(String, String),
    /// Picked a word of a choice: address and word.
    Picked(String, String),
    /// Pressed minus or plus beside a count: address, and which way.
    Stepped(String, bool),
    /// One more piece on the bar.
    PieceAdded,
    /// The same piece again.
    PieceRepeated(String),
    /// A piece taken off.
    PieceRemoved(String),
    /// Another layer after the last.
    LayerAdded,
    /// A layer taken out.
    LayerRemoved(String),
    /// Wrote several fields at once, as a measurement does: address and text of each.
    Wrote(Vec<(String, String)>),
    /// Tried a way out: the same.
    Tried(Vec<(String, String)>),
    /// Left a field.
    Left,
    /// Did something to drafts as a whole.
    Drafts(Act),
    /// Took the last thing back.
    Undid,
}

impl State {
    /// Begins with one draft.
    pub fn new(draft: Draft) -> Self {
        Self::of(Book::new(Named::new("", draft)))
    }

    /// Begins with a book.
    pub fn of(book: Book) -> Self {
        let mut drafts = Drafts::new(book);
        let draft = drafts.open();
        drafts.keep(&draft);
        Self {
            draft,
            drafts,
            typing: None,
            tried: false,
        }
    }

    /// All drafts.
    pub fn book(&self) -> &Book {
        &self.drafts.book
    }

    /// Whether something can be taken back.
    pub fn can_undo(&self) -> bool {
        self.drafts.can_undo()
    }

    /// Whether the last thing done was to try a way out.
    pub fn has_tried(&self) -> bool {
        self.tried && self.can_undo()
    }

    fn remember(&mut self) {
        self.drafts.remember();
    }

    /// Another kind of change than typing begins.
    fn changed(&mut self) {
        self.typing = None;
        self.remember();
    }

    fn put(&mut self, address: &str, text: &str) {
        let read = entries::read_in(Units::of(&self.draft), address, text);
        self.draft.put(address, text, !matches!(read, Some(Err(_))));
    }

    fn after(mut self, action: Action) -> Self {
        self.tried = match &action {
            Action::Tried(_) => true,
            // Another window's doings, and leaving a field, change nothing of what was tried.
            Action::Left | Action::Drafts(Act::Found(_)) => self.tried,
            _ => false,
        };
        match action {
            Action::Typed(at, text) => {
                if self.typing.as_deref() != Some(at.as_str()) {
                    self.remember();
                    self.typing = Some(at.clone());
                }
                self.put(&at, &text);
            }
            Action::Picked(address, word) => {
                self.typing = None;
                if self.draft.text(&address) != word {
                    self.remember();
                    if address == at::UNITS {
                        units::prefer(&mut self.draft, &word);
                    } else {
                        self.draft.put(&address, &word, true);
                    }
                    kinds::fill_in_all(&mut self.draft);
                }
            }
            Action::Stepped(address, up) => {
                let count = entries::count(&address, self.draft.text(&address));
                let next = count.map(|n| if up { n + 1 } else { n.saturating_sub(1) });
                let text = next.map(|n| n.to_string()).unwrap_or_default();
                if matches!(
                    entries::read_in(Units::Metric, &address, &text),
                    Some(Ok(_))
                ) {
                    // A row of taps is one step back, as a row of keystrokes is.
                    if self.typing.as_deref() != Some(address.as_str()) {
                        self.remember();
                        self.typing = Some(address.clone());
                    }
                    self.draft.put(&address, &text, true);
                }
            }
            Action::PieceAdded => {
                if pieces::ids(&self.draft).len() < pieces::MOST {
                    self.changed();
                    pieces::add(&mut self.draft);
                }
            }
            Action::PieceRepeated(piece) => {
                if pieces::ids(&self.draft).len() < pieces::MOST {
                    self.changed();
                    pieces::repeat(&mut self.draft, &piece);
                }
            }
            Action::PieceRemoved(piece) => {
                self.changed();
                pieces::remove(&mut self.draft, &piece);
            }
            Action::LayerAdded => {
                if layers::ids(&self.draft).len() < layers::MOST {
                    self.changed();
                    layers::add(&mut self.draft);
                }
            }
            Action::LayerRemoved(step) => {
                self.changed();
                layers::remove(&mut self.draft, &step);
            }
            Action::Wrote(texts) | Action::Tried(texts) => {
                self.changed();
                for (at, text) in texts {
                    self.put(&at, &text);
                }
                kinds::fill_in_all(&mut self.draft);
            }
            Action::Left => self.typing = None,
            Action::Drafts(act) => drafts::act(&mut self, act),
            Action::Undid => {
                self.typing = None;
                self.drafts.undo();
                self.draft = self.drafts.open();
            }
        }
        self.drafts.keep(&self.draft);
        self
    }
}

impl Reducible for State {
    type Action = Action;

    fn reduce(self: Rc<Self>, action: Action) -> Rc<Self> {
        Rc::new((*self).clone().after(action))
    }
}
