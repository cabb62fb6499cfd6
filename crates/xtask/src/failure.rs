//! What went wrong, as one sentence that also says what to do.

use std::fmt;

/// A step that could not be done.
#[derive(Debug)]
pub struct Failure(String);

/// The result of every step here.
pub type Outcome<T> = Result<T, Failure>;

impl Failure {
    /// A failure described by a whole sentence.
    pub fn new(sentence: impl Into<String>) -> Self {
        Self(sentence.into())
    }
}

impl fmt::Display for Failure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

/// Puts in front of an error what was being attempted.
pub trait Explain<T> {
    /// Turns the error into "attempt: cause".
    fn explain(self, attempt: impl FnOnce() -> String) -> Outcome<T>;
}

impl<T, E: fmt::Display> Explain<T> for Result<T, E> {
    fn explain(self, attempt: impl FnOnce() -> String) -> Outcome<T> {
        self.map_err(|cause| Failure(format!("{}: {cause}", attempt())))
    }
}
