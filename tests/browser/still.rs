//! The page where no program runs: plain HTML with the table, written at packaging from the answers.

use crate::driver::{Browser, PHONE, Way, has_saved_page, page_text, saved_page, ways};
use serde_json::json;
use web::still::{AREAS, DENSITIES, cell};

#[tokio::test]
async fn without_script_the_table_stands_and_agrees_with_the_answers() {
    for (way, address) in ways().into_iter().filter(|(way, _)| *way == Way::File) {
        let browser = Browser::open(PHONE).await;
        assert_eq!(way, Way::File);
        browser
            .cdp(
                "Emulation.setScriptExecutionDisabled",
                json!({"value": true}),
            )
            .await;
        browser.client.goto(&address).await.expect("the page");
        assert_eq!(browser.text("h1").await, "Ionwright");
        let shown = browser.text("table").await;
        for area in AREAS {
            let currents: Vec<String> = DENSITIES
                .iter()
                .map(|d| cell(area, *d).expect("a current").0.replace('\u{a0}', " "))
                .collect();
            let row = format!("{area} cm² {}", currents.join(" "));
            assert!(shown.contains(&row), "{row}\nnot in\n{shown}");
        }
        assert!(browser.text("dl").await.contains("20 minutes"));
    }
}

#[test]
fn the_packaged_file_holds_the_fragment_as_the_words_give_it() {
    if has_saved_page() {
        let file = page_text(std::path::Path::new(&saved_page()));
        for line in web::still::html().lines() {
            assert!(file.contains(line), "{line}");
        }
    }
}

#[tokio::test]
async fn a_start_removes_it() {
    for (way, address) in ways() {
        let browser = Browser::open(PHONE).await;
        browser.go(way, &address).await;
        assert_eq!(
            browser
                .eval("document.querySelectorAll('.still').length")
                .await,
            0
        );
        assert_eq!(
            browser
                .eval("document.querySelectorAll('main').length")
                .await,
            1
        );
    }
}
