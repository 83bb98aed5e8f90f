//! Where the sun stands, by NREL's solar position algorithm.
//!
//! ```
//! use kerbstead_core::sun::{Air, Place, Utc, position};
//! let place = Place { latitude_deg: 39.742_476, longitude_deg: -105.178_6, altitude_m: 1_830.14 };
//! let utc = Utc::new(2003, 10, 17, 19.0 + 30.5 / 60.0).unwrap();
//! let sun = position(utc, place, Air { pressure_hpa: 820.0, temperature_c: 11.0 });
//! // The worked example of the algorithm's own report, NREL/TP-560-34302.
//! assert!((sun.apparent_zenith_deg - 50.111_62).abs() < 1e-4);
//! assert!((sun.azimuth_deg - 194.340_24).abs() < 1e-4);
//! ```

use super::constants::{
    DELTA_T_S, FIRST_JD, JD_2000, LAST_JD, REFRACTION_FROM_DEG, SEA_LEVEL_HPA, STANDARD_AIR, USUAL_AIR_C, YEAR_DAYS,
};
use crate::plan::days_between;
use jiff::civil::{Date, date};
use solar_positioning::{Location, SolarPositions, time::JulianDate};

/// A place on the earth.
///
/// ```
/// use kerbstead_core::sun::Place;
/// let place = Place { latitude_deg: 44.62, longitude_deg: 235.95, altitude_m: 40.0 };
/// assert!((place.sound().longitude_deg + 124.05).abs() < 1e-9);
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Place {
    /// Degrees north, -90 to 90.
    pub latitude_deg: f64,
    /// Degrees east, -180 to 180; beyond, it is taken round the earth.
    pub longitude_deg: f64,
    /// Metres above the sea, -500 to 9,000.
    pub altitude_m: f64,
}

impl Place {
    /// The place with every number in its range, as all functions take it.
    #[must_use]
    pub fn sound(self) -> Self {
        Self {
            latitude_deg: sound(self.latitude_deg, -90.0, 90.0),
            longitude_deg: half_turn(sound(self.longitude_deg, -1e6, 1e6)),
            altitude_m: sound(self.altitude_m, -500.0, 9_000.0),
        }
    }
}

/// The air that bends the light of a low sun.
///
/// ```
/// use kerbstead_core::sun::Air;
/// assert!((Air::at_altitude(1_600.0).pressure_hpa - 835.28).abs() < 0.05);
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Air {
    /// Pressure at the place, not reduced to the sea, in hectopascals, 1 to 1,200.
    pub pressure_hpa: f64,
    /// Temperature in degrees Celsius, -90 to 70.
    pub temperature_c: f64,
}

impl Air {
    /// That of the standard atmosphere at so many metres, at a usual temperature.
    pub fn at_altitude(altitude_m: f64) -> Self {
        Self { pressure_hpa: standard_pressure_hpa(altitude_m), temperature_c: USUAL_AIR_C }
    }

    fn sound(self) -> Self {
        Self {
            pressure_hpa: sound(self.pressure_hpa, 1.0, 1_200.0),
            temperature_c: sound(self.temperature_c, -90.0, 70.0),
        }
    }
}

/// A moment in universal time.
///
/// ```
/// use kerbstead_core::sun::Utc;
/// assert!(Utc::new(2027, 2, 29, 12.0).is_none());
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Utc {
    /// The day; before 1900 and after 2100 as the nearest day of those years.
    pub date: Date,
    /// Hours since its 0:00, with fractions; it may be negative or more than 24.
    pub hour: f64,
}

impl Utc {
    /// The moment of a civil date, if there is such a date.
    pub fn new(year: i16, month: i8, day: i8, hour: f64) -> Option<Self> {
        Some(Self { date: Date::new(year, month, day).ok()?, hour })
    }

    pub(super) fn julian_day(self) -> f64 {
        let days = f64::from(days_between(date(2000, 1, 1), self.date));
        sound(JD_2000 + days + sound(self.hour, -1e6, 1e6) / 24.0, FIRST_JD, LAST_JD)
    }
}

/// Where the sun stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Position {
    /// Angle from straight up to the middle of the sun, in degrees, 0 to 180, as it is without air.
    pub zenith_deg: f64,
    /// The same as it is seen, through air that bends the light.
    pub apparent_zenith_deg: f64,
    /// Direction, in degrees clockwise from north, 0 to 360.
    pub azimuth_deg: f64,
}

impl Position {
    /// Angle above the horizon as it is seen, in degrees, -90 to 90.
    pub fn apparent_elevation_deg(self) -> f64 {
        90.0 - self.apparent_zenith_deg
    }
}

/// Where the sun stands at a moment over a place, to a thousandth of a degree. Source: Reda and Andreas, "Solar position
/// algorithm for solar radiation applications", NREL/TP-560-34302, by the crate `solar-positioning`.
pub fn position(utc: Utc, place: Place, air: Air) -> Position {
    let (place, air) = (place.sound(), air.sound());
    let location = Location { latitude: place.latitude_deg, longitude: place.longitude_deg };
    let found = julian(utc.julian_day())
        .and_then(|time| SolarPositions::new().at_from_julian(time, location, place.altitude_m, None).ok());
    // The ranges above leave nothing that it refuses; if it did, the sun would be below the feet, which gives no power.
    let (zenith_deg, azimuth_deg) = found.map_or((180.0, 0.0), |sun| (sun.zenith_angle(), sun.azimuth()));
    let apparent_zenith_deg = zenith_deg - refraction_deg(90.0 - zenith_deg, air);
    Position { zenith_deg, apparent_zenith_deg, azimuth_deg }
}

/// The time as the algorithm takes it: universal time, and how far the even time of the planets is ahead of it.
pub(super) fn julian(julian_day: f64) -> Option<JulianDate> {
    let year = 2_000.0 + (julian_day - JD_2000) / YEAR_DAYS;
    let ahead_s = solar_positioning::delta_t::estimate(year).unwrap_or(DELTA_T_S);
    JulianDate::new(julian_day, ahead_s).ok()
}

/// How much higher than it is the sun seems to stand, in degrees, for a true height in degrees. Source: Reda and Andreas,
/// NREL/TP-560-34302, equation 42, as `solar-positioning` 0.7.2 has it.
pub fn refraction_deg(elevation_deg: f64, air: Air) -> f64 {
    if elevation_deg < REFRACTION_FROM_DEG {
        return 0.0;
    }
    let seen = (elevation_deg + 10.3 / (elevation_deg + 5.11)).to_radians();
    (air.pressure_hpa / 1_010.0) * (283.0 / (273.0 + air.temperature_c)) * 1.02 / (60.0 * libm::tan(seen))
}

/// Pressure of the standard atmosphere at so many metres above the sea, in hectopascals. Source: see [`STANDARD_AIR`].
pub fn standard_pressure_hpa(altitude_m: f64) -> f64 {
    let [kelvin, lapse, exponent] = STANDARD_AIR;
    SEA_LEVEL_HPA * libm::pow(1.0 - lapse * sound(altitude_m, -500.0, 9_000.0) / kelvin, exponent)
}

/// A number in its range; what is none counts as 0, or as the end nearest to it.
pub(super) fn sound(value: f64, least: f64, most: f64) -> f64 {
    if value.is_nan() { 0.0_f64.clamp(least, most) } else { value.clamp(least, most) }
}

/// The same angle between -180 and 180 degrees.
pub(super) fn half_turn(angle_deg: f64) -> f64 {
    (angle_deg + 180.0).rem_euclid(360.0) - 180.0
}
