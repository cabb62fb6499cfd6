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

/// Answers lines in the page and gives back, after each, the hash over all answers so far: FNV-1a of their UTF-8 bytes in
/// four limbs of 16 bits, begun at the state that is handed in.
const HASHES: &str = r#"
    const limbs = [0, 1, 2, 3].map(n => parseInt(arguments[1].slice(12 - 4 * n, 16 - 4 * n), 16));
    return arguments[0].map(line => {
        let [a, b, c, d] = limbs;
        for (const byte of new TextEncoder().encode(ionwright.answerText(line))) {
            a ^= byte;
            let t = a * 435;
            let u = b * 435 + (t >>> 16);
            let v = c * 435 + a * 256 + (u >>> 16);
            let w = d * 435 + b * 256 + (v >>> 16);
            a = t & 65535; b = u & 65535; c = v & 65535; d = w & 65535;
        }
        limbs.splice(0, 4, a, b, c, d);
        return [d, c, b, a].map(limb => limb.toString(16).padStart(4, '0')).join('');
    });
"#;

#[tokio::test]
async fn host_and_page_answer_a_thousand_made_up_lines_with_the_same_bytes() {
    let (way, address) = ways().remove(0);
    let browser = Browser::open(PHONE).await;
    browser.go(way, &address).await;
    let mut hash = outside::FNV_START;
    for batch in outside::made_up(1000).chunks(100) {
        let before = format!("{hash:016x}");
        let page = browser
            .client
            .execute(HASHES, vec![json!(batch), json!(before)])
            .await
            .unwrap_or_else(|e| panic!("{e}"));
        let page = page.as_array().map(Vec::as_slice).unwrap_or_default();
        assert_eq!(page.len(), batch.len());
        for (line, page) in batch.iter().zip(page) {
            let host = answer_text(&Catalogue::standard(), line);
            hash = outside::fnv(hash, host.as_bytes());
            if page.as_str() == Some(format!("{hash:016x}").as_str()) {
                continue;
            }
            let differs = browser
                .client
                .execute(
                    "return ionwright.answerText(arguments[0]);",
                    vec![json!(line)],
                )
                .await
                .unwrap_or_else(|e| panic!("{line}: {e}"));
            panic!("{line}\npage {differs}\nhost {host}");
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
