//! What a visitor downloads, against the budget.

use crate::server::gzip;
use anyhow::{Context, Result, bail};
use flate2::Compression;
use std::path::Path;

/// What the page may weigh in all, compressed with gzip at its best, in bytes.
pub const BUDGET: usize = 250_000;

const WEIGHED: [&str; 4] = ["wasm", "js", "css", "html"];

/// Prints the compressed size of each file of the page and fails when the sum is over the budget.
pub fn check(dist: &Path) -> Result<()> {
    let mut sizes = sizes(dist)?;
    sizes.sort_by_key(|size| std::cmp::Reverse(size.1));
    let total: usize = sizes.iter().map(|size| size.1).sum();
    println!("\nSize of the bundle, compressed as by gzip -9:");
    for (name, bytes) in &sizes {
        println!("{bytes:>10}  {name}");
    }
    println!("{total:>10}  bytes in all, of a budget of {BUDGET}");
    if total > BUDGET {
        bail!("the bundle is {} bytes over its budget", total - BUDGET);
    }
    Ok(())
}

fn sizes(dist: &Path) -> Result<Vec<(String, usize)>> {
    let mut sizes = Vec::new();
    for entry in std::fs::read_dir(dist).with_context(|| format!("reading {}", dist.display()))? {
        let path = entry?.path();
        let extension = path.extension().and_then(std::ffi::OsStr::to_str);
        if !extension.is_some_and(|extension| WEIGHED.contains(&extension)) {
            continue;
        }
        let bytes = std::fs::read(&path).with_context(|| format!("reading {}", path.display()))?;
        let name = path.file_name().unwrap_or_default().to_string_lossy().into_owned();
        sizes.push((name, gzip(&bytes, Compression::best())?.len()));
    }
    Ok(sizes)
}
