//! What was paid at the till, as the plan keeps it.
//!
//! The lines stand in a list of their own and name their receipt: so each has a path like any other entry, and is
//! merged, compared and taken back like one. [`bookings`](crate::money::bookings) puts both together.

use jiff::civil::Date;

use super::record::record;
use super::{Id, Money};

/// A receipt: something was paid, whatever for.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct Receipt {
    /// Unique in the plan.
    pub id: Id,
    /// The day it was paid; without it, the first day of the plan.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none", with = "Option<String>"))]
    pub on: Option<Date>,
    /// Where it was.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "String::is_empty"))]
    pub place: String,
    /// What it says was paid in all; without it, what its lines come to. Negative where money came back.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub total: Option<Money>,
}

record!(Receipt { id, on, place, total } unless empty { place });

/// A line of a receipt.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct ReceiptLine {
    /// Unique in the plan.
    pub id: Id,
    /// The receipt it stands on. A line whose receipt is not there counts as one without a day.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub receipt: Option<Id>,
    /// What it is called there.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "String::is_empty"))]
    pub name: String,
    /// What was paid for it, tax included; negative for a reduction or a deposit that came back.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub amount: Option<Money>,
    /// The item of the kit it is for.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub item: Option<Id>,
    /// Whether it paid for a part of the item only, so that the rest of the planned price is still to be paid.
    pub more_follows: bool,
}

record!(ReceiptLine { id, receipt, name, amount, item, more_follows } unless empty { name });
