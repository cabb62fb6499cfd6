//! The browser's own store. The library throws where the browser refuses storage, so every use is behind a guard that
//! asks the browser first.

use super::{Shelf, ShelfProblem};
use gloo_storage::errors::StorageError;
use gloo_storage::{LocalStorage, Storage};
use notebook::DraftId;

/// The browser's local storage, known to be there.
pub struct LocalShelf(());

impl LocalShelf {
    /// The shelf, where the browser grants one and a trial entry can be written.
    pub fn open() -> Option<Self> {
        let storage = local()?;
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
            Err(StorageError::SerdeError(_)) => local()?.get_item(name).ok().flatten(),
            Err(_) => None,
        }
    }

    fn save(&self, name: &str, text: &str) -> Result<(), ShelfProblem> {
        LocalStorage::set(name, text).map_err(|e| match e {
            StorageError::JsError(js) if js.name == "QuotaExceededError" => ShelfProblem::Full,
            _ => ShelfProblem::Refused,
        })
    }

    fn remove(&self, name: &str) {
        LocalStorage::delete(name);
    }

    fn names(&self) -> Vec<String> {
        let Some(storage) = local() else {
            return Vec::new();
        };
        (0..storage.length().unwrap_or(0))
            .filter_map(|n| storage.key(n).ok().flatten())
            .collect()
    }
}

fn local() -> Option<web_sys::Storage> {
    web_sys::window()?.local_storage().ok().flatten()
}

/// This window's own small store, which outlives a reload and no more.
fn session() -> Option<web_sys::Storage> {
    web_sys::window()?.session_storage().ok().flatten()
}

const OPEN: &str = "ionwright.open";

/// The draft this window had open before it was loaded again.
pub fn last_open() -> Option<DraftId> {
    DraftId::read(&session()?.get_item(OPEN).ok().flatten()?)
}

/// Remembers which draft this window has open. Where that is refused, the last one opened in any window is opened next time.
pub fn remember_open(id: DraftId) {
    if let Some(store) = session() {
        let _ = store.set_item(OPEN, &id.to_string());
    }
}
