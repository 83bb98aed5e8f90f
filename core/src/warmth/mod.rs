//! Warmth: is it warm enough at night, does it stay dry, and is the air fit to breathe?

mod findings;
mod report;

pub use findings::Finding;
pub use report::{Report, report};
