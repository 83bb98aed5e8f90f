//! Fresh water that people use, whatever they carry.

use super::record::{record, words};
use super::{Estimate, Id};

/// One use of fresh water.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct WaterUse {
    /// Unique in the plan.
    pub id: Id,
    /// What the person calls it.
    pub name: String,
    /// Litres a day.
    pub litres_per_day: Estimate<f64>,
    /// Whether that is for each person or for all.
    pub per: Per,
    /// How much of it ends in the grey tank, in percent.
    pub to_grey_percent: f64,
}

record!(WaterUse { id, name, litres_per_day, per, to_grey_percent });

impl Default for WaterUse {
    fn default() -> Self {
        Self {
            id: 0,
            name: String::new(),
            litres_per_day: Estimate::Plain(0.0),
            per: Per::Person,
            to_grey_percent: 0.0,
        }
    }
}

/// Whom an amount a day is for.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
pub enum Per {
    /// For each person.
    #[default]
    Person,
    /// For everybody together.
    Van,
}

words!(Per { Person = "person", Van = "van" });
