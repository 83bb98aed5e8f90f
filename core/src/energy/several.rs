//! One course of several stores.

use super::constants::LEAST_SHORT_WH;
use super::least;
use super::prepare::{Offer, Prepared};
use super::step::{Factors, StoreStep, step};

/// What a course of several stores has come to.
#[derive(Clone, Debug)]
pub(super) struct Several {
    charge_wh: Vec<f64>,
    steps: Vec<StoreStep>,
    /// The least charge of all together.
    pub lowest_wh: f64,
    pub unserved_wh: f64,
    /// The first hour that was short, and the store that was.
    pub first_short: Option<(usize, usize)>,
}

impl Several {
    pub fn new(prepared: &Prepared) -> Self {
        Self {
            charge_wh: prepared.opening_wh(),
            steps: vec![StoreStep::default(); prepared.sides.len()],
            lowest_wh: prepared.sides.iter().map(|side| side.cell.full_wh).sum(),
            unserved_wh: 0.0,
            first_short: None,
        }
    }

    /// Runs an hour. It is short when a store gives less than is wanted of it and no other one gives the rest, or falls below
    /// its floor.
    #[inline(never)]
    pub fn hour(&mut self, prepared: &Prepared, hour: usize, offer: Offer, factors: Factors) {
        step(prepared, hour, offer, factors, &mut self.charge_wh, &mut self.steps, &mut |_, _, _| {});
        for (store, ((charge, side), step)) in self.charge_wh.iter().zip(&prepared.sides).zip(&self.steps).enumerate() {
            let missing_wh = step.flow.unserved_wh - step.covered_wh;
            let is_short = missing_wh > LEAST_SHORT_WH;
            self.unserved_wh += if is_short { missing_wh } else { 0.0 };
            if self.first_short.is_none() && (is_short || *charge < side.floor_wh) {
                self.first_short = Some((hour, store));
            }
        }
        self.lowest_wh = least(self.charge_wh.iter().sum(), self.lowest_wh);
    }
}
