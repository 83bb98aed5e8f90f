//! Chromium and its driver. `CHROME` and `CHROMEDRIVER` name others than those on the path.

use super::system;
use crate::command;
use anyhow::{Context, Result};
use std::path::PathBuf;

/// The browser.
pub fn chromium() -> Result<PathBuf> {
    named_or_found("CHROME", &["chromium", "chromium-browser", "google-chrome"])
        .context("no Chromium: run `cargo xtask test` to have it installed, or set CHROME to its path")
}

/// The program that drives the browser.
pub fn chromedriver() -> Result<PathBuf> {
    named_or_found("CHROMEDRIVER", &["chromedriver"])
        .context("no chromedriver: run `cargo xtask test` to have it installed, or set CHROMEDRIVER to its path")
}

/// Installs both when one is missing. A font comes along, for without any the pages show boxes.
pub fn install() -> Result<()> {
    if chromium().is_ok() && chromedriver().is_ok() {
        return Ok(());
    }
    system::install(&["chromium", "chromium-driver", "fonts-dejavu-core"], "Chromium with its driver")
}

fn named_or_found(variable: &str, names: &[&str]) -> Option<PathBuf> {
    match std::env::var_os(variable) {
        Some(path) => Some(PathBuf::from(path)),
        None => names.iter().find_map(|name| command::find(name)),
    }
}
