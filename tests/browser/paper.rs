//! The plan on paper: printed by the browser, read back as PDF.

use crate::driver::Browser;
use crate::views::{Act, VIEWS, View, opened, show};
use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use serde_json::json;
use std::fs;
use std::path::Path;

/// Names and sizes of papers, inches.
const PAPERS: [(&str, f64, f64); 2] = [("A5", 5.83, 8.27), ("Letter", 8.5, 11.0)];

/// Pages of a PDF: the tree of pages says how many it has.
fn pages(pdf: &[u8]) -> usize {
    let text = String::from_utf8_lossy(pdf);
    text.split("/Count ")
        .skip(1)
        .filter_map(|rest| {
            let digits: String = rest.chars().take_while(char::is_ascii_digit).collect();
            digits.parse().ok()
        })
        .max()
        .expect("a tree of pages")
}

/// Prints the plan that is open and keeps the PDF beside the pictures; how many pages it has.
async fn printed(browser: &Browser, name: &str, paper: (&str, f64, f64)) -> usize {
    let (size, width, height) = paper;
    let wishes = json!({"paperWidth": width, "paperHeight": height, "preferCSSPageSize": false, "printBackground": false});
    let taken = browser.cdp("Page.printToPDF", wishes).await;
    let pdf = STANDARD
        .decode(taken["data"].as_str().expect("a PDF"))
        .expect("base 64");
    assert!(pdf.starts_with(b"%PDF"), "{name}");
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("paper");
    fs::create_dir_all(&folder).expect("a folder");
    fs::write(folder.join(format!("{name}-{size}.pdf")), &pdf).expect("the PDF");
    pages(&pdf)
}

/// Views that print another plan than the first, and how many pages of A5 and Letter that may take.
const PLANS: [(&str, [usize; 2]); 11] = [
    ("first", [1, 1]),
    ("demo-acorn-cap", [1, 1]),
    ("demo-vermeil", [1, 1]),
    ("demo-bookmark", [1, 1]),
    // Three pieces in a table.
    ("pieces", [1, 1]),
    // Three things that hold it back, each with its way out.
    ("ways", [2, 1]),
    ("demo-ferns", [1, 1]),
    // Six lines of sessions, and what the dips between them need.
    ("sessions", [2, 1]),
    // A table of the class, its groups, and its own cautions.
    ("demo-class", [2, 1]),
    // The wiring is drawn and told.
    ("series", [2, 1]),
    // Opened panels are no part of the plan.
    ("working", [1, 1]),
];

#[tokio::test]
async fn a_plan_is_one_page() {
    let browser = opened(360, 800, true).await;
    let mut wrong = Vec::new();
    for (name, most) in PLANS {
        let view = VIEWS.iter().find(|v| v.name == name).expect(name);
        show(&browser, view).await;
        for (paper, most) in PAPERS.into_iter().zip(most) {
            let has = printed(&browser, name, paper).await;
            if has > most {
                wrong.push(format!(
                    "{name} on {}: {has} pages, at most {most}",
                    paper.0
                ));
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// What a person taps is words on paper: no frame, no button, and the headings of what is open.
#[tokio::test]
async fn nothing_on_paper_looks_as_if_it_could_be_tapped() {
    let browser = opened(360, 800, true).await;
    let mut wrong = Vec::new();
    for name in ["first", "ways", "tried", "sessions", "demo-class", "fair"] {
        let view = VIEWS.iter().find(|v| v.name == name).expect(name);
        show(&browser, view).await;
        browser
            .cdp("Emulation.setEmulatedMedia", json!({"media": "print"}))
            .await;
        let framed = browser
            .eval(
                "[...document.querySelectorAll('button, input, select, summary')]
                 .filter(e => e.getBoundingClientRect().height > 0)
                 .filter(e => !e.matches('button') || getComputedStyle(e).borderTopWidth !== '0px' || getComputedStyle(e).paddingTop !== '0px')
                 .map(e => e.textContent || e.id)",
            )
            .await;
        if framed != json!([]) {
            wrong.push(format!("{name}: {framed}"));
        }
        let said = browser.text(".first").await;
        assert!(said.starts_with("First two minutes"), "{name}: {said}");
        let ways = browser
            .eval("[...document.querySelectorAll('.ways')].map(e => e.innerText).join()")
            .await;
        assert!(
            name != "ways" || ways.as_str().is_some_and(|w| w.contains("A supply up to")),
            "{ways}"
        );
        browser
            .cdp("Emulation.setEmulatedMedia", json!({"media": ""}))
            .await;
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[tokio::test]
async fn a_long_plan_takes_no_page_more_than_its_lines_need() {
    let browser = opened(360, 800, true).await;
    let more = [Act::Tap(".measure + .actions .button + .button"); 8];
    let acts: Vec<Act> = more.into_iter().collect();
    let view = View {
        name: "nine pieces",
        acts: acts.leak(),
    };
    show(&browser, &view).await;
    browser
        .until("document.querySelectorAll('.bar li').length === 9")
        .await;
    let has = [
        printed(&browser, "nine-pieces", PAPERS[0]).await,
        printed(&browser, "nine-pieces", PAPERS[1]).await,
    ];
    // Nine rows in place of one sentence are more than what is left of A5.
    assert!(has[0] <= 2 && has[1] == 1, "{has:?}");
}
