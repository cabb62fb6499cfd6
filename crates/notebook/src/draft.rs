//! The draft: what was typed and picked, as text, by address. Nothing here is ever cleared because it cannot be read.

use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// The format drafts are stored in.
pub const FORMAT: u32 = 1;

/// What was typed and picked.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Draft {
    /// Format of the stored text.
    pub format: u32,
    /// Exactly what stands in each field, and which word is picked in each choice.
    pub texts: BTreeMap<String, String>,
    /// The last text of each field that could be read: what the answer stands on while the present one cannot.
    #[serde(default)]
    pub good: BTreeMap<String, String>,
}

impl Draft {
    /// A draft in which every text can be read.
    pub fn of(texts: BTreeMap<String, String>) -> Self {
        Self {
            format: FORMAT,
            good: texts.clone(),
            texts,
        }
    }

    /// The text at an address; empty where nothing was typed.
    pub fn text(&self, at: &str) -> &str {
        self.texts.get(at).map_or("", String::as_str)
    }

    /// The address of a choice that each process has its own of: growing's is the plain one.
    pub fn scope(&self, at: &str) -> String {
        match self.text("steps/s2/kind") {
            "electroplate" => format!("{at}@electroplate"),
            "etch" => format!("{at}@etch"),
            _ => at.to_owned(),
        }
    }

    /// The word picked there for the present process; growing's where the process has none of its own.
    pub fn scoped(&self, at: &str) -> &str {
        match self.text(&self.scope(at)) {
            "" => self.text(at),
            word => word,
        }
    }

    /// The last readable text at an address.
    pub fn good(&self, at: &str) -> Option<&str> {
        self.good.get(at).map(String::as_str)
    }

    /// Puts a text at an address; `readable` texts are remembered as good.
    pub fn put(&mut self, at: &str, text: &str, readable: bool) {
        self.texts.insert(at.to_owned(), text.to_owned());
        if readable {
            self.good.insert(at.to_owned(), text.to_owned());
        }
    }

    /// From stored text. A newer or unreadable one is an error with the reason; the text itself stays with the caller.
    pub fn from_text(text: &str) -> Result<Self, Unread> {
        readable(text)?;
        serde_json::from_str(text).map_err(|_| Unread::NotADraft)
    }

    /// As stored.
    pub fn to_text(&self) -> String {
        // A map of texts always serializes.
        serde_json::to_string(self).unwrap_or_default()
    }
}

#[derive(Deserialize)]
struct Format {
    format: u32,
}

/// Whether a stored text says a format that this edition reads.
pub(crate) fn readable(text: &str) -> Result<(), Unread> {
    match serde_json::from_str::<Format>(text) {
        Ok(found) if found.format > FORMAT => Err(Unread::Newer),
        Ok(_) => Ok(()),
        Err(_) => Err(Unread::NotADraft),
    }
}

/// Why a stored draft was set aside.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unread {
    /// Not a draft, or damaged.
    NotADraft,
    /// Written by a newer page.
    Newer,
}
