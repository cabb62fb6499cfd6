//! Every word of the page stands in `web/src/words`: no text for people stands anywhere else in the source.

use std::fs;
use std::path::{Path, PathBuf};

/// Literals outside `words` that look like words for people and are none.
const NO_WORDS: &[(&str, &str, &str)] = &[
    (
        "places/answer/series.rs",
        "card series",
        "classes of a style",
    ),
    (
        "places/answer/sessions.rs",
        "card sessions",
        "classes of a style",
    ),
    ("places/answer/class.rs", "card class", "classes of a style"),
    ("places/answer/wall.rs", "card wall", "classes of a style"),
    ("places/answer/limits.rs", "card care", "classes of a style"),
    (
        "places/answer/density.rs",
        "card density",
        "classes of a style",
    ),
    (
        "places/answer/course.rs",
        "card course",
        "classes of a style",
    ),
    (
        "storage/local.rs",
        "QuotaExceededError",
        "what browsers call it",
    ),
    ("parts/series.rs", "step last", "classes of a style"),
    ("parts/fold.rs", "card fold ", "classes of a style"),
    ("parts/layer.rs", "metal yellow", "classes of a style"),
    ("parts/layer.rs", "metal white", "classes of a style"),
    ("parts/layer.rs", "CuSn8", "the id of an alloy"),
    ("parts/choice.rs", "options across", "classes of a style"),
    ("parts/course.rs", "step last", "classes of a style"),
    ("state/units.rs", "US gal", "the symbol of a unit"),
];

fn sources(folder: &Path, all: &mut Vec<PathBuf>) {
    for entry in fs::read_dir(folder).expect("a folder of the source") {
        let path = entry.expect("an entry").path();
        if path.is_dir() {
            if !path.ends_with("words") {
                sources(&path, all);
            }
        } else if path.extension().is_some_and(|end| end == "rs") {
            all.push(path);
        }
    }
}

/// The string literals before a file's tests, outside comments.
fn literals(source: &str) -> Vec<String> {
    let code = source.split("#[cfg(test)]").next().unwrap_or_default();
    let mut all = Vec::new();
    for line in code.lines() {
        let line = line.split("// ").next().unwrap_or_default();
        if line.trim_start().starts_with("//") {
            continue;
        }
        let parts: Vec<&str> = line.split('"').collect();
        for pair in parts.windows(2).step_by(2) {
            // The name of a style's class says nothing to anybody.
            if !pair[0].ends_with("class=") {
                all.push(pair[1].to_owned());
            }
        }
    }
    all
}

/// Whether a literal reads like words: two words with a blank between, or one that begins with a capital.
fn reads(literal: &str) -> bool {
    let words: Vec<&str> = literal.split(' ').collect();
    let letters = |w: &str| w.chars().filter(|c| c.is_alphabetic()).count();
    let two = words.windows(2).any(|pair| {
        pair.iter()
            .all(|w| letters(w) > 1 && w.chars().all(|c| c.is_alphabetic() || ",;:".contains(c)))
    });
    let capital = literal.starts_with(char::is_uppercase)
        && letters(literal) > 3
        && literal.chars().nth(1).is_some_and(char::is_lowercase);
    two || capital
}

#[test]
fn no_word_for_people_stands_outside_the_words() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let mut files = Vec::new();
    sources(&root, &mut files);
    assert!(files.len() > 50);
    let mut found = Vec::new();
    let mut met = Vec::new();
    for file in files {
        let name = file
            .strip_prefix(&root)
            .expect("within the source")
            .to_string_lossy()
            .into_owned();
        let source = fs::read_to_string(&file).expect("its text");
        for literal in literals(&source) {
            if let Some(known) = NO_WORDS
                .iter()
                .find(|(f, l, _)| *f == name && *l == literal)
            {
                met.push(*known);
            } else if reads(&literal) {
                found.push(format!("{name}: {literal:?}"));
            }
        }
        // In markup a text stands in braces of its own behind a tag.
        for line in source
            .split("#[cfg(test)]")
            .next()
            .unwrap_or_default()
            .lines()
        {
            let texts = line
                .split(">{ \"")
                .skip(1)
                .filter_map(|rest| rest.split_once("\" }"));
            for (text, _) in texts {
                if text
                    .replace("\\u{a0}", "")
                    .chars()
                    .filter(|c| c.is_alphabetic())
                    .count()
                    > 1
                {
                    found.push(format!("{name}: {{ {text:?} }}"));
                }
            }
        }
    }
    assert!(found.is_empty(), "{}", found.join("\n"));
    let stale: Vec<_> = NO_WORDS.iter().filter(|row| !met.contains(row)).collect();
    assert!(stale.is_empty(), "{stale:?}");
}
