//! Other programs: starting them, finding them, and the environment they start in.

use crate::failure::{Explain, Failure, Outcome};
use std::env;
use std::ffi::{OsStr, OsString};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::thread;
use std::time::{Duration, Instant};

/// The folder of the workspace.
pub fn workspace() -> PathBuf {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    here.ancestors().nth(2).unwrap_or(here).to_path_buf()
}

/// The cargo that called this program, so that the checks use the person's own choice of toolchain.
pub fn cargo() -> Command {
    let mut command = Command::new(env::var_os("CARGO").unwrap_or_else(|| "cargo".into()));
    command.current_dir(workspace());
    forget_package(&mut command);
    command
}

/// Removes what cargo told this program about itself: to a cargo started from here it would be about another package.
pub fn forget_package(command: &mut Command) {
    for (name, _) in env::vars_os() {
        let text = name.to_string_lossy();
        if text.starts_with("CARGO_PKG_") || text.starts_with("CARGO_MANIFEST_") {
            command.env_remove(&name);
        }
    }
}

/// Runs a command to its end with its output shown.
pub fn run(command: &mut Command, advice: &str) -> Outcome<()> {
    let status = command.status().explain(|| not_started(command))?;
    if status.success() {
        Ok(())
    } else {
        Err(Failure::new(format!(
            "`{}` failed ({status}). {advice}",
            shown(command)
        )))
    }
}

/// Runs a command to its end, but stops it after `limit`.
pub fn run_within(command: &mut Command, limit: Duration, advice: &str) -> Outcome<()> {
    let mut child = command.spawn().explain(|| not_started(command))?;
    let begun = Instant::now();
    loop {
        let ended = child
            .try_wait()
            .explain(|| format!("`{}` could not be watched", shown(command)))?;
        match ended {
            Some(status) if status.success() => return Ok(()),
            Some(status) => {
                return Err(Failure::new(format!(
                    "`{}` failed ({status}). {advice}",
                    shown(command)
                )));
            }
            None if begun.elapsed() > limit => {
                // It may have ended by itself meanwhile; either way it is gone afterwards.
                let _ = child.kill();
                let _ = child.wait();
                return Err(Failure::new(format!(
                    "`{}` was stopped after {} s. {advice}",
                    shown(command),
                    limit.as_secs()
                )));
            }
            None => thread::sleep(Duration::from_millis(200)),
        }
    }
}

/// Runs a command and returns what it printed; its messages are shown.
pub fn read(command: &mut Command, advice: &str) -> Outcome<String> {
    let output = command
        .stderr(Stdio::inherit())
        .output()
        .explain(|| not_started(command))?;
    if !output.status.success() {
        return Err(Failure::new(format!(
            "`{}` failed ({}). {advice}",
            shown(command),
            output.status
        )));
    }
    String::from_utf8(output.stdout)
        .explain(|| format!("`{}` printed something that is not text", shown(command)))
}

/// What a command prints, or nothing when it cannot be run or fails. For questions whose "no" is an answer.
pub fn ask(command: &mut Command) -> Option<String> {
    let output = command.stderr(Stdio::null()).output().ok()?;
    output
        .status
        .success()
        .then(|| String::from_utf8_lossy(&output.stdout).into_owned())
}

/// The first program of this name on the search path.
pub fn on_path(name: &str) -> Option<PathBuf> {
    env::split_paths(&env::var_os("PATH")?)
        .map(|folder| folder.join(name))
        .find(|file| file.is_file())
}

/// The search path with these folders in front.
pub fn path_with(folders: &[&Path], rest: &OsStr) -> Outcome<OsString> {
    let all = folders
        .iter()
        .map(PathBuf::from)
        .chain(env::split_paths(rest));
    env::join_paths(all).explain(|| "The search path cannot be extended".to_owned())
}

/// The command as one would type it, without the folders of the program.
fn shown(command: &Command) -> String {
    let program = Path::new(command.get_program());
    let name = program.file_name().unwrap_or(program.as_os_str());
    let mut text = name.to_string_lossy().into_owned();
    for argument in command.get_args() {
        text.push(' ');
        text.push_str(&argument.to_string_lossy());
    }
    text
}

fn not_started(command: &Command) -> String {
    format!("`{}` could not be started", shown(command))
}
