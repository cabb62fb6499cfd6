//! Elements and alloys against the tables they came from, against recalled handbook figures, and against two libraries.

use crate::table::{Row, rows};
use chemistry::alloy::ALLOYS;
use chemistry::element::{ELEMENTS, element_of};
use chemistry::substance::substance_of;
use chemistry::{Alloy, Element, faraday};
use quantity::{
    Charge, CurrentDensity, Density, Fraction, GrowthRate, Mass, MassPerCharge, Quantity,
    Thickness, Time, WorkArea,
};

const FULL: Fraction = Fraction::of_si(1.0);
const ONE: CurrentDensity = CurrentDensity::amp_per_dm2(1.0);

fn near(row: &Row, column: &str, got: f64, part: f64) {
    let want = row.number(column);
    assert!(
        (got - want).abs() <= part * want.abs(),
        "{row}: {column}: got {got}, want {want} within {part}; source: {}",
        row.text("source")
    );
}

fn element(row: &Row, column: &str) -> &'static Element {
    element_of(row.text(column)).unwrap_or_else(|| panic!("{row}: no such element"))
}

fn rate(equivalent: MassPerCharge, density: Density) -> f64 {
    faraday::growth_rate(equivalent, density, FULL, ONE).in_unit(&GrowthRate::UNITS[0])
}

fn mg_per_c(equivalent: MassPerCharge) -> f64 {
    equivalent.si() * 1e6
}

#[test]
fn every_element_is_the_table_s() {
    let rows = rows("elements.csv");
    assert_eq!(rows.len(), ELEMENTS.len());
    for row in &rows {
        let e = element(row, "symbol");
        assert_eq!(f64::from(e.number), row.number("Z"), "{row}");
        // Exact: the last bit is the division by 1000.
        near(
            row,
            "atomic_weight_g_mol",
            e.molar_mass.value.si() * 1e3,
            1e-15,
        );
        near(row, "density_g_cm3_20C", e.density.value.si() / 1e3, 1e-15);
        match row.maybe("resistivity_nohm_m_20C") {
            None => assert_eq!(e.resistivity.typical(), None, "{row}"),
            Some(_) => near(
                row,
                "resistivity_nohm_m_20C",
                e.resistivity.typical().map_or(f64::NAN, |r| r.si() * 1e9),
                1e-15,
            ),
        }
        let text = row.text("valence_in_baths_and_etch");
        for z in e.valences.value {
            assert!(
                text.contains(&format!("+{z}")) || text.contains(&format!("/+{z}")),
                "{row}: {z}"
            );
        }
        let never = text.contains("not deposited")
            || text.contains("alloy element")
            || text.contains("anodises");
        assert_eq!(e.deposits, !never, "{row}");
    }
}

#[test]
fn every_equivalent_is_the_calculated_one() {
    for row in &rows("electrochemical_equivalents.csv") {
        let e = element(row, "symbol");
        let z = row.number("z") as u8;
        assert!(
            e.valences.value.contains(&z),
            "{row}: not among its valences"
        );
        let q = faraday::equivalent(e.molar_mass.value, z);
        let d = e.density.value;
        near(row, "M_g_mol", e.molar_mass.value.si() * 1e3, 1e-9);
        near(row, "density_g_cm3", d.si() / 1e3, 1e-9);
        near(row, "mg_per_C", mg_per_c(q), 1e-3);
        near(row, "g_per_Ah", q.si() * 3.6e6, 1e-3);
        near(row, "um_per_h_at_1_A_dm2", rate(q, d), 1e-3);
        near(row, "um_per_min_at_1_A_dm2", rate(q, d) / 60.0, 1e-3);
        let minute = faraday::time_at(q, d, FULL, Thickness::um(1.0), ONE);
        near(
            row,
            "min_per_um_at_1_A_dm2",
            minute.map_or(f64::NAN, |t| t.si() / 60.0),
            1e-3,
        );
        let mil = faraday::mass_of(Thickness::um(25.4), d, WorkArea::cm2(929.0304));
        near(
            row,
            "Ah_per_ft2_per_mil",
            faraday::charge(q, FULL, mil).si() / 3600.0,
            1e-3,
        );
        // The handbook's own, as recalled: 0.11 % in g/Ah. Its charge per area carries the handbook's densities and is
        // off by up to 5 %, so it is not compared.
        near(row, "published_g_per_Ah", q.si() * 3.6e6, 1.2e-3);
    }
}

#[test]
fn every_alloy_is_the_table_s() {
    let rows = rows("alloys.csv");
    // The two that are laid down are no sheet and stand in no table of sheet.
    let laid_down = ["PdNi20", "CuSn8"];
    assert_eq!(rows.len() + laid_down.len(), ALLOYS.len());
    for row in &rows {
        let Some(a) = ALLOYS.iter().find(|a| a.id == row.text("designation")) else {
            panic!("{row}: no such alloy")
        };
        near(row, "density_g_cm3", a.density.value.si() / 1e3, 1e-15);
        composition(row, a);
        let q = a
            .equivalent()
            .unwrap_or_else(|| panic!("{row}: a part is no element"));
        near(row, "mg_per_C", mg_per_c(q), 1e-3);
        near(
            row,
            "etch_um_per_h_at_1_A_dm2",
            rate(q, a.density.value),
            1e-3,
        );
        let beyond = a.equivalent_beyond().unwrap_or(q);
        near(
            row,
            "etch_um_per_h_high_valence",
            rate(beyond, a.density.value),
            1e-3,
        );
        assert_eq!(a.note.is_some(), !row.text("note").is_empty(), "{row}");
        let by_parts: Vec<_> = a
            .parts
            .value
            .iter()
            .filter_map(|p| Some((p.share, element_of(p.element)?.density.value)))
            .collect();
        let mixed = chemistry::own::mixed_density(&by_parts);
        near(
            row,
            "mixing_rule_density",
            mixed.map_or(f64::NAN, |d| d.si() / 1e3),
            1e-3,
        );
    }
}

fn composition(row: &Row, a: &Alloy) {
    let wanted: Vec<(&str, f64)> = row
        .text("nominal_wt_percent")
        .split("; ")
        .filter_map(|part| part.split_once(' '))
        .map(|(symbol, percent)| (symbol, percent.parse().unwrap_or(f64::NAN)))
        .collect();
    let got = a.parts.value;
    assert_eq!(got.len(), wanted.len(), "{row}");
    let valences = row.text("dissolution_valences_assumed");
    for (part, (symbol, percent)) in got.iter().zip(wanted) {
        assert_eq!(part.element, symbol, "{row}");
        assert!(
            (part.share.si() * 100.0 - percent).abs() < 1e-12,
            "{row}: {symbol}"
        );
        assert!(
            valences.contains(&format!("{symbol}{}+", part.valence)),
            "{row}: {symbol}"
        );
    }
}

#[test]
fn two_libraries_agree() {
    for row in &rows("second_authority.csv") {
        let id = row.text("id");
        let part = row.number("tolerance_part");
        let got = match row.text("kind") {
            "mass" => element_of(id).map(|e| e.molar_mass.value.si() * 1e3),
            "density" => element_of(id).map(|e| e.density.value.si() / 1e3),
            "share" => substance_of(id).and_then(|s| Some(s.metal_share.typical()?.si())),
            other => panic!("{row}: no such kind {other}"),
        };
        row.expect_part(
            got.unwrap_or_else(|| panic!("{row}: not in the catalogue")),
            part,
        );
    }
}

#[test]
fn forward_then_inverse() {
    for e in ELEMENTS {
        for &z in e.valences.value {
            let q = faraday::equivalent(e.molar_mass.value, z);
            let d = e.density.value;
            let share = Fraction::of_si(0.6);
            let i = CurrentDensity::amp_per_dm2(1.7);
            let t = Time::minutes(37.0);
            let area = WorkArea::cm2(23.0);
            let grown = faraday::thickness(q, d, share, i, t);
            let same = |got: f64, want: f64| {
                assert!((got - want).abs() < 1e-12 * want, "{}: {got} {want}", e.id)
            };
            same(faraday::density_for(q, d, share, grown, t).si(), i.si());
            same(
                faraday::time_at(q, d, share, grown, i).map_or(0.0, |t| t.si()),
                t.si(),
            );
            let mass: Mass = faraday::mass_of(grown, d, area);
            let charge: Charge = i * area * t;
            same(faraday::mass(q, share, charge).si(), mass.si());
            same(faraday::charge(q, share, mass).si(), charge.si());
            same(
                faraday::thickness_of(mass, d, area).map_or(0.0, |x| x.si()),
                grown.si(),
            );
            same(
                faraday::current_for(q, share, mass, t).map_or(0.0, |x| x.si()),
                (i * area).si(),
            );
            same(
                faraday::time_for_mass(q, share, mass, i * area).map_or(0.0, |x| x.si()),
                t.si(),
            );
            same(
                faraday::efficiency_of(q, mass, charge).map_or(0.0, |x| x.si()),
                0.6,
            );
        }
    }
}
