//! The page opens with an answer, follows an edit, and remembers it.

use crate::driver::{Browser, PHONE, TORUS_WIRE, Way, ways};
use planner::{Catalogue, answer};
use web::state::{Action, State, at, demos, job};
use web::words::number;
use yew::Reducible;

/// The large figure and the mean thickness that the host works out for the example after some edits.
fn expected(edits: &[(&str, &str)]) -> (String, String) {
    let state = edits.iter().fold(
        std::rc::Rc::new(State::new(demos::first())),
        |s, (at, text)| s.reduce(Action::Typed((*at).to_owned(), (*text).to_owned())),
    );
    let read = job::read(&state.draft, Some("2026-05-01T10:00"));
    let answer = answer(&Catalogue::standard(), &read.job);
    let step = quantity::Current::milliampere(10.0);
    let set = answer.steps[0].current.known().expect("a current").set;
    let mean = answer.pieces[0].mean.known().expect("a thickness").likely;
    (
        number::current(set, Some(step)).replace('\u{a0}', " "),
        number::thickness(mean).replace('\u{a0}', " "),
    )
}

async fn figure(browser: &Browser) -> String {
    let text = browser.text("#set").await;
    text.replace('\n', " ")
        .split_whitespace()
        .collect::<Vec<_>>()
        .join(" ")
}

#[tokio::test]
async fn the_first_answer_an_edit_and_a_reload() {
    for (way, address) in ways() {
        let browser = Browser::open(PHONE).await;
        browser.go(way, &address).await;
        let (set, mean) = expected(&[]);
        assert_eq!(figure(&browser).await, set, "{way:?}: the example");
        assert_eq!(browser.text("#mean").await, mean);

        browser.type_in(TORUS_WIRE, "3,5").await;
        let (wider, _) = expected(&[(TORUS_WIRE, "3,5")]);
        assert_ne!(wider, set);
        browser
            .until(&format!(
                "document.getElementById('set').innerText.replace(/\\s+/g, ' ') === '{wider}'"
            ))
            .await;
        let help = format!("[id=\"{}-help\"]", TORUS_WIRE);
        assert_eq!(browser.text(&help).await, "read as 3.5 mm");

        browser.reload().await;
        assert_eq!(
            browser.field(TORUS_WIRE).await,
            "3,5",
            "{way:?}: after a reload"
        );
        assert_eq!(figure(&browser).await, wider);
    }
}

#[tokio::test]
async fn every_keystroke_changes_the_answer_at_once() {
    let (way, address) = ways().remove(0);
    let browser = Browser::open(PHONE).await;
    browser.go(way, &address).await;
    browser
        .eval(&format!(
            "document.getElementById('{}').select()",
            at::COUNT
        ))
        .await;
    let field = browser
        .client
        .find(fantoccini::Locator::Id(at::COUNT))
        .await
        .expect("the field");
    let mut typed = String::new();
    for key in ["1", "2"] {
        field.send_keys(key).await.expect("a key");
        typed += key;
        let (set, _) = expected(&[(at::COUNT, &typed)]);
        browser
            .until(&format!(
                "document.getElementById('set').innerText.replace(/\\s+/g, ' ') === '{set}'"
            ))
            .await;
    }
}

#[tokio::test]
async fn undo_brings_back_what_stood_there() {
    let (way, address) = ways().remove(0);
    let browser = Browser::open(PHONE).await;
    browser.go(way, &address).await;
    browser.type_in(at::HANGER_WET, "45").await;
    // An example opens beside it, and nothing is written over.
    browser.tap(".drafts .line .link").await;
    browser.tap(".drafts details summary").await;
    browser.tap("[data-demo='bookmark'] button").await;
    browser
        .until("document.querySelectorAll('.drafts .options > li').length >= 2 && document.getElementById('steps/s2/until/depth') !== null")
        .await;
    let undo = ".ask > .actions .button";
    browser.tap(undo).await;
    for expected in ["45", "20"] {
        browser
            .until(&format!(
                "document.getElementById('{}')?.value === '{expected}'",
                at::HANGER_WET
            ))
            .await;
        if expected == "45" {
            browser.tap(undo).await;
        }
    }
}

#[tokio::test]
async fn a_piece_is_repeated_counted_and_taken_off_with_a_way_back() {
    for (way, address) in ways() {
        let browser = Browser::open(PHONE).await;
        browser.go(way, &address).await;
        browser
            .eval("window.before = document.querySelector('#set').textContent")
            .await;
        browser.tap(".measure + .actions .button").await;
        browser
            .until("document.querySelectorAll('.bar li').length === 2")
            .await;
        browser
            .until("document.querySelector(\'#set\').textContent !== window.before")
            .await;
        browser.tap("[id='pieces/p2/count'] ~ .step").await;
        browser
            .until("document.getElementById('pieces/p2/count').value === '3'")
            .await;
        browser.tap(".bar li:last-child .link").await;
        browser
            .until("document.querySelector(\'#set\').textContent === window.before")
            .await;
        browser.tap(".ask > .actions .button").await;
        browser
            .until("document.querySelectorAll('.bar li').length === 2")
            .await;
    }
}

#[tokio::test]
async fn the_saved_page_asks_for_nothing() {
    for (way, address) in ways().into_iter().filter(|(way, _)| *way == Way::File) {
        let browser = Browser::open(PHONE).await;
        browser.go(way, &address).await;
        browser.type_in(at::COUNT, "3").await;
        browser.tap(".setup .link").await;
        browser.tap(".working .link").await;
        assert_eq!(
            browser
                .eval("performance.getEntriesByType('resource').length")
                .await,
            0
        );
        assert_eq!(
            browser
                .eval("document.querySelectorAll('[style]').length")
                .await,
            0
        );
    }
}
