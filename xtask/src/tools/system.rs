//! Packages of the operating system, installed only where that needs no question: as root on Debian's kin.

use crate::command;
use anyhow::{Result, bail};

/// Installs Debian packages, or says exactly what to install.
pub fn install(packages: &[&str], what: &str) -> Result<()> {
    let line = format!("apt-get update && apt-get install -y --no-install-recommends {}", packages.join(" "));
    if command::find("apt-get").is_none() {
        bail!("{what} is missing. Install it with your system's package manager (on Debian: `{line}`).");
    }
    if command::ask("id", &["-u"]).as_deref() != Some("0") {
        bail!("{what} is missing. Run as root: `{line}`");
    }
    println!("Installing {what}; this can take a minute or two.");
    let apt = || {
        let mut apt = command::program("apt-get");
        apt.env("DEBIAN_FRONTEND", "noninteractive");
        apt
    };
    command::run(apt().args(["-q", "update"]))?;
    command::run(apt().args(["-q", "install", "-y", "--no-install-recommends"]).args(packages))
}
