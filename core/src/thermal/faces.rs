//! The shell as faces that are alike all over: walls, ribs, windows; and what an hour outside makes of them.

use super::constants::{INSIDE_M2K_W, OUTSIDE_M2K_W};
use super::setup::Hour;
use super::shell::{Surface, outside_w_m2k, to_sky_w_m2};
use super::{sound, sound_c};

/// What of a surface a face is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// The wall beside its ribs.
    Wall,
    /// The wall at its ribs.
    Bridge,
    /// The window.
    Window,
}

/// A face with what does not change.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Face {
    /// Which surface it belongs to, counted from 0.
    pub surface: usize,
    /// What of it.
    pub part: Part,
    /// In m².
    pub area_m2: f64,
    /// Resistance from the inside air to the inside face, in m² K/W.
    pub inside_m2k_w: f64,
    /// Resistance from the inside air to the outside face, in m² K/W.
    pub to_outside_face_m2k_w: f64,
    absorptance: f64,
    to_clear_sky_w_m2: f64,
}

/// All faces of a shell, and where the sun comes in.
#[derive(Clone, Debug)]
pub(super) struct Faces {
    pub faces: Vec<Face>,
    /// Of each surface, heat for each W/m² on it.
    sun_m2: Vec<f64>,
}

/// A face in an hour.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Now {
    /// What its outside is as if at, in °C.
    sol_air_c: f64,
    /// Share of the way from the inside air to there at which its inside lies.
    inside_share: f64,
}

impl Now {
    /// Temperature of its inside, in °C.
    #[inline]
    pub fn inside_face_c(self, inside_c: f64) -> f64 {
        inside_c - self.inside_share * (inside_c - self.sol_air_c)
    }
}

/// What the shell does in an hour: heat to it is `w_k * inside - comes_w`.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Pull {
    pub w_k: f64,
    /// Comes from outside with the inside at 0 °C, without the sun through windows, in W.
    pub comes_w: f64,
    /// Comes through windows, in W.
    pub sun_w: f64,
}

impl Faces {
    pub fn of(shell: &[Surface]) -> Self {
        let mut faces = Vec::with_capacity(shell.len() * 2);
        for (at, surface) in shell.iter().enumerate() {
            add(&mut faces, at, surface);
        }
        let sun_m2 = |surface: &Surface| match surface.window {
            Some(window) => super::shell::Window { area_m2: surface.window_m2(), ..window }.sun_m2(),
            None => 0.0,
        };
        Self { faces, sun_m2: shell.iter().map(sun_m2).collect() }
    }

    /// What an hour makes of each face, and of all of them.
    pub fn at(&self, hour: &Hour, sun_w_m2: &[f64], now: &mut Vec<Now>) -> Pull {
        let outside_m2k_w = 1.0 / outside_w_m2k(hour.wind_m_s);
        let (air_c, clear) = (sound_c(hour.air_c), sound(hour.clear, 0.0, 1.0));
        let sun = |surface: usize| sun_w_m2.get(surface).map_or(0.0, |sun| sound(*sun, 0.0, 1_500.0));
        let mut pull = Pull::default();
        now.clear();
        now.extend(self.faces.iter().map(|face| {
            let taken_w_m2 = face.absorptance * sun(face.surface) - face.to_clear_sky_w_m2 * clear;
            let sol_air_c = air_c + taken_w_m2 * outside_m2k_w;
            let u_w_m2k = 1.0 / (face.to_outside_face_m2k_w + outside_m2k_w);
            let w_k = face.area_m2 * u_w_m2k;
            pull.w_k += w_k;
            pull.comes_w += w_k * sol_air_c;
            Now { sol_air_c, inside_share: face.inside_m2k_w * u_w_m2k }
        }));
        pull.sun_w = self.sun_m2.iter().enumerate().map(|(at, m2)| m2 * sun(at)).sum();
        pull
    }
}

fn add(faces: &mut Vec<Face>, at: usize, surface: &Surface) {
    let wall = &surface.wall;
    let face = |part: Part, area_m2: f64, inside_m2k_w: f64, total_m2k_w: f64| Face {
        surface: at,
        part,
        area_m2,
        inside_m2k_w,
        to_outside_face_m2k_w: (total_m2k_w - OUTSIDE_M2K_W).max(inside_m2k_w),
        absorptance: if part == Part::Window { 0.0 } else { sound(surface.absorptance, 0.0, 1.0) },
        to_clear_sky_w_m2: to_sky_w_m2(surface.plane.tilt_deg, 1.0),
    };
    let (area_m2, share) = (surface.wall_m2(), wall.bridge_share());
    let inside_m2k_w = wall.flow.inside_m2k_w();
    faces.push(face(Part::Wall, area_m2 * (1.0 - share), inside_m2k_w, wall.plain_m2k_w()));
    if let Some(bridge_m2k_w) = wall.bridge_m2k_w() {
        faces.push(face(Part::Bridge, area_m2 * share, inside_m2k_w, bridge_m2k_w));
    }
    if let Some(window) = surface.window {
        // What is declared holds for an upright window, whose inside resistance is the one sideways.
        faces.push(face(Part::Window, surface.window_m2(), INSIDE_M2K_W[1], 1.0 / window.u_w_m2k()));
    }
    faces.retain(|face| face.area_m2 > 0.0);
}
