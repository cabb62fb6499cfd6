//! Checks of the whole against the outside; see `outside/` and `browser/`. Here is what both share.

use std::fs;
use std::path::Path;

/// The frozen jobs of format 1, by file name without its ending, in the order of their names: one question line each.
///
/// Frozen are the questions, not the answers: host and page answer the same line in one run and the texts are compared.
/// A name starting with `problem_` is of a line that cannot be answered in full.
///
/// # Panics
///
/// Where the folder cannot be read: a test that finds no jobs must not pass.
pub fn frozen() -> Vec<(String, String)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("frozen/1");
    let mut jobs: Vec<(String, String)> = fs::read_dir(&folder)
        .unwrap_or_else(|e| panic!("{}: {e}", folder.display()))
        .map(|entry| {
            let path = entry
                .unwrap_or_else(|e| panic!("{}: {e}", folder.display()))
                .path();
            let line =
                fs::read_to_string(&path).unwrap_or_else(|e| panic!("{}: {e}", path.display()));
            let name = path
                .file_stem()
                .map(|n| n.to_string_lossy().into_owned())
                .unwrap_or_default();
            (name, line.trim_end_matches(['\n', '\r']).to_owned())
        })
        .collect();
    jobs.sort();
    jobs
}
