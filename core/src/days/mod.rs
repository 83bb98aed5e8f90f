//! The balance of days: what is to be done, with whose hands and which tools, until when.

pub mod schedule;
