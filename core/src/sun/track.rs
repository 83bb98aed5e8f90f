//! The way of the sun over some weeks: the algorithm at four moments, and a cubic through them.
//!
//! A position by the whole algorithm takes some hundred sines. Declination and equation of time change slowly, so that
//! over 33 days a cubic through four moments misses them by a few thousandths of a degree.

use super::constants::{PARALLAX_DEG, SIDEREAL_DEG};
use super::position::{Utc, half_turn, julian};
use jiff::civil::Date;
use solar_positioning::SolarPositions;

/// What of the sun does not depend on the place.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Heading {
    /// Degrees north of the equator at which it stands straight up.
    pub declination_deg: f64,
    /// How far west of Greenwich's meridian it stands at 12:00 of universal time, in degrees: the equation of time.
    pub equation_deg: f64,
}

/// The way of the sun from a day on.
#[derive(Clone, Copy, Debug)]
pub(super) struct Track {
    from_jd: f64,
    step_days: f64,
    nodes: [Heading; 4],
}

/// Where an observer stands, with what is needed of it again and again.
#[derive(Clone, Copy, Debug)]
pub(super) struct Observer {
    pub longitude_deg: f64,
    pub sine: f64,
    pub cosine: f64,
}

impl Observer {
    pub fn new(latitude_deg: f64, longitude_deg: f64) -> Self {
        let (sine, cosine) = libm::sincos(latitude_deg.to_radians());
        Self { longitude_deg, sine, cosine }
    }
}

impl Track {
    /// Over so many days (1 to 31) from the beginning of a day on, whatever the longitude.
    pub fn new(first: Date, days: u8) -> Self {
        let from_jd = Utc { date: first, hour: -24.0 }.julian_day();
        let step_days = f64::from(days.clamp(1, 31) + 2) / 3.0;
        let node = |count: f64| heading(from_jd + count * step_days);
        Self { from_jd, step_days, nodes: [node(0.0), node(1.0), node(2.0), node(3.0)] }
    }

    /// The moment so many hours of universal time after 0:00 of the first day, as a Julian day.
    pub fn julian_day(&self, hours: f64) -> f64 {
        self.from_jd + 1.0 + hours / 24.0
    }

    pub fn heading(&self, julian_day: f64) -> Heading {
        let u = (julian_day - self.from_jd) / self.step_days;
        let (a, b, c) = (u - 1.0, u - 2.0, u - 3.0);
        // Lagrange's polynomials through 0, 1, 2, 3.
        let weights = [-a * b * c / 6.0, u * b * c / 2.0, -u * a * c / 2.0, u * a * b / 6.0];
        let mut sum = Heading::default();
        for (node, weight) in self.nodes.iter().zip(weights) {
            sum.declination_deg += weight * node.declination_deg;
            sum.equation_deg += weight * node.equation_deg;
        }
        sum
    }

    /// Angle from straight up without refraction, and azimuth, in degrees. Source: spherical astronomy; the equations 14
    /// and 47 of Reda and Andreas, NREL/TP-560-34302, without the small shift of azimuth by parallax.
    pub fn zenith_and_azimuth_deg(&self, julian_day: f64, observer: &Observer) -> [f64; 2] {
        let heading = self.heading(julian_day);
        let hour_angle = (heading.equation_deg + 360.0 * day_part(julian_day) + observer.longitude_deg).to_radians();
        let (sin_hour, cos_hour) = libm::sincos(hour_angle);
        let (sin_decl, cos_decl) = libm::sincos(heading.declination_deg.to_radians());
        let cos_zenith = observer.sine * sin_decl + observer.cosine * cos_decl * cos_hour;
        let zenith = libm::acos(cos_zenith.clamp(-1.0, 1.0)).to_degrees();
        let below = PARALLAX_DEG * libm::sqrt((1.0 - cos_zenith * cos_zenith).max(0.0));
        let north = cos_hour * observer.sine * cos_decl - sin_decl * observer.cosine;
        let azimuth = 180.0 + libm::atan2(sin_hour * cos_decl, north).to_degrees();
        [zenith + below, azimuth.rem_euclid(360.0)]
    }
}

/// How far the mean sun has gone since noon, as a part of a day.
fn day_part(julian_day: f64) -> f64 {
    julian_day - libm::floor(julian_day)
}

/// By the algorithm. Mean sidereal time stands for the apparent one: at most 0.005 degrees apart.
fn heading(julian_day: f64) -> Heading {
    let prepared = julian(julian_day).and_then(|time| SolarPositions::new().for_time_from_julian(time).ok());
    let Some(sun) = prepared else { return Heading::default() };
    let [at_2000, a_day] = SIDEREAL_DEG;
    let sidereal = at_2000 + a_day * (julian_day - 2_451_545.0);
    Heading { declination_deg: sun.declination(), equation_deg: half_turn(sidereal - sun.right_ascension()) }
}
