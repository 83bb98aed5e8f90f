//! Two to four plans side by side: what they come to line by line, what only some of them have, and which of them is
//! better under a few stated assumptions.
//!
//! Plans are compared by what [`assess`] says of each, and nothing is weighed against anything else: a line is
//! better where more or less of it is better for certain, and nothing is said where one of the plans does not know it.
//! Money of different currencies is not compared.
//!
//! ```
//! use jiff::civil::date;
//! use kerbstead_core::compare::{Line, compare};
//! use kerbstead_core::plan::{Money, demo_plan};
//! let plan = demo_plan();
//! let mut richer = plan.clone();
//! richer.purse.opening_cash = richer.purse.opening_cash.map(|cash| cash + Money::whole(100));
//! let compared = compare(&[plan, richer], date(2027, 3, 10));
//! let cash = compared.rows.iter().find(|row| row.line == Line::CashAtEnd).unwrap();
//! assert_eq!((cash.differs, &cash.best), (true, &vec![false, true]));
//! assert!(compared.only.is_empty());
//! ```

mod assumptions;
mod cell;
mod constants;
mod only;
mod rows;
mod task;
mod under;

use jiff::civil::Date;

use crate::plan::Plan;
use crate::plan::record::record;

pub use assumptions::{Assumption, assumed};
pub use cell::{Cell, Line};
pub use constants::{DEARER_PERCENT, DULLER_PERCENT, LATER_DAYS};
pub use only::{Had, KitRow};
pub use rows::Row;
pub use task::CompareTask;
pub use under::{By, Outcome, Under};

#[cfg(doc)]
use crate::assess;

/// No more plans are compared at once; of more, the first.
pub const MOST_PLANS: usize = 4;

/// Plans side by side. Lists by plan are in the order of the plans.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Compared {
    /// How many plans are compared.
    pub plans: usize,
    /// The day on which all of them were looked at.
    pub as_of: Date,
    /// Whether all are in one currency. If not, no money is compared.
    pub same_currency: bool,
    /// What the plans come to: those lines first in which they differ.
    pub rows: Vec<Row>,
    /// What of the kit not all have, or not as many of.
    pub only: Vec<KitRow>,
    /// What becomes of the plans under each assumption, the plain case first.
    pub under: Vec<Under>,
}

record!(Compared { plans, as_of, same_currency, rows, only, under });

/// Compares plans as they stand on a day, all of it at once: twenty-eight assessments for four plans. For the worker
/// there is [`CompareTask`].
pub fn compare(plans: &[Plan], as_of: Date) -> Compared {
    let mut task = CompareTask::new(plans, as_of);
    while crate::task::Task::step(&mut task) < 1.0 {}
    task.compared()
}
