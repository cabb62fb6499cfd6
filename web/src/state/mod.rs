//! What was typed, and what the person did to it. No element of the page is known here: everything is tested natively.

pub mod at;
pub mod demo;
pub mod draft;
pub mod entries;
pub mod job;
pub mod kinds;
pub mod measured;
pub mod pieces;
pub mod units;

pub use draft::Draft;

use std::rc::Rc;
use units::Units;
use yew::Reducible;

/// How many steps back there are.
const MOST_BACK: usize = 50;

/// The draft and the way back.
#[derive(Clone, Debug, PartialEq)]
pub struct State {
    /// As it stands.
    pub draft: Draft,
    /// Earlier drafts, newest last.
    back: Vec<Draft>,
    /// The field being typed in: its keystrokes are one step back.
    typing: Option<String>,
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
    /// Wrote several fields at once, as a measurement does: address and text of each.
    Wrote(Vec<(String, String)>),
    /// Left a field.
    Left,
    /// Asked for the example.
    StartedFromExample,
    /// Took the last thing back.
    Undid,
}

impl State {
    /// Begins with a draft.
    pub fn new(draft: Draft) -> Self {
        Self {
            draft,
            back: Vec::new(),
            typing: None,
        }
    }

    /// Whether something can be taken back.
    pub fn can_undo(&self) -> bool {
        !self.back.is_empty()
    }

    fn remember(&mut self) {
        self.back.push(self.draft.clone());
        if self.back.len() > MOST_BACK {
            self.back.remove(0);
        }
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
            Action::Wrote(texts) => {
                self.changed();
                for (at, text) in texts {
                    self.put(&at, &text);
                }
            }
            Action::Left => self.typing = None,
            Action::StartedFromExample => {
                self.typing = None;
                let example = demo::demo();
                if self.draft != example {
                    self.remember();
                    self.draft = example;
                }
            }
            Action::Undid => {
                self.typing = None;
                if let Some(earlier) = self.back.pop() {
                    self.draft = earlier;
                }
            }
        }
        self
    }
}

impl Reducible for State {
    type Action = Action;

    fn reduce(self: Rc<Self>, action: Action) -> Rc<Self> {
        Rc::new((*self).clone().after(action))
    }
}
