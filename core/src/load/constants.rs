//! Numbers of the load that do not come from the plan.

/// Strips and hooks must hold so many times as much as is needed, unless somebody says more. Common practice, no source.
pub const STRIP_TIMES: u32 = 3;
/// Never fewer times than that. Common practice, no source.
pub const LEAST_STRIP_TIMES: u32 = 2;
/// What a strip still holds in a van in the sun, in percent, unless somebody says otherwise. Common practice, no source.
pub const STRIP_HEAT_PERCENT: f64 = 50.0;
/// How full a fuel tank is when a van is weighed or its mass is stated, in percent, unless somebody says otherwise: the mass
/// in running order is taken with 90 %. Source: Commission Regulation (EU) No 1230/2012, article 2 (from memory).
pub const WEIGHED_FUEL_PERCENT: f64 = 90.0;
/// From the front axle back to the middle of the front seats. Common practice, no source.
pub const SEATS_FROM_AXLE_MM: f64 = 1_000.0;
/// Mass of a person. Source: Commission Regulation (EU) No 1230/2012, article 2 (from memory); 49 CFR 571.110 takes 68 kg.
pub const PERSON_KG: f64 = 75.0;
