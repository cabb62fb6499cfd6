//! The two pages: the saved one, a single file, and the site, the same page with what a browser needs to install it.
//! Texts in, bytes out.

use crate::failure::{Explain, Failure, Outcome};
use crate::markup;
use crate::packing::pack;
use crate::policy;
use crate::site;
use crate::skeleton::{Filling, Skeleton};
use crate::squeeze::squeeze;
use lzma_rust2::{LzmaOptions, LzmaWriter};
use std::io::Write;

/// Starts the program and looks for a newer edition: the same text in both pages.
const START: [&str; 3] = [
    include_str!("unlzma.js"),
    include_str!("start.js"),
    include_str!("edition.js"),
];

/// What both pages are made of.
pub struct Parts<'a> {
    /// The frame.
    pub skeleton: &'a Skeleton,
    /// The styles of the still page, joined.
    pub style: &'a str,
    /// Those that only the program needs.
    pub later: &'a str,
    /// What stands in `#app` until the program starts.
    pub still: Option<&'a str>,
    /// The connecting script.
    pub glue: &'a str,
    /// The program.
    pub wasm: &'a [u8],
    /// The records the page carries, as JSON; `null` for none.
    pub records: &'a str,
}

/// The page twice.
pub struct Pages {
    /// As one file that asks for nothing.
    pub saved: String,
    /// As the site's page, which is that file with links to what lies beside it.
    pub site: String,
    /// The bytes of the saved page's parts.
    pub shares: Shares,
}

/// How many bytes each part takes in the saved page.
pub struct Shares {
    /// The program as compiled.
    pub wasm: usize,
    /// The connecting script.
    pub glue: usize,
    /// The styles that only the program needs.
    pub later: usize,
    /// These three as they stand in the page: squeezed and packed.
    pub packed: usize,
    /// What starts the program.
    pub start: usize,
    /// The styles.
    pub style: usize,
    /// The still page.
    pub still: usize,
}

impl Shares {
    /// All of them in a line.
    pub fn line(&self) -> String {
        format!(
            "of it {} for the program ({}), glue ({}) and styles ({}), start {}, first styles {}, still page {}",
            self.packed, self.wasm, self.glue, self.later, self.start, self.style, self.still
        )
    }
}

/// Puts both pages together.
pub fn make(parts: &Parts) -> Outcome<Pages> {
    check_still(parts.still)?;
    let start = START.map(squeeze).concat();
    let script = markup::inside_script(&start);
    let style = markup::inside_style(parts.style);
    let program = packed(parts)?;
    let scripts_allowed = [script.as_str(), parts.glue];
    let styles_allowed = [style.as_str(), parts.later];
    let scripts = format!(
        "{}\n{program}\n<script>{script}</script>",
        records(parts.records)
    );
    let page = |policy: &str, links: &str| {
        let page = parts.skeleton.fill(&Filling {
            policy,
            style: &format!("{links}<style>{style}</style>"),
            still: parts.still,
            scripts: &scripts,
        });
        check_hashes(&page)?;
        Ok(page)
    };
    Ok(Pages {
        saved: page(&policy::saved(&scripts_allowed, &styles_allowed), "")?,
        site: page(
            &policy::site(&scripts_allowed, &styles_allowed),
            site::LINKS,
        )?,
        shares: Shares {
            wasm: parts.wasm.len(),
            glue: parts.glue.len(),
            later: parts.later.len(),
            packed: bytes(&program),
            start: bytes(&start),
            style: bytes(&style),
            still: parts.still.map_or(0, bytes),
        },
    })
}

/// Bytes of a text in the finished file.
fn bytes(text: &str) -> usize {
    2 * text.encode_utf16().count()
}

fn records(json: &str) -> String {
    let safe = markup::json_inside_script(json);
    format!("<script type=\"application/json\" id=\"records\">{safe}</script>")
}

/// Program, styles and connecting script, squeezed as one and packed, in an element that says how many bytes they unpack
/// to, and from how many; and how many of these are the program and the styles.
fn packed(parts: &Parts) -> Outcome<String> {
    let whole = [parts.wasm, parts.later.as_bytes(), parts.glue.as_bytes()].concat();
    let squeezed = squeezed(&whole).explain(|| "The program cannot be compressed".to_owned())?;
    Ok(format!(
        "<script type=\"application/octet-stream\" id=\"wasm\" data-bytes=\"{}\" data-whole=\"{}\" data-parts=\"{} {}\">{}</script>",
        squeezed.len(),
        whole.len(),
        parts.wasm.len(),
        parts.later.len(),
        pack(&squeezed)
    ))
}

/// As an LZMA stream without a header: a sixth smaller than what browsers unpack by themselves, and unpacked by eighty
/// lines of `start.js`.
fn squeezed(whole: &[u8]) -> std::io::Result<Vec<u8>> {
    let mut options = LzmaOptions::with_preset(9);
    options.pb = 0;
    options.nice_len = LzmaOptions::NICE_LEN_MAX;
    let mut writer = LzmaWriter::new_no_header(Vec::new(), &options, false)?;
    writer.write_all(whole)?;
    writer.finish()
}

/// What the policy would refuse shall not be packaged.
fn check_still(still: Option<&str>) -> Outcome<()> {
    let tags = markup::tags(still.unwrap_or_default());
    let refused = tags.iter().find(|tag| {
        ["script", "style", "iframe", "link"]
            .iter()
            .any(|name| tag.name.eq_ignore_ascii_case(name))
            || tag.get("style").is_some()
            || tag
                .attributes
                .iter()
                .any(|(name, _)| name.to_ascii_lowercase().starts_with("on"))
    });
    match refused {
        Some(tag) => Err(Failure::new(format!(
            "The still page holds a <{}> with a script or style of its own, which the browser would refuse.",
            tag.name
        ))),
        None => Ok(()),
    }
}

/// Reads script and style back from the finished page as a browser does and looks whether the policy allows them.
fn check_hashes(page: &str) -> Outcome<()> {
    let inside = |open: &str, close: &str| {
        let (_, rest) = page.split_once(open)?;
        rest.split_once(close).map(|(text, _)| text)
    };
    let allowed =
        inside("http-equiv=\"Content-Security-Policy\" content=\"", "\"").unwrap_or_default();
    for (what, open, close) in [
        ("script", "<script>", "</script>"),
        ("style", "<style>", "</style>"),
    ] {
        if !inside(open, close).is_some_and(|text| allowed.contains(&policy::hash(text))) {
            return Err(Failure::new(format!(
                "The saved page's policy does not allow its own {what}."
            )));
        }
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::packing::unpack;
    use lzma_rust2::LzmaReader;
    use std::io::Read;

    const INDEX: &str = "<!doctype html><html><head><meta charset=\"utf-8\">\
        <link data-trunk rel=\"css\" href=\"a.css\"></head><body><div id=\"app\"><p>Wait.</p></div></body></html>";

    fn parts<'a>(skeleton: &'a Skeleton, records: &'a str) -> Parts<'a> {
        Parts {
            skeleton,
            style: "p::after { content: \"</style>\" }\r\n",
            later: "b { color: red }",
            still: Some("<p>Set 175 mA</p>"),
            glue: "let wasm_bindgen = \"</script><!-- <script>\";",
            wasm: b"\0asm",
            records,
        }
    }

    fn count(text: &str, part: &str) -> usize {
        text.matches(part).count()
    }

    #[test]
    fn a_hostile_record_stays_inside_its_element() -> Outcome<()> {
        let skeleton = Skeleton::read(INDEX)?;
        let hostile = serde_json::json!(["</script><script>alert(1)</script>", "<!--", "<script"])
            .to_string();
        let page = make(&parts(&skeleton, &hostile))?.saved;
        // Records, program, start; what glue and record contain ends none of them and opens no other.
        assert_eq!(count(&page.to_lowercase(), "</script"), 3);
        assert_eq!(count(&page, "<!--"), 0);
        assert_eq!(count(&page, "</style"), 1);
        let (_, rest) = page.split_once("id=\"records\">").explain_none()?;
        let (json, _) = rest.split_once("</script>").explain_none()?;
        let read: serde_json::Value = serde_json::from_str(json).explain(String::new)?;
        assert_eq!(read.to_string(), hostile);
        Ok(())
    }

    #[test]
    fn the_program_unpacks_to_itself() -> Outcome<()> {
        let skeleton = Skeleton::read(INDEX)?;
        let page = make(&parts(&skeleton, "null"))?.saved;
        let (_, rest) = page
            .split_once("id=\"wasm\" data-bytes=\"")
            .explain_none()?;
        let (count, rest) = rest
            .split_once("\" data-whole=\"64\" data-parts=\"4 16\">")
            .explain_none()?;
        let (text, _) = rest.split_once("</script>").explain_none()?;
        let mut wasm = Vec::new();
        let squeezed = unpack(text, count.parse().explain(String::new)?);
        LzmaReader::new(squeezed.as_slice(), 64, 3, 0, 0, 1 << 26, None)
            .explain(String::new)?
            .read_to_end(&mut wasm)
            .explain(String::new)?;
        let glue = parts(&skeleton, "null").glue;
        let whole = ["\0asm", "b { color: red }", glue].concat();
        assert_eq!(wasm, whole.as_bytes());
        // What is unpacked is put in place by start.js: the policy allows exactly these texts.
        for text in [glue, "b { color: red }"] {
            assert!(page.contains(&policy::hash(text)), "{text}");
        }
        Ok(())
    }

    #[test]
    fn packaging_twice_gives_the_same_bytes() -> Outcome<()> {
        let skeleton = Skeleton::read(INDEX)?;
        let make = || make(&parts(&skeleton, "null"));
        assert_eq!(make()?.saved, make()?.saved);
        assert_eq!(make()?.site, make()?.site);
        Ok(())
    }

    #[test]
    fn a_page_changed_after_hashing_is_noticed() -> Outcome<()> {
        let skeleton = Skeleton::read(INDEX)?;
        let page = make(&parts(&skeleton, "null"))?.saved;
        assert!(check_hashes(&page.replace("unlzma", "unlzma2")).is_err());
        Ok(())
    }

    #[test]
    fn the_site_is_the_saved_page_with_what_installing_takes() -> Outcome<()> {
        let skeleton = Skeleton::read(INDEX)?;
        let pages = make(&parts(&skeleton, "null"))?;
        // What `start.js` takes away for a copy.
        let (head, rest) = pages.site.split_once(site::LINKS).explain_none()?;
        let copy = head.replace(" 'self'", "") + rest;
        assert_eq!(copy, pages.saved);
        for link in markup::tags(site::LINKS) {
            assert!(link.get("data-site").is_some(), "{link:?}");
            assert!(
                link.get("href")
                    .is_none_or(|at| !at.starts_with(['/', 'h'])),
                "{link:?}"
            );
        }
        Ok(())
    }

    #[test]
    fn a_still_the_policy_would_refuse_is_refused_here() {
        for bad in [
            "<script>1</script>",
            "<p style=\"color:red\">",
            "<p onclick=\"a()\">",
            "<STYLE>",
        ] {
            assert!(check_still(Some(bad)).is_err(), "{bad}");
        }
        assert!(check_still(Some("<svg stroke-width=\"2\"><path d=\"M0 0\"/></svg>")).is_ok());
    }

    trait ExplainNone<T> {
        fn explain_none(self) -> Outcome<T>;
    }

    impl<T> ExplainNone<T> for Option<T> {
        fn explain_none(self) -> Outcome<T> {
            self.ok_or_else(|| Failure::new("not found"))
        }
    }
}
