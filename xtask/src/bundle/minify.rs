//! Scripts without what only people read.

use crate::command;
use anyhow::{Context, Result};
use std::path::Path;

/// Makes every script of the bundle as short as it can be, in place.
pub fn scripts(dist: &Path) -> Result<()> {
    for entry in std::fs::read_dir(dist).with_context(|| format!("reading {}", dist.display()))? {
        let path = entry?.path();
        if path.extension().is_some_and(|extension| extension == "js") {
            script(&path)?;
        }
    }
    Ok(())
}

/// Makes a script as short as it can be, in place.
pub fn script(path: &Path) -> Result<()> {
    let mut terser = command::program("terser");
    terser.arg(path).args(["--module", "--compress", "passes=2", "--mangle", "--output"]).arg(path);
    command::run(&mut terser)
}
