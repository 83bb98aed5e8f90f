//! What comes from the sun above the air, and from a sky without clouds.
//!
//! Of the three usual models, that of Ineichen and Perez is used. Haurwitz's has no beam and knows nothing of haze or
//! altitude; the simplified model of Solis asks for two numbers that nobody in a van knows, the depth of dust and the water
//! in the air. Ineichen and Perez ask for one, the Linke turbidity, and for the altitude, and are among the best of all in
//! comparisons (Reno, Hansen and Stein, SAND2012-2389; from memory).
//!
//! ```
//! use jiff::civil::date;
//! use kerbstead_core::sun::sky::{ClearSky, absolute_air_mass, air_mass, extraterrestrial_w_m2};
//! let extra = extraterrestrial_w_m2(date(2026, 3, 20));
//! let mass = absolute_air_mass(air_mass(44.824_2), 1_013.25);
//! let sky = ClearSky::new(3.0, 0.0).at(44.824_2, mass, extra);
//! assert!((sky.global_w_m2 - 720.2).abs() < 2.0 && (sky.beam_w_m2 - 884.2).abs() < 2.0);
//! ```

use super::constants::{KASTEN_YOUNG, SEA_LEVEL_HPA, SOLAR_CONSTANT_W_M2, SPENCER, TURBIDITY_RANGE};
use super::position::{Utc, sound};
use super::track::Track;
use crate::plan::days_between;
use jiff::civil::Date;
use serde::Serialize;
use std::f64::consts::{PI, TAU};

/// What comes down, in watts per square metre; none of them is negative.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
pub struct Irradiance {
    /// On level ground: `beam × cos zenith + diffuse`.
    pub global_w_m2: f64,
    /// Straight from the sun, on a plane that faces it.
    pub beam_w_m2: f64,
    /// From the rest of the sky, on level ground.
    pub diffuse_w_m2: f64,
}

/// Irradiance above the air on a plane that faces the sun, in watts per square metre, about 1,321 to 1,415. Source: series
/// of Spencer 1971, see [`SPENCER`].
pub fn extraterrestrial_w_m2(day: Date) -> f64 {
    let angle = TAU * f64::from(days_between(day.first_of_year(), day)) / 365.0;
    let once = libm::sincos(angle);
    let twice = libm::sincos(2.0 * angle);
    let [mean, by_cos, by_sin, by_cos_twice, by_sin_twice] = SPENCER;
    SOLAR_CONSTANT_W_M2 * (mean + by_cos * once.1 + by_sin * once.0 + by_cos_twice * twice.1 + by_sin_twice * twice.0)
}

/// What falls above the air on a level square metre in a day, in watt-hours. Source: Duffie and Beckman, Solar Engineering
/// of Thermal Processes, equation 1.10.3 (from memory).
pub fn extraterrestrial_day_wh_m2(day: Date, latitude_deg: f64) -> f64 {
    let (sine, cosine) = libm::sincos(sound(latitude_deg, -90.0, 90.0).to_radians());
    let noon = Utc { date: day, hour: 12.0 }.julian_day();
    let (sin_decl, cos_decl) = libm::sincos(Track::new(day, 1).heading(noon).declination_deg.to_radians());
    let (level, swing) = (sine * sin_decl, cosine * cos_decl);
    let sunset = libm::acos((-level / swing.max(1e-12)).clamp(-1.0, 1.0));
    24.0 / PI * extraterrestrial_w_m2(day) * (swing * libm::sin(sunset) + sunset * level).max(0.0)
}

/// How many times the air straight above the light goes through, 1 to 38, for an apparent zenith angle; below the horizon
/// as on it. Source: Kasten and Young 1989, see [`KASTEN_YOUNG`].
pub fn air_mass(apparent_zenith_deg: f64) -> f64 {
    let zenith_deg = sound(apparent_zenith_deg, 0.0, 90.0);
    let [factor, shift_deg, exponent] = KASTEN_YOUNG;
    1.0 / (libm::cos(zenith_deg.to_radians()) + factor * libm::pow(shift_deg + 90.0 - zenith_deg, exponent))
}

/// The air mass where the pressure is another than at the sea. Source: proportion of pressures, as pvlib 0.16.1 has it.
pub fn absolute_air_mass(relative_air_mass: f64, pressure_hpa: f64) -> f64 {
    relative_air_mass * pressure_hpa / SEA_LEVEL_HPA
}

/// A sky without clouds over one place. Source of all of it: Ineichen and Perez, Solar Energy 73, 2002, as pvlib 0.16.1
/// has it, without Perez's enhancement.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ClearSky {
    turbidity: f64,
    /// What the global irradiance has as its factor, and what in its exponent.
    global: [f64; 2],
    /// Factor of the beam.
    beam: f64,
    /// The most of the global irradiance that may be beam.
    beam_share: f64,
}

impl ClearSky {
    /// The sky for a Linke turbidity of 1 to 10 (see [`USUAL_TURBIDITY`](super::constants::USUAL_TURBIDITY)) and an
    /// altitude of 0 to 8,000 metres.
    pub fn new(turbidity: f64, altitude_m: f64) -> Self {
        let [least, most] = TURBIDITY_RANGE;
        let (turbidity, altitude_m) = (sound(turbidity, least, most), sound(altitude_m, 0.0, 8_000.0));
        let (fh1, fh2) = (libm::exp(-altitude_m / 8_000.0), libm::exp(-altitude_m / 1_250.0));
        let (cg1, cg2) = (5.09e-5 * altitude_m + 0.868, 3.92e-5 * altitude_m + 0.038_7);
        Self {
            turbidity,
            global: [cg1, -cg2 * (fh1 + fh2 * (turbidity - 1.0))],
            beam: 0.664 + 0.163 / fh1,
            beam_share: (1.0 - (0.1 - 0.2 * libm::exp(-turbidity)) / (0.1 + 0.882 / fh1)).max(0.0),
        }
    }

    /// What comes down at an apparent zenith angle through an absolute air mass, for an irradiance above the air; nothing
    /// when the sun is down.
    pub fn at(&self, apparent_zenith_deg: f64, absolute_air_mass: f64, extraterrestrial_w_m2: f64) -> Irradiance {
        let cos_zenith = libm::cos(sound(apparent_zenith_deg, 0.0, 180.0).to_radians());
        if apparent_zenith_deg >= 90.0 || cos_zenith <= 0.0 {
            return Irradiance::default();
        }
        let [factor, exponent] = self.global;
        let global = factor * extraterrestrial_w_m2 * cos_zenith * libm::exp(exponent * absolute_air_mass);
        let beam = extraterrestrial_w_m2 * self.beam * libm::exp(-0.09 * absolute_air_mass * (self.turbidity - 1.0));
        let beam = beam.min(global * self.beam_share / cos_zenith);
        Irradiance { global_w_m2: global, beam_w_m2: beam, diffuse_w_m2: (global - beam * cos_zenith).max(0.0) }
    }
}
