//! The page as plain HTML, for the time before the program starts and for viewers that run none. Written when the page
//! is packaged, from the same answers and the same words as the living page.

use crate::words::{self, number, still};
use planner::job::{Area, Bath, Drive, Extent, InBath, Piece, Step, Until};
use planner::{Catalogue, Job, Process, answer};
use quantity::{CurrentDensity, Time, WorkArea};

/// Areas of the table, cm2.
pub const AREAS: [f64; 8] = [5.0, 10.0, 20.0, 30.0, 50.0, 75.0, 100.0, 200.0];
/// Densities of the table, A/dm2.
pub const DENSITIES: [f64; 5] = [0.3, 0.5, 0.8, 1.2, 1.5];

/// A job of this area at this density for an hour: what a cell of the table asks.
pub fn question(area: WorkArea, density: CurrentDensity) -> Job {
    Job {
        pieces: vec![Piece {
            id: "p1".to_owned(),
            label: String::new(),
            count: 1,
            extent: Some(Extent::Area(Area {
                one_side: area,
                sides: 1,
                texture: None,
                method: None,
            })),
            base: None,
            grown: None,
            open: None,
            hanger: None,
            contact: None,
            opening: None,
            min_over_mean: None,
            fit: None,
            artwork: None,
            joins: None,
            leaves: None,
        }],
        baths: vec![Bath {
            id: "b1".to_owned(),
            solution: "cu_acid_form".to_owned(),
            volume: None,
            passed: None,
            holds: Vec::new(),
            counter: None,
            surface: None,
            heater: None,
        }],
        steps: vec![Step {
            id: "s1".to_owned(),
            places: vec![InBath {
                bath: "b1".to_owned(),
                pieces: vec!["p1".to_owned()],
            }],
            kind: Process::Electroform,
            purpose: Default::default(),
            stirring: Default::default(),
            temperature: None,
            ceiling: None,
            drive: Some(Drive::Density(density)),
            until: Some(Until::Time(Time::hours(1.0))),
        }],
        ..Job::default()
    }
}

/// The current of a cell and the growth of its column, as printed; nothing where the answer has none.
pub fn cell(area: f64, density: f64) -> Option<(String, String)> {
    let job = question(WorkArea::cm2(area), CurrentDensity::amp_per_dm2(density));
    let answer = answer(&Catalogue::standard(), &job);
    let step = answer.steps.first()?;
    let current = step.current.known()?.wanted.likely;
    let growth = step.growth.known()?.likely;
    Some((number::current(current, None), number::growth(growth)))
}

/// The whole fragment.
pub fn html() -> String {
    let mut out = String::new();
    let mut line = |text: &str| {
        out.push_str(text);
        out.push('\n');
    };
    line("<main class=\"still\">");
    line(&format!("<h1>{}</h1>", escape(words::NAME)));
    line(&format!("<p>{}</p>", escape(still::INTRO)));
    line(&format!("<h2>{}</h2>", escape(words::EMERGENCY)));
    line("<dl>");
    for (what, then) in words::EMERGENCY_LINES {
        line(&format!(
            "<dt>{}</dt><dd>{}</dd>",
            escape(what),
            escape(then)
        ));
    }
    line("</dl>");
    line(&format!("<p>{}</p>", escape(words::EMERGENCY_NOTE)));
    line(&format!(
        "<table><caption>{}</caption>",
        escape(still::TABLE)
    ));
    let heads: String = DENSITIES
        .iter()
        .map(|d| format!("<th scope=\"col\">{d} A/dm²</th>"))
        .collect();
    line(&format!(
        "<tr><th scope=\"col\">{}</th>{heads}</tr>",
        escape(still::AREA)
    ));
    for area in AREAS {
        let cells: String = DENSITIES
            .iter()
            .map(|d| {
                format!(
                    "<td>{}</td>",
                    cell(area, *d).map(|c| c.0).unwrap_or_default()
                )
            })
            .collect();
        line(&format!(
            "<tr><th scope=\"row\">{area} cm²</th>{cells}</tr>"
        ));
    }
    let growths: String = DENSITIES
        .iter()
        .map(|d| {
            format!(
                "<td>{}</td>",
                cell(AREAS[0], *d).map(|c| c.1).unwrap_or_default()
            )
        })
        .collect();
    line(&format!(
        "<tr><th scope=\"row\">{}</th>{growths}</tr>",
        escape(still::GROWTH)
    ));
    line("</table>");
    line(&format!("<p>{}</p>", escape(still::TABLE_NOTE)));
    line("</main>");
    out
}

fn escape(text: &str) -> String {
    text.replace('&', "&amp;")
        .replace('<', "&lt;")
        .replace('>', "&gt;")
}
