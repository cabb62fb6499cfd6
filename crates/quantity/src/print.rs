//! The one printer of numbers. Two ways: exact, which reads back to the same quantity, and rounded, which is for people
//! and is never read back.

use crate::kinds::{Quantity, Time, unsigned_zero};
use crate::unit::Unit;

/// The decimal mark of printed numbers.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum Mark {
    /// 1.5
    #[default]
    Point,
    /// 1,5
    Comma,
}

/// The number and unit so that reading it gives the same quantity to 1e-12.
pub fn exact<Q: Quantity>(value: Q, unit: &Unit) -> String {
    with_unit(&format!("{}", unsigned_zero(value.in_unit(unit))), unit)
}

/// The number in `unit` to `digits` significant digits, without the unit, without an exponent.
pub fn rounded<Q: Quantity>(value: Q, unit: &Unit, digits: usize, mark: Mark) -> String {
    marked(significant(value.in_unit(unit), digits), mark)
}

/// The number in `unit` with `places` decimal places, without the unit.
pub fn fixed<Q: Quantity>(value: Q, unit: &Unit, places: usize, mark: Mark) -> String {
    let text = format!("{:.places$}", unsigned_zero(value.in_unit(unit)));
    marked(text, mark)
}

/// Joins a printed number and its unit: a no-break space, none where the unit is empty.
pub fn with_unit(number: &str, unit: &Unit) -> String {
    if unit.symbol.is_empty() {
        number.to_owned()
    } else {
        format!("{number}\u{a0}{}", unit.symbol)
    }
}

/// A plain number to `digits` significant digits, without an exponent; large numbers keep their zeros.
pub fn significant(value: f64, digits: usize) -> String {
    let value = unsigned_zero(value);
    if !value.is_finite() || value == 0.0 {
        return "0".to_owned();
    }
    let digits = digits.max(1);
    let scientific = format!("{:.*e}", digits - 1, value);
    let exponent: i32 = scientific
        .split_once('e')
        .and_then(|(_, e)| e.parse().ok())
        .unwrap_or(0);
    let places = (digits as i32 - 1 - exponent).max(0) as usize;
    if places == 0 {
        // Rounded to tens, hundreds: take the digits from the scientific form, fill with zeros.
        let whole: f64 = scientific.parse().unwrap_or(value);
        return format!("{whole:.0}");
    }
    format!("{value:.places$}")
}

/// A time as a person says it: to the second below ten minutes, to the minute above.
/// Gives the whole hours, minutes and seconds to print; seconds are absent above ten minutes.
pub fn clock_parts(time: Time) -> (u64, u64, Option<u64>) {
    let seconds = time.si();
    if !(seconds.is_finite() && seconds > 0.0) {
        return (0, 0, Some(0));
    }
    if seconds < 599.5 {
        let whole = seconds.round() as u64;
        return (0, whole / 60, Some(whole % 60));
    }
    let minutes = (seconds / 60.0).round() as u64;
    (minutes / 60, minutes % 60, None)
}

fn marked(text: String, mark: Mark) -> String {
    match mark {
        Mark::Point => text,
        Mark::Comma => text.replace('.', ","),
    }
}
