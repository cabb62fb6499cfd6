//! What cargo made, from the messages it prints with `--message-format=json-render-diagnostics`, one JSON value a line.
//! Where the files lie depends on the person's settings, so it is asked and not guessed.

use serde_json::Value;
use std::path::{Path, PathBuf};

/// The file of the target with this name that is wanted.
pub fn file(messages: &str, target: &str, wanted: impl Fn(&Path) -> bool) -> Option<PathBuf> {
    artifacts(messages, target)
        .filter_map(|message| message["filenames"].as_array().cloned())
        .flatten()
        .filter_map(|file| file.as_str().map(PathBuf::from))
        .find(|file| wanted(file))
}

/// The program made from the target with this name.
pub fn program(messages: &str, target: &str) -> Option<PathBuf> {
    artifacts(messages, target)
        .find_map(|message| message["executable"].as_str().map(PathBuf::from))
}

fn artifacts(messages: &str, target: &str) -> impl Iterator<Item = Value> {
    messages
        .lines()
        .filter_map(|line| serde_json::from_str::<Value>(line).ok())
        .filter(move |message| {
            message["reason"] == "compiler-artifact" && message["target"]["name"] == target
        })
}

#[cfg(test)]
mod tests {
    use super::*;

    const MESSAGES: &str = r#"not json
{"reason":"compiler-artifact","target":{"name":"web"},"filenames":["/t/libweb.rlib"],"executable":null}
{"reason":"compiler-artifact","target":{"name":"page"},"filenames":["/t/page.js","/t/page.wasm"],"executable":null}
{"reason":"compiler-artifact","target":{"name":"still"},"filenames":["/t/still"],"executable":"/t/still"}
{"reason":"build-finished","success":true}
"#;

    #[test]
    fn files_and_programs_are_found() {
        let wasm = |file: &Path| file.ends_with("page.wasm");
        assert_eq!(
            file(MESSAGES, "page", wasm),
            Some(PathBuf::from("/t/page.wasm"))
        );
        assert_eq!(file(MESSAGES, "web", wasm), None);
        assert_eq!(program(MESSAGES, "still"), Some(PathBuf::from("/t/still")));
        assert_eq!(program(MESSAGES, "web"), None);
        assert_eq!(program("", "still"), None);
    }
}
