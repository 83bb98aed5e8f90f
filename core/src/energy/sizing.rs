//! The least panel, and the least store, with which a setup holds.
//!
//! ```
//! use kerbstead_core::energy::draw::Draw;
//! use kerbstead_core::energy::setup::{Given, OnBoard, Setup};
//! use kerbstead_core::energy::sizing::least_store;
//! use kerbstead_core::energy::store::Store;
//! let setup = Setup {
//!     stores: vec![OnBoard::full(Store::ideal(100.0))],
//!     draws: vec![Draw { power_w: 10.0, ..Draw::default() }],
//!     hours: vec![Given::default(); 48],
//!     cloud_by_day: vec![],
//! };
//! assert_eq!(least_store(&setup, 0, 5_000).least, Some(480));
//! ```

use super::run::{Limit, run};
use super::setup::Setup;

/// What sizes are tried besides those of the halving, to see whether a greater one ever fails where a smaller one holds.
const TRIED: u32 = 24;

/// The least size, in whole watts or watt hours.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Sized {
    /// The least size that was found to hold; the one below it was run and fails. None if nothing up to the most holds.
    pub least: Option<u32>,
    /// A size that holds and a greater one that fails, if such were met: "the more the better" does not hold here, and
    /// a smaller size than `least` may hold without having been tried.
    pub not_monotone: Option<(u32, u32)>,
    /// An outlet's limit that no size changes, if one is exceeded.
    pub prevented_by: Option<Limit>,
    /// How many runs it took.
    pub runs: u32,
}

/// The least rated power of the panels on a store, 0 to `most_w`, with which all is served and every floor holds.
pub fn least_panel(setup: &Setup, store: usize, most_w: u32) -> Sized {
    least_size(setup, most_w, |setup, size| {
        if let Some(board) = setup.stores.get_mut(store) {
            board.panel_w = f64::from(size);
        }
    })
}

/// The least usable energy of a store, 0 to `most_wh`, with which all is served and every floor holds. Its outlets, sockets,
/// panels and shares (what is in it at first, floor, taper) stay what they are.
pub fn least_store(setup: &Setup, store: usize, most_wh: u32) -> Sized {
    least_size(setup, most_wh, |setup, size| {
        if let Some(board) = setup.stores.get_mut(store) {
            board.store.usable_wh = f64::from(size);
        }
    })
}

fn least_size(setup: &Setup, greatest: u32, change: impl Fn(&mut Setup, u32)) -> Sized {
    let mut trials = Trials { setup: setup.clone(), change, tried: std::collections::BTreeMap::new() };
    let mut sized = Sized { least: None, not_monotone: None, prevented_by: None, runs: 0 };
    let outlets = outlet_limit(setup);
    if outlets.is_some() {
        return Sized { prevented_by: outlets, runs: 1, ..sized };
    }
    for part in 0..=TRIED {
        // Without a product that might not fit.
        trials.holds(greatest / TRIED * part + greatest % TRIED * part / TRIED);
    }
    // Halve between the least size that is known to hold and the greatest below it that fails.
    while let Some(least) = trials.least_holding() {
        sized.least = Some(least);
        let below = trials.tried.range(..least).next_back().map(|(size, _)| *size);
        match below {
            None => break,
            Some(below) if below + 1 >= least => break,
            Some(below) => trials.holds(below + (least - below) / 2),
        };
    }
    sized.not_monotone = trials.not_monotone();
    sized.runs = u32::try_from(trials.tried.len()).unwrap_or(u32::MAX);
    sized
}

/// The limit of an outlet that is exceeded, whatever the charge.
fn outlet_limit(setup: &Setup) -> Option<Limit> {
    let [_, power_wh, surge_wh, _] = run(setup).unserved_by_limit_wh;
    match () {
        () if power_wh > 0.0 => Some(Limit::Power),
        () if surge_wh > 0.0 => Some(Limit::Surge),
        () => None,
    }
}

struct Trials<F> {
    setup: Setup,
    change: F,
    tried: std::collections::BTreeMap<u32, bool>,
}

impl<F: Fn(&mut Setup, u32)> Trials<F> {
    fn holds(&mut self, size: u32) -> bool {
        if let Some(held) = self.tried.get(&size) {
            return *held;
        }
        (self.change)(&mut self.setup, size);
        let held = run(&self.setup).holds();
        self.tried.insert(size, held);
        held
    }

    fn least_holding(&self) -> Option<u32> {
        self.tried.iter().find(|(_, held)| **held).map(|(size, _)| *size)
    }

    fn not_monotone(&self) -> Option<(u32, u32)> {
        let least = self.least_holding()?;
        let greater = self.tried.range(least..).find(|(_, held)| !**held);
        greater.map(|(size, _)| (least, *size))
    }
}
