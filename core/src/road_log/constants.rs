//! Numbers of the road log that do not come from the plan.

/// Counts closer together than this say nothing, in hours. Common practice, no source.
pub const LEAST_HOURS: f64 = 3.0;
/// Counts farther apart than this are a gap, in days: too much may have happened. Common practice, no source.
pub const MOST_GAP_DAYS: f64 = 14.0;
/// A store that is charged beyond this share of what it holds is full. Common practice, no source.
pub const FULL_SHARE: f64 = 0.99;
/// How far off a plan's numbers usually are before anything is counted, as a share: one standard deviation. Common practice,
/// no source.
pub const PRIOR_SD: f64 = 0.3;
/// The same for what cools: it hangs on the weather and on how often it is opened.
pub const COOLING_SD: f64 = 0.4;
/// What the van drives besides its way, in km a day: one standard deviation around none.
pub const EXTRA_KM_SD: f64 = 12.0;
/// How much a day differs from the mean, as a share of it: water, money, energy. Common practice, no source.
pub const WATER_NOISE: f64 = 0.25;
/// See [`WATER_NOISE`].
pub const MONEY_NOISE: f64 = 0.8;
/// See [`WATER_NOISE`].
pub const ENERGY_NOISE: f64 = 0.2;
/// How much a day's way differs from the mean, in km.
pub const KM_NOISE: f64 = 10.0;
/// How many stretches these guesses count as: one, for a wrong guess that counts more makes intervals too narrow or too wide
/// (measured, see the tests of the calibration).
pub const NOISE_WEIGHT: f64 = 1.0;
/// The interval that is told and taken as a range, in percent.
pub const TOLD_PERCENT: f64 = 80.0;
/// Fewer stretches than this are not enough to correct a plan by.
pub const LEAST_STRETCHES: usize = 3;
/// A correction by less than this share is none. Common practice, no source.
pub const LEAST_CHANGE: f64 = 0.03;
/// After so many logged days, what was never used is told. Common practice, no source.
pub const UNUSED_AFTER_DAYS: usize = 14;
/// After so many logged days, what was never missed is told. Common practice, no source.
pub const UNMISSED_AFTER_DAYS: usize = 14;
/// How much a wish is worth, of 9, where nobody says.
pub const USUAL_WORTH: u32 = 5;
/// The need of a day that the next build is made for: only one day in ten needs more.
pub const NEED_PERCENT: f64 = 90.0;
/// The sun that it is made for: only one day in ten has less.
pub const SUN_PERCENT: f64 = 10.0;
/// What of a lithium store should be used. Common practice, no source.
pub const USABLE_SHARE: f64 = 0.9;
/// What of a panel's yield reaches the cells. Common practice, no source.
pub const CHARGED_SHARE: f64 = 0.9;
/// How much longer a bed is than who lies on it. Common practice, no source.
pub const BED_OVER_MM: f64 = 100.0;
/// How warm it is to be inside. Common practice, no source.
pub const WARM_C: f64 = 16.0;
/// Foam that insulation is told by.
pub const FOAM_MM: f64 = 30.0;
/// Conductivity of rigid foam, aged. Source: makers' declarations to EN 13164, 0.030 to 0.036 W/mK (from memory).
pub const FOAM_W_MK: f64 = 0.035;
