//! The log of the road: what was counted and what the days were like; and what one wished for.

use jiff::civil::Date;

use super::record::{record, words};
use super::{Id, Money};

/// What was counted at one moment. It replaces what the run had computed for that moment.
#[derive(Clone, Debug, Default, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct Reading {
    /// Unique in the plan.
    pub id: Id,
    /// The day.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none", with = "Option<String>"))]
    pub on: Option<Date>,
    /// The full hour, 0 to 23. Cash and water counted before noon stand before the day's movements, from noon on
    /// after them.
    pub hour: u32,
    /// Cash in hand.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub cash: Option<Money>,
    /// Which store `charge_percent` is of; without it, the first.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub store: Option<Id>,
    /// Charge the store shows, in percent.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub charge_percent: Option<f64>,
    /// Fresh water left in all cans together.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub fresh_l: Option<f64>,
    /// Used water in all grey tanks together.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub grey_l: Option<f64>,
    /// What the van has driven since it was built, in km.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub odometer_km: Option<f64>,
    /// How warm it is in the van, in °C.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub measured_c: Option<f64>,
    /// How the night before was.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub slept: Option<Slept>,
    /// What was missed that day.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub missed: Option<Id>,
    /// The thing of the kit that was used that day.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub used: Option<Id>,
}

record!(Reading {
    id,
    on,
    hour,
    cash,
    store,
    charge_percent,
    fresh_l,
    grey_l,
    odometer_km,
    measured_c,
    slept,
    missed,
    used,
});

/// How a night was.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
#[allow(missing_docs)]
pub enum Slept {
    #[default]
    Well,
    Badly,
}

words!(Slept { Well = "well", Badly = "badly" });

/// Something that was missed, or might be: it is earned by the days on which it was.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct Wish {
    /// Unique in the plan.
    pub id: Id,
    /// What the person calls it.
    pub name: String,
    /// What it would cost.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub would_cost: Option<Money>,
    /// How much a day without it matters, 9 the most; without it, 5.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub worth: Option<u32>,
    /// The thing of the kit that it is, where it stands there already.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub thing: Option<Id>,
}

record!(Wish { id, name, would_cost, worth, thing });
