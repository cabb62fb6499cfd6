//! Measured over every view: narrow windows, a text twice as large, targets, forced colours, no movement.

use crate::driver::{Browser, PHONE, ways};
use crate::views::{REFUSED, VIEWS, View, findings, go_on, opened, prefer, resize, show};
use serde_json::json;

const SIZES: [(u32, u32); 3] = [(320, 568), (360, 800), (1280, 800)];
const COMMON: &str = include_str!("scripts/common.js");

/// What a measurement finds, each line under the view and the state of the window.
async fn measure(browser: &Browser, script: &str, of: &str, text: &str, all: &mut Vec<String>) {
    for line in findings(browser, &[COMMON, script].concat(), vec![json!(text)]).await {
        all.push(format!("{of}: {line}"));
    }
}

async fn sized(browser: &Browser, view: &View, all: &mut Vec<String>) {
    let cut = include_str!("scripts/cut_off.js");
    for (width, height) in SIZES {
        resize(browser, width, height).await;
        let of = format!("{} {width}", view.name);
        measure(browser, cut, &of, "usual", all).await;
        measure(
            browser,
            include_str!("scripts/targets.js"),
            &of,
            "usual",
            all,
        )
        .await;
    }
}

async fn wished(browser: &Browser, view: &View, all: &mut Vec<String>) {
    prefer(browser, &[("forced-colors", "active")]).await;
    // From a key on, the focus is shown; this one does nothing else.
    browser
        .cdp(
            "Input.dispatchKeyEvent",
            json!({"type": "keyDown", "key": "F8", "code": "F8", "windowsVirtualKeyCode": 119}),
        )
        .await;
    measure(
        browser,
        include_str!("scripts/forced.js"),
        &format!("{}, forced colours", view.name),
        "usual",
        all,
    )
    .await;
    prefer(browser, &[("prefers-reduced-motion", "reduce")]).await;
    browser.until("document.getAnimations().length === 0").await;
    browser
        .eval("document.querySelector('.option input:not(:checked)').click()")
        .await;
    measure(
        browser,
        include_str!("scripts/moves.js"),
        &format!("{}, no movement", view.name),
        "usual",
        all,
    )
    .await;
    prefer(browser, &[]).await;
}

fn nothing(all: &[String]) {
    assert!(
        all.is_empty(),
        "{} findings:\n{}",
        all.len(),
        all.join("\n")
    );
}

#[tokio::test]
async fn every_view_fits_narrow_windows_and_wet_fingers() {
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
async fn nothing_is_cut_off_where_text_is_set_twice_as_large() {
    let (way, address) = ways().remove(0);
    let large = json!({"webkit.webprefs.default_font_size": 32});
    let browser = Browser::open_with(PHONE, large).await;
    browser.go(way, &address).await;
    let size = "getComputedStyle(document.documentElement).fontSize";
    assert_eq!(browser.eval(size).await, "32px");
    let mut all = Vec::new();
    for view in VIEWS {
        show(&browser, view).await;
        for (width, height) in SIZES {
            resize(&browser, width, height).await;
            let of = format!("{} {width}", view.name);
            measure(
                &browser,
                include_str!("scripts/cut_off.js"),
                &of,
                "large",
                &mut all,
            )
            .await;
        }
    }
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
