//! Days: can it be built by the date, with whose hands and whose tools?
//!
//! [`Input`] turns the open tasks of a plan into work, [`schedule`] places it in time, [`report`] judges what came of it.
//! What the schedule asks of the money (what is needed by when, what is free to be sold) goes by way of
//! [`run::dated`](crate::run::dated).

mod availability;
mod chain;
pub mod constants;
mod ends;
mod findings;
mod input;
mod moves;
mod report;
pub mod schedule;
mod sheet;
mod starter;
mod task;
mod ways;
mod work;

pub use chain::{ChainLink, WaitsFor};
pub use ends::{Ending, Endings, StoreOrSell};
pub use findings::{Block, Finding};
pub(crate) use input::{DRY, SLOTS_PER_DAY};
pub use input::{Input, hours_left, is_open};
pub(crate) use moves::moves;
pub use report::{FromMoney, Report, TaskLine, TaskState, report};
pub use sheet::{DayPlan, WorkLine};
pub use starter::{Implied, TASK_STARTERS, TOOL_STARTERS, TaskStarter, add_implied, add_starters, implied};
pub use task::{Change, Outlook, OutlookTask, ReadyDay, Saving};
pub use ways::{DayCosts, TwoWays, Way};
pub use work::Work;
