//! The answer as an instruction: what to do now is the largest thing on the page.

use crate::parts::layer::{Layer, drawing};
use crate::parts::note::{Weight, note, octagon};
use crate::words::{self, number};
use planner::answer::{Answer, Etched, Limit, LimitKind, PieceAnswer, Setting, StepAnswer, When};
use planner::{Maybe, Problem};
use quantity::{Current, Quantity, Time};
use yew::prelude::*;

/// What the answer's views need beside it.
#[derive(Clone, PartialEq)]
pub struct Shown {
    /// The answer.
    pub answer: std::rc::Rc<Answer>,
    /// Some entry cannot be read and its last good one stands in.
    pub stands_in: bool,
    /// The supply's display step.
    pub display: Option<Current>,
    /// When the job starts.
    pub start: Option<String>,
    /// What the piece is made of, for the drawing.
    pub core: &'static str,
}

impl Shown {
    fn now(&self) -> Option<&Setting> {
        self.answer.steps.first()?.current.known()
    }

    fn current(&self, value: Current) -> String {
        number::current(value, self.display)
    }

    /// The moment a step ends, on the wall clock where it is known.
    fn moment(&self, step: &StepAnswer) -> Option<String> {
        let ends = step.ends.known()?;
        match (&ends.local, &self.start) {
            (Some(local), Some(start)) => Some(number::moment(local, start)),
            _ => Some(number::time(ends.after)),
        }
    }

    /// Current, time and thickness in a line, for the strip and for those who listen.
    pub fn in_a_line(&self) -> Vec<String> {
        let mut parts = Vec::new();
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
            let joined = sets
                .iter()
                .map(one)
                .collect::<Vec<_>>()
                .join("\u{a0}→\u{a0}");
            parts.push(if shared {
                format!("{joined}\u{a0}{unit}")
            } else {
                joined
            });
        }
        if let Some(time) = self.answer.time.known() {
            parts.push(number::time(time.likely));
        }
        if let Some(mean) = self.answer.pieces.first().and_then(|p| p.mean.known()) {
            parts.push(number::thickness(mean.likely));
        }
        parts
    }
}

impl Shown {
    /// The plan as plain lines: what to set, the turns, what comes of it, what holds it back, what to take care of.
    pub fn as_text(&self) -> Vec<String> {
        let mut lines = Vec::new();
        if let Some(setting) = self.now() {
            let ceiling = self.answer.steps.first().and_then(|s| s.ceiling.known());
            let ceiling = ceiling
                .map(|c| format!(", {} {} V", words::CEILING, number::tenth_volts(c.set)))
                .unwrap_or_default();
            lines.push(format!(
                "{}: {}{ceiling}",
                words::SET_NOW,
                self.current(setting.set)
            ));
        }
        for turn in self.turns() {
            let when = turn.when.map(|w| format!("{w} ")).unwrap_or_default();
            let more = turn.more.map(|m| format!(" ({m})")).unwrap_or_default();
            lines.push(format!("{when}{}: {}{more}", turn.words, turn.value));
        }
        if let Some(piece) = self.answer.pieces.first() {
            let depth = piece.etched.as_ref().and_then(|e| e.depth.known());
            match (depth, piece.mean.known()) {
                (Some(d), _) => lines.push(format!("{} deep", number::thickness(d.likely))),
                (None, Some(t)) => {
                    lines.push(format!("{} on average", number::thickness(t.likely)))
                }
                (None, None) => {}
            }
            if let (Some(t), Some(place)) = (piece.thinnest.known(), piece.thin_place.known()) {
                lines.push(format!(
                    "about {} {}",
                    number::thickness(t.likely),
                    words::thin_place(*place)
                ));
            }
        }
        for limit in &self.answer.limits {
            let (statement, then) = words::limit(&[limit]);
            lines.push(format!("{statement} {then}"));
        }
        for caution in &self.answer.cautions {
            lines.push(format!(
                "{}: {}",
                words::when(caution.when),
                words::caution(caution.kind)
            ));
        }
        lines.iter().map(|l| l.replace('\u{a0}', " ")).collect()
    }
}

/// The head of the page.
pub fn head(shown: &Shown) -> Html {
    let Some(setting) = shown.now() else {
        return nothing(shown);
    };
    let (figure, unit) = number::current_parts(setting.set, shown.display);
    let ceiling = shown.answer.steps.first().and_then(|s| s.ceiling.known());
    html! {
        <>
            if shown.stands_in {
                <p class="stands-in">{ words::LAST_GOOD }</p>
            }
            <div class="now">
                <p class="figure">
                    <span class="over">{ words::SET_NOW }</span>
                    <span class="number" id="set">{ figure }<span class="unit">{ "\u{a0}" }{ unit }</span></span>
                </p>
                if let Some(ceiling) = ceiling {
                    <p class="figure second">
                        <span class="over">{ words::CEILING }</span>
                        <span class="number">{ number::tenth_volts(ceiling.set) }<span class="unit">{ "\u{a0}V" }</span></span>
                    </p>
                }
            </div>
            <ol class="moments">{ for shown.turns().into_iter().map(row) }</ol>
            { outcome(shown) }
        </>
    }
}

/// No current can be given: say what for.
fn nothing(shown: &Shown) -> Html {
    let why = shown.answer.steps.first().map(|s| match &s.current {
        Maybe::Absent(absence) => words::notices::absence(absence),
        Maybe::Known(_) => String::new(),
    });
    html! {
        <>
            <p class="none">{ words::NO_ANSWER }</p>
            <p class="soft">{ why.unwrap_or_default() }</p>
        </>
    }
}

/// Something to do at a moment.
struct Turn {
    when: Option<String>,
    words: &'static str,
    value: String,
    more: Option<String>,
}

impl Shown {
    /// The turns and the end, in the order of time.
    fn turns(&self) -> Vec<Turn> {
        let steps = &self.answer.steps;
        let mut turns = Vec::new();
        for pair in steps.windows(2) {
            let (before, after) = (&pair[0], &pair[1]);
            let Some(next) = after.current.known() else {
                continue;
            };
            let was = before.current.known().map_or(next.set.si(), |c| c.set.si());
            let words = if next.set.si() < was {
                words::TURN_DOWN
            } else if next.set.si() > was {
                words::TURN_UP
            } else {
                words::LEAVE
            };
            turns.push(Turn {
                when: self.moment(before),
                words,
                value: self.current(next.set),
                more: None,
            });
        }
        if let Some(last) = steps.last() {
            let time = self.answer.time.known();
            let range = time.filter(|t| differ(t.low, t.high)).map(|t| {
                format!(
                    "{} to {}",
                    number::time(rough(t.low, f64::floor)),
                    number::time(rough(t.high, f64::ceil))
                )
            });
            turns.push(Turn {
                when: self.moment(last),
                words: words::LIFT_OUT,
                value: time.map(|t| number::time(t.likely)).unwrap_or_default(),
                more: range,
            });
        }
        turns
    }
}

/// Ends of a time, rounded outwards: to ten minutes above three hours, to five below, to one under one.
fn rough(t: Time, outwards: fn(f64) -> f64) -> Time {
    let step = if t.si() > 10_800.0 {
        600.0
    } else if t.si() > 3600.0 {
        300.0
    } else if t.si() > 600.0 {
        60.0
    } else {
        5.0
    };
    Time::seconds(outwards(t.si() / step) * step)
}

fn differ(low: Time, high: Time) -> bool {
    high.si() - low.si() > 0.02 * high.si()
}

fn row(turn: Turn) -> Html {
    html! {
        <li>
            <span class="when">{ turn.when.unwrap_or_default() }</span>
            <span class="what">{ turn.words }</span>
            <span class="value">{ turn.value }</span>
            if let Some(more) = turn.more {
                <span class="more">{ more }</span>
            }
        </li>
    }
}

/// What they will have.
fn outcome(shown: &Shown) -> Html {
    let Some(piece) = shown.answer.pieces.first() else {
        return Html::default();
    };
    let Some(mean) = piece.mean.known() else {
        return html! { <p class="soft">{ absence_of(&piece.mean) }</p> };
    };
    let two = |t| number::micrometres(t, 2);
    if let Some(etched) = &piece.etched {
        return etch_outcome(etched);
    }
    let thinnest = piece.thinnest.known().map(|t| {
        let place = piece
            .thin_place
            .known()
            .map(|p| words::thin_place(*p))
            .unwrap_or_default();
        (
            number::micrometres(t.likely, 2),
            place,
            format!("{} to {}", two(t.low), two(t.high)),
        )
    });
    html! {
        <div class="outcome">
            <p class="have">
                <strong id="mean">{ number::thickness(mean.likely) }</strong>{ " on average" }
                if let Some((value, place, _)) = &thinnest {
                    { ", about " }<strong>{ value }</strong>{ format!(" {place}") }
                }
            </p>
            <p class="soft">
                { format!("{} {} and {}", words::RANGE_NOTE, two(mean.low), two(mean.high)) }
                if let Some((_, _, range)) = &thinnest {
                    { format!(", at the thinnest {range}") }
                }
            </p>
        </div>
    }
}

/// What an etch leaves.
fn etch_outcome(etched: &Etched) -> Html {
    let Some(depth) = etched.depth.known() else {
        return html! { <p class="soft">{ absence_of(&etched.depth) }</p> };
    };
    let left = etched.left.known().map(|l| number::millimetres(l.likely));
    let two = |t| number::micrometres(t, 2);
    html! {
        <div class="outcome">
            <p class="have">
                <strong id="mean">{ number::thickness(depth.likely) }</strong>{ " deep" }
                if let Some(left) = left {
                    { ", " }<strong>{ left }</strong>{ " left under it" }
                }
            </p>
            <p class="soft">{ format!("{} {} and {}", words::RANGE_NOTE, two(depth.low), two(depth.high)) }</p>
            <p class="soft">{ words::LEADS }</p>
        </div>
    }
}

fn absence_of<T>(maybe: &Maybe<T>) -> String {
    match maybe {
        Maybe::Absent(absence) => words::notices::absence(absence),
        Maybe::Known(_) => String::new(),
    }
}

/// Lines, openings, mass: what an etch makes of the sheet.
fn etch_also(etched: &Etched, piece: &PieceAnswer, shown: &Shown) -> Html {
    let longer = etched
        .fine_line
        .known()
        .map(|r| format!("{} ×", number::in_symbol(r.likely.into(), "", 3)));
    let after = etched
        .opening_after
        .known()
        .map(|w| number::millimetres(w.likely));
    let line = etched
        .line_to_draw
        .known()
        .map(|w| number::millimetres(w.likely));
    let mass = piece.mass.known().map(|m| number::mass(m.likely));
    let area = piece.area.known().map(|a| number::area(a.likely));
    let density = shown
        .answer
        .steps
        .last()
        .and_then(|s| s.density.known())
        .map(|d| number::density(d.likely));
    html! {
        <dl class="also">
            { term("Fine lines need", longer) }
            { term("Openings, after", after) }
            { term("Line to draw", line) }
            { term("Dissolved", mass) }
            { term("Open to the bath", area) }
            { term("Density", density) }
        </dl>
    }
}

fn term(name: &str, value: Option<String>) -> Html {
    match value {
        Some(value) => html! { <div><dt>{ name }</dt><dd>{ value }</dd></div> },
        None => Html::default(),
    }
}

/// Bore, mass, area, and why this density.
fn also(piece: &PieceAnswer, shown: &Shown) -> Html {
    let bore = piece
        .bore_after
        .known()
        .filter(|b| b.likely.si() > 0.0)
        .map(|b| number::millimetres(b.likely));
    let make = piece
        .bore_to_make
        .known()
        .map(|b| number::millimetres(b.likely));
    let mass = piece.mass.known().map(|m| number::mass(m.likely));
    let area = piece.wetted.known().map(|a| number::area(a.likely));
    let last = shown.answer.steps.last();
    let density = last
        .and_then(|s| s.density.known())
        .map(|d| number::density(d.likely));
    let ruled = last.and_then(|s| s.ruled_by).map(words::ruling);
    html! {
        <dl class="also">
            { term("Inside across, after", bore) }
            { term("Inside across, to make", make) }
            { term("Metal on the piece", mass) }
            { term("Gets wet", area) }
            { term("Density", density.map(|d| ruled.map_or(d.clone(), |r| format!("{d}, {r}")))) }
        </dl>
    }
}

/// What holds the job back.
pub fn limits(shown: &Shown) -> Html {
    let limits = &shown.answer.limits;
    // Two steps with the same complaint are one note.
    let said = limits
        .iter()
        .enumerate()
        .filter(|(n, l)| !limits[..*n].iter().any(|k| k.kind == l.kind));
    html! {
        <div class="limits">
            for (_, first) in said {
                { limit(limits, first.kind) }
            }
        </div>
    }
}

fn limit(limits: &[Limit], kind: LimitKind) -> Html {
    let same: Vec<&Limit> = limits.iter().filter(|l| l.kind == kind).collect();
    let (statement, then) = words::limit(&same);
    note(Weight::Look, &statement, &then)
}

/// Problems that no field on the page can show.
pub fn problems(shown: &Shown, on_page: &[Problem]) -> Html {
    let rest: Vec<&Problem> = shown
        .answer
        .problems
        .iter()
        .filter(|p| !on_page.iter().any(|q| q.field == p.field))
        .filter(|p| words::field(p.field.as_str()).is_empty())
        .filter(|p| p.kind != planner::ProblemKind::Missing)
        .collect();
    html! {
        <>
            for p in rest {
                { note(Weight::Stop, "", &words::problem(p, p.field.as_str())) }
            }
        </>
    }
}

/// The layer, to scale, with what else there is to say of the piece.
pub fn layer(shown: &Shown) -> Html {
    let Some(piece) = shown.answer.pieces.first() else {
        return Html::default();
    };
    let Some(mean) = piece.mean.known() else {
        return Html::default();
    };
    if let Some(etched) = &piece.etched {
        return html! {
            <section class="card wall">
                <h2>{ words::SHEET }</h2>
                { etch_also(etched, piece, shown) }
            </section>
        };
    }
    let layer = Layer {
        mean: mean.likely,
        thickest: piece.thickest.known().map(|t| t.likely),
        thinnest: piece.thinnest.known().map(|t| t.likely),
    };
    html! {
        <section class="card wall">
            <h2>{ words::WALL }</h2>
            { drawing(&layer, shown.core) }
            { also(piece, shown) }
        </section>
    }
}

/// Hazards, each under when it is due.
pub fn cautions(shown: &Shown) -> Html {
    let cautions = &shown.answer.cautions;
    if cautions.is_empty() {
        return Html::default();
    }
    html! {
        <section class="card care">
            <h2>{ words::CARE }</h2>
            for when in [When::Before, When::During, When::After] {
                { due(shown, when) }
            }
        </section>
    }
}

fn due(shown: &Shown, when: When) -> Html {
    let due: Vec<_> = shown
        .answer
        .cautions
        .iter()
        .filter(|c| c.when == when)
        .collect();
    if due.is_empty() {
        return Html::default();
    }
    html! {
        <>
            <h3>{ octagon() }{ words::when(when) }</h3>
            <ul>
                for c in due {
                    <li>{ words::caution(c.kind) }</li>
                }
            </ul>
        </>
    }
}
