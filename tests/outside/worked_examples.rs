//! Published problems on Faraday's laws, recomputed with today's masses and constant.
//!
//! Where the printed answer is known to be wrong, `want` is the right one and `never` the printed one.

use crate::table::{Row, rows};
use chemistry::faraday::{self, FARADAY};
use quantity::{
    Charge, Current, CurrentDensity, Density, Fraction, Mass, MassPerCharge, MolarMass, Quantity,
    Thickness, Time, WorkArea,
};

struct Problem<'r> {
    row: &'r Row,
    equivalent: MassPerCharge,
    efficiency: Fraction,
}

impl Problem<'_> {
    fn current(&self) -> Current {
        Current::ampere(self.row.number("current_A"))
    }

    fn time(&self) -> Time {
        Time::seconds(self.row.number("time_s"))
    }

    fn density(&self) -> Density {
        Density::g_per_cm3(self.row.number("density_g_cm3"))
    }

    fn area(&self) -> WorkArea {
        WorkArea::cm2(self.row.number("area_cm2"))
    }

    fn thickness(&self) -> Thickness {
        Thickness::um(self.row.number("thickness_um"))
    }

    fn current_density(&self) -> CurrentDensity {
        self.current() / self.area()
    }

    /// The mass that is given, or that of a layer.
    fn given_mass(&self) -> Mass {
        match self.row.maybe("mass_g") {
            Some(grams) => Mass::gram(grams),
            None => self.density() * self.thickness() * self.area(),
        }
    }

    /// In SI.
    fn answer(&self) -> f64 {
        let given_charge = || self.current() * self.time();
        let needed_charge = || faraday::charge(self.equivalent, self.efficiency, self.given_mass());
        match self.row.text("asked") {
            "mass" => faraday::mass(self.equivalent, self.efficiency, given_charge()).si(),
            "charge" => needed_charge().si(),
            "current" => (needed_charge() / self.time()).si(),
            "moles" => given_charge().si() / FARADAY.value.si(),
            // The row's equivalent is that of one charge: how many times it fits.
            "valence" => given_charge().si() / needed_charge().si(),
            "mass left" => (self.given_mass()
                - faraday::mass(self.equivalent, self.efficiency, given_charge()))
            .si(),
            "time" if self.row.maybe("mass_g").is_some() => {
                let charge: Charge = needed_charge();
                charge.si() / self.current().si()
            }
            "time" => {
                let rate = faraday::growth_rate(
                    self.equivalent,
                    self.density(),
                    self.efficiency,
                    self.current_density(),
                );
                faraday::time_for(self.thickness(), rate).si()
            }
            "thickness" => {
                let rate = faraday::growth_rate(
                    self.equivalent,
                    self.density(),
                    self.efficiency,
                    self.current_density(),
                );
                (rate * self.time()).si()
            }
            other => panic!("{}: asks for {other}", self.row),
        }
    }
}

fn in_si(row: &Row) -> f64 {
    match row.text("unit") {
        "g" | "g/s" => 1e-3,
        "kg" | "s" | "C" | "A" | "mol" | "charge number" => 1.0,
        "h" => 3600.0,
        "min" => 60.0,
        "um" => 1e-6,
        "mm" => 1e-3,
        "cm" => 1e-2,
        other => panic!("{row}: no unit {other}"),
    }
}

#[test]
fn published_problems_come_out_right_and_wrong_answers_do_not_come_back() {
    for row in &rows("worked_examples.csv") {
        let problem = Problem {
            row,
            equivalent: faraday::equivalent(
                MolarMass::g_per_mol(row.number("molar_mass_g_mol")),
                row.number("valence") as u8,
            ),
            efficiency: Fraction::of_si(row.number("efficiency")),
        };
        let got = problem.answer() / in_si(row);
        row.expect_part(got, row.number("tolerance_percent") / 100.0);
        if let Some(never) = row.maybe("never") {
            assert!(
                (got / never - 1.0).abs() > 0.05,
                "{row}: got {got}, the wrong printed answer {never}; source: {}",
                row.text("source")
            );
        }
    }
}

#[test]
fn every_published_problem_is_checked_or_left_out_for_a_reason() {
    let checked = rows("worked_examples.csv");
    let left_out = rows("worked_examples_left_out.csv");
    assert!(checked.len() >= 33, "{} are checked", checked.len());
    for row in &left_out {
        assert!(!row.text("reason").is_empty(), "{row}: no reason");
    }
    let mut numbers: Vec<&str> = checked
        .iter()
        .chain(&left_out)
        .map(|row| &row.text("case")[..3])
        .collect();
    numbers.sort_unstable();
    let want: Vec<String> = (1..=37).map(|n| format!("W{n:02}")).collect();
    assert_eq!(numbers, want);
}

#[test]
fn the_density_for_a_thickness_in_a_time_is_the_one_that_grows_it() {
    for row in &rows("worked_examples.csv") {
        if row.text("asked") != "thickness" {
            continue;
        }
        let equivalent = faraday::equivalent(
            MolarMass::g_per_mol(row.number("molar_mass_g_mol")),
            row.number("valence") as u8,
        );
        let grown = Thickness::from_si(row.number("want") * in_si(row));
        let i = faraday::density_for(
            equivalent,
            Density::g_per_cm3(row.number("density_g_cm3")),
            Fraction::of_si(row.number("efficiency")),
            grown,
            Time::seconds(row.number("time_s")),
        );
        let want = row.number("current_A") / row.number("area_cm2") * 1e4;
        assert!(
            (i.si() / want - 1.0).abs() < 1e-3,
            "{row}: got {} A/m2, want {want}; source: {}",
            i.si(),
            row.text("source")
        );
    }
}
