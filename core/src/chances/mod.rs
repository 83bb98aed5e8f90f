//! How likely a plan holds as a whole: every run draws one world, and money, power, water, days and load go through it
//! together, so that a late sale and a cloudy week can meet.
//!
//! ```
//! use jiff::civil::date;
//! use kerbstead_core::chances::WholeTask;
//! use kerbstead_core::{plan, task::Task};
//! let mut task = WholeTask::new(&plan::demo_plan(), date(2027, 3, 10), 1);
//! while task.step() < 1.0 {}
//! let whole = task.whole();
//! assert!(whole.balances.iter().all(|balance| whole.all_hold <= balance.held || !balance.is_known));
//! assert!(whole.inputs.is_sorted_by(|one, next| one.correlation.abs() >= next.correlation.abs()));
//! ```
//!
//! What we assume; common practice, no source:
//! - Each uncertain number of the plan is drawn once a run, not once a payment or a day. Who guesses a budget wrong guesses it
//!   wrong all along: food that is dearer than was thought is dearer every month. The page of the money draws each payment
//!   anew, so there small ranges even out, and its chances are nearer to all or nothing than these.
//! - A range is drawn from the triangle over low, likely and high, hours of work as in [`crate::days::schedule`]; apart from
//!   all others. What follows from a number is high when that is: fuel and all that is paid by the distance by the kilometres.
//! - The hours and the kilometres of a stay, or of a day of the week, are drawn as one, for what charges while driving and for
//!   what is paid by the distance. What is no range is sure.
//! - A sale that is likely by its day comes on that day, or later by the exponential law that gives that chance by its day,
//!   from the day asked on or, if that is later, the day from which it is offered. After the day of leaving it is lost. Sales
//!   without a chance come on their day.
//! - Clouds go from day to day as in [`crate::energy::chance`]; a day is dry or not apart from all others.
//! - What is the same whatever is drawn counts as it does in the likely run: what fits, what outlets bear, what cannot be built,
//!   waits after tasks. Payments keep their days, also when the work takes longer.
//! - A balance that is not known is left out.
//!
//! When nothing of a plan is uncertain every run is the likely run, and a balance holds in all of them or in none, as its verdict
//! says.
//!
//! What hangs on an input is told by its rank correlation with the worst margin of a run. Margins are those of the balances that
//! hold in some runs and fail in others, for nothing decides over the rest; when there are none, those of all. To be compared
//! they are divided by their standard deviation over the runs: money and kilowatt hours alike count by how far a usual
//! difference between runs takes them. A margin says more than whether a run fails: it tells runs apart that fail all alike.

mod amounts;
mod answer;
mod build;
mod cash;
pub mod constants;
mod inputs;
mod judging;
mod route;
mod stores;
mod supply;
mod task;

pub use answer::{BalanceChance, First, Input, What, Whole};
pub use task::WholeTask;
