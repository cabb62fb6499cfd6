//! Measured over every view: narrow windows, a text twice as large, targets, forced colours, no movement.

use crate::driver::Browser;
use crate::views::{REFUSED, VIEWS, View, findings, go_on, opened, prefer, resize, show};
use serde_json::json;

const COMMON: &str = include_str!("scripts/common.js");

/// What a measurement finds, each line under the view and the state of the window.
async fn measure(browser: &Browser, script: &str, of: &str, all: &mut Vec<String>) {
    for line in findings(browser, &[COMMON, script].concat(), Vec::new()).await {
        all.push(format!("{of}: {line}"));
    }
}

async fn sized(browser: &Browser, view: &View, all: &mut Vec<String>) {
    let cut = include_str!("scripts/cut_off.js");
    for (width, height) in [(320, 568), (360, 800), (1280, 800)] {
        resize(browser, width, height).await;
        let of = format!("{} {width}", view.name);
        measure(browser, cut, &of, all).await;
        measure(browser, include_str!("scripts/targets.js"), &of, all).await;
        browser
            .eval("document.documentElement.style.fontSize = '200%'")
            .await;
        measure(browser, cut, &format!("{of}, text twice as large"), all).await;
        browser
            .eval("document.documentElement.style.fontSize = ''")
            .await;
    }
}

async fn wished(browser: &Browser, view: &View, all: &mut Vec<String>) {
    prefer(browser, &[("forced-colors", "active")]).await;
    // From the keyboard on, the focus is shown.
    browser
        .cdp(
            "Input.dispatchKeyEvent",
            json!({"type": "keyDown", "key": "Tab", "code": "Tab", "windowsVirtualKeyCode": 9}),
        )
        .await;
    measure(browser, include_str!("scripts/forced.js"), &format!("{}, forced colours", view.name), all).await;
    prefer(browser, &[("prefers-reduced-motion", "reduce")]).await;
    browser
        .eval("document.querySelectorAll('.option input:not(:checked)')[0]?.click()")
        .await;
    measure(browser, include_str!("scripts/moves.js"), &format!("{}, no movement", view.name), all).await;
    prefer(browser, &[]).await;
}

fn nothing(all: &[String]) {
    assert!(all.is_empty(), "{} findings:\n{}", all.len(), all.join("\n"));
}

#[tokio::test]
async fn every_view_fits_narrow_windows_large_text_and_wet_fingers() {
    let mut all = Vec::new();
    let browser = opened(360, 800, true).await;
    for view in VIEWS {
        show(&browser, view).await;
        sized(&browser, view, &mut all).await;
    }
    drop(browser);
    let browser = opened(360, 800, false).await;
    go_on(&browser, &REFUSED).await;
    sized(&browser, &REFUSED, &mut all).await;
    nothing(&all);
}

#[tokio::test]
async fn every_view_keeps_edges_and_focus_in_forced_colours_and_nothing_moves_unwanted() {
    let mut all = Vec::new();
    let browser = opened(360, 800, true).await;
    for view in VIEWS {
        show(&browser, view).await;
        wished(&browser, view, &mut all).await;
    }
    nothing(&all);
}
