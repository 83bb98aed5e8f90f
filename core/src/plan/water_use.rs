//! Fresh water that people use, whatever they carry, and where it is taken on and used water is left.

use jiff::civil::Date;

use super::civil::days_between;
use super::record::{record, words};
use super::{Estimate, Id, Money};

/// One use of fresh water.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct WaterUse {
    /// Unique in the plan.
    pub id: Id,
    /// What the person calls it.
    pub name: String,
    /// Litres a day; or each time, where it comes so many times a week.
    pub litres_per_day: Estimate<f64>,
    /// Whether that is for each person or for all.
    pub per: Per,
    /// How much of it ends in the grey tank, in percent.
    pub to_grey_percent: f64,
    /// How often a week it comes; without it, each day.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub times_per_week: Option<f64>,
    /// Whether people drink it: then it grows with the heat of the day.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "std::ops::Not::not"))]
    pub is_drunk: bool,
    /// Hours of bodily work a day, in which more is drunk.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub exertion_hours: Option<f64>,
    /// How hard that work is; without it, moderate.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub effort: Option<Effort>,
    /// What makes it fit to drink; without it, nothing has to.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub treated: Option<Treated>,
}

record!(WaterUse {
    id, name, litres_per_day, per, to_grey_percent, times_per_week, is_drunk, exertion_hours, effort, treated,
} unless empty { is_drunk });

impl Default for WaterUse {
    fn default() -> Self {
        Self {
            id: 0,
            name: String::new(),
            litres_per_day: Estimate::Plain(0.0),
            per: Per::Person,
            to_grey_percent: 0.0,
            times_per_week: None,
            is_drunk: false,
            exertion_hours: None,
            effort: None,
            treated: None,
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

pub use crate::water::needs::Effort;

words!(Effort { Easy = "easy", Moderate = "moderate", Hard = "hard" });

/// What makes water fit to drink.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
pub enum Treated {
    /// It is boiled.
    #[default]
    Boiled,
    /// It goes through a filter.
    Filtered,
}

words!(Treated { Boiled = "boiled", Filtered = "filtered" });

/// A stop at which water is taken on, or used water and what is in the toilet are left, besides what the stays offer.
#[derive(Clone, Debug, Default, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
#[allow(clippy::struct_excessive_bools)] // a stop does these or not, each by itself
pub struct WaterStop {
    /// Unique in the plan.
    pub id: Id,
    /// What the person calls it.
    pub name: String,
    /// The stay during which it can be reached; without it, any day of the route.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub stay: Option<Id>,
    /// The one day.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none", with = "Option<String>"))]
    pub on: Option<Date>,
    /// Where no day is said: every so many days of the stay or the route.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub every_days: Option<u32>,
    /// Whether the cans are filled there.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "std::ops::Not::not"))]
    pub refills: bool,
    /// Whether used water is left there.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "std::ops::Not::not"))]
    pub empties: bool,
    /// Whether the toilet is emptied there.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "std::ops::Not::not"))]
    pub empties_toilet: bool,
    /// What a stop costs.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub stop_price: Option<Money>,
    /// Whether it is in use.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "std::ops::Not::not"))]
    pub in_use: bool,
}

record!(WaterStop {
    id, name, stay, on, every_days, refills, empties, empties_toilet, stop_price, in_use,
} unless empty { refills, empties, empties_toilet, in_use });

impl WaterStop {
    /// Whether it comes on a day of a stay; its intervals are counted from `from`, the first day of its stay or of the route.
    ///
    /// ```
    /// use jiff::civil::date;
    /// use kerbstead_core::plan::WaterStop;
    /// let tap = WaterStop { stay: Some(4), every_days: Some(3), ..WaterStop::default() };
    /// let is_there = |day, stay| tap.is_there(date(2027, 5, day), Some(stay), date(2027, 5, 2));
    /// assert!(is_there(2, 4) && is_there(5, 4) && !is_there(4, 4) && !is_there(5, 6));
    /// ```
    pub fn is_there(&self, on: Date, stay: Option<Id>, from: Date) -> bool {
        (self.stay.is_none() || self.stay == stay)
            && match (self.on, self.every_days) {
                (Some(day), _) => day == on,
                (None, Some(every)) => {
                    u32::try_from(days_between(from, on)).is_ok_and(|days| days.is_multiple_of(every.max(1)))
                }
                (None, None) => true,
            }
    }
}
