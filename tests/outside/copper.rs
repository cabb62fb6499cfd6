//! Copper's electrochemical equivalent, and how evenly an acid bath throws.

use crate::table::rows;
use chemistry::{Catalogue, faraday, kinetics};
use quantity::{
    CurrentDensity, Fraction, GrowthRate, MassPerCharge, Quantity, Thickness, WorkArea,
};

const FULL: Fraction = Fraction::of_si(1.0);

#[test]
fn the_equivalent_of_copper_is_the_tabulated_one() {
    let Some(copper) = Catalogue::standard().element("Cu") else {
        panic!("no copper in the catalogue")
    };
    let density = copper.density.value;
    let equivalent = faraday::equivalent(copper.molar_mass.value, 2);
    let [per_ah, _, per_c] = MassPerCharge::UNITS else {
        panic!("units of an equivalent")
    };
    let rate: GrowthRate =
        faraday::growth_rate(equivalent, density, FULL, CurrentDensity::amp_per_dm2(1.0));
    for row in &rows("copper_equivalent.csv") {
        let got = match row.text("what") {
            "mg/C" => equivalent.in_unit(per_c),
            "g/Ah" => equivalent.in_unit(per_ah),
            "um/h at 1 A/dm2" => rate.in_unit(&GrowthRate::UNITS[0]),
            "min per um at 1 A/dm2" => faraday::time_for(Thickness::um(1.0), rate).si() / 60.0,
            "Ah per ft2 per mil" => {
                let mil = Thickness::um(25.4);
                let foot = WorkArea::cm2(929.0304);
                faraday::charge(equivalent, FULL, density * mil * foot).si() / 3600.0
            }
            other => panic!("{row}: no such figure {other}"),
        };
        row.expect(got, row.number("tolerance"));
    }
}

#[test]
fn an_acid_copper_bath_reaches_as_far_as_its_conductivity_and_slope_say() {
    let Some(bath) = Catalogue::standard().solution("cu_acid_form") else {
        panic!("no acid copper in the catalogue")
    };
    let (Some(kappa), Some(slope)) = (bath.conductivity.typical(), bath.slope.typical()) else {
        panic!("conductivity and slope must be known")
    };
    for row in &rows("acid_copper_reach.csv") {
        let i = CurrentDensity::amp_per_dm2(row.number("A_per_dm2"));
        let got = match row.text("what") {
            "polarisation_ohm_cm2" => kinetics::polarisation_resistance(slope, i).si() * 1e4,
            "evenness_cm" => kinetics::evenness_length(kappa, slope, i).si() * 100.0,
            other => panic!("{row}: no such figure {other}"),
        };
        row.expect(got, row.number("tolerance"));
    }
}
