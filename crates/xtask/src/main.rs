//! Set-up, build, packaging and checks: `cargo xtask serve`, `package`, `test` and `measure`.

mod arguments;
mod artifact;
mod browser;
mod checks;
mod debian;
mod failure;
mod figures;
mod lockfile;
mod markup;
mod measure;
mod package;
mod packing;
mod pages;
mod policy;
mod process;
mod report;
mod serve;
mod server;
mod site;
mod skeleton;
mod squeeze;
mod toolchain;
mod trunk;
mod wasm;
mod watch;

use arguments::Task;
use failure::Outcome;
use std::process::ExitCode;

fn main() -> ExitCode {
    match arguments::read(std::env::args().skip(1)).and_then(perform) {
        Ok(code) => code,
        Err(failure) => {
            eprintln!("{failure}");
            ExitCode::FAILURE
        }
    }
}

fn perform(task: Task) -> Outcome<ExitCode> {
    match task {
        Task::Help => println!("{}", arguments::HELP),
        Task::Serve(wishes) => serve::serve(&wishes)?,
        Task::Package { rustup } => {
            let compiler = toolchain::choose(rustup, &mut debian::Debian::default())?;
            package::make(compiler)?.check_budget()?;
        }
        Task::Test { rustup } => return checks::run(rustup),
        Task::Measure { rustup, runs } => measure::run(rustup, runs)?,
        Task::TestTrunk { rustup } => return trunk::test(rustup),
    }
    Ok(ExitCode::SUCCESS)
}
