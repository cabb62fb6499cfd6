//! The draft and the ways to change it, as every question needs them.

use crate::parts::NumberField;
use crate::state::units::Units;
use crate::state::{Action, State, at, entries, pieces};
use crate::words::{self, number};
use planner::answer::{InputUsed, Origin};
use planner::{Answer, Problem};
use std::rc::Rc;
use yew::prelude::*;

/// The draft and the ways to change it, handed to every question.
#[derive(Clone, PartialEq)]
pub struct Ask {
    /// What was typed and what can be taken back.
    pub state: Rc<State>,
    /// What the person does.
    pub act: Callback<Action>,
    /// Problems of the job as a whole that belong to a field.
    pub problems: Rc<Vec<Problem>>,
    /// The answer, for what stands in an empty field: the catalogue's value.
    pub answer: Rc<Answer>,
    /// The piece that is being described: addresses of the first piece mean this one.
    pub piece: AttrValue,
    /// The layer that is being described: addresses of the growing step and its bath mean this one's.
    pub step: AttrValue,
}

impl Ask {
    /// An address of the piece and the layer that are being described.
    pub fn here(&self, address: &str) -> String {
        at::in_step(&at::of(address, &self.piece), &self.step)
    }

    /// The same for another layer.
    pub fn at_step(&self, step: &str) -> Self {
        Self {
            step: AttrValue::from(step.to_owned()),
            ..self.clone()
        }
    }

    /// The same for another piece.
    pub fn of(&self, piece: &str) -> Self {
        Self {
            piece: AttrValue::from(piece.to_owned()),
            ..self.clone()
        }
    }

    /// What bare numbers mean.
    pub fn units(&self) -> Units {
        Units::of(&self.state.draft)
    }

    /// The text at an address.
    pub fn text(&self, address: &str) -> AttrValue {
        AttrValue::from(self.state.draft.text(&self.here(address)).to_owned())
    }

    /// What a field was last read as, for a sentence.
    pub fn shown(&self, address: &str) -> String {
        let draft = &self.state.draft;
        let here = &self.here(address);
        let text = draft.text(here);
        let echo = |text: &str| {
            entries::read_in(self.units(), here, text)
                .and_then(Result::ok)
                .map(|e| e.text)
        };
        echo(text)
            .or_else(|| {
                draft
                    .good(here)
                    .filter(|_| !text.trim().is_empty())
                    .and_then(echo)
            })
            .unwrap_or_else(|| words::empty_field(address).to_owned())
    }

    /// The word picked there for the present process.
    pub fn scoped(&self, address: &str) -> AttrValue {
        AttrValue::from(self.state.draft.scoped(&self.here(address)).to_owned())
    }

    /// Picks a word for the present process.
    pub fn pick_scoped(&self, address: &str) -> Callback<String> {
        let address = self.state.draft.scope(&self.here(address));
        self.act
            .reform(move |word| Action::Picked(address.clone(), word))
    }

    /// What the piece is called.
    pub fn name(&self) -> String {
        let one = std::iter::once(self.piece.as_str());
        pieces::names(&self.state.draft, one).concat()
    }

    /// Picks a word at an address.
    pub fn pick(&self, address: &str) -> Callback<String> {
        let address = self.here(address);
        self.act
            .reform(move |word| Action::Picked(address.clone(), word))
    }

    /// What the answer took for an input that nothing was typed for.
    fn usual(&self, address: &str) -> Option<&InputUsed> {
        let used = self.answer.inputs.iter();
        used.filter(|i| matches!(i.origin, Origin::Catalogue(_)))
            .find(|i| i.at.as_str() == address)
    }

    /// A field for a few words of the person's own.
    pub fn name_field(&self, address: &str, empty: &str) -> Html {
        self.any_field(address, true, empty.to_owned())
    }

    /// A number field.
    pub fn field(&self, address: &str) -> Html {
        let here = self.here(address);
        let empty = match self.usual(&here) {
            Some(used) => number::bare(
                used.value,
                entries::declared(&here).map_or("", |d| d.unit()),
            ),
            None => words::empty_field(&here).to_owned(),
        };
        self.any_field(address, false, empty)
    }

    fn any_field(&self, address: &str, letters: bool, empty: String) -> Html {
        let address = &self.here(address);
        let id = AttrValue::from(address.clone());
        let typed = address.clone();
        let text = self.state.draft.text(address);
        let label = words::field(address);
        let read = entries::read_in(self.units(), address, text);
        let unit = entries::declared(address).map_or("", |d| self.units().symbol(d.unit()));
        let steps = entries::is_count(address).then(|| {
            let address = address.clone();
            self.act
                .reform(move |up| Action::Stepped(address.clone(), up))
        });
        let (echo, own) = match read {
            Some(Ok(echo)) => (echo.show.then(|| words::read_as(&echo.text)), None),
            Some(Err(problem)) => (None, Some(words::problem(&problem, label))),
            None => (None, None),
        };
        let problem = own.or_else(|| {
            self.problems
                .iter()
                .find(|p| p.field.as_str() == address.as_str())
                .map(|p| words::problem(p, label))
        });
        html! {
            <NumberField key={address.clone()} {id} {label} {unit} text={text.to_owned()} {empty} {letters} {steps}
                echo={echo.map(AttrValue::from)} problem={problem.map(AttrValue::from)}
                ontext={self.act.reform(move |text| Action::Typed(typed.clone(), text))}
                onleave={self.act.reform(|()| Action::Left)} />
        }
    }
}
