//! Water: does it last from tap to tap, and is there room for what was used?
//!
//! [`Input`] sums up tanks and uses, [`Course::step`] runs one day, [`report`] judges the course.

pub mod constants;
mod findings;
mod input;
mod moves;
mod report;
mod step;

pub use findings::Finding;
pub use input::{Input, Level};
pub(crate) use moves::moves;
pub use report::{Report, report};
pub use step::{Course, WaterDay};
