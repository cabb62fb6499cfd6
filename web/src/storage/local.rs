//! The browser's own store. The library throws where the browser refuses storage, so every use is behind a guard that
//! asks the browser first.

use super::{Shelf, ShelfProblem};
use gloo_storage::errors::StorageError;
use gloo_storage::{LocalStorage, Storage};

/// The browser's local storage, known to be there.
pub struct LocalShelf(());

impl LocalShelf {
    /// The shelf, where the browser grants one and a trial entry can be written.
    pub fn open() -> Option<Self> {
        let window = web_sys::window()?;
        let storage = window.local_storage().ok().flatten()?;
        let trial = "ionwright.trial";
        storage.set_item(trial, "1").ok()?;
        storage.remove_item(trial).ok()?;
        Some(Self(()))
    }
}

impl Shelf for LocalShelf {
    fn load(&self, name: &str) -> Option<String> {
        match LocalStorage::get::<String>(name) {
            Ok(text) => Some(text),
            // Not a JSON text: somebody else's, or damaged. The raw text is what there is to keep.
            Err(StorageError::SerdeError(_)) => web_sys::window()?
                .local_storage()
                .ok()
                .flatten()?
                .get_item(name)
                .ok()
                .flatten(),
            Err(_) => None,
        }
    }

    fn save(&self, name: &str, text: &str) -> Result<(), ShelfProblem> {
        LocalStorage::set(name, text).map_err(|e| match e {
            StorageError::JsError(js) if js.name == "QuotaExceededError" => ShelfProblem::Full,
            _ => ShelfProblem::Refused,
        })
    }
}
