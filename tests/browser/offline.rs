//! The installed site: without its server, and while it is renewed.

use crate::driver::{Browser, PHONE, Way, has_saved_page};
use crate::site::{Files, NEXT, Site, next, packaged};
use serde_json::json;
use web::state::at;

const PROMPT: &str = ".edition button";

/// Opens the site and waits until its worker keeps it.
async fn opened(site: &Site) -> Browser {
    let browser = Browser::open(PHONE).await;
    browser.go(Way::Site, &site.address()).await;
    browser
        .until("navigator.serviceWorker.controller !== null")
        .await;
    browser
}

/// Looks for a newer edition and waits until it is kept or given up. Gives whether one waits.
async fn look(browser: &Browser) -> bool {
    browser
        .client
        .execute(
            "return navigator.serviceWorker.getRegistration().then((kept) => kept.update().catch(() => {}));",
            Vec::new(),
        )
        .await
        .expect("a look for a newer edition");
    browser
        .client
        .execute(
            "return (async () => { const kept = await navigator.serviceWorker.getRegistration(); \
             while (kept.installing) await new Promise((next) => setTimeout(next, 20)); return kept.waiting !== null; })();",
            Vec::new(),
        )
        .await
        .expect("an end of it")
        == json!(true)
}

async fn title(browser: &Browser) -> String {
    browser.client.title().await.expect("a title")
}

#[tokio::test]
async fn the_site_opens_and_answers_when_its_server_is_gone() {
    if !has_saved_page() {
        return;
    }
    let mut site = Site::start(packaged());
    let browser = opened(&site).await;
    let errors = browser.cdp("Page.getInstallabilityErrors", json!({})).await;
    assert_eq!(errors, json!({"installabilityErrors": []}));
    // The first edition takes the place of none.
    assert_eq!(
        browser
            .eval(&format!("document.querySelector('{PROMPT}')"))
            .await,
        json!(null)
    );
    site.stop();
    assert!(!site.is_there());
    browser.reload().await;
    let before = browser.text("#set").await;
    browser.type_in(at::COUNT, "9").await;
    assert_ne!(browser.text("#set").await, before);
    // By a shared link, or by the file's own name.
    for more in ["?a=1#b", "index.html"] {
        let address = format!("{}{more}", site.address());
        browser.client.goto(&address).await.expect(more);
        browser.running().await;
        assert_eq!(browser.field(at::COUNT).await, "9", "{more}");
    }
}

#[tokio::test]
async fn a_newer_edition_comes_when_it_is_told_and_the_draft_stays() {
    if !has_saved_page() {
        return;
    }
    let first = packaged();
    let site = Site::start(first.clone());
    let browser = opened(&site).await;
    browser.type_in(at::COUNT, "7").await;
    assert!(!look(&browser).await, "nothing changed");
    site.serve(next(&first), None);
    assert!(look(&browser).await, "a newer edition waits");
    browser
        .until(&format!("document.querySelector('{PROMPT}') !== null"))
        .await;
    // Not before it is told.
    browser.reload().await;
    assert_eq!(title(&browser).await, "Ionwright");
    browser
        .until(&format!("document.querySelector('{PROMPT}') !== null"))
        .await;
    browser.tap(PROMPT).await;
    browser
        .until(&format!(
            "document.title === '{NEXT}' && document.documentElement.dataset.state === 'running'"
        ))
        .await;
    assert_eq!(browser.field(at::COUNT).await, "7");
    assert_eq!(
        browser
            .eval("caches.keys().then((names) => names.length)")
            .await,
        1
    );
    assert_eq!(
        browser
            .eval(&format!("document.querySelector('{PROMPT}')"))
            .await,
        json!(null)
    );
}

#[tokio::test]
async fn half_an_update_is_none() {
    if !has_saved_page() {
        return;
    }
    let first = packaged();
    let site = Site::start(first.clone());
    let browser = opened(&site).await;
    // A server in the middle of being renewed: its worker is new, its page old.
    let mut mixed: Files = next(&first);
    mixed.insert("index.html".to_owned(), first["index.html"].clone());
    for (files, cut) in [
        (next(&first), Some("index.html")),
        (next(&first), Some("icon-512.png")),
        (mixed, None),
    ] {
        site.serve(files, cut);
        assert!(!look(&browser).await, "{cut:?}");
        browser.reload().await;
        assert_eq!(title(&browser).await, "Ionwright", "{cut:?}");
        assert_eq!(
            browser
                .eval(&format!("document.querySelector('{PROMPT}')"))
                .await,
            json!(null)
        );
        assert!(!browser.text("#set").await.is_empty());
    }
    site.serve(next(&first), None);
    assert!(look(&browser).await, "whole at last");
}
