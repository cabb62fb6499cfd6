//! The files of the site: the page, what a browser needs to install it, and the worker that keeps them.

use crate::squeeze::squeeze;
use serde_json::{Map, Value};
use sha2::{Digest, Sha256};

/// The worker; what it keeps is written above it.
const WORKER: &str = include_str!("worker.js");

/// What the site's page has in its head and the saved page has not.
pub const LINKS: &str = "<link data-site rel=\"manifest\" href=\"manifest.webmanifest\">\n\
    <link data-site rel=\"apple-touch-icon\" href=\"icon-maskable-512.png\">\n";

/// The files that lie in `web/site` and are taken as they are.
pub const AS_THEY_ARE: [&str; 4] = [
    "manifest.webmanifest",
    "icon-192.png",
    "icon-512.png",
    "icon-maskable-512.png",
];

/// A file of the site: its name and its bytes.
pub type File = (&'static str, Vec<u8>);

/// All files, from the page and those that are taken as they are. The worker comes last: it is what tells a browser
/// that the others changed.
pub fn files(page: Vec<u8>, others: Vec<File>) -> Vec<File> {
    let mut files = others;
    files.push(("index.html", page));
    let worker = worker(&files);
    files.push(("worker.js", worker.into_bytes()));
    files
}

/// A drawing as an address of its own, so that a page shows it without a request.
pub fn in_an_address(svg: &str) -> String {
    let safe = svg
        .trim()
        .replace('%', "%25")
        .replace('#', "%23")
        .replace('<', "%3C")
        .replace('>', "%3E")
        .replace('"', "'");
    format!("data:image/svg+xml,{safe}")
}

fn worker(files: &[File]) -> String {
    let list: Map<String, Value> = files
        .iter()
        .map(|(name, bytes)| {
            // The page's address is the folder's.
            let name = if *name == "index.html" { "./" } else { name };
            (name.to_owned(), Value::from(digest(bytes)))
        })
        .collect();
    let list = Value::Object(list).to_string();
    let edition = digest(list.as_bytes());
    format!(
        "const EDITION = \"{}\";\nconst FILES = {list};\n{}",
        &edition[..12],
        squeeze(WORKER)
    )
}

fn digest(bytes: &[u8]) -> String {
    Sha256::digest(bytes)
        .iter()
        .map(|byte| format!("{byte:02x}"))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::failure::{Explain, Outcome};
    use crate::markup;
    use crate::process;
    use std::fs;

    fn text(name: &str) -> Outcome<String> {
        fs::read_to_string(process::workspace().join("web").join(name)).explain(|| name.to_owned())
    }

    #[test]
    fn every_change_of_a_file_is_another_edition() {
        let with = |page: &str, icon: &[u8]| {
            let files = files(
                page.as_bytes().to_vec(),
                vec![("icon-192.png", icon.to_vec())],
            );
            let names: Vec<_> = files.iter().map(|(name, _)| *name).collect();
            assert_eq!(names, ["icon-192.png", "index.html", "worker.js"]);
            String::from_utf8_lossy(&files[2].1).into_owned()
        };
        // SHA-256 of "abc": FIPS 180-4's example.
        let first = with("abc", b"1");
        assert!(first.contains(
            "\"./\":\"ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad\""
        ));
        let edition = |worker: &str| worker.lines().next().map(str::to_owned);
        for other in [with("abd", b"1"), with("abc", b"2")] {
            assert_ne!(edition(&other), edition(&first));
        }
        assert_eq!(with("abc", b"1"), first);
    }

    #[test]
    fn the_manifest_names_what_lies_beside_it_in_the_colours_of_the_page() -> Outcome<()> {
        let manifest: Value =
            serde_json::from_str(&text("site/manifest.webmanifest")?).explain(String::new)?;
        let tokens = text("styles/tokens.css")?;
        for (key, token) in [("background_color", "--paper"), ("theme_color", "--sheet")] {
            let colour = manifest[key].as_str().unwrap_or_default();
            // The light theme stands first.
            let (_, rest) = tokens.split_once(&format!("{token}: ")).unwrap_or_default();
            assert!(rest.starts_with(&format!("{colour};")), "{key}: {colour}");
        }
        let index = text("index.html")?;
        for sheet in tokens.split("--sheet: ").skip(1) {
            let colour = &sheet[..7];
            let tags = markup::tags(&index);
            assert!(
                tags.iter().any(|tag| tag.get("name") == Some("theme-color")
                    && tag.get("content") == Some(colour)),
                "{colour}"
            );
        }
        let icons = manifest["icons"].as_array().cloned().unwrap_or_default();
        assert_eq!(icons.len(), 3);
        for icon in icons {
            let name = icon["src"].as_str().unwrap_or_default().to_owned();
            assert!(AS_THEY_ARE.contains(&name.as_str()), "{name}");
            let bytes = fs::read(process::workspace().join("web/site").join(&name))
                .explain(|| name.clone())?;
            // Portable Network Graphics: the signature, then a header with width and height (ISO/IEC 15948, 11.2.2).
            assert_eq!(&bytes[..8], b"\x89PNG\r\n\x1a\n");
            let size = |at: usize| u32::from_be_bytes([0, 1, 2, 3].map(|n| bytes[at + n]));
            assert_eq!(
                icon["sizes"],
                format!("{}x{}", size(16), size(20)),
                "{name}"
            );
        }
        Ok(())
    }
}
