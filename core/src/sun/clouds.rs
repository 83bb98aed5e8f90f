//! What clouds leave of a clear sky, and what of it still comes straight from the sun.
//!
//! ```
//! use kerbstead_core::sun::clouds::{Clouds, diffuse_share, split, under_clouds};
//! use kerbstead_core::sun::sky::Irradiance;
//! assert!((diffuse_share(0.5) - 0.659).abs() < 0.001);
//! let clear = Irradiance { global_w_m2: 720.0, beam_w_m2: 884.0, diffuse_w_m2: 93.0 };
//! let gray = under_clouds(clear, Clouds::Overcast.clear_share(), 44.8, 1_377.0);
//! assert!((gray.global_w_m2 - 180.0).abs() < 1e-9 && gray.beam_w_m2 < 10.0);
//! ```

use super::constants::{KASTEN_CZEPLAK, LEAST_COS_ZENITH, MOST_BEAM_ZENITH_DEG, OKTAS};
use super::position::sound;
use super::sky::Irradiance;

/// A word for the clouds of an hour or a day.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
pub enum Clouds {
    /// None.
    #[default]
    Clear,
    /// Less than half of the sky.
    Some,
    /// More than half of the sky.
    Many,
    /// All of it.
    Overcast,
}

impl Clouds {
    /// Every word, from the clearest.
    pub const ALL: [Self; 4] = [Self::Clear, Self::Some, Self::Many, Self::Overcast];

    /// Eighths of the sky that are cloud; see [`OKTAS`].
    pub const fn oktas(self) -> f64 {
        let [clear, some, many, overcast] = OKTAS;
        match self {
            Self::Clear => clear,
            Self::Some => some,
            Self::Many => many,
            Self::Overcast => overcast,
        }
    }

    /// What is left of a clear sky's global irradiance: 1, 0.955, 0.718, 0.25.
    pub fn clear_share(self) -> f64 {
        clear_share_of_oktas(self.oktas())
    }
}

/// What so many eighths of cloud leave of a clear sky's global irradiance, 0.25 to 1. Source: Kasten and Czeplak 1980, see
/// [`KASTEN_CZEPLAK`].
pub fn clear_share_of_oktas(oktas: f64) -> f64 {
    let [most, exponent] = KASTEN_CZEPLAK;
    1.0 - most * libm::pow(sound(oktas, 0.0, 8.0) / 8.0, exponent)
}

/// The clearness index: global irradiance as a share of what would be there without air, 0 to 1. Source: definition; near
/// the horizon as [`LEAST_COS_ZENITH`] says.
pub fn clearness(global_w_m2: f64, zenith_deg: f64, extraterrestrial_w_m2: f64) -> f64 {
    let cos_zenith = libm::cos(sound(zenith_deg, 0.0, 180.0).to_radians()).max(LEAST_COS_ZENITH);
    sound(global_w_m2 / (extraterrestrial_w_m2.max(1.0) * cos_zenith), 0.0, 1.0)
}

/// The diffuse share of the global irradiance of an hour, for its clearness. Source: Erbs, Klein and Duffie, Solar Energy
/// 28, 1982, as pvlib 0.16.1 has it.
pub fn diffuse_share(clearness: f64) -> f64 {
    let kt = clearness;
    if kt <= 0.22 {
        1.0 - 0.09 * kt
    } else if kt <= 0.8 {
        0.951_1 + kt * (-0.160_4 + kt * (4.388 + kt * (-16.638 + kt * 12.336)))
    } else {
        0.165
    }
}

/// A global irradiance as beam and diffuse, by its clearness; beyond 87 degrees from the zenith all of it is diffuse.
/// Source: as [`diffuse_share`].
pub fn split(global_w_m2: f64, zenith_deg: f64, extraterrestrial_w_m2: f64) -> Irradiance {
    let global = sound(global_w_m2, 0.0, 3_000.0);
    if zenith_deg.is_nan() || zenith_deg > MOST_BEAM_ZENITH_DEG {
        return Irradiance { global_w_m2: global, beam_w_m2: 0.0, diffuse_w_m2: global };
    }
    let diffuse = global * diffuse_share(clearness(global, zenith_deg, extraterrestrial_w_m2));
    let beam = (global - diffuse) / libm::cos(zenith_deg.to_radians());
    Irradiance { global_w_m2: global, beam_w_m2: beam.max(0.0), diffuse_w_m2: diffuse }
}

/// A clear sky's irradiance when clouds leave a share of it: the global part is that share, split as [`split`] does, with
/// no more beam than without clouds. A share of 1 or more is the clear sky. Common practice, no source for the bound.
pub fn under_clouds(clear: Irradiance, share: f64, zenith_deg: f64, extraterrestrial_w_m2: f64) -> Irradiance {
    if share >= 1.0 || clear.global_w_m2 <= 0.0 {
        return clear;
    }
    let sky = split(clear.global_w_m2 * sound(share, 0.0, 1.0), zenith_deg, extraterrestrial_w_m2);
    let beam = sky.beam_w_m2.min(clear.beam_w_m2);
    let cos_zenith = libm::cos(sound(zenith_deg, 0.0, 90.0).to_radians());
    Irradiance { beam_w_m2: beam, diffuse_w_m2: (sky.global_w_m2 - beam * cos_zenith).max(0.0), ..sky }
}
