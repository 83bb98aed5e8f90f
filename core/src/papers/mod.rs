//! Papers: what of a plan goes to other programs, by open standards.
//!
//! [`kit_table`] and [`cash_table`] write comma-separated values (RFC 4180), [`agenda`] a calendar (RFC 5545).

mod agenda;
mod table;

pub use agenda::agenda;
pub use table::{Marks, cash_table, kit_table};
