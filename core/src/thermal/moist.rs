//! An hour of water: in the air, and on the faces that are colder than its dew point, in closed form.
//!
//! `m dw/dt = G + ρQ (outside - w) - Σ k (w - saturation at the face)` over the faces that are wet or get wet, with k by Lewis's
//! relation. A face that would give more water than lies on it gives just that, evenly over the hour, and the hour is worked
//! out again. Fog that the air cannot bear at the end of the hour falls on the coldest face. The heat that water takes and
//! gives when it settles and dries is left out.

use super::constants::{AIR_J_KGK, AIR_KG_M3, INSIDE_CONVECTION_W_M2K};
use super::damp::{dew_point_c, humidity_ratio, saturation_pa, vapour_pa};
use super::relax;

/// Less water on a face is none, in kg.
const LEAST_KG: f64 = 1e-12;

/// Water in a room.
#[derive(Clone, Debug)]
pub(super) struct Moist {
    /// Dry air, in kg.
    air_kg: f64,
    pressure_pa: f64,
    /// In kg/kg.
    pub ratio: f64,
    /// On each face, in kg.
    pub water_kg: Vec<f64>,
    /// What each face takes for each kg/kg, in kg/h.
    takes_kg_h: Vec<f64>,
    /// Faces that take part in an hour: which, the saturation at it, and what it gives at most if that is certain.
    taking: Vec<(usize, f64, Option<f64>)>,
}

/// What comes into the air in an hour.
#[derive(Clone, Copy, Debug)]
pub(super) struct Into {
    pub water_kg_h: f64,
    pub air_m3_h: f64,
    pub outside_ratio: f64,
}

impl Moist {
    pub fn new(volume_m3: f64, pressure_pa: f64, ratio: f64, areas_m2: impl Iterator<Item = f64>) -> Self {
        let takes = |m2: f64| m2 * INSIDE_CONVECTION_W_M2K / AIR_J_KGK * 3_600.0;
        let takes_kg_h: Vec<f64> = areas_m2.map(takes).collect();
        let water_kg = vec![0.0; takes_kg_h.len()];
        Self { air_kg: AIR_KG_M3 * volume_m3, pressure_pa, ratio, water_kg, takes_kg_h, taking: vec![] }
    }

    /// An hour with its faces at these temperatures and the air, at its end, at another; gives the mean ratio, and the water
    /// that has left the air for faces, in kg.
    pub fn hour(&mut self, into: Into, faces_c: &[f64], air_c: f64) -> (f64, f64) {
        self.choose(into, faces_c);
        let (mean, mut end) = self.settle(into);
        let mut settled_kg = 0.0;
        for at in 0..self.taking.len() {
            let (face, saturated, fixed_kg) = self.taking[at];
            let kg = fixed_kg.map_or_else(|| self.takes_kg_h[face] * (mean - saturated), |kg| -kg);
            settled_kg += kg;
            self.water_kg[face] = if fixed_kg.is_some() { 0.0 } else { self.water_kg[face] + kg };
        }
        let borne = humidity_ratio(saturation_pa(air_c), self.pressure_pa);
        if end > borne {
            let fog_kg = (end - borne) * self.air_kg;
            (end, settled_kg) = (borne, settled_kg + fog_kg);
            if let Some(face) = coldest(faces_c) {
                self.water_kg[face] += fog_kg;
            }
        }
        self.ratio = end;
        (mean, settled_kg)
    }

    /// Faces that are wet, or colder than the dew point of the air as it would become without them.
    fn choose(&mut self, into: Into, faces_c: &[f64]) {
        self.taking.clear();
        let (fills, drains) = self.air(into);
        let (_, free) = relax(self.ratio, fills, drains, 1.0);
        let most = if free > self.ratio { free } else { self.ratio };
        let is_wet = self.water_kg.iter().any(|kg| *kg > 0.0);
        let saturated = |face_c: f64| humidity_ratio(saturation_pa(face_c), self.pressure_pa);
        let Some(coldest) = coldest(faces_c) else { return };
        if !is_wet && most <= saturated(faces_c[coldest]) {
            return;
        }
        let dew_c = dew_point_c(vapour_pa(most, self.pressure_pa));
        for (face, face_c) in faces_c.iter().enumerate() {
            if self.water_kg[face] > 0.0 || *face_c < dew_c {
                self.taking.push((face, saturated(*face_c), None));
            }
        }
    }

    /// The air alone: what fills its ratio an hour, and what share of it drains.
    fn air(&self, into: Into) -> (f64, f64) {
        let drains = AIR_KG_M3 * into.air_m3_h / self.air_kg;
        (into.water_kg_h / self.air_kg + drains * into.outside_ratio, drains)
    }

    /// Mean and end with the faces that take part; those that dry up give what they have. Each round settles one face at
    /// least, so that there are no more rounds than faces.
    fn settle(&mut self, into: Into) -> (f64, f64) {
        loop {
            let (mut fills, mut drains) = self.air(into);
            for (face, saturated, fixed_kg) in &self.taking {
                let takes = self.takes_kg_h[*face] / self.air_kg;
                match fixed_kg {
                    Some(kg) => fills += kg / self.air_kg,
                    None => (fills, drains) = (fills + takes * saturated, drains + takes),
                }
            }
            let (mean, end) = relax(self.ratio, fills, drains, 1.0);
            let mut is_changed = false;
            for (face, saturated, fixed_kg) in &mut self.taking {
                let has_kg = self.water_kg[*face];
                let left_kg = has_kg + self.takes_kg_h[*face] * (mean - *saturated);
                if fixed_kg.is_none() && left_kg < LEAST_KG {
                    (*fixed_kg, is_changed) = (Some(has_kg), true);
                }
            }
            if !is_changed {
                return (mean, end);
            }
        }
    }
}

/// Which face is coldest.
fn coldest(faces_c: &[f64]) -> Option<usize> {
    (0..faces_c.len()).reduce(|a, b| if faces_c[b] < faces_c[a] { b } else { a })
}
