//! `cargo xtask build`: the static bundle in `dist/`, checked against its budget.

mod embed;
mod size;

use crate::{command, tools, workspace};
use anyhow::{Context, Result, ensure};

/// Installs what is missing, builds the bundle and weighs it.
pub fn build() -> Result<()> {
    tools::for_bundle()?;
    release()?;
    let dist = workspace::dist();
    embed::write(&dist)?;
    schema()?;
    size::check(&dist)
}

/// The bundle is complete in itself: relative addresses, so that it works under any path of any static host.
fn release() -> Result<()> {
    println!("Building the release bundle; the first time, this takes some minutes.");
    let mut trunk = command::program("trunk");
    trunk.args(["build", "--release", "--offline"]);
    // Trunk takes the usual NO_COLOR=1 for a wrong value of an option of its own.
    trunk.env_remove("NO_COLOR");
    command::run(&mut trunk)
}

/// The plan's JSON Schema, for whoever writes a plan by hand or by program.
fn schema() -> Result<()> {
    println!("Writing plan.schema.json; the first time, core is compiled for this machine.");
    let mut example = command::cargo();
    example.args(["run", "--quiet", "--package", "kerbstead-core", "--features", "schema"]);
    let json = command::capture(example.args(["--example", "assess", "--", "--schema"]))?;
    ensure!(json.first() == Some(&b'{'), "the example `assess --schema` printed no JSON object");
    let path = workspace::dist().join("plan.schema.json");
    std::fs::write(&path, json).with_context(|| format!("writing {}", path.display()))
}
