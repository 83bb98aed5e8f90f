//! The van.

use super::record::{record, words};
use super::{Estimate, Money};
use crate::load::constants as usual;

/// The van, as far as this plan knows it.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct Vehicle {
    /// A rough size, when nothing has been measured.
    pub size: SizeClass,
    /// Inside length of the load space.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub inside_length_mm: Option<f64>,
    /// Inside width at the floor, away from the wheel arches.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub inside_width_mm: Option<f64>,
    /// Inside height in the middle.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub inside_height_mm: Option<f64>,
    /// Mass of the empty van, weighed if possible.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub empty_mass_kg: Option<f64>,
    /// Whether that was read off a scale.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "std::ops::Not::not"))]
    pub is_weighed: bool,
    /// How many people sat in it when its mass was taken; without it, nobody.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub weighed_people: Option<u32>,
    /// How full its fuel tank was then, in percent; without it, as is usual.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub weighed_fuel_percent: Option<f64>,
    /// What of that mass the front axle bore.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub empty_front_kg: Option<f64>,
    /// What of that mass the left wheels bore; without it, half.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub empty_left_kg: Option<f64>,
    /// The most it may weigh with everything in it (GVWR).
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub gross_limit_kg: Option<f64>,
    /// The most the front axle may bear.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub front_limit_kg: Option<f64>,
    /// The most the rear axle may bear.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub rear_limit_kg: Option<f64>,
    /// From the front axle to the rear axle.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub wheelbase_mm: Option<f64>,
    /// From the rear axle to the end of the van.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub rear_overhang_mm: Option<f64>,
    /// From the left wheels to the right ones.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub track_mm: Option<f64>,
    /// From the front axle back to where the floor of the load space begins.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub floor_from_axle_mm: Option<f64>,
    /// From the front axle back to the middle of the seats; without it, as is usual.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub seats_from_axle_mm: Option<f64>,
    /// Mass of one who travels; without it, as is usual.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub person_kg: Option<f64>,
    /// What the fuel tank holds.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub tank_l: Option<f64>,
    /// What it burns.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub burns: Option<Fuel>,
    /// What is to be kept free for shopping, guests and what is found on the way.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub luggage_kg: Option<f64>,
    /// Voltage of the socket a store is charged from while driving.
    pub socket_volts: f64,
    /// The fuse of that socket.
    pub socket_fuse_a: f64,
    /// What it would bring if it were sold: on the day it is bought, or else on the first day of the plan.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub resale: Option<Estimate<Money>>,
    /// How much less it would bring with every month; without it, it keeps its price.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub resale_falls: Option<Money>,
    /// Fuel for 100 km.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub fuel_l_per_100_km: Option<Estimate<f64>>,
    /// Price of a litre of it.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub fuel_price_per_l: Option<Estimate<Money>>,
}

record!(Vehicle {
    size,
    inside_length_mm,
    inside_width_mm,
    inside_height_mm,
    empty_mass_kg,
    is_weighed,
    weighed_people,
    weighed_fuel_percent,
    empty_front_kg,
    empty_left_kg,
    gross_limit_kg,
    front_limit_kg,
    rear_limit_kg,
    wheelbase_mm,
    rear_overhang_mm,
    track_mm,
    floor_from_axle_mm,
    seats_from_axle_mm,
    person_kg,
    tank_l,
    burns,
    luggage_kg,
    socket_volts,
    socket_fuse_a,
    resale,
    resale_falls,
    fuel_l_per_100_km,
    fuel_price_per_l,
} unless empty { is_weighed });

impl Vehicle {
    /// What one who travels weighs, in kilograms.
    pub fn person_kg(&self) -> f64 {
        self.person_kg.unwrap_or(usual::PERSON_KG)
    }

    /// How full its fuel tank was when its mass was taken, in percent.
    pub fn weighed_fuel_percent(&self) -> f64 {
        self.weighed_fuel_percent.unwrap_or(usual::WEIGHED_FUEL_PERCENT)
    }

    /// From the front axle back to the middle of the seats, in millimetres.
    pub fn seats_from_axle_mm(&self) -> f64 {
        self.seats_from_axle_mm.unwrap_or(usual::SEATS_FROM_AXLE_MM)
    }

    /// What is to be kept free, in kilograms.
    pub fn luggage_kg(&self) -> f64 {
        self.luggage_kg.unwrap_or(0.0)
    }
}

impl Default for Vehicle {
    fn default() -> Self {
        use crate::power::constants as typical;
        Self {
            size: SizeClass::default(),
            inside_length_mm: None,
            inside_width_mm: None,
            inside_height_mm: None,
            empty_mass_kg: None,
            is_weighed: false,
            weighed_people: None,
            weighed_fuel_percent: None,
            empty_front_kg: None,
            empty_left_kg: None,
            gross_limit_kg: None,
            front_limit_kg: None,
            rear_limit_kg: None,
            wheelbase_mm: None,
            rear_overhang_mm: None,
            track_mm: None,
            floor_from_axle_mm: None,
            seats_from_axle_mm: None,
            person_kg: None,
            tank_l: None,
            burns: None,
            luggage_kg: None,
            socket_volts: typical::SOCKET_VOLTS,
            socket_fuse_a: typical::SOCKET_FUSE_A,
            resale: None,
            resale_falls: None,
            fuel_l_per_100_km: None,
            fuel_price_per_l: None,
        }
    }
}

/// What a van burns.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
#[allow(missing_docs)]
pub enum Fuel {
    #[default]
    Diesel,
    Petrol,
}

words!(Fuel { Diesel = "diesel", Petrol = "petrol" });

/// Size of a panel van by class; no makes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
pub enum SizeClass {
    /// A car-based van one sits in but does not stand in.
    Small,
    /// A panel van with a normal roof.
    #[default]
    Medium,
    /// A panel van one can stand in.
    HighRoof,
    /// A long panel van one can stand in.
    LongHighRoof,
}

words!(SizeClass { Small = "small", Medium = "medium", HighRoof = "high_roof", LongHighRoof = "long_high_roof" });
