//! What tables that were worked by hand are written with.
#![allow(clippy::unwrap_used, clippy::missing_panics_doc, reason = "a test stops at what it did not expect")]

use kerbstead_core::plan::{Document, Money, Plan};
use serde_json::Value;

/// An amount.
pub fn money(text: &str) -> Money {
    text.parse().unwrap()
}

/// The plan of a file, which must be sound.
pub fn plan(file: &Value) -> Plan {
    let opened = Document::open(&file.to_string()).unwrap();
    assert_eq!(opened.problems, []);
    opened.plan
}
