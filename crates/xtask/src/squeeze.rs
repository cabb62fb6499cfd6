//! Takes out of the connecting script and the styles what only people read: indentation, blank lines, comments that
//! stand alone. Nothing is rewritten, so nothing needs to be understood.

/// The text without indentation, blank lines and comments on lines of their own. A text in which a template or a
/// string may run over a line's end is left as it is.
pub fn squeeze(text: &str) -> String {
    let runs_on = |line: &str| {
        !line.matches('`').count().is_multiple_of(2) || line.trim_end().ends_with('\\')
    };
    if text.lines().any(runs_on) {
        return text.to_owned();
    }
    let mut out = String::with_capacity(text.len());
    let mut in_comment = false;
    for line in text.lines() {
        let line = line.trim();
        let opens = line.starts_with("/*");
        if opens || in_comment {
            match line.split_once("*/") {
                Some((_, rest)) => {
                    in_comment = false;
                    if !rest.trim().is_empty() {
                        out.push_str(rest.trim());
                        out.push('\n');
                    }
                }
                None => in_comment = true,
            }
            continue;
        }
        if line.is_empty() || line.starts_with("//") {
            continue;
        }
        out.push_str(line);
        out.push('\n');
    }
    out
}

#[cfg(test)]
mod tests {
    use super::squeeze;

    #[test]
    fn indentation_and_lonely_comments_go_the_rest_stays() {
        let text = "/** What\n * it does\n */\nfunction a() {\n    // why\n    return \"// no comment\"; // kept\n\n}\n";
        assert_eq!(
            squeeze(text),
            "function a() {\nreturn \"// no comment\"; // kept\n}\n"
        );
    }

    #[test]
    fn a_template_over_two_lines_leaves_the_text_alone() {
        let text = "const a = `one\n    two`;\n";
        assert_eq!(squeeze(text), text);
    }

    #[test]
    fn code_after_a_comment_stays() {
        assert_eq!(
            squeeze("/* a */ let b;\n/* c\n d */ let e;\n"),
            "let b;\nlet e;\n"
        );
    }
}
