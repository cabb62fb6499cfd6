//! Wrong entries: said at the field, never cleared, the last good answer marked as such.

use crate::driver::{Browser, PHONE, TORUS_BORE, TORUS_WIRE, ways};
use planner::{Catalogue, answer};
use std::rc::Rc;
use web::state::{Action, State, at, demos, job};
use web::words::number;
use yew::Reducible;

/// What the host says after the same keys, one by one: the last of the texts on the way that could be read stands in.
fn set_after_keys(field: &str, text: &str) -> String {
    let typed = |t: &str| Action::Typed(field.to_owned(), t.to_owned());
    let ends: Vec<usize> = text.char_indices().map(|(n, c)| n + c.len_utf8()).collect();
    let state = ends
        .iter()
        .fold(Rc::new(State::new(demos::first())), |s, &end| {
            s.reduce(typed(&text[..end]))
        });
    let answer = answer(
        &Catalogue::standard(),
        &job::read(&state.draft, Some("2026-05-01T10:00")).job,
    );
    let set = answer.steps[0].current.known().expect("a current").set;
    number::current(set, Some(quantity::Current::milliampere(10.0))).replace('\u{a0}', " ")
}

#[tokio::test]
async fn a_wrong_entry_is_said_on_leaving_and_the_last_answer_stays() {
    let rows = [
        (
            TORUS_WIRE,
            "2 mn",
            "“mn” is no unit for this; from 0.1 mm to 50 mm is fine.",
        ),
        (
            TORUS_WIRE,
            "0",
            "0 is too little; from 0.1 mm to 50 mm is fine.",
        ),
        (
            TORUS_BORE,
            "3 m",
            "3 m is too much; from 1 mm to 300 mm is fine.",
        ),
        (
            TORUS_BORE,
            "22.5.1",
            "“22.5.1” has two decimal marks: which one is meant?",
        ),
        (
            TORUS_BORE,
            "NaN",
            "“NaN” is no number; from 1 mm to 300 mm is fine.",
        ),
        (
            at::COUNT,
            "1e999",
            "“1e999” is beyond all bounds; from 1 to 999 is fine.",
        ),
        (
            at::COUNT,
            "",
            "How many: type a number; from 1 to 999 is fine.",
        ),
        (at::COUNT, "-1", "-1 is too little; from 1 to 999 is fine."),
        (
            at::COUNT,
            "<b>x",
            "“<b>x” is no number; from 1 to 999 is fine.",
        ),
    ];
    let (way, address) = ways().remove(0);
    let browser = Browser::open(PHONE).await;
    browser.go(way, &address).await;
    for (field, text, message) in rows {
        let good = browser.field(field).await;
        if text.is_empty() {
            browser.type_in(field, "\u{e003}").await;
        } else {
            browser.type_in(field, text).await;
        }
        let help = format!("[id=\"{field}-help\"]");
        browser
            .until(&format!(
                "document.querySelector('[id=\"{field}\"]').getAttribute('aria-invalid') === 'true'"
            ))
            .await;
        assert_eq!(browser.text(&help).await, message, "{text}");
        assert_eq!(browser.field(field).await, text, "what was typed stays");
        assert_eq!(
            browser.text("#set").await,
            set_after_keys(field, text),
            "{text}: the last good entry's answer"
        );
        assert_eq!(
            browser.text(".stands-in").await,
            "from your last good entry"
        );
        browser.type_in(field, &good).await;
        browser
            .until("document.querySelector('.stands-in') === null")
            .await;
    }
}

#[tokio::test]
async fn a_wrong_entry_survives_a_reload_with_its_answer() {
    for (way, address) in ways() {
        let browser = Browser::open(PHONE).await;
        browser.go(way, &address).await;
        browser.type_in(TORUS_WIRE, "4").await;
        let good = browser.text("#set").await;
        browser.type_in(TORUS_WIRE, "4,,").await;
        browser.reload().await;
        assert_eq!(browser.field(TORUS_WIRE).await, "4,,");
        assert_eq!(browser.text("#set").await, good);
        assert_eq!(
            browser.text(".stands-in").await,
            "from your last good entry"
        );
    }
}
