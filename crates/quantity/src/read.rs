//! The one reader of numbers with units.
//!
//! Comma and point are both decimal marks, never thousands. A typed unit wins over the field's own. Fractions (`1 3/8
//! in`) and times (`1:30` is 1 h 30 min, `2 h 15 min`) are read too. What cannot be read is said, never guessed.

use crate::kinds::{AnyQuantity, Quantity};
use crate::unit::Unit;

/// What was understood from a text.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading<Q> {
    /// The quantity.
    pub value: Q,
    /// The unit it was given in.
    pub unit: &'static Unit,
    /// Whether the reading should be shown back: a comma, a fraction, a clock form, another unit than the field's, or a
    /// capital M that was taken for milli.
    pub echo: bool,
}

/// Why a text could not be read. Each carries the part of the text it is about.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Unreadable {
    /// Nothing was typed.
    Empty,
    /// No number where one was expected.
    NotANumber(String),
    /// Two decimal marks: `1.5.2`, `1,500.0`. Which one is meant is a question, not a guess.
    TwoMarks(String),
    /// A unit this quantity is not measured in.
    UnknownUnit(String),
    /// Too large for any bench, or a division by zero.
    NotFinite(String),
}

/// Reads `text` as a quantity; a number without a unit is in `default`.
///
/// ```
/// use quantity::*;
/// let mm = &Length::UNITS[0];
/// assert_eq!(read::<Length>("17,6", mm).map(|r| r.value), Ok(Length::mm(17.6)));
/// assert_eq!(read::<Length>("1 3/8 in", mm).map(|r| r.value), Ok(Length::mm(34.925)));
/// assert_eq!(read::<Length>("15 mn", mm), Err(Unreadable::UnknownUnit("mn".into())));
/// ```
pub fn read<Q: Quantity>(text: &str, default: &'static Unit) -> Result<Reading<Q>, Unreadable> {
    // The work is done once for all kinds: a copy for each would be a tenth of the page.
    read_any(text, Q::KEY_UNIT, Q::UNITS, default).map(|r| Reading {
        value: Q::from_si(r.value.si),
        unit: r.unit,
        echo: r.echo,
    })
}

/// The same for a kind known only by its key unit and its units.
pub fn read_any(
    text: &str,
    key_unit: &'static str,
    units: &'static [Unit],
    default: &'static Unit,
) -> Result<Reading<AnyQuantity>, Unreadable> {
    read_si(text, key_unit, units, default).map(|(si, unit, echo)| Reading {
        value: AnyQuantity { key_unit, si },
        unit,
        echo,
    })
}

/// The number in SI, its unit, and whether to show it back.
fn read_si(
    text: &str,
    key_unit: &str,
    units: &'static [Unit],
    default: &'static Unit,
) -> Result<(f64, &'static Unit, bool), Unreadable> {
    let text = tidy(text);
    if text.is_empty() {
        return Err(Unreadable::Empty);
    }
    if key_unit == "s"
        && let Some(done) = clock_form(&text).or_else(|| mixed_time(&text, units))
    {
        return done.map(|seconds| (seconds, &units[0], true));
    }
    if key_unit == "m"
        && let Some(done) = crate::gauge::read(&text)
    {
        return done.map(|metres| (metres, default, true));
    }
    let number = number(&text)?;
    let rest = text[number.end..].trim();
    let unit = if rest.is_empty() {
        default
    } else {
        find_unit(units, rest).ok_or_else(|| Unreadable::UnknownUnit(rest.to_owned()))?
    };
    let si = unit.to_si(number.value);
    if !si.is_finite() {
        return Err(Unreadable::NotFinite(text));
    }
    let echo = number.unusual
        || unit.symbol != default.symbol
        || rest.starts_with('M') && unit.symbol.starts_with('m');
    Ok((si, unit, echo))
}

/// Plain spaces for every kind of space, a plain minus for the printed one, no outer spaces.
fn tidy(text: &str) -> String {
    let plain: String = text
        .chars()
        .map(|c| match c {
            c if c.is_whitespace() => ' ',
            '\u{2212}' | '\u{2012}' | '\u{2013}' => '-',
            c => c,
        })
        .collect();
    plain.trim().to_owned()
}

struct Number {
    value: f64,
    end: usize,
    unusual: bool,
}

/// A decimal number, a fraction, or a whole number and a fraction, at the start of `text`.
fn number(text: &str) -> Result<Number, Unreadable> {
    let first = decimal(text)?;
    let rest = &text[first.end..];
    if let Some(after) = rest.strip_prefix('/') {
        return fraction(text, 0.0, first.value, after);
    }
    // `1 3/8`: a whole number, a space, a fraction.
    if first.whole && rest.starts_with(' ') {
        let tail = rest.trim_start();
        if tail.starts_with(|c: char| c.is_ascii_digit()) {
            let top = decimal(tail)?;
            return match tail[top.end..].strip_prefix('/') {
                Some(after) if top.whole => fraction(text, first.value, top.value, after),
                _ => Err(Unreadable::NotANumber(text.to_owned())),
            };
        }
    }
    Ok(Number {
        value: first.value,
        end: first.end,
        unusual: first.comma,
    })
}

fn fraction(text: &str, whole: f64, top: f64, after: &str) -> Result<Number, Unreadable> {
    let bottom = decimal(after)?;
    let part = top / bottom.value;
    let value = if whole.is_sign_negative() {
        whole - part
    } else {
        whole + part
    };
    if !value.is_finite() {
        return Err(Unreadable::NotFinite(text.to_owned()));
    }
    Ok(Number {
        value,
        end: text.len() - after.len() + bottom.end,
        unusual: true,
    })
}

struct Decimal {
    value: f64,
    end: usize,
    comma: bool,
    whole: bool,
}

fn decimal(text: &str) -> Result<Decimal, Unreadable> {
    let bytes = text.as_bytes();
    let mut end = 0;
    let (mut digits, mut marks, mut comma) = (0, 0, false);
    if matches!(bytes.first(), Some(b'+' | b'-')) {
        end += 1;
    }
    while let Some(&b) = bytes.get(end) {
        match b {
            b'0'..=b'9' => digits += 1,
            b'.' => marks += 1,
            b',' => {
                marks += 1;
                comma = true;
            }
            _ => break,
        }
        end += 1;
    }
    if marks > 1 {
        return Err(Unreadable::TwoMarks(text.to_owned()));
    }
    if digits == 0 {
        return Err(Unreadable::NotANumber(text.to_owned()));
    }
    let mantissa_end = end;
    end = exponent_end(bytes, end);
    let plain = text[..end].replace(',', ".");
    // Rust's parser also takes `inf` and `nan`; only digits, one mark and an exponent reach it here.
    let value: f64 = plain
        .parse()
        .map_err(|_| Unreadable::NotANumber(text.to_owned()))?;
    if !value.is_finite() {
        return Err(Unreadable::NotFinite(text.to_owned()));
    }
    Ok(Decimal {
        value,
        end,
        comma,
        whole: marks == 0 && end == mantissa_end,
    })
}

/// The end of an exponent starting at `at`, or `at` itself where there is none.
fn exponent_end(bytes: &[u8], at: usize) -> usize {
    if !matches!(bytes.get(at), Some(b'e' | b'E')) {
        return at;
    }
    let mut end = at + 1;
    if matches!(bytes.get(end), Some(b'+' | b'-')) {
        end += 1;
    }
    let digits_from = end;
    while matches!(bytes.get(end), Some(b'0'..=b'9')) {
        end += 1;
    }
    if end == digits_from { at } else { end }
}

/// The unit written as `text`. Exact spelling first, so that `MΩ` is never taken for `mΩ`; then without case and
/// spaces.
pub fn find_unit(units: &'static [Unit], text: &str) -> Option<&'static Unit> {
    // Keyboards write the ohm as a letter or as a sign of its own.
    let squeezed: String = text
        .chars()
        .filter(|c| !c.is_whitespace())
        .map(|c| if c == '\u{2126}' { 'Ω' } else { c })
        .collect();
    let lower = squeezed.to_lowercase();
    let exact =
        |u: &&Unit| u.symbol.replace(' ', "") == squeezed || u.also.contains(&squeezed.as_str());
    let loose = |u: &&Unit| {
        u.symbol.replace(' ', "").to_lowercase() == lower || u.also.contains(&lower.as_str())
    };
    units
        .iter()
        .find(exact)
        .or_else(|| units.iter().find(loose))
}

/// `1:30` or `1:30:20`, hours first. `None` where the text has no colon.
fn clock_form(text: &str) -> Option<Result<f64, Unreadable>> {
    if !text.contains(':') {
        return None;
    }
    let body = text.strip_suffix('h').unwrap_or(text).trim_end();
    let bad = || Some(Err(Unreadable::NotANumber(text.to_owned())));
    let parts: Vec<&str> = body.split(':').collect();
    if parts.len() > 3 {
        return bad();
    }
    let mut seconds = 0.0;
    for (place, part) in parts.iter().enumerate() {
        if part.is_empty() || part.len() > 6 || !part.bytes().all(|b| b.is_ascii_digit()) {
            return bad();
        }
        let Ok(value) = part.parse::<u32>() else {
            return bad();
        };
        if place > 0 && (value > 59 || part.len() != 2) {
            return bad();
        }
        seconds += f64::from(value) * [3600.0, 60.0, 1.0][place];
    }
    Some(Ok(seconds))
}

/// `2 h 15 min`, `1h30`, `4 min 20 s`: at least two numbers without a sign, units falling. `None` where the text is not
/// of this form.
fn mixed_time(text: &str, units: &'static [Unit]) -> Option<Result<f64, Unreadable>> {
    let mut rest = text;
    let mut total = 0.0;
    let mut last = f64::INFINITY;
    let mut count = 0;
    while !rest.is_empty() {
        if rest.starts_with(['+', '-']) {
            return None;
        }
        let number = decimal(rest).ok()?;
        let after = rest[number.end..].trim_start();
        let letters = after
            .find(|c: char| !c.is_alphabetic())
            .unwrap_or(after.len());
        let unit = if letters == 0 {
            // `1 h 30`: minutes after hours, seconds after minutes.
            if !after.is_empty() || count == 0 {
                return None;
            }
            units.iter().find(|u| u.num < last)?
        } else {
            find_unit(units, &after[..letters])?
        };
        if unit.num >= last {
            return None;
        }
        last = unit.num;
        total += unit.to_si(number.value);
        count += 1;
        rest = after[letters..].trim_start();
    }
    (count > 1 && total.is_finite()).then_some(Ok(total))
}
