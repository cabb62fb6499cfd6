//! What was typed, and what the person did to it. No element of the page is known here: everything is tested natively.

pub mod demo;
pub mod draft;
pub mod entries;
pub mod job;
pub mod kinds;

pub use draft::Draft;
pub use entries::at;

use std::rc::Rc;
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

    fn after(mut self, action: Action) -> Self {
        match action {
            Action::Typed(at, text) => {
                if self.typing.as_deref() != Some(at.as_str()) {
                    self.remember();
                    self.typing = Some(at.clone());
                }
                let readable = !matches!(entries::read(&at, &text), Some(Err(_)));
                self.draft.put(&at, &text, readable);
            }
            Action::Picked(address, word) => {
                self.typing = None;
                if self.draft.text(&address) != word {
                    self.remember();
                    self.draft.put(&address, &word, true);
                    let shape = self.draft.scoped(at::SHAPE).to_owned();
                    kinds::fill_in(&mut self.draft, &shape);
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
