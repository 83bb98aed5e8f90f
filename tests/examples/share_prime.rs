//! Makes what belongs to the newest version of links from its readable form:
//! `cargo run --features kerbstead-core/schema -p kerbstead-tests --example share_prime`.
//!
//! Run it for a version that was never given to anybody. Once links of a version are out, nothing of it may change: a
//! new version gets files of its own, and those before stay.

use anyhow::{Context, Result};
use kerbstead_core::plan::Plain;
use kerbstead_core::share::{Answer, Parcel, Scope, Version, prime_bytes, seal};
use kerbstead_tests::links::{numbers, parcels_of_prime};
use serde_json::Value;
use std::fmt::Write as _;
use std::fs;

/// The newest, and its number.
const VERSION: Version = Version::Second;
const NUMBER: u32 = 2;

fn main() -> Result<()> {
    let root = xtask::workspace::root();
    let data = root.join("tests/data/share");
    let prime = root.join(format!("core/src/share/prime-{NUMBER}.bin"));
    let parcels = parcels_of_prime(&fs::read_to_string(data.join(format!("prime-{NUMBER}.json")))?);
    let bytes = prime_bytes(VERSION, &parcels);
    if fs::read(&prime).ok().as_deref() != Some(&bytes) {
        fs::write(&prime, &bytes).with_context(|| format!("writing {}", prime.display()))?;
        println!(
            "{} bytes. They are part of core: run this once more, for the files that depend on them.",
            bytes.len()
        );
        return Ok(());
    }
    // What the versions before have is in files of their own.
    let known = numbers(Version::First);
    let all = numbers(VERSION);
    fs::write(data.join(format!("numbers-{NUMBER}.txt")), all.strip_prefix(&known).context("other numbers before")?)?;
    let mut links = String::new();
    for name in ["ordinary-2.json", "ordinary-4.json", "answer.json", "answer-of-helper.json", "prime-2.json"] {
        let value: Value = serde_json::from_str(&fs::read_to_string(data.join(name))?)?;
        // Of a list of parcels, the second.
        let value = value.get(1).unwrap_or(&value);
        let parcel = if value.get("marks").is_some() {
            Parcel::Answer(Answer::from_plain(value).unwrap_or_default())
        } else {
            Parcel::of(value, Scope::Whole, true)
        };
        let text = seal(&parcel).ok().context("a plan too large for a link")?;
        writeln!(links, "{name}\n{text}")?;
    }
    fs::write(data.join(format!("links-{NUMBER}.txt")), links)?;
    Ok(())
}
