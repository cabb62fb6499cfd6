//! A job as a short text that can be sent, read by a person and pasted into any copy of the page.
//!
//! ```text
//! ionwright job 1
//! name = Three leaves
//! pieces/p1/count = 3
//! steps/s2/until/mean ? 100 mikron
//! steps/s2/until/mean was 120
//! end of job
//! ```
//!
//! The first line says what it is and its format. Then one line for each entry that differs from the base example: `=` with the text,
//! or `?` with a text that could not be read and `was` with the last one that could. The base of format 1 never changes. Signs that
//! a messenger might change stand as their code in braces. Quoting (`> `), spaces at the ends, empty lines, either end of
//! line, and whatever stands before the first line or after the last make no difference.

use crate::draft::Draft;
use crate::escape::{escape, unescape};
use crate::named::Named;
use std::fmt::Write;

/// The format written, and the newest one read.
pub const FORMAT: u32 = 1;
const FIRST: &str = "ionwright job ";
const NAME: &str = "name";
const LAST: &str = "end of job";

/// What was read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Taken {
    /// The draft and its name.
    pub named: Named,
    /// What there is to say about the text; empty where it was read whole.
    pub remarks: Vec<Remark>,
}

/// Something that was not read as it stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Remark {
    /// A line that cannot be read, or an entry that stands there twice; it changed nothing.
    Line {
        /// Its number in the whole text, from 1.
        number: usize,
        /// The line.
        text: String,
    },
    /// An address this edition does not know. Its text is kept in the draft.
    Unknown {
        /// The address.
        address: String,
        /// The text.
        text: String,
    },
    /// The last line is missing: the text may have been cut off.
    Cut,
}

/// Why a text is not read at all.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NotRead {
    /// No line says that it is a job.
    NotAJob,
    /// Written by a newer page, in this format.
    Newer(u32),
}

/// The draft as a text, against the base example. An entry that the draft lacks and the base has comes back as the base's; no
/// address is the bare word `name`.
pub fn write(named: &Named, base: &Draft) -> String {
    let mut out = String::from(FIRST);
    // Writing to a String never fails.
    let _ = write!(out, "{FORMAT}");
    line(&mut out, NAME, " = ", &named.name);
    let draft = &named.draft;
    for (address, text) in &draft.texts {
        let (good, based) = (draft.good.get(address), base.texts.get(address));
        if based == Some(text) && good == base.good.get(address) {
            continue;
        }
        if good == Some(text) {
            line(&mut out, address, " = ", text);
            continue;
        }
        line(&mut out, address, " ? ", text);
        if let Some(good) = good {
            line(&mut out, address, " was ", good);
        }
    }
    out.push('\n');
    out.push_str(LAST);
    out.push('\n');
    out
}

fn line(out: &mut String, address: &str, sign: &str, text: &str) {
    out.push('\n');
    escape(out, address, false);
    out.push_str(if text.is_empty() {
        sign.trim_end()
    } else {
        sign
    });
    escape(out, text, true);
}

/// Reads a text against the base example. `known` says which addresses this edition has.
///
/// # Errors
///
/// Where no line says that it is a job, or a newer page wrote it.
pub fn read(text: &str, base: &Draft, known: impl Fn(&str) -> bool) -> Result<Taken, NotRead> {
    let mut lines = text.lines().map(bare).enumerate();
    let format = lines
        .find_map(|(_, line)| format_of(line))
        .ok_or(NotRead::NotAJob)?;
    if format > FORMAT {
        return Err(NotRead::Newer(format));
    }
    let mut named = Named::new("", base.clone());
    let mut draft = base.clone();
    let mut remarks = Vec::new();
    let mut seen: Vec<(String, Sign)> = Vec::new();
    let mut whole = false;
    for (at, line) in lines {
        if line.is_empty() {
            continue;
        }
        if line.eq_ignore_ascii_case(LAST) {
            whole = true;
            break;
        }
        let entry = entry(line).filter(|(address, sign, _)| {
            !seen.iter().any(|(a, s)| a == address && s.excludes(*sign))
        });
        let Some((address, sign, text)) = entry else {
            remarks.push(Remark::Line {
                number: at + 1,
                text: line.to_owned(),
            });
            continue;
        };
        match sign {
            Sign::Is if address.eq_ignore_ascii_case(NAME) => named.name.clone_from(&text),
            Sign::Is => draft.put(&address, &text, true),
            Sign::Unread => {
                draft.put(&address, &text, false);
                draft.good.remove(&address);
            }
            Sign::Was => {
                draft.good.insert(address.clone(), text.clone());
            }
        }
        if !known(&address) && !address.eq_ignore_ascii_case(NAME) && sign != Sign::Was {
            remarks.push(Remark::Unknown {
                address: address.clone(),
                text,
            });
        }
        seen.push((address, sign));
    }
    if !whole {
        remarks.push(Remark::Cut);
    }
    named.draft = draft.into();
    Ok(Taken { named, remarks })
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Sign {
    Is,
    Unread,
    Was,
}

impl Sign {
    /// Whether both cannot be said of one address. A last good text belongs to an unread one.
    fn excludes(self, other: Sign) -> bool {
        !matches!(
            (self, other),
            (Sign::Unread, Sign::Was) | (Sign::Was, Sign::Unread)
        )
    }
}

/// An address, a sign and a text.
fn entry(line: &str) -> Option<(String, Sign, String)> {
    let end = line.find(|c: char| c.is_whitespace() || c == '=' || c == '?')?;
    let (address, rest) = line.split_at(end);
    let rest = rest.trim_start();
    let (sign, text) = if let Some(text) = rest.strip_prefix('=') {
        (Sign::Is, text)
    } else if let Some(text) = rest.strip_prefix('?') {
        (Sign::Unread, text)
    } else {
        let text = rest.strip_prefix("was")?;
        let ends = text.is_empty() || text.starts_with(char::is_whitespace);
        (Sign::Was, ends.then_some(text)?)
    };
    let address = unescape(address)?;
    if address.is_empty() {
        return None;
    }
    Some((address, sign, unescape(text.trim())?))
}

/// The format, where the line says that a job begins; something may stand before it, as a messenger's name and time.
fn format_of(line: &str) -> Option<u32> {
    let lower = line.to_ascii_lowercase();
    let at = lower.rfind(FIRST)?;
    let digits = &lower[at + FIRST.len()..];
    digits.bytes().all(|b| b.is_ascii_digit()).then_some(())?;
    // Digits beyond any number are still a newer format.
    (!digits.is_empty()).then(|| digits.parse().unwrap_or(u32::MAX))
}

/// The line without the signs of quoting and the spaces around it, those that take no room included.
fn bare(line: &str) -> &str {
    let space = |c: char| {
        c.is_whitespace() || matches!(c, '\u{200b}'..='\u{200f}' | '\u{2060}' | '\u{feff}')
    };
    line.trim_start_matches(|c| c == '>' || space(c))
        .trim_end_matches(space)
}
