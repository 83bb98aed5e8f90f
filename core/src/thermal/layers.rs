//! A wall of layers: how much heat it lets through, and how warm it is at each of them.
//!
//! Layers stand from the inside out. Between them and the air on both sides lie the surface resistances of ISO 6946. Foil
//! counts by its thickness alone, unless a gap lies beside it: then little is radiated across that gap.
//!
//! ```
//! use kerbstead_core::thermal::layers::{Flow, Layer, Wall};
//! let ply = Layer::Solid { thickness_m: 0.006, conductivity_w_mk: 0.13 };
//! let foam = Layer::Solid { thickness_m: 0.03, conductivity_w_mk: 0.034 };
//! let steel = Layer::Solid { thickness_m: 0.0008, conductivity_w_mk: 50.0 };
//! let wall = Wall::new(Flow::Sideways, vec![ply, foam, steel]);
//! assert!((wall.u_w_m2k() - 0.9103).abs() < 1e-3);
//! assert!((wall.temperatures_c(18.0, -5.0)[0] - 15.278).abs() < 0.01);
//! ```

use super::constants::{
    FOIL_EMISSIVITY, GAP_C, GAP_DOWN, GAP_SIDEWAYS_W_M2K, GAP_UP_W_M2K, INSIDE_M2K_W, ORDINARY_EMISSIVITY,
    OUTSIDE_M2K_W, STEFAN_BOLTZMANN, STILL_AIR_W_MK, ZERO_C_IN_K,
};
use super::{sound, sound_c};

/// Which way heat goes out in the cold: up through a roof, down through a floor.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Flow {
    /// Through a roof.
    Up,
    /// Through a side.
    #[default]
    Sideways,
    /// Through a floor.
    Down,
}

impl Flow {
    /// Inside surface resistance, in m² K/W: 0.10, 0.13 or 0.17 (ISO 6946:2017, table 7, from memory).
    pub fn inside_m2k_w(self) -> f64 {
        INSIDE_M2K_W[self as usize]
    }

    /// Convection across a gap so many metres wide, in W/(m² K) (ISO 6946 annex on air gaps, from memory).
    fn gap_convection_w_m2k(self, thickness_m: f64) -> f64 {
        let moving = match self {
            Self::Up => GAP_UP_W_M2K,
            Self::Sideways => GAP_SIDEWAYS_W_M2K,
            Self::Down => GAP_DOWN[0] * libm::pow(thickness_m, GAP_DOWN[1]),
        };
        moving.max(STILL_AIR_W_MK / thickness_m)
    }
}

/// One layer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Layer {
    /// Something solid.
    Solid {
        /// In m, 0 to 1.
        thickness_m: f64,
        /// In W/(m K), 0.001 to 500.
        conductivity_w_mk: f64,
    },
    /// Reflective foil, with the bubbles or the paper that carry it.
    Foil {
        /// In m, 0 to 1.
        thickness_m: f64,
        /// In W/(m K), 0.001 to 500.
        conductivity_w_mk: f64,
        /// Of its bright sides, 0.01 to 1: clean foil has some 0.05.
        emissivity: f64,
    },
    /// Closed air.
    Gap {
        /// In m, 0.0001 to 0.3; ISO 6946 has gaps up to 0.3.
        thickness_m: f64,
    },
}

impl Layer {
    /// Clean foil that is next to nothing by itself.
    pub const FOIL: Self = Self::Foil { thickness_m: 0.000_05, conductivity_w_mk: 200.0, emissivity: FOIL_EMISSIVITY };

    /// Thickness, in m.
    pub fn thickness_m(self) -> f64 {
        match self {
            Self::Solid { thickness_m, .. } | Self::Foil { thickness_m, .. } => sound(thickness_m, 0.0, 1.0),
            Self::Gap { thickness_m } => sound(thickness_m, 1e-4, 0.3),
        }
    }

    fn emissivity(self) -> f64 {
        match self {
            Self::Foil { emissivity, .. } => emissivity,
            Self::Solid { .. } | Self::Gap { .. } => ORDINARY_EMISSIVITY,
        }
    }
}

/// Resistance of a layer by its thickness, d/λ, in m² K/W (ISO 6946:2017).
pub fn solid_m2k_w(thickness_m: f64, conductivity_w_mk: f64) -> f64 {
    sound(thickness_m, 0.0, 1.0) / sound(conductivity_w_mk, 1e-3, 500.0)
}

/// How much of a black body's radiation crosses between two faces, 0 to 1: 1 / (1/ε1 + 1/ε2 - 1) (ISO 6946 annex on air
/// gaps, from memory).
pub fn between_faces(emissivities: [f64; 2]) -> f64 {
    let [a, b] = emissivities.map(|emissivity| sound(emissivity, 0.01, 1.0));
    1.0 / (1.0 / a + 1.0 / b - 1.0)
}

/// Resistance of closed air between two faces, in m² K/W, at a mean temperature (-60 to 90 °C): convection and radiation side
/// by side (ISO 6946 annex on air gaps, from memory).
///
/// ```
/// use kerbstead_core::thermal::layers::{Flow, gap_m2k_w};
/// assert!((gap_m2k_w(0.025, Flow::Sideways, [0.9, 0.9], 10.0) - 0.18).abs() < 0.005);
/// assert!(gap_m2k_w(0.025, Flow::Sideways, [0.05, 0.9], 10.0) > 0.6);
/// ```
pub fn gap_m2k_w(thickness_m: f64, flow: Flow, emissivities: [f64; 2], mean_c: f64) -> f64 {
    let kelvin = sound(mean_c, -60.0, 90.0) + ZERO_C_IN_K;
    let black_w_m2k = 4.0 * STEFAN_BOLTZMANN * kelvin * kelvin * kelvin;
    let convection_w_m2k = flow.gap_convection_w_m2k(sound(thickness_m, 1e-4, 0.3));
    1.0 / (convection_w_m2k + between_faces(emissivities) * black_w_m2k)
}

/// What goes through the wall beside its layers: a share of its area that is built otherwise.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Bridge {
    /// Share of the area, 0 to 1.
    pub share: f64,
    /// Its layers, from the inside out.
    pub layers: Vec<Layer>,
}

/// A wall.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Wall {
    /// Which way heat goes out.
    pub flow: Flow,
    /// Layers from the inside out.
    pub layers: Vec<Layer>,
    /// Ribs.
    pub bridge: Option<Bridge>,
}

impl Wall {
    /// One without ribs.
    pub fn new(flow: Flow, layers: Vec<Layer>) -> Self {
        Self { flow, layers, bridge: None }
    }

    /// With ribs on a share of its area.
    #[must_use]
    pub fn bridged(self, share: f64, layers: Vec<Layer>) -> Self {
        Self { bridge: Some(Bridge { share, layers }), ..self }
    }

    /// Share of the area that ribs have, 0 to 1.
    pub fn bridge_share(&self) -> f64 {
        self.bridge.as_ref().map_or(0.0, |bridge| sound(bridge.share, 0.0, 1.0))
    }

    /// Resistance from air to air beside the ribs, in m² K/W.
    pub fn plain_m2k_w(&self) -> f64 {
        total_m2k_w(self.flow, &self.layers)
    }

    /// Resistance from air to air at the ribs, in m² K/W.
    pub fn bridge_m2k_w(&self) -> Option<f64> {
        self.bridge.as_ref().map(|bridge| total_m2k_w(self.flow, &bridge.layers))
    }

    /// Heat let through, in W/(m² K), ribs side by side with the rest: ISO 6946's upper limit of the resistance. Ribs of steel
    /// also spread heat along the skin, for which ISO 6946 has no rule: more goes through than this says.
    pub fn u_w_m2k(&self) -> f64 {
        let share = self.bridge_share();
        let at_ribs = self.bridge_m2k_w().map_or(0.0, |total_m2k_w| share / total_m2k_w);
        (1.0 - share) / self.plain_m2k_w() + at_ribs
    }

    /// Upper and lower limit of the resistance, in m² K/W, when ribs have as many layers as the rest, of the same thickness:
    /// their mean is what ISO 6946 takes for battens of wood (from memory).
    pub fn limits_m2k_w(&self) -> Option<(f64, f64)> {
        let bridge = self.bridge.as_ref().filter(|bridge| bridge.layers.len() == self.layers.len())?;
        let share = self.bridge_share();
        let (plain, ribs) = (each_m2k_w(self.flow, &self.layers), each_m2k_w(self.flow, &bridge.layers));
        // Side by side, a layer without thickness resists nothing.
        let side_by_side = |(a, b): (f64, f64)| if a * b > 0.0 { 1.0 / ((1.0 - share) / a + share / b) } else { 0.0 };
        let between: f64 = plain.zip(ribs).map(side_by_side).sum();
        Some((1.0 / self.u_w_m2k(), self.flow.inside_m2k_w() + between + OUTSIDE_M2K_W))
    }

    /// Temperatures beside the ribs, in °C: the inside face, each face between two layers, the outside face.
    pub fn temperatures_c(&self, inside_c: f64, outside_c: f64) -> Vec<f64> {
        faces_c(self.flow, &self.layers, inside_c, outside_c)
    }

    /// The same at the ribs; nothing without them.
    pub fn bridge_temperatures_c(&self, inside_c: f64, outside_c: f64) -> Vec<f64> {
        self.bridge.as_ref().map_or_else(Vec::new, |bridge| faces_c(self.flow, &bridge.layers, inside_c, outside_c))
    }

    /// The wall with one more layer beside its ribs, before the one at a place that is counted from 0 at the inside; beyond
    /// the last, it comes last. At the innermost place it also covers the ribs.
    #[must_use]
    pub fn with(&self, at: usize, layer: Layer) -> Self {
        let mut wall = self.clone();
        wall.layers.insert(at.min(wall.layers.len()), layer);
        if at == 0
            && let Some(bridge) = &mut wall.bridge
        {
            bridge.layers.insert(0, layer);
        }
        wall
    }
}

/// Resistance of each layer, in m² K/W, foil beside gaps taken into account.
fn each_m2k_w(flow: Flow, layers: &[Layer]) -> impl Iterator<Item = f64> {
    layers.iter().enumerate().map(move |(at, layer)| match *layer {
        Layer::Solid { thickness_m, conductivity_w_mk } | Layer::Foil { thickness_m, conductivity_w_mk, .. } => {
            solid_m2k_w(thickness_m, conductivity_w_mk)
        }
        Layer::Gap { thickness_m } => {
            let beside = |at: Option<usize>| at.and_then(|at| layers.get(at)).copied();
            let of = |layer: Option<Layer>| layer.map_or(ORDINARY_EMISSIVITY, Layer::emissivity);
            gap_m2k_w(thickness_m, flow, [of(beside(at.checked_sub(1))), of(beside(Some(at + 1)))], GAP_C)
        }
    })
}

fn total_m2k_w(flow: Flow, layers: &[Layer]) -> f64 {
    flow.inside_m2k_w() + each_m2k_w(flow, layers).sum::<f64>() + OUTSIDE_M2K_W
}

/// In proportion to the resistance from the inside air on.
fn faces_c(flow: Flow, layers: &[Layer], inside_c: f64, outside_c: f64) -> Vec<f64> {
    let (inside_c, outside_c) = (sound_c(inside_c), sound_c(outside_c));
    let flow_w_m2 = (inside_c - outside_c) / total_m2k_w(flow, layers);
    let mut face_c = inside_c - flow_w_m2 * flow.inside_m2k_w();
    let mut faces = vec![face_c];
    for layer_m2k_w in each_m2k_w(flow, layers) {
        face_c -= flow_w_m2 * layer_m2k_w;
        faces.push(face_c);
    }
    faces
}
