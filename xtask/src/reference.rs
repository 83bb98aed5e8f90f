//! `cargo xtask reference`: test data computed by independent code.
//!
//! A generator is `tests/reference/NAME.py`. It is run with one argument, the path of the file to write, and
//! `tests/data/NAME.json` is what it wrote. What it imports is pinned in `tests/reference/requirements.txt`.

use crate::{command, tools, workspace};
use anyhow::{Context, Result, bail};
use std::path::{Path, PathBuf};

/// Makes the data again, or with `check` makes it aside and compares.
pub fn run(check: bool) -> Result<()> {
    let generators = generators()?;
    if generators.is_empty() {
        println!("There are no generators in tests/reference/, so there is nothing to make or compare.");
        return Ok(());
    }
    let python = environment()?;
    let kept = workspace::root().join("tests/data");
    let target = if check { workspace::tools().join("reference") } else { kept.clone() };
    std::fs::create_dir_all(&target).with_context(|| format!("making {}", target.display()))?;
    let mut different = Vec::new();
    for generator in &generators {
        let name = data_name(generator);
        command::run(command::program(&python).arg(generator).arg(target.join(&name)))?;
        if check && !same(&target.join(&name), &kept.join(&name))? {
            different.push(name);
        }
    }
    report(check, generators.len(), &different)
}

fn report(check: bool, count: usize, different: &[String]) -> Result<()> {
    if !different.is_empty() {
        bail!("made again, these differ from what tests/data/ has: {}", different.join(", "));
    }
    let outcome = if check { "as the generators make it" } else { "made" };
    println!("tests/data/ is {outcome} ({count} of {count} files).");
    Ok(())
}

fn generators() -> Result<Vec<PathBuf>> {
    let folder = workspace::root().join("tests/reference");
    if !folder.is_dir() {
        return Ok(Vec::new());
    }
    let mut found = Vec::new();
    for entry in std::fs::read_dir(&folder).with_context(|| format!("reading {}", folder.display()))? {
        let path = entry?.path();
        // A name that begins with an underscore is shared code.
        let shared = path.file_name().is_some_and(|name| name.to_string_lossy().starts_with('_'));
        if path.extension().is_some_and(|extension| extension == "py") && !shared {
            found.push(path);
        }
    }
    found.sort();
    Ok(found)
}

fn data_name(generator: &Path) -> String {
    format!("{}.json", generator.file_stem().unwrap_or_default().to_string_lossy())
}

fn same(made: &Path, kept: &Path) -> Result<bool> {
    let made = std::fs::read(made).with_context(|| format!("the generator wrote no {}", made.display()))?;
    Ok(std::fs::read(kept).is_ok_and(|kept| kept == made))
}

/// The interpreter of a virtual environment that has the pinned packages.
fn environment() -> Result<PathBuf> {
    let folder = workspace::tools().join("venv");
    let python = folder.join("bin/python");
    if !python.is_file() {
        tools::for_reference()?;
        command::run(command::program("python3").args(["-m", "venv"]).arg(&folder))?;
    }
    let pins = workspace::root().join("tests/reference/requirements.txt");
    let wanted = std::fs::read(&pins).unwrap_or_default();
    let stamp = folder.join("installed-requirements.txt");
    if wanted != std::fs::read(&stamp).unwrap_or_default() {
        command::run(command::program(&python).args(["-m", "pip", "install", "--quiet", "-r"]).arg(&pins))?;
        std::fs::write(&stamp, wanted).with_context(|| format!("writing {}", stamp.display()))?;
    }
    Ok(python)
}
