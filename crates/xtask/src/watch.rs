//! Noticing that a source changed.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::time::SystemTime;

/// The time of the last change of every source.
#[derive(Default, PartialEq, Eq)]
pub struct Sources(BTreeMap<PathBuf, SystemTime>);

impl Sources {
    /// Looks at everything the page is made of.
    pub fn look(workspace: &Path) -> Self {
        let mut seen = Self::default();
        for part in ["crates", "web", "Cargo.toml", "Cargo.lock"] {
            seen.add(&workspace.join(part));
        }
        seen
    }

    fn add(&mut self, path: &Path) {
        let name = path.file_name().unwrap_or_default().to_string_lossy();
        // Editors leave files beside the sources. This program cannot replace itself while it runs.
        if name.starts_with('.')
            || name.ends_with('~')
            || name.ends_with(".swp")
            || name == "xtask"
            || name == "target"
        {
            return;
        }
        // What vanished between listing and looking is a change that the next look sees.
        let Ok(about) = fs::metadata(path) else {
            return;
        };
        if about.is_dir() {
            for entry in fs::read_dir(path).into_iter().flatten().flatten() {
                self.add(&entry.path());
            }
        } else if let Ok(changed) = about.modified() {
            self.0.insert(path.to_path_buf(), changed);
        }
    }
}
