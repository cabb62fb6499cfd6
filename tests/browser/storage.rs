//! Where storage is refused, damaged or shared the page goes on.

use crate::driver::{Browser, PHONE, Window, ways};
use web::state::at;

#[tokio::test]
async fn where_storage_is_refused_the_page_says_so_and_answers() {
    for (way, address) in ways() {
        let browser = Browser::open(Window {
            storage: false,
            ..PHONE
        })
        .await;
        browser.go(way, &address).await;
        let refused = browser
            .eval("(() => { try { return !localStorage } catch { return true } })()")
            .await;
        assert_eq!(
            refused, true,
            "{way:?}: the browser grants storage after all"
        );
        assert!(
            browser
                .text(".shelf")
                .await
                .starts_with("This window cannot keep your entries")
        );
        let before = browser.text("#set").await;
        browser.type_in(at::COUNT, "9").await;
        assert_ne!(browser.text("#set").await, before);
    }
}

#[tokio::test]
async fn a_damaged_draft_is_shown_and_kept() {
    for (way, address) in ways() {
        let browser = Browser::open(PHONE).await;
        browser.go(way, &address).await;
        for damaged in ["{\"format\":1,\"texts\":", "\"{}\"", "{\"format\":9}"] {
            browser
                .client
                .execute(
                    "localStorage.removeItem('ionwright.draft.aside'); localStorage.setItem('ionwright.draft', arguments[0]);",
                    vec![serde_json::json!(damaged)],
                )
                .await
                .expect("a damaged draft");
            browser.reload().await;
            assert!(
                browser.text(".aside").await.starts_with("An earlier draft"),
                "{damaged}"
            );
            assert_eq!(
                browser
                    .eval("localStorage.getItem('ionwright.draft.aside') !== null")
                    .await,
                true,
                "{damaged}"
            );
            assert!(!browser.text("#set").await.is_empty());
        }
    }
}

#[tokio::test]
async fn foreign_entries_on_the_shelf_are_left_alone() {
    let (way, address) = ways().remove(0);
    let browser = Browser::open(PHONE).await;
    browser.go(way, &address).await;
    browser
        .eval("localStorage.setItem('someone.else', 'no { JSON')")
        .await;
    browser.reload().await;
    browser.type_in(at::COUNT, "4").await;
    assert_eq!(
        browser.eval("localStorage.getItem('someone.else')").await,
        "no { JSON"
    );
}
