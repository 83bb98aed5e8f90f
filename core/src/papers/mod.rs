//! Papers: what of a plan goes to other programs, by open standards.
//!
//! [`kit_table`] and [`cash_table`] write comma-separated values (RFC 4180), [`agenda`] a calendar (RFC 5545). [`to_buy`] and
//! [`to_borrow`] are the lists that are printed, and the sheet of days has of [`needs_of`] what each task takes.
//! [`receipts`] also reads such tables, of any origin.

mod agenda;
mod calendar_file;
mod day_needs;
mod lists;
pub mod receipts;
mod table;
mod work_events;

pub use agenda::agenda;
pub use day_needs::{DayNeeds, needs_of};
pub use lists::{Loan, ToBuy, to_borrow, to_buy};
pub use table::{Marks, cash_table, kit_table};
