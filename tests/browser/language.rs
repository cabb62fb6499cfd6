//! Another language in place of this one: every word comes from `web/src/words`, and longer words are cut off nowhere.
//!
//! The page is not built a second time with other words: that would be another page than the one that is shipped, at the
//! price of a build. Instead what the shipped page says is held against the literals of `words`, and its texts are made
//! longer where they stand. `web/tests/words.rs` looks for words in the source outside `words`.

use crate::views::{VIEWS, findings, opened, resize, show};
use serde_json::json;
use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;

const COMMON: &str = include_str!("scripts/common.js");
/// Words and places that rightly come from elsewhere, with the reason.
const ELSEWHERE: &str = include_str!("../data/words_from_elsewhere.csv");

/// The rows of a kind: `word` or `place`.
fn elsewhere(kind: &str) -> BTreeSet<&'static str> {
    ELSEWHERE
        .lines()
        .skip(1)
        .filter_map(|line| {
            let cells: Vec<&str> = line.splitn(3, ',').collect();
            let [of, what, why] = cells[..] else {
                panic!("{line}: three cells");
            };
            assert!(why.len() > 10, "{line}: a reason");
            (of == kind).then_some(what)
        })
        .collect()
}

/// Every word of two letters and more in a text, small.
fn words_in(text: &str) -> impl Iterator<Item = String> {
    text.split(|c: char| !c.is_alphabetic())
        .filter(|w| w.chars().count() > 1)
        .map(str::to_lowercase)
        .collect::<Vec<_>>()
        .into_iter()
}

/// The string literals of a source file that stand before its tests and outside comments.
fn literals(source: &str) -> String {
    let code = source.split("#[cfg(test)]").next().unwrap_or_default();
    let code: Vec<&str> = code
        .lines()
        .filter(|line| !line.trim_start().starts_with("//"))
        .collect();
    let code = code.join("\n");
    let mut all = String::new();
    let mut rest = code.as_str();
    while let Some((_, after)) = rest.split_once('"') {
        let mut end = 0;
        let bytes = after.as_bytes();
        while end < bytes.len() && bytes[end] != b'"' {
            end += if bytes[end] == b'\\' { 2 } else { 1 };
        }
        let end = end.min(after.len());
        all.push_str(&unescaped(&after[..end]));
        all.push('\n');
        rest = after.get(end + 1..).unwrap_or_default();
    }
    all
}

/// A literal with its escapes as blanks: they stand between words, never in them.
fn unescaped(literal: &str) -> String {
    let mut out = String::new();
    let mut rest = literal;
    while let Some((before, after)) = rest.split_once('\\') {
        out.push_str(before);
        out.push(' ');
        rest = match after.strip_prefix("u{") {
            Some(code) => code.split_once('}').map_or("", |(_, rest)| rest),
            None => after.get(1..).unwrap_or_default(),
        };
    }
    out + rest
}

fn vocabulary() -> BTreeSet<String> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../web/src/words");
    let mut all = BTreeSet::new();
    for entry in fs::read_dir(folder).expect("web/src/words") {
        let source = fs::read_to_string(entry.expect("a file").path()).expect("its text");
        all.extend(words_in(&literals(&source)));
    }
    assert!(all.len() > 800, "{} words", all.len());
    all
}

#[tokio::test]
async fn whatever_the_page_says_stands_in_the_words() {
    let known = vocabulary();
    let places = elsewhere("place");
    let exempt = elsewhere("word");
    let mut strange: BTreeMap<String, String> = BTreeMap::new();
    let mut used = BTreeSet::new();
    let browser = opened(360, 800, true).await;
    for view in VIEWS {
        show(&browser, view).await;
        for place in &places {
            if browser
                .eval(&format!("document.querySelector(`{place}`) !== null"))
                .await
                == true
            {
                used.insert(*place);
            }
        }
        let script = [COMMON, include_str!("scripts/said.js")].concat();
        for line in findings(&browser, &script, vec![json!(places)]).await {
            let (at, text) = line.split_once('\t').unwrap_or_default();
            for word in words_in(text) {
                if let Some(word) = exempt.get(word.as_str()) {
                    used.insert(*word);
                } else if !known.contains(&word) {
                    strange.insert(word, format!("{}: {at} “{text}”", view.name));
                }
            }
        }
    }
    assert!(strange.is_empty(), "{strange:#?}");
    let all: BTreeSet<&str> = places.union(&exempt).copied().collect();
    assert_eq!(used, all, "left: met, right: listed");
}

#[tokio::test]
async fn longer_words_are_cut_off_nowhere() {
    let mut all = Vec::new();
    let browser = opened(360, 800, true).await;
    for view in VIEWS {
        show(&browser, view).await;
        let count = findings(&browser, include_str!("scripts/lengthen.js"), Vec::new()).await;
        assert!(
            count[0].parse::<usize>().expect("a count") > 20,
            "{}: {count:?}",
            view.name
        );
        for (width, height) in [(320, 568), (360, 800), (1280, 800)] {
            resize(&browser, width, height).await;
            let script = [COMMON, include_str!("scripts/cut_off.js")].concat();
            for line in findings(&browser, &script, vec![json!("longer")]).await {
                all.push(format!("{} {width}: {line}", view.name));
            }
        }
    }
    assert!(
        all.is_empty(),
        "{} findings:\n{}",
        all.len(),
        all.join("\n")
    );
}
