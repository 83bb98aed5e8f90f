//! What a person answers when asked whether money moved.

use serde_json::json;

use super::flows::{Flow, FlowGroup};
use crate::plan::{Edit, Path, Plan, date_text};

/// The change that says of a flow whether it happened as planned; `None` for flows that are never asked about.
///
/// A receipt that comes again and again is confirmed up to its day; that it did not come is said by counting the cash.
pub fn answer(plan: &Plan, flow: &Flow, happened: bool) -> Option<Edit> {
    let outcome = json!({ "happened": happened });
    let id = flow.source;
    let path = match flow.group {
        FlowGroup::Kit(_) if !flow.amount.is_negative() => Path::entry("kit", id).child("returned/outcome"),
        FlowGroup::Kit(_) => Path::entry("kit", id).child("paid"),
        FlowGroup::Sales if plan.item(id).is_some() => Path::entry("kit", id).child("sale/outcome"),
        FlowGroup::Sales => Path::entry("belongings", id).child("outcome"),
        FlowGroup::Vehicle => Path::section("purchase").child("paid"),
        FlowGroup::Loans => {
            return Some(Edit::Set { path: Path::entry("loans", id).child("drawn"), value: happened.into() });
        }
        FlowGroup::Income if happened => {
            let path = Path::entry("incomes", id).child("received_until");
            return Some(Edit::Set { path, value: date_text(flow.on).into() });
        }
        FlowGroup::Income
        | FlowGroup::Costs
        | FlowGroup::Nights
        | FlowGroup::Charging
        | FlowGroup::WaterStops
        | FlowGroup::Data
        | FlowGroup::Fuel
        | FlowGroup::Receipts => return None,
    };
    Some(Edit::Set { path, value: outcome })
}
