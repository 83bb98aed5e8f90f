//! Where a store could be charged, besides what a stay offers all its days.

use jiff::civil::Date;

use super::decimal::of_measure;
use super::record::{record, words};
use super::{Id, Money};

/// A place or a machine to charge at: a table with a socket, a library, a generator. The way of charging is looked for
/// among those that are not in use; one that is in use charges.
#[derive(Clone, Debug, Default, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct Charging {
    /// Unique in the plan.
    pub id: Id,
    /// What the person calls it.
    pub name: String,
    /// What gives the power.
    pub gives: Gives,
    /// The stay during which it can be used; without it, any day of the route.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub stay: Option<Id>,
    /// The one day; without it, every day of the stay or the route.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none", with = "Option<String>"))]
    pub on: Option<Date>,
    /// The hour from which on; without it, as of any socket.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub from_hour: Option<f64>,
    /// Hours in which it can be used, or is; without it, two.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub charging_hours: Option<f64>,
    /// The most it gives; without it, no limit but the store's own.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub gives_w: Option<f64>,
    /// What a stop costs: a coffee, a day's ticket.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub stop_price: Option<Money>,
    /// What an hour costs besides: fuel, a meter.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub hour_price: Option<Money>,
    /// Whether it is in use.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "std::ops::Not::not"))]
    pub in_use: bool,
}

record!(Charging {
    id, name, gives, stay, on, from_hour, charging_hours, gives_w, stop_price, hour_price, in_use,
} unless empty { in_use });

impl Charging {
    /// The hour from which on it gives.
    pub fn from_hour(&self) -> f64 {
        self.from_hour.unwrap_or(crate::power::constants::MAINS_FROM_HOUR)
    }

    /// Whether it is there on a day of a stay.
    pub fn is_there(&self, on: Date, stay: Option<Id>) -> bool {
        self.on.is_none_or(|day| day == on) && (self.stay.is_none() || self.stay == stay)
    }

    /// What so many hours at one stop cost.
    ///
    /// ```
    /// use kerbstead_core::plan::{Charging, Money};
    /// let table = Charging { stop_price: Some(Money::whole(4)), hour_price: Some(Money::whole(1)), ..Charging::default() };
    /// assert_eq!(table.price(2.0), Money::whole(6));
    /// ```
    pub fn price(&self, hours: f64) -> Money {
        let an_hour = self.hour_price.unwrap_or(Money::ZERO);
        self.stop_price.unwrap_or(Money::ZERO) + an_hour.scaled(of_measure(hours))
    }

    /// For so many hours.
    pub fn hours(&self) -> f64 {
        self.charging_hours.unwrap_or(crate::power::constants::STOP_HOURS)
    }
}

/// What gives the power.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
pub enum Gives {
    /// A mains socket.
    #[default]
    Socket,
    /// A generator.
    Generator,
}

words!(Gives { Socket = "socket", Generator = "generator" });
