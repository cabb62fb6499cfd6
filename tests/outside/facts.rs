//! Facts of the trade. Common practice, no source; their arithmetic is checked, not their wisdom.

use crate::table::rows;
use chemistry::{Catalogue, faraday};
use quantity::{CurrentDensity, Fraction, GrowthRate, Quantity, read};

#[test]
fn the_rule_of_100_milliampere_per_square_inch_is_what_it_is_said_to_be() {
    let units = CurrentDensity::UNITS;
    let Ok(rule) = read::<CurrentDensity>("100 mA/in2", &units[0]) else {
        panic!("the rule must be readable as it is written")
    };
    let Some(copper) = Catalogue::standard().element("Cu") else {
        panic!("no copper in the catalogue")
    };
    let rate = faraday::growth_rate(
        faraday::equivalent(copper.molar_mass.value, 2),
        copper.density.value,
        Fraction::of_si(0.98),
        rule.value,
    );
    for row in &rows("facts.csv") {
        let got = match row.text("what") {
            "A_per_dm2" => rule.value.in_unit(&units[0]),
            "um_per_h" => rate.in_unit(&GrowthRate::UNITS[0]),
            other => panic!("{row}: no such fact {other}"),
        };
        row.expect(got, row.number("tolerance"));
    }
}
