//! When, and where: the days at home, then the route.

use jiff::civil::Date;

use super::record::{record, words};
use super::{Climate, Estimate, Id, Money};

/// The dates everything hangs on.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct Calendar {
    /// The first day at home that counts; without it, the day the plan is looked at.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none", with = "Option<String>"))]
    pub starts_on: Option<Date>,
    /// The day the flat is left and the route begins.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none", with = "Option<String>"))]
    pub leaves_on: Option<Date>,
    /// With a repeating week: the first day that is no longer on the road.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none", with = "Option<String>"))]
    pub ends_on: Option<Date>,
    /// Which of the two routes counts.
    pub mode: Mode,
}

record!(Calendar { starts_on, leaves_on, ends_on, mode });

/// Which kind of route the plan follows. The other one is kept.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
pub enum Mode {
    /// Stays in order.
    #[default]
    Stays,
    /// A week that repeats.
    Week,
}

words!(Mode { Stays = "stays", Week = "week" });

/// One stop of the route: the drive to it, then its nights. Hours are the stay's own civil hours with a fixed offset,
/// so that every day has 24 of them.
#[derive(Clone, Debug, Default, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct Stay {
    /// Unique in the plan.
    pub id: Id,
    /// What the person calls it.
    pub place: String,
    /// Nights there.
    pub nights: u32,
    /// Hours of driving to get there, on the first day.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub drive_hours: Option<Estimate<f64>>,
    /// Distance to get there.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub drive_km: Option<Estimate<f64>>,
    /// Days a week somebody works there, counted from Monday.
    pub working_days_per_week: u32,
    /// What the place offers.
    pub offers: Offer,
    /// Its sky and air, where they are not the plan's.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Climate::is_empty"))]
    pub climate: Climate,
}

record!(Stay { id, place, nights, drive_hours, drive_km, working_days_per_week, offers, climate });

/// One day of the repeating week.
#[derive(Clone, Debug, Default, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
pub struct WeekDay {
    /// Unique in the plan.
    pub id: Id,
    /// Which day of the week.
    pub weekday: Weekday,
    /// What the day is for.
    pub kind: WeekdayKind,
    /// Hours of driving.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub drive_hours: Option<Estimate<f64>>,
    /// Distance driven.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub drive_km: Option<Estimate<f64>>,
    /// What the day's place offers.
    pub offers: Offer,
}

record!(WeekDay { id, weekday, kind, drive_hours, drive_km, offers });

/// A day of the week.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
#[allow(missing_docs)]
pub enum Weekday {
    #[default]
    Monday,
    Tuesday,
    Wednesday,
    Thursday,
    Friday,
    Saturday,
    Sunday,
}

words!(Weekday {
    Monday = "monday", Tuesday = "tuesday", Wednesday = "wednesday", Thursday = "thursday", Friday = "friday",
    Saturday = "saturday", Sunday = "sunday",
});

impl Weekday {
    /// All seven, from Monday.
    pub const ALL: [Self; 7] =
        [Self::Monday, Self::Tuesday, Self::Wednesday, Self::Thursday, Self::Friday, Self::Saturday, Self::Sunday];
}

/// What a day of the repeating week is for.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
pub enum WeekdayKind {
    /// Somebody works.
    Working,
    /// The van moves.
    Driving,
    /// Neither.
    #[default]
    Idle,
}

words!(WeekdayKind { Working = "working", Driving = "driving", Idle = "idle" });

/// What a place offers while the van is there. Everything not stated is taken as not there.
#[derive(Clone, Debug, Default, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(default))]
#[allow(clippy::struct_excessive_bools)] // a place has these or not, each by itself
pub struct Offer {
    /// Hours a day with a mains socket; without it, none.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub mains_hours: Option<Estimate<f64>>,
    /// Hour of the day the socket becomes free; without it, 9 o'clock.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub mains_from_hour: Option<f64>,
    /// The most the socket gives; without it, no limit but the store's own.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub mains_w: Option<f64>,
    /// Drinking water to fill up.
    pub water: bool,
    /// A place to empty used water.
    pub emptying: bool,
    /// A toilet.
    pub toilet: bool,
    /// A place to empty a toilet.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "std::ops::Not::not"))]
    pub toilet_emptying: bool,
    /// A shower.
    pub shower: bool,
    /// A laundry.
    pub laundry: bool,
    /// Somewhere to leave rubbish.
    pub rubbish: bool,
    /// Fuel for the van.
    pub fuel: bool,
    /// How well a phone works there.
    pub signal: Signal,
    /// Price of a night.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub price_per_night: Option<Estimate<Money>>,
    /// Whether one may stay the night.
    pub night: Night,
    /// How far the next place is if one must leave in the evening.
    #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Option::is_none"))]
    pub fallback_km: Option<f64>,
}

record!(Offer {
    mains_hours,
    mains_from_hour,
    mains_w,
    water,
    emptying,
    toilet,
    toilet_emptying,
    shower,
    laundry,
    rubbish,
    fuel,
    signal,
    price_per_night,
    night,
    fallback_km,
} unless empty { toilet_emptying });

/// How well a phone works at a place.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
#[allow(missing_docs)]
pub enum Signal {
    #[default]
    Unknown,
    None,
    Weak,
    Good,
}

words!(Signal { Unknown = "unknown", None = "none", Weak = "weak", Good = "good" });

/// Whether staying the night is allowed.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
#[allow(missing_docs)]
pub enum Night {
    #[default]
    Unknown,
    Allowed,
    NotAllowed,
}

words!(Night { Unknown = "unknown", Allowed = "allowed", NotAllowed = "not_allowed" });
