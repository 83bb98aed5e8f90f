//! Data and time on the road, apart from the plan: what work and evenings take of an allowance, and when work can be done.
//!
//! - [`data`]: gigabytes, and what a call or a film takes of them;
//! - [`allowance`]: contracts, the cheapest set of them, and the day on which data runs out;
//! - [`transfer`]: how long a file takes, and whether it is through before one must leave;
//! - [`hours`]: hours of work that lack signal, power or a bearable temperature, and the income at risk.
//!
//! Data is in MB or GB, of a thousand and a million times a thousand bytes; rates are in Mbit/s or kbit/s. No function fails on a
//! strange number: what is not a number, or below nothing, counts as nothing.

pub mod allowance;
pub mod constants;
pub mod data;
mod findings;
pub mod hours;
mod report;
pub mod transfer;

pub use findings::Finding;
pub use report::{Report, report};

/// A number from 0 to `most`, whatever was typed.
fn sound(value: f64, most: f64) -> f64 {
    // What is not a number, below zero or a zero with a minus sign becomes plain zero.
    if value > 0.0 { value.min(most) } else { 0.0 }
}
