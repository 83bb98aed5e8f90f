//! Where places are, what sky is over them, and how warm it is there.

use super::Id;
use super::record::{record, words};
pub use crate::sun::climates::Climate as Like;
pub use crate::sun::clouds::Clouds;

/// The sky and the air of a place. What a stay does not say is as in the plan's own.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct Climate {
    /// Degrees north, negative south. Without it, there is no sun to count on.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub latitude_deg: Option<f64>,
    /// Degrees east, negative west; without it, the middle of the clock's zone.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub longitude_deg: Option<f64>,
    /// Height above the sea; without it, none.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub altitude_m: Option<f64>,
    /// Hours that the clock there is ahead of universal time; without it, as the longitude has it.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub clock_ahead_h: Option<f64>,
    /// Mean low of a day.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub low_c: Option<f64>,
    /// Mean high of a day.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub high_c: Option<f64>,
    /// A word for the clouds.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub clouds: Option<Clouds>,
    /// Mean clearness index of a day, in percent: what reaches the ground of what would without air.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub clearness_percent: Option<f64>,
    /// A usual climate, month by month, for what is not said.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub like: Option<Like>,
    /// A typical year that was read in, for what is not said.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub year: Option<Id>,
}

record!(Climate {
    latitude_deg,
    longitude_deg,
    altitude_m,
    clock_ahead_h,
    low_c,
    high_c,
    clouds,
    clearness_percent,
    like,
    year,
});

impl Climate {
    /// What is said here, and otherwise there. What is said of the sky goes together, and so does where it is.
    #[must_use]
    pub fn or(&self, other: &Self) -> Self {
        let place = if self.latitude_deg.is_some() { self } else { other };
        let says_sky = |climate: &Self| {
            climate.clouds.is_some()
                || climate.clearness_percent.is_some()
                || climate.like.is_some()
                || climate.year.is_some()
        };
        let sky = if says_sky(self) { self } else { other };
        Self {
            latitude_deg: place.latitude_deg,
            longitude_deg: place.longitude_deg,
            altitude_m: place.altitude_m.or(self.altitude_m),
            clock_ahead_h: place.clock_ahead_h,
            low_c: self.low_c.or(other.low_c),
            high_c: self.high_c.or(other.high_c),
            clouds: sky.clouds,
            clearness_percent: sky.clearness_percent,
            like: sky.like,
            year: sky.year,
        }
    }

    /// Whether nothing is said.
    pub fn is_empty(&self) -> bool {
        *self == Self::default()
    }
}

words!(Like {
    LongWinters = "long_winters", ColdCoast = "cold_coast", Oceanic = "oceanic", InlandPlain = "inland_plain",
    DrySummers = "dry_summers", WetSummers = "wet_summers", DryHeat = "dry_heat",
});

words!(Clouds { Clear = "clear", Some = "some", Many = "many", Overcast = "overcast" });

/// A typical year of a place, read in from a file: twelve mean days of twenty-four hours.
#[derive(Clone, Debug, Default, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct Year {
    /// Unique in the plan.
    pub id: Id,
    /// What the person calls it.
    pub name: String,
    /// Degrees north.
    pub latitude_deg: f64,
    /// Degrees east.
    pub longitude_deg: f64,
    /// Height above the sea.
    pub altitude_m: f64,
    /// Hours that its clock is ahead of universal time.
    pub clock_ahead_h: f64,
    /// Its hours, as [`crate::sun::typical::TypicalYear::to_text`] writes them.
    pub mean_days: String,
}

record!(Year { id, name, latitude_deg, longitude_deg, altitude_m, clock_ahead_h, mean_days });
