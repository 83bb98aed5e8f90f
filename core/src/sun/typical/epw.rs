//! EPW: eight lines of header, the first of which is the place, and a line an hour. Source: `EnergyPlus`, Auxiliary Programs,
//! the chapter on weather data (from memory).

use super::line::{Line, told};
use super::rows::{AIR, COLUMNS, Header, LIGHT, Row, Rows, hour_of, line_fits, month_and_day};
use super::{Fault, TypicalYear, Unreadable};
use crate::sun::position::Place;

/// Columns of global, beam and diffuse radiation.
const LIGHT_AT: [usize; 3] = [13, 14, 15];
/// Column of the temperature.
const AIR_AT: usize = 6;
/// From here on no light was measured.
const LIGHT_MISSING: f64 = 9_999.0;
/// From here on no temperature was.
const AIR_MISSING: f64 = 99.9;

pub(super) fn read(text: &str) -> Result<TypicalYear, Unreadable> {
    let mut lines = (1..).zip(text.lines());
    let header = header(lines.next())?;
    let mut rows = Rows::new();
    let (mut last, mut is_data) = (1, false);
    for (number, text) in lines {
        line_fits(number)?;
        last = number;
        // A row begins with its year; the lines of the header begin with a word.
        is_data = is_data || text.starts_with(|first: char| first.is_ascii_digit());
        if is_data && !text.trim().is_empty() {
            rows.take(&row(&Line::new(number, text))?);
        }
    }
    rows.year(&header, last)
}

/// `LOCATION`, town, region, country, source, station, latitude, longitude, hours from universal time, metres.
fn header(first: Option<(usize, &str)>) -> Result<Header, Unreadable> {
    let line = first.map_or(Line::new(1, ""), |(number, text)| Line::new(number, text));
    let place = Place {
        latitude_deg: line.number(6, "latitude", [-90.0, 90.0])?,
        longitude_deg: line.number(7, "longitude", [-180.0, 180.0])?,
        altitude_m: line.number(9, "elevation", [-500.0, 9_000.0])?,
    };
    Ok(Header { place, utc_offset_h: line.number(8, "time zone", [-14.0, 14.0])? })
}

fn row(line: &Line) -> Result<Row, Unreadable> {
    let (month, day) = (line.text(1, "month")?, line.text(2, "day")?);
    let found = month_and_day(month, day).ok_or_else(|| line.fault(Fault::NotADay(told(&format!("{month}/{day}")))))?;
    let hour = line.text(3, "hour")?;
    let ends = hour_of(hour).ok_or_else(|| line.fault(Fault::NotAnHour(told(hour))))?;
    let [global, beam, diffuse, air] = COLUMNS;
    let [at_global, at_beam, at_diffuse] = LIGHT_AT;
    let light = |at, column| line.measured(at, column, LIGHT, |value| value >= LIGHT_MISSING);
    let values = [
        light(at_global, global)?,
        light(at_beam, beam)?,
        light(at_diffuse, diffuse)?,
        line.measured(AIR_AT, air, AIR, |value| value >= AIR_MISSING)?,
    ];
    Ok(Row { month: found.0, day: found.1, hour: ends, values })
}
