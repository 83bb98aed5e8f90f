//! What a visitor downloads, against its limit.

use super::offline;
use crate::server::gzip;
use anyhow::{Context, Result, bail};
use flate2::Compression;
use std::path::Path;

/// What the page may weigh in all, compressed with gzip at its best, in bytes: what it weighs, and a little for what other
/// machines make of the same code.
pub const LIMIT: usize = 1_030_000;

/// Prints the compressed size of each file of the page and fails when the sum is over the limit.
pub fn check(dist: &Path) -> Result<()> {
    let mut sizes = sizes(dist)?;
    sizes.sort_by_key(|size| std::cmp::Reverse(size.1));
    let total: usize = sizes.iter().map(|size| size.1).sum();
    println!("\nSize of the bundle, compressed as by gzip -9:");
    for (name, bytes) in &sizes {
        println!("{bytes:>10}  {name}");
    }
    println!("{total:>10}  bytes in all; the limit is {LIMIT}");
    if total > LIMIT {
        bail!("the bundle is {} bytes over its limit", total - LIMIT);
    }
    Ok(())
}

/// The files that come with the first visit: what the service worker keeps, and itself. The icon is left out: a browser
/// loads it only when the page is there.
fn sizes(dist: &Path) -> Result<Vec<(String, usize)>> {
    let mut names = offline::kept(dist)?;
    names.retain(|name| !name.starts_with("icons/"));
    names.push(offline::WORKER.to_owned());
    let mut sizes = Vec::new();
    for name in names {
        let bytes = std::fs::read(dist.join(&name)).with_context(|| format!("reading {name}"))?;
        let size = gzip(&bytes, Compression::best())?.len();
        sizes.push((name, size));
    }
    Ok(sizes)
}
