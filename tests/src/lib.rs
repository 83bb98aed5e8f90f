//! What the tests of Kerbstead share.

pub mod browser;
pub mod cuts;
pub mod generate;
pub mod kills;
pub mod links;
pub mod picks;
pub mod strangers;
pub mod vans;
pub mod worked;
pub mod workloads;
