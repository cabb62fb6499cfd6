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

/// For the site: its own scripts and styles; of its own origin what installing takes, and nothing else.
pub fn site(scripts: &[&str], styles: &[&str]) -> String {
    let all = |texts: &[&str]| texts.iter().map(|t| hash(t)).collect::<Vec<_>>().join(" ");
    format!(
        "default-src 'none'; script-src {} 'wasm-unsafe-eval'; style-src {}; img-src data: 'self'; connect-src 'none'; \
         worker-src blob: 'self'; manifest-src 'self'; base-uri 'none'; form-action 'none'",
        all(scripts),
        all(styles)
    )
}

/// For the saved page: no request at all. `start.js` makes it of the site's in the same way when a copy is saved.
pub fn saved(scripts: &[&str], styles: &[&str]) -> String {
    site(scripts, styles).replace(" 'self'", "")
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
        let policy = saved(&["a"], &["b"]);
        assert!(policy.contains("default-src 'none'"));
        // A list without a source allows none (Content Security Policy Level 3, 6.7.2.2).
        assert!(policy.contains("; manifest-src; "));
        assert!(!policy.contains("'self'"));
        assert!(include_str!("start.js").contains(".replaceAll(\" 'self'\", \"\")"));
    }

    #[test]
    fn no_page_runs_what_is_not_its_own() {
        let (scripts, styles) = (["a", "c"], ["b"]);
        for policy in [saved(&scripts, &styles), site(&scripts, &styles)] {
            let own = [hash("a"), hash("c")].join(" ");
            let scripts = format!("; script-src {own} 'wasm-unsafe-eval'; ");
            assert!(policy.contains(&scripts), "{policy}");
            assert!(policy.contains(&format!("; style-src {}; ", hash("b"))));
            assert!(policy.contains("; connect-src 'none'; "));
            assert!(!policy.contains("unsafe-inline"));
        }
    }
}
