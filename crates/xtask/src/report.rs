//! Telling the person what is being done. Everything goes to stderr, so that stdout stays what a child program printed.

use crate::failure::Outcome;
use std::time::Instant;

/// Does one step: says what it is and about how long it takes before, and how long it took after.
pub fn step<T>(what: &str, about: &str, work: impl FnOnce() -> Outcome<T>) -> Outcome<T> {
    announce(what, about);
    let begun = Instant::now();
    let done = work()?;
    eprintln!("   done in {:.1} s", begun.elapsed().as_secs_f64());
    Ok(done)
}

/// Says what comes next, without a line after it.
pub fn announce(what: &str, about: &str) {
    eprintln!("== {what} ({about})");
}

/// Says something in passing.
pub fn note(sentence: &str) {
    eprintln!("   {sentence}");
}
