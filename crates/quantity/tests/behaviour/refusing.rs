//! What cannot be read, and what is said about it.

use quantity::Unreadable::{Empty, NotANumber, NotFinite, TwoMarks, UnknownUnit};
use quantity::*;

type Row = (&'static str, fn(String) -> Unreadable, &'static str);

fn empty(_: String) -> Unreadable {
    Empty
}

const SIZES: &[Row] = &[
    ("", empty, ""),
    ("   ", empty, ""),
    ("\u{a0}\t\n", empty, ""),
    ("--", NotANumber, "--"),
    ("-", NotANumber, "-"),
    (".", NotANumber, "."),
    (",", NotANumber, ","),
    ("mm", NotANumber, "mm"),
    ("about 18", NotANumber, "about 18"),
    ("NaN", NotANumber, "NaN"),
    ("inf", NotANumber, "inf"),
    ("-inf", NotANumber, "-inf"),
    ("infinity mm", NotANumber, "infinity mm"),
    ("+-5", NotANumber, "+-5"),
    ("½", NotANumber, "½"),
    ("1 500", NotANumber, "1 500"),
    ("1 2 3/8", NotANumber, "1 2 3/8"),
    ("3/", NotANumber, ""),
    ("1.5.2", TwoMarks, "1.5.2"),
    ("1,500.0", TwoMarks, "1,500.0"),
    ("1.500,0 mm", TwoMarks, "1.500,0 mm"),
    ("1..5", TwoMarks, "1..5"),
    ("..", TwoMarks, ".."),
    ("3/0", NotFinite, "3/0"),
    ("0/0", NotFinite, "0/0"),
    ("1 3/0 in", NotFinite, "1 3/0 in"),
    ("1e999", NotFinite, "1e999"),
    ("-1e999 mm", NotFinite, "-1e999 mm"),
    ("15 mn", UnknownUnit, "mn"),
    ("15 g", UnknownUnit, "g"),
    ("15 mm wide", UnknownUnit, "mm wide"),
    ("15 x 3", UnknownUnit, "x 3"),
    ("1'500", UnknownUnit, "'500"),
    ("0x10", UnknownUnit, "x10"),
    ("1e", UnknownUnit, "e"),
    ("1:30", UnknownUnit, ":30"),
    ("1-2", UnknownUnit, "-2"),
    ("5%", UnknownUnit, "%"),
];

const TIMES: &[Row] = &[
    ("15 mn", UnknownUnit, "mn"),
    ("1:75", NotANumber, "1:75"),
    ("1:5", NotANumber, "1:5"),
    ("1:30:75", NotANumber, "1:30:75"),
    ("1:2:3:4", NotANumber, "1:2:3:4"),
    (":30", NotANumber, ":30"),
    ("1:", NotANumber, "1:"),
    ("-1:30", NotANumber, "-1:30"),
    ("1:30 min", NotANumber, "1:30 min"),
    ("9999999:00", NotANumber, "9999999:00"),
    ("1.5.2", TwoMarks, "1.5.2"),
    // Units must fall: which of the two is meant is a question.
    ("30 min 1 h", UnknownUnit, "min 1 h"),
    ("1 h 2 h", UnknownUnit, "h 2 h"),
    // A sign inside is a range or a slip, never a sum.
    ("1 h -30 min", UnknownUnit, "h -30 min"),
    ("1h-30", UnknownUnit, "h-30"),
    ("-1 h 30 min", UnknownUnit, "h 30 min"),
];

const CURRENTS: &[Row] = &[
    ("175 m", UnknownUnit, "m"),
    ("175 V", UnknownUnit, "V"),
    ("175 A/dm2", UnknownUnit, "A/dm2"),
];

#[track_caller]
fn check<Q: Quantity>(rows: &[Row]) {
    for &(text, why, about) in rows {
        assert_eq!(
            read::<Q>(text, &Q::UNITS[0]),
            Err(why(about.to_owned())),
            "case {text:?}"
        );
    }
}

#[test]
fn a_size_that_cannot_be_read_says_why() {
    check::<Length>(SIZES);
}

#[test]
fn a_time_that_cannot_be_read_says_why() {
    check::<Time>(TIMES);
}

#[test]
fn a_current_in_another_kind_of_unit_is_refused() {
    check::<Current>(CURRENTS);
}
