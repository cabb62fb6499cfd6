//! Which compiler makes the page.

use crate::debian::Debian;
use crate::failure::{Failure, Outcome};
use crate::process;
use crate::report;
use std::env;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::time::Duration;

/// The machine the page runs on.
pub const TARGET: &str = "wasm32-unknown-unknown";

/// `debian` in this variable forces Debian's compiler. Elsewhere a target left over from other work would hide that
/// the way of a fresh machine is broken.
const FORCE: &str = "IONWRIGHT_WASM";

/// A compiler, the same version's standard library as source, and a linker for wasm.
const PACKAGES: [&str; 4] = ["rustc-web", "cargo-web", "rust-web-src", "lld-22"];

/// A compiler that can make the page.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Compiler {
    /// The one that called this program; its wasm target is installed.
    Calling,
    /// Debian's, which compiles the standard library along.
    Debian,
}

/// What is known before choosing.
struct Facts {
    force_debian: bool,
    target_present: bool,
    on_debian: bool,
    ask_rustup: bool,
}

#[derive(Debug, PartialEq, Eq)]
enum Choice {
    Use(Compiler),
    AddTarget,
    Explain,
}

/// Finds a compiler for the page and installs what it lacks. `ask_rustup`: the person allowed `rustup target add`.
pub fn choose(ask_rustup: bool, debian: &mut Debian) -> Outcome<Compiler> {
    let forced = env::var_os(FORCE).unwrap_or_default();
    let force_debian = forced == "debian";
    if !force_debian && !forced.is_empty() {
        return Err(Failure::new(format!(
            "{FORCE} may only be `debian` or unset, not `{}`.",
            forced.to_string_lossy()
        )));
    }
    let facts = Facts {
        force_debian,
        target_present: !force_debian && target_present(),
        on_debian: Debian::is_here(),
        ask_rustup,
    };
    match decide(&facts) {
        Choice::Use(Compiler::Debian) => {
            debian.provide(&PACKAGES, "Compiling the page", "about 20 s, 150 MB")?;
            Ok(Compiler::Debian)
        }
        Choice::Use(Compiler::Calling) => Ok(Compiler::Calling),
        Choice::AddTarget => {
            report::step(
                &format!("Adding the target {TARGET}"),
                "under a minute",
                || {
                    process::run_within(
                        Command::new("rustup").args(["target", "add", TARGET]),
                        Duration::from_secs(300),
                        "Check the network and that rustup is installed.",
                    )
                },
            )?;
            Ok(Compiler::Calling)
        }
        Choice::Explain => Err(Failure::new(format!(
            "This Rust has no target {TARGET}, which the page needs: `cargo xtask serve --rustup` (any command takes \
             `--rustup`) lets rustup add it."
        ))),
    }
}

fn decide(facts: &Facts) -> Choice {
    if facts.force_debian {
        Choice::Use(Compiler::Debian)
    } else if facts.target_present {
        Choice::Use(Compiler::Calling)
    } else if facts.ask_rustup {
        Choice::AddTarget
    } else if facts.on_debian {
        Choice::Use(Compiler::Debian)
    } else {
        Choice::Explain
    }
}

/// rustc names the folder of a target even when nothing is in it, so look inside.
fn target_present() -> bool {
    let rustc = env::var_os("RUSTC").unwrap_or_else(|| "rustc".into());
    process::ask(Command::new(rustc).args(["--print", "target-libdir", "--target", TARGET]))
        .is_some_and(|folder| holds_core(Path::new(folder.trim())))
}

fn holds_core(folder: &Path) -> bool {
    fs::read_dir(folder).is_ok_and(|entries| {
        entries.flatten().any(|entry| {
            let name = entry.file_name();
            let name = name.to_string_lossy();
            name.starts_with("libcore-") && name.ends_with(".rlib")
        })
    })
}

/// Where cargo keeps the sources of other packages.
fn cargo_home() -> Option<PathBuf> {
    let named = |name: &str| env::var_os(name).map(PathBuf::from);
    named("CARGO_HOME").or_else(|| Some(named("HOME")?.join(".cargo")))
}

impl Compiler {
    /// This compiler's cargo, in the folder of the workspace.
    pub fn cargo(self) -> Outcome<Command> {
        let mut command = match self {
            Self::Calling => process::cargo(),
            Self::Debian => Command::new("/usr/bin/cargo"),
        };
        command.current_dir(process::workspace());
        self.dress(&mut command)?;
        Ok(command)
    }

    /// Gives a command the environment in which the cargo it starts is this compiler's.
    ///
    /// The variables of the Debian build stand in the child only: exported, they would break the calling toolchain,
    /// which has no source of the standard library.
    pub fn dress(self, command: &mut Command) -> Outcome<()> {
        process::forget_package(command);
        // The page would name the folders of whoever packaged it; this also keeps other flags of theirs out of it.
        let mut flags: Vec<String> = cargo_home()
            .map(|home| format!("--remap-path-prefix={}=/cargo", home.display()))
            .into_iter()
            .collect();
        if self != Self::Calling {
            // A panic ends the program either way; without its message the page is 5 % smaller. Only where std is built
            // along with it.
            flags.extend(["-Zunstable-options", "-Cpanic=immediate-abort"].map(str::to_owned));
        }
        if flags.is_empty() {
            command.env_remove("CARGO_ENCODED_RUSTFLAGS");
        } else {
            command.env("CARGO_ENCODED_RUSTFLAGS", flags.join("\u{1f}"));
        }
        if self == Self::Calling {
            return Ok(());
        }
        // What the calling cargo and rustup left behind would pull their own compiler into this build.
        for name in [
            "CARGO",
            "RUSTC",
            "RUSTDOC",
            "RUSTFLAGS",
            "RUSTC_WRAPPER",
            "RUSTC_WORKSPACE_WRAPPER",
            "CARGO_BUILD_RUSTC",
            "CARGO_BUILD_RUSTFLAGS",
            "CARGO_BUILD_TARGET",
            "RUSTUP_TOOLCHAIN",
            "RUSTUP_TOOLCHAIN_SOURCE",
            "RUST_RECURSION_COUNT",
            "LD_LIBRARY_PATH",
        ] {
            command.env_remove(name);
        }
        let rest = env::var_os("PATH").unwrap_or_default();
        command
            .env("PATH", process::path_with(&[Path::new("/usr/bin")], &rest)?)
            .env("RUSTC_BOOTSTRAP", "1")
            .env("CARGO_UNSTABLE_BUILD_STD", "std,panic_abort")
            .env("CARGO_UNSTABLE_BUILD_STD_FEATURES", "optimize_for_size")
            .env("CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_LINKER", "wasm-ld-22");
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn facts(force_debian: bool, target_present: bool, on_debian: bool, ask_rustup: bool) -> Facts {
        Facts {
            force_debian,
            target_present,
            on_debian,
            ask_rustup,
        }
    }

    #[test]
    fn a_target_that_is_there_is_used() {
        assert_eq!(
            decide(&facts(false, true, true, true)),
            Choice::Use(Compiler::Calling)
        );
    }

    #[test]
    fn the_variable_forces_debian() {
        assert_eq!(
            decide(&facts(true, true, true, true)),
            Choice::Use(Compiler::Debian)
        );
    }

    #[test]
    fn rustup_only_on_request() {
        assert_eq!(
            decide(&facts(false, false, true, false)),
            Choice::Use(Compiler::Debian)
        );
        assert_eq!(decide(&facts(false, false, true, true)), Choice::AddTarget);
        assert_eq!(decide(&facts(false, false, false, true)), Choice::AddTarget);
        assert_eq!(decide(&facts(false, false, false, false)), Choice::Explain);
    }

    #[test]
    fn an_empty_or_absent_folder_is_no_target() {
        assert!(!holds_core(Path::new("/nowhere/at/all")));
        assert!(!holds_core(Path::new(env!("CARGO_MANIFEST_DIR"))));
    }
}
