//! `cargo xtask measure`: how large and how fast the page is, beside an almost empty one of the same frame.

use crate::browser;
use crate::debian::Debian;
use crate::failure::{Explain, Outcome};
use crate::figures::{Bytes, Samples};
use crate::package;
use crate::process;
use crate::report;
use crate::toolchain;
use std::fs;
use std::process::Command;
use std::thread;

/// Packs both pages, measures them in turns and prints a table ready for the README.
pub fn run(rustup: bool, runs: u16) -> Outcome<()> {
    let mut debian = Debian::default();
    let compiler = toolchain::choose(rustup, &mut debian)?;
    let package = package::make(compiler)?;
    let folder = package::dist().join("measure");
    let empty = folder.join("empty.html");
    let bytes = Bytes {
        empty: package::make_empty(compiler, &empty)?,
        page: package.saved_bytes,
    };
    let found = browser::provide(&mut debian)?;
    report::step(
        "Compiling the browser tests",
        "about 1 min the first time",
        browser::compile_tests,
    )?;
    let load = load();
    let file = folder.join("samples.json");
    let about = format!("about {} min", (u32::from(runs) * 30).div_ceil(60));
    report::step("Measuring both pages in turns", &about, || {
        browser::collect(&found, &package.saved, &empty, runs, &file)
    })?;
    let text =
        fs::read_to_string(&file).explain(|| format!("{} cannot be read", file.display()))?;
    let samples = Samples::read(&text)?;
    let throttle = samples.throttle()?;
    println!("{}", samples.table(&bytes));
    println!(
        "Median of {runs} paired runs, from a file at 360x800; {}, {} cores, {}; load {load} when it began. Slowed 4 \
         times, the same work took {throttle:.1} times as long.",
        processor(),
        thread::available_parallelism().map_or(0, usize::from),
        samples.browser,
    );
    Ok(())
}

/// The processor's name where the system tells it.
fn processor() -> String {
    let linux = fs::read_to_string("/proc/cpuinfo").ok();
    let linux = linux.as_deref().and_then(model).map(str::to_owned);
    let other = || process::ask(Command::new("sysctl").args(["-n", "machdep.cpu.brand_string"]));
    let name = linux.or_else(other);
    name.map_or_else(
        || std::env::consts::ARCH.to_owned(),
        |name| name.trim().to_owned(),
    )
}

fn model(cpuinfo: &str) -> Option<&str> {
    let line = cpuinfo
        .lines()
        .find(|line| line.starts_with("model name"))?;
    line.split_once(':').map(|(_, name)| name.trim())
}

/// How many programs wanted to run in the last minute; what is above 1 disturbs.
fn load() -> String {
    let text = fs::read_to_string("/proc/loadavg").unwrap_or_default();
    text.split(' ')
        .next()
        .filter(|load| !load.is_empty())
        .map_or_else(|| "unknown".to_owned(), str::to_owned)
}

#[cfg(test)]
mod tests {
    use super::model;

    #[test]
    fn the_processor_is_named() {
        let text = "processor\t: 0\nmodel\t\t: 1\nmodel name\t: AMD EPYC\n\nmodel name\t: B\n";
        assert_eq!(model(text), Some("AMD EPYC"));
        assert_eq!(model("processor : 0"), None);
    }
}
