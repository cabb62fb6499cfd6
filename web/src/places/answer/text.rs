//! The plan as plain lines, to copy.

use super::limits::{WHENS, due, said};
use super::{Shown, reached};
use crate::words::{self, number};

impl Shown {
    /// What to set, and the turns.
    pub fn to_do(&self) -> Vec<String> {
        let mut lines = Vec::new();
        if let Some(setting) = self.now() {
            let mut line = format!("{}: {}", words::SET_NOW, self.current(setting.set));
            let first = self.answer.steps.first();
            if let Some(ceiling) = first.and_then(|s| s.ceiling.known()) {
                let volts = number::tenth_volts(ceiling.set);
                line.push_str(&format!(", {} {volts} V", words::CEILING));
            }
            lines.push(line);
        }
        for turn in self.turns() {
            let mut line = turn.line();
            if let Some(more) = turn.more {
                line.push_str(&format!(" ({more})"));
            }
            lines.push(line);
        }
        lines
    }

    /// What to set, the turns, what comes of it, the sessions, what holds it back, what to take care of.
    pub fn as_text(&self) -> Vec<String> {
        let mut lines = self.to_do();
        for (n, piece) in self.answer.pieces.iter().enumerate() {
            let Some(thickness) = reached(piece) else {
                continue;
            };
            let mut line = if self.several() {
                self.name(n) + ": "
            } else {
                String::new()
            };
            line.push_str(&number::thickness(thickness));
            if piece.etched.is_some() {
                line.push_str(words::etched(false).0);
            } else {
                let thinnest = piece.thinnest.known().map(|t| number::thickness(t.likely));
                let place = piece
                    .thin_place
                    .known()
                    .map_or("", |p| words::thin_place(*p));
                let (between, after) = words::have(thinnest.as_deref(), place);
                line.push_str(between);
                if let Some(thinnest) = thinnest {
                    line.push_str(&thinnest);
                    line.push_str(&after);
                }
            }
            lines.push(line);
        }
        lines.extend(self.sessions_as_text());
        lines.extend(said(self).into_iter().map(|(a, b)| a + " " + &b));
        for when in WHENS {
            let about = |c: String| format!("{}: {c}", words::when(when));
            lines.extend(due(self, when).into_iter().map(about));
        }
        lines.iter().map(|l| l.replace('\u{a0}', " ")).collect()
    }
}
