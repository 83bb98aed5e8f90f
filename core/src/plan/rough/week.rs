//! A usual week for each kind of life on the road. Common practice, no source.

use super::Place;
use crate::plan::WeekdayKind::{Driving, Idle, Working};
use crate::plan::starter::{has_rough_prices, money};
use crate::plan::{Estimate, Night, Offer, WeekDay, Weekday, WeekdayKind};

/// One day: what it is for, the way driven in hours and km, and what its place offers.
#[derive(Clone, Copy)]
struct Row {
    kind: WeekdayKind,
    drive: Option<(f64, u32)>,
    /// Hours of mains, and the hour they begin.
    mains: Option<(f64, f64)>,
    has_tap: bool,
    /// Low, likely and high, in euro.
    night_eur: Option<[i64; 3]>,
}

const fn day(kind: WeekdayKind) -> Row {
    Row { kind, drive: None, mains: None, has_tap: false, night_eur: None }
}

impl Row {
    const fn drives(mut self, hours: f64, km: u32) -> Self {
        self.drive = Some((hours, km));
        self
    }

    const fn mains(mut self, hours: f64, from_hour: f64) -> Self {
        self.mains = Some((hours, from_hour));
        self
    }

    const fn tap(mut self) -> Self {
        self.has_tap = true;
        self
    }

    const fn paid(mut self, low: i64, likely: i64, high: i64) -> Self {
        self.night_eur = Some([low, likely, high]);
        self
    }
}

/// From Monday to Sunday.
const fn rows(place: Place) -> [Row; 7] {
    // In town the store is charged where somebody works or reads.
    let at_work = day(Working).mains(4.0, 10.0);
    let pitch = day(Idle).mains(14.0, 18.0).tap().paid(10, 18, 30);
    match place {
        Place::Town => [
            at_work.drives(0.3, 8),
            day(Working),
            at_work.tap().drives(0.3, 8),
            day(Working),
            at_work,
            day(Idle).tap().drives(0.5, 20),
            day(Idle),
        ],
        Place::Country => [
            day(Idle),
            day(Driving).tap().drives(1.5, 70),
            day(Idle),
            day(Idle),
            pitch.drives(1.5, 70),
            day(Idle).drives(0.5, 25),
            day(Idle),
        ],
        Place::Moving => [
            day(Driving).drives(3.0, 180),
            day(Driving).drives(2.5, 140),
            day(Idle).tap(),
            day(Driving).drives(3.0, 180),
            day(Driving).tap().drives(2.0, 110),
            pitch.drives(1.0, 40),
            day(Idle),
        ],
        Place::Campsites => [pitch, pitch, pitch.drives(1.5, 80), pitch, pitch, pitch, pitch],
    }
}

/// The seven days.
pub(super) fn days(place: Place, currency: &str) -> Vec<WeekDay> {
    let has_prices = has_rough_prices(currency);
    rows(place).into_iter().zip(Weekday::ALL).map(|(row, weekday)| week_day(row, weekday, has_prices)).collect()
}

/// Distance driven in the week.
pub(super) fn km(place: Place) -> u32 {
    rows(place).iter().filter_map(|row| row.drive).map(|(_, km)| km).sum()
}

fn week_day(row: Row, weekday: Weekday, has_prices: bool) -> WeekDay {
    let is_pitch = row.night_eur.is_some();
    let offers = Offer {
        mains_hours: row.mains.map(|(hours, _)| Estimate::Plain(hours)),
        mains_from_hour: row.mains.map(|(_, from_hour)| from_hour),
        water: row.has_tap,
        // Where water comes from there is mostly a drain.
        emptying: row.has_tap,
        toilet: is_pitch,
        shower: is_pitch,
        price_per_night: row.night_eur.filter(|_| has_prices).map(money),
        night: if is_pitch { Night::Allowed } else { Night::Unknown },
        ..Offer::default()
    };
    WeekDay {
        id: 0,
        weekday,
        kind: row.kind,
        drive_hours: row.drive.map(|(hours, _)| Estimate::Plain(hours)),
        drive_km: row.drive.map(|(_, km)| Estimate::Plain(f64::from(km))),
        offers,
    }
}
