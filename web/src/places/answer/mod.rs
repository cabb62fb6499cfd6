//! The answer as an instruction: what to do now is the largest thing on the page.

mod bath;
mod class;
mod course;
mod density;
mod first;
mod head;
mod limits;
mod meter;
mod outcome;
mod series;
mod sessions;
mod text;
mod turns;
mod wall;

pub use bath::bath;
pub use class::class;
pub use course::course;
pub use density::density;
pub use first::first;
pub use head::head;
pub use limits::{Limits, cautions, groups, problems, said as limits};
pub use meter::meter;
pub use series::series;
pub use sessions::{sessions, stretches};
pub use wall::wall;

use crate::state::units::Units;
use crate::words::{self, number};
use planner::answer::{Answer, Moment, PieceAnswer, Setting, StepAnswer};
use planner::job::{Job, Start, Supply};
use planner::{FieldPath, Maybe};
use quantity::print::Mark;
use quantity::{Current, Quantity, Range, Thickness};
use std::rc::Rc;

/// What the answer's views need beside it.
#[derive(Clone)]
pub struct Shown {
    /// The answer.
    pub answer: Rc<Answer>,
    /// Some entry cannot be read and its last good one stands in.
    pub stands_in: bool,
    /// The supply's display step.
    pub display: Option<Current>,
    /// When the job starts, and when its night is.
    pub start: Option<Start>,
    /// What the piece is made of, for the drawing.
    pub core: &'static str,
    /// What the pieces are called, in the answer's order.
    pub names: Vec<String>,
    /// The solution of each step, in words, by the step's id.
    pub baths: Vec<(String, String)>,
    /// How numbers are printed: the same answer in other units is another text.
    pub printed: (Units, Mark),
}

/// An answer is made once for a job: another one is another answer.
impl PartialEq for Shown {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.answer, &other.answer)
            && self.stands_in == other.stands_in
            && self.display == other.display
            && self.start == other.start
            && self.core == other.core
            && self.names == other.names
            && self.baths == other.baths
            && self.printed == other.printed
    }
}

impl Shown {
    fn now(&self) -> Option<&Setting> {
        self.answer.steps.first()?.current.known()
    }

    fn current(&self, value: Current) -> String {
        number::current(value, self.display)
    }

    /// Whether pieces must be told apart.
    fn several(&self) -> bool {
        self.answer.pieces.len() > 1
    }

    /// What piece `n` is called.
    fn name(&self, n: usize) -> String {
        self.names.get(n).cloned().unwrap_or_default()
    }

    /// What the piece at an address is called, where there are several.
    fn piece_at(&self, at: &FieldPath) -> Option<String> {
        let pieces = &self.answer.pieces;
        let of = |p: &PieceAnswer| at.within(FieldPath::new("pieces").child(&p.id).as_str());
        let n = pieces.iter().position(of).filter(|_| self.several())?;
        Some(self.name(n))
    }

    /// The moment a step ends, on the wall clock where it is known.
    fn moment(&self, step: &StepAnswer) -> Option<String> {
        self.clock(step.ends.known())
    }

    fn clock(&self, moment: Option<&Moment>) -> Option<String> {
        let moment = moment?;
        Some(match (&moment.local, &self.start) {
            (Some(local), Some(start)) => number::moment(local, &start.local),
            _ => number::time(moment.after),
        })
    }

    /// The bath a step runs in, in words.
    fn bath_of(&self, step: &str) -> Option<&str> {
        let found = self.baths.iter().find(|(id, _)| id == step);
        found.map(|(_, bath)| bath.as_str())
    }

    /// Current, time and thickness in a line, for the strip and for those who listen.
    pub fn in_a_line(&self) -> Vec<String> {
        self.figures().into_iter().flatten().collect()
    }

    /// What is set, the time and the thickness.
    pub fn figures(&self) -> [Option<String>; 3] {
        let mut set = None;
        let sets: Vec<(String, &str)> = self
            .answer
            .steps
            .iter()
            .filter_map(|s| {
                s.current
                    .known()
                    .map(|c| number::current_parts(c.set, self.display))
            })
            .collect();
        if let Some((_, unit)) = sets.last() {
            // The unit once, at the end, where all share it.
            let shared = sets.iter().all(|(_, u)| u == unit);
            let one = |(n, u): &(String, &str)| {
                if shared {
                    n.clone()
                } else {
                    format!("{n}\u{a0}{u}")
                }
            };
            let joined = sets.iter().map(one).collect::<Vec<_>>().join(" →\u{a0}");
            set = Some(if shared {
                format!("{joined}\u{a0}{unit}")
            } else {
                joined
            });
        }
        let time = likely(&self.answer.time, number::time);
        [set, time, self.thickness()]
    }

    /// From the least to the most that all pieces land between.
    pub fn range(&self) -> Option<String> {
        let ends = |of: fn(&Range<Thickness>) -> Thickness| {
            let pieces = self.answer.pieces.iter();
            pieces.filter_map(move |p| ranged(p).map(of))
        };
        let low = ends(|r| r.low).reduce(|a, b| if b.si() < a.si() { b } else { a })?;
        let high = ends(|r| r.high).reduce(|a, b| if b.si() > a.si() { b } else { a })?;
        let two = |t| number::micrometres(t, 2);
        let unit = number::thickness_unit();
        Some([&two(low), "–", &two(high), "\u{a0}", unit].concat())
    }

    /// The thickness or depth of all pieces: one, or from the least to the most.
    fn thickness(&self) -> Option<String> {
        let all = || self.answer.pieces.iter().filter_map(reached);
        let least = all().reduce(|a, b| if b.si() < a.si() { b } else { a })?;
        let most = all().reduce(|a, b| if b.si() > a.si() { b } else { a })?;
        let most_said = number::thickness(most);
        Some(if number::thickness(least) == most_said {
            most_said
        } else {
            format!("{}–{most_said}", number::micrometres(least, 3))
        })
    }
}

/// The mean layer of a piece, or the depth of its etch.
fn reached(piece: &PieceAnswer) -> Option<Thickness> {
    ranged(piece).map(|r| r.likely)
}

fn ranged(piece: &PieceAnswer) -> Option<&Range<Thickness>> {
    match &piece.etched {
        Some(etched) => &etched.depth,
        None => &piece.mean,
    }
    .known()
}

/// The step of the supply's display.
pub fn display_step(job: &Job) -> Option<Current> {
    match &job.supply {
        Some(Supply::ConstantCurrent(bench)) => bench.display_step,
        _ => None,
    }
}

/// A likely value in words.
fn likely<Q: Quantity>(maybe: &Maybe<Range<Q>>, say: impl Fn(Q) -> String) -> Option<String> {
    maybe.known().map(|r| say(r.likely))
}

/// Why a value is absent, in words; nothing for one that is there.
fn absence_of<T>(maybe: &Maybe<T>) -> String {
    match maybe {
        Maybe::Absent(absence) => words::notices::absence(absence),
        Maybe::Known(_) => String::new(),
    }
}
