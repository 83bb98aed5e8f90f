//! The rows of a file, summed up by month and hour.

use super::{Fault, MOST_LINES, TypicalHour, TypicalMonth, TypicalYear, Unreadable};
use crate::sun::position::Place;
use crate::sun::sky::Irradiance;

/// What is taken of a row, as faults call it.
pub(super) const COLUMNS: [&str; 4] = ["global", "beam", "diffuse", "dry bulb"];
/// Radiation in watt-hours per square metre of an hour. Common practice, no source: above what comes from the sun at all.
pub(super) const LIGHT: [f64; 2] = [0.0, 2_000.0];
/// Degrees Celsius. Common practice, no source: beyond what was ever measured.
pub(super) const AIR: [f64; 2] = [-90.0, 70.0];

/// Where the file is of.
pub(super) struct Header {
    pub place: Place,
    pub utc_offset_h: f64,
}

/// An hour: its month and day, the hour that it ends with (1 to 24), and its values in the order of [`COLUMNS`].
pub(super) struct Row {
    pub month: u8,
    pub day: u8,
    pub hour: u8,
    pub values: [Option<f64>; 4],
}

#[derive(Clone, Copy, Default)]
struct Sum {
    sum: f64,
    count: u32,
}

/// Sums of a file so far.
pub(super) struct Rows {
    /// By month and hour.
    sums: Vec<[Sum; 4]>,
    /// The low and high by month and day.
    days: Vec<Option<[f64; 2]>>,
}

impl Rows {
    pub fn new() -> Self {
        Self { sums: vec![Default::default(); 12 * 24], days: vec![None; 12 * 31] }
    }

    pub fn take(&mut self, row: &Row) {
        let sums = self.sums.get_mut(place_of(row.month, row.hour, 24));
        for (sum, value) in sums.into_iter().flatten().zip(row.values) {
            if let Some(value) = value {
                sum.sum += value;
                sum.count += 1;
            }
        }
        if let [.., Some(air_c)] = row.values
            && let Some(day) = self.days.get_mut(place_of(row.month, row.day, 31))
        {
            let [low, high] = day.unwrap_or([air_c; 2]);
            *day = Some([low.min(air_c), high.max(air_c)]);
        }
    }

    /// The year, once the last line is read.
    pub fn year(&self, header: &Header, last_line: usize) -> Result<TypicalYear, Unreadable> {
        let mut months: [TypicalMonth; 12] = Default::default();
        for (number, month) in (1..).zip(&mut months) {
            for (hour, mean) in (1..).zip(&mut month.hours) {
                *mean = self.hour(number, hour, last_line)?;
            }
            self.days_of(number, month);
        }
        Ok(TypicalYear { place: header.place.sound(), utc_offset_h: header.utc_offset_h, months })
    }

    fn hour(&self, month: u8, hour: u8, line: usize) -> Result<TypicalHour, Unreadable> {
        let sums = self.sums.get(place_of(month, hour, 24)).copied().unwrap_or_default();
        let mut means = [0.0; 4];
        for ((mean, sum), column) in means.iter_mut().zip(sums).zip(COLUMNS) {
            if sum.count == 0 {
                return Err(Unreadable { line, fault: Fault::Nothing { column, month, hour } });
            }
            *mean = sum.sum / f64::from(sum.count);
        }
        let [global_w_m2, beam_w_m2, diffuse_w_m2, air_c] = means;
        Ok(TypicalHour { sky: Irradiance { global_w_m2, beam_w_m2, diffuse_w_m2 }, air_c })
    }

    fn days_of(&self, number: u8, month: &mut TypicalMonth) {
        let (mut lows, mut highs) = (Sum::default(), Sum::default());
        (month.coldest_c, month.warmest_c) = (f64::MAX, f64::MIN);
        let days = self.days.iter().skip(place_of(number, 1, 31)).take(31);
        for &[low, high] in days.flatten() {
            lows.sum += low;
            highs.sum += high;
            lows.count += 1;
            month.coldest_c = month.coldest_c.min(low);
            month.warmest_c = month.warmest_c.max(high);
        }
        // Every hour has a mean by now, so there is at least one day.
        let days = f64::from(lows.count.max(1));
        (month.low_c, month.high_c, month.days) = (lows.sum / days, highs.sum / days, lows.count);
    }
}

/// Where a month (from 1) and one of so many (from 1) stand.
fn place_of(month: u8, number: u8, of: usize) -> usize {
    usize::from(month).saturating_sub(1) * of + usize::from(number).saturating_sub(1)
}

/// Whether a line may still be read.
pub(super) fn line_fits(number: usize) -> Result<(), Unreadable> {
    if number > MOST_LINES { Err(Unreadable { line: number, fault: Fault::TooManyLines }) } else { Ok(()) }
}

/// A month (1 to 12) and a day (1 to 31, whatever the month) from their texts.
pub(super) fn month_and_day(month: &str, day: &str) -> Option<(u8, u8)> {
    let (month, day) = (month.parse().ok()?, day.parse().ok()?);
    ((1..=12).contains(&month) && (1..=31).contains(&day)).then_some((month, day))
}

/// An hour from 1 to 24. Some files call midnight 0: that is the end of the day before, counted as that of its own.
pub(super) fn hour_of(text: &str) -> Option<u8> {
    match text.parse().ok()? {
        0 => Some(24),
        hour @ 1..=24 => Some(hour),
        _ => None,
    }
}
