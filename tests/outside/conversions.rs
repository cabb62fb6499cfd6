//! Units of trade against their definitions, both ways.

use crate::table::{Row, rows};
use chemistry::{faraday::FARADAY, kinetics::TAFEL_HALF};
use quantity::unit::by_symbol;
use quantity::{
    AreaResistance, Charge, Concentration, Conductivity, Current, CurrentDensity, Density,
    GrowthRate, Length, Mass, MassPerCharge, Quantity, Resistance, Temperature, Thickness, Time,
    Voltage, Volume, WorkArea, read,
};

#[track_caller]
fn there_and_back<Q: Quantity>(row: &Row) {
    let typed = row.text("text");
    let reading = match read::<Q>(typed, &Q::UNITS[0]) {
        Ok(reading) => reading,
        Err(why) => panic!("{row}: {typed:?} is not read: {why:?}"),
    };
    let unit =
        by_symbol(Q::UNITS, row.text("unit")).unwrap_or_else(|| panic!("{row}: no such unit"));
    row.expect_part(reading.value.in_unit(unit), 1e-12);

    let number: f64 = typed
        .split(' ')
        .next()
        .and_then(|n| n.parse().ok())
        .unwrap_or_else(|| panic!("{row}: {typed:?} does not start with a number"));
    let text = format!("{} {}", row.text("want"), unit.symbol);
    let back = match read::<Q>(&text, &Q::UNITS[0]) {
        Ok(back) => back.value.in_unit(reading.unit),
        Err(why) => panic!("{row}: {text:?} is not read: {why:?}"),
    };
    assert!(
        (back - number).abs() <= 1e-12 * number,
        "{row}: {text:?} is {back} {}, want {number}",
        reading.unit.symbol
    );
}

#[test]
fn units_of_trade_are_their_definitions_both_ways() {
    for row in &rows("conversions.csv") {
        match row.text("kind") {
            "Thickness" => there_and_back::<Thickness>(row),
            "Length" => there_and_back::<Length>(row),
            "WorkArea" => there_and_back::<WorkArea>(row),
            "CurrentDensity" => there_and_back::<CurrentDensity>(row),
            "Charge" => there_and_back::<Charge>(row),
            "Mass" => there_and_back::<Mass>(row),
            "Volume" => there_and_back::<Volume>(row),
            "Concentration" => there_and_back::<Concentration>(row),
            other => panic!("{row}: no kind {other}"),
        }
    }
}

#[test]
fn gauges_are_the_standards_formula_and_round_to_its_printed_table() {
    let all = rows("gauges.csv");
    assert_eq!(all.len(), 44);
    for row in &all {
        let typed = row.text("text");
        let Ok(reading) = read::<Length>(typed, &Length::UNITS[0]) else {
            panic!("{row}: {typed:?} is not read");
        };
        let mm = reading.value.si() * 1e3;
        let want = row.number("want_mm");
        // The column has 13 decimals.
        assert!(
            (mm - want).abs() <= 1e-12 * want + 1e-13,
            "{row}: got {mm}, want {want}"
        );
        // The printed columns are rounded: to five decimals of a millimetre, six of an inch.
        let printed = row.number("printed_mm");
        assert!(
            (mm - printed).abs() <= 5.001e-6,
            "{row}: {mm} against {printed}"
        );
        let inch = row.number("printed_inch");
        assert!(
            (mm / 25.4 - inch).abs() <= 5.001e-7,
            "{row}: {} in against {inch}",
            mm / 25.4
        );
        assert!(reading.echo, "{row}: a gauge is shown back as a length");
    }
}

#[test]
fn gauges_are_read_as_people_write_them_and_others_refused() {
    for (text, same) in [
        ("20 ga", "20 AWG"),
        ("20ga", "20 AWG"),
        ("AWG 20", "20 AWG"),
        ("20 gauge", "20 AWG"),
        ("B&S 18", "18 AWG"),
        ("4/0 awg", "0000 AWG"),
        ("00 ga", "00 AWG"),
    ] {
        let read = |t: &str| read::<Thickness>(t, &Thickness::UNITS[0]).map(|r| r.value.si());
        assert!(read(text).is_ok(), "{text}");
        assert_eq!(read(text), read(same), "{text}");
    }
    for text in [
        "41 ga",
        "-1 ga",
        "5/0 ga",
        "1.5 ga",
        "ga",
        "00000 AWG",
        "x AWG",
    ] {
        assert!(read::<Length>(text, &Length::UNITS[0]).is_err(), "{text}");
    }
}

#[test]
fn constants_are_the_published_ones() {
    for row in &rows("constants.csv") {
        match row.text("id") {
            "faraday" => row.expect_part(FARADAY.value.si(), 1e-12),
            // The catalogue holds it to its last printed digit, 0.051.
            "tafel_half" => row.expect(TAFEL_HALF.value.si(), 0.0005),
            other => panic!("{row}: no constant {other}"),
        }
    }
}

/// A typed text in SI.
#[track_caller]
fn typed<Q: Quantity>(row: &Row) -> f64 {
    match read::<Q>(row.text("text"), &Q::UNITS[0]) {
        Ok(reading) => reading.value.si(),
        Err(why) => panic!("{row} is not read: {why:?}"),
    }
}

#[test]
fn a_second_authority_reads_every_unit_the_same() {
    for row in &rows("units_second.csv") {
        let got = match row.text("kind") {
            "Current" => typed::<Current>(row),
            "CurrentDensity" => typed::<CurrentDensity>(row),
            "WorkArea" => typed::<WorkArea>(row),
            "Charge" => typed::<Charge>(row),
            "Time" => typed::<Time>(row),
            "Mass" => typed::<Mass>(row),
            "Length" => typed::<Length>(row),
            "Thickness" => typed::<Thickness>(row),
            "Volume" => typed::<Volume>(row),
            "Density" => typed::<Density>(row),
            "Concentration" => typed::<Concentration>(row),
            "Voltage" => typed::<Voltage>(row),
            "Resistance" => typed::<Resistance>(row),
            "AreaResistance" => typed::<AreaResistance>(row),
            "Conductivity" => typed::<Conductivity>(row),
            "MassPerCharge" => typed::<MassPerCharge>(row),
            "GrowthRate" => typed::<GrowthRate>(row),
            "Temperature" => typed::<Temperature>(row),
            "constant" => FARADAY.value.si(),
            other => panic!("{row}: no kind {other}"),
        };
        row.expect_part(got, 1e-12);
    }
}
