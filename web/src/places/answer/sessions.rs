//! A run in sessions that somebody attends: when each begins, and how the work enters again.

use super::Shown;
use crate::parts::card::card;
use crate::parts::note::{Weight, note};
use crate::words::{self, after, number, working};
use planner::answer::Origin;
use planner::reentry::Reentry;
use planner::sessions::{Doing, Session};
use yew::prelude::*;

/// A stretch of time in words.
struct Stretch {
    name: String,
    length: String,
    more: String,
}

impl Shown {
    fn stretches(&self) -> Vec<Stretch> {
        let all = &self.answer.sessions;
        let deep = self.answer.pieces.iter().any(|p| p.etched.is_some());
        let session = |s: &&Session| s.doing == Doing::Session;
        let of = all.iter().filter(session).count();
        let said = |(n, s): (usize, &Session)| {
            let mut more = after::by_then(s.latest.as_deref(), s.mean_after, deep);
            if let Some(Origin::Catalogue(source)) = s.origin {
                more.push(' ');
                more.push_str(&words::usual(&working::source(source), None));
            }
            Stretch {
                name: after::stretch(s.doing, n.saturating_sub(all.len() - of) + 1, of),
                length: number::time(s.time),
                more: more.trim().to_owned(),
            }
        };
        all.iter().enumerate().map(said).collect()
    }

    /// The ways in again, each once, with the sessions they come before.
    fn ways_in(&self) -> Vec<(String, &Reentry)> {
        let sessions = self.answer.sessions.iter();
        let sessions = sessions.filter(|s| s.doing == Doing::Session);
        let mut found: Vec<(&Reentry, Vec<String>)> = Vec::new();
        for (n, s) in sessions.enumerate() {
            let Some(way) = &s.reentry else { continue };
            let which = (n + 1).to_string();
            match found.iter_mut().find(|(w, _)| *w == way) {
                Some((_, all)) => all.push(which),
                None => found.push((way, vec![which])),
            }
        }
        let said = |(way, which): (_, Vec<String>)| (after::before_sessions(&which), way);
        found.into_iter().map(said).collect()
    }

    pub(super) fn sessions_as_text(&self) -> Vec<String> {
        let mut lines: Vec<String> = Vec::new();
        for s in self.stretches() {
            lines.push([&s.name, ": ", &s.length, ". ", &s.more].concat());
        }
        for (title, way) in self.ways_in() {
            lines.push(
                [
                    &title,
                    " ",
                    &after::reenter(way),
                    " ",
                    after::care(way.kind),
                ]
                .concat(),
            );
        }
        lines
    }
}

/// The card; none where nobody said when they are there.
pub fn sessions(shown: &Shown) -> Html {
    if shown.answer.sessions.is_empty() {
        return Html::default();
    }
    card("card sessions", after::SESSIONS, stretches(shown))
}

/// The stretches in the order of time, then how the work enters again.
pub fn stretches(shown: &Shown) -> Html {
    html! {
        <>
            <ol class="moments stretches">
                for s in shown.stretches() {
                    <li>
                        <span>{ s.name }</span>
                        <span class="value">{ s.length }</span>
                        <span class="more">{ s.more }</span>
                    </li>
                }
            </ol>
            for (title, way) in shown.ways_in() {
                { again(&title, way) }
            }
        </>
    }
}

/// A way in again, and what to take care of in it.
pub fn again(title: &str, way: &Reentry) -> Html {
    html! {
        <>
            { note(Weight::Quiet, title, &after::reenter(way)) }
            { note(Weight::Stop, "", after::care(way.kind)) }
        </>
    }
}
