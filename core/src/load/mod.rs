//! Load: does the van carry it?

pub mod constants;
