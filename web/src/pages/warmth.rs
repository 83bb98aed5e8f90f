//! The page of warmth.

use kerbstead_core::Balance;

use super::balance_head;
use crate::el::{View, fragment};

/// The page.
pub fn warmth() -> View {
    fragment().put(balance_head(Balance::Warmth)).done()
}
