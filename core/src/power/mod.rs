//! Power: does each store last until the next place to charge, hour by hour?
//!
//! [`Input`] turns the plan into what the engine in [`crate::energy`] takes: `store` and `draws` what is in the kit,
//! `given` what comes in, `sky` what is overhead. The walk in [`crate::run`] steps the engine hour by hour; [`report`]
//! judges its course. What takes long is in `outlook`, about the hours in `ahead`.

mod ahead;
pub mod constants;
mod draws;
mod findings;
mod given;
mod input;
mod moves;
mod outlook;
mod report;
mod sky;
mod store;
mod working;

pub(crate) use ahead::{Rest, rest, uncertainty};
pub use findings::Finding;
pub use input::{Hanging, Input};
pub(crate) use moves::moves;
pub use outlook::{Cost, Night, Outlook, OutlookTask, Size, Stop, Stops, Without};
pub use report::{DrawReport, Hour, PanelReport, Report, StoreReport, report};
pub use sky::typical_year;
pub(crate) use sky::{KnownSkies, Skies};
pub use store::{of_plan as engine_store, usable_wh};
