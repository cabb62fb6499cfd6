//! The rules of axe (kept under `outside/axe` with version and licence) over every view, in both themes, at both sizes.

use crate::driver::Browser;
use crate::views::{REFUSED, THEMES, VIEWS, View, findings, go_on, opened, prefer, resize, show};
use std::collections::BTreeSet;

const COMMON: &str = include_str!("scripts/common.js");
const AXE: &str = include_str!("../outside/axe/axe.min.js");
/// What the rules could not decide: width, rule, what keeps it undecided or where, why it is right.
const UNDECIDED: &str = include_str!("../data/axe_undecided.csv");

/// Rules broken, and rules undecided, in the view that is shown.
async fn look(browser: &Browser, view: &View, size: (u32, u32), found: &mut [BTreeSet<String>; 2]) {
    browser
        .client
        .execute(AXE, Vec::new())
        .await
        .expect("axe in the page");
    let (width, height) = size;
    resize(browser, width, height).await;
    for theme in THEMES {
        // Without movement: a colour on its way to another is none to be judged.
        let wishes = [
            ("prefers-color-scheme", theme),
            ("prefers-reduced-motion", "reduce"),
        ];
        prefer(browser, &wishes).await;
        let state = format!("{} {width} {theme}", view.name);
        let contrast = [COMMON, include_str!("scripts/contrast.js")].concat();
        for line in findings(browser, &contrast, Vec::new()).await {
            found[0].insert(format!("{state}: {line}"));
        }
        // Where the words were measured they were scrolled to: what lies half under an edge then is none of the page's.
        browser
            .eval("(scrollTo(0, 0), [...document.querySelectorAll('.give')].map((e) => e.scrollTo(0, 0)).length)")
            .await;
        for line in findings(browser, include_str!("scripts/axe.js"), Vec::new()).await {
            let (kind, what) = line.split_once(' ').unwrap_or_default();
            if kind == "violation" {
                found[0].insert(format!("{state}: {what}"));
            } else {
                found[1].insert(format!("{width} {what}"));
            }
        }
    }
}

/// All views at one size. What is undecided must be on the list, and what is on the list must occur.
async fn look_at_all(size: (u32, u32)) {
    let mut found = [BTreeSet::new(), BTreeSet::new()];
    let browser = opened(360, 800, true).await;
    for view in VIEWS {
        show(&browser, view).await;
        look(&browser, view, size, &mut found).await;
    }
    drop(browser);
    let browser = opened(360, 800, false).await;
    go_on(&browser, &REFUSED).await;
    look(&browser, &REFUSED, size, &mut found).await;

    let [broken, undecided] = found;
    assert!(broken.is_empty(), "broken:\n{}", lines(&broken));
    let listed: BTreeSet<String> = UNDECIDED
        .lines()
        .skip(1)
        .filter_map(|line| {
            let cells: Vec<&str> = line.splitn(4, ',').collect();
            let [width, rule, at, reason] = cells[..] else {
                panic!("{line}: four cells");
            };
            assert!(reason.len() > 20, "{line}: a reason");
            (width == size.0.to_string()).then(|| format!("{width} {rule} {at}"))
        })
        .collect();
    let left =
        |a: &BTreeSet<String>, b: &BTreeSet<String>| lines(&a.difference(b).cloned().collect());
    assert!(
        undecided == listed,
        "undecided and not listed:\n{}\nlisted and not found:\n{}",
        left(&undecided, &listed),
        left(&listed, &undecided)
    );
}

#[tokio::test]
async fn no_view_breaks_a_rule_on_a_phone_and_what_is_undecided_is_listed() {
    look_at_all((360, 800)).await;
}

#[tokio::test]
async fn no_view_breaks_a_rule_on_a_wide_window_and_what_is_undecided_is_listed() {
    look_at_all((1280, 800)).await;
}

fn lines(all: &BTreeSet<String>) -> String {
    all.iter().map(|line| format!("{line}\n")).collect()
}
