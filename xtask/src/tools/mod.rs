//! Installs what a chore needs and the machine lacks.

mod browser;
mod cargo_tools;
mod npm;
mod system;

pub use browser::{chromedriver, chromium};

use crate::command;
use anyhow::{Context, Result};

/// What formatting and linting need.
pub fn for_checks() -> Result<()> {
    rustup_part("component", "rustfmt", "rustfmt")?;
    rustup_part("component", "clippy", "clippy")?;
    wasm_target()
}

/// What the bundle needs.
pub fn for_bundle() -> Result<()> {
    wasm_target()?;
    rustup_part("component", "rust-src", "rust-src")?;
    cargo_tools::trunk()?;
    cargo_tools::wasm_bindgen()?;
    npm::packages()
}

/// What the browser tests need beyond the bundle.
pub fn for_browser() -> Result<()> {
    npm::packages()?;
    browser::install()
}

/// What the reference generators need: an interpreter that can make virtual environments.
pub fn for_reference() -> Result<()> {
    if command::ask("python3", &["-c", "import venv, ensurepip"]).is_some() {
        return Ok(());
    }
    system::install(&["python3", "python3-venv"], "Python 3 with its venv module")
}

fn wasm_target() -> Result<()> {
    rustup_part("target", "wasm32-unknown-unknown", "wasm32-unknown-unknown")
}

fn rustup_part(kind: &str, name: &str, listed_as: &str) -> Result<()> {
    let Some(installed) = command::ask("rustup", &[kind, "list", "--installed"]) else {
        return without_rustup(kind, name);
    };
    if installed.lines().any(|line| line.starts_with(listed_as)) {
        return Ok(());
    }
    println!("Installing the Rust {kind} {name}.");
    command::run(command::program("rustup").args([kind, "add", name]))
}

/// A distribution's Rust has no rustup; then the part must already be there.
fn without_rustup(kind: &str, name: &str) -> Result<()> {
    let present = match kind {
        "component" if name == "rust-src" => command::ask("rustc", &["--print", "sysroot"])
            .is_some_and(|folder| std::path::Path::new(&folder).join("lib/rustlib/src/rust/library").is_dir()),
        "component" => command::ask("cargo", &[if name == "rustfmt" { "fmt" } else { name }, "--version"]).is_some(),
        _ => command::ask("rustc", &["--print", "target-libdir", "--target", name])
            .is_some_and(|folder| std::path::Path::new(&folder).is_dir()),
    };
    present.then_some(()).with_context(|| {
        format!("the Rust {kind} {name} is missing and there is no rustup to add it: install rustup, then run `rustup {kind} add {name}`")
    })
}
