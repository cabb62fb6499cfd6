//! `web/index.html` as the frame of both pages. The same file is Trunk's input; its `data-trunk` links say which
//! styles belong to the page.

use crate::failure::{Failure, Outcome};
use crate::markup::{Tag, tags};

/// index.html taken apart at the places where packaging puts something in.
#[derive(Debug)]
pub struct Skeleton {
    /// The style files in order, relative to index.html: those that the still page needs.
    pub styles: Vec<String>,
    /// Those that only the program needs, marked `data-later`.
    pub later: Vec<String>,
    /// Up to the end of the charset's tag.
    opening: String,
    /// From there to `</head>`.
    head: String,
    /// From `</head>` to the inside of `#app`.
    above: String,
    /// What index.html itself holds in `#app`.
    sentence: String,
    /// From the end of `#app` to `</body>`.
    below: String,
    /// From `</body>` on.
    closing: String,
}

/// What is put in.
pub struct Filling<'a> {
    /// The content security policy.
    pub policy: &'a str,
    /// A style or a link to one.
    pub style: &'a str,
    /// What stands in `#app` until the program starts; none leaves index.html's sentence.
    pub still: Option<&'a str>,
    /// The elements before `</body>`.
    pub scripts: &'a str,
}

impl Skeleton {
    /// Takes index.html apart.
    pub fn read(html: &str) -> Outcome<Self> {
        let tags = tags(html);
        let charset = tags
            .iter()
            .find(|tag| tag.name == "meta" && tag.get("charset").is_some())
            .ok_or_else(|| lacks("<meta charset=\"utf-8\">"))?;
        let app = tags
            .iter()
            .find(|tag| tag.name == "div" && tag.get("id") == Some("app"))
            .ok_or_else(|| lacks("<div id=\"app\">"))?;
        let head_end = html.find("</head>").ok_or_else(|| lacks("</head>"))?;
        let body_end = html.rfind("</body>").ok_or_else(|| lacks("</body>"))?;
        let app_end = html[app.at.end..]
            .find("</div>")
            .map(|at| at + app.at.end)
            .filter(|end| *end < body_end)
            .ok_or_else(|| lacks("the </div> of #app"))?;
        if charset.at.end > head_end || head_end > app.at.start {
            return Err(Failure::new(
                "web/index.html: charset, </head> and #app must stand in this order.",
            ));
        }
        if tags
            .iter()
            .any(|tag| tag.name == "div" && app.at.end <= tag.at.start && tag.at.start < app_end)
        {
            return Err(Failure::new(
                "web/index.html: #app may not hold another <div>; use a <p>.",
            ));
        }
        if tags
            .iter()
            .any(|tag| tag.name == "script" || tag.name == "style")
        {
            return Err(Failure::new(
                "web/index.html: scripts and styles come from files, or the policy refuses them.",
            ));
        }
        let trunk: Vec<&Tag> = tags
            .iter()
            .filter(|tag| tag.get("data-trunk").is_some())
            .collect();
        if trunk
            .iter()
            .any(|tag| tag.at.end <= charset.at.end || tag.at.end > head_end)
        {
            return Err(Failure::new(
                "web/index.html: data-trunk links stand in the head, after the charset.",
            ));
        }
        let (mut styles, mut later) = (Vec::new(), Vec::new());
        for tag in &trunk {
            match (tag.get("rel"), tag.get("href")) {
                (Some("css"), Some(href)) if tag.get("data-later").is_some() => {
                    later.push(href.to_owned());
                }
                (Some("css"), Some(href)) => styles.push(href.to_owned()),
                (Some("rust"), _) => {}
                (rel, _) => {
                    return Err(Failure::new(format!(
                        "web/index.html: packaging does not know what to do with a data-trunk link of kind {rel:?}."
                    )));
                }
            }
        }
        Ok(Self {
            styles,
            later,
            opening: html[..charset.at.end].to_owned(),
            head: without(html, charset.at.end, head_end, &trunk),
            above: html[head_end..app.at.end].to_owned(),
            sentence: html[app.at.end..app_end].to_owned(),
            below: html[app_end..body_end].to_owned(),
            closing: html[body_end..].to_owned(),
        })
    }

    /// Puts a page together.
    pub fn fill(&self, filling: &Filling) -> String {
        [
            &self.opening,
            // Before everything it governs.
            "\n<meta http-equiv=\"Content-Security-Policy\" content=\"",
            filling.policy,
            "\">",
            &self.head,
            filling.style,
            "\n",
            &self.above,
            filling.still.unwrap_or(&self.sentence),
            &self.below,
            filling.scripts,
            "\n",
            &self.closing,
        ]
        .concat()
    }
}

fn lacks(what: &str) -> Failure {
    Failure::new(format!("web/index.html lacks {what}."))
}

/// A part of the text without these tags and the line ends before them.
fn without(html: &str, start: usize, end: usize, gone: &[&Tag]) -> String {
    let mut kept = String::new();
    let mut from = start;
    for tag in gone {
        kept.push_str(html[from..tag.at.start].trim_end());
        from = tag.at.end;
    }
    kept.push_str(&html[from..end]);
    kept
}

#[cfg(test)]
mod tests {
    use super::*;

    const INDEX: &str = "<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<title>T</title>\n\
        <link data-trunk rel=\"rust\" href=\"Cargo.toml\">\n<link data-trunk rel=\"css\" href=\"styles/b.css\">\n\
        <link rel=\"icon\" href=\"data:,\">\n<link data-trunk rel=\"css\" href=\"styles/a.css\">\n</head>\n\
        <body>\n<div id=\"app\"><p>Wait.</p></div>\n</body>\n</html>\n";

    #[test]
    fn styles_keep_their_order_and_trunk_links_go() -> Outcome<()> {
        let skeleton = Skeleton::read(INDEX)?;
        assert_eq!(skeleton.styles, ["styles/b.css", "styles/a.css"]);
        let page = skeleton.fill(&Filling {
            policy: "p",
            style: "<style></style>",
            still: None,
            scripts: "<script></script>",
        });
        assert_eq!(
            page,
            "<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n\
             <meta http-equiv=\"Content-Security-Policy\" content=\"p\">\n<title>T</title>\n\
             <link rel=\"icon\" href=\"data:,\">\n<style></style>\n</head>\n\
             <body>\n<div id=\"app\"><p>Wait.</p></div>\n<script></script>\n</body>\n</html>\n"
        );
        Ok(())
    }

    #[test]
    fn the_still_takes_the_place_of_the_sentence() -> Outcome<()> {
        let still = Some("<div><div>60 um</div></div>");
        let page = Skeleton::read(INDEX)?.fill(&Filling {
            policy: "p",
            style: "",
            still,
            scripts: "",
        });
        assert!(page.contains("<div id=\"app\"><div><div>60 um</div></div></div>"));
        assert!(!page.contains("Wait."));
        Ok(())
    }

    #[test]
    fn an_index_that_cannot_be_filled_is_refused() {
        for (part, by) in [
            ("<div id=\"app\">", "<div>"),
            ("<p>Wait.</p>", "<div>Wait.</div>"),
            ("<meta charset=\"utf-8\">", ""),
            ("</head>", ""),
            ("rel=\"rust\"", "rel=\"sass\""),
            ("<title>T</title>", "<script>1</script>"),
        ] {
            assert!(
                Skeleton::read(&INDEX.replace(part, by)).is_err(),
                "{part} by {by}"
            );
        }
    }
}
