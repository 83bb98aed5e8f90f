//! What an item does to the air of the van: it burns, or it blows.

use crate::plan::record::{record, words};
use crate::plan::{Estimate, Money};

/// What an item burns: a stove to cook on, a heater.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct Burner {
    /// Heat that it gives at its full power.
    pub heat_w: f64,
    /// What it burns.
    pub fuel: BurnerFuel,
    /// Whether its fumes go outside through a pipe. An open flame puts them into the room.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "std::ops::Not::not"))]
    pub vents_out: bool,
    /// Whether a thermostat keeps the room warm with it.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "std::ops::Not::not"))]
    pub keeps_warm: bool,
    /// Hours a day it burns, where no thermostat decides.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub burns_hours: Option<Estimate<f64>>,
    /// The hour it is lit.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub lit_from_hour: Option<f64>,
    /// What of the fuel's heat it gives, in percent; without it, all of an open flame's, and 80 of one with a pipe.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub heat_percent: Option<f64>,
    /// Price of its fuel: of a kilogram of gas, of a litre of the others.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub fuel_price: Option<Money>,
}

record!(Burner {
    heat_w, fuel, vents_out, keeps_warm, burns_hours, lit_from_hour, heat_percent, fuel_price,
} unless empty { vents_out, keeps_warm });

/// What a stove or a heater burns.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
#[allow(missing_docs)]
pub enum BurnerFuel {
    #[default]
    Gas,
    Spirit,
    Petrol,
    Diesel,
}

words!(BurnerFuel { Gas = "gas", Spirit = "spirit", Petrol = "petrol", Diesel = "diesel" });

/// A fan that blows air out of the van, in the hours of its draw.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct Fan {
    /// Air that one moves.
    pub blows_m3_h: f64,
}

record!(Fan { blows_m3_h });
