//! Files of typical years (TMY3 and EPW, both open formats), read into twelve months of twenty-four hours.
//!
//! Each has a line an hour: what the sun gave, and how warm it was. Lines are taken one by one, so that reading takes as
//! long as the text is, whatever stands in it; the first line that cannot be meant ends it, with its number.
//!
//! ```
//! use kerbstead_core::sun::typical::{Fault, read};
//! let unreadable = read("Dear diary,\n").unwrap_err();
//! assert_eq!((unreadable.line, unreadable.fault), (1, Fault::NeitherFormat));
//! ```

mod epw;
mod line;
mod reduced;
mod rows;
mod tmy3;

use super::position::{Place, sound};
use super::sky::{Irradiance, extraterrestrial_day_wh_m2};
use jiff::civil::Date;
use serde::Serialize;

/// No file has more lines than this: a leap year in steps of five minutes.
pub const MOST_LINES: usize = 105_500;

/// A typical year at a place.
#[derive(Clone, Debug, PartialEq)]
pub struct TypicalYear {
    /// Where.
    pub place: Place,
    /// How far the file's clock is ahead of universal time, in hours: standard time, all year.
    pub utc_offset_h: f64,
    /// January to December.
    pub months: [TypicalMonth; 12],
}

/// The mean day of a month.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct TypicalMonth {
    /// Means of the hours from 0:00 to 1:00 and so on by the file's clock. An hour of the file belongs to the month and day
    /// that stand in its line, also the one that ends at 24:00.
    pub hours: [TypicalHour; 24],
    /// Mean of the days' lows, in degrees Celsius.
    pub low_c: f64,
    /// Mean of the days' highs.
    pub high_c: f64,
    /// The coldest hour.
    pub coldest_c: f64,
    /// The warmest hour.
    pub warmest_c: f64,
    /// How many days it has.
    pub days: u32,
}

/// The mean of an hour of a month.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
pub struct TypicalHour {
    /// What came down.
    pub sky: Irradiance,
    /// The air in degrees Celsius.
    pub air_c: f64,
}

impl TypicalMonth {
    /// What falls on a level square metre on the mean day, in watt-hours.
    pub fn global_wh_m2(&self) -> f64 {
        self.hours.iter().map(|hour| hour.sky.global_w_m2).sum()
    }

    /// Mean temperature in degrees Celsius.
    pub fn mean_c(&self) -> f64 {
        self.hours.iter().map(|hour| hour.air_c).sum::<f64>() / 24.0
    }

    /// Its mean clearness index, 0 to 1, for the degrees north of its place and the month's number (1 to 12): what falls,
    /// as a share of what would fall without air on the month's middle day. 0 in a polar night.
    pub fn clearness(&self, month: i8, latitude_deg: f64) -> f64 {
        let above = Date::new(2_023, month, 16).map_or(0.0, |day| extraterrestrial_day_wh_m2(day, latitude_deg));
        if above < 1.0 { 0.0 } else { sound(self.global_wh_m2() / above, 0.0, 1.0) }
    }
}

/// Why a file was not read.
#[derive(Clone, Debug, PartialEq)]
pub struct Unreadable {
    /// The number of the line, from 1.
    pub line: usize,
    /// What is wrong with it.
    pub fault: Fault,
}

/// What is wrong with a line. What stands there is given as it is, its first characters if it is long.
#[derive(Clone, Debug, PartialEq)]
pub enum Fault {
    /// It begins neither as a TMY3 nor as an EPW file does.
    NeitherFormat,
    /// The line of headings has no such column.
    NoColumn(&'static str),
    /// The line ends before that column.
    TooShort(&'static str),
    /// No number.
    NotANumber(&'static str, String),
    /// A number that this cannot be, and the range that it can be in.
    OutOfRange(&'static str, f64, [f64; 2]),
    /// No day of a year.
    NotADay(String),
    /// No hour of a day.
    NotAnHour(String),
    /// There are more lines than [`MOST_LINES`].
    TooManyLines,
    /// The file ended, and an hour of a month (1 to 12, 1 to 24) had no value in that column.
    Nothing {
        /// Of which column.
        column: &'static str,
        /// The month.
        month: u8,
        /// The hour that it ends with.
        hour: u8,
    },
}

/// Reads the text of a file, of either format. The lines may end in either way; what a value's flags say is not asked.
///
/// # Errors
///
/// [`Unreadable`] for the first line that is wrong, or for the last when an hour of a month has no value.
pub fn read(text: &str) -> Result<TypicalYear, Unreadable> {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    if text.get(..9).is_some_and(|start| start.eq_ignore_ascii_case("LOCATION,")) {
        epw::read(text)
    } else {
        tmy3::read(text)
    }
}
