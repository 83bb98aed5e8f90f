//! Child processes: found on the tools' path, shown before they run, named when they fail.

use crate::workspace;
use anyhow::{Context, Result, bail};
use std::ffi::OsString;
use std::path::{Path, PathBuf};
use std::process::Command;

/// A command in the checkout's top folder that finds the checkout's own tools first.
pub fn program(name: impl AsRef<std::ffi::OsStr>) -> Command {
    let mut command = Command::new(name);
    command.current_dir(workspace::root()).env("PATH", search_path());
    // Cargo set these for xtask itself; a child cargo must not take them for its own package's.
    for (key, _) in std::env::vars_os() {
        if key.to_string_lossy().starts_with("CARGO_PKG_") || key == "CARGO_MANIFEST_DIR" {
            command.env_remove(key);
        }
    }
    command
}

/// The cargo that runs xtask.
pub fn cargo() -> Command {
    program(std::env::var_os("CARGO").unwrap_or_else(|| OsString::from("cargo")))
}

/// Runs a command with its output passed through.
pub fn run(command: &mut Command) -> Result<()> {
    let shown = show(command);
    println!("$ {shown}");
    let status = command.status().with_context(|| format!("could not start `{shown}`"))?;
    if status.success() {
        return Ok(());
    }
    bail!("`{shown}` failed ({status})")
}

/// What a command writes to its standard output; its messages still reach the terminal.
pub fn capture(command: &mut Command) -> Result<Vec<u8>> {
    let shown = show(command);
    println!("$ {shown}");
    let output = command
        .stderr(std::process::Stdio::inherit())
        .output()
        .with_context(|| format!("could not start `{shown}`"))?;
    if output.status.success() {
        return Ok(output.stdout);
    }
    bail!("`{shown}` failed ({})", output.status)
}

/// The output of a quiet question such as `trunk --version`; nothing when it cannot be asked.
pub fn ask(name: &str, args: &[&str]) -> Option<String> {
    let output = program(name).args(args).output().ok()?;
    output.status.success().then(|| String::from_utf8_lossy(&output.stdout).trim().to_owned())
}

/// Where a program lies, on the tools' path or the machine's.
pub fn find(name: &str) -> Option<PathBuf> {
    std::env::split_paths(&search_path()).map(|folder| folder.join(name)).find(|path| path.is_file())
}

fn search_path() -> OsString {
    let tools = workspace::tools();
    let mut folders = vec![tools.join("bin"), tools.join("node_modules/.bin")];
    let machine = std::env::var_os("PATH").unwrap_or_default();
    folders.extend(std::env::split_paths(&machine));
    std::env::join_paths(folders).unwrap_or(machine)
}

fn show(command: &Command) -> String {
    let name = Path::new(command.get_program()).file_name().unwrap_or(command.get_program());
    let words = std::iter::once(name).chain(command.get_args());
    words.map(|word| word.to_string_lossy()).collect::<Vec<_>>().join(" ")
}
