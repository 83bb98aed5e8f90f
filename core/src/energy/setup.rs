//! What a run is about: stores, draws, and the hours they are run through.

use super::constants::{MOST_DRAWS, MOST_HOURS, MOST_STORES};
use super::draw::Draw;
use super::store::Store;

/// Stores, draws and hours.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Setup {
    /// At most 16; the first take from shared sources first.
    pub stores: Vec<OnBoard>,
    /// At most 500.
    pub draws: Vec<Draw>,
    /// From the first midnight on, at most 26,400.
    pub hours: Vec<Given>,
    /// Share of the clear sky's yield that each day's clouds leave, 0 to 1.5; 1 where the list ends.
    pub cloud_by_day: Vec<f64>,
}

/// A store with what hangs on it and what is in it.
#[derive(Clone, Debug, PartialEq)]
pub struct OnBoard {
    /// The store.
    pub store: Store,
    /// Rated power of the panels that hang on it, in W.
    pub panel_w: f64,
    /// What these give hour by hour, as [`Given::sun_share`] says it; where the list ends, that counts.
    pub sun_share: Vec<f64>,
    /// What is in it at the beginning, as a share of the usable energy, 0 to 1.
    pub opening_state: f64,
    /// What is to stay in it, as a share of the usable energy, 0 to 1.
    pub floor_state: f64,
}

/// What an hour brings. Powers are averages of the hour.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Given {
    /// Air around the fridge, in °C.
    pub air_c: f64,
    /// The stores, in °C.
    pub store_c: f64,
    /// What panels give under a clear sky as a share of their rated power, losses counted: 0 to 2.
    pub sun_share: f64,
    /// On offer at the vehicle's socket, for all stores, in W.
    pub vehicle_w: f64,
    /// Share of the hour in which that is so: no socket takes more than its limit in it.
    pub vehicle_hour: f64,
    /// On offer from the mains, for all stores, in W.
    pub mains_w: f64,
    /// Share of the hour in which that is so.
    pub mains_hour: f64,
}

impl Default for Given {
    /// An hour at 20 °C without anything on offer.
    fn default() -> Self {
        Self {
            air_c: 20.0,
            store_c: 20.0,
            sun_share: 0.0,
            vehicle_w: 0.0,
            vehicle_hour: 1.0,
            mains_w: 0.0,
            mains_hour: 1.0,
        }
    }
}

impl OnBoard {
    /// A full store without panels of which all may be used.
    pub fn full(store: Store) -> Self {
        Self { store, panel_w: 0.0, sun_share: Vec::new(), opening_state: 1.0, floor_state: 0.0 }
    }
}

impl Setup {
    /// How many hours are run.
    pub fn hour_count(&self) -> usize {
        self.hours.len().min(MOST_HOURS)
    }

    pub(super) fn sound_stores(&self) -> impl Iterator<Item = &OnBoard> {
        self.stores.iter().take(MOST_STORES)
    }

    pub(super) fn sound_draws(&self) -> Vec<Draw> {
        self.draws.iter().take(MOST_DRAWS).map(Draw::made_sound).collect()
    }
}
