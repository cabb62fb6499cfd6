//! `cargo xtask test --trunk`: the same page built by Trunk, tested by the same browser tests.

use crate::browser::{self, Pages};
use crate::debian::Debian;
use crate::failure::{Explain, Failure, Outcome};
use crate::lockfile;
use crate::package;
use crate::process;
use crate::report;
use crate::toolchain;
use std::env;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, ExitCode};

/// The Trunk that is built where none is installed. Later ones want a newer Rust than this workspace.
const TRUNK: &str = "0.21.14";

/// Builds the page with Trunk and tests it.
pub fn test(rustup: bool) -> Outcome<ExitCode> {
    let mut debian = Debian::default();
    let found = browser::provide(&mut debian)?;
    let compiler = toolchain::choose(rustup, &mut debian)?;
    let trunk = match process::on_path("trunk") {
        Some(trunk) => trunk,
        // With its own lock: the versions it was released with.
        None => install("trunk", "trunk", TRUNK, &["--locked"], "about 2 min, once")?,
    };
    let generator = generator()?;
    report::step(
        "Building the page with Trunk",
        "about 2 min the first time",
        || {
            let mut command = Command::new(&trunk);
            compiler.dress(&mut command)?;
            let path = match command.get_envs().find(|(name, _)| *name == "PATH") {
                Some((_, Some(path))) => path.to_owned(),
                _ => env::var_os("PATH").unwrap_or_default(),
            };
            let folder = generator.parent().unwrap_or(&generator);
            command
                // Both tools are here; without this Trunk would download what it thinks is missing.
                .args(["build", "--release", "--offline"])
                .current_dir(process::workspace())
                .env("PATH", process::path_with(&[folder], &path)?)
                // Trunk takes its value for an option's and refuses the usual one.
                .env_remove("NO_COLOR");
            process::run(&mut command, "Trunk's messages stand above.")
        },
    )?;
    browser::test(
        &found,
        &Pages {
            saved: None,
            site: &package::dist().join("trunk"),
        },
    )
}

/// wasm-bindgen's command of the version the page is built with.
fn generator() -> Outcome<PathBuf> {
    let file = process::workspace().join("Cargo.lock");
    let lock =
        fs::read_to_string(&file).explain(|| format!("{} cannot be read", file.display()))?;
    let wanted = lockfile::version(&lock, "wasm-bindgen")
        .ok_or_else(|| Failure::new("Cargo.lock names no version of wasm-bindgen."))?;
    if let Some(found) = process::on_path("wasm-bindgen") {
        let said = process::ask(Command::new(&found).arg("--version")).unwrap_or_default();
        if said.split_whitespace().nth(1) == Some(wanted) {
            return Ok(found);
        }
    }
    // Without its own lock, which may name a version that has been withdrawn.
    install(
        "wasm-bindgen-cli",
        "wasm-bindgen",
        wanted,
        &[],
        "about 2 min, once",
    )
}

/// A program built into the person's cache, once for each version.
fn install(
    package: &str,
    program: &str,
    version: &str,
    options: &[&str],
    about: &str,
) -> Outcome<PathBuf> {
    let folder = cache()?.join(format!("{package}-{version}"));
    let file = folder.join("bin").join(program);
    if file.is_file() {
        return Ok(file);
    }
    report::step(
        &format!("Building {package} {version} into {}", folder.display()),
        about,
        || {
            process::run(
                process::cargo()
                    .args(["install", "--no-default-features"])
                    .args(options)
                    .arg("--root")
                    .arg(&folder)
                    .arg(format!("{package}@{version}"))
                    // A tool used a few times a day: quick to build beats quick to run.
                    .env("CARGO_PROFILE_RELEASE_LTO", "off")
                    .env("CARGO_PROFILE_RELEASE_OPT_LEVEL", "0")
                    .env("CARGO_PROFILE_RELEASE_CODEGEN_UNITS", "16")
                    .env_remove("CARGO_TARGET_DIR"),
                "Check the network, or install it by hand.",
            )
        },
    )?;
    Ok(file)
}

fn cache() -> Outcome<PathBuf> {
    let named = |name: &str| {
        env::var_os(name)
            .map(PathBuf::from)
            .filter(|path| path.is_absolute())
    };
    named("XDG_CACHE_HOME")
        .or_else(|| named("HOME").map(|home| home.join(Path::new(".cache"))))
        .map(|folder| folder.join("ionwright"))
        .ok_or_else(|| {
            Failure::new(
                "Neither XDG_CACHE_HOME nor HOME says where a cache folder is: set one of them.",
            )
        })
}
