//! Water: does it last from tap to tap, and is there room for what was used?
//!
//! [`Input`] sums up tanks and uses, [`Course::step`] runs one day, [`report`] judges the course.
//!
//! Apart from the plan, and used by nothing yet:
//! - [`volume`]: how much goes into a can; [`needs`]: what people need in a day; [`boiling`]: water made fit to drink;
//!   [`toilet`]: ways of having one;
//! - [`tanks`]: several cans, grey tanks and a toilet, and what each day asks of them; [`course`]: the days one after another;
//!   [`cans`]: what is in each; [`sizing`]: how far apart stops may be, what lacks, how few stops do; [`chance`]: how likely it
//!   lasts.

pub mod boiling;
pub mod cans;
pub mod chance;
pub mod constants;
pub mod course;
mod findings;
mod input;
mod moves;
pub mod needs;
mod report;
pub mod sizing;
mod step;
pub mod tanks;
pub mod toilet;
pub mod volume;

pub use findings::Finding;
pub use input::{Input, Level};
pub(crate) use input::{Use, uses};
pub(crate) use moves::moves;
pub(crate) use report::is_missing;
pub use report::{Report, report};
pub(crate) use step::water_day;
pub use step::{Course, WaterDay};
