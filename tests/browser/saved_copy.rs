//! A copy of the page that carries the plan.

use crate::driver::{Browser, PHONE, TORUS_BORE, Way, page_text, ways};
use serde_json::{Value, json};
use std::fs;
use std::path::{Path, PathBuf};
use std::time::Duration;

const HOSTILE: &str = "</script><!--<script>&amp; \u{2028}";

/// The file that appears in a folder, once something is in it: its name stands there empty while it is being saved, and the
/// whole of it takes that place at once.
async fn downloaded(folder: &Path) -> PathBuf {
    for _ in 0..200 {
        let files = fs::read_dir(folder).expect("the folder");
        let whole = files
            .flatten()
            .map(|entry| entry.path())
            .filter(|path| path.extension().is_some_and(|end| end == "html"))
            .find(|path| fs::metadata(path).is_ok_and(|file| file.len() > 0));
        if let Some(file) = whole {
            return file;
        }
        tokio::time::sleep(Duration::from_millis(50)).await;
    }
    panic!("nothing was saved in {}", folder.display());
}

/// Saves the page that is open and gives the file.
async fn save(browser: &Browser, folder: &Path) -> PathBuf {
    let _ = fs::remove_dir_all(folder);
    fs::create_dir_all(folder).expect("a folder");
    browser
        .cdp(
            "Page.setDownloadBehavior",
            json!({"behavior": "allow", "downloadPath": folder}),
        )
        .await;
    browser.tap("#save-copy").await;
    let file = downloaded(folder).await;
    let plain = folder.join("copy.html");
    fs::rename(file, &plain).expect("a plain name");
    plain
}

#[tokio::test]
async fn a_saved_copy_opens_elsewhere_with_the_plan_in_it() {
    // Trunk's page stands in a script of another and cannot hand itself out.
    for (way, address) in ways() {
        let browser = Browser::open(PHONE).await;
        browser.go(way, &address).await;
        if browser.eval("window.shell === undefined").await == Value::Bool(true) {
            continue;
        }
        browser.type_in(TORUS_BORE, "51,5").await;
        browser.tap(".drafts .line button").await;
        browser
            .client
            .execute(
                "const name = document.getElementById('draft-name'); name.focus(); name.select(); \
                 document.execCommand('insertText', false, arguments[0]);",
                vec![json!(HOSTILE)],
            )
            .await
            .expect("a name");
        let answered = browser.text("#set").await;
        let folder =
            std::env::temp_dir().join(format!("ionwright-copy-{}-{way:?}", std::process::id()));
        let first = save(&browser, &folder.join("first")).await;
        drop(browser);

        // Another browser, which has nothing on its shelf, and no network.
        let other = Browser::open(PHONE).await;
        other
            .go(Way::File, &format!("file://{}", first.display()))
            .await;
        assert_eq!(other.field(TORUS_BORE).await, "51,5");
        assert_eq!(other.text("#set").await, answered);
        let name = other
            .eval("document.querySelector('.drafts .line p').textContent")
            .await;
        assert!(
            name.as_str().is_some_and(|name| name.contains(HOSTILE)),
            "{name}"
        );
        let text = page_text(&first);
        assert!(!text.contains("rel=\"manifest\"") && !text.contains("'self'; "));
        assert_eq!(text.matches("</script").count(), 3);

        // A copy of the copy carries what was changed there.
        other.type_in(TORUS_BORE, "52").await;
        let second = save(&other, &folder.join("second")).await;
        drop(other);
        let third = Browser::open(PHONE).await;
        third
            .go(Way::File, &format!("file://{}", second.display()))
            .await;
        assert_eq!(third.field(TORUS_BORE).await, "52");
        let _ = fs::remove_dir_all(&folder);
    }
}
