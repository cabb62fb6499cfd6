//! Makes `dist/`: the saved page and the site.

use crate::artifact;
use crate::failure::{Explain, Failure, Outcome};
use crate::packing::as_file;
use crate::pages::{self, Parts};
use crate::process;
use crate::report;
use crate::site;
use crate::skeleton::Skeleton;
use crate::squeeze::squeeze;
use crate::toolchain::Compiler;
use crate::wasm;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

/// The saved page may have this many bytes. It travels by mail and over a phone's network.
const BUDGET_BYTES: usize = 450_000;

/// Where index.html says that it has no icon; Trunk's page stays so.
const NO_ICON: &str = "data:,";

/// What was written.
pub struct Package {
    /// The saved page.
    pub saved: PathBuf,
    /// The folder of the site.
    pub site: PathBuf,
    /// Bytes of the saved page.
    pub saved_bytes: usize,
}

impl Package {
    /// Fails when the saved page is too large.
    pub fn check_budget(&self) -> Outcome<()> {
        if self.saved_bytes > BUDGET_BYTES {
            return Err(Failure::new(format!(
                "{} has {} bytes, more than the {BUDGET_BYTES} it may have: look for a new dependency, or for data \
                 that could be computed.",
                self.saved.display(),
                self.saved_bytes
            )));
        }
        Ok(())
    }
}

/// Where packages go.
pub fn dist() -> PathBuf {
    process::workspace().join("dist")
}

/// Builds the page and writes it in both forms. Nothing is written before all of it is made.
pub fn make(compiler: Compiler) -> Outcome<Package> {
    let web = process::workspace().join("web");
    let index = read(&web.join("index.html"))?;
    let icon = site::in_an_address(&read(&web.join("site/icon.svg"))?);
    let skeleton = Skeleton::read(&index.replace(NO_ICON, &icon))?;
    let style = styles(&web, &skeleton.styles)?;
    let later = styles(&web, &skeleton.later)?;
    let mut others = Vec::new();
    for name in site::AS_THEY_ARE {
        let file = web.join("site").join(name);
        let bytes = fs::read(&file).explain(|| format!("{} cannot be read", file.display()))?;
        others.push((name, bytes));
    }
    let program = wasm::build(compiler, "page")?;
    let glue = squeeze(&[&program.glue, "\n", include_str!("focus.js")].concat());
    let still = still(&web)?;
    report::step("Writing dist/ionwright.html and dist/site", "1 s", || {
        let parts = Parts {
            skeleton: &skeleton,
            style: &style,
            later: &later,
            still: still.as_deref(),
            glue: &glue,
            wasm: &program.wasm,
            records: "null",
        };
        let pages = pages::make(&parts)?;
        let (saved, site) = (as_file(&pages.saved), as_file(&pages.site));
        let package = Package {
            saved: dist().join("ionwright.html"),
            site: dist().join("site"),
            saved_bytes: saved.len(),
        };
        write(&package.saved, &saved)?;
        for (name, bytes) in &site::files(site, others) {
            write(&package.site.join(name), bytes)?;
            report::note(&format!("dist/site/{name:<21} {:>9} bytes", bytes.len()));
        }
        report::note(&format!(
            "dist/ionwright.html             {:>9} bytes of at most {BUDGET_BYTES}",
            saved.len()
        ));
        report::note(&pages.shares.line());
        Ok(package)
    })
}

/// Writes a page of the same frame with the almost empty program, neither styled nor ever shipped. Gives its bytes.
pub fn make_empty(compiler: Compiler, file: &Path) -> Outcome<usize> {
    let skeleton = Skeleton::read(&read(&process::workspace().join("web/index.html"))?)?;
    let program = wasm::build(compiler, "empty")?;
    let pages = pages::make(&Parts {
        skeleton: &skeleton,
        style: "",
        later: "",
        still: None,
        glue: &squeeze(&program.glue),
        wasm: &program.wasm,
        records: "null",
    })?;
    write(file, pages.saved.as_bytes())?;
    Ok(pages.saved.len())
}

fn styles(web: &Path, files: &[String]) -> Outcome<String> {
    let mut style = String::new();
    for href in files {
        style.push_str(read(&web.join(href))?.trim());
        style.push('\n');
    }
    Ok(squeeze(&style))
}

/// What a native program prints as the page's content before the program runs; none while there is no such program.
fn still(web: &Path) -> Outcome<Option<String>> {
    if !web.join("examples/still.rs").is_file() {
        report::note(
            "There is no web/examples/still.rs; the sentence of index.html stands until the program starts.",
        );
        return Ok(None);
    }
    report::step(
        "Printing the still page",
        "about 1 min the first time, then seconds",
        || {
            // Made as a part of the whole workspace: alone, other features would be asked for and much compiled again.
            let messages = process::read(
                process::cargo()
                    .args(["build", "--locked", "--workspace", "--example", "still"])
                    .arg("--message-format=json-render-diagnostics"),
                "The compiler's messages stand above.",
            )?;
            let program = artifact::program(&messages, "still").ok_or_else(|| {
                Failure::new(
                    "The compiler ended well but made no program of web/examples/still.rs.",
                )
            })?;
            let text = process::read(&mut Command::new(program), "Its messages stand above.")?;
            if text.trim().is_empty() {
                return Err(Failure::new("web/examples/still.rs printed nothing."));
            }
            Ok(Some(text.trim().to_owned()))
        },
    )
}

fn read(file: &Path) -> Outcome<String> {
    fs::read_to_string(file).explain(|| format!("{} cannot be read", file.display()))
}

/// Replaces the file whole, so that a server never hands out half of it.
fn write(file: &Path, bytes: &[u8]) -> Outcome<()> {
    let folder = file.parent().unwrap_or(file);
    let fresh = file.with_extension("new");
    fs::create_dir_all(folder)
        .and_then(|()| fs::write(&fresh, bytes))
        .and_then(|()| fs::rename(&fresh, file))
        .explain(|| format!("{} cannot be written", file.display()))
}
