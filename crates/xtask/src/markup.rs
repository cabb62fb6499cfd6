//! The little of HTML that packaging must understand: start tags of our own index.html, and how text is put inside
//! an element without ending it.

use std::ops::Range;

/// A start tag.
#[derive(Debug, PartialEq, Eq)]
pub struct Tag<'a> {
    /// The element's name as written.
    pub name: &'a str,
    /// Names and values in order; an attribute without a value has an empty one.
    pub attributes: Vec<(&'a str, &'a str)>,
    /// Where it stands in the text, brackets included.
    pub at: Range<usize>,
}

impl Tag<'_> {
    /// The value of an attribute.
    pub fn get(&self, name: &str) -> Option<&str> {
        self.attributes
            .iter()
            .find(|(key, _)| key.eq_ignore_ascii_case(name))
            .map(|(_, value)| *value)
    }
}

/// All start tags outside comments, in order. Scripts are not skipped: index.html has none.
pub fn tags(html: &str) -> Vec<Tag<'_>> {
    let mut found = Vec::new();
    let mut from = 0;
    while let Some(open) = html[from..].find('<').map(|at| at + from) {
        let rest = &html[open..];
        if rest.starts_with("<!--") {
            from = rest.find("-->").map_or(html.len(), |at| open + at + 3);
        } else if rest[1..].starts_with(|c: char| c.is_ascii_alphabetic()) {
            let tag = read_tag(html, open);
            from = tag.at.end;
            found.push(tag);
        } else {
            from = open + 1;
        }
    }
    found
}

fn read_tag(html: &str, open: usize) -> Tag<'_> {
    let ends_word = |c: char| c.is_ascii_whitespace() || matches!(c, '>' | '=' | '/');
    let word = |at: usize| &html[at..html[at..].find(ends_word).map_or(html.len(), |n| at + n)];
    let skip_space = |at: usize| html.len() - html[at..].trim_start().len();
    let name = word(open + 1);
    let mut at = open + 1 + name.len();
    let mut attributes = Vec::new();
    loop {
        at = skip_space(at);
        match html[at..].chars().next() {
            None => break,
            Some('>') => {
                at += 1;
                break;
            }
            Some('/' | '=') => at += 1,
            Some(_) => {
                let key = word(at);
                at = skip_space(at + key.len());
                let mut value = "";
                if html[at..].starts_with('=') {
                    at = skip_space(at + 1);
                    let quote = html[at..]
                        .chars()
                        .next()
                        .filter(|c| matches!(c, '"' | '\''));
                    if let Some(quote) = quote {
                        let end = html[at + 1..]
                            .find(quote)
                            .map_or(html.len(), |n| at + 1 + n);
                        value = &html[at + 1..end];
                        at = (end + 1).min(html.len());
                    } else {
                        let ends_value = |c: char| c.is_ascii_whitespace() || c == '>';
                        let end = html[at..].find(ends_value).map_or(html.len(), |n| at + n);
                        value = &html[at..end];
                        at = end;
                    }
                }
                attributes.push((key, value));
            }
        }
    }
    Tag {
        name,
        attributes,
        at: open..at,
    }
}

/// Script text that cannot end its element nor open a comment in it, whatever its strings hold.
pub fn inside_script(text: &str) -> String {
    guard(&guard(&plain_lines(text), "</script", 1), "<!--", 1)
}

/// Style text that cannot end its element.
pub fn inside_style(text: &str) -> String {
    guard(&plain_lines(text), "</style", 1)
}

/// JSON that cannot end the script element it stands in; it reads back as the same value.
pub fn json_inside_script(json: &str) -> String {
    json.replace('<', "\\u003c")
}

/// A browser reads every kind of line end as `\n` before it takes the hash.
fn plain_lines(text: &str) -> String {
    text.replace("\r\n", "\n").replace('\r', "\n")
}

/// Puts a backslash into every occurrence, in any case, after its first `keep` bytes.
fn guard(text: &str, danger: &str, keep: usize) -> String {
    // Only ASCII letters change here, so places in both texts agree.
    let lower = text.to_ascii_lowercase();
    let mut safe = String::with_capacity(text.len());
    let mut from = 0;
    for (at, _) in lower.match_indices(danger) {
        safe.push_str(&text[from..at + keep]);
        safe.push('\\');
        from = at + keep;
    }
    safe.push_str(&text[from..]);
    safe
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tags_are_read_in_order_and_comments_are_not() {
        let html = "<!doctype html><!-- <link data-trunk rel=\"css\" href=\"no.css\"> --><link data-trunk rel='css' \
                    href = \"a>b.css\"/><p hidden class=x>a < b</p>";
        let tags = tags(html);
        assert_eq!(tags.len(), 2);
        assert_eq!(
            tags[0].attributes,
            [("data-trunk", ""), ("rel", "css"), ("href", "a>b.css")]
        );
        assert_eq!(
            &html[tags[0].at.clone()],
            "<link data-trunk rel='css' href = \"a>b.css\"/>"
        );
        assert_eq!(tags[1].attributes, [("hidden", ""), ("class", "x")]);
    }

    #[test]
    fn broken_tags_end_with_the_text() {
        for html in ["<", "<a", "<a b", "<a b=", "<a b=\"c", "<a b=c", "<!--"] {
            assert!(
                tags(html).iter().all(|tag| tag.at.end <= html.len()),
                "{html}"
            );
        }
    }

    #[test]
    fn script_text_cannot_leave_its_element() {
        let text = inside_script("let a = \"</ScRiPt><!-- é\";\r\n");
        assert_eq!(text, "let a = \"<\\/ScRiPt><\\!-- é\";\n");
        assert_eq!(
            inside_style("a::after { content: \"</style>\" }"),
            "a::after { content: \"<\\/style>\" }"
        );
    }

    #[test]
    fn a_hostile_record_reads_back_unchanged() -> Result<(), serde_json::Error> {
        let record = serde_json::json!({ "note": "</script><!-- <script> \u{2028} \\ \"" });
        let safe = json_inside_script(&record.to_string());
        assert!(!safe.contains('<'));
        assert_eq!(serde_json::from_str::<serde_json::Value>(&safe)?, record);
        Ok(())
    }
}
