//! The clock on the wall. Wanted dates and lengths are counted by hand.

use planner::clock::{Local, time_of_day};
use quantity::{Quantity, Time};

fn local(text: &str) -> Local {
    Local::parse(text).unwrap_or_else(|| panic!("{text} is no date"))
}

#[test]
fn time_runs_over_midnight_month_leap_day_and_year() {
    for (start, seconds, want) in [
        ("2026-05-01T10:00", 0.0, "2026-05-01T10:00"),
        ("2026-05-01T10:00", 1200.0, "2026-05-01T10:20"),
        ("2026-05-01T10:00", 29.0, "2026-05-01T10:00"),
        ("2026-05-01T10:00", 31.0, "2026-05-01T10:01"),
        ("2026-05-01T23:59", 60.0, "2026-05-02T00:00"),
        ("2026-05-31T23:30", 3600.0, "2026-06-01T00:30"),
        ("2026-04-30T23:30", 3600.0, "2026-05-01T00:30"),
        ("2026-12-31T23:30", 3600.0, "2027-01-01T00:30"),
        ("2026-02-28T23:30", 3600.0, "2026-03-01T00:30"),
        ("2028-02-28T23:30", 3600.0, "2028-02-29T00:30"),
        ("2028-02-29T23:30", 3600.0, "2028-03-01T00:30"),
        ("2100-02-28T23:30", 3600.0, "2100-03-01T00:30"),
        ("2000-02-28T12:00", 86_400.0, "2000-02-29T12:00"),
        ("1970-01-01T00:00", 86_400.0, "1970-01-02T00:00"),
        ("2026-01-01T00:00", 365.0 * 86_400.0, "2027-01-01T00:00"),
        ("2028-01-01T00:00", 366.0 * 86_400.0, "2029-01-01T00:00"),
        ("2199-12-31T23:59", 60.0, "2200-01-01T00:00"),
    ] {
        assert_eq!(
            local(start).plus(Time::seconds(seconds)).text(),
            want,
            "{start} and {seconds} s"
        );
    }
}

#[test]
fn a_time_beyond_all_calendars_does_not_end_the_program() {
    for seconds in [1e12, 1e20, 1e300, f64::MAX] {
        let text = local("2026-05-01T10:00")
            .plus(Time::seconds(seconds))
            .text();
        assert!(text.contains('T'), "{text}");
    }
}

#[test]
fn only_dates_of_the_calendar_are_read() {
    for text in [
        "2026-02-29T10:00",
        "2100-02-29T10:00",
        "2026-04-31T10:00",
        "2026-13-01T10:00",
        "2026-00-01T10:00",
        "2026-05-00T10:00",
        "2026-5-1T10:00",
        "1969-12-31T23:59",
        "2200-01-01T00:00",
        "2026-05-01 10:00",
        "2026-05-01T24:00",
        "2026-05-01T10:60",
        "2026-05-01T10:00:00",
        "2026-05-01T10:00Z",
        "2026-05-01",
        "10:00",
        "",
        "T",
        "+026-05-01T10:00",
    ] {
        assert_eq!(Local::parse(text), None, "{text:?}");
    }
    assert!(Local::parse("2028-02-29T00:00").is_some());
    assert!(Local::parse("2000-02-29T9:05").is_some());
}

#[test]
fn a_time_of_day_is_hours_and_minutes() {
    for (text, want) in [
        ("16:20", Some(980)),
        ("00:00", Some(0)),
        ("23:59", Some(1439)),
        ("9:05", Some(545)),
        ("24:00", None),
        ("12:60", None),
        ("12:5", None),
        ("1620", None),
        ("-1:00", None),
        ("012:00", None),
        ("", None),
        (":", None),
    ] {
        assert_eq!(time_of_day(text), want, "{text:?}");
    }
}

#[test]
fn the_next_time_of_day_lies_ahead() {
    for (start, minute, hours) in [
        ("2026-05-01T10:00", 16 * 60, 6.0),
        ("2026-05-01T10:00", 9 * 60, 23.0),
        ("2026-05-01T10:00", 10 * 60, 24.0),
        ("2026-05-01T23:30", 30, 1.0),
    ] {
        assert_eq!(
            local(start).until_minute(minute),
            Time::hours(hours),
            "{start} until minute {minute}"
        );
    }
}

#[test]
fn hours_in_the_night_are_counted_over_midnight_and_over_days() {
    // Start, hours of run, night from, night to (hours of the day), hours of the run in the night.
    for (start, run, from, to, want) in [
        ("10:00", 6.0, 22.0, 6.0, 0.0),
        ("10:00", 12.0, 22.0, 6.0, 0.0),
        ("10:00", 12.85, 22.0, 6.0, 0.85),
        ("10:00", 24.0, 22.0, 6.0, 8.0),
        ("10:00", 48.0, 22.0, 6.0, 16.0),
        ("10:00", 240.0, 22.0, 6.0, 80.0),
        ("23:00", 2.0, 22.0, 6.0, 2.0),
        ("03:00", 2.0, 22.0, 6.0, 2.0),
        ("03:00", 5.0, 22.0, 6.0, 3.0),
        ("03:00", 20.0, 22.0, 6.0, 4.0),
        ("05:30", 0.5, 22.0, 6.0, 0.5),
        ("06:00", 16.0, 22.0, 6.0, 0.0),
        ("06:00", 16.5, 22.0, 6.0, 0.5),
        ("00:00", 24.0, 1.0, 5.0, 4.0),
        ("04:00", 24.0, 1.0, 5.0, 4.0),
        ("10:00", 0.0, 22.0, 6.0, 0.0),
        ("10:00", 24.0, 0.0, 6.0, 6.0),
        ("10:00", 24.0, 22.0, 24.0, 2.0),
        // No night at all.
        ("10:00", 24.0, 22.0, 22.0, 0.0),
        ("10:00", 24.0, 0.0, 24.0, 0.0),
    ] {
        let got = local(&format!("2026-05-01T{start}"))
            .overlap(Time::hours(run), Time::hours(from), Time::hours(to))
            .si()
            / 3600.0;
        assert!(
            (got - want).abs() < 1e-9,
            "{start}, {run} h, night {from} to {to}: got {got}, want {want}"
        );
    }
}

#[test]
fn a_run_of_a_million_years_spends_a_third_of_them_in_the_night() {
    let days = 365.25e6;
    let night = local("2026-05-01T10:00").overlap(
        Time::seconds(days * 86_400.0),
        Time::hours(22.0),
        Time::hours(6.0),
    );
    assert!((night.si() / (days * 8.0 * 3600.0) - 1.0).abs() < 1e-6);
}
