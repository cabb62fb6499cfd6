//! A plain plate whose answer can be worked out by hand, taken into the page as a text, and its figures read back.

use crate::driver::{Browser, PHONE, ways};
use serde_json::json;

/// Microns an hour at 1 A/dm2 and 98 %: 63.546 g/mol / (2 x 96485 C/mol x 8.96 g/cm3), by hand.
pub const RATE: f64 = 12.97;

/// 10 cm2 at 1 A/dm2, so 100 mA, for three hours at 98 %; no coat, no wire, a display in steps of 1 mA, begun at eight.
const PLATE: &[(&str, &str)] = &[
    ("pieces/p1/extent", "area"),
    ("pieces/p1/extent/area/one_side", "10"),
    ("pieces/p1/extent/area/method", "sizes"),
    ("pieces/p1/count", "1"),
    ("pieces/p1/hanger/wire_d", ""),
    ("pieces/p1/hanger/wet", ""),
    ("pieces/p1/base", "Cu"),
    ("steps/s1", "off"),
    ("steps/s2/drive", "density"),
    ("steps/s2/drive/density", "1"),
    ("steps/s2/until", "time"),
    ("steps/s2/until/time", "3"),
    ("baths/b1/efficiency", "98"),
    ("baths/b1/volume", "4"),
    ("supply/constant_current/display_step", "1"),
    ("start/local", "08:00"),
];

/// Opens the saved page, or the site where only that is tested, with the plate and what differs from it.
pub async fn plate(differs: &[(&str, &str)]) -> Browser {
    let (way, address) = ways().pop().expect("a way to open the page");
    let browser = Browser::open(PHONE).await;
    browser.go(way, &address).await;
    let mut text = String::from("ionwright job 1\n");
    let kept = |(at, _): &&(&str, &str)| !differs.iter().any(|(other, _)| other == at);
    for (at, entry) in PLATE.iter().filter(kept).chain(differs) {
        text.push_str(&format!("{at} = {entry}\n"));
    }
    text.push_str("end of job\n");
    browser.tap(".drafts .line .link").await;
    browser.tap(".take summary").await;
    let paste = "const f = document.getElementById('take'); f.focus(); document.execCommand('insertText', false, arguments[0]);";
    let pasted = browser.client.execute(paste, vec![json!(text)]).await;
    pasted.expect("the text");
    browser.tap(".take > .button").await;
    browser
        .until("document.getElementById('take-help').textContent.includes('Opened')")
        .await;
    assert_eq!(browser.text("#take-help").await, "Opened as a new plan.");
    browser.tap(".drafts .line .link").await;
    browser
}

/// Opens an example.
pub async fn example(id: &str) -> Browser {
    let (way, address) = ways().pop().expect("a way to open the page");
    let browser = Browser::open(PHONE).await;
    browser.go(way, &address).await;
    browser.tap(".drafts .line .link").await;
    browser.tap("#drafts > details summary").await;
    browser.tap(&format!("[data-demo='{id}'] button")).await;
    browser.tap(".drafts .line .link").await;
    browser
}

/// Picks a word of the list at an address.
pub async fn pick(browser: &Browser, at: &str, word: &str) {
    let picked = format!(
        "(() => {{ const l = document.getElementById('{at}'); l.value = '{word}'; \
         l.dispatchEvent(new Event('change', {{bubbles: true}})); return l.value; }})()"
    );
    assert_eq!(browser.eval(&picked).await, word, "{at}");
}

/// What is to be set now, in one line.
pub async fn set(browser: &Browser) -> String {
    let text = browser.text("#set").await;
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Waits until the large figure says this.
pub async fn until_set(browser: &Browser, wanted: &str) {
    browser
        .until(&format!(
            "document.getElementById('set')?.innerText.replace(/\\s+/g, ' ') === '{wanted}'"
        ))
        .await;
}

/// Waits until the text of a selector's first element holds a text.
pub async fn until_says(browser: &Browser, selector: &str, wanted: &str) {
    browser
        .until(&format!(
            "(document.querySelector(`{selector}`)?.innerText ?? '').replace(/\\s+/g, ' ').includes(`{wanted}`)"
        ))
        .await;
}

/// Hours and minutes as printed, in hours.
pub fn hours(said: &str) -> f64 {
    let words: Vec<&str> = said.split_whitespace().collect();
    words
        .windows(2)
        .map(|pair| {
            let number: f64 = pair[0].parse().unwrap_or(0.0);
            match pair[1] {
                "h" => number,
                "min" => number / 60.0,
                "s" => number / 3600.0,
                _ => 0.0,
            }
        })
        .sum()
}

/// The number before a unit, the first such in a text.
pub fn before(said: &str, unit: &str) -> f64 {
    let words: Vec<&str> = said.split_whitespace().collect();
    words
        .windows(2)
        .find(|pair| pair[1].trim_end_matches([',', '.', ';', ')', ':']) == unit)
        .and_then(|pair| pair[0].trim_start_matches('(').parse().ok())
        .unwrap_or_else(|| panic!("no number of {unit} in {said}"))
}

/// Printed numbers have three digits: half a digit of the last is half a percent.
pub fn near(got: f64, wanted: f64, of: &str) {
    assert!(
        (got / wanted - 1.0).abs() < 0.006,
        "{of}: {got}, by hand {wanted}"
    );
}

/// The last row of what is to be done: when, and how long in all.
pub async fn whole(browser: &Browser) -> f64 {
    hours(&browser.text(".answer .moments li:last-child .value").await)
}
