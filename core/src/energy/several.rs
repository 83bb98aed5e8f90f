//! One course of several stores.

use super::constants::LEAST_SHORT_WH;
use super::least;
use super::prepare::{Offer, Prepared};
use super::step::{Factors, StoreStep, step};

/// What a course of several stores has come to.
#[derive(Clone, Debug)]
pub(super) struct Several {
    pub charge_wh: Vec<f64>,
    steps: Vec<StoreStep>,
    /// The least charge of all together.
    pub lowest_wh: f64,
    pub unserved_wh: f64,
    /// The first hour that was short; infinite if none was.
    pub first_short: f64,
    /// The store that was.
    pub short_store: usize,
    pub floors_held: bool,
}

impl Several {
    pub fn new(prepared: &Prepared) -> Self {
        Self {
            charge_wh: prepared.opening_wh(),
            steps: vec![StoreStep::default(); prepared.sides.len()],
            lowest_wh: prepared.sides.iter().map(|side| side.cell.full_wh).sum(),
            unserved_wh: 0.0,
            first_short: f64::INFINITY,
            short_store: 0,
            floors_held: true,
        }
    }

    /// Runs an hour; gives the charge of all together at its end.
    pub fn hour(&mut self, prepared: &Prepared, hour: usize, offer: Offer, factors: Factors) -> f64 {
        let (mut short_wh, mut short_store) = (0.0, None);
        step(prepared, hour, offer, factors, &mut self.charge_wh, &mut self.steps, &mut |store, _, wh| {
            short_wh += wh;
            short_store = short_store.or(Some(store));
        });
        self.unserved_wh += short_wh;
        let low = self.charge_wh.iter().zip(&prepared.sides).position(|(charge, side)| *charge < side.floor_wh);
        if short_wh > LEAST_SHORT_WH || (low.is_some() && prepared.floors_count) {
            if self.first_short == f64::INFINITY {
                self.short_store = short_store.or(low).unwrap_or(0);
            }
            self.first_short = least(hour as f64, self.first_short);
        }
        let sum_wh: f64 = self.charge_wh.iter().sum();
        self.lowest_wh = least(sum_wh, self.lowest_wh);
        self.floors_held &= low.is_none();
        sum_wh
    }
}
