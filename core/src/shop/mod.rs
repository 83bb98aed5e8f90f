//! In the aisle: what one thing on a shelf would do to the plan.
//!
//! `offer` takes what is typed, `freedom` works out a day on the road, `report` compares the plan with and without the
//! thing, `findings` has what there is to say. The plan itself is only changed by the [`Edit`](crate::plan::Edit) that
//! [`take`] gives.

mod constants;
mod findings;
mod freedom;
mod offer;
mod pack;
mod report;
mod taking;

pub use findings::Finding;
pub use freedom::{RoadCost, road_cost};
pub use offer::{ITEM_FIELDS, Offer, OfferRead, read_offer};
pub use pack::{Comparison, Pack, UnitPrice, compared, read_pack};
pub use report::{CashChange, GroupRoom, Load, Report, RunOut, report};
pub use taking::{Taking, pay_day, take};
