//! Several pieces on one bar, vessels one behind the other, a class around the tank. Figures worked out by hand.

use crate::driver::Browser;
use crate::plates::{RATE, before, example, near, pick, plate, set, until_says, until_set, whole};

async fn rows(browser: &Browser, selector: &str) -> Vec<String> {
    let all = browser
        .eval(&format!(
            "[...document.querySelectorAll(`{selector}`)].map(e => e.innerText.replace(/\\s+/g, ' ').trim())"
        ))
        .await;
    serde_json::from_value(all).expect("texts")
}

#[tokio::test]
async fn one_that_joins_later_makes_a_ladder() {
    let browser = plate(&[]).await;
    assert_eq!(set(&browser).await, "100 mA", "10 cm2 x 1 A/dm2");
    browser.tap(".measure + .actions .button").await;
    // Twice the area.
    until_set(&browser, "200 mA").await;
    assert_eq!(rows(&browser, ".bar li .piece").await.len(), 2);
    browser.type_in("pieces/p2/joins/after", "1").await;
    until_set(&browser, "100 mA").await;
    let ladder = rows(&browser, ".answer .moments li").await;
    assert_eq!(ladder.len(), 2, "{ladder:?}");
    let joins = &ladder[0];
    for said in [
        // An hour after eight.
        "09:00",
        "hang in known area 2, turn up to",
        "200 mA",
        // 100 mA on 20 cm2.
        "left as it was: 0.500 A/dm²",
    ] {
        assert!(joins.contains(said), "{said}: {joins}");
    }
    assert!(ladder[1].starts_with("11:00"), "{ladder:?}");
    // Three hours at 1 A/dm2, and two.
    let layers = rows(&browser, ".pieces tbody tr").await;
    near(before(&layers[0], "µm"), 3.0 * RATE, "the first");
    near(before(&layers[1], "µm"), 2.0 * RATE, "the later one");
    // Taken off the bar, it comes back with an undo.
    browser.tap(".bar li:last-child .link").await;
    browser
        .until("document.querySelectorAll('.answer .moments li').length === 1")
        .await;
    browser.tap(".ask > .actions .button").await;
    until_says(&browser, ".answer .moments li", "hang in").await;
    assert_eq!(browser.field("pieces/p2/joins/after").await, "1");
}

#[tokio::test]
async fn vessels_one_behind_the_other_share_the_time() {
    // The class's 398.8 cm2 at 1.5 A to 60 um: 18.45 Ah, so 12.3 h, in two vessels 6.15, in four 3.07.
    let browser = plate(&[
        ("pieces/p1/extent/area/one_side", "99.7"),
        ("pieces/p1/count", "4"),
        ("steps/s2/drive", "all_supply"),
        ("steps/s2/until", "mean"),
        ("steps/s2/until/mean", "60"),
        ("supply/constant_current/highest", "1.5"),
        ("baths/b1/volume", "6"),
    ])
    .await;
    assert_eq!(set(&browser).await, "1.500 A");
    near(whole(&browser).await, 12.30, "one vessel");
    assert_eq!(rows(&browser, ".series").await.len(), 0);
    browser.tap(".setup .link").await;
    for (vessels, wanted, each) in [("2", 6.15, "× 2"), ("4", 3.075, "× 1")] {
        browser.type_in("steps/s2/in", vessels).await;
        browser
            .until(&format!(
                "document.querySelectorAll('.series ol li').length === {vessels}"
            ))
            .await;
        near(whole(&browser).await, wanted, vessels);
        let hung = rows(&browser, ".series ol li").await;
        for (n, line) in hung.iter().enumerate() {
            let begins = format!("Vessel {}: ", n + 1);
            assert!(line.starts_with(&begins) && line.contains(each), "{line}");
        }
        // The drawing has a plate in each beaker.
        let plates = browser
            .eval("document.querySelectorAll('.series svg .step').length.toString()")
            .await;
        assert_eq!(plates, vessels);
        let wiring = browser.text(".series p").await;
        assert!(wiring.contains("the volts add up"), "{wiring}");
    }
}

#[tokio::test]
async fn a_class_sees_what_it_has_at_the_bell() {
    let browser = example("class").await;
    browser
        .until("document.querySelector('.card.class') !== null")
        .await;
    let said = browser.text(".card.class").await;
    // 1.5 A at the 1.2 A/dm2 the bath takes is 125 cm2, 4 of 28.5 cm2; 6 L at 2 A/L bear more.
    assert!(said.contains("14 pieces. At once fit:"), "{said}");
    assert!(
        said.contains("What rules is the supply’s current."),
        "{said}"
    );
    // 1.5 A over 398.8 cm2 is 0.376 A/dm2: 12.2 um at the bell, 47.8 owed, for leaf and pod alike.
    for row in rows(&browser, ".card.class tbody tr").await {
        near(before(&row, "µm"), 0.376 * RATE * 2.5, &row);
        let owed = row.rsplit_once("µm ").map_or("", |(_, rest)| rest);
        near(before(owed, "µm"), 47.8, &row);
    }
    // A wire of 1 mm takes pi d T: sqrt(1 + 4 x 0.0122) and sqrt(1 + 4 x 0.060) mm.
    assert!(said.contains("1.02 mm at the bell"), "{said}");
    assert!(said.contains("1.11 mm at the end"), "{said}");
    // Two more students have no piece.
    browser.tap(".setup .link").await;
    browser.type_in("class/students", "16").await;
    until_says(&browser, ".card.class", "2 students have no piece").await;
    // The bell an hour earlier: 1.5 h.
    browser.type_in("class/lesson", "1.5").await;
    until_says(&browser, ".card.class tbody", "7.3").await;
    let row = rows(&browser, ".card.class tbody tr").await.remove(0);
    near(before(&row, "µm"), 0.376 * RATE * 1.5, &row);
    // Elsewhere than in a class there is no such card.
    pick(&browser, "place", "home").await;
    browser
        .until("document.querySelector('.card.class') === null")
        .await;
}

#[tokio::test]
async fn one_that_joined_later_gets_its_fair_share() {
    // Three hours for the first, two for the other; for the same on both the first comes out after two.
    let browser = plate(&[]).await;
    browser.tap(".measure + .actions .button").await;
    browser
        .until("document.getElementById('pieces/p2/joins/after') !== null")
        .await;
    assert_eq!(
        rows(&browser, ".card.fair").await.len(),
        0,
        "they get the same"
    );
    browser.type_in("pieces/p2/joins/after", "1").await;
    browser.tap(".fair .link").await;
    until_says(&browser, "#fair", "Each gets").await;
    let said = browser.text("#fair").await;
    near(before(&said, "µm"), 2.0 * RATE, &said);
    assert!(said.contains("known area 1: take out after 2 h"), "{said}");
    assert!(said.contains("known area 2: take out after 3 h"), "{said}");
    browser.tap("#fair .button").await;
    until_says(
        &browser,
        ".answer .moments",
        "take out known area 1, turn down to 100 mA",
    )
    .await;
    for row in rows(&browser, ".outcome tbody tr").await {
        near(before(&row, "µm"), 2.0 * RATE, &row);
    }
    // An undo brings back what was.
    browser.tap(".limits .note .link").await;
    browser
        .until("document.querySelector('.outcome tbody tr').innerText.includes('38.9')")
        .await;
    browser.tap(".bar li:first-child .piece").await;
    browser
        .until("document.getElementById('pieces/p1/leaves/after')?.value === ''")
        .await;
}

#[tokio::test]
async fn two_plans_stand_side_by_side() {
    let browser = plate(&[]).await;
    browser.tap(".drafts .line .link").await;
    // The same again, twice as dense.
    browser.tap("#drafts .actions .button:nth-child(2)").await;
    browser.tap(".setup .link").await;
    browser.type_in("steps/s2/drive/density", "2").await;
    until_set(&browser, "200 mA").await;
    let other = "[...document.getElementById('beside').options].at(-1).value";
    let other = browser.eval(other).await;
    pick(&browser, "beside", other.as_str().unwrap_or_default()).await;
    until_says(&browser, ".compare table", "100 mA").await;
    let all = rows(&browser, ".compare tbody tr").await;
    assert!(all[0].starts_with("Set 200 mA 100 mA"), "{all:?}");
    assert_eq!(all[1], "Takes 3 h 3 h");
    let layers: Vec<f64> = all[2]
        .split_whitespace()
        .filter_map(|w| w.parse().ok())
        .collect();
    near(layers[0], 6.0 * RATE, &all[2]);
    near(layers[1], 3.0 * RATE, &all[2]);
    // What is open follows what is typed.
    browser.type_in("steps/s2/until/time", "4").await;
    until_says(&browser, ".compare table", "Takes 4 h 3 h").await;
}
