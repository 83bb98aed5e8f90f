//! Where things lie in the checkout, and which versions it asks for.

use anyhow::{Context, Result};
use std::path::{Path, PathBuf};

/// The checkout's top folder.
///
/// Cargo says at run time whose manifest it runs; that wins over the compiled-in path, which may belong to
/// another checkout when two share a target folder.
pub fn root() -> PathBuf {
    let manifest =
        std::env::var_os("CARGO_MANIFEST_DIR").map_or_else(|| PathBuf::from(env!("CARGO_MANIFEST_DIR")), PathBuf::from);
    manifest.parent().map_or(manifest.clone(), Path::to_path_buf)
}

/// The finished bundle.
pub fn dist() -> PathBuf {
    root().join("dist")
}

/// Tools installed for this checkout only; git ignores it.
pub fn tools() -> PathBuf {
    root().join(".tools")
}

/// The version of a package in `Cargo.lock`.
pub fn locked_version(package: &str) -> Result<String> {
    let path = root().join("Cargo.lock");
    let lock = std::fs::read_to_string(&path).with_context(|| format!("reading {}", path.display()))?;
    version_in_lock(&lock, package).with_context(|| format!("Cargo.lock has no package {package}"))
}

fn version_in_lock(lock: &str, package: &str) -> Option<String> {
    let name = format!("name = \"{package}\"");
    let mut lines = lock.lines().skip_while(|line| *line != name);
    lines.next()?;
    quoted_after(lines.next()?, "version = ").map(str::to_owned)
}

/// The version pinned for an npm package in `xtask/npm/package.json`.
pub fn pinned_npm_version(package: &str) -> Result<String> {
    let path = root().join("xtask/npm/package.json");
    let text = std::fs::read_to_string(&path).with_context(|| format!("reading {}", path.display()))?;
    json_string(&text, package).with_context(|| format!("{} pins no {package}", path.display())).map(str::to_owned)
}

/// The first string value of `key` in a JSON text that has one member a line, as npm writes it.
pub fn json_string<'a>(text: &'a str, key: &str) -> Option<&'a str> {
    let label = format!("\"{key}\": ");
    text.lines().find_map(|line| quoted_after(line.trim(), &label))
}

fn quoted_after<'a>(line: &'a str, label: &str) -> Option<&'a str> {
    line.strip_prefix(label)?.strip_prefix('"')?.split('"').next()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_locked_version_is_found_by_whole_name() {
        let lock = "[[package]]\nname = \"some-thing\"\nversion = \"1.0.0\"\n\n[[package]]\nname = \"some\"\nversion = \"2.3.4\"\n";
        assert_eq!(version_in_lock(lock, "some").as_deref(), Some("2.3.4"));
        assert_eq!(version_in_lock(lock, "thing"), None);
    }

    #[test]
    fn a_pin_is_read_from_npm_s_layout() {
        let text = "{\n  \"name\": \"x\",\n  \"dependencies\": {\n    \"axe-core\": \"4.1.2\"\n  }\n}\n";
        assert_eq!(json_string(text, "axe-core"), Some("4.1.2"));
        assert_eq!(json_string(text, "other"), None);
    }
}
