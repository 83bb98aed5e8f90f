//! What flows are called.

use kerbstead_core::money::{Flow, FlowGroup};
use kerbstead_core::plan::{Group, Plan};

use crate::locale::t;

/// The name of what a flow comes from, or of its group.
pub fn source_name(plan: &Plan, flow: &Flow) -> String {
    plan.name_of(flow.source).map_or_else(|| group_name(flow.group), str::to_owned)
}

/// The name of a group.
pub fn group_name(group: FlowGroup) -> String {
    t(match group {
        FlowGroup::Sales => "flow-sales",
        FlowGroup::Income => "flow-income",
        FlowGroup::Receipts => "flow-receipts",
        FlowGroup::Costs => "flow-costs",
        FlowGroup::Nights => "flow-nights",
        FlowGroup::Charging => "flow-charging",
        FlowGroup::WaterStops => "flow-water-stops",
        FlowGroup::Data => "flow-data",
        FlowGroup::Vehicle => "flow-vehicle",
        FlowGroup::Loans => "flow-loans",
        FlowGroup::Fuel => "flow-fuel",
        FlowGroup::Kit(group) => group_key(group),
    })
}

/// The name of a heading of the kit in the catalogue.
pub const fn group_key(group: Group) -> &'static str {
    match group {
        Group::Sleeping => "choice-group-sleeping",
        Group::Kitchen => "choice-group-kitchen",
        Group::Power => "choice-group-power",
        Group::Water => "choice-group-water",
        Group::Hygiene => "choice-group-hygiene",
        Group::Structure => "choice-group-structure",
        Group::Warmth => "choice-group-warmth",
        Group::Work => "choice-group-work",
        Group::Clothing => "choice-group-clothing",
        Group::Safety => "choice-group-safety",
        Group::Tools => "choice-group-tools",
        Group::Vehicle => "choice-group-vehicle",
        Group::Other => "choice-group-other",
    }
}
