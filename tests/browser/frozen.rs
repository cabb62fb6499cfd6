//! The frozen jobs are answered in the page with the same bytes as on the host.

use crate::driver::{Browser, PHONE, ways};
use planner::{Catalogue, answer_text};
use serde_json::{Value, json};

#[tokio::test]
async fn host_and_page_answer_with_the_same_bytes() {
    let jobs = outside::frozen();
    assert!(jobs.len() >= 20, "{} frozen jobs", jobs.len());
    for (way, address) in ways() {
        let browser = Browser::open(PHONE).await;
        browser.go(way, &address).await;
        for (name, line) in &jobs {
            let host = answer_text(&Catalogue::standard(), line);
            let page = browser
                .client
                .execute(
                    "return ionwright.answerText(arguments[0]);",
                    vec![json!(line)],
                )
                .await
                .unwrap_or_else(|e| panic!("{name}: {e}"));
            assert_eq!(page.as_str(), Some(host.as_str()), "{way:?} {name}");
        }
    }
}

#[tokio::test]
async fn the_object_interface_says_the_same_as_the_text() {
    let (way, address) = ways().remove(0);
    let browser = Browser::open(PHONE).await;
    browser.go(way, &address).await;
    for (name, line) in outside::frozen() {
        let Ok(question) = serde_json::from_str::<Value>(&line) else {
            continue;
        };
        let page = browser
            .client
            .execute(
                "return JSON.stringify(ionwright.answer(arguments[0]));",
                vec![question],
            )
            .await
            .unwrap_or_else(|e| panic!("{name}: {e}"));
        let page: Value = serde_json::from_str(page.as_str().unwrap_or_default()).expect("JSON");
        let host: Value =
            serde_json::from_str(&answer_text(&Catalogue::standard(), &line)).expect("JSON");
        assert!(alike(&page, &host), "{name}:\n{page}\n{host}");
    }
}

/// Equal up to how a whole number is written: JavaScript has one kind of number.
fn alike(a: &Value, b: &Value) -> bool {
    match (a, b) {
        (Value::Number(a), Value::Number(b)) => a.as_f64() == b.as_f64(),
        (Value::Array(a), Value::Array(b)) => {
            a.len() == b.len() && a.iter().zip(b).all(|(a, b)| alike(a, b))
        }
        (Value::Object(a), Value::Object(b)) => {
            a.len() == b.len() && a.iter().all(|(k, v)| b.get(k).is_some_and(|w| alike(v, w)))
        }
        _ => a == b,
    }
}
