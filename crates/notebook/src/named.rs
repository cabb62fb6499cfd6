//! A draft with its name, and how the two are stored.

use crate::draft::{Draft, FORMAT, Unread, readable};
use serde::{Deserialize, Serialize};
use std::rc::Rc;

/// A draft with its name. Cheap to clone: the draft is shared until it is changed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Named {
    /// What the person calls it; empty where they gave it no name.
    pub name: String,
    /// The draft.
    pub draft: Rc<Draft>,
    /// The mark of the saved copy it was taken from, so that opening that copy again finds it; absent where it came from none.
    pub copy: Option<String>,
}

#[derive(Serialize)]
struct Written<'a> {
    format: u32,
    name: &'a str,
    draft: &'a Draft,
    #[serde(skip_serializing_if = "Option::is_none")]
    copy: Option<&'a str>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Stored {
    // Checked before.
    #[serde(rename = "format")]
    _format: u32,
    #[serde(default)]
    name: String,
    draft: Draft,
    #[serde(default)]
    copy: Option<String>,
}

impl Named {
    /// A draft under a name.
    pub fn new(name: &str, draft: Draft) -> Self {
        Self {
            name: name.to_owned(),
            draft: Rc::new(draft),
            copy: None,
        }
    }

    /// From stored text. A newer or unreadable one is an error with the reason; the text itself stays with the caller.
    pub fn from_text(text: &str) -> Result<Self, Unread> {
        readable(text)?;
        let stored: Stored = serde_json::from_str(text).map_err(|_| Unread::NotADraft)?;
        if stored.draft.format > FORMAT {
            return Err(Unread::Newer);
        }
        Ok(Self {
            name: stored.name,
            draft: Rc::new(stored.draft),
            copy: stored.copy,
        })
    }

    /// As stored.
    pub fn to_text(&self) -> String {
        let written = Written {
            format: FORMAT,
            name: &self.name,
            draft: &self.draft,
            copy: self.copy.as_deref(),
        };
        // Texts always serialize.
        serde_json::to_string(&written).unwrap_or_default()
    }
}
