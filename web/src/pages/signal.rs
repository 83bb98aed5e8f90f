//! The page of signal.

use kerbstead_core::Balance;

use super::balance_head;
use crate::el::{View, fragment};

/// The page.
pub fn signal() -> View {
    fragment().put(balance_head(Balance::Signal)).done()
}
