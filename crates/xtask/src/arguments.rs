//! What was typed after `cargo xtask`.

use crate::failure::{Failure, Outcome};
use crate::serve::Wishes;

/// Shown on request and after a command that is not known.
pub const HELP: &str = "\
cargo xtask serve [--port N] [--lan]   build the page, serve it on this machine (with --lan on the network too),
                                       rebuild when a source changes
cargo xtask package                    write dist/ionwright.html (one file) and dist/site (for a server)
cargo xtask test [--trunk]             all checks, the browser's included; with --trunk the page Trunk builds
cargo xtask measure [--runs N]         size, start and keystrokes in the browser beside an empty page, as a table

Each takes --rustup: where the compiler has no target for the page, let rustup add it.";

/// What to do.
pub enum Task {
    /// Say what can be done.
    Help,
    /// Build, serve, rebuild.
    Serve(Wishes),
    /// Write the pages.
    Package {
        /// Whether rustup may add the target.
        rustup: bool,
    },
    /// Run all checks.
    Test {
        /// Whether rustup may add the target.
        rustup: bool,
    },
    /// Measure the page in the browser.
    Measure {
        /// Whether rustup may add the target.
        rustup: bool,
        /// How many runs of both pages.
        runs: u16,
    },
    /// Test what Trunk builds.
    TestTrunk {
        /// Whether rustup may add the target.
        rustup: bool,
    },
}

/// Reads the words after `cargo xtask`.
pub fn read(words: impl Iterator<Item = String>) -> Outcome<Task> {
    let mut words = words;
    let command = words.next().unwrap_or_default();
    let (mut rustup, mut lan, mut trunk, mut port) = (false, false, false, 8080);
    let mut runs = 15;
    while let Some(word) = words.next() {
        match (command.as_str(), word.as_str()) {
            ("serve" | "package" | "test" | "measure", "--rustup") => rustup = true,
            ("serve", "--lan") => lan = true,
            ("test", "--trunk") => trunk = true,
            ("serve", "--port") => port = count(&word, words.next())?,
            ("measure", "--runs") => runs = count(&word, words.next())?,
            _ => return Err(unknown(&format!("{command} {word}"))),
        }
    }
    match command.as_str() {
        "serve" => Ok(Task::Serve(Wishes { port, lan, rustup })),
        "package" => Ok(Task::Package { rustup }),
        "test" if trunk => Ok(Task::TestTrunk { rustup }),
        "test" => Ok(Task::Test { rustup }),
        "measure" => Ok(Task::Measure {
            rustup,
            // Without any there is nothing to tell.
            runs: runs.max(1),
        }),
        "help" | "--help" | "-h" => Ok(Task::Help),
        other => Err(unknown(other)),
    }
}

fn count(option: &str, given: Option<String>) -> Outcome<u16> {
    let given = given.unwrap_or_default();
    given.parse().map_err(|_| {
        Failure::new(format!(
            "`{option}` takes a number up to 65535, not `{given}`."
        ))
    })
}

fn unknown(what: &str) -> Failure {
    let what = what.trim();
    let first = if what.is_empty() {
        "Say what to do.".to_owned()
    } else {
        format!("`{what}` is not known here.")
    };
    Failure::new(format!("{first}\n\n{HELP}"))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn typed(line: &str) -> Outcome<Task> {
        read(line.split_whitespace().map(str::to_owned))
    }

    #[test]
    fn commands_and_their_options() {
        assert!(matches!(
            typed("serve --port 9000 --lan"),
            Ok(Task::Serve(Wishes {
                port: 9000,
                lan: true,
                rustup: false
            }))
        ));
        assert!(matches!(
            typed("serve"),
            Ok(Task::Serve(Wishes {
                port: 8080,
                lan: false,
                rustup: false
            }))
        ));
        assert!(matches!(
            typed("package --rustup"),
            Ok(Task::Package { rustup: true })
        ));
        assert!(matches!(
            typed("test --trunk"),
            Ok(Task::TestTrunk { rustup: false })
        ));
        assert!(matches!(
            typed("measure --runs 3"),
            Ok(Task::Measure {
                rustup: false,
                runs: 3
            })
        ));
        assert!(matches!(
            typed("measure --runs 0"),
            Ok(Task::Measure { runs: 1, .. })
        ));
        assert!(matches!(typed("test"), Ok(Task::Test { rustup: false })));
    }

    #[test]
    fn anything_else_is_said_to_be_unknown() {
        for line in [
            "",
            "bake",
            "package --lan",
            "serve --port many",
            "serve --port",
            "test --port 1",
            "package --runs 3",
            "measure --runs few",
        ] {
            assert!(typed(line).is_err(), "{line}");
        }
    }
}
