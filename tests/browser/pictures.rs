//! Pictures of every view, both themes, both sizes, under `target/tmp/pictures`, to be opened and judged; and the one
//! judgement a program can make: what to set is still legible when the phone lies far off.

use crate::driver::Browser;
use crate::views::{REFUSED, THEMES, VIEWS, View, findings, go_on, opened, prefer, resize, show};
use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use serde_json::{Value, json};
use std::fs;
use std::path::{Path, PathBuf};

const SIZES: [(u32, u32); 2] = [(360, 800), (1280, 800)];

fn folder() -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("pictures");
    fs::create_dir_all(&folder).expect("a folder for pictures");
    folder
}

/// Takes the picture that the browser shows, of the whole page or of the window, as PNG in base 64.
async fn take(browser: &Browser, whole: bool) -> String {
    let taken = browser
        .cdp(
            "Page.captureScreenshot",
            json!({"format": "png", "captureBeyondViewport": whole, "optimizeForSpeed": true}),
        )
        .await;
    taken["data"].as_str().expect("a picture").to_owned()
}

fn keep(name: &str, picture: &str) {
    let bytes = STANDARD.decode(picture).expect(name);
    assert!(bytes.starts_with(b"\x89PNG"), "{name} is no PNG");
    fs::write(folder().join(name), bytes).expect(name);
}

async fn pictures(browser: &Browser, view: &View) {
    for (width, height) in SIZES {
        resize(browser, width, height).await;
        for theme in THEMES {
            let wishes = [
                ("prefers-color-scheme", theme),
                ("prefers-reduced-motion", "reduce"),
            ];
            prefer(browser, &wishes).await;
            browser.eval("scrollTo(0, 0)").await;
            keep(
                &format!("{}-{width}-{theme}.png", view.name),
                &take(browser, true).await,
            );
        }
    }
}

#[tokio::test]
async fn every_view_has_its_pictures() {
    let browser = opened(360, 800, true).await;
    for view in VIEWS {
        show(&browser, view).await;
        pictures(&browser, view).await;
    }
    drop(browser);
    let browser = opened(360, 800, false).await;
    go_on(&browser, &REFUSED).await;
    pictures(&browser, &REFUSED).await;
}

#[tokio::test]
async fn the_current_to_set_is_still_legible_at_a_quarter_of_the_size() {
    let browser = opened(360, 800, true).await;
    resize(&browser, 360, 800).await;
    for theme in THEMES {
        prefer(&browser, &[("prefers-color-scheme", theme)]).await;
        let picture = take(&browser, false).await;
        let script = include_str!("scripts/far_off.js");
        let seen: Vec<Value> = findings(&browser, script, vec![json!(picture)])
            .await
            .iter()
            .map(|line| serde_json::from_str(line).expect("a measurement"))
            .collect();
        keep(
            &format!("far-off-{theme}.png"),
            seen[1].as_str().expect("the picture"),
        );
        let of = |what: &str| seen[0][what].as_f64().expect(what);
        // 20/20 vision resolves letters of five parts; nine picture points show a digit's strokes and the gaps between.
        assert!(of("height") >= 8.0, "{theme}: {}", seen[0]);
        // WCAG 2.2, 1.4.3: text as good as any other.
        assert!(of("contrast") >= 4.5, "{theme}: {}", seen[0]);
        // And nothing else is nearly as large.
        assert!(of("next") <= 0.7 * of("own"), "{theme}: {}", seen[0]);
    }
}
