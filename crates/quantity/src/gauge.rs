//! Wire and sheet gauges: American wire gauge, the same numbers as Brown & Sharpe sheet gauge.

use crate::read::Unreadable;

/// The lowest gauge number: 0000 is -3, 000 is -2, 00 is -1.
pub const LEAST: i32 = -3;
/// The highest.
pub const MOST: i32 = 40;

/// Diameter of a wire, or thickness of a sheet, in metre: 0.127 mm x 92^((36 - n) / 39). Source: ASTM B258, exact at 0000
/// (0.46 in) and 36 (0.005 in); from memory, compared with the printed table.
pub fn metres(number: i32) -> f64 {
    // 92^((36 + 3) / 39) is 92 itself: the two anchors come out exactly.
    let power = f64::from(36 - number) / 39.0;
    127e-6 * libm::pow(92.0, power)
}

/// Reads `20 ga`, `20 gauge`, `AWG 20`, `B&S 18`, `0000 AWG`, `4/0 awg`. None where the text names no gauge.
pub(crate) fn read(text: &str) -> Option<Result<f64, Unreadable>> {
    let lower = text.to_lowercase();
    let names = ["gauge", "awg", "b&s", "ga"];
    let number = names.iter().find_map(|name| {
        lower
            .strip_suffix(name)
            .or_else(|| lower.strip_prefix(name))
            .map(str::trim)
    })?;
    let bad = || Some(Err(Unreadable::NotANumber(text.to_owned())));
    let count = match number.split_once('/') {
        // 4/0 is four noughts.
        Some((noughts, "0")) => match noughts.parse::<i32>() {
            Ok(n) if (1..=4).contains(&n) => 1 - n,
            _ => return bad(),
        },
        Some(_) => return bad(),
        None if !number.is_empty() && number.bytes().all(|b| b == b'0') => match number.len() {
            noughts @ 1..=4 => 1 - noughts as i32,
            _ => return bad(),
        },
        None => match number.parse::<i32>() {
            Ok(n) if (0..=MOST).contains(&n) && !number.starts_with(['+', '-']) => n,
            _ => return bad(),
        },
    };
    Some(Ok(metres(count)))
}
