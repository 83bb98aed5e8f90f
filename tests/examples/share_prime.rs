//! Makes what belongs to one version of links from its readable form: `cargo run -p kerbstead-tests --example share_prime`.
//!
//! Run it for a version that was never given to anybody. Once links of a version are out, nothing of it may change: a
//! new version gets files of its own, and those before stay.

use anyhow::{Context, Result};
use kerbstead_core::plan::Plain;
use kerbstead_core::share::{Answer, Parcel, Scope, numbered_fields, prime_bytes, seal};
use kerbstead_tests::links::parcels_of_prime;
use serde_json::Value;
use std::fmt::Write as _;
use std::fs;

fn main() -> Result<()> {
    let root = xtask::workspace::root();
    let data = root.join("tests/data/share");
    let prime = root.join("core/src/share/prime-1.bin");
    let parcels = parcels_of_prime(&fs::read_to_string(data.join("prime-1.json"))?);
    let bytes = prime_bytes(&parcels);
    if fs::read(&prime).ok().as_deref() != Some(&bytes) {
        fs::write(&prime, &bytes).with_context(|| format!("writing {}", prime.display()))?;
        println!(
            "{} bytes. They are part of core: run this once more, for the files that depend on them.",
            bytes.len()
        );
        return Ok(());
    }
    fs::write(data.join("numbers-1.txt"), numbers())?;
    let mut links = String::new();
    for name in ["ordinary-1.json", "ordinary-3.json", "answer.json"] {
        let value: Value = serde_json::from_str(&fs::read_to_string(data.join(name))?)?;
        let parcel = if value.get("marks").is_some() {
            Parcel::Answer(Answer::from_plain(&value).unwrap_or_default())
        } else {
            Parcel::of(&value, Scope::Whole, true)
        };
        let text = seal(&parcel).ok().context("a plan too large for a link")?;
        writeln!(links, "{name}\n{text}")?;
    }
    fs::write(data.join("links-1.txt"), links)?;
    Ok(())
}

/// Each field that has a number, with its place.
fn numbers() -> String {
    let mut places: Vec<u32> = Vec::new();
    let mut lines = String::new();
    for (place, name) in numbered_fields() {
        let number = places.iter().filter(|known| **known == place).count();
        places.push(place);
        lines += &format!("{place:08x} {number} {name}\n");
    }
    lines
}
