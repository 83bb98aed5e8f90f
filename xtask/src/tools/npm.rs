//! Tools from npm, in `.tools/node_modules`: wasm-opt (of the package binaryen), terser and axe-core.

use super::system;
use crate::{command, workspace};
use anyhow::{Context, Result};

const PACKAGES: [&str; 3] = ["axe-core", "binaryen", "terser"];

/// Installs the pinned packages when one is missing or of another version.
pub fn packages() -> Result<()> {
    node()?;
    for package in PACKAGES {
        if installed(package).as_ref() != Some(&workspace::pinned_npm_version(package)?) {
            return install();
        }
    }
    Ok(())
}

/// wasm-opt runs on Node, and npm brings it.
fn node() -> Result<()> {
    let present = |tool| command::ask(tool, &["--version"]).is_some();
    if present("node") && present("npm") {
        return Ok(());
    }
    system::install(&["nodejs", "npm"], "Node.js 18 or newer with npm")
}

fn installed(package: &str) -> Option<String> {
    let manifest = workspace::tools().join("node_modules").join(package).join("package.json");
    let text = std::fs::read_to_string(manifest).ok()?;
    // The package's own version stands before any script of that name.
    workspace::json_string(&text, "version").map(str::to_owned)
}

fn install() -> Result<()> {
    println!("Installing wasm-opt, terser and axe-core into .tools/.");
    let tools = workspace::tools();
    std::fs::create_dir_all(&tools).with_context(|| format!("making {}", tools.display()))?;
    for file in ["package.json", "package-lock.json"] {
        let from = workspace::root().join("xtask/npm").join(file);
        std::fs::copy(&from, tools.join(file)).with_context(|| format!("copying {}", from.display()))?;
    }
    command::run(command::program("npm").args(["ci", "--no-audit", "--no-fund", "--prefix"]).arg(&tools))
}
