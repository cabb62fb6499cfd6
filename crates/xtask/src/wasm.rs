//! From Rust to the two files a browser takes: the program and the script that connects it.

use crate::artifact;
use crate::failure::{Explain, Failure, Outcome};
use crate::process;
use crate::report;
use crate::toolchain::{Compiler, TARGET};
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Stdio;
use wasm_bindgen_cli_support::Bindgen;

/// A compiled page.
pub struct Program {
    /// The WebAssembly module.
    pub wasm: Vec<u8>,
    /// The script that connects it to the browser; defines `wasm_bindgen`.
    pub glue: String,
}

/// Compiles a program of `web` and makes its connecting script.
pub fn build(compiler: Compiler, name: &str) -> Outcome<Program> {
    let about = match compiler {
        Compiler::Calling => "about 1 min the first time, then seconds",
        Compiler::Debian => {
            "about 2 min the first time, the standard library included, then seconds"
        }
    };
    let compiled = report::step(&format!("Compiling {name} to WebAssembly"), about, || {
        compile(compiler, name)
    })?;
    report::step("Connecting it to the browser", "1 s", || connect(&compiled))
}

fn compile(compiler: Compiler, name: &str) -> Outcome<PathBuf> {
    let mut command = compiler.cargo()?;
    command
        .args([
            "build",
            "--locked",
            "--release",
            "--target",
            TARGET,
            "-p",
            "web",
            "--bin",
            name,
        ])
        // Where the file lies depends on the person's settings; cargo says it.
        .arg("--message-format=json-render-diagnostics")
        .stdin(Stdio::null());
    let messages = process::read(&mut command, "The compiler's messages stand above.")?;
    artifact::file(&messages, name, |file| {
        file.extension().is_some_and(|end| end == "wasm")
    })
    .ok_or_else(|| Failure::new(format!("The compiler ended well but named no {name}.wasm.")))
}

fn connect(compiled: &Path) -> Outcome<Program> {
    let folder = compiled.with_extension("connected");
    let failed = |cause: &dyn std::fmt::Display| {
        Failure::new(format!("The connecting script cannot be made: {cause}"))
    };
    let mut bindgen = Bindgen::new();
    bindgen
        .input_path(compiled)
        .no_modules(true)
        .map_err(|cause| failed(&format!("{cause:#}")))?
        .typescript(false)
        .out_name("page")
        // The names are a third of the file and nobody reads them there.
        .remove_name_section(true)
        .remove_producers_section(true)
        .generate(&folder)
        .map_err(|cause| failed(&format!("{cause:#}")))?;
    let wasm = folder.join("page_bg.wasm");
    let glue = folder.join("page.js");
    Ok(Program {
        wasm: fs::read(&wasm).explain(|| format!("{} cannot be read", wasm.display()))?,
        glue: fs::read_to_string(&glue).explain(|| format!("{} cannot be read", glue.display()))?,
    })
}
