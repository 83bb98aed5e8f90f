//! What sales are to bring, and what a thing at home is worth that is not sold.

use jiff::civil::Date;
use rust_decimal::Decimal;

use super::Money;
use super::record::record;

/// What the sales of belongings are to bring together.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct SalesWish {
    /// The sum, what selling costs taken off; without it, what cash needs to stay above the floor up to that day.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub wanted_sum: Option<Money>,
    /// The day by which it must be there; without it, the day of leaving.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none", with = "Option<String>"))]
    pub wanted_on: Option<Date>,
    /// The chance that is wanted of reaching it, in percent; without it,
    /// [`WANTED_PERCENT`](crate::money::constants::WANTED_PERCENT).
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none", with = "Option<String>"))]
    pub wanted_percent: Option<Decimal>,
}

record!(SalesWish { wanted_sum, wanted_on, wanted_percent });

/// A thing at home, if it is not sold: taken along as it is, cut or fitted to the van, or stored.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct Kept {
    /// The price of what would have to be bought if it did not come along.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub replaces: Option<Money>,
    /// Whether it can come along as it is.
    pub usable: bool,
    /// What it still brings later, as it is.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub later_price: Option<Money>,
    /// Its mass as it is, in kilograms.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub mass_kg: Option<f64>,
    /// The floor that it takes as it is, in square metres.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub floor_m2: Option<f64>,
    /// What cutting it or fitting it to the van costs; without it, it cannot be.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub fit_cost: Option<Money>,
    /// What it still brings later, once it was fitted; without it, nothing.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub fitted_later_price: Option<Money>,
    /// Its mass once it was fitted, in kilograms; without it, as before.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub fitted_mass_kg: Option<f64>,
    /// The floor that it takes once it was fitted, in square metres; without it, as before.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub fitted_floor_m2: Option<f64>,
    /// What storing it costs a month; without it, it cannot be stored.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub storage_monthly: Option<Money>,
}

record!(Kept {
    replaces,
    usable,
    later_price,
    mass_kg,
    floor_m2,
    fit_cost,
    fitted_later_price,
    fitted_mass_kg,
    fitted_floor_m2,
    storage_monthly,
});

impl Default for Kept {
    fn default() -> Self {
        Self {
            replaces: None,
            usable: true,
            later_price: None,
            mass_kg: None,
            floor_m2: None,
            fit_cost: None,
            fitted_later_price: None,
            fitted_mass_kg: None,
            fitted_floor_m2: None,
            storage_monthly: None,
        }
    }
}
