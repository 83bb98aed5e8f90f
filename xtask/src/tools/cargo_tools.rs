//! Tools built with cargo into `.tools/bin`.

use crate::{command, workspace};
use anyhow::Result;

/// Newer ones ask for a newer rustc than this workspace does.
const TRUNK: &str = "0.21.14";

/// Trunk, which makes the bundle.
pub fn trunk() -> Result<()> {
    if has("trunk", TRUNK) {
        return Ok(());
    }
    install("trunk", TRUNK, &["--locked", "--no-default-features", "--features", "rustls"])
}

/// The command-line half of wasm-bindgen, of exactly the version of the library half.
pub fn wasm_bindgen() -> Result<()> {
    let version = workspace::locked_version("wasm-bindgen")?;
    if has("wasm-bindgen", &version) {
        return Ok(());
    }
    // Not --locked: the lock file that 0.2.130 ships does not resolve.
    install("wasm-bindgen-cli", &version, &[])
}

fn has(tool: &str, version: &str) -> bool {
    command::ask(tool, &["--version"]).is_some_and(|answer| is_version(&answer, version))
}

/// `wasm-bindgen 0.2.130` or `trunk 0.21.14`, perhaps with a commit behind.
fn is_version(answer: &str, version: &str) -> bool {
    answer.split_whitespace().nth(1) == Some(version)
}

fn install(package: &str, version: &str, extra: &[&str]) -> Result<()> {
    println!("Building {package} {version} into .tools/; on two cores this takes some five minutes, once.");
    let mut cargo = command::cargo();
    cargo.args(["install", package, "--version", version, "--force", "--root"]).arg(workspace::tools()).args(extra);
    // The packages ask for the slowest, smallest build; for tools that run a second each, a quick build is better.
    cargo
        .env("CARGO_PROFILE_RELEASE_LTO", "off")
        .env("CARGO_PROFILE_RELEASE_CODEGEN_UNITS", "16")
        .env("CARGO_PROFILE_RELEASE_OPT_LEVEL", "1")
        .env("CARGO_TARGET_DIR", workspace::tools().join("build"));
    command::run(&mut cargo)?;
    // Several hundred megabytes that nothing reads again; failing to remove them harms nothing.
    let _ = std::fs::remove_dir_all(workspace::tools().join("build"));
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::is_version;

    #[test]
    fn only_the_exact_version_counts() {
        assert!(is_version("wasm-bindgen 0.2.130", "0.2.130"));
        assert!(is_version("trunk 0.21.14 (abc 2025-01-01)", "0.21.14"));
        assert!(!is_version("wasm-bindgen 0.2.1300", "0.2.130"));
        assert!(!is_version("", "0.2.130"));
    }
}
