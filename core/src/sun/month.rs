//! Thirty days by hour: what falls on a panel, and how warm it is outside.
//!
//! ```
//! use jiff::civil::date;
//! use kerbstead_core::sun::clouds::Clouds;
//! use kerbstead_core::sun::month::{Asked, Sky, ThirtyDays, fill};
//! use kerbstead_core::sun::{Place, plane::Setup};
//! let place = Place { latitude_deg: 44.62, longitude_deg: -124.05, altitude_m: 0.0 };
//! let asked = Asked { utc_offset_h: -8.0, ..Asked::new(place, date(2027, 6, 10), Sky::Words(&[Clouds::Clear])) };
//! let mut hours = ThirtyDays::default();
//! fill(&asked, &mut hours);
//! let a_day_wh_m2 = hours.plane_w_m2.iter().sum::<f64>() / 30.0;
//! assert!((7_500.0..8_500.0).contains(&a_day_wh_m2));
//! ```

use super::air::temperature_c;
use super::clouds::{Clouds, under_clouds};
use super::constants::{USUAL_ALBEDO, USUAL_SOILING, USUAL_TURBIDITY};
use super::daylight::Daylight;
use super::plane::{Plane, Setup, all_around_w_m2, on_plane, turned_towards_h, unshaded_share};
use super::position::{Air, Place, refraction_deg, sound};
use super::series::days_of_clearness;
use super::sky::{ClearSky, Irradiance, absolute_air_mass, air_mass, extraterrestrial_w_m2};
use super::track::{Observer, Track};
use super::typical::TypicalMonth;
use crate::plan::add_days;
use jiff::civil::Date;

/// Hours of thirty days.
pub const HOURS: usize = 720;

/// The day that stands for the thirty when the clearest is asked for.
const MIDDLE_DAY: u8 = 15;

/// The sky over thirty days.
#[derive(Clone, Copy, Debug)]
pub enum Sky<'a> {
    /// A word a day, from the first again when there are fewer; none at all is clear.
    Words(&'a [Clouds]),
    /// The days of a month by its clearness index, as [`days_of_clearness`] has them.
    Month {
        /// Mean clearness index, 0 to 1.
        clearness: f64,
        /// Decides the order of the days.
        seed: u64,
    },
    /// Every day with the same clearness index, 0 to 1.
    Steady(f64),
    /// Each day as the mean day of a month of a typical year, also its air. It has every hour's mean, and no dark days; for
    /// those ask for [`Sky::Month`] with [`TypicalMonth::clearness`].
    Typical(&'a TypicalMonth),
}

/// What is asked of thirty days.
#[derive(Clone, Copy, Debug)]
pub struct Asked<'a> {
    /// Where.
    pub place: Place,
    /// The first day by the clock.
    pub first_day: Date,
    /// How far the clock is ahead of universal time, -14 to 14 hours.
    pub utc_offset_h: f64,
    /// The clouds.
    pub sky: Sky<'a>,
    /// How hazy a clear sky is: Linke turbidity, 1 to 10.
    pub turbidity: f64,
    /// Mean low of the days in degrees Celsius.
    pub low_c: f64,
    /// Mean high of the days in degrees Celsius.
    pub high_c: f64,
    /// How the panel is set up.
    pub setup: Setup,
    /// Share of the light that the ground gives back, 0 to 1.
    pub albedo: f64,
    /// Share of the light that reaches the panel by hour of the clock, 0 to 1.
    pub unshaded: [f64; 24],
    /// Share that dirt takes, 0 to 1.
    pub soiling: f64,
    /// How many of the thirty days are wanted; the others stay as they are.
    pub days: usize,
}

impl<'a> Asked<'a> {
    /// A level panel without shade, with usual haze, ground and dirt, a clock of universal time, and days from 10 to 20 °C.
    pub fn new(place: Place, first_day: Date, sky: Sky<'a>) -> Self {
        Self {
            place,
            first_day,
            utc_offset_h: 0.0,
            sky,
            turbidity: USUAL_TURBIDITY,
            low_c: 10.0,
            high_c: 20.0,
            setup: Setup::Flat,
            albedo: USUAL_ALBEDO,
            unshaded: [1.0; 24],
            soiling: USUAL_SOILING,
            days: HOURS / 24,
        }
    }
}

/// Hours of thirty days, from 0:00 of the first by the clock. Each is taken in its middle.
#[derive(Clone, Debug, PartialEq)]
pub struct ThirtyDays {
    /// What reaches the panel after shade and dirt, in watts per square metre: over an hour as many watt-hours.
    pub plane_w_m2: [f64; HOURS],
    /// The air outside in degrees Celsius.
    pub air_c: [f64; HOURS],
}

impl Default for ThirtyDays {
    fn default() -> Self {
        Self { plane_w_m2: [0.0; HOURS], air_c: [0.0; HOURS] }
    }
}

/// Fills thirty days.
pub fn fill(asked: &Asked, hours: &mut ThirtyDays) {
    fill_under(&Overhead::new(asked), asked, hours);
}

/// The same when what does not depend on the panel has been worked out: for the same place, days, clock and haze.
pub fn fill_under(overhead: &Overhead, asked: &Asked, hours: &mut ThirtyDays) {
    let month = Month { asked, overhead };
    let clearness = month.clearness_of_days();
    let days = hours.plane_w_m2.chunks_exact_mut(24).zip(hours.air_c.chunks_exact_mut(24));
    for ((number, day), (planes, airs)) in (0_u8..).zip(&overhead.days).zip(days) {
        month.fill_light(day, clearness.get(usize::from(number)).copied(), number, planes);
        month.fill_air(&day.light, airs);
    }
}

/// The sun of an hour, and what a clear sky would give.
#[derive(Clone, Copy, Debug, Default)]
struct SunHour {
    /// Hours of universal time since 0:00 of its day.
    utc_h: f64,
    apparent_zenith_deg: f64,
    azimuth_deg: f64,
    clear: Irradiance,
}

#[derive(Clone, Debug)]
struct Day {
    light: Daylight,
    extraterrestrial_w_m2: f64,
    hours: [SunHour; 24],
}

impl Day {
    /// What of the light above the air a clear sky lets through on this day.
    fn clearest(&self) -> f64 {
        let above: f64 = self.hours.iter().map(|hour| cos_up(hour) * self.extraterrestrial_w_m2).sum();
        self.hours.iter().map(|hour| hour.clear.global_w_m2).sum::<f64>() / above.max(1e-6)
    }
}

/// The sun over days, whatever lies under it.
#[derive(Clone, Debug)]
pub struct Overhead {
    first_day: Date,
    observer: Observer,
    track: Track,
    sky: ClearSky,
    air: Air,
    offset_h: f64,
    days: Vec<Day>,
}

impl Overhead {
    /// Of the days that are asked for.
    pub fn new(asked: &Asked) -> Self {
        let place = asked.place.sound();
        let mut overhead = Self {
            first_day: asked.first_day,
            observer: Observer::new(place.latitude_deg, place.longitude_deg),
            track: Track::new(asked.first_day, 30),
            sky: ClearSky::new(asked.turbidity, place.altitude_m),
            air: Air::at_altitude(place.altitude_m),
            offset_h: sound(asked.utc_offset_h, -14.0, 14.0),
            days: Vec::new(),
        };
        overhead.days = (0_u8..30).take(asked.days).map(|number| overhead.day(number)).collect();
        overhead
    }

    /// The clearness index of a day without clouds in the middle of the days: what a clear sky lets through.
    pub fn clearest(&self) -> f64 {
        self.days.get(self.days.len() / 2).map_or(0.0, Day::clearest)
    }

    fn day(&self, number: u8) -> Day {
        let date = add_days(self.first_day, i32::from(number)).unwrap_or(self.first_day);
        let extraterrestrial_w_m2 = extraterrestrial_w_m2(date);
        let mut hours = [SunHour::default(); 24];
        for (hour, place) in (0_u8..).zip(&mut hours) {
            *place = self.sun_hour(number, f64::from(hour) + 0.5 - self.offset_h, extraterrestrial_w_m2);
        }
        Day { light: self.track.daylight(number, &self.observer), extraterrestrial_w_m2, hours }
    }

    fn sun_hour(&self, day: u8, utc_h: f64, extraterrestrial_w_m2: f64) -> SunHour {
        let julian_day = self.track.julian_day(f64::from(day) * 24.0 + utc_h);
        let [zenith_deg, azimuth_deg] = self.track.zenith_and_azimuth_deg(julian_day, &self.observer);
        let apparent_zenith_deg = zenith_deg - refraction_deg(90.0 - zenith_deg, self.air);
        let mut hour = SunHour { utc_h, apparent_zenith_deg, azimuth_deg, clear: Irradiance::default() };
        if apparent_zenith_deg < 90.0 {
            let mass = absolute_air_mass(air_mass(apparent_zenith_deg), self.air.pressure_hpa);
            hour.clear = self.sky.at(apparent_zenith_deg, mass, extraterrestrial_w_m2);
        }
        hour
    }

    /// Towards where the sun is at an hour of universal time of a day.
    fn turned(&self, number: u8, utc_h: f64) -> Plane {
        let julian_day = self.track.julian_day(f64::from(number) * 24.0 + utc_h);
        let [zenith_deg, azimuth_deg] = self.track.zenith_and_azimuth_deg(julian_day, &self.observer);
        Plane { tilt_deg: zenith_deg.clamp(0.0, 90.0), azimuth_deg }
    }
}

/// Days to be filled.
struct Month<'a> {
    asked: &'a Asked<'a>,
    overhead: &'a Overhead,
}

impl Month<'_> {
    /// Where clearness decides, that of each day; otherwise nothing.
    fn clearness_of_days(&self) -> Vec<f64> {
        match self.asked.sky {
            Sky::Month { clearness, seed } => {
                days_of_clearness(clearness, self.overhead.day(MIDDLE_DAY).clearest(), HOURS / 24, seed)
            }
            Sky::Steady(clearness) => vec![clearness; HOURS / 24],
            _ => Vec::new(),
        }
    }

    fn fill_light(&self, day: &Day, clearness: Option<f64>, number: u8, planes: &mut [f64]) {
        let share = match (self.asked.sky, clearness) {
            (Sky::Words(words), _) => {
                words.get(usize::from(number) % words.len().max(1)).map(|word| word.clear_share())
            }
            (_, Some(clearness)) => Some(clearness / day.clearest().max(1e-6)),
            _ => None,
        };
        let share = share.unwrap_or(1.0);
        for (at, (hour, plane)) in day.hours.iter().zip(planes).enumerate() {
            let sky = match self.asked.sky {
                Sky::Typical(month) => month.hours.get(at).map_or(hour.clear, |hour| hour.sky),
                _ => under_clouds(hour.clear, share, hour.apparent_zenith_deg, day.extraterrestrial_w_m2),
            };
            let left = unshaded_share(self.asked.unshaded.get(at).copied().unwrap_or(1.0), self.asked.soiling);
            *plane = if sky.global_w_m2 > 0.0 { self.on_panel(day, number, hour, sky) * left } else { 0.0 };
        }
    }

    fn on_panel(&self, day: &Day, number: u8, hour: &SunHour, sky: Irradiance) -> f64 {
        let plane = match self.asked.setup {
            Setup::Flat => return sky.global_w_m2,
            Setup::Tilted(plane) => plane,
            Setup::AllAround => {
                let (zenith_deg, above_w_m2) = (hour.apparent_zenith_deg, day.extraterrestrial_w_m2);
                return all_around_w_m2(sky, zenith_deg, above_w_m2, self.asked.albedo);
            }
            Setup::Turned { times } => self.overhead.turned(number, turned_towards_h(&day.light, times, hour.utc_h)),
        };
        let (zenith_deg, azimuth_deg) = (hour.apparent_zenith_deg, hour.azimuth_deg);
        on_plane(sky, plane, zenith_deg, azimuth_deg, day.extraterrestrial_w_m2, self.asked.albedo).total_w_m2()
    }

    fn fill_air(&self, light: &Daylight, airs: &mut [f64]) {
        for (at, air) in airs.iter_mut().enumerate() {
            let from_noon_h = at as f64 + 0.5 - self.overhead.offset_h - light.noon_utc_h;
            *air = match self.asked.sky {
                Sky::Typical(month) => month.hours.get(at).map_or(0.0, |hour| hour.air_c),
                _ => temperature_c(self.asked.low_c, self.asked.high_c, from_noon_h),
            };
        }
    }
}

/// Cosine of the zenith angle, when the sun is up.
fn cos_up(hour: &SunHour) -> f64 {
    libm::cos(hour.apparent_zenith_deg.min(90.0).to_radians()).max(0.0)
}
