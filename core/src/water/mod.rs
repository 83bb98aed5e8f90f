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
pub(crate) use input::{Use, uses};
pub(crate) use moves::moves;
pub(crate) use report::is_missing;
pub use report::{Report, report};
pub(crate) use step::water_day;
pub use step::{Course, WaterDay};
