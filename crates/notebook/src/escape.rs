//! Texts on one line that a messenger cannot break: what could be trimmed, turned into another sign or read as a mark-up stands as
//! its code in braces, `{22}` for a straight quote.

use std::fmt::Write;

/// Adds `text` to `out`, escaped. Spaces are kept between other signs; in an address (`spaces` false) they are escaped too.
pub fn escape(out: &mut String, text: &str, spaces: bool) {
    let mut before = None;
    let mut left = text.chars();
    while let Some(c) = left.next() {
        let kept = match c {
            // At an end, or beside another one, it may be trimmed away.
            ' ' => spaces && before.is_some_and(|b| b != ' ') && !left.as_str().is_empty(),
            // Two or three in a row become a dash or an ellipsis.
            '.' | '-' => before != Some(c),
            // With what is no digit before it, a face.
            ':' => before.is_some_and(|b| b.is_ascii_digit()),
            _ => plain(c),
        };
        if kept {
            out.push(c);
        } else {
            // Writing to a String never fails.
            let _ = write!(out, "{{{:X}}}", u32::from(c));
        }
        before = Some(c);
    }
}

/// The text again; none where a brace does not close around the code of a sign.
pub fn unescape(text: &str) -> Option<String> {
    let mut out = String::with_capacity(text.len());
    let mut rest = text;
    while let Some((plain, after)) = rest.split_once('{') {
        let (code, after) = after.split_once('}')?;
        out.push_str(plain);
        if code.is_empty() || code.len() > 6 || code.starts_with('+') {
            return None;
        }
        out.push(char::from_u32(u32::from_str_radix(code, 16).ok()?)?);
        rest = after;
    }
    out.push_str(rest);
    Some(out)
}

/// Signs that every messenger leaves as they are: digits, letters that have one code only, what numbers with units are written with.
fn plain(c: char) -> bool {
    matches!(c,
        '0'..='9' | 'a'..='z' | 'A'..='Z' | ',' | '/' | '+' | '%' | '_' | '@' | 'µ' | '°' | '²' | '³' | '·'
        | '\u{c0}'..='\u{24f}' // Latin with accents
        | '\u{391}'..='\u{3a1}' | '\u{3a3}'..='\u{3c9}' // Greek
        | '\u{400}'..='\u{481}' // Cyrillic
        | '\u{3041}'..='\u{3096}' | '\u{30a1}'..='\u{30fa}' | '\u{4e00}'..='\u{9fff}' | '\u{ac00}'..='\u{d7a3}')
}
