//! Receipts from tables that other programs wrote, and as a table for them.
//!
//! [`preview`] reads a file of comma-separated values (RFC 4180) or of its many kin and shows what it took each column
//! for; [`receipts_of`] makes receipts of the rows; [`receipt_table`] writes them. Nothing of a file is ever dropped: a
//! row is read, or kept aside as it stands with the reason.
//!
//! How it goes: `encoding` makes text of bytes, `records` cells of text, `columns` says what they mean, `amounts` and
//! `days` read them, `settle` finds out how the file writes both, `row` reads a row.

mod amounts;
mod columns;
mod days;
mod encoding;
mod grouped;
mod preview;
mod records;
mod row;
mod settle;

pub use columns::Meaning;
pub use days::DateOrder;
pub use encoding::Encoding;
pub use grouped::{receipt_table, receipts_for, receipts_of};
pub use preview::{Column, MOST_BYTES, MOST_ROWS, Preview, Refused, Settings, preview};
pub use row::{Kept, Reason, Row};
pub use settle::Ask;
