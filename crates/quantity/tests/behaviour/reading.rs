//! What is understood from a text: text, unit of the field, want in SI, whether it is shown back.
//!
//! Wanted values are the units' definitions worked by hand (1 in = 25.4 mm, 1 oz = 28.349523125 g: NIST SP 811 App. B.8).

use crate::support::close;
use quantity::*;

type Row = (&'static str, &'static str, f64, bool);

const LENGTHS: &[Row] = &[
    ("17.6", "mm", 0.0176, false),
    ("17,6", "mm", 0.0176, true),
    ("17,6mm", "mm", 0.0176, true),
    ("17.6 mm", "mm", 0.0176, false),
    ("17.6\u{a0}mm", "mm", 0.0176, false),
    ("\u{202f}17.6\u{2009}mm ", "mm", 0.0176, false),
    ("1.5", "mm", 0.0015, false),
    ("1,5", "mm", 0.0015, true),
    ("1.", "mm", 0.001, false),
    ("1,", "mm", 0.001, true),
    (",5", "mm", 0.0005, true),
    (".5", "mm", 0.0005, false),
    ("+3", "mm", 0.003, false),
    ("-5", "mm", -0.005, false),
    ("\u{2212}5", "mm", -0.005, false),
    ("\u{2013}5", "mm", -0.005, false),
    ("0", "mm", 0.0, false),
    ("007", "mm", 0.007, false),
    ("1.76e1", "mm", 0.0176, false),
    ("1,76E+1 mm", "mm", 0.0176, true),
    ("2e-3 m", "mm", 0.002, true),
    ("1.76 cm", "mm", 0.0176, true),
    ("0.5 in", "mm", 0.0127, true),
    ("0.5\"", "mm", 0.0127, true),
    ("0.5\u{2033}", "mm", 0.0127, true),
    ("2 inches", "mm", 0.0508, true),
    ("2 IN", "mm", 0.0508, true),
    ("1 3/8 in", "mm", 0.034925, true),
    ("1  3/8in", "mm", 0.034925, true),
    ("3/8", "in", 0.009525, true),
    ("3/4 mm", "mm", 0.00075, true),
    ("-1 3/8 in", "mm", -0.034925, true),
    ("-0 3/8 in", "mm", -0.009525, true),
    ("250 um", "mm", 0.00025, true),
    ("250 \u{3bc}m", "mm", 0.00025, true),
    ("250 \u{b5}m", "mm", 0.00025, true),
    ("12 MM", "mm", 0.012, true),
];

const THICKNESSES: &[Row] = &[
    ("200", "µm", 200e-6, false),
    ("0,2 mm", "µm", 200e-6, true),
    ("1 mil", "µm", 25.4e-6, true),
    ("2 thou", "µm", 50.8e-6, true),
    ("100 microinch", "µm", 2.54e-6, true),
    ("100 uin", "µm", 2.54e-6, true),
];

const TIMES: &[Row] = &[
    ("6", "h", 21_600.0, false),
    ("1,5", "h", 5400.0, true),
    ("90 min", "h", 5400.0, true),
    ("90", "min", 5400.0, false),
    ("1:30", "h", 5400.0, true),
    ("1:30", "min", 5400.0, true),
    ("1:30 h", "h", 5400.0, true),
    ("1:30:20", "h", 5420.0, true),
    ("0:00", "h", 0.0, true),
    ("25:00", "h", 90_000.0, true),
    ("1 h 30", "h", 5400.0, true),
    ("1h30", "h", 5400.0, true),
    ("1 h 30 min", "h", 5400.0, true),
    ("2 h 15 min", "h", 8100.0, true),
    ("4 min 20 s", "h", 260.0, true),
    ("4 min 20", "h", 260.0, true),
    ("1 h 2 min 3 s", "h", 3723.0, true),
    ("1,5 h 6 min", "h", 5760.0, true),
    ("20 s", "h", 20.0, true),
    ("2 HOURS", "h", 7200.0, false),
    ("1 1/2 h", "h", 5400.0, true),
];

const CURRENTS: &[Row] = &[
    ("175", "mA", 0.175, false),
    ("175 mA", "mA", 0.175, false),
    ("0.175 A", "mA", 0.175, true),
    ("0,175 amps", "mA", 0.175, true),
    ("1.5", "A", 1.5, false),
    ("1500 milliamps", "A", 1.5, true),
    // Capitals of a phone's keypad: no bench has a megaampere, and what was read is shown back.
    ("175 MA", "mA", 0.175, true),
    ("175 ma", "mA", 0.175, false),
];

const DENSITIES: &[Row] = &[
    ("1.2", "A/dm²", 120.0, false),
    ("1.2 A/dm2", "A/dm²", 120.0, false),
    ("1.2 a/dm^2", "A/dm²", 120.0, false),
    ("1.2 A / dm²", "A/dm²", 120.0, false),
    ("12 mA/cm2", "A/dm²", 120.0, true),
    ("10 A/ft2", "A/dm²", 107.639_104_167_097_23, true),
    ("100 mA/in2", "A/dm²", 155.000_310_000_620, true),
];

const TEMPERATURES: &[Row] = &[
    ("22", "°C", 295.15, false),
    ("22 C", "°C", 295.15, false),
    ("22 °C", "°C", 295.15, false),
    ("-5 °C", "°C", 268.15, false),
    ("72 F", "°C", 295.372_222_222_222_2, true),
    ("32 °F", "°C", 273.15, true),
    ("212 degF", "°C", 373.15, true),
];

const MASSES: &[Row] = &[
    ("2.04", "g", 0.00204, false),
    ("340 mg", "g", 0.00034, true),
    ("1 oz", "g", 0.028_349_523_125, true),
    ("1 ozt", "g", 0.031_103_476_8, true),
    ("1 troy oz", "g", 0.031_103_476_8, true),
    ("1 dwt", "g", 0.001_555_173_84, true),
];

const RESISTANCES: &[Row] = &[
    ("0.3", "Ω", 0.3, false),
    ("0.3 ohm", "Ω", 0.3, false),
    ("0.3 \u{2126}", "Ω", 0.3, false),
    ("20 mΩ", "Ω", 0.02, true),
    ("20 milliohm", "Ω", 0.02, true),
    ("1.2 kΩ", "Ω", 1200.0, true),
    // Capital M is mega here: a meter on a coat does show it.
    ("1.2 MΩ", "Ω", 1.2e6, true),
    ("1.2 M\u{2126}", "Ω", 1.2e6, true),
    ("1.2 Mohm", "Ω", 1.2e6, true),
    ("20 m\u{2126}", "Ω", 0.02, true),
];

const SHEETS: &[Row] = &[
    ("154", "Ω/sq", 154.0, false),
    ("154 ohm/sq", "Ω/sq", 154.0, false),
    ("154 ohm", "Ω/sq", 154.0, false),
    ("154 Ω", "Ω/sq", 154.0, false),
    ("154 \u{2126}", "Ω/sq", 154.0, false),
];

const SHARES: &[Row] = &[
    ("98", "%", 0.98, false),
    ("98 %", "%", 0.98, false),
    ("98 percent", "%", 0.98, false),
    ("0,98", "", 0.98, true),
];

#[track_caller]
fn check<Q: Quantity>(rows: &[Row]) {
    for &(text, field, want, echo) in rows {
        let unit = unit::by_symbol(Q::UNITS, field).unwrap_or(&Q::UNITS[0]);
        assert_eq!(unit.symbol, field, "case {text:?}: the field's unit");
        match read::<Q>(text, unit) {
            Ok(got) => {
                assert!(
                    close(got.value.si(), want, 1e-14),
                    "case {text:?} in {field}: got {}, want {want}",
                    got.value.si()
                );
                assert_eq!(got.echo, echo, "case {text:?} in {field}: shown back");
            }
            Err(why) => panic!("case {text:?} in {field}: got {why:?}, want {want}"),
        }
    }
}

#[test]
fn sizes_are_read_with_either_mark_and_any_unit_of_length() {
    check::<Length>(LENGTHS);
}

#[test]
fn thicknesses_are_read_in_mils_and_microinches_too() {
    check::<Thickness>(THICKNESSES);
}

#[test]
fn times_are_read_as_clock_and_in_words() {
    check::<Time>(TIMES);
}

#[test]
fn currents_and_densities_are_read() {
    check::<Current>(CURRENTS);
    check::<CurrentDensity>(DENSITIES);
}

#[test]
fn temperatures_keep_their_offset() {
    check::<Temperature>(TEMPERATURES);
}

#[test]
fn masses_are_read_in_troy_weight_too() {
    check::<Mass>(MASSES);
}

#[test]
fn resistances_keep_milli_and_mega_apart() {
    check::<Resistance>(RESISTANCES);
    check::<SheetResistance>(SHEETS);
}

#[test]
fn shares_are_read_as_percent_in_a_percent_field() {
    check::<Fraction>(SHARES);
}
