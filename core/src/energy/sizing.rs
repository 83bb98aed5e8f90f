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

use std::collections::BTreeMap;

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

/// Which size is looked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SizeOf {
    /// The rated power of the panels on a store, in W.
    Panel,
    /// The usable energy of a store, in Wh. Its outlets, sockets, panels and shares (what is in it at first, floor, taper) stay
    /// what they are.
    Store,
}

/// The least rated power of the panels on a store, 0 to `most_w`, with which all is served and every floor holds.
pub fn least_panel(setup: &Setup, store: usize, most_w: u32) -> Sized {
    Sizing::new(setup, SizeOf::Panel, store, most_w).found()
}

/// The least usable energy of a store, 0 to `most_wh`, with which all is served and every floor holds.
pub fn least_store(setup: &Setup, store: usize, most_wh: u32) -> Sized {
    Sizing::new(setup, SizeOf::Store, store, most_wh).found()
}

/// A search for the least size, a run at a time.
pub struct Sizing {
    setup: Setup,
    of: SizeOf,
    store: usize,
    greatest: u32,
    /// Sizes that were run, and whether they held.
    tried: BTreeMap<u32, bool>,
    /// Which of the first sizes comes next.
    part: u32,
    prevented_by: Option<Limit>,
}

impl Sizing {
    /// Begins.
    pub fn new(setup: &Setup, of: SizeOf, store: usize, greatest: u32) -> Self {
        let prevented_by = outlet_limit(setup);
        Self { setup: setup.clone(), of, store, greatest, tried: BTreeMap::new(), part: 0, prevented_by }
    }

    /// Runs one more size; what was found, once all is.
    pub fn step(&mut self) -> Option<Sized> {
        if self.prevented_by.is_some() {
            return Some(Sized { least: None, not_monotone: None, prevented_by: self.prevented_by, runs: 1 });
        }
        if self.part <= TRIED {
            // Without a product that might not fit.
            let size = self.greatest / TRIED * self.part + self.greatest % TRIED * self.part / TRIED;
            self.part += 1;
            self.run(size);
            return None;
        }
        // Halve between the least size that is known to hold and the greatest below it that fails.
        let least = self.least_holding();
        let below = least.and_then(|least| self.tried.range(..least).next_back()).map(|(size, _)| *size);
        match least.zip(below).filter(|(least, below)| below + 1 < *least) {
            Some((least, below)) => {
                self.run(below + (least - below) / 2);
                None
            }
            None => Some(Sized {
                least,
                not_monotone: self.not_monotone(),
                prevented_by: None,
                runs: u32::try_from(self.tried.len()).unwrap_or(u32::MAX),
            }),
        }
    }

    fn found(mut self) -> Sized {
        loop {
            if let Some(sized) = self.step() {
                return sized;
            }
        }
    }

    fn run(&mut self, size: u32) {
        if self.tried.contains_key(&size) {
            return;
        }
        if let Some(board) = self.setup.stores.get_mut(self.store) {
            match self.of {
                SizeOf::Panel => board.panel_w = f64::from(size),
                SizeOf::Store => board.store.usable_wh = f64::from(size),
            }
        }
        self.tried.insert(size, run(&self.setup).holds());
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

/// The limit of an outlet that is exceeded, whatever the charge.
fn outlet_limit(setup: &Setup) -> Option<Limit> {
    let [_, power_wh, surge_wh, _] = run(setup).unserved_by_limit_wh;
    match () {
        () if power_wh > 0.0 => Some(Limit::Power),
        () if surge_wh > 0.0 => Some(Limit::Surge),
        () => None,
    }
}
