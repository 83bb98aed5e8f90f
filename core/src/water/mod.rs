//! Water: does it last from tap to tap, and is there room for what was used?
//!
//! [`Input`] sums up cans, toilets and uses, [`Course::step`] runs one day, [`report`] judges the course. [`Outlook`] is what
//! takes longer: how likely it lasts, and the fewest stops.
//!
//! The engine, apart from the plan:
//! - [`volume`]: how much goes into a can; [`needs`]: what people need in a day; [`boiling`]: water made fit to drink;
//!   [`toilet`]: ways of having one;
//! - [`tanks`]: several cans, grey tanks and a toilet, and what each day asks of them; [`course`]: the days one after another;
//!   [`cans`]: what is in each; [`sizing`]: how far apart stops may be, what lacks, how few stops do; [`chance`]: how likely it
//!   lasts.

mod answers;
pub mod boiling;
pub mod cans;
pub mod chance;
pub mod constants;
pub mod course;
mod findings;
mod frost;
mod input;
mod moves;
pub mod needs;
mod outlook;
mod report;
pub mod sizing;
mod step;
pub mod tanks;
pub mod toilet;
mod treated;
pub mod volume;
mod ways;
mod working;

pub use answers::{First, Lacks, Spacing};
pub(crate) use course::step;
pub use course::{Level, Vessel};
pub use findings::Finding;
pub use frost::{Frost, FrostDays};
pub use input::{Aboard, Input};
pub(crate) use input::{Meter, Use, Wants, toilet_factor, units, uses};
pub(crate) use moves::moves;
pub use outlook::{CanRun, FewestStops, Outlook, OutlookTask, StopDay};
pub(crate) use report::is_missing;
pub use report::{Report, report};
pub use step::{Course, WaterDay};
pub use treated::{Boiled, Filter, Treatment};
pub use ways::{ToiletOption, Toilets, Without};
