//! `cargo xtask build`: the static bundle in `dist/`, checked against its budget.

mod embed;
mod minify;
pub mod offline;
mod order;
mod size;
mod trim;

use crate::{command, tools, workspace};
use anyhow::{Context, Result, ensure};

/// Compiles Rust's standard library along with the bundle: for size, and with panics that stop at once instead of
/// putting a message together that nobody would see. It makes the bundle a twelfth smaller. The stable compiler can do
/// so but does not promise to yet, which is what the first variable grants; nothing else of the project is built so.
///
/// What the compiler is asked for beyond: nothing is inlined that does not get shorter by it, loops are left as they were
/// written (with every array's address worked out where it is used), and so are repeated steps of two or three bytes.
/// Speed in the browser hardly changes by it, since its own compiler does all this again.
const SMALL_STD: [(&str, &str); 4] = [
    ("RUSTC_BOOTSTRAP", "1"),
    ("CARGO_UNSTABLE_BUILD_STD", "std,panic_abort"),
    ("CARGO_UNSTABLE_BUILD_STD_FEATURES", "optimize_for_size"),
    (
        "CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUSTFLAGS",
        "-Zunstable-options -Cpanic=immediate-abort -Cllvm-args=-inline-threshold=0 -Cllvm-args=-disable-lsr \
         -Cllvm-args=-disable-machine-cse -Cllvm-args=-disable-machine-licm -Cllvm-args=-enable-newgvn",
    ),
];

/// Installs what is missing, builds the bundle and weighs it.
pub fn build() -> Result<()> {
    tools::for_bundle()?;
    sources()?;
    release()?;
    let dist = workspace::dist();
    trim::trim(&dist, &embed::stem(&dist)?)?;
    minify::scripts(&dist)?;
    embed::rename(&dist)?;
    embed::rename_beside(&dist)?;
    embed::write(&dist)?;
    minify::script(&dist.join("kerbstead.js"))?;
    schemas()?;
    offline::write(&dist)?;
    size::check(&dist)
}

/// Fetches the sources that the bundle and the standard library in it are made of: Trunk is kept from the network.
fn sources() -> Result<()> {
    command::run(command::cargo().args(["fetch", "--locked"]))?;
    let sysroot = command::ask("rustc", &["--print", "sysroot"]).context("rustc does not say where it is installed")?;
    let manifest = std::path::Path::new(&sysroot).join("lib/rustlib/src/rust/library/Cargo.toml");
    let mut fetch = command::cargo();
    fetch.env("RUSTC_BOOTSTRAP", "1").args(["fetch", "--locked", "--manifest-path"]).arg(manifest);
    command::run(&mut fetch)
}

/// The bundle is complete in itself: relative addresses, so that it works under any path of any static host.
fn release() -> Result<()> {
    println!("Building the release bundle; the first time, this takes some minutes.");
    let mut trunk = command::program("trunk");
    trunk.args(["build", "--release", "--offline"]);
    // Trunk takes the usual NO_COLOR=1 for a wrong value of an option of its own.
    trunk.env_remove("NO_COLOR");
    for (name, value) in SMALL_STD {
        trunk.env(name, value);
    }
    command::run(&mut trunk)
}

/// The JSON Schemas of plans and backups, for whoever writes such files by hand or by program.
fn schemas() -> Result<()> {
    println!("Writing plan.schema.json and backup.schema.json; the first time, core is compiled for this machine.");
    for (name, option) in [("plan.schema.json", "--schema"), ("backup.schema.json", "--backup-schema")] {
        let mut example = command::cargo();
        example.args(["run", "--quiet", "--package", "kerbstead-core", "--features", "schema"]);
        let json = command::capture(example.args(["--example", "assess", "--", option]))?;
        ensure!(json.first() == Some(&b'{'), "the example `assess {option}` printed no JSON object");
        let path = workspace::dist().join(name);
        std::fs::write(&path, json).with_context(|| format!("writing {}", path.display()))?;
    }
    Ok(())
}
