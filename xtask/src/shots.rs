//! `cargo xtask shots`: pictures of every page, to look at.

use crate::{bundle, command, tools};
use anyhow::Result;

/// Builds the bundle and takes a picture of each page at two widths in both colour schemes.
pub fn run() -> Result<()> {
    tools::for_browser()?;
    bundle::build()?;
    command::run(command::cargo().args(["run", "--package", "kerbstead-tests", "--example", "shots"]))
}
