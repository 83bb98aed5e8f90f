//! What falls on a panel that does not lie level.
//!
//! The diffuse light is taken as Hay and Davies do: some of it comes from around the sun, in proportion to how much beam
//! there is, the rest evenly from the whole sky. An even sky alone (isotropic) gives a tilted panel 3 to 8 % less on a clear
//! day than is measured; Hay and Davies need no table and nothing that is not known already. On a level panel both agree.
//!
//! ```
//! use kerbstead_core::sun::plane::{Plane, on_plane};
//! use kerbstead_core::sun::sky::Irradiance;
//! let sky = Irradiance { global_w_m2: 720.24, beam_w_m2: 884.23, diffuse_w_m2: 93.08 };
//! let tilted = Plane { tilt_deg: 30.0, azimuth_deg: 180.0 };
//! let total = on_plane(sky, tilted, 44.824_2, 171.639_6, 1_377.69, 0.2).total_w_m2();
//! assert!((total - 973.35).abs() < 0.1);
//! ```

use super::constants::{LEAST_COS_ON_PLANE, MOST_TURNS};
use super::daylight::Daylight;
use super::position::sound;
use super::sky::Irradiance;
use serde::Serialize;
use std::f64::consts::PI;

/// How a plane lies.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
pub struct Plane {
    /// Degrees from level, 0 to 180; 90 is upright.
    pub tilt_deg: f64,
    /// Where it faces, in degrees clockwise from north.
    pub azimuth_deg: f64,
}

/// How a panel is set up.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Setup {
    /// Level on the roof.
    #[default]
    Flat,
    /// At one tilt towards one direction.
    Tilted(Plane),
    /// Upright, on average over every direction it could face: the sides of something that stands anyhow.
    AllAround,
    /// Turned and tilted towards the sun so many times a day (1 to 24): the day from sunrise to sunset has so many equal
    /// parts, and in each it faces where the sun is in the middle of it.
    Turned {
        /// How many times.
        times: u8,
    },
}

/// What falls on a plane, in watts per square metre of it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
pub struct OnPlane {
    /// Straight from the sun.
    pub beam_w_m2: f64,
    /// From the sky.
    pub sky_w_m2: f64,
    /// From the ground.
    pub ground_w_m2: f64,
}

impl OnPlane {
    /// All of it.
    pub fn total_w_m2(self) -> f64 {
        self.beam_w_m2 + self.sky_w_m2 + self.ground_w_m2
    }
}

/// Cosine of the angle between the sun and what stands straight up from the plane, -1 to 1: negative when the sun is
/// behind it. Source: spherical astronomy; Reda and Andreas, NREL/TP-560-34302, equation 47.
pub fn cos_incidence(plane: Plane, zenith_deg: f64, azimuth_deg: f64) -> f64 {
    let (sin_zenith, cos_zenith) = libm::sincos(sound(zenith_deg, 0.0, 180.0).to_radians());
    let (sin_tilt, cos_tilt) = libm::sincos(sound(plane.tilt_deg, 0.0, 180.0).to_radians());
    let apart = sound(azimuth_deg - plane.azimuth_deg, -1e6, 1e6).to_radians();
    (cos_zenith * cos_tilt + sin_zenith * sin_tilt * libm::cos(apart)).clamp(-1.0, 1.0)
}

/// Angle of incidence in degrees, 0 to 180. Source: as [`cos_incidence`].
///
/// ```
/// use kerbstead_core::sun::plane::{Plane, incidence_deg};
/// let plane = Plane { tilt_deg: 30.0, azimuth_deg: 170.0 };
/// // The worked example of NREL/TP-560-34302.
/// assert!((incidence_deg(plane, 50.111_62, 194.340_24) - 25.187).abs() < 0.001);
/// ```
pub fn incidence_deg(plane: Plane, zenith_deg: f64, azimuth_deg: f64) -> f64 {
    libm::acos(cos_incidence(plane, zenith_deg, azimuth_deg)).to_degrees()
}

/// What falls on a plane when the sun stands there, the air lets so much of it through above the air, and the ground gives
/// back a share (`albedo`, 0 to 1) of what falls on it. Source: Hay and Davies 1980, with the bounds that pvlib 0.16.1
/// has near the horizon; the ground as seen from a plane, `(1 - cos tilt) / 2`.
pub fn on_plane(
    sky: Irradiance,
    plane: Plane,
    zenith_deg: f64,
    azimuth_deg: f64,
    extraterrestrial_w_m2: f64,
    albedo: f64,
) -> OnPlane {
    let facing = cos_incidence(plane, zenith_deg, azimuth_deg).max(0.0);
    let cos_zenith = libm::cos(sound(zenith_deg, 0.0, 180.0).to_radians());
    let beam = if cos_zenith > 0.0 { sky.beam_w_m2 } else { 0.0 };
    let around_sun = sound(beam / extraterrestrial_w_m2.max(1.0), 0.0, 1.0);
    let ratio = facing / cos_zenith.max(LEAST_COS_ON_PLANE);
    let cos_tilt = libm::cos(sound(plane.tilt_deg, 0.0, 180.0).to_radians());
    let even = f64::midpoint(1.0, cos_tilt);
    OnPlane {
        beam_w_m2: beam * facing,
        sky_w_m2: sky.diffuse_w_m2 * (around_sun * ratio + (1.0 - around_sun) * even),
        ground_w_m2: sky.global_w_m2 * sound(albedo, 0.0, 1.0) * (1.0 - cos_tilt) / 2.0,
    }
}

/// What falls on upright planes that face every way, on average, as [`on_plane`] has each: the cosine of the angle to the
/// sun, where it is above 0, is the sine of the zenith angle over pi on average.
///
/// ```
/// use kerbstead_core::sun::plane::{Plane, all_around_w_m2, on_plane};
/// use kerbstead_core::sun::sky::Irradiance;
/// let sky = Irradiance { global_w_m2: 720.24, beam_w_m2: 884.23, diffuse_w_m2: 93.08 };
/// let upright = |azimuth_deg| Plane { tilt_deg: 90.0, azimuth_deg };
/// let of = |azimuth: u32| on_plane(sky, upright(f64::from(azimuth)), 44.8, 171.6, 1_377.7, 0.2).total_w_m2();
/// let mean_w_m2 = (0..360).map(of).sum::<f64>() / 360.0;
/// assert!((all_around_w_m2(sky, 44.8, 1_377.7, 0.2) - mean_w_m2).abs() < 0.05);
/// ```
pub fn all_around_w_m2(sky: Irradiance, zenith_deg: f64, extraterrestrial_w_m2: f64, albedo: f64) -> f64 {
    let (sin_zenith, cos_zenith) = libm::sincos(sound(zenith_deg, 0.0, 180.0).to_radians());
    let facing = sin_zenith / PI;
    let beam = if cos_zenith > 0.0 { sky.beam_w_m2 } else { 0.0 };
    let around_sun = sound(beam / extraterrestrial_w_m2.max(1.0), 0.0, 1.0);
    let ratio = facing / cos_zenith.max(LEAST_COS_ON_PLANE);
    let from_sky = sky.diffuse_w_m2 * (around_sun * ratio + (1.0 - around_sun) / 2.0);
    beam * facing + from_sky + sky.global_w_m2 * sound(albedo, 0.0, 1.0) / 2.0
}

/// The middle of the part of a day that a moment lies in, when a panel is turned so many times a day: hours as in the
/// [`Daylight`] and the moment. Before sunrise the first part counts, after sunset the last.
pub fn turned_towards_h(day: &Daylight, times: u8, hour: f64) -> f64 {
    let times = f64::from(times.clamp(1, MOST_TURNS));
    let rise = day.sunrise_utc_h.unwrap_or(day.noon_utc_h - day.length_h / 2.0);
    let part_h = day.length_h.max(1e-3) / times;
    let part = sound(libm::floor((hour - rise) / part_h), 0.0, times - 1.0);
    rise + (part + 0.5) * part_h
}

/// What is left of an irradiance or a power after shade and dirt: `unshaded` is the share of the hour's light that reaches
/// the panel, `soiling` the share that dirt takes, both 0 to 1. Shade takes beam and diffuse alike: a shadow on a part of a
/// panel costs more than its area. Common practice, no source.
///
/// ```
/// use kerbstead_core::sun::plane::unshaded_share;
/// assert!((unshaded_share(0.5, 0.04) - 0.48).abs() < 1e-12);
/// ```
pub fn unshaded_share(unshaded: f64, soiling: f64) -> f64 {
    sound(unshaded, 0.0, 1.0) * (1.0 - sound(soiling, 0.0, 1.0))
}
