//! Local dates and times of day, without zones: the clock on the wall.

use quantity::{Quantity, Time};

/// A minute of a local calendar day. Daylight saving is not known here: over the change of the clocks it is an hour off.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Local {
    /// Days since 1970-01-01.
    days: i64,
    /// Minute of the day, 0 to 1439.
    minute: i64,
}

const DAY: i64 = 1440;

impl Local {
    /// From `2026-05-01T10:00`; years 1970 to 2199.
    pub fn parse(text: &str) -> Option<Self> {
        let (date, time) = text.split_once('T')?;
        let mut parts = date.split('-');
        let mut next = |width: usize| -> Option<i64> {
            let part = parts.next()?;
            let plain = part.len() == width && part.bytes().all(|b| b.is_ascii_digit());
            plain.then(|| part.parse().ok()).flatten()
        };
        let (year, month, day) = (next(4)?, next(2)?, next(2)?);
        if parts.next().is_some() || !(1970..2200).contains(&year) || !(1..=12).contains(&month) {
            return None;
        }
        let days = days_from_civil(year, month, day);
        if civil_from_days(days) != (year, month, day) {
            return None;
        }
        Some(Self {
            days,
            minute: time_of_day(time)?,
        })
    }

    /// The minute nearest to `after` from here.
    pub fn plus(self, after: Time) -> Self {
        // Beyond a billion years the date is the last one that can be said.
        let minutes = (after.si() / 60.0).round().clamp(-5e14, 5e14) as i64 + self.minute;
        Self {
            days: self.days + minutes.div_euclid(DAY),
            minute: minutes.rem_euclid(DAY),
        }
    }

    /// Time from `earlier` to here, below 0 where that lies ahead.
    pub fn since(self, earlier: Self) -> Time {
        Time::minutes(((self.days - earlier.days) * DAY + self.minute - earlier.minute) as f64)
    }

    /// `2026-05-01T10:00`.
    pub fn text(self) -> String {
        let (year, month, day) = civil_from_days(self.days);
        format!(
            "{year:04}-{month:02}-{day:02}T{:02}:{:02}",
            self.minute / 60,
            self.minute % 60
        )
    }

    /// Time until `minute` of the day comes next, above 0.
    pub fn until_minute(self, minute: i64) -> Time {
        let wait = (minute - self.minute).rem_euclid(DAY);
        Time::minutes(if wait == 0 { DAY as f64 } else { wait as f64 })
    }

    /// How much of the stretch of `length` from here lies between the times of day `from` and `to` (across midnight where
    /// `from` is the later).
    pub fn overlap(self, length: Time, from: Time, to: Time) -> Time {
        let start = self.minute as f64 * 60.0;
        let day = DAY as f64 * 60.0;
        let (from, to) = (from.si(), to.si());
        let span = if to > from {
            to - from
        } else {
            to - from + day
        };
        if span >= day {
            return Time::seconds(0.0);
        }
        // Every whole day holds one whole night; the rest is looked at night by night.
        let whole_days = (length.si() / day).floor();
        let end = start + (length.si() - whole_days * day);
        // A stretch beginning on day 0 can meet the night that began the day before.
        let mut sum = whole_days * span;
        let mut night = from - day;
        while night < end {
            let a = if night > start { night } else { start };
            let b = if night + span < end {
                night + span
            } else {
                end
            };
            if b > a {
                sum += b - a;
            }
            night += day;
        }
        Time::seconds(sum)
    }
}

/// Minute of the day from `16:20`.
pub fn time_of_day(text: &str) -> Option<i64> {
    let (hours, minutes) = text.split_once(':')?;
    let digits = |s: &str, least: usize| {
        (least..=2).contains(&s.len()) && s.bytes().all(|b| b.is_ascii_digit())
    };
    if !digits(hours, 1) || !digits(minutes, 2) {
        return None;
    }
    let (hours, minutes): (i64, i64) = (hours.parse().ok()?, minutes.parse().ok()?);
    (hours < 24 && minutes < 60).then_some(hours * 60 + minutes)
}

/// Days since 1970-01-01 of a Gregorian date (Hinnant, "chrono-compatible low-level date algorithms", days_from_civil).
fn days_from_civil(year: i64, month: i64, day: i64) -> i64 {
    let y = if month <= 2 { year - 1 } else { year };
    let era = y.div_euclid(400);
    let of_era = y - era * 400;
    let of_year = (153 * ((month + 9) % 12) + 2) / 5 + day - 1;
    era * 146_097 + of_era * 365 + of_era / 4 - of_era / 100 + of_year - 719_468
}

/// The reverse, same source, civil_from_days.
fn civil_from_days(days: i64) -> (i64, i64, i64) {
    let z = days + 719_468;
    let era = z.div_euclid(146_097);
    let of_era = z - era * 146_097;
    let year_of_era = (of_era - of_era / 1460 + of_era / 36_524 - of_era / 146_096) / 365;
    let of_year = of_era - (365 * year_of_era + year_of_era / 4 - year_of_era / 100);
    let shifted = (5 * of_year + 2) / 153;
    let day = of_year - (153 * shifted + 2) / 5 + 1;
    let month = if shifted < 10 {
        shifted + 3
    } else {
        shifted - 9
    };
    let year = year_of_era + era * 400;
    (if month <= 2 { year + 1 } else { year }, month, day)
}
