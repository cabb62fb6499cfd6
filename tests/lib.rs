//! Checks of the whole against the outside; see `outside/` and `browser/`. Here is what both share.

mod made_up;

pub use made_up::made_up;

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
            entry
                .unwrap_or_else(|e| panic!("{}: {e}", folder.display()))
                .path()
        })
        // Beside the jobs stand folders of other frozen texts.
        .filter(|path| path.extension().is_some_and(|e| e == "json"))
        .map(|path| {
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

/// FNV-1a, 64 bits, carried on from `state` over more bytes.
pub fn fnv(state: u64, bytes: &[u8]) -> u64 {
    bytes.iter().fold(state, |hash, byte| {
        (hash ^ u64::from(*byte)).wrapping_mul(0x0000_0100_0000_01b3)
    })
}

/// Where FNV-1a begins.
pub const FNV_START: u64 = 0xcbf2_9ce4_8422_2325;

#[test]
fn the_hash_is_the_published_one() {
    // Fowler, Noll, Vo: test vectors of FNV-1a 64, published with the function.
    for (text, want) in [
        ("", 0xcbf2_9ce4_8422_2325),
        ("a", 0xaf63_dc4c_8601_ec8c),
        ("foobar", 0x8594_4171_f739_67e8),
    ] {
        assert_eq!(fnv(FNV_START, text.as_bytes()), want, "{text:?}");
    }
}
