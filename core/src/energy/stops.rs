//! Where to charge on the way: the fewest or the cheapest stops with which every floor holds.
//!
//! Places are gone through in the order of time. What is kept of every way to get there is its price, its number of stops and
//! the charges; a way is dropped when another one costs no more and has at least as much in every store, because more charge
//! is never worse later on. With one store and nothing dropped for want of room that is exact.
//!
//! ```
//! use kerbstead_core::energy::draw::Draw;
//! use kerbstead_core::energy::setup::{Given, OnBoard, Setup};
//! use kerbstead_core::energy::stops::{Aim, Place, stops};
//! use kerbstead_core::energy::store::Store;
//! let setup = Setup {
//!     stores: vec![OnBoard::full(Store::ideal(240.0))],
//!     draws: vec![Draw { power_w: 10.0, ..Draw::default() }],
//!     hours: vec![Given::default(); 48],
//!     cloud_by_day: vec![],
//! };
//! let place = |from_hour| Place { from_hour, most_hours: 6, mains_w: 60.0, price: 300, price_per_hour: 50 };
//! let plan = stops(&setup, &[place(4), place(20)], Aim::Cheapest);
//! let found = plan.found.unwrap();
//! assert_eq!((found[0].place, found[0].hours, plan.price), (1, 4, 500));
//! assert!(plan.is_exact);
//! ```

use super::prepare::{Offer, Prepared};
use super::setup::Setup;
use super::step::{Factors, StoreStep, step};
use super::store::TaperWithin;
use super::{constants::MOST_W, sound};

/// No more ways are kept at any place.
const MOST_WAYS: usize = 400;
/// No more places are looked at.
const MOST_PLACES: usize = 5_000;

/// A place to charge at, and for how long. Of places that begin in the same hour one can be used; where the next one begins,
/// the one before has ended.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Place {
    /// The hour of the run in which it begins, from 0.
    pub from_hour: usize,
    /// For how many whole hours at most, up to 48.
    pub most_hours: usize,
    /// What its mains offer, in W.
    pub mains_w: f64,
    /// What it costs to stop there, in minor units.
    pub price: u64,
    /// What each hour costs besides, in minor units.
    pub price_per_hour: u64,
}

/// What is wanted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Aim {
    /// As few stops as can be; of those the cheapest.
    Fewest,
    /// As cheap as can be; of those the fewest stops.
    Cheapest,
}

/// A stop.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Stop {
    /// Position of the place in the list that was asked about.
    pub place: usize,
    /// From this hour of the run on.
    pub from_hour: usize,
    /// For so many hours.
    pub hours: usize,
}

/// What was found.
#[derive(Clone, Debug, PartialEq)]
pub struct StopPlan {
    /// The stops, in the order of time; none if nothing was found.
    pub found: Option<Vec<Stop>>,
    /// What they cost, in minor units.
    pub price: u64,
    /// Whether nothing better is possible (and, when nothing was found, nothing at all): true with one store whose taper is
    /// exact, as long as no way had to be dropped for want of room. Otherwise it is a rule of thumb.
    pub is_exact: bool,
    /// No plan has fewer stops (if few are wanted) or a lower price (if a low one is): what even the ways that were dropped
    /// would have come to at least.
    pub bound: u64,
}

/// Finds the stops. What the setup's own hours have on offer stays on offer beside them.
pub fn stops(setup: &Setup, places: &[Place], aim: Aim) -> StopPlan {
    let mut search = StopSearch::new(setup, places, aim);
    while search.step() < 1.0 {}
    search.end()
}

/// A search for stops, a place at a time.
pub struct StopSearch {
    search: Search,
    /// Each with its position, by the hour in which it begins.
    places: Vec<(usize, Place)>,
    next: usize,
    left_out_places: bool,
}

impl StopSearch {
    /// Begins.
    pub fn new(setup: &Setup, places: &[Place], aim: Aim) -> Self {
        let mut sorted: Vec<(usize, Place)> = places.iter().copied().enumerate().take(MOST_PLACES).collect();
        sorted.sort_by_key(|(at, place)| (place.from_hour, *at));
        let left_out_places = places.len() > MOST_PLACES;
        Self { search: Search::new(setup, aim), places: sorted, next: 0, left_out_places }
    }

    /// Goes on to the next place; the share that is done, 1 when all is.
    pub fn step(&mut self) -> f64 {
        let from = self.next;
        let Some((_, first)) = self.places.get(from) else { return 1.0 };
        let begins = first.from_hour;
        let group: Vec<(usize, Place)> =
            self.places.iter().skip(from).copied().take_while(|(_, place)| place.from_hour == begins).collect();
        self.next += group.len();
        let next_hour = self.places.get(self.next).map_or(usize::MAX, |(_, place)| place.from_hour);
        self.search.walk_to(begins);
        self.search.branch(&group, next_hour);
        self.next as f64 / self.places.len() as f64
    }

    /// What was found.
    pub fn end(mut self) -> StopPlan {
        while self.step() < 1.0 {}
        self.search.walk_to(usize::MAX);
        self.search.answer(self.left_out_places)
    }
}

/// A way so far.
#[derive(Clone, Debug)]
struct Way {
    /// What is minimised first, then second.
    rank: (u64, u64),
    charge_wh: Vec<f64>,
    stops: Vec<Stop>,
}

struct Search {
    prepared: Prepared,
    happens: Vec<f64>,
    aim: Aim,
    hour: usize,
    ways: Vec<Way>,
    /// The least rank of a way that was dropped for want of room.
    dropped: Option<u64>,
}

impl Search {
    fn new(setup: &Setup, aim: Aim) -> Self {
        let prepared = Prepared::new(setup);
        let opening = Way { rank: (0, 0), charge_wh: prepared.opening_wh(), stops: Vec::new() };
        let happens = prepared.draws.iter().map(|draw| draw.chance).collect();
        Self { prepared, happens, aim, hour: 0, ways: vec![opening], dropped: None }
    }

    /// Takes every way to an hour without a stop; those that do not hold end.
    fn walk_to(&mut self, hour: usize) {
        let hour = hour.min(self.prepared.offers.len());
        let mut ways = std::mem::take(&mut self.ways);
        ways.retain_mut(|way| self.walk(&mut way.charge_wh, self.hour, hour, 0.0));
        self.ways = ways;
        self.hour = self.hour.max(hour);
    }

    /// Whether a way holds through these hours.
    fn walk(&self, charge_wh: &mut [f64], from: usize, to: usize, mains_w: f64) -> bool {
        let mut steps = vec![StoreStep::default(); charge_wh.len()];
        for hour in from..to {
            let cloud = self.prepared.cloud_by_day.get(hour / 24).copied().unwrap_or(1.0);
            let factors = Factors { cloud, drive: 1.0, scale: 1.0, happens: &self.happens };
            let mut is_short = false;
            let mut short = |_: usize, _: usize, _: f64| is_short = true;
            let own = self.prepared.offers.get(hour).copied().unwrap_or_default();
            let mains_hour = if mains_w > 0.0 { 1.0 } else { own.mains_hour };
            let offer = Offer { mains_w: own.mains_w + mains_w, mains_hour, ..own };
            step(&self.prepared, hour, offer, factors, charge_wh, &mut steps, &mut short);
            let floor_held = charge_wh.iter().zip(&self.prepared.sides).all(|(charge, side)| *charge >= side.floor_wh);
            if is_short || !floor_held {
                return false;
            }
        }
        true
    }

    /// Every way goes on without stopping, or with one of the group's places for so many hours, to where the next place begins.
    fn branch(&mut self, group: &[(usize, Place)], next_hour: usize) {
        let end = next_hour.min(self.prepared.offers.len());
        let mut ways = Vec::new();
        for way in std::mem::take(&mut self.ways) {
            for (at, place) in group {
                let mains_w = sound(place.mains_w, MOST_W);
                let mut charge_wh = way.charge_wh.clone();
                for hours in 1..=place.most_hours.min(48) {
                    let until = self.hour + hours;
                    if until > end || !self.walk(&mut charge_wh, until - 1, until, mains_w) {
                        break;
                    }
                    let mut stopped = way.clone();
                    stopped.charge_wh.clone_from(&charge_wh);
                    let price = place.price.saturating_add(place.price_per_hour.saturating_mul(hours as u64));
                    stopped.rank = self.rank_after(way.rank, price);
                    stopped.stops.push(Stop { place: *at, from_hour: self.hour, hours });
                    if self.walk(&mut stopped.charge_wh, until, end, 0.0) {
                        ways.push(stopped);
                    }
                }
            }
            let mut passing = way;
            if self.walk(&mut passing.charge_wh, self.hour, end, 0.0) {
                ways.push(passing);
            }
        }
        self.hour = self.hour.max(end);
        self.ways = self.best_of(ways);
    }

    fn rank_after(&self, (first, second): (u64, u64), price: u64) -> (u64, u64) {
        match self.aim {
            Aim::Fewest => (first.saturating_add(1), second.saturating_add(price)),
            Aim::Cheapest => (first.saturating_add(price), second.saturating_add(1)),
        }
    }

    /// Drops what is no better than another way in anything.
    fn best_of(&mut self, mut ways: Vec<Way>) -> Vec<Way> {
        // The sum comes last, so that of equal ranks the fullest is first.
        let sum_wh = |way: &Way| way.charge_wh.iter().sum::<f64>();
        ways.sort_by(|a, b| a.rank.cmp(&b.rank).then(sum_wh(b).total_cmp(&sum_wh(a))));
        let mut kept: Vec<Way> = Vec::new();
        for way in ways {
            let is_beaten = kept.iter().any(|better| better.charge_wh.iter().zip(&way.charge_wh).all(|(a, b)| a >= b));
            if is_beaten {
                continue;
            }
            if kept.len() >= MOST_WAYS {
                self.dropped = Some(self.dropped.map_or(way.rank.0, |least| least.min(way.rank.0)));
                continue;
            }
            kept.push(way);
        }
        kept
    }

    fn answer(self, left_out_places: bool) -> StopPlan {
        let is_ordered = match self.prepared.sides.as_slice() {
            [side] => side.cell.within == TaperWithin::Exact,
            _ => false,
        };
        let best = self.ways.iter().min_by_key(|way| way.rank);
        let found_rank = best.map(|way| way.rank.0);
        let bound = match (found_rank, self.dropped) {
            _ if !is_ordered || left_out_places => 0,
            (Some(rank), Some(dropped)) => rank.min(dropped),
            (Some(rank), None) => rank,
            (None, dropped) => dropped.unwrap_or(0),
        };
        let nothing_dropped = self.dropped.is_none_or(|dropped| found_rank.is_some_and(|rank| dropped > rank));
        let price = best.map_or(0, |way| if self.aim == Aim::Fewest { way.rank.1 } else { way.rank.0 });
        StopPlan {
            found: best.map(|way| way.stops.clone()),
            price,
            is_exact: is_ordered && !left_out_places && nothing_dropped,
            bound,
        }
    }
}
