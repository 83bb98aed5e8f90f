//! Data and time on the road: what work and evenings take of an allowance, and when work can be done.
//!
//! Apart from the plan:
//! - [`data`]: gigabytes, and what a call or a film takes of them;
//! - [`allowance`]: contracts, and the cheapest set of them;
//! - [`course`]: allowances day by day, and the day on which data runs out;
//! - [`transfer`]: how long a file takes, and whether it is through before one must leave;
//! - [`hours`]: hours of work that lack signal, power or a bearable temperature, and the income at risk.
//!
//! Of a plan: [`Input`] is its data by day, [`AtRisk`] its hours of work, [`Cheapest`] its cheapest contracts; [`report()`] judges
//! them.
//!
//! Data is in MB or GB, of a thousand and a million times a thousand bytes; rates are in Mbit/s or kbit/s. No function fails on a
//! strange number: what is not a number, or below nothing, counts as nothing.

use crate::energy::sound;

pub mod allowance;
pub mod constants;
pub mod course;
pub mod data;
mod findings;
pub mod hours;
mod input;
mod moves;
mod report;
mod set;
pub mod transfer;
mod work;
mod working;

pub use findings::Finding;
pub use input::{Input, Slow, Which};
pub use moves::{moves, moves_of_money};
pub use report::{DataDay, Period, Report, report};
pub use set::{Busiest, Cheapest};
pub use work::{Around, AtRisk, OfCause, OfDay, OfPlace, powered, rate_mbit_s};
