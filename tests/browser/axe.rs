//! The rules of axe (kept under `outside/axe` with version and licence) over every view, in both themes, at both sizes.

use crate::driver::Browser;
use crate::views::{REFUSED, THEMES, VIEWS, View, findings, go_on, opened, prefer, resize, show};
use std::collections::BTreeSet;

const AXE: &str = include_str!("../outside/axe/axe.min.js");
/// What the rules could not decide: rule, element, reason why it is right.
const UNDECIDED: &str = include_str!("../data/axe_undecided.csv");
const SIZES: [(u32, u32); 2] = [(360, 800), (1280, 800)];

/// Rules broken and rules undecided in the view that is shown.
async fn look(browser: &Browser, view: &View, found: &mut [BTreeSet<String>; 2]) {
    browser
        .client
        .execute(AXE, Vec::new())
        .await
        .expect("axe in the page");
    for (width, height) in SIZES {
        resize(browser, width, height).await;
        for theme in THEMES {
            // Without movement: a colour on its way to another is none to be judged.
            let wishes = [
                ("prefers-color-scheme", theme),
                ("prefers-reduced-motion", "reduce"),
            ];
            prefer(browser, &wishes).await;
            for line in findings(browser, include_str!("scripts/axe.js"), Vec::new()).await {
                let (kind, what) = line.split_once(' ').unwrap_or_default();
                if kind == "violation" {
                    found[0].insert(format!("{} {width} {theme}: {what}", view.name));
                } else {
                    found[1].insert(what.to_owned());
                }
            }
        }
    }
}

#[tokio::test]
async fn no_view_breaks_a_rule_and_what_is_undecided_is_listed() {
    let mut found = [BTreeSet::new(), BTreeSet::new()];
    let browser = opened(360, 800, true).await;
    for view in VIEWS {
        show(&browser, view).await;
        look(&browser, view, &mut found).await;
    }
    drop(browser);
    let browser = opened(360, 800, false).await;
    go_on(&browser, &REFUSED).await;
    look(&browser, &REFUSED, &mut found).await;

    let [broken, undecided] = found;
    assert!(broken.is_empty(), "broken:\n{}", lines(&broken));
    let listed: BTreeSet<String> = UNDECIDED
        .lines()
        .skip(1)
        .map(|line| {
            let mut cells = line.splitn(3, ',');
            let (rule, element) = (
                cells.next().unwrap_or_default(),
                cells.next().unwrap_or_default(),
            );
            let reason = cells.next().unwrap_or_default();
            assert!(reason.len() > 20, "{line}: a reason");
            format!("{} {}", rule.trim(), element.trim())
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

fn lines(all: &BTreeSet<String>) -> String {
    all.iter().map(|line| format!("{line}\n")).collect()
}
