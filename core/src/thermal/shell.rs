//! The shell: surfaces with their walls and windows.
//!
//! ```
//! use kerbstead_core::thermal::layers::{Flow, Layer, Wall};
//! use kerbstead_core::thermal::shell::{Surface, Window, ua_w_k};
//! let wall = |flow| Wall::new(flow, vec![Layer::Solid { thickness_m: 0.03, conductivity_w_mk: 0.034 }]);
//! let side = Surface::side(6.0, wall(Flow::Sideways), 90.0).with_window(Window::single_glass(0.5));
//! let shell = [Surface::roof(5.0, wall(Flow::Up)), side];
//! let by_hand = 5.0 / (0.10 + 0.03 / 0.034 + 0.04) + 5.5 / (0.13 + 0.03 / 0.034 + 0.04) + 0.5 * 5.8;
//! assert!((ua_w_k(&shell) - by_hand).abs() < 1e-9);
//! ```

use super::constants::{ABSORPTANCE, CLEAR_SKY_W_M2, ORDINARY_EMISSIVITY, OUTSIDE_CONVECTION, RADIATION_W_M2K};
use super::layers::{Flow, Wall};
use super::{sound, sound_c};
use crate::sun::plane::Plane;

/// A colour as the sun sees it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename_all = "snake_case"))]
pub enum Colour {
    /// White and the like: takes 0.3 of the sun.
    #[default]
    Light,
    /// In between: 0.6.
    Middling,
    /// Black and the like: 0.9.
    Dark,
}

impl Colour {
    /// What it takes of the sun, 0 to 1 (ISO 13790, from memory).
    pub fn absorptance(self) -> f64 {
        ABSORPTANCE[self as usize]
    }
}

/// A window, or several alike in one surface.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Window {
    /// With its frame, in m².
    pub area_m2: f64,
    /// Heat through the panes, in W/(m² K), 0.1 to 7.
    pub pane_u_w_m2k: f64,
    /// Heat through the frame, in W/(m² K), 0.1 to 7.
    pub frame_u_w_m2k: f64,
    /// Share of the frame, 0 to 1.
    pub frame_share: f64,
    /// What of the sun on the panes ends inside, 0 to 1.
    pub g_value: f64,
    /// What shades and curtains let through of that, 0 to 1.
    pub unshaded: f64,
}

impl Window {
    /// A single pane without frame: 5.8 W/(m² K) and 0.85 (EN 673 and EN 410, from memory).
    pub fn single_glass(area_m2: f64) -> Self {
        Self { area_m2, pane_u_w_m2k: 5.8, frame_u_w_m2k: 5.8, frame_share: 0.0, g_value: 0.85, unshaded: 1.0 }
    }

    /// Heat through pane and frame, in W/(m² K) (ISO 10077-1 without its edges, from memory).
    pub fn u_w_m2k(&self) -> f64 {
        let frame = sound(self.frame_share, 0.0, 1.0);
        let [pane_u, frame_u] = [self.pane_u_w_m2k, self.frame_u_w_m2k].map(|u| sound(u, 0.1, 7.0));
        (1.0 - frame) * pane_u + frame * frame_u
    }

    /// Heat from the sun for each W/m² on it, in m².
    pub fn sun_m2(&self) -> f64 {
        let share = |value| sound(value, 0.0, 1.0);
        let panes = 1.0 - share(self.frame_share);
        sound(self.area_m2, 0.0, 100.0) * panes * share(self.g_value) * share(self.unshaded)
    }
}

/// One surface.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Surface {
    /// With its window, in m², 0 to 100.
    pub area_m2: f64,
    /// What it is made of.
    pub wall: Wall,
    /// How it lies: a roof at 0 degrees, sides at 90, a floor at 180.
    pub plane: Plane,
    /// What its outside takes of the sun, 0 to 1.
    pub absorptance: f64,
    /// A window in it, no larger than the surface.
    pub window: Option<Window>,
}

impl Surface {
    /// A light roof.
    pub fn roof(area_m2: f64, wall: Wall) -> Self {
        Self::lying(area_m2, wall, Flow::Up, Plane::default())
    }

    /// A light side that faces so many degrees clockwise from north.
    pub fn side(area_m2: f64, wall: Wall, azimuth_deg: f64) -> Self {
        Self::lying(area_m2, wall, Flow::Sideways, Plane { tilt_deg: 90.0, azimuth_deg })
    }

    /// A floor.
    pub fn floor(area_m2: f64, wall: Wall) -> Self {
        Self::lying(area_m2, wall, Flow::Down, Plane { tilt_deg: 180.0, azimuth_deg: 0.0 })
    }

    fn lying(area_m2: f64, wall: Wall, flow: Flow, plane: Plane) -> Self {
        let absorptance = Colour::Light.absorptance();
        Self { area_m2, wall: Wall { flow, ..wall }, plane, absorptance, window: None }
    }

    /// In another colour.
    #[must_use]
    pub fn coloured(self, colour: Colour) -> Self {
        Self { absorptance: colour.absorptance(), ..self }
    }

    /// With a window.
    #[must_use]
    pub fn with_window(self, window: Window) -> Self {
        Self { window: Some(window), ..self }
    }

    /// Its window's area, no larger than its own, in m².
    pub fn window_m2(&self) -> f64 {
        let area_m2 = sound(self.area_m2, 0.0, 100.0);
        self.window.map_or(0.0, |window| sound(window.area_m2, 0.0, area_m2))
    }

    /// Its area beside the window, in m².
    pub fn wall_m2(&self) -> f64 {
        sound(self.area_m2, 0.0, 100.0) - self.window_m2()
    }

    /// Heat that goes out a degree, in W/K.
    pub fn ua_w_k(&self) -> f64 {
        self.wall_m2() * self.wall.u_w_m2k() + self.window_m2() * self.window.map_or(0.0, |window| window.u_w_m2k())
    }
}

/// Heat that goes out through all surfaces a degree, in W/K, in ISO 6946's usual wind of 4 m/s.
pub fn ua_w_k(shell: &[Surface]) -> f64 {
    shell.iter().map(Surface::ua_w_k).sum()
}

/// Heat from an outside face to the air and all around, in W/(m² K), in wind from 0 to 60 m/s: 4 + 4 v and the radiation of an
/// ordinary surface at 10 °C (ISO 6946:2017, annex C, from memory). At 4 m/s it is that of the table, 1/0.04, within 2 %.
///
/// ```
/// use kerbstead_core::thermal::shell::outside_w_m2k;
/// assert!((1.0 / outside_w_m2k(4.0) - 0.04).abs() < 0.001);
/// ```
pub fn outside_w_m2k(wind_m_s: f64) -> f64 {
    let [still, each] = OUTSIDE_CONVECTION;
    still + each * sound(wind_m_s, 0.0, 60.0) + ORDINARY_EMISSIVITY * RADIATION_W_M2K
}

/// What a face radiates to a clear sky beyond what comes back, in W/m², by its tilt in degrees: that of a level one at 0, none
/// from 90 on, for the ground beside is about as warm as the air (ASHRAE Fundamentals, from memory; in between by the cosine:
/// common practice, no source). `clear` is the share of the sky without clouds, 0 to 1.
pub fn to_sky_w_m2(tilt_deg: f64, clear: f64) -> f64 {
    let upward = libm::cos(sound(tilt_deg, 0.0, 180.0).to_radians()).max(0.0);
    ORDINARY_EMISSIVITY * CLEAR_SKY_W_M2 * upward * sound(clear, 0.0, 1.0)
}

/// The air temperature that would warm a face as sun (0 to 1,500 W/m²) and sky do, in °C: air + (α E - to the sky) / h (ASHRAE
/// Fundamentals, sol-air temperature, from memory).
///
/// ```
/// use kerbstead_core::thermal::shell::sol_air_c;
/// // The project's table of reference values: α/h is 0.052, and 4 K go to the sky.
/// assert!((sol_air_c(32.0, 900.0, 0.884, 68.0, 17.0) - 74.8).abs() < 0.05);
/// ```
pub fn sol_air_c(air_c: f64, sun_w_m2: f64, absorptance: f64, to_sky_w_m2: f64, outside_w_m2k: f64) -> f64 {
    let taken_w_m2 = sound(absorptance, 0.0, 1.0) * sound(sun_w_m2, 0.0, 1_500.0) - sound(to_sky_w_m2, 0.0, 500.0);
    sound_c(air_c) + taken_w_m2 / sound(outside_w_m2k, 1.0, 1e3)
}
