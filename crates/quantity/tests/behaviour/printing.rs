//! Printed numbers. Wanted texts are rounded by hand.

use quantity::print::{Mark, clock_parts, exact, fixed, rounded, significant, with_unit};
use quantity::*;

#[test]
fn significant_digits_are_kept_without_an_exponent() {
    for (value, digits, want) in [
        (0.0, 3, "0"),
        (-0.0, 3, "0"),
        (0.0001234, 3, "0.000123"),
        (0.0001236, 3, "0.000124"),
        (1234.5, 3, "1230"),
        (1234.5, 2, "1200"),
        (1234.5, 4, "1234"),
        (1234.6, 4, "1235"),
        (999.96, 3, "1000"),
        (999.96, 4, "1000"),
        (999.4, 3, "999"),
        (99.96, 3, "100"),
        (9.996, 3, "10.0"),
        (0.9996, 3, "1.00"),
        (-17.64, 3, "-17.6"),
        (-0.00204, 2, "-0.0020"),
        (136.8, 3, "137"),
        (136.8, 2, "140"),
        (12.85, 3, "12.8"),
        (1e15, 3, "1000000000000000"),
        (5.0, 1, "5"),
        (5.0, 0, "5"),
    ] {
        assert_eq!(significant(value, digits), want, "case {value} to {digits}");
    }
}

#[test]
fn the_decimal_mark_is_the_persons() {
    let mm = &Length::UNITS[0];
    assert_eq!(rounded(Length::mm(17.64), mm, 3, Mark::Comma), "17,6");
    assert_eq!(rounded(Length::mm(17.64), mm, 3, Mark::Point), "17.6");
    assert_eq!(fixed(Length::mm(17.6), mm, 2, Mark::Comma), "17,60");
    assert_eq!(fixed(Length::mm(-0.0), mm, 2, Mark::Point), "0.00");
}

#[test]
fn a_unit_follows_after_a_space_that_does_not_break() {
    assert_eq!(with_unit("17.6", &Length::UNITS[0]), "17.6\u{a0}mm");
    assert_eq!(with_unit("1.3", &Ratio::UNITS[0]), "1.3");
    assert_eq!(exact(Length::mm(18.0), &Length::UNITS[0]), "18\u{a0}mm");
    assert_eq!(exact(Length::mm(-0.0), &Length::UNITS[0]), "0\u{a0}mm");
}

#[test]
fn a_time_is_said_to_the_second_below_ten_minutes_and_to_the_minute_above() {
    for (seconds, want) in [
        (0.0, (0, 0, Some(0))),
        (-5.0, (0, 0, Some(0))),
        (59.6, (0, 1, Some(0))),
        (87.3, (0, 1, Some(27))),
        (599.4, (0, 9, Some(59))),
        (599.6, (0, 10, None)),
        (1200.0, (0, 20, None)),
        (3599.0, (1, 0, None)),
        (46_260.0, (12, 51, None)),
        (90_000.0, (25, 0, None)),
    ] {
        assert_eq!(
            clock_parts(Time::seconds(seconds)),
            want,
            "case {seconds} s"
        );
    }
}
