//! Nothing is cut off, nothing is too small to hit, the bar stays small, and a field with the focus is in view.

use crate::driver::{Browser, TORUS_BORE, TORUS_WIRE, Window, ways};
use crate::views::findings;
use serde_json::{Value, json};
use web::state::at;

const COMMON: &str = include_str!("scripts/common.js");
const SIZES: &[(u32, u32)] = &[(360, 800), (320, 568), (1280, 800), (360, 440)];

async fn opened(width: u32, height: u32) -> Browser {
    let (way, address) = ways().remove(0);
    let browser = Browser::open(Window {
        width,
        height,
        storage: true,
    })
    .await;
    browser.go(way, &address).await;
    browser.tap(".setup .link").await;
    browser.tap(".working .link").await;
    browser
}

#[tokio::test]
async fn nothing_is_cut_off_or_wider_than_the_window() {
    for &(width, height) in SIZES {
        let browser = opened(width, height).await;
        let script = [COMMON, include_str!("scripts/cut_off.js")].concat();
        let cut = findings(&browser, &script, vec![json!("usual")]).await;
        assert!(cut.is_empty(), "{width}x{height}: {}", cut.join("\n"));
    }
}

#[tokio::test]
async fn targets_are_large_enough_for_wet_hands() {
    for &(width, height) in SIZES {
        let browser = opened(width, height).await;
        let small = browser
            .eval(
                "[...document.querySelectorAll('button, input, select, label.option')]
                 .filter(e => e.type !== 'radio')
                 .map(e => [e, (e.closest('.entry') || e).getBoundingClientRect()])
                 .filter(([e, r]) => r.height > 0 && (r.height < (e.matches('input, select, label.option') ? 56 : 48) || r.width < 44))
                 .map(([e, r]) => `${e.tagName} ${e.id} ${e.className} ${r.width}x${r.height}`)",
            )
            .await;
        assert_eq!(small, Value::Array(Vec::new()), "{width}x{height}");
    }
}

#[tokio::test]
async fn the_bar_takes_at_most_a_quarter_and_never_covers_the_field_in_hand() {
    for &(width, height) in SIZES {
        let browser = opened(width, height).await;
        for address in [TORUS_WIRE, at::HANGER_WET, at::VOLTS, TORUS_BORE] {
            browser
                .eval(&format!("document.getElementById('{address}').focus()"))
                .await;
            browser.until("new Promise(r => requestAnimationFrame(() => requestAnimationFrame(() => r(true))))").await;
            let bar = browser
                .eval("document.querySelector('.top').getBoundingClientRect().bottom")
                .await;
            let top = browser
                .eval(&format!(
                    "document.getElementById('{address}').getBoundingClientRect().top"
                ))
                .await;
            let bottom = browser
                .eval(&format!(
                    "document.getElementById('{address}').getBoundingClientRect().bottom"
                ))
                .await;
            let number = |v: &Value| v.as_f64().unwrap_or(f64::NAN);
            assert!(
                number(&bar) <= f64::from(height) / 4.0,
                "{width}x{height}: the bar is {bar} high"
            );
            assert!(
                number(&top) >= number(&bar),
                "{width}x{height} {address}: {top} under the bar {bar}"
            );
            assert!(
                number(&bottom) <= f64::from(height),
                "{width}x{height} {address}: {bottom} below the window"
            );
        }
    }
}

#[tokio::test]
async fn the_bar_shows_the_answer_once_its_head_is_gone() {
    let browser = opened(360, 800).await;
    browser.eval("scrollTo(0, 0)").await;
    browser
        .until("document.querySelector('.strip') === null")
        .await;
    browser.eval("scrollTo(0, 1400)").await;
    browser
        .until("document.querySelector('.strip') !== null")
        .await;
    assert!(browser.text(".strip").await.contains("mA"));
}

#[tokio::test]
async fn typing_never_moves_the_field_in_hand() {
    let browser = opened(360, 800).await;
    // What stands above may grow or shrink by a line as the answer changes: the field stays where the thumb is.
    let place = format!("document.getElementById('{TORUS_WIRE}').getBoundingClientRect().top");
    browser
        .eval(&format!(
            "document.getElementById('{TORUS_WIRE}').scrollIntoView({{block: 'center'}})"
        ))
        .await;
    browser
        .eval(&format!("document.getElementById('{TORUS_WIRE}').focus()"))
        .await;
    let frames =
        "new Promise(r => requestAnimationFrame(() => requestAnimationFrame(() => r(true))))";
    browser.until(frames).await;
    let before = browser.eval(&place).await.as_f64().unwrap_or(f64::NAN);
    for text in ["2,", "2,5", "2,5 m", "12", "40"] {
        browser
            .eval(&format!("document.getElementById('{TORUS_WIRE}').select()"))
            .await;
        let field = browser
            .client
            .find(fantoccini::Locator::Id(TORUS_WIRE))
            .await
            .expect("the field");
        field.send_keys(text).await.expect("keys");
        browser.until(frames).await;
        let after = browser.eval(&place).await.as_f64().unwrap_or(f64::NAN);
        assert!(
            (after - before).abs() < 2.0,
            "{text:?} moved the field by {}",
            after - before
        );
    }
}

#[tokio::test]
async fn the_emergency_lines_are_one_tap_away_and_close_by_key() {
    let browser = opened(360, 800).await;
    browser.eval("scrollTo(0, 1400)").await;
    browser.tap(".emergency").await;
    browser
        .until("document.querySelector('dialog') !== null")
        .await;
    assert!(browser.text("dialog").await.contains("running water"));
    browser
        .until("document.activeElement.matches('dialog button')")
        .await;
    let button = browser
        .client
        .find(fantoccini::Locator::Css("dialog button"))
        .await
        .expect("the button");
    button.send_keys("\u{e00c}").await.expect("escape");
    browser
        .until("document.querySelector('dialog') === null")
        .await;
}
