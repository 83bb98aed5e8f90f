//! `cargo xtask test`: everything that must hold before a change is shared.

use crate::steps::{self, Step};
use crate::{bundle, command, reference, tools};
use anyhow::Result;
use std::process::Command;

const TOOLS: Step = Step { name: "tools", work: all_tools };

/// The variable that proptest takes the seed of its cases from.
const CASES_SEED: &str = "PROPTEST_RNG_SEED";

const QUICK_TOOLS: Step = Step { name: "tools", work: tools::for_checks };

const NATIVE: [Step; 3] = [
    Step { name: "formatting", work: formatting },
    Step { name: "clippy", work: clippy },
    Step { name: "native tests", work: native_tests },
];

const REST: [Step; 3] = [
    Step { name: "reference tables", work: reference_tables },
    Step { name: "release bundle", work: bundle::build },
    Step { name: "browser tests", work: browser_tests },
];

/// Runs every step, or only those that need neither the bundle nor a browser.
pub fn run(quick: bool) -> Result<()> {
    if quick {
        return steps::run(&joined(QUICK_TOOLS, NATIVE));
    }
    let mut all = joined(TOOLS, NATIVE);
    all.extend(REST);
    steps::run(&all)
}

fn joined(first: Step, rest: [Step; 3]) -> Vec<Step> {
    std::iter::once(first).chain(rest).collect()
}

fn all_tools() -> Result<()> {
    tools::for_checks()?;
    tools::for_bundle()?;
    tools::for_browser()
}

fn formatting() -> Result<()> {
    command::run(command::cargo().args(["fmt", "--all", "--check"]))
}

/// The front end is checked only as it is built, for WebAssembly; a second time for this machine would take
/// minutes and find the same.
fn clippy() -> Result<()> {
    let mut native = command::cargo();
    native.args(["clippy", "--workspace", "--exclude", "kerbstead-web", "--all-targets"]);
    command::run(native.args(["--features", "kerbstead-core/schema", "--", "-D", "warnings"]))?;
    let mut web = command::cargo();
    web.args(["clippy", "--package", "kerbstead-web", "--all-targets", "--target", "wasm32-unknown-unknown"]);
    command::run(web.args(["--", "-D", "warnings"]))
}

/// Properties are tried on the same cases in every run, so that a failure is the change's own and can be run again;
/// other cases are tried by setting another seed.
fn native_tests() -> Result<()> {
    let mut tests = tests();
    if std::env::var_os(CASES_SEED).is_none() {
        tests.env(CASES_SEED, "1");
    }
    command::run(&mut tests)
}

/// The tables that independent code made are what it makes today.
fn reference_tables() -> Result<()> {
    reference::run(true)
}

fn browser_tests() -> Result<()> {
    command::run(tests().args(["--test", "browser", "--", "--include-ignored"]))
}

/// The same selection of packages and features for both kinds of test, so that nothing is compiled twice.
fn tests() -> Command {
    let mut cargo = command::cargo();
    cargo.args(["test", "--workspace", "--exclude", "kerbstead-web", "--features", "kerbstead-core/schema"]);
    // A failed check says what is wrong with the page; where in the harness it was noticed says nothing.
    cargo.env("RUST_LIB_BACKTRACE", "0");
    cargo
}
