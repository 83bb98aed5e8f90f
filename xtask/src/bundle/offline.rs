//! What the service worker has to know: the files of a version, each by the hash of its content.

use crate::hash;
use anyhow::{Context, Result, bail};
use base64::Engine as _;
use base64::prelude::BASE64_STANDARD;
use sha2::{Digest as _, Sha256};
use std::path::Path;

/// The service worker, which is fetched anew at every visit and so is not among the files that it keeps.
pub const WORKER: &str = "service-worker.js";

/// The kinds of files that a page loads by itself. Types and the schema are for others.
const KEPT: [&str; 6] = ["css", "html", "js", "svg", "wasm", "webmanifest"];

/// The icon that some browsers load along with the manifest. The others are loaded only by whoever installs the page.
const ICON: &str = "icons/icon-192.png";

/// How the text that is put in front of the service worker begins.
const STAMP: &str = "const VERSION=";

/// Writes the version into `index.html`, and the version and the list of files into the service worker.
///
/// May be done again after a change to the bundle.
pub fn write(dist: &Path) -> Result<()> {
    let worker = read(dist, WORKER)?;
    // A stamped text has its stamp in the first line.
    let worker = if worker.starts_with(STAMP) { worker.split_once('\n').map_or("", |parts| parts.1) } else { &worker };
    let page = stamp_page(&read(dist, "index.html")?, "0")?;
    put(dist, "index.html", &page)?;
    let version = version(dist, worker)?;
    put(dist, "index.html", &stamp_page(&page, &version)?)?;
    let files = list(dist)?;
    put(dist, WORKER, &format!("{STAMP}\"{version}\",FILES=[{files}];\n{worker}"))
}

/// The names of the files that the service worker keeps, in order.
pub fn kept(dist: &Path) -> Result<Vec<String>> {
    let mut names = Vec::new();
    for entry in std::fs::read_dir(dist).with_context(|| format!("reading {}", dist.display()))? {
        let name = entry?.file_name().to_string_lossy().into_owned();
        let is_kept = Path::new(&name).extension().is_some_and(|kind| KEPT.iter().any(|kept| kind == *kept));
        if is_kept && name != WORKER {
            names.push(name);
        }
    }
    names.extend(dist.join(ICON).is_file().then(|| ICON.to_owned()));
    names.sort();
    Ok(names)
}

/// Changes with any of the files and with the service worker itself.
fn version(dist: &Path, worker: &str) -> Result<String> {
    let mut all = worker.as_bytes().to_vec();
    for name in kept(dist)? {
        all.extend(name.as_bytes());
        all.extend(Sha256::digest(bytes(dist, &name)?));
    }
    Ok(hash::short(&all))
}

/// The files as members of a JavaScript array.
fn list(dist: &Path) -> Result<String> {
    let mut members = Vec::new();
    for name in kept(dist)? {
        let hash = BASE64_STANDARD.encode(Sha256::digest(bytes(dist, &name)?));
        // Some hosts send the start page under its own name elsewhere; every host sends it for the folder.
        let path = if name == "index.html" { "./" } else { &name };
        members.push(format!("[\"{path}\",\"sha256-{hash}\"]"));
    }
    Ok(members.join(","))
}

/// The page with another version in its element `<meta name="version">`.
fn stamp_page(page: &str, version: &str) -> Result<String> {
    let name = page.find("name=version").or_else(|| page.find("name=\"version\""));
    let Some((before, rest)) = name.map(|at| page.split_at(at)) else { bail!("index.html has no <meta name=version>") };
    let start = before.rfind('<').context("the version in index.html is in no element")?;
    let end = rest.find('>').context("the element of the version in index.html has no end")?;
    Ok(format!("{}<meta name=version content={version}>{}", &before[..start], &rest[end + 1..]))
}

fn bytes(dist: &Path, name: &str) -> Result<Vec<u8>> {
    std::fs::read(dist.join(name)).with_context(|| format!("reading {name}"))
}

fn read(dist: &Path, name: &str) -> Result<String> {
    std::fs::read_to_string(dist.join(name)).with_context(|| format!("reading {name}"))
}

fn put(dist: &Path, name: &str, text: &str) -> Result<()> {
    std::fs::write(dist.join(name), text).with_context(|| format!("writing {name}"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_version_is_written_over_the_one_before() {
        let page = "<meta content=0 name=version><title>x</title>";
        let stamped = stamp_page(page, "12ab").unwrap();
        assert_eq!(stamped, "<meta name=version content=12ab><title>x</title>");
        assert_eq!(stamp_page(&stamped, "34cd").unwrap(), "<meta name=version content=34cd><title>x</title>");
        assert!(stamp_page("<title>x</title>", "12ab").is_err());
    }

    #[test]
    fn the_version_changes_with_a_file_and_comes_back_with_it() {
        let folder = std::env::temp_dir().join(format!("kerbstead-offline-{}", std::process::id()));
        std::fs::create_dir_all(&folder).unwrap();
        put(&folder, "index.html", "<meta name=\"version\" content=\"0\" />").unwrap();
        put(&folder, WORKER, "work();").unwrap();
        let mut versions = Vec::new();
        for style in ["a", "b", "a"] {
            put(&folder, "main.css", style).unwrap();
            write(&folder).unwrap();
            let worker = read(&folder, WORKER).unwrap();
            assert_eq!(worker.lines().nth(1), Some("work();"), "{worker}");
            assert_eq!(worker.lines().count(), 2, "{worker}");
            versions.push(read(&folder, "index.html").unwrap());
        }
        std::fs::remove_dir_all(&folder).unwrap();
        assert_ne!(versions[0], versions[1]);
        assert_eq!(versions[0], versions[2]);
    }
}
