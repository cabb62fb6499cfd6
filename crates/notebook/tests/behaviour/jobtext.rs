//! A job as text: what is written is read again, whatever a messenger does to it on the way.

use crate::support::{base, plain, typed};
use notebook::jobtext::{NotRead, Remark, read, write};
use notebook::{Draft, Named};
use proptest::prelude::*;

const COUNT: &str = "pieces/p1/count";
const MEAN: &str = "steps/s2/until/mean";

fn known(at: &str) -> bool {
    base().texts.contains_key(at)
}

/// A name, and drafts of arbitrary texts at the base's and other addresses, some of which cannot be read.
fn named() -> impl Strategy<Value = Named> {
    let at = prop_oneof![
        3 => prop::sample::select(base().texts.keys().cloned().collect::<Vec<_>>()),
        1 => "[a-z]{1,4}/[a-z0-9@_]{1,6}",
        1 => any::<String>().prop_filter("an address", |a| !a.is_empty() && !a.eq_ignore_ascii_case("name")),
    ];
    let text = prop_oneof![any::<String>(), "[ -~]{0,12}", "[ .\\-:{}>=?\"'\r\n]{0,8}"];
    let typed = prop::collection::vec((at, text, any::<bool>()), 0..8);
    (any::<String>(), typed).prop_map(|(name, typed)| {
        let mut draft = base();
        for (at, text, readable) in typed {
            draft.put(&at, &text, readable);
        }
        Named::new(&name, draft)
    })
}

/// What may happen to a text that is sent.
fn mangle(text: &str, how: u8) -> String {
    let lines = text.lines();
    match how % 8 {
        0 => text.to_owned(),
        1 => text.replace('\n', "\r\n"),
        2 => lines.map(|l| format!("> {l}\n")).collect(),
        3 => lines.map(|l| format!(">> \t{l}  \n")).collect(),
        4 => lines.map(|l| format!("  {l}\u{a0}\n\n")).collect(),
        5 => format!("\u{feff}Here is mine, try it:\n\n{text}\n\n\n-- \nAnna"),
        6 => format!("[24.11., 10:20] Anna: {}", text.replacen('i', "I", 1)),
        _ => smart(text).trim_end().to_owned(),
    }
}

/// As smart punctuation would have it.
fn smart(text: &str) -> String {
    text.replace('"', "\u{201d}")
        .replace('\'', "\u{2019}")
        .replace("...", "\u{2026}")
        .replace("--", "\u{2014}")
        .replace(":)", "\u{1f642}")
        .replace("(c)", "\u{a9}")
}

proptest! {
    #[test]
    fn what_is_written_is_read_again_exactly(named in named(), how in any::<u8>()) {
        let text = write(&named, &base());
        let taken = read(&mangle(&text, how), &base(), |_| true);
        let taken = taken.map_err(|e| TestCaseError::fail(format!("{e:?}: {text}")))?;
        prop_assert_eq!(&taken.named, &named, "{}", text);
        prop_assert_eq!(taken.remarks, []);
    }

    #[test]
    fn any_text_is_taken_without_a_panic(text in any::<String>(), cut in any::<prop::sample::Index>(), named in named()) {
        let _ = read(&text, &base(), known);
        let _ = read(&format!("ionwright job 1\n{text}"), &base(), known);
        let whole = write(&named, &base());
        let mut at = cut.index(whole.len());
        while !whole.is_char_boundary(at) {
            at -= 1;
        }
        let _ = read(&format!("{}{text}{}", &whole[..at], &whole[at..]), &base(), known);
    }

    #[test]
    fn every_line_is_short_of_surprises(named in named()) {
        for line in write(&named, &base()).lines() {
            prop_assert_eq!(line.trim(), line);
            prop_assert!(!line.contains(['"', '\'', '\u{201c}', '`', '*', '~', '\\', '<', '>', '\u{a0}', '\r']), "{}", line);
        }
    }
}

#[test]
fn it_can_be_read_by_a_person() {
    let mut draft = base();
    draft.put(COUNT, "3", true);
    draft.put(MEAN, "120", true);
    draft.put(MEAN, "1 3/8\"", false);
    draft.put("supply/constant_current/highest", "2.5 A", true);
    let text = write(&Named::new("Drei Blätter, 24 Nov", draft), &base());
    assert_eq!(
        text,
        "ionwright job 1\nname = Drei Blätter, 24 Nov\npieces/p1/count = 3\nsteps/s2/until/mean ? 1 3/8{22}\n\
         steps/s2/until/mean was 120\nsupply/constant_current/highest = 2.5 A\nend of job\n"
    );
    assert_eq!(
        write(&plain(""), &base()),
        "ionwright job 1\nname =\nend of job\n"
    );
}

#[test]
fn a_text_that_was_emptied_stays_empty() {
    let named = typed("", COUNT, "");
    let taken = read(&write(&named, &base()), &base(), known).expect("a job");
    assert_eq!(taken.named.draft.text(COUNT), "");
    assert_eq!(taken.named, named);
}

#[test]
fn what_is_no_job_and_what_is_newer_says_so() {
    let rows: [(&str, NotRead); 8] = [
        ("", NotRead::NotAJob),
        ("hello", NotRead::NotAJob),
        ("pieces/p1/count = 3\nend of job", NotRead::NotAJob),
        ("ionwright job", NotRead::NotAJob),
        ("ionwright job one", NotRead::NotAJob),
        ("ionwright job 1 and more", NotRead::NotAJob),
        ("ionwright job 2\npieces/p1/count = 3", NotRead::Newer(2)),
        ("> Ionwright job 99999999999", NotRead::Newer(u32::MAX)),
    ];
    for (text, want) in rows {
        assert_eq!(read(text, &base(), known), Err(want), "{text}");
    }
}

#[test]
fn a_line_that_cannot_be_read_is_reported_by_its_number_and_the_rest_is_taken() {
    for line in [
        "pieces/p1/count",
        "just words",
        "= 3",
        "pieces/p1/count is 3",
        "pieces/p1/count wasp",
        "pieces/p1/count = {22",
        "pieces/p1/count = {}",
        "pieces/p1/count = {D800}",
        "pieces/p1/count = {110000}",
        "pieces/p1/count = {+22}",
        "pieces/p1/count = {0000022}",
        "{zz} = 3",
    ] {
        let text = format!("so:\nionwright job 1\n\n{line}\nsteps/s2/until/mean=120\nend of job");
        let taken = read(&text, &base(), known).expect("a job");
        assert_eq!(
            taken.remarks,
            [Remark::Line {
                number: 4,
                text: line.to_owned()
            }]
        );
        assert_eq!(taken.named.draft.text(COUNT), "2", "{line}");
        assert_eq!(taken.named.draft.text(MEAN), "120");
    }
}

#[test]
fn an_entry_that_stands_twice_counts_once() {
    let text = "ionwright job 1\npieces/p1/count = 3\npieces/p1/count = 4\nend of job";
    let taken = read(text, &base(), known).expect("a job");
    assert_eq!(taken.named.draft.text(COUNT), "3");
    assert!(matches!(
        taken.remarks[..],
        [Remark::Line { number: 3, .. }]
    ));
}

#[test]
fn an_unknown_address_is_kept_and_reported() {
    let text = "ionwright job 1\npieces/p1/colour = blue\nend of job";
    let taken = read(text, &base(), known).expect("a job");
    assert_eq!(taken.named.draft.text("pieces/p1/colour"), "blue");
    assert_eq!(
        taken.remarks,
        [Remark::Unknown {
            address: "pieces/p1/colour".to_owned(),
            text: "blue".to_owned()
        }]
    );
    assert!(write(&taken.named, &base()).contains("pieces/p1/colour = blue"));
}

#[test]
fn a_text_that_was_cut_off_says_so() {
    let whole = write(&typed("", COUNT, "3"), &base());
    let taken = read(whole.trim_end().trim_end_matches("job"), &base(), known).expect("a job");
    assert!(taken.remarks.contains(&Remark::Cut));
    assert_eq!(taken.named.draft.text(COUNT), "3");
}

#[test]
fn the_base_fills_in_what_a_draft_lacks() {
    let named = Named::new("", Draft::of([(COUNT.to_owned(), "5".to_owned())].into()));
    let taken = read(&write(&named, &base()), &base(), known).expect("a job");
    assert_eq!(taken.named.draft.text(COUNT), "5");
    assert_eq!(taken.named.draft.text(MEAN), "200");
}
