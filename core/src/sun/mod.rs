//! The sun: where it stands, what reaches a panel, what the panel gives, and how warm it is outside.
//!
//! Apart from the plan: every function takes plain numbers and gives plain numbers. From the outside in:
//! - [`position`], [`daylight`]: where the sun stands, exactly, and when it rises and sets; `track` has the same for the
//!   hours of a month, fast;
//! - [`sky`]: what comes from a clear sky; [`clouds`]: what clouds leave of it; [`series`]: days one after another;
//! - [`plane`]: what of it falls on a panel that is flat, tilted or turned to the sun;
//! - [`panel`]: how warm the cells get, and what the panel and its controller give;
//! - [`air`]: the temperature outside by hour;
//! - [`typical`]: files of typical years, read into twelve months of twenty-four hours, and kept as short text;
//! - [`climates`]: means by month of a few climates, for who has no such file;
//! - [`month`]: thirty days of all this in one function.
//!
//! Angles are in degrees, azimuths clockwise from north, irradiances in watts per square metre. No function fails on a
//! strange number: what is not a number counts as 0, and what is out of range as the nearest that is not.

pub mod air;
pub mod climates;
pub mod clouds;
pub mod constants;
pub mod daylight;
pub mod month;
pub mod panel;
pub mod plane;
pub mod position;
pub mod series;
pub mod sky;
mod track;
pub mod typical;

pub use daylight::{Daylight, daylight};
pub use position::{Air, Place, Position, Utc, position};
pub use sky::Irradiance;
