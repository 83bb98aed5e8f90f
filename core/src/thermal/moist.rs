//! An hour of water: in the air, and on the faces that are colder than its dew point, in closed form.
//!
//! `m dw/dt = G + ρQ (outside - w) - Σ k (w - saturation at the face)` over the faces that are wet or get wet, with k by Lewis's
//! relation. A face that would give more water than lies on it gives just that, evenly over the hour, and the hour is worked
//! out again. Fog that the air cannot bear at the end of the hour falls on the coldest face. What a face cannot hold runs off and
//! is out of the balance. The heat that water takes and gives when it settles and dries is left out.

use super::constants::{AIR_J_KGK, AIR_KG_M3, FACE_HOLDS_KG_M2, INSIDE_CONVECTION_W_M2K};
use super::damp::{humidity_ratio, vapour_pa};
use super::saturation::Table;
use super::{relax, relax_by};

/// Less water on a face is none, in kg.
const LEAST_KG: f64 = 1e-12;

/// Water in a room.
#[derive(Clone, Debug)]
pub(super) struct Moist {
    /// Dry air, in kg.
    air_kg: f64,
    /// 1 divided by that.
    each_kg: f64,
    pressure_pa: f64,
    /// In kg/kg.
    pub ratio: f64,
    /// On each face, in kg.
    pub water_kg: Vec<f64>,
    /// What ran off each face in the hour, in kg.
    pub ran_off_kg: Vec<f64>,
    /// What each face holds, in kg.
    holds_kg: Vec<f64>,
    /// What each face takes for each kg/kg, in kg/h.
    takes_kg_h: Vec<f64>,
    /// Faces that take part in an hour come first, so many of them.
    taking: Vec<Taking>,
    take_part: usize,
}

/// A face that takes part in an hour.
#[derive(Clone, Copy, Debug, Default)]
struct Taking {
    face: usize,
    /// Humidity ratio of saturated air at it, in kg/kg.
    saturated: f64,
    has_kg: f64,
    takes_kg_h: f64,
    /// It gives all that it has.
    dries: bool,
}

impl Taking {
    /// What it takes with the air at a ratio, in kg, if it has that much to give.
    #[inline]
    fn takes_kg(&self, mean: f64) -> f64 {
        self.takes_kg_h * (mean - self.saturated)
    }
}

/// What comes into the air in an hour.
#[derive(Clone, Copy, Debug)]
pub(super) struct Into {
    pub water_kg_h: f64,
    pub air_m3_h: f64,
    pub outside_ratio: f64,
    /// [`super::decay_reach`] of the air changes.
    pub reach: f64,
}

impl Moist {
    pub fn new(volume_m3: f64, pressure_pa: f64, ratio: f64, areas_m2: impl Iterator<Item = f64>) -> Self {
        let areas_m2: Vec<f64> = areas_m2.collect();
        let takes = |m2: &f64| m2 * INSIDE_CONVECTION_W_M2K / AIR_J_KGK * 3_600.0;
        Self {
            air_kg: AIR_KG_M3 * volume_m3,
            each_kg: 1.0 / (AIR_KG_M3 * volume_m3),
            pressure_pa,
            ratio,
            water_kg: vec![0.0; areas_m2.len()],
            ran_off_kg: vec![0.0; areas_m2.len()],
            takes_kg_h: areas_m2.iter().map(takes).collect(),
            holds_kg: areas_m2.iter().map(|m2| m2 * FACE_HOLDS_KG_M2).collect(),
            taking: vec![Taking::default(); areas_m2.len()],
            take_part: 0,
        }
    }

    /// An hour with its faces at these temperatures and, at its end, a saturation pressure of the air; gives the mean ratio, and
    /// the water that has left the air for faces, in kg.
    pub fn hour(&mut self, into: Into, faces_c: &[f64], air_saturation_pa: f64, table: &Table) -> (f64, f64) {
        let free = self.free(into);
        self.choose(free.1, faces_c, table);
        let (mean, mut end) = if self.take_part == 0 { free } else { self.settle(into) };
        let mut settled_kg = 0.0;
        for taking in self.taking.iter().take(self.take_part) {
            let kg = if taking.dries { -taking.has_kg } else { taking.takes_kg(mean) };
            settled_kg += kg;
            // What it has, less all of it, is 0.
            self.water_kg[taking.face] = taking.has_kg + kg;
        }
        let borne = humidity_ratio(air_saturation_pa, self.pressure_pa);
        if end > borne {
            let fog_kg = (end - borne) * self.air_kg;
            (end, settled_kg) = (borne, settled_kg + fog_kg);
            if let Some(face) = coldest(faces_c) {
                self.water_kg[face] += fog_kg;
            }
        }
        self.run_off();
        self.ratio = end;
        (mean, settled_kg)
    }

    fn run_off(&mut self) {
        for ((water_kg, holds_kg), ran_off_kg) in self.water_kg.iter_mut().zip(&self.holds_kg).zip(&mut self.ran_off_kg)
        {
            *ran_off_kg = (*water_kg - holds_kg).max(0.0);
            *water_kg = water_kg.min(*holds_kg);
        }
    }

    /// Mean and end without any face.
    fn free(&self, into: Into) -> (f64, f64) {
        let (fills, drains) = self.air(into);
        relax_by(self.ratio, fills, drains, 1.0, into.reach)
    }

    /// Faces that are wet, or colder than the dew point of the air as it would become without them.
    fn choose(&mut self, free_end: f64, faces_c: &[f64], table: &Table) {
        let most_pa = vapour_pa(free_end.max(self.ratio), self.pressure_pa);
        let mut count = 0;
        for (face, ((face_c, has_kg), takes_kg_h)) in
            faces_c.iter().zip(&self.water_kg).zip(&self.takes_kg_h).enumerate()
        {
            let face_pa = table.saturation_pa(*face_c);
            // Written in any case, and counted if it takes part: a processor would often guess a branch wrong.
            if let Some(next) = self.taking.get_mut(count) {
                let (has_kg, takes_kg_h) = (*has_kg, *takes_kg_h);
                *next = Taking { face, saturated: face_pa, has_kg, takes_kg_h, dries: false };
            }
            count += usize::from(*has_kg > 0.0 || face_pa < most_pa);
        }
        for taking in self.taking.iter_mut().take(count) {
            taking.saturated = humidity_ratio(taking.saturated, self.pressure_pa);
        }
        self.take_part = count;
    }

    /// The air alone: what fills its ratio an hour, and what share of it drains.
    fn air(&self, into: Into) -> (f64, f64) {
        let drains = AIR_KG_M3 * into.air_m3_h * self.each_kg;
        (into.water_kg_h * self.each_kg + drains * into.outside_ratio, drains)
    }

    /// Mean and end with the faces that take part; those that dry up give what they have. Each round settles one face at
    /// least, so that there are no more rounds than faces.
    fn settle(&mut self, into: Into) -> (f64, f64) {
        let (mut fills, mut drains) = self.air(into);
        let each_kg = self.each_kg;
        for taking in self.taking.iter().take(self.take_part) {
            let takes = taking.takes_kg_h * each_kg;
            (fills, drains) = (fills + takes * taking.saturated, drains + takes);
        }
        loop {
            let (mean, end) = relax(self.ratio, fills, drains, 1.0);
            let mut is_changed = false;
            for taking in self.taking.iter_mut().take(self.take_part) {
                if !taking.dries && taking.has_kg + taking.takes_kg(mean) < LEAST_KG {
                    (taking.dries, is_changed) = (true, true);
                    fills += (taking.has_kg - taking.takes_kg_h * taking.saturated) * each_kg;
                    drains -= taking.takes_kg_h * each_kg;
                }
            }
            if !is_changed {
                return (mean, end);
            }
            // What is taken off again may leave a trace below 0.
            drains = drains.max(0.0);
        }
    }
}

/// Which face is coldest.
fn coldest(faces_c: &[f64]) -> Option<usize> {
    (0..faces_c.len()).reduce(|a, b| if faces_c[b] < faces_c[a] { b } else { a })
}
