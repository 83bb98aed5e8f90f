//! Money: can it be paid, day by day?
//!
//! [`Input`] turns the plan into dated flows, [`Course::step`] adds them up day by day, [`report`] judges the course.

mod answers;
pub mod constants;
mod findings;
mod flows;
mod report;
mod step;

pub use answers::answer;
pub use findings::Finding;
pub use flows::{Flow, FlowGroup, FlowState, Input, PriceParts, price_parts, purchase_price};
pub use report::{GroupTotal, Report, report};
pub use step::{CashDay, Course};
