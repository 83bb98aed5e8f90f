//! What the balance of days takes for usual. All of it is common practice, no source; what the person states wins.

/// The hour at which somebody begins who does not say when.
pub const BEGINS_HOUR: f64 = 9.0;

/// The hour from which it is light enough to work outdoors, when the plan does not say.
pub const LIGHT_FROM_HOUR: f64 = 8.0;

/// The hour until which it is light enough to work outdoors, when the plan does not say.
pub const LIGHT_UNTIL_HOUR: f64 = 18.0;

/// The chance that a day is dry, in percent, when the plan does not say.
pub const DRY_PERCENT: f64 = 65.0;

/// How much longer work takes on the road, in percent, when the plan does not say.
pub const ROAD_EXTRA_PERCENT: f64 = 50.0;

/// The length of a slot in which work is planned.
pub const SLOTS_PER_HOUR: u32 = 2;

/// The days that work is planned for beyond the day of leaving.
pub const DAYS_BEYOND: u32 = 60;

/// The most days that work is planned for.
pub const MOST_WORK_DAYS: u32 = 400;

/// The least share of its hours that a task which is not done still takes, however long it was worked on, in percent.
pub const LEAST_LEFT_PERCENT: f64 = 10.0;

/// Fewer days to spare than this before leaving are little.
pub const TIGHT_DAYS: f64 = 2.0;

/// Within so many days of leaving, what has no end yet is close.
pub const CLEARING_DAYS: i32 = 14;

/// How often the work is run with durations and weather by chance.
pub const RUNS: u32 = 1_000;

/// The most days for which a chance is told.
pub const MOST_DAYS_TOLD: usize = 60;

/// The most changes that are told to save days.
pub const MOST_SAVINGS: usize = 6;
