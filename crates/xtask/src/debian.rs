//! Packages of a Debian system.

use crate::failure::{Failure, Outcome};
use crate::process;
use crate::report;
use std::fs;
use std::process::Command;

/// Installs packages; asks for fresh lists once.
#[derive(Default)]
pub struct Debian {
    lists_are_fresh: bool,
}

impl Debian {
    /// Whether this machine runs Debian itself; relatives do not carry all the packages.
    pub fn is_here() -> bool {
        fs::read_to_string("/etc/os-release")
            .is_ok_and(|text| text.lines().any(|line| line.trim() == "ID=debian"))
    }

    /// Those of the packages that are not installed.
    pub fn missing(packages: &[&'static str]) -> Vec<&'static str> {
        packages
            .iter()
            .copied()
            .filter(|package| {
                let state = process::ask(Command::new("dpkg-query").args([
                    "-W",
                    "-f",
                    "${db:Status-Status}",
                    package,
                ]));
                state.as_deref() != Some("installed")
            })
            .collect()
    }

    /// Installs what is missing of the packages, or says which command does.
    ///
    /// `why` names what they are for, `about` how long it takes.
    pub fn provide(&mut self, packages: &[&'static str], why: &str, about: &str) -> Outcome<()> {
        let missing = Self::missing(packages);
        if missing.is_empty() {
            return Ok(());
        }
        let names = missing.join(" ");
        let by_hand = format!("apt-get install --no-install-recommends {names}");
        if !is_root() {
            return Err(Failure::new(format!(
                "{why} needs {names}: run `sudo {by_hand}`, then try again."
            )));
        }
        if !self.lists_are_fresh {
            report::step("Refreshing the package lists", "a few seconds", || {
                process::run(
                    apt().args(["update", "-q"]),
                    "Check the network and the package sources.",
                )
            })?;
            self.lists_are_fresh = true;
        }
        report::step(&format!("Installing {names}: {why}"), about, || {
            process::run(
                apt()
                    .args(["install", "-y", "-q", "--no-install-recommends"])
                    .args(&missing),
                &format!("Run `{by_hand}` by hand to see why."),
            )
        })
    }
}

fn apt() -> Command {
    let mut command = Command::new("apt-get");
    // A question would wait for ever where nobody sits at the keyboard.
    command
        .env("DEBIAN_FRONTEND", "noninteractive")
        .stdin(std::process::Stdio::null());
    command
}

fn is_root() -> bool {
    process::ask(Command::new("id").arg("-u")).is_some_and(|text| text.trim() == "0")
}
