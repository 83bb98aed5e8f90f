//! From the path of a request to a file inside the served folder, and never to one outside.

use anyhow::{Context, Result};
use percent_encoding::percent_decode_str;
use std::path::{Path, PathBuf};

/// The served folder and the path that it is served under.
pub struct Files {
    folder: PathBuf,
    prefix: String,
}

/// A file to send.
#[derive(Debug)]
pub struct File {
    /// Where it lies.
    pub path: PathBuf,
    /// Its MIME type.
    pub content_type: &'static str,
    /// Whether gzip makes it smaller.
    pub compressible: bool,
}

impl Files {
    /// The files of `folder`, under `prefix`.
    pub fn new(folder: &Path, prefix: &str) -> Result<Self> {
        let folder = folder.canonicalize().with_context(|| format!("there is no folder {}", folder.display()))?;
        Ok(Self { folder, prefix: prefix.to_owned() })
    }

    /// The file that a request asks for.
    pub fn find(&self, url: &str) -> Option<File> {
        let path = url.split(['?', '#']).next()?.strip_prefix(&self.prefix)?;
        let decoded = percent_decode_str(path).decode_utf8().ok()?;
        let mut file = self.folder.clone();
        for part in decoded.split('/').filter(|part| !part.is_empty()) {
            file.push(plain_name(part)?);
        }
        if file.is_dir() {
            file.push("index.html");
        }
        // A link may still lead out of the folder.
        let real = file.canonicalize().ok()?;
        (real.starts_with(&self.folder) && real.is_file()).then(|| describe(real))
    }
}

fn plain_name(part: &str) -> Option<&str> {
    let plain = part != "." && part != ".." && !part.contains(['\\', '\0', ':']);
    plain.then_some(part)
}

fn describe(path: PathBuf) -> File {
    let extension = path.extension().and_then(std::ffi::OsStr::to_str).unwrap_or_default();
    let (content_type, compressible) = match extension {
        "html" => ("text/html; charset=utf-8", true),
        "js" | "mjs" => ("text/javascript; charset=utf-8", true),
        "css" => ("text/css; charset=utf-8", true),
        "wasm" => ("application/wasm", true),
        "json" | "map" => ("application/json", true),
        "webmanifest" => ("application/manifest+json", true),
        "svg" => ("image/svg+xml", true),
        "txt" | "ts" | "ftl" => ("text/plain; charset=utf-8", true),
        "png" => ("image/png", false),
        "ico" => ("image/x-icon", false),
        "woff2" => ("font/woff2", false),
        _ => ("application/octet-stream", false),
    };
    File { path, content_type, compressible }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// This crate's own folder, served under a sub-path.
    fn files() -> Files {
        Files::new(Path::new(env!("CARGO_MANIFEST_DIR")), "/some/where/").unwrap()
    }

    #[test]
    fn a_file_is_found_under_the_prefix_only() {
        let file = files().find("/some/where/npm/package.json?x=1").unwrap();
        assert_eq!(file.content_type, "application/json");
        assert!(files().find("/npm/package.json").is_none());
        assert!(files().find("/some/where").is_none());
    }

    #[test]
    fn a_folder_without_a_start_page_shows_nothing() {
        assert!(files().find("/some/where/").is_none());
        assert!(files().find("/some/where/npm").is_none());
    }

    #[test]
    fn no_spelling_leads_out_of_the_folder() {
        for path in [
            "../Cargo.toml",
            "%2e%2e/Cargo.toml",
            "..%2fCargo.toml",
            "%2e%2e%2fCargo.toml",
            "npm/../../Cargo.toml",
            "..%5cCargo.toml",
            "/etc/passwd",
            "%2fetc/passwd",
            "npm/%00",
            "%ff",
        ] {
            assert!(files().find(&format!("/some/where/{path}")).is_none(), "{path}");
        }
    }
}
