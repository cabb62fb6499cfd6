//! The page as plain HTML says what the answer says.

use planner::{Catalogue, answer};
use quantity::{CurrentDensity, WorkArea};
use web::still::{AREAS, DENSITIES, cell, html, question};

#[test]
fn every_cell_is_the_answers_own_number() {
    let html = html().replace('\u{a0}', " ");
    for area in AREAS {
        let mut row = format!("<tr><th scope=\"row\">{area} cm²</th>");
        for density in DENSITIES {
            // By hand: area in dm2 times density in A/dm2.
            let amperes = area / 100.0 * density;
            let job = question(WorkArea::cm2(area), CurrentDensity::amp_per_dm2(density));
            let said = answer(&Catalogue::standard(), &job);
            let wanted = said.steps[0]
                .current
                .known()
                .map(|c| quantity::Quantity::si(c.wanted.likely));
            let wanted = wanted.unwrap_or_default();
            assert!(
                (wanted - amperes).abs() < 1e-12,
                "{area} {density}: {wanted}"
            );
            let (current, _) = cell(area, density).unwrap_or_default();
            row += &format!("<td>{}</td>", current.replace('\u{a0}', " "));
        }
        assert!(html.contains(&row), "{row}");
    }
    // 13.231 um/h per A/dm2 at 100 % (CIAAW mass, exact Faraday constant, density 8.96) x 1.2 x 0.98 = 15.56.
    assert!(html.contains("<td>15.6 µm/h</td>"));
}

#[test]
fn it_holds_the_emergency_lines_and_nothing_that_runs() {
    let html = html();
    for (what, then) in web::words::EMERGENCY_LINES {
        assert!(
            html.contains(what) && html.contains(&then.replace('&', "&amp;")),
            "{what}"
        );
    }
    for forbidden in ["<script", "<style", "style=", "<link", "<iframe", "onclick"] {
        assert!(!html.contains(forbidden), "{forbidden}");
    }
}
