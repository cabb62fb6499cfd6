//! What Cargo.lock says.

/// The version of a package; the first one where there are several.
pub fn version<'a>(lock: &'a str, package: &str) -> Option<&'a str> {
    let name = format!("name = \"{package}\"");
    let mut lines = lock.lines().map(str::trim);
    lines.find(|line| *line == name)?;
    lines
        .take_while(|line| *line != "[[package]]")
        .find_map(|line| line.strip_prefix("version = \"")?.strip_suffix('"'))
}

#[cfg(test)]
mod tests {
    use super::*;

    const LOCK: &str = "version = 4\n\n[[package]]\nname = \"wasm-bindgen-macro\"\nversion = \"9.9.9\"\n\n\
        [[package]]\nname = \"wasm-bindgen\"\nversion = \"0.2.130\"\nsource = \"s\"\n\n[[package]]\nname = \"bare\"\n\n\
        [[package]]\nname = \"last\"\nversion = \"1.0.0\"\n";

    #[test]
    fn the_version_of_exactly_that_package() {
        assert_eq!(version(LOCK, "wasm-bindgen"), Some("0.2.130"));
        assert_eq!(version(LOCK, "bare"), None);
        assert_eq!(version(LOCK, "none"), None);
    }
}
