//! The content security policy: what the page may run and reach, told to the browser.

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use sha2::{Digest, Sha256};

/// The source expression that allows exactly this text as an inline script or style.
pub fn hash(text: &str) -> String {
    format!(
        "'sha256-{}'",
        STANDARD.encode(Sha256::digest(text.as_bytes()))
    )
}

/// For the saved page: its own script and style, no request at all.
pub fn saved(script: &str, style: &str) -> String {
    format!(
        "default-src 'none'; script-src {} 'wasm-unsafe-eval'; style-src {}; img-src data:; connect-src 'none'; \
         worker-src blob:; base-uri 'none'; form-action 'none'",
        hash(script),
        hash(style)
    )
}

/// For the site: files of its own origin.
pub fn site() -> String {
    "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self' data:; \
     connect-src 'self'; worker-src 'self' blob:; manifest-src 'self'; base-uri 'none'; form-action 'none'"
        .to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn hash_is_base64_of_sha256() {
        // The value for no text at all is published with the hash function.
        assert_eq!(
            hash(""),
            "'sha256-47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU='"
        );
        assert_eq!(
            hash("abc"),
            "'sha256-ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0='"
        );
    }

    #[test]
    fn the_saved_page_may_reach_nothing() {
        let policy = saved("a", "b");
        assert!(policy.contains("connect-src 'none'"));
        assert!(!policy.contains("'self'"));
        assert!(!policy.contains("unsafe-inline"));
    }
}
