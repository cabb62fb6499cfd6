//! The tests in a real browser.

use crate::debian::Debian;
use crate::failure::{Explain, Failure, Outcome};
use crate::process;
use crate::report;
use crate::server;
use std::env;
use std::net::{IpAddr, Ipv4Addr};
use std::path::{Path, PathBuf};
use std::process::{ExitCode, Stdio};

/// A browser and the program that drives it.
pub struct Browser {
    chrome: PathBuf,
    driver: PathBuf,
}

/// The pages to test.
pub struct Pages<'a> {
    /// The saved page; none tests the site alone.
    pub saved: Option<&'a Path>,
    /// The folder of the site.
    pub site: &'a Path,
}

/// Finds Chromium and its driver, or installs them on Debian. The variables CHROME and CHROMEDRIVER go first.
pub fn provide(debian: &mut Debian) -> Outcome<Browser> {
    if let Some(browser) = find() {
        return Ok(browser);
    }
    if Debian::is_here() {
        debian.provide(
            &["chromium", "chromium-driver"],
            "The browser tests",
            "about 20 s",
        )?;
    }
    find().ok_or_else(|| {
        Failure::new(
            "The browser tests need Chromium or Chrome and the chromedriver of the same version: install them, or name \
             both programs in the variables CHROME and CHROMEDRIVER.",
        )
    })
}

fn find() -> Option<Browser> {
    let named = |variable: &str| {
        env::var_os(variable)
            .map(PathBuf::from)
            .filter(|file| file.is_file())
    };
    let chrome = named("CHROME").or_else(|| {
        ["chromium", "google-chrome", "chromium-browser"]
            .iter()
            .find_map(|name| process::on_path(name))
    })?;
    let driver = named("CHROMEDRIVER").or_else(|| process::on_path("chromedriver"))?;
    Some(Browser { chrome, driver })
}

/// Compiles the browser tests before the tests are run, so that a mistake in them shows early.
pub fn compile_tests() -> Outcome<()> {
    process::run(
        process::cargo().args(TEST).arg("--no-run"),
        "The compiler's messages stand above.",
    )
}

/// The whole workspace is named because then most of what the other tests compiled serves again.
const TEST: [&str; 7] = [
    "test",
    "--locked",
    "--workspace",
    "--features",
    "outside/browser",
    "--test",
    "browser",
];

/// Starts both pages as often as wanted, types into them, and writes what was seen as JSON into `samples`.
pub fn collect(
    browser: &Browser,
    page: &Path,
    empty: &Path,
    runs: u16,
    samples: &Path,
) -> Outcome<()> {
    process::run(
        process::cargo()
            .args(TEST)
            .args([
                "measure::measure",
                "--",
                "--exact",
                "--ignored",
                "--nocapture",
            ])
            .env("IONWRIGHT_PAGE", page)
            .env("IONWRIGHT_EMPTY", empty)
            .env("IONWRIGHT_RUNS", runs.to_string())
            .env("IONWRIGHT_SAMPLES", samples)
            .env("CHROME", &browser.chrome)
            .env("CHROMEDRIVER", &browser.driver)
            .stdout(Stdio::null()),
        "What was refused stands above.",
    )
}

/// Runs the browser tests and ends as they end; nothing is said after their result.
pub fn test(browser: &Browser, pages: &Pages) -> Outcome<ExitCode> {
    let listener = server::listen(IpAddr::V4(Ipv4Addr::LOCALHOST), 0)?;
    let address = server::start(listener, pages.site)?;
    let mut command = process::cargo();
    command
        .args(TEST)
        .env("IONWRIGHT_SITE", format!("http://{address}/"))
        .env("CHROME", &browser.chrome)
        .env("CHROMEDRIVER", &browser.driver);
    match pages.saved {
        Some(saved) => command
            .env("IONWRIGHT_PAGE", saved)
            .env_remove("IONWRIGHT_ONLY"),
        None => command
            .env("IONWRIGHT_ONLY", "site")
            .env_remove("IONWRIGHT_PAGE"),
    };
    report::announce("Testing the pages in the browser", "about 1 min");
    let status = command
        .status()
        .explain(|| "The browser tests could not be started".to_owned())?;
    Ok(if status.success() {
        ExitCode::SUCCESS
    } else {
        ExitCode::FAILURE
    })
}
