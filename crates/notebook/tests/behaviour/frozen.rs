//! Drafts and job texts of every format so far, which must always be read. One folder for each format.

use crate::support::base;
use notebook::jobtext;
use notebook::{Draft, Named, carried};
use std::fs;
use std::path::{Path, PathBuf};

fn files(folder: &str) -> Vec<(PathBuf, String)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../../tests/frozen/1")
        .join(folder);
    let mut all: Vec<(PathBuf, String)> = fs::read_dir(&folder)
        .unwrap_or_else(|e| panic!("{}: {e}", folder.display()))
        .map(|entry| {
            let path = entry.expect("an entry").path();
            let text = fs::read_to_string(&path).expect("its text");
            (path, text)
        })
        .collect();
    all.sort();
    assert!(!all.is_empty(), "{}", folder.display());
    all
}

fn wanted(name: &Path) -> &'static [(&'static str, &'static str)] {
    match name.file_stem().and_then(|s| s.to_str()) {
        Some("single") => &[("pieces/p1/count", "2,,"), ("steps/s2/until/mean", "200")],
        Some("named") => &[("pieces/p1/count", "12"), ("steps/s2/kind", "etch")],
        Some("from_a_copy") => &[("pieces/p1/count", "3"), ("start/local", "")],
        Some("carried") => &[("pieces/p1/count", "<3"), ("pieces/p1/extent", "leaf")],
        Some("three_leaves") => &[
            ("pieces/p1/count", "3"),
            ("pieces/p1/extent", "leaf"),
            ("steps/s2/until/mean", "200"),
        ],
        Some("quoted_by_a_messenger") => &[
            ("pieces/p1/count", "3 \""),
            ("pieces/p1/extent", "torus"),
            ("steps/s2/until/mean", " 2..5-- "),
        ],
        other => panic!("{other:?} has no row"),
    }
}

fn holds(path: &Path, draft: &Draft) {
    for (at, text) in wanted(path) {
        assert_eq!(draft.text(at), *text, "{}: {at}", path.display());
    }
}

#[test]
fn stored_drafts() {
    for (path, text) in files("drafts") {
        let stem = path.file_stem().and_then(|s| s.to_str());
        match stem {
            Some("single") => holds(&path, &Draft::from_text(&text).expect("a draft")),
            Some("carried") => holds(&path, &carried::read(&text).expect("a draft").draft),
            _ => holds(&path, &Named::from_text(&text).expect("a draft").draft),
        }
    }
}

#[test]
fn job_texts() {
    for (path, text) in files("jobtext") {
        let taken = jobtext::read(&text, &base(), |_| true).expect("a job");
        assert_eq!(taken.remarks, [], "{}", path.display());
        holds(&path, &taken.named.draft);
    }
}
