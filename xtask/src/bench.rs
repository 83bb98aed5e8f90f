//! `cargo xtask bench`: how long an assessment takes natively, and how long the page takes in a browser.

use crate::{bundle, command, tools};
use anyhow::Result;

/// Runs the native benches, then the timing of the page.
pub fn run() -> Result<()> {
    println!("Native benches; compiling them optimised takes a minute or two.");
    command::run(command::cargo().args(["bench", "--package", "kerbstead-tests", "--benches"]))?;
    println!("\nThe page in a browser.");
    tools::for_browser()?;
    bundle::build()?;
    // What is timed in the page is listed in that example.
    command::run(command::cargo().args(["run", "--package", "kerbstead-tests", "--example", "page_timing"]))
}
