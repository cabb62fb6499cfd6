//! Words about plans: several of them, as a text, from elsewhere.

use super::{PROCESSES, kind, solution};
use crate::state::{Draft, at, pieces};
use notebook::DraftId;
use notebook::jobtext::{NotRead, Remark};

/// Opens the list.
pub const PLANS: &str = "Plans";
/// Heading for those who cannot see it.
pub const HEADING: &str = "Your plans";
/// The field for the name.
pub const NAME: &str = "Name of this plan";
/// A new one.
pub const NEW: &str = "New plan";
/// The open one once more.
pub const AGAIN: &str = "Same again";
/// Takes the open one out.
pub const REMOVE: &str = "Remove this one";
/// Examples to start from.
pub const EXAMPLES: &str = "Start from an example";
/// The open one as a text.
pub const SEND: &str = "Send this plan as a text";
/// What to do with it.
pub const SEND_HOW: &str = "Whoever gets it pastes it into their own copy of this page.";
/// Takes one in.
pub const TAKE: &str = "Take in a plan that was sent";
/// The field for it.
pub const PASTE: &str = "Paste the text here";
/// Does it.
pub const TAKE_IN: &str = "Open as a new plan";

/// Another plan in a table beside the open one.
pub const BESIDE: &str = "Beside this one";
/// None is picked.
pub const NO_OTHER: &str = "no other plan";
/// The rows of that table.
pub const COMPARED: [&str; 6] = ["Set", "Takes", "Layer", "Nine in ten", "Metal", "Held back"];

/// What a draft is called.
pub fn name(id: DraftId, name: &str) -> String {
    match name.trim() {
        "" => unnamed(id),
        _ => name.to_owned(),
    }
}

/// What a draft without a name is called.
pub fn unnamed(id: DraftId) -> String {
    ["Plan ", &id.number().to_string()].concat()
}

/// The name of the same again.
pub fn again(name: &str) -> String {
    [name, ", again"].concat()
}

/// The name of what was changed here while another window changed it too.
pub fn other_window(name: &str) -> String {
    [name, ", as in the other window"].concat()
}

/// The name of a job that a saved copy of the page carried.
pub fn from_copy(name: &str) -> String {
    match name.trim() {
        "" => "From the copy".to_owned(),
        _ => [name, ", from the copy"].concat(),
    }
}

/// The name of the file that carries a plan.
pub fn file_name(id: DraftId, own: &str) -> String {
    ["Ionwright, ", &name(id, own), ".html"].concat()
}

/// What a draft is, in a line.
pub fn line(draft: &Draft) -> String {
    let process = draft.text(at::PROCESS);
    let does = PROCESSES
        .iter()
        .find(|(word, _)| *word == process)
        .map_or("", |(_, label)| label);
    let mut line = [does, ": ", kind(draft.scoped(at::SHAPE))].concat();
    let count = draft.text(at::COUNT).trim();
    if !matches!(count, "" | "1") {
        line.push_str(", ");
        line.push_str(count);
        line.push('\u{d7}');
    }
    let more = pieces::ids(draft).len() - 1;
    if more > 0 {
        line.push_str(" and ");
        line.push_str(&more.to_string());
        line.push_str(" more");
    }
    line.push_str(" \u{b7} ");
    line.push_str(solution(draft.scoped(at::SOLUTION)));
    line
}

/// The name of an example.
pub fn demo(id: &str) -> &'static str {
    match id {
        "hoops" => "Hoop earrings",
        "acorn_cap" => "Acorn cap",
        "resin_ring" => "Resin-printed ring",
        "stud" => "Stud, coarse display",
        "vermeil" => "Vermeil earrings",
        "rhodium" => "Pendant in rhodium",
        "pendant" => "Sterling pendant, etched",
        "bookmark" => "Brass bookmark, etched",
        "gear" => "Copper gear, etched through",
        "ferns" => "Three ferns on one bar",
        "class" => "A class of fourteen",
        _ => "",
    }
}

/// Why a pasted text is not taken in.
pub fn not_read(why: NotRead) -> &'static str {
    match why {
        NotRead::NotAJob => {
            "This is no plan: its first line would be \u{201c}ionwright job 1\u{201d}."
        }
        NotRead::Newer(_) => "This plan was written by a newer edition of this page.",
    }
}

/// What there is to say about a text that was taken in.
pub fn remark(remark: &Remark) -> String {
    match remark {
        Remark::Line { number, text } => [
            "Line ",
            &number.to_string(),
            " could not be read: \u{201c}",
            text,
            "\u{201d}",
        ]
        .concat(),
        Remark::Unknown { address, text } => [
            "This page has no field \u{201c}",
            address,
            "\u{201d}; its text is kept: \u{201c}",
            text,
            "\u{201d}",
        ]
        .concat(),
        Remark::Cut => "The last line is missing: the end may have been cut off.".to_owned(),
    }
}

/// It was taken in, with remarks.
pub const TAKEN_BUT: &str = "Opened as a new plan, but:";
/// It was taken in whole.
pub const TAKEN: &str = "Opened as a new plan.";
