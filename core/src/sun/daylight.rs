//! When the sun rises, stands highest and sets.
//!
//! ```
//! use jiff::civil::date;
//! use kerbstead_core::sun::{Place, daylight};
//! let place = Place { latitude_deg: 44.62, longitude_deg: -124.05, altitude_m: 0.0 };
//! let day = daylight(date(2026, 6, 21), place);
//! // 4:31:01 and 20:04:56 of a clock eight hours behind universal time.
//! assert!((day.sunrise_utc_h.unwrap() - 8.0 - (4.0 + 31.0 / 60.0 + 1.0 / 3_600.0)).abs() < 0.005);
//! assert!((day.sunset_utc_h.unwrap() - 8.0 - (20.0 + 4.0 / 60.0 + 56.0 / 3_600.0)).abs() < 0.005);
//! assert!((day.length_h - 15.565).abs() < 0.01);
//! ```

use super::constants::RISE_DEG;
use super::position::Place;
use super::track::{Observer, Track};
use jiff::civil::Date;

/// A day's light. Hours are of universal time since 0:00 of the day that was asked for; they may be negative or more
/// than 24, because a day by the sun begins early in the east and late in the west.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Daylight {
    /// When the upper edge rises; none when the sun stays up or down.
    pub sunrise_utc_h: Option<f64>,
    /// When it stands highest.
    pub noon_utc_h: f64,
    /// When the upper edge sets; none when the sun stays up or down.
    pub sunset_utc_h: Option<f64>,
    /// From rise to set, in hours; 0 when it stays down, 24 when it stays up.
    pub length_h: f64,
}

/// The light of a civil day over a place on flat ground. The day is the one that has its noon within twelve hours of
/// 12:00 by the mean sun there; where clocks are kept a day apart from the sun, ask for the sun's day. Good to about
/// 10 seconds away from the polar circles, where it is a matter of minutes. Source: Reda and Andreas,
/// NREL/TP-560-34302, appendix A.2, with the sun's place taken anew at each event.
pub fn daylight(day: Date, place: Place) -> Daylight {
    let place = place.sound();
    let observer = Observer::new(place.latitude_deg, place.longitude_deg);
    Track::new(day, 1).daylight(0, &observer)
}

impl Track {
    /// The light of a day, counted from the first; hours of universal time since its own 0:00.
    pub(super) fn daylight(&self, day: u8, observer: &Observer) -> Daylight {
        let begin_h = f64::from(day) * 24.0;
        let mean_noon_h = 12.0 - observer.longitude_deg / 15.0;
        let noon = |guess_h: f64| mean_noon_h - self.heading(self.julian_day(begin_h + guess_h)).equation_deg / 15.0;
        let noon_h = noon(noon(mean_noon_h));
        let event = |side: f64| {
            let mut hours = Some(6.0);
            // The declination moves by a minute of arc an hour at most: three times are plenty.
            for _ in 0..3 {
                let guess_h = noon_h + side * hours.unwrap_or(12.0);
                let heading = self.heading(self.julian_day(begin_h + guess_h));
                let drift_h = (mean_noon_h - heading.equation_deg / 15.0 - noon_h) * side;
                hours = half_day_h(heading.declination_deg, observer).map(|half| half + drift_h);
            }
            hours.map(|hours| noon_h + side * hours)
        };
        let (sunrise_utc_h, sunset_utc_h) = (event(-1.0), event(1.0));
        let is_up = || is_up_at_noon(self.heading(self.julian_day(begin_h + noon_h)).declination_deg, observer);
        let length_h = match (sunrise_utc_h, sunset_utc_h) {
            (Some(rise), Some(set)) => set - rise,
            (Some(rise), None) => noon_h + 12.0 - rise,
            (None, Some(set)) => set - (noon_h - 12.0),
            (None, None) => {
                if is_up() {
                    24.0
                } else {
                    0.0
                }
            }
        };
        Daylight { sunrise_utc_h, noon_utc_h: noon_h, sunset_utc_h, length_h }
    }
}

/// Hours from noon to the setting of the upper edge at a declination; none when it neither rises nor sets. Source:
/// spherical astronomy; Reda and Andreas, NREL/TP-560-34302, equation A4.
fn half_day_h(declination_deg: f64, observer: &Observer) -> Option<f64> {
    let (sine, cosine) = libm::sincos(declination_deg.to_radians());
    let cosine = (libm::sin(RISE_DEG.to_radians()) - observer.sine * sine) / (observer.cosine * cosine);
    (cosine > -1.0 && cosine < 1.0).then(|| libm::acos(cosine).to_degrees() / 15.0)
}

fn is_up_at_noon(declination_deg: f64, observer: &Observer) -> bool {
    let (sine, cosine) = libm::sincos(declination_deg.to_radians());
    observer.sine * sine + observer.cosine * cosine > libm::sin(RISE_DEG.to_radians())
}
