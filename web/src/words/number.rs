//! Numbers as people read them: likely values to three digits, ends to two, times to the second below ten minutes.

use crate::state::units::Units;
use quantity::print::{self, Mark, clock_parts, with_unit};
use quantity::{
    AnyQuantity, Current, CurrentDensity, GrowthRate, Length, Mass, Quantity, Thickness, Time,
    Unit, Voltage, WorkArea, unit,
};
use std::cell::Cell;

thread_local! {
    static PRINTED: Cell<(Units, Mark)> = const { Cell::new((Units::Metric, Mark::Point)) };
}

/// Says how all numbers are printed from now on; true where that is another way than before.
pub fn print_in(units: Units, mark: Mark) -> bool {
    PRINTED.replace((units, mark)) != (units, mark)
}

/// How all numbers are printed by now.
pub fn printed() -> (Units, Mark) {
    PRINTED.get()
}

/// A number to `digits` significant digits, with the preferred mark.
pub fn significant(value: f64, digits: usize) -> String {
    marked(print::significant(value, digits))
}

/// The same without zeros at the end of its decimals.
pub fn short(value: f64, digits: usize) -> String {
    marked(plain(print::significant(value, digits)))
}

/// A number to `places` decimal places.
fn places(value: f64, places: usize) -> String {
    let text = format!("{value:.places$}");
    // What rounds to nothing has no sign.
    let nothing = text.bytes().all(|b| b"-0.".contains(&b));
    marked(text[usize::from(nothing && text.starts_with('-'))..].to_owned())
}

fn marked(text: String) -> String {
    match PRINTED.get().1 {
        Mark::Point => text,
        Mark::Comma => text.replace('.', ","),
    }
}

fn unit_of<Q: Quantity>(symbol: &str) -> &'static Unit {
    unit::by_symbol(Q::UNITS, symbol).unwrap_or(&Q::UNITS[0])
}

/// The preferred unit where `symbol` is the metric one.
fn preferred<Q: Quantity>(symbol: &'static str) -> &'static Unit {
    unit_of::<Q>(PRINTED.get().0.symbol(symbol))
}

fn in_unit<Q: Quantity>(value: Q, symbol: &'static str, digits: usize) -> String {
    let unit = preferred::<Q>(symbol);
    with_unit(&significant(value.in_unit(unit), digits), unit)
}

/// A current and its unit apart, for the large figure; at most as fine as `step`.
pub fn current_parts(value: Current, step: Option<Current>) -> (String, &'static str) {
    let amperes = value.si();
    let symbol = if amperes.abs() < 0.9995 { "mA" } else { "A" };
    let unit = unit_of::<Current>(symbol);
    let number = value.in_unit(unit);
    let text = match step {
        // As many places as the display step has.
        Some(step) => {
            let places = places_of(step.in_unit(unit));
            self::places(number, places)
        }
        None => significant(number, 3),
    };
    (text, symbol)
}

/// A current with its unit.
pub fn current(value: Current, step: Option<Current>) -> String {
    let (number, symbol) = current_parts(value, step);
    format!("{number}\u{a0}{symbol}")
}

/// The same without zeros at the end of its decimals.
pub fn short_current(value: Current) -> String {
    let symbol = current_parts(value, None).1;
    in_symbol(value.into(), symbol, 3)
}

/// Decimal places needed to show every multiple of `step`, at most 4.
fn places_of(step: f64) -> usize {
    (0..4)
        .find(|&places| {
            let scaled = step * [1.0, 10.0, 100.0, 1000.0][places];
            (scaled - scaled.round()).abs() < 1e-6 * scaled.abs()
        })
        .unwrap_or(4)
}

/// A density, three digits.
pub fn density(value: CurrentDensity) -> String {
    in_unit(value, "A/dm²", 3)
}

/// The number of a density alone.
pub fn density_parts(value: CurrentDensity) -> String {
    significant(value.in_unit(unit_of::<CurrentDensity>("A/dm²")), 3)
}

/// A thickness, three digits.
pub fn thickness(value: Thickness) -> String {
    in_unit(value, "µm", 3)
}

/// The same without zeros at the end of its decimals.
pub fn thickness_plain(value: Thickness) -> String {
    in_symbol(value.into(), "µm", 3)
}

/// The number of a thickness alone, `digits` digits.
pub fn micrometres(value: Thickness, digits: usize) -> String {
    significant(value.in_unit(preferred::<Thickness>("µm")), digits)
}

/// The same without zeros at the end of its decimals.
pub fn micrometres_plain(value: Thickness, digits: usize) -> String {
    short(value.in_unit(preferred::<Thickness>("µm")), digits)
}

/// The unit thicknesses are printed in.
pub fn thickness_unit() -> &'static str {
    preferred::<Thickness>("µm").symbol
}

/// A voltage, to a tenth.
pub fn tenth_volts(value: Voltage) -> String {
    places(value.si(), 1)
}

/// A voltage to set, to a hundredth.
pub fn hundredth_volts(value: Voltage) -> String {
    places(value.si(), 2)
}

/// The same with its unit.
pub fn volts(value: Voltage) -> String {
    hundredth_volts(value) + "\u{a0}V"
}

/// An area, three digits.
pub fn area(value: WorkArea) -> String {
    in_unit(value, "cm²", 3)
}

/// A length to a hundredth of a millimetre, or a thousandth of an inch.
pub fn millimetres(value: Length) -> String {
    let unit = preferred::<Length>("mm");
    let fine = if unit.symbol == "mm" { 2 } else { 3 };
    with_unit(&places(value.in_unit(unit), fine), unit)
}

/// A mass to 0.01 g, under 0.1 g in mg.
pub fn mass(value: Mass) -> String {
    if value.si() < 1e-4 {
        in_unit(value, "mg", 2)
    } else {
        let unit = unit_of::<Mass>("g");
        with_unit(&places(value.in_unit(unit), 2), unit)
    }
}

/// A growth rate, three digits.
pub fn growth(value: GrowthRate) -> String {
    in_unit(value, "µm/h", 3)
}

/// A length of time: `45 s`, `4 min 20 s`, `6 h 20 min`.
pub fn time(value: Time) -> String {
    let (hours, minutes, seconds) = clock_parts(value);
    let mut parts = Vec::new();
    if hours > 0 {
        parts.push(format!("{hours}\u{a0}h"));
    }
    if minutes > 0 || (hours == 0 && seconds.is_none()) {
        parts.push(format!("{minutes}\u{a0}min"));
    }
    if let Some(seconds) = seconds
        && (seconds > 0 || minutes == 0)
    {
        parts.push(format!("{seconds}\u{a0}s"));
    }
    parts.join(" ")
}

/// A share in whole per cent, one digit below one.
pub fn percent(share: f64) -> String {
    let percent = share * 100.0;
    if percent < 1.0 {
        format!("{}\u{a0}%", significant(percent, 1))
    } else {
        format!("{}\u{a0}%", places(percent, 0))
    }
}

/// A volume, three digits.
pub fn volume(value: quantity::Volume) -> String {
    in_symbol(value.into(), PRINTED.get().0.symbol("L"), 3)
}

/// Any named value of the working, in its trade unit, four digits.
pub fn any(value: AnyQuantity) -> String {
    let si = value.si;
    match value.key_unit {
        "A" => current(Current::from_si(si), None),
        "s" => time(Time::from_si(si)),
        "kg" => mass(Mass::from_si(si)),
        "m3" => in_symbol(value, PRINTED.get().0.symbol("L"), 4),
        // A difference: no bath is as cold.
        "K" if si < 200.0 => format!("{}\u{a0}K", short(si, 3)),
        "W_per_K" => format!("{}\u{a0}W/K", short(si, 3)),
        "K" => in_symbol(value, PRINTED.get().0.symbol("°C"), 3),
        "count" => format!("{si:.0}"),
        "m2_per_s" => format!("{}\u{a0}cm²/s", powers_of_ten(si * 1e4)),
        "kg_per_mol" | "C_per_mol" => in_symbol(value, "", 6),
        "m" if si.abs() >= 1e-3 => in_symbol(value, "mm", 4),
        "m" => in_symbol(value, "µm", 4),
        "kg_per_m3" if si <= 1000.0 => in_symbol(value, "g/L", 4),
        _ => in_symbol(value, "", 4),
    }
}

/// A value in the unit of this symbol, or in its kind's first unit; no unit for a plain number.
pub fn in_unit_of(value: AnyQuantity, symbol: &str) -> (f64, Option<&'static Unit>) {
    fn of<Q: Quantity>(si: f64, symbol: &str) -> (f64, Option<&'static Unit>) {
        let unit = unit_of::<Q>(symbol);
        (Q::from_si(si).in_unit(unit), Some(unit))
    }
    let si = value.si;
    match value.key_unit {
        "A" => of::<Current>(si, symbol),
        "s" => of::<Time>(si, symbol),
        "m" if symbol == "mm" || symbol == "in" => of::<Length>(si, symbol),
        "m" => of::<Thickness>(si, symbol),
        "kg" => of::<Mass>(si, symbol),
        "A_per_m2" => of::<CurrentDensity>(si, symbol),
        "m2" => of::<WorkArea>(si, symbol),
        "C" => of::<quantity::Charge>(si, symbol),
        "m_per_s" => of::<GrowthRate>(si, symbol),
        "m3" => of::<quantity::Volume>(si, symbol),
        "K" => of::<quantity::Temperature>(si, symbol),
        "kg_per_m3" if symbol == "g/L" || symbol == "oz/US gal" => {
            of::<quantity::Concentration>(si, symbol)
        }
        "kg_per_m3" => of::<quantity::Density>(si, symbol),
        "V" => of::<Voltage>(si, symbol),
        "ohm" => of::<quantity::Resistance>(si, symbol),
        "ohm_m2" => of::<quantity::AreaResistance>(si, symbol),
        "W" => of::<quantity::Power>(si, symbol),
        "S_per_m" => of::<quantity::Conductivity>(si, symbol),
        "kg_per_C" => of::<quantity::MassPerCharge>(si, symbol),
        "kg_per_mol" => of::<quantity::MolarMass>(si, symbol),
        "C_per_mol" => of::<quantity::MolarCharge>(si, symbol),
        "frac" => of::<quantity::Fraction>(si, symbol),
        "money_per_kg" => of::<quantity::MoneyPerMass>(si, symbol),
        _ => (si, None),
    }
}

/// The same as text; zeros at the end are dropped.
pub fn in_symbol(value: AnyQuantity, symbol: &str, digits: usize) -> String {
    let (number, unit) = in_unit_of(value, symbol);
    let number = short(number, digits);
    unit.map_or_else(|| number.clone(), |unit| with_unit(&number, unit))
}

/// A value as a bare number in the preferred unit for this metric one.
pub fn bare(value: AnyQuantity, metric: &'static str) -> String {
    let symbol = PRINTED.get().0.symbol(metric);
    let all = in_symbol(value, symbol, 3);
    all.trim_end_matches(symbol).trim_end().to_owned()
}

/// Without zeros at the end of its decimals.
pub fn plain(text: String) -> String {
    if text.contains('.') {
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    } else {
        text
    }
}

/// `5.5 × 10⁻⁶`: for numbers no one counts the zeros of.
fn powers_of_ten(value: f64) -> String {
    let text = marked(format!("{value:.1e}"));
    let (front, power) = text.split_once('e').unwrap_or((text.as_str(), "0"));
    let raised: String = power
        .chars()
        .map(|c| match c {
            '-' => '⁻',
            c => "⁰¹²³⁴⁵⁶⁷⁸⁹"
                .chars()
                .nth(c.to_digit(10).unwrap_or(0) as usize)
                .unwrap_or(c),
        })
        .collect();
    format!("{front}\u{a0}×\u{a0}10{raised}")
}

/// `16:20`, or `Sat 10:54` on another day than `start`. Both as `2026-05-01T10:00`.
pub fn moment(local: &str, start: &str) -> String {
    let (day, time) = local.split_once('T').unwrap_or(("", local));
    let first = start.split_once('T').map_or("", |(d, _)| d);
    if day == first {
        return time.to_owned();
    }
    format!("{}\u{a0}{time}", super::labels::weekday(weekday_index(day)))
}

/// Day of the week, 0 = Monday, of `2026-05-01` (Zeller's congruence).
pub(super) fn weekday_index(day: &str) -> usize {
    let parts: Vec<i64> = day.split('-').filter_map(|p| p.parse().ok()).collect();
    let [y, m, d] = parts[..] else { return 0 };
    let (y, m) = if m < 3 { (y - 1, m + 12) } else { (y, m) };
    let h = (d + 13 * (m + 1) / 5 + y + y / 4 - y / 100 + y / 400) % 7;
    ((h + 5) % 7) as usize
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_current_is_never_finer_than_its_display() {
        let step = Some(Current::milliampere(10.0));
        assert_eq!(current(Current::ampere(0.14), step), "140\u{a0}mA");
        assert_eq!(current(Current::ampere(1.5), step), "1.50\u{a0}A");
        assert_eq!(
            current(Current::ampere(0.0523), Some(Current::milliampere(0.1))),
            "52.3\u{a0}mA"
        );
        assert_eq!(current(Current::ampere(0.13684), None), "137\u{a0}mA");
    }

    #[test]
    fn times_are_said_to_the_second_below_ten_minutes() {
        let said = |s: f64| time(Time::seconds(s)).replace('\u{a0}', " ");
        assert_eq!(said(45.0), "45 s");
        assert_eq!(said(260.4), "4 min 20 s");
        assert_eq!(said(600.0), "10 min");
        assert_eq!(said(22_800.0), "6 h 20 min");
        assert_eq!(said(7200.0), "2 h");
    }

    #[test]
    fn another_day_is_named() {
        assert_eq!(moment("2026-05-01T16:20", "2026-05-01T10:00"), "16:20");
        assert_eq!(
            moment("2026-05-02T10:54", "2026-05-01T10:00"),
            "Sat\u{a0}10:54"
        );
        assert_eq!(
            moment("2026-11-25T08:00", "2026-11-24T10:00"),
            "Wed\u{a0}08:00"
        );
    }
}
