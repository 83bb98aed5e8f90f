//! `cargo xtask fuzz`: links and files made by chance, read as strangers could send them.

use crate::command;
use anyhow::Result;

/// Reads so many of them, optimised.
pub fn run(inputs: u64) -> Result<()> {
    let mut fuzz = command::cargo();
    fuzz.args(["run", "--profile", "bench", "--package", "kerbstead-tests", "--example", "fuzz", "--"]);
    command::run(fuzz.args(["--inputs", &inputs.to_string()]))
}
