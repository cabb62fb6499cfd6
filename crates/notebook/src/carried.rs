//! The job that a saved copy of the page carries: the open draft with its name, as JSON that can stand inside an element.

use crate::book::{Book, DraftId};
use crate::draft::Unread;
use crate::named::Named;
use crate::shelf::mark;

/// What a copy carries: `{"format":1,"name":"...","draft":{...}}`. No sign of mark-up stands in it as itself.
pub fn write(named: &Named) -> String {
    let plain = Named {
        copy: None,
        ..named.clone()
    };
    // In JSON these stand within texts only, where a code means the same.
    plain
        .to_text()
        .replace('<', "\\u003c")
        .replace('>', "\\u003e")
        .replace('&', "\\u0026")
}

/// Reads what a copy carries.
///
/// # Errors
///
/// Where it is no draft, damaged, or from a newer page; the text itself stays with the caller.
pub fn read(text: &str) -> Result<Named, Unread> {
    let named = Named::from_text(text.trim())?;
    // The mark is of what the draft says, not of how it was written down.
    let copy = Some(mark(&named.to_text()));
    Ok(Named { copy, ..named })
}

/// Opens a carried job in a book: where the same stands there already, or what came of it since, that is opened; otherwise it
/// becomes a new draft, named by `rename`. Nothing that was there is changed.
pub fn join(book: &mut Book, carried: Named, rename: impl Fn(&str) -> String) -> DraftId {
    let there = |same: &dyn Fn(&Named) -> bool| {
        let mut all = book.iter();
        all.rfind(|(_, named)| same(named)).map(|(id, _)| id)
    };
    let found = there(&|n| n.copy.is_some() && n.copy == carried.copy)
        .or_else(|| there(&|n| n.draft == carried.draft));
    let id = found.unwrap_or_else(|| {
        book.add(Named {
            name: rename(&carried.name),
            ..carried
        })
    });
    book.turn_to(id);
    id
}
