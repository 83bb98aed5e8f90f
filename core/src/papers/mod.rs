//! Papers: what of a plan goes to other programs, by open standards.
//!
//! [`kit_table`] and [`cash_table`] write comma-separated values (RFC 4180), [`agenda`] a calendar (RFC 5545). [`to_buy`] and
//! [`to_borrow`] are the lists that are printed. [`receipts`] also reads such tables, of any origin.

mod agenda;
mod lists;
pub mod receipts;
mod table;

pub use agenda::agenda;
pub use lists::{Loan, ToBuy, to_borrow, to_buy};
pub use table::{Marks, cash_table, kit_table};
