//! What holds a job back and the ways out, supplies of every kind, a solution by its label. Figures worked out by hand.

use crate::driver::Browser;
use crate::plates::{before, near, pick, plate, set, until_says, until_set};
use serde_json::json;

/// Presses the way out whose words hold a text, by keyboard as by finger.
async fn try_way(browser: &Browser, holds: &str) {
    let find = format!(
        "[...document.querySelectorAll('.ways:not([inert]) button')].find(e => e.innerText.replace(/\\s+/g, ' ').includes('{holds}'))"
    );
    browser.until(&format!("{find} !== undefined")).await;
    browser.eval(&format!("{find}.focus()")).await;
    let focused = browser.client.active_element().await.expect("the way out");
    focused.send_keys("\u{e007}").await.expect("enter");
}

#[tokio::test]
async fn a_way_out_is_tried_and_taken_back_and_the_focus_is_not_lost() {
    // 5.2 cm2 at 1 A/dm2 want 52 mA, which a display in tens cannot show.
    let browser = plate(&[
        ("pieces/p1/extent/area/one_side", "5.2"),
        ("supply/constant_current/display_step", "10"),
    ])
    .await;
    assert_eq!(set(&browser).await, "50 mA");
    let note = browser.text(".limits .note").await;
    assert!(note.contains("50 mA may be 45 to 55"), "{note}");
    try_way(&browser, "A supply or meter in steps of").await;
    until_set(&browser, "52 mA").await;
    // Who cannot see it is told, and stands on the way back.
    browser
        .until("document.activeElement.matches('.limits .note .link')")
        .await;
    let told = browser.text(".limits .note").await;
    assert!(told.starts_with("Changed as you asked."), "{told}");
    assert!(
        !browser
            .text(".limits")
            .await
            .contains("Your supply shows steps")
    );
    let undo = browser.client.active_element().await.expect("the way back");
    undo.send_keys("\u{e007}").await.expect("enter");
    until_set(&browser, "50 mA").await;
    browser
        .until("document.activeElement.matches('.limits')")
        .await;
    assert_eq!(
        browser.field("steps/s2/until/time").await,
        "3",
        "nothing else changed"
    );
}

#[tokio::test]
async fn a_thief_is_hung_by_a_tap_and_taken_off_again() {
    // 10 cm2 want 100 mA, the supply gives 200 at least: as much wire again, 10 cm2 / (pi x 1 mm) = 318.3 mm.
    let browser = plate(&[("supply/constant_current/lowest", "200")]).await;
    try_way(&browser, "A thief along with it: 318.3 mm").await;
    // It collects as much as the plate, and has a row of its own.
    until_says(&browser, "table.pieces", "thief").await;
    assert_eq!(set(&browser).await, "200 mA");
    browser.tap(".bar li:last-child .piece").await;
    browser
        .until("document.getElementById('pieces/p2/label')?.value === 'thief'")
        .await;
    let wire = "pieces/p2/extent/parts/a/shape/rod";
    assert_eq!(browser.field(&format!("{wire}/diameter")).await, "1");
    assert_eq!(browser.field("pieces/p2/hanger/wet").await, "");
    let length = browser.field(&format!("{wire}/length")).await;
    let length: f64 = length.parse().expect("a length");
    assert!((318.3..320.0).contains(&length), "{length}");
    browser.tap(".limits .note .link").await;
    browser
        .until("document.getElementById('pieces/p2/label') === null")
        .await;
}

#[tokio::test]
async fn ways_out_keep_their_place_while_the_next_ones_are_worked_out() {
    let browser = plate(&[
        ("pieces/p1/extent/area/one_side", "5.2"),
        ("supply/constant_current/display_step", "10"),
    ])
    .await;
    browser
        .until("document.querySelector('.ways:not([inert])')?.innerText.includes('52')")
        .await;
    browser
        .eval(
            "(() => { window.gone = window.waited = false;
               const look = () => {
                 gone ||= document.querySelector('.ways') === null;
                 waited ||= document.querySelector('.ways[inert]') !== null;
               };
               new MutationObserver(look).observe(document.body,
                 { childList: true, subtree: true, attributes: true });
               const field = document.getElementById('pieces/p1/extent/area/one_side');
               field.value = '5.3';
               field.dispatchEvent(new InputEvent('input', { bubbles: true })); })()",
        )
        .await;
    browser
        .until("document.querySelector('.ways:not([inert])')?.innerText.includes('53')")
        .await;
    assert_eq!(browser.eval("[gone, waited]").await, json!([false, true]));
}

#[tokio::test]
async fn a_supply_that_is_too_small_has_ways_out_with_their_own_numbers() {
    // Four times 10 cm2 at 1 A/dm2 want 400 mA, the supply gives 200.
    let browser = plate(&[
        ("pieces/p1/count", "4"),
        ("supply/constant_current/highest", "0.2"),
        ("steps/s2/until", "mean"),
        ("steps/s2/until/mean", "25.94"),
    ])
    .await;
    assert_eq!(set(&browser).await, "200 mA");
    let note = browser.text(".limits .note").await;
    assert!(
        note.contains("Your supply gives 200 mA, 400 mA would be right."),
        "{note}"
    );
    // Two at once get 1 A/dm2: 25.94 / 12.97 = 2 h a batch.
    browser
        .until("document.querySelectorAll('.ways:not([inert]) button').length > 0")
        .await;
    let ways = browser.text(".ways").await;
    assert!(ways.contains("2 at once"), "{ways}");
    assert!(ways.contains("A supply up to 400 mA"), "{ways}");
    try_way(&browser, "A supply up to").await;
    until_set(&browser, "400 mA").await;
    browser
        .until("document.querySelector('.ways') === null")
        .await;
}

#[tokio::test]
async fn a_supply_that_holds_the_volts_says_volts_and_what_then_flows() {
    let browser = plate(&[
        ("supply", "constant_voltage"),
        ("supply/constant_voltage/display_step", "0.1"),
    ])
    .await;
    let volts = set(&browser).await;
    assert!(volts.ends_with(" V"), "{volts}");
    // A step of the display.
    let tenths = before(&volts, "V") * 10.0;
    assert!((tenths - tenths.round()).abs() < 1e-6, "{volts}");
    let flows = browser.text(".answer .second").await;
    assert!(flows.starts_with("flows about"), "{flows}");
    let ma = before(&flows, "mA");
    assert!((50.0..200.0).contains(&ma), "100 mA are wanted: {flows}");
    // There is no voltmeter to watch then, but an ammeter: 5 to 20 % less in the first minute.
    browser.tap(".fold.meter button").await;
    let meter = browser.text("#meter").await;
    assert!(meter.contains("where the current stands"), "{meter}");
    assert!(!meter.contains("where the volts stand"), "{meter}");
    let first = before(&meter[meter.find("About").unwrap_or(0) + 6..], "mA");
    assert!((0.75 * ma..0.95 * ma).contains(&first), "{ma}: {meter}");
    // With both limits the current is the one that rules.
    browser.tap(".setup .link").await;
    browser
        .type_in("supply/constant_voltage/highest", "0.05")
        .await;
    until_says(&browser, ".limits", "50.0 mA").await;
    near(
        before(&browser.text(".answer .second").await, "mA"),
        50.0,
        "its most",
    );
}

#[tokio::test]
async fn a_few_settings_are_known_by_a_weighed_strip() {
    let browser = plate(&[("supply", "fixed_settings")]).await;
    browser.tap(".setup .link").await;
    // A strip in series gained 0.1185 g in an hour: 0.1185 / 1.18549 g/Ah = 100 mA.
    browser
        .type_in("supply/fixed_settings/f1/strip_gain", "0.1185")
        .await;
    browser
        .type_in("supply/fixed_settings/f1/strip_time", "1 h")
        .await;
    browser
        .until("document.getElementById('supply/fixed_settings/f2/current') !== null")
        .await;
    // A second one, ten times as much by a meter: the plate wants 100 mA, so the first is taken.
    browser
        .type_in("supply/fixed_settings/f2/current", "1000")
        .await;
    until_set(&browser, "100 mA").await;
    // 1.1 A are more than the other gives: it is the highest that is not above.
    browser.type_in("steps/s2/drive/density", "11").await;
    until_set(&browser, "1.00 A").await;
}

#[tokio::test]
async fn a_solution_is_known_by_its_label() {
    let browser = plate(&[("baths/b1/efficiency", "")]).await;
    browser.tap(".setup .link").await;
    pick(&browser, "baths/b1/solution", "own").await;
    browser
        .until("document.getElementById('own/solutions/own/metal') !== null")
        .await;
    pick(&browser, "own/solutions/own/metal", "Ag").await;
    pick(&browser, "steps/s2/drive", "advised").await;
    browser.type_in("own/solutions/own/density", "0.5").await;
    until_set(&browser, "50 mA").await;
    browser.type_in("own/solutions/own/efficiency", "100").await;
    // Silver at 0.5 A/dm2 for three hours: 107.868 g/mol / (96485 C/mol x 10.49 g/cm3) is 38.4 um/h per A/dm2.
    until_says(&browser, ".outcome", "57.5").await;
    near(
        before(&browser.text(".outcome .have").await, "µm"),
        3.0 * 0.5 * 38.37,
        "silver",
    );
    // In place of an efficiency, what a charge moves: 33.33 mg/(A min) are 2 g an ampere-hour, of 4.025 by theory.
    browser
        .type_in("own/solutions/own/efficiency", "\u{e003}")
        .await;
    browser.type_in("own/solutions/own/moves", "33.33").await;
    until_says(&browser, ".outcome", "28.6").await;
}
