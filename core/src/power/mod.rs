//! Power: does each store last until the next place to charge, hour by hour?
//!
//! [`Input`] turns the kit into stores with their daily draws, [`Course::step`] runs one hour with the exact solution
//! of its charging and drawing, [`report`] judges the course. The sun, fridges that feel the weather and kettles that
//! feel the altitude belong beside [`Supply`] and [`Profile`], which is where an hour's sources and draws are made.

pub mod constants;
mod findings;
mod input;
mod report;
mod step;

pub use findings::Finding;
pub use input::{DayKind, Hour, Input, Profile, StoreInput, Supply, supply};
pub use report::{Report, StoreReport, report};
pub use step::{Course, HourFlow, StoreCourse, hour_flow};
