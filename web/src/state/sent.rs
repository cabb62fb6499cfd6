//! A plan as a text to send, and one that was sent.

use super::{at, demo, entries};
use notebook::Named;
use notebook::jobtext::{self, NotRead, Taken};

/// The plan as a text.
pub fn text_of(named: &Named) -> String {
    jobtext::write(named, &demo::demo())
}

/// Reads a text.
///
/// # Errors
///
/// Where it is no job, or from a newer page.
pub fn read(text: &str) -> Result<Taken, NotRead> {
    let base = demo::demo();
    let has = |at: &str| base.texts.contains_key(at) || entries::known(at);
    jobtext::read(text, &base, |at| {
        let plain = at::plain(at);
        let shared = plain.split_once('@').map_or(&*plain, |(at, _)| at);
        has(&plain) || has(shared)
    })
}
