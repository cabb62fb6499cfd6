//! How fast the page is, beside an empty one. Only collects: `cargo xtask measure` packs both pages, runs this, works out
//! the figures and prints them. Nothing here passes or fails by a time; what is refused is a run that measured nothing.

use crate::driver::{Browser, PHONE, TORUS_BORE, Way};
use serde_json::{Value, json};
use std::env;
use std::time::{Duration, Instant};

/// Keys typed one after the other.
const KEYS: usize = 40;
/// Keys typed as fast as a practised person does, with everything on the page open.
const BURST: usize = 20;
/// Keys each after a pause in which the page has begun its secondary work.
const AFTER_A_PAUSE: u64 = 10;

/// A page to be measured.
struct Page {
    name: &'static str,
    address: String,
    field: &'static str,
    /// Whether it has secondary work.
    whole: bool,
}

fn variable(name: &str) -> String {
    env::var(name).unwrap_or_else(|_| panic!("{name}: run `cargo xtask measure`"))
}

#[tokio::test]
#[ignore = "takes minutes; `cargo xtask measure` runs it"]
async fn measure() {
    let pages = [
        Page {
            name: "empty",
            address: format!("file://{}", variable("IONWRIGHT_EMPTY")),
            field: "field",
            whole: false,
        },
        Page {
            name: "page",
            address: format!("file://{}", variable("IONWRIGHT_PAGE")),
            field: TORUS_BORE,
            whole: true,
        },
    ];
    let runs: usize = variable("IONWRIGHT_RUNS").parse().expect("a number");
    let mut samples = Vec::new();
    let mut version = Value::Null;
    for run in 0..runs {
        let browser = Browser::open(PHONE).await;
        let about = browser.cdp("Browser.getVersion", json!({})).await;
        version = about["product"].clone();
        browser
            .cdp(
                "Page.addScriptToEvaluateOnNewDocument",
                json!({"source": include_str!("measure.js")}),
            )
            .await;
        // The first page of a fresh browser waits for a process.
        browser.go(Way::File, &pages[0].address).await;
        for slowed in [1, 4] {
            // Taking turns: what warms up or gets in the way does so for both.
            let turns = if run % 2 == 0 { [0, 1] } else { [1, 0] };
            for page in turns.map(|turn| &pages[turn]) {
                browser
                    .cdp("Emulation.setCPUThrottlingRate", json!({"rate": slowed}))
                    .await;
                let mut sample = one(&browser, page).await;
                sample["page"] = json!(page.name);
                sample["slowed"] = json!(slowed);
                samples.push(sample);
            }
        }
        eprintln!("   run {} of {runs}", run + 1);
    }
    let all = json!({"browser": version, "samples": samples});
    std::fs::write(variable("IONWRIGHT_SAMPLES"), all.to_string()).expect("the samples");
}

/// One start of a page, and keys typed into it.
async fn one(browser: &Browser, page: &Page) -> Value {
    browser.client.goto(&page.address).await.expect("the page");
    let mut sample = json!({"start_ms": browser.eval("measured.start").await});
    assert!(!browser.text("#set").await.is_empty(), "no first answer");
    sample["work_ms"] = browser.eval("measured.work()").await;
    browser
        .eval(&format!(
            "document.getElementById('{}').select()",
            page.field
        ))
        .await;
    let mut keyboard = Keyboard { browser, next: 0 };
    // The second of two figures comes and goes: every key changes the answer, and by much.
    keyboard.press().await;
    keyboard.settle().await;
    sample["keys_ms"] = keyboard.every(80, KEYS).await;
    if page.whole {
        browser.tap("[aria-controls='exact']").await;
        browser
            .until("!document.getElementById('exact').hidden")
            .await;
        browser
            .eval(&format!(
                "document.getElementById('{}').focus()",
                page.field
            ))
            .await;
        // What opening it set going has ended.
        tokio::time::sleep(Duration::from_secs(2)).await;
        sample["burst_ms"] = keyboard.every(60, BURST).await;
        for n in 0..AFTER_A_PAUSE {
            tokio::time::sleep(Duration::from_millis(250 + 40 * n)).await;
            keyboard.press().await;
        }
        sample["after_a_pause_ms"] = keyboard.settle().await;
    }
    browser.forgets().await;
    sample
}

/// Types 2, 21, 2, 23, 2, ... into the field that has the focus.
struct Keyboard<'a> {
    browser: &'a Browser,
    next: usize,
}

impl Keyboard<'_> {
    async fn press(&mut self) {
        let (key, code, number) = match self.next {
            0 => ("2".to_owned(), "Digit2".to_owned(), 50),
            n if n.is_multiple_of(2) => ("Backspace".to_owned(), "Backspace".to_owned(), 8),
            n => {
                let digit = n % 10;
                (digit.to_string(), format!("Digit{digit}"), 48 + digit)
            }
        };
        self.next += 1;
        let mut event =
            json!({"type": "keyDown", "key": key, "code": code, "windowsVirtualKeyCode": number});
        if number != 8 {
            event["text"] = json!(key);
        }
        self.browser
            .cdp("Input.dispatchKeyEvent", event.clone())
            .await;
        event["type"] = json!("keyUp");
        self.browser.cdp("Input.dispatchKeyEvent", event).await;
    }

    /// So many keys at this distance; a late one is followed at once.
    async fn every(&mut self, milliseconds: u64, keys: usize) -> Value {
        let begun = Instant::now();
        for n in 0..keys as u64 {
            let due = Duration::from_millis(n * milliseconds);
            tokio::time::sleep(due.saturating_sub(begun.elapsed())).await;
            self.press().await;
        }
        let all = self.settle().await;
        assert_eq!(all.as_array().map(Vec::len), Some(keys), "{all}");
        all
    }

    /// Waits until all keys have been answered, and takes their times.
    async fn settle(&mut self) -> Value {
        tokio::time::sleep(Duration::from_millis(600)).await;
        let all = self.browser.eval("measured.keys.splice(0)").await;
        let whole = all
            .as_array()
            .is_some_and(|all| all.iter().all(Value::is_number));
        assert!(whole, "a key did not change the answer: {all}");
        all
    }
}
