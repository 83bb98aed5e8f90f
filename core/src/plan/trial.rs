//! Trying the life with a simple build, building in full, or staying: what is asked about it.

use super::record::record;
use super::{Estimate, Id, Money};

/// What the ways of building are compared over. What is not stated is taken from the rest of the plan, or is as
/// [`Compared`](crate::money::futures::Compared) says.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct Trial {
    /// How many months are looked at, 1 to 600.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub trial_months: Option<u32>,
    /// The chance that the life does not suit, in percent.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub unsuited_percent: Option<Estimate<f64>>,
    /// After how many months on the road one finds out.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub finds_out_months: Option<Estimate<f64>>,
    /// What the sale of things that can be taken out brings of what was paid for them, in percent.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub kept_percent: Option<Estimate<f64>>,
    /// What a month at home costs.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub home_monthly: Option<Estimate<Money>>,
    /// What a month on the road costs.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub road_monthly: Option<Estimate<Money>>,
    /// What is paid once to live at home again.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub going_back: Option<Estimate<Money>>,
}

record!(Trial {
    trial_months,
    unsuited_percent,
    finds_out_months,
    kept_percent,
    home_monthly,
    road_monthly,
    going_back,
});

/// A way of building.
#[derive(Clone, Debug, Default, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct VanBuild {
    /// Unique in the plan.
    pub id: Id,
    /// What the person calls it.
    pub name: String,
    /// Months of building, lived at home; taken as whole months. Without it, none.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub build_months: Option<Estimate<f64>>,
    /// What is paid for things that can be taken out and sold.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub removable: Option<Estimate<Money>>,
    /// What is paid for what stays in the van.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub fixed: Option<Estimate<Money>>,
    /// What is paid later for what was made simply at first, if the life suits.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub redone: Option<Estimate<Money>>,
    /// How much more than what is planned now is in the van with it.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub extra_kg: Option<f64>,
}

record!(VanBuild { id, name, build_months, removable, fixed, redone, extra_kg });
