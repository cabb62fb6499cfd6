//! The reader never panics, and never gives what is no number.

use crate::support::{config, for_every_kind};
use proptest::prelude::*;
use quantity::*;

fn reads_or_refuses<Q: Quantity>(text: &str) {
    for unit in Q::UNITS {
        if let Ok(reading) = read::<Q>(text, unit) {
            assert!(
                reading.value.si().is_finite(),
                "{} {text:?}: {}",
                Q::KEY_UNIT,
                reading.value.si()
            );
        }
    }
}

proptest! {
    #![proptest_config(config(2000))]

    #[test]
    fn any_text_is_read_or_refused(text in any::<String>()) {
        for_every_kind!(reads_or_refuses(&text));
    }

    #[test]
    fn any_text_of_the_right_letters_is_read_or_refused(
        text in "[-+−0-9.,:/ eEhmsinµμΩ\"²A\u{a0}%°CFkglo]{0,14}"
    ) {
        for_every_kind!(reads_or_refuses(&text));
    }

    #[test]
    fn a_plain_number_reads_the_same_with_comma_and_point(whole in 0u32..100_000, part in 0u32..1000) {
        let mm = &Length::UNITS[0];
        let point = read::<Length>(&format!("{whole}.{part:03}"), mm).map(|r| r.value);
        let comma = read::<Length>(&format!("{whole},{part:03}"), mm).map(|r| r.value);
        prop_assert!(point.is_ok());
        prop_assert_eq!(point, comma);
    }

    #[test]
    fn a_clock_reads_as_hours_minutes_seconds(h in 0u32..1000, m in 0u32..60, s in 0u32..60) {
        let hours = &Time::UNITS[0];
        let want = Ok(Time::seconds(f64::from(h * 3600 + m * 60 + s)));
        prop_assert_eq!(read::<Time>(&format!("{h}:{m:02}:{s:02}"), hours).map(|r| r.value), want.clone());
        prop_assert_eq!(read::<Time>(&format!("{h} h {m} min {s} s"), hours).map(|r| r.value), want);
    }
}
