//! What holds for every unit of every kind.

use crate::support::{close, config, for_every_kind};
use proptest::prelude::*;
use quantity::print::exact;
use quantity::read::find_unit;
use quantity::*;

/// Numbers as they stand in a field: from a hair to a tonne, and no smaller part of a unit than 1e-9.
fn typed() -> impl Strategy<Value = f64> {
    prop_oneof![
        Just(0.0),
        1e-9..1e-3,
        1e-3..1.0,
        1.0..1e3,
        1e3..1e9,
        -1e3..-1e-3
    ]
}

#[test]
fn the_list_of_kinds_in_these_tests_is_complete() {
    fn count<Q: Quantity>(seen: &mut usize) {
        assert!(!Q::UNITS.is_empty(), "{}: no units", Q::KEY_UNIT);
        *seen += 1;
    }
    let mut seen = 0;
    for_every_kind!(count(&mut seen));
    let declared = include_str!("../../src/kinds.rs")
        .matches("\nkind!(")
        .count();
    assert_eq!(seen, declared, "add the new kind to support.rs");
}

fn every_spelling<Q: Quantity>() {
    for unit in Q::UNITS {
        for text in [unit.symbol].iter().chain(unit.also) {
            let found = find_unit(Q::UNITS, text).map(|u| u.symbol);
            let plain = text.is_empty();
            assert!(
                found == Some(unit.symbol) || plain,
                "{}: {text:?} is read as {found:?}, want {:?}",
                Q::KEY_UNIT,
                unit.symbol
            );
        }
    }
}

#[test]
fn every_spelling_in_the_table_is_read_as_its_unit() {
    for_every_kind!(every_spelling());
}

fn symbols_differ<Q: Quantity>() {
    for (n, unit) in Q::UNITS.iter().enumerate() {
        assert!(
            Q::UNITS[n + 1..].iter().all(|u| u.symbol != unit.symbol),
            "{}: two units print as {:?}",
            Q::KEY_UNIT,
            unit.symbol
        );
        assert!(
            unit.num > 0.0 && unit.den > 0.0,
            "{}: {:?}",
            Q::KEY_UNIT,
            unit.symbol
        );
    }
}

#[test]
fn no_two_units_of_a_kind_print_alike() {
    for_every_kind!(symbols_differ());
}

fn there_and_back<Q: Quantity>(number: f64) {
    for unit in Q::UNITS {
        let value = Q::from_unit(number, unit);
        let back = value.in_unit(unit);
        // A temperature's offset costs the digits it is larger by.
        let scale = number.abs() + (unit.offset * unit.den / unit.num).abs();
        assert!(
            (back - number).abs() <= 1e-14 * scale,
            "{} {:?}: {number} comes back as {back}",
            Q::KEY_UNIT,
            unit.symbol
        );
    }
}

fn printed_and_read<Q: Quantity>(number: f64) {
    for unit in Q::UNITS {
        let value = Q::from_unit(number, unit);
        let text = exact(value, unit);
        let got = match read::<Q>(&text, unit) {
            Ok(got) => got.value,
            Err(why) => panic!("{} {text:?}: {why:?}", Q::KEY_UNIT),
        };
        assert!(
            close(got.si(), value.si(), 1e-12),
            "{} {text:?}: got {}, want {}",
            Q::KEY_UNIT,
            got.si(),
            value.si()
        );
        let again = read::<Q>(&exact(got, unit), unit).map(|r| r.value);
        assert!(
            again.is_ok_and(|q| close(q.si(), got.si(), 1e-15)),
            "{} {text:?}: a second pass moves it",
            Q::KEY_UNIT
        );
    }
}

proptest! {
    #![proptest_config(config(500))]

    #[test]
    fn a_number_in_a_unit_comes_back_as_itself(number in typed()) {
        for_every_kind!(there_and_back(number));
    }

    #[test]
    fn what_the_exact_printer_writes_is_read_back_and_stays(number in typed()) {
        for_every_kind!(printed_and_read(number));
    }
}
