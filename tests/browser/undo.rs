//! Whatever destroys can be taken back; two windows, a full and a damaged shelf lose nothing; a plan goes from page to
//! page as a text.

use crate::driver::{Browser, TORUS_BORE, TORUS_WIRE};
use crate::views::{Act, View, go_on, opened};
use serde_json::{Value, json};

const DRAFTS: Act = Act::Tap(".drafts .line .link");
const UNDO: &str = ".ask > .actions .button";

async fn acts(browser: &Browser, acts: &'static [Act]) {
    go_on(browser, &View { name: "acts", acts }).await;
}

async fn count(browser: &Browser, selector: &str) -> u64 {
    browser
        .eval(&format!("document.querySelectorAll(`{selector}`).length"))
        .await
        .as_u64()
        .unwrap_or(0)
}

#[tokio::test]
async fn what_destroys_can_be_taken_back() {
    let browser = opened(360, 800, true).await;
    browser.type_in(TORUS_BORE, "33").await;
    // A plan is removed, and comes back with what was typed in it.
    acts(
        &browser,
        &[DRAFTS, Act::Tap("#drafts .actions .button:nth-child(2)")],
    )
    .await;
    browser
        .until("document.querySelectorAll('.drafts .options > li > [aria-current]').length === 1")
        .await;
    let plans = ".drafts ul:first-child > li > .option";
    let had = count(&browser, plans).await;
    browser.type_in(TORUS_WIRE, "3,3").await;
    acts(
        &browser,
        &[Act::Tap("#drafts .actions .button:nth-child(3)")],
    )
    .await;
    browser
        .until(&format!(
            "document.querySelectorAll(`{plans}`).length === {}",
            had - 1
        ))
        .await;
    browser.tap(UNDO).await;
    browser
        .until(&format!(
            "document.querySelectorAll(`{plans}`).length === {had}"
        ))
        .await;
    browser
        .until(&format!(
            "document.getElementById('{TORUS_WIRE}').value === '3,3'"
        ))
        .await;
    // A piece with its own sizes is taken off, and comes back with them.
    acts(&browser, &[Act::Tap(".measure + .actions .button")]).await;
    browser
        .until("document.querySelectorAll('.bar li').length === 2")
        .await;
    browser
        .type_in("pieces/p2/extent/parts/a/shape/torus/bore", "44")
        .await;
    browser.tap(".bar li:last-child .link").await;
    browser
        .until("document.querySelectorAll('.bar li').length === 0")
        .await;
    browser.tap(UNDO).await;
    browser
        .until("document.querySelectorAll('.bar li').length === 2")
        .await;
    browser.tap(".bar li:last-child .piece").await;
    browser
        .until(
            "document.getElementById('pieces/p2/extent/parts/a/shape/torus/bore').value === '44'",
        )
        .await;
    // A field that was emptied, a shape that was picked over, an area taken over by a measurement.
    browser
        .type_in("pieces/p2/extent/parts/a/shape/torus/bore", "\u{e003}")
        .await;
    browser.tap(UNDO).await;
    browser
        .until(
            "document.getElementById('pieces/p2/extent/parts/a/shape/torus/bore').value === '44'",
        )
        .await;
    browser.tap("[id='pieces/p2/extent=acorn_cap']").await;
    browser.tap(UNDO).await;
    browser
        .until("document.getElementById('pieces/p2/extent=torus').checked")
        .await;
    // After a reload the plans are all there.
    browser.reload().await;
    acts(&browser, &[DRAFTS]).await;
    assert_eq!(count(&browser, plans).await, had);
}

/// The texts of all plans on the shelf.
async fn shelf(browser: &Browser) -> String {
    browser
        .eval("Object.entries(localStorage).map(([k, v]) => k + v).join('\\n')")
        .await
        .as_str()
        .unwrap_or_default()
        .to_owned()
}

#[tokio::test]
async fn two_windows_lose_nothing_and_say_what_happened() {
    let browser = opened(360, 800, true).await;
    browser.type_in(TORUS_BORE, "31").await;
    let first = browser.client.window().await.expect("a window");
    let other = browser
        .client
        .new_window(true)
        .await
        .expect("another window")
        .handle;
    let (way, address) = crate::driver::ways().remove(0);
    browser
        .client
        .switch_to_window(other.clone())
        .await
        .expect("the other");
    browser.go(way, &address).await;
    assert_eq!(browser.field(TORUS_BORE).await, "31", "the same plan");
    // Both change the same plan, none having looked at the other.
    browser.type_in(TORUS_WIRE, "3,1").await;
    browser
        .client
        .switch_to_window(first)
        .await
        .expect("the first");
    browser.type_in(TORUS_BORE, "32").await;
    // The window that comes back sees what was typed in the other, and what it has itself.
    browser
        .until("document.visibilityState === 'visible'")
        .await;
    acts(&browser, &[DRAFTS, Act::Wait(".drafts .options > li")]).await;
    browser.reload().await;
    let all = shelf(&browser).await;
    assert!(
        all.contains("3,1"),
        "the other window's entry is lost: {all}"
    );
    assert!(
        all.contains("\\\"32\\\""),
        "this window's entry is lost: {all}"
    );
}

#[tokio::test]
async fn a_plan_goes_to_another_page_as_a_text() {
    let browser = opened(360, 800, true).await;
    browser.type_in(TORUS_BORE, "47,25").await;
    browser.type_in(TORUS_WIRE, "x y").await;
    acts(&browser, &[DRAFTS, Act::Open("#drafts details")]).await;
    let text = browser.text(".send pre").await;
    let answered = browser.text("#set").await;
    drop(browser);
    let other = opened(360, 800, true).await;
    acts(&other, &[DRAFTS, Act::Open("#drafts details")]).await;
    other
        .client
        .execute(
            "const f = document.getElementById('take'); f.focus(); document.execCommand('insertText', false, arguments[0]);",
            vec![json!(text)],
        )
        .await
        .expect("pasted");
    other.tap(".take > .button").await;
    other
        .until(&format!(
            "document.getElementById('{TORUS_BORE}').value === '47,25'"
        ))
        .await;
    assert_eq!(
        other.field(TORUS_WIRE).await,
        "x y",
        "what cannot be read too"
    );
    assert!(!answered.is_empty());
    // The plan that was there is there still.
    assert!(count(&other, ".drafts ul:first-child > li > .option").await >= 2);
}

/// Waits until a text is on the shelf: it is written once the answer has been painted.
async fn is_kept(browser: &Browser, text: &str) {
    let holds = format!("Object.values(localStorage).some((v) => v.includes('{text}'))");
    browser.until(&holds).await;
}

#[tokio::test]
async fn a_full_shelf_is_said_and_nothing_kept_is_lost() {
    let browser = opened(360, 800, true).await;
    browser.type_in(TORUS_BORE, "35").await;
    is_kept(&browser, "35").await;
    browser
        .eval(
            "(() => { let size = 1 << 21; let n = 0; while (size > 0) { try { localStorage.setItem('filler' + n, 'x'.repeat(size)); n += 1; } \
             catch { size >>= 1; } } return n; })()",
        )
        .await;
    browser.type_in(TORUS_BORE, "36123456789").await;
    browser
        .type_in(TORUS_WIRE, "3,6 mm and a long remark that needs room")
        .await;
    browser
        .until("document.querySelector('.shelf') !== null")
        .await;
    assert!(
        browser
            .text(".shelf")
            .await
            .starts_with("The browser's store is full")
    );
    // What was kept before is kept still, and the page goes on.
    let still = browser
        .eval("Object.keys(localStorage).some((k) => !k.startsWith('filler'))")
        .await;
    assert_eq!(still, Value::Bool(true));
    browser
        .eval("Object.keys(localStorage).filter((k) => k.startsWith('filler')).forEach((k) => localStorage.removeItem(k))")
        .await;
    browser.type_in(TORUS_BORE, "37").await;
    browser
        .until("document.querySelector('.shelf') === null")
        .await;
    browser.reload().await;
    assert_eq!(browser.field(TORUS_BORE).await, "37");
}

#[tokio::test]
async fn what_is_typed_the_moment_the_page_goes_is_kept() {
    let browser = opened(360, 800, true).await;
    let gone = browser
        .eval(&format!(
            "(() => {{ const f = document.getElementById('{TORUS_BORE}'); f.focus(); f.select(); \
             document.execCommand('insertText', false, '41.5'); setTimeout(() => location.reload(), 0); \
             window.before = true; return f.value; }})()"
        ))
        .await;
    assert_eq!(gone, "41.5");
    browser
        .until(
            "window.before === undefined && document.documentElement.dataset.state === 'running'",
        )
        .await;
    assert_eq!(browser.field(TORUS_BORE).await, "41.5");
}

#[tokio::test]
async fn one_damaged_plan_among_several_is_set_aside_and_the_others_open() {
    let browser = opened(360, 800, true).await;
    browser.type_in(TORUS_BORE, "38").await;
    is_kept(&browser, "38").await;
    acts(&browser, &[DRAFTS, Act::Tap("#drafts .actions .button")]).await;
    browser
        .until("document.querySelectorAll('.drafts ul:first-child > li > .option').length === 2")
        .await;
    let damaged = browser
        .eval(
            "(() => { const name = Object.keys(localStorage).find((k) => localStorage.getItem(k).includes('38')); \
             localStorage.setItem(name, localStorage.getItem(name).slice(0, 40)); sessionStorage.clear(); return name; })()",
        )
        .await;
    assert!(damaged.is_string(), "{damaged}");
    browser.reload().await;
    assert!(browser.text(".aside").await.starts_with("An earlier draft"));
    assert!(!browser.text("#set").await.is_empty());
    acts(&browser, &[DRAFTS]).await;
    assert!(count(&browser, ".drafts ul:first-child > li > .option").await >= 1);
}
