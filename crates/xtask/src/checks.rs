//! `cargo xtask test`: every check, cheapest first, up to the first that fails.

use crate::browser::{self, Pages};
use crate::debian::Debian;
use crate::failure::{Failure, Outcome};
use crate::package;
use crate::process;
use crate::report;
use crate::toolchain;
use std::process::{Command, ExitCode};

/// Runs all checks. The browser tests come last and have the last word.
pub fn run(rustup: bool) -> Outcome<ExitCode> {
    require("fmt", "rustfmt")?;
    require("clippy", "clippy")?;
    check(
        "Formatting",
        "1 s",
        "`cargo fmt --all` mends it.",
        &["fmt", "--all", "--check"],
    )?;
    check(
        "Linting",
        "about 1 min the first time",
        "The findings stand above.",
        &[
            "clippy",
            "--workspace",
            "--all-targets",
            "--locked",
            "--",
            "-D",
            "warnings",
        ],
    )?;
    report::step(
        "Checking the documentation",
        "about 1 min the first time",
        || {
            process::run(
                process::cargo()
                    .args(["doc", "--workspace", "--no-deps", "--locked"])
                    .env("RUSTDOCFLAGS", "-D warnings"),
                "The findings stand above.",
            )
        },
    )?;
    check(
        "Testing on this machine",
        "about 2 min the first time",
        "The failed tests stand above.",
        &["test", "--workspace", "--locked"],
    )?;
    let mut debian = Debian::default();
    let compiler = toolchain::choose(rustup, &mut debian)?;
    let package = package::make(compiler)?;
    package.check_budget()?;
    let found = browser::provide(&mut debian)?;
    report::step(
        "Compiling the browser tests",
        "about 1 min the first time",
        browser::compile_tests,
    )?;
    browser::test(
        &found,
        &Pages {
            saved: Some(&package.saved),
            site: &package.site,
        },
    )
}

fn check(what: &str, about: &str, advice: &str, arguments: &[&str]) -> Outcome<()> {
    report::step(what, about, || {
        process::run(process::cargo().args(arguments), advice)
    })
}

/// A part of the toolchain that may have been left out when it was installed.
fn require(command: &str, component: &str) -> Outcome<()> {
    let mut cargo: Command = process::cargo();
    match process::ask(cargo.args([command, "--version"])) {
        Some(_) => Ok(()),
        None => Err(Failure::new(format!(
            "The checks need `cargo {command}`, which this Rust lacks: `rustup component add {component}` adds it."
        ))),
    }
}
