//! Layers after the first, sessions that somebody attends, and what went wrong. Figures worked out by hand.

use crate::driver::Browser;
use crate::plates::{RATE, before, hours, near, pick, plate, until_says, whole};

async fn mean(browser: &Browser) -> f64 {
    before(&browser.text(".outcome .have").await, "µm")
}

#[tokio::test]
async fn a_layer_is_added_changed_removed_and_brought_back() {
    let browser = plate(&[]).await;
    near(mean(&browser).await, 3.0 * RATE, "three hours");
    browser.tap(".layers > .button").await;
    browser
        .until("document.getElementById('steps/s3/until') !== null")
        .await;
    // In the same bath twice as dense for one hour.
    pick(&browser, "baths/b3/solution", "same").await;
    pick(&browser, "steps/s3/drive", "density").await;
    pick(&browser, "steps/s3/until", "time").await;
    browser
        .until("document.getElementById('steps/s3/until/time') !== null")
        .await;
    browser.type_in("steps/s3/until/time", "1").await;
    browser.type_in("steps/s3/drive/density", "2").await;
    until_says(&browser, ".answer .moments li", "turn up to 200 mA").await;
    near(whole(&browser).await, 4.0, "3 h and 1 h");
    near(mean(&browser).await, 5.0 * RATE, "3 x 1 + 1 x 2 A/dm2 h");
    // A bath of its own: rinse, and go over.
    pick(&browser, "baths/b3/solution", "au_acid").await;
    until_says(
        &browser,
        ".answer .moments li",
        "rinse, then into Acid gold",
    )
    .await;
    until_says(&browser, ".outcome", "gold").await;
    // Taken out; an undo brings it back with what was typed.
    browser.tap(".layers .link").await;
    browser
        .until("document.querySelectorAll('.answer .moments li').length === 1")
        .await;
    near(mean(&browser).await, 3.0 * RATE, "without it");
    browser.tap(".ask > .actions .button").await;
    browser
        .until("document.getElementById('steps/s3/drive/density')?.value === '2'")
        .await;
}

/// The ring of the trade's table: 11.4 cm2 at 1.2 A/dm2 and 98 % to 200 um is 200 / (1.2 x 12.97) = 12.85 h.
const RING: &[(&str, &str)] = &[
    ("pieces/p1/extent/area/one_side", "11.4"),
    ("steps/s2/drive/density", "1.2"),
    ("steps/s2/until", "mean"),
    ("steps/s2/until/mean", "200"),
    ("supply/constant_current/display_step", ""),
];

#[tokio::test]
async fn a_long_run_becomes_sessions_with_their_way_in() {
    let browser = plate(RING).await;
    near(whole(&browser).await, 12.85, "in one");
    browser
        .until("document.querySelector('.card.sessions') === null")
        .await;
    browser.tap(".attend .link").await;
    browser.type_in("attend/session", "4.5").await;
    until_says(&browser, ".card.sessions", "Session 3 of 3").await;
    let rows = browser
        .eval("[...document.querySelectorAll('.stretches .value')].map(e => e.innerText.replace(/\\s+/g, ' '))")
        .await;
    let rows: Vec<String> = serde_json::from_value(rows).expect("texts");
    // Three of 12.85 / 3.
    assert_eq!(rows.len(), 3, "{rows:?}");
    for row in &rows {
        near(hours(row), 4.283, row);
    }
    let said = browser.text(".card.sessions").await;
    assert!(said.contains("Then 66.7 µm on average."), "{said}");
    assert!(said.contains("Then 133 µm on average."), "{said}");
    assert!(said.contains("Before session 2, 3:"), "{said}");
    assert!(said.contains("dip for"), "{said}");
    // Back from a date: the last one ends then, 4 h 17 min before it begins.
    browser.type_in("attend/due", "2031-12-05 16:00").await;
    until_says(&browser, ".card.sessions", "Begin by Fri 5 Dec, 11:43.").await;
}

#[tokio::test]
async fn after_a_power_cut_the_page_says_what_is_left_and_what_remains() {
    let browser = plate(RING).await;
    browser.tap(".accident .link").await;
    until_says(&browser, "#accident", "Say first: How long after its start").await;
    browser.type_in("after/after", "3").await;
    // Three hours at 1.2 A/dm2 were there.
    until_says(&browser, "#accident", "Was there").await;
    let said = browser.text("#accident").await;
    near(before(&said, "µm"), 3.0 * 1.2 * RATE, "was there");
    // A gap of unknown length is a night; still acid copper takes 0.1 to 0.25 um.
    assert!(said.contains("(0.10 to 0.25)"), "{said}");
    assert!(said.contains("Rub with wet pumice"), "{said}");
    let rest = browser.text("#accident ul").await;
    near(hours(&rest), 12.85 - 3.0, "what remains");
    // A quarter of an hour takes next to nothing.
    browser.type_in("after/power_cut/gap", "15 min").await;
    until_says(&browser, "#accident", "Rinse, dip for").await;
    let said = browser.text("#accident").await;
    assert!(!said.contains("pumice"), "{said}");
    // Leads swapped for ten minutes at the same current: copper goes at 100 %, 13.23 um/h per A/dm2.
    pick(&browser, "after/what", "reversed").await;
    browser
        .until("document.getElementById('after/reversed/for') !== null")
        .await;
    browser.type_in("after/reversed/for", "10 min").await;
    until_says(&browser, "#accident", "2.6").await;
    let went = browser.text("#accident dl div:nth-child(2)").await;
    near(before(&went, "µm"), 1.2 * 13.23 / 6.0, &went);
}
