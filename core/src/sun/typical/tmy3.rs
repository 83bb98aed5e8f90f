//! TMY3: a line about the station, a line of headings, and a line an hour. Source: Wilcox and Marion, Users Manual for TMY3
//! Data Sets, NREL/TP-581-43156 (from memory; the headings as pvlib 0.16.1's file has them).

use super::line::{Line, number_of, told};
use super::rows::{AIR, COLUMNS, Header, LIGHT, Row, Rows, hour_of, line_fits, month_and_day};
use super::{Fault, TypicalYear, Unreadable};
use crate::sun::position::Place;

/// What stands for a value that is not there.
const MISSING_BELOW: f64 = -9_000.0;

pub(super) fn read(text: &str) -> Result<TypicalYear, Unreadable> {
    let mut lines = (1..).zip(text.lines());
    let header = header(lines.next())?;
    let (number, headings) = lines.next().unwrap_or((2, ""));
    let columns = Columns::find(&Line::new(number, headings))?;
    let mut rows = Rows::new();
    let mut last = number;
    for (number, text) in lines {
        line_fits(number)?;
        last = number;
        if !text.trim().is_empty() {
            rows.take(&columns.row(&Line::new(number, text))?);
        }
    }
    rows.year(&header, last)
}

/// Station, name, state, hours from universal time, latitude, longitude, metres above the sea.
fn header(first: Option<(usize, &str)>) -> Result<Header, Unreadable> {
    let line = first.map_or(Line::new(1, ""), |(number, text)| Line::new(number, text));
    if line.text(6, "").is_err() || number_of(line.text(3, "")?).is_none() {
        return Err(line.fault(Fault::NeitherFormat));
    }
    let place = Place {
        latitude_deg: line.number(4, "latitude", [-90.0, 90.0])?,
        longitude_deg: line.number(5, "longitude", [-180.0, 180.0])?,
        altitude_m: line.number(6, "elevation", [-500.0, 9_000.0])?,
    };
    Ok(Header { place, utc_offset_h: line.number(3, "time zone", [-14.0, 14.0])? })
}

/// Where the columns stand.
struct Columns {
    date: usize,
    time: usize,
    light: [usize; 3],
    air: usize,
}

impl Columns {
    fn find(headings: &Line) -> Result<Self, Unreadable> {
        Ok(Self {
            date: headings.find("Date (MM/DD/YYYY)")?,
            time: headings.find("Time (HH:MM)")?,
            light: [headings.find("GHI (W/m^2)")?, headings.find("DNI (W/m^2)")?, headings.find("DHI (W/m^2)")?],
            air: headings.find("Dry-bulb (C)")?,
        })
    }

    fn row(&self, line: &Line) -> Result<Row, Unreadable> {
        let (date, time) = (line.text(self.date, "date")?, line.text(self.time, "time")?);
        let mut parts = date.split('/');
        let day = month_and_day(parts.next().unwrap_or_default(), parts.next().unwrap_or_default());
        let (month, day) = day.ok_or_else(|| line.fault(Fault::NotADay(told(date))))?;
        let hour = time.split_once(':').and_then(|(hour, _)| hour_of(hour));
        let hour = hour.ok_or_else(|| line.fault(Fault::NotAnHour(told(time))))?;
        let [global, beam, diffuse, air] = COLUMNS;
        let is_missing = |value| value < MISSING_BELOW;
        let [at_global, at_beam, at_diffuse] = self.light;
        let light = |at, column| line.measured(at, column, LIGHT, is_missing);
        let values = [
            light(at_global, global)?,
            light(at_beam, beam)?,
            light(at_diffuse, diffuse)?,
            line.measured(self.air, air, AIR, is_missing)?,
        ];
        Ok(Row { month, day, hour, values })
    }
}
