//! A whole job by keys alone: the focus is always somewhere, always shown, and the names are what can be read.

use crate::driver::{Browser, TORUS_BORE, TORUS_WIRE};
use crate::views::{VIEWS, findings, opened, show};
use fantoccini::actions::{InputSource, KeyAction, KeyActions};
use fantoccini::key::Key;
use serde_json::json;

const COMMON: &str = include_str!("scripts/common.js");

async fn press(browser: &Browser, key: char) {
    let keys = KeyActions::new("keys".to_owned())
        .then(KeyAction::Down { value: key })
        .then(KeyAction::Up { value: key });
    browser.client.perform_actions(keys).await.expect("a key");
}

async fn shift_tab(browser: &Browser) {
    let shift = Key::Shift.into();
    let keys = KeyActions::new("keys".to_owned())
        .then(KeyAction::Down { value: shift })
        .then(KeyAction::Down {
            value: Key::Tab.into(),
        })
        .then(KeyAction::Up {
            value: Key::Tab.into(),
        })
        .then(KeyAction::Up { value: shift });
    browser.client.perform_actions(keys).await.expect("keys");
}

/// The focus is on something, and it is shown; `after` says what was done.
async fn shown(browser: &Browser, after: &str) {
    // What was done may redraw the page a moment later, as the shelf answers.
    let frames =
        "new Promise(r => requestAnimationFrame(() => requestAnimationFrame(() => r(true))))";
    browser.until(frames).await;
    let found = findings(
        browser,
        &[COMMON, include_str!("scripts/focus.js")].concat(),
        Vec::new(),
    )
    .await;
    assert!(found.is_empty(), "after {after}: {found:?}");
}

async fn is_at(browser: &Browser, selector: &str) -> bool {
    browser
        .eval(&format!("document.activeElement.matches(`{selector}`)"))
        .await
        == true
}

/// Goes forward until the focus is on a selector.
async fn tab_to(browser: &Browser, selector: &str) {
    for _ in 0..120 {
        press(browser, Key::Tab.into()).await;
        if is_at(browser, selector).await {
            shown(browser, &format!("going to {selector}")).await;
            return;
        }
    }
    panic!("no way by Tab to {selector}");
}

/// Goes back until the focus is on a selector.
async fn back_to(browser: &Browser, selector: &str) {
    for _ in 0..120 {
        shift_tab(browser).await;
        if is_at(browser, selector).await {
            shown(browser, &format!("going back to {selector}")).await;
            return;
        }
    }
    panic!("no way back by Tab to {selector}");
}

async fn type_keys(browser: &Browser, text: &str) {
    for key in text.chars() {
        press(browser, key).await;
    }
    shown(browser, &format!("typing {text}")).await;
}

async fn act(browser: &Browser, key: Key, done: &str) {
    press(browser, key.into()).await;
    browser.until(done).await;
    shown(browser, done).await;
}

#[tokio::test]
async fn a_whole_job_by_keys_alone() {
    let browser = opened(360, 800, true).await;
    // The shape: arrows walk through one set of cards, and picking is at once.
    tab_to(&browser, "[id='pieces/p1/extent=torus']").await;
    act(
        &browser,
        Key::Left,
        "document.getElementById('pieces/p1/extent=acorn_cap').checked",
    )
    .await;
    act(
        &browser,
        Key::Right,
        "document.getElementById('pieces/p1/extent=torus').checked",
    )
    .await;
    // The sizes: coming by Tab marks what stands there, so that typing replaces it.
    for (field, text) in [(TORUS_BORE, "50"), (TORUS_WIRE, "2,5")] {
        tab_to(&browser, &format!("[id='{field}']")).await;
        type_keys(&browser, text).await;
        assert_eq!(browser.field(field).await, text);
    }
    // What for.
    tab_to(&browser, "[name='steps/s2/until']").await;
    act(
        &browser,
        Key::Down,
        "document.getElementById('steps/s2/until=pendant').checked",
    )
    .await;
    let before = browser.text("#set").await;
    assert!(!before.is_empty());
    // The supply.
    tab_to(&browser, ".setup .link").await;
    act(
        &browser,
        Key::Enter,
        "document.querySelector('#setup .fields') !== null",
    )
    .await;
    tab_to(&browser, "[id='supply/constant_current/highest']").await;
    type_keys(&browser, "0,1").await;
    browser
        .until(&format!(
            "document.getElementById('set').innerText.replace(/\\s+/g, ' ') !== '{before}'"
        ))
        .await;
    assert_eq!(browser.text("#set").await, "100 mA", "all that it gives");
    back_to(&browser, ".setup .link").await;
    act(
        &browser,
        Key::Space,
        "document.querySelector('#setup .fields') === null",
    )
    .await;
    // More exact.
    tab_to(&browser, ".exact h2 .link").await;
    act(
        &browser,
        Key::Enter,
        "document.querySelector('#exact details') !== null",
    )
    .await;
    tab_to(&browser, "#exact summary").await;
    act(
        &browser,
        Key::Enter,
        "document.activeElement.closest('details').open",
    )
    .await;
    press(&browser, Key::Tab.into()).await;
    shown(&browser, "going into what was opened").await;
    back_to(&browser, ".exact h2 .link").await;
    act(
        &browser,
        Key::Space,
        "document.querySelector('#exact details') === null",
    )
    .await;
    // A piece more, and off again, and back.
    back_to(&browser, ".measure + .actions .button").await;
    act(
        &browser,
        Key::Enter,
        "document.querySelectorAll('.bar li').length === 2",
    )
    .await;
    back_to(&browser, ".bar li:last-child .link").await;
    act(
        &browser,
        Key::Enter,
        "document.querySelectorAll('.bar li').length === 0",
    )
    .await;
    tab_to(&browser, ".ask > .actions .button").await;
    act(
        &browser,
        Key::Space,
        "document.querySelectorAll('.bar li').length === 2",
    )
    .await;
    // To the last thing that can be taken back.
    while browser
        .eval("!document.activeElement.disabled && document.activeElement.matches('.ask > .actions .button')")
        .await
        == true
        && browser
            .eval("document.querySelector('.ask > .actions .button').disabled || document.querySelector('.ask > .actions .button').getAttribute('aria-disabled') === 'true'")
            .await
            == false
    {
        press(&browser, Key::Enter.into()).await;
        shown(&browser, "taking back").await;
    }
    shown(&browser, "taking the last thing back").await;
    // As a text.
    tab_to(&browser, ".share summary").await;
    act(
        &browser,
        Key::Enter,
        "document.querySelector('.share details').open",
    )
    .await;
    tab_to(&browser, ".share .button").await;
    act(
        &browser,
        Key::Enter,
        "document.querySelector('.share .button').textContent === 'Copied'",
    )
    .await;
    // An emergency, from where one is, and back to there.
    back_to(&browser, ".emergency").await;
    act(
        &browser,
        Key::Enter,
        "document.activeElement.matches('dialog .rinse .button')",
    )
    .await;
    act(
        &browser,
        Key::Enter,
        "document.querySelector('.clock') !== null",
    )
    .await;
    for _ in 0..6 {
        press(&browser, Key::Tab.into()).await;
        let out = browser
            .eval("!document.activeElement.closest('dialog') && document.activeElement !== document.body")
            .await;
        assert_eq!(
            out, false,
            "the focus left the emergency sheet for the page"
        );
    }
    act(
        &browser,
        Key::Escape,
        "document.querySelector('dialog') === null && document.activeElement.matches('.emergency')",
    )
    .await;
    act(
        &browser,
        Key::Enter,
        "document.querySelector('dialog') !== null",
    )
    .await;
    tab_to(&browser, "dialog > .button").await;
    act(
        &browser,
        Key::Enter,
        "document.querySelector('dialog') === null && document.activeElement.matches('.emergency')",
    )
    .await;
}

#[tokio::test]
async fn names_say_what_can_be_read_and_one_place_tells_the_answer() {
    let browser = opened(360, 800, true).await;
    let mut all = Vec::new();
    for view in VIEWS {
        show(&browser, view).await;
        let script = [COMMON, include_str!("scripts/names.js")].concat();
        for line in findings(&browser, &script, vec![json!(view.name)]).await {
            all.push(format!("{}: {line}", view.name));
        }
    }
    assert!(all.is_empty(), "{}", all.join("\n"));
}

#[tokio::test]
async fn the_answer_is_told_once_after_a_pause_and_a_message_on_leaving() {
    let browser = opened(360, 800, true).await;
    let status = "document.querySelector('body > #app > p[role=status], #app > p[role=status], p.unseen[role=status]').textContent";
    browser.until(&format!("{status} !== ''")).await;
    let before = browser.eval(status).await;
    browser
        .eval(&format!(
            "(() => {{ window.told = []; const where = document.querySelector('p.unseen[role=status]'); \
             new MutationObserver(() => told.push(where.textContent)).observe(where, {{childList: true, characterData: true, subtree: true}}); \
             document.getElementById('{TORUS_BORE}').select(); }})()"
        ))
        .await;
    for key in "40".chars() {
        press(&browser, key).await;
    }
    browser.until(&format!("{status} !== {before}")).await;
    browser
        .until("new Promise(r => setTimeout(() => r(true), 1500))")
        .await;
    assert_eq!(
        browser.eval("told.length").await,
        1,
        "{}",
        browser.eval("told").await
    );
    // A message is not written while its field is being typed in.
    let help = format!("document.getElementById('{TORUS_BORE}-help').textContent.trim()");
    type_keys(&browser, "x").await;
    assert_eq!(browser.eval(&help).await, "");
    press(&browser, Key::Tab.into()).await;
    browser.until(&format!("{help} !== ''")).await;
    assert_eq!(
        browser
            .eval(&format!(
                "document.getElementById('{TORUS_BORE}-help').getAttribute('role')"
            ))
            .await,
        "status"
    );
}
