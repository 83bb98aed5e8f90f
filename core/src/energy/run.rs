//! A setup run through its hours.
//!
//! ```
//! use kerbstead_core::energy::draw::{Draw, Need};
//! use kerbstead_core::energy::run::{Limit, run};
//! use kerbstead_core::energy::setup::{Given, OnBoard, Setup};
//! use kerbstead_core::energy::store::Store;
//! let lamp = Draw { power_w: 30.0, need: Need::Duty(1.0), ..Draw::default() };
//! let setup = Setup {
//!     stores: vec![OnBoard::full(Store::ideal(600.0))],
//!     draws: vec![lamp],
//!     hours: vec![Given::default(); 24],
//!     cloud_by_day: vec![],
//! };
//! let course = run(&setup);
//! assert_eq!(course.first_short_hour, Some(20));
//! assert_eq!(course.binding, Some(Limit::Energy));
//! assert_eq!(course.unserved_wh, [120.0]);
//! assert_eq!(course.stores[0].reserve_h[9], 10.0);
//! ```

use super::constants::{LEAST_SHORT_WH, MOST_CYCLES, MOST_RESERVE_H};
use super::draw::Need;
use super::prepare::{Hanging, Prepared, Side};
use super::setup::{Given, Setup};
use super::step::{Factors, StoreStep, need_wh, step};
use super::{least, sound, within};

/// What keeps a draw from being served.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Limit {
    /// The store is empty, and what its sockets refused since it was last full would not have helped.
    Energy,
    /// The outlets do not bear it for long beside what matters more.
    Power,
    /// The outlets do not bear its start.
    Surge,
    /// The store is empty, and its sockets or its temperature refused enough since it was last full.
    Input,
}

/// What a run came to. Energy of draws is at their outlets, energy of stores at the cells, all in Wh.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Course {
    /// Each store, in the setup's order.
    pub stores: Vec<StoreCourse>,
    /// The first hour in which something was not served, from 0.
    pub first_short_hour: Option<usize>,
    /// What was not served, by draw, in the setup's order.
    pub unserved_wh: Vec<f64>,
    /// Each draw, in the setup's order.
    pub draws: Vec<DrawCourse>,
    /// What was not served by what kept it from being served: energy, power, surge, input.
    pub unserved_by_limit_wh: [f64; 4],
    /// The limit by which most was not served; of equal ones the first.
    pub binding: Option<Limit>,
}

/// What a draw wanted and did not get, at its outlet.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct DrawCourse {
    /// What it wanted.
    pub wanted_wh: f64,
    /// What it did not get, by what kept it from being served: energy, power, surge, input.
    pub by_limit_wh: [f64; 4],
    /// The first hour for each of these, from 0.
    pub first_hour: [Option<usize>; 4],
    /// The last hour in which anything did.
    pub last_hour: Option<usize>,
}

/// What came from each source, at the sockets.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Sources {
    /// From panels.
    pub sun_wh: f64,
    /// From the vehicle.
    pub vehicle_wh: f64,
    /// From the mains.
    pub mains_wh: f64,
}

/// One store's course.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct StoreCourse {
    /// Hour by hour.
    pub hours: Vec<HourOf>,
    /// Hours that it would last from the end of each hour on with nothing coming in, at most 10,000; after the end of the run
    /// as its average need goes. Its own loss is not counted.
    pub reserve_h: Vec<f64>,
    /// The least charge at the end of an hour.
    pub lowest_wh: f64,
    /// That hour.
    pub lowest_hour: usize,
    /// Whether it never held less than its floor.
    pub floor_held: bool,
    /// What its panels could have given and it did not take, at the socket.
    pub unused_sun_wh: f64,
    /// What it took.
    pub sources: Sources,
    /// Full cycles: what it gave by what it can hold.
    pub cycles: f64,
}

/// What an hour did: `charge = charge before - lost + put_in - taken_out`.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct HourOf {
    /// Charge at its end.
    pub charge_wh: f64,
    /// What reached the cells.
    pub put_in_wh: f64,
    /// What the cells gave.
    pub taken_out_wh: f64,
    /// What they lost by themselves.
    pub lost_wh: f64,
    /// What they should have given and could not; another store may have given it.
    pub short_wh: f64,
    /// What of `short_wh` another store gave.
    pub covered_wh: f64,
    /// What of `taken_out_wh` went to draws of other stores.
    pub lent_wh: f64,
    /// What its sockets took at the most, had it been far from full, at the socket.
    pub could_take_wh: f64,
}

impl HourOf {
    /// What nobody gave of what the cells should have.
    pub fn missing_wh(&self) -> f64 {
        let missing_wh = self.short_wh - self.covered_wh;
        if missing_wh > LEAST_SHORT_WH { missing_wh } else { 0.0 }
    }
}

impl Course {
    /// Whether everything was served and every floor held.
    pub fn holds(&self) -> bool {
        self.first_short_hour.is_none() && self.stores.iter().all(|store| store.floor_held)
    }
}

/// Runs all hours.
pub fn run(setup: &Setup) -> Course {
    let mut walk = Walk::new(setup);
    let mut charge_wh = walk.opening_wh();
    for given in setup.hours.iter().take(setup.hour_count()) {
        walk.step(&mut charge_wh, given);
    }
    walk.end()
}

pub(super) fn run_prepared(prepared: Prepared) -> Course {
    let mut steps = Steps::of(prepared);
    let mut charge_wh = steps.prepared.opening_wh();
    for _ in 0..steps.prepared.offers.len() {
        steps.step(&mut charge_wh);
    }
    steps.end()
}

/// A run in single hours, for whoever corrects the charge on the way, and says how warm each hour is.
pub struct Walk<'a> {
    setup: &'a Setup,
    hanging: Vec<Hanging>,
    steps: Steps,
}

impl<'a> Walk<'a> {
    /// Begins it.
    pub fn new(setup: &'a Setup) -> Self {
        let (prepared, hanging) = Prepared::begun(setup);
        Self { setup, hanging, steps: Steps::of(prepared) }
    }

    /// What is in each store at the beginning, in Wh.
    pub fn opening_wh(&self) -> Vec<f64> {
        self.steps.prepared.opening_wh()
    }

    /// What each store holds when it is full, in Wh.
    pub fn full_wh(&self) -> Vec<f64> {
        self.steps.prepared.sides.iter().map(|side| side.cell.full_wh).collect()
    }

    /// Says for what share of the next hour a draw by hours of the run wants to run.
    pub fn want(&mut self, draw: usize, share: f64) {
        let hour = self.steps.hour;
        if let Some(Need::Hours(shares)) = self.steps.prepared.draws.get_mut(draw).map(|draw| &mut draw.need) {
            shares.resize(hour, 0.0);
            shares.push(sound(share, 1.0));
        }
    }

    /// The next hour: from charges to charges, an entry a store, in air and with stores as warm as it is given. What is on
    /// offer is as the setup has it. After the last hour nothing happens.
    pub fn step(&mut self, charge_wh: &mut [f64], given: &Given) {
        let hour = self.steps.hour;
        if hour < self.steps.prepared.offers.len() {
            self.steps.prepared.add_hour(self.setup, &mut self.hanging, hour, given);
            self.steps.step(charge_wh);
        }
    }

    /// Heat that the last hour gave off inside, in Wh: all that the cells gave, and what charging lost.
    pub fn heat_wh(&self) -> f64 {
        let of = |step: &StoreStep| step.flow.taken_out_wh + sound(step.accepted_wh - step.flow.put_in_wh, f64::MAX);
        self.steps.of_stores.iter().map(of).sum()
    }

    /// What it came to.
    pub fn end(self) -> Course {
        self.steps.end()
    }
}

/// Hours whose tables are there.
struct Steps {
    prepared: Prepared,
    happens: Vec<f64>,
    ledger: Ledger,
    of_stores: Vec<StoreStep>,
    hour: usize,
}

impl Steps {
    fn of(prepared: Prepared) -> Self {
        Self {
            happens: prepared.draws.iter().map(|draw| draw.chance).collect(),
            ledger: Ledger::new(&prepared),
            of_stores: vec![StoreStep::default(); prepared.sides.len()],
            hour: 0,
            prepared,
        }
    }

    fn step(&mut self, charge_wh: &mut [f64]) {
        let hour = self.hour;
        let Some(offer) = self.prepared.offers.get(hour).copied() else { return };
        self.hour += 1;
        let cloud = self.prepared.cloud_by_day.get(hour / 24).copied().unwrap_or(1.0);
        let factors = Factors { cloud, drive: 1.0, scale: 1.0, happens: &self.happens };
        let ledger = &mut self.ledger;
        let mut short = |at: usize, draw: usize, wh: f64| ledger.short.push((at, draw, wh));
        step(&self.prepared, hour, offer, factors, charge_wh, &mut self.of_stores, &mut short);
        self.ledger.note(&self.prepared, hour, &self.of_stores);
    }

    fn end(self) -> Course {
        self.ledger.close(&self.prepared, &self.happens)
    }
}

/// What is noted on the way.
struct Ledger {
    course: Course,
    /// What the sockets refused since the store was last full, in Wh at the cells.
    refused_wh: Vec<f64>,
    short: Vec<(usize, usize, f64)>,
}

impl Ledger {
    fn new(prepared: &Prepared) -> Self {
        let hours = prepared.offers.len();
        let store = |side: &Side| StoreCourse {
            hours: Vec::with_capacity(hours),
            lowest_wh: side.opening_wh,
            floor_held: true,
            ..StoreCourse::default()
        };
        let course = Course {
            stores: prepared.sides.iter().map(store).collect(),
            unserved_wh: vec![0.0; prepared.draws.len()],
            draws: vec![DrawCourse::default(); prepared.draws.len()],
            ..Course::default()
        };
        Self { course, refused_wh: vec![0.0; prepared.sides.len()], short: Vec::new() }
    }

    fn note(&mut self, prepared: &Prepared, hour: usize, steps: &[StoreStep]) {
        let sides = prepared.sides.iter().zip(steps);
        for ((course, refused_wh), (side, step)) in self.course.stores.iter_mut().zip(&mut self.refused_wh).zip(sides) {
            course.note(side, hour, step);
            *refused_wh += (step.offered_wh - step.taken.sum_w()) * side.store.charge_efficiency;
            if step.flow.after_wh >= side.cell.full_wh {
                *refused_wh = 0.0;
            }
        }
        for (at, draw, wh) in std::mem::take(&mut self.short) {
            let limit = match self.refused_wh.get_mut(at) {
                Some(refused_wh) if *refused_wh >= wh => {
                    *refused_wh -= wh;
                    Limit::Input
                }
                _ => Limit::Energy,
            };
            self.unserved(hour, draw, wh, limit);
        }
    }

    fn unserved(&mut self, hour: usize, draw: usize, wh: f64, limit: Limit) {
        if wh <= LEAST_SHORT_WH {
            return;
        }
        self.course.first_short_hour = Some(self.course.first_short_hour.map_or(hour, |first| first.min(hour)));
        if let Some(sum_wh) = self.course.unserved_wh.get_mut(draw) {
            *sum_wh += wh;
        }
        if let Some(draw) = self.course.draws.get_mut(draw) {
            draw.by_limit_wh[limit as usize] += wh;
            let first_hour = &mut draw.first_hour[limit as usize];
            *first_hour = Some(first_hour.map_or(hour, |first| first.min(hour)));
            draw.last_hour = draw.last_hour.max(Some(hour));
        }
        self.course.unserved_by_limit_wh[limit as usize] += wh;
    }

    fn close(mut self, prepared: &Prepared, happens: &[f64]) -> Course {
        for (hour, part) in &prepared.refused {
            let share = happens.get(part.draw).copied().unwrap_or(1.0);
            self.wanted(part.draw, part.outlet_wh * share);
            self.unserved(*hour, part.draw, part.outlet_wh * share, part.limit);
        }
        for one in prepared.sides.iter().flat_map(|side| &side.uses) {
            self.wanted(one.draw, one.outlet_wh * happens.get(one.draw).copied().unwrap_or(1.0));
        }
        self.without_store(prepared);
        let mut course = self.course;
        for (store, side) in course.stores.iter_mut().zip(&prepared.sides) {
            store.reserve_h = reserve_h(side, &store.hours, happens);
        }
        let mut most_wh = 0.0;
        for limit in [Limit::Energy, Limit::Power, Limit::Surge, Limit::Input] {
            let wh = course.unserved_by_limit_wh[limit as usize];
            if wh > most_wh {
                (course.binding, most_wh) = (Some(limit), wh);
            }
        }
        course
    }

    fn wanted(&mut self, draw: usize, wh: f64) {
        if let Some(draw) = self.course.draws.get_mut(draw) {
            draw.wanted_wh += wh;
        }
    }

    /// With no store at all, nothing is served from the first hour on.
    fn without_store(&mut self, prepared: &Prepared) {
        if prepared.sides.is_empty() && !prepared.draws.is_empty() && !prepared.offers.is_empty() {
            self.course.first_short_hour = Some(0);
            self.course.binding = Some(Limit::Energy);
        }
    }
}

impl StoreCourse {
    fn note(&mut self, side: &Side, hour: usize, step: &StoreStep) {
        let flow = &step.flow;
        self.hours.push(HourOf {
            charge_wh: flow.after_wh,
            put_in_wh: flow.put_in_wh,
            taken_out_wh: flow.taken_out_wh,
            lost_wh: step.lost_wh,
            short_wh: if flow.unserved_wh > LEAST_SHORT_WH { flow.unserved_wh } else { 0.0 },
            covered_wh: step.covered_wh,
            lent_wh: step.lent_wh,
            could_take_wh: step.taken.sum_w(),
        });
        if hour == 0 || flow.after_wh < self.lowest_wh {
            (self.lowest_wh, self.lowest_hour) = (flow.after_wh, hour);
        }
        self.floor_held &= flow.after_wh >= side.floor_wh;
        self.unused_sun_wh += sound(step.sun_wh - step.accepted_wh, f64::MAX);
        let sun_wh = least(step.accepted_wh, step.taken.panel_w);
        let vehicle_wh = least(step.accepted_wh - sun_wh, step.taken.vehicle_w);
        self.sources.sun_wh += sun_wh;
        self.sources.vehicle_wh += vehicle_wh;
        self.sources.mains_wh += sound(step.accepted_wh - sun_wh - vehicle_wh, f64::MAX);
        if side.cell.full_wh > 0.0 {
            // Of a store that holds next to nothing there is no end of cycles.
            self.cycles = least(self.cycles + flow.taken_out_wh / side.cell.full_wh, MOST_CYCLES);
        }
    }
}

/// How long each hour's charge would last, in hours.
fn reserve_h(side: &Side, hours: &[HourOf], happens: &[f64]) -> Vec<f64> {
    let factors = Factors { cloud: 1.0, drive: 1.0, scale: 1.0, happens };
    let mut needed_wh = Vec::with_capacity(hours.len() + 1);
    let mut sum_wh = 0.0;
    needed_wh.push(sum_wh);
    for (hour, entry) in side.hours.iter().enumerate() {
        sum_wh += need_wh(side, entry, hour, factors);
        needed_wh.push(sum_wh);
    }
    let mean_wh = sum_wh / needed_wh.len().saturating_sub(1).max(1) as f64;
    let mut reserve_h = Vec::with_capacity(hours.len());
    let mut end = 0;
    for (hour, of) in hours.iter().enumerate() {
        let before_wh = needed_wh.get(hour + 1).copied().unwrap_or(sum_wh);
        let until_wh = before_wh + of.charge_wh;
        // From hour to hour what is needed until then mostly grows, so the end is near the one before.
        while end > 0 && needed_wh.get(end).is_some_and(|sum| *sum > until_wh) {
            end -= 1;
        }
        while needed_wh.get(end + 1).is_some_and(|sum| *sum <= until_wh) {
            end += 1;
        }
        let base_wh = needed_wh.get(end).copied().unwrap_or(sum_wh);
        let rate_wh = needed_wh.get(end + 1).map_or(mean_wh, |next| next - base_wh);
        let rest_h = if rate_wh > 0.0 { least((until_wh - base_wh) / rate_wh, MOST_RESERVE_H) } else { MOST_RESERVE_H };
        reserve_h.push(within(end as f64 - (hour + 1) as f64 + rest_h, 0.0, MOST_RESERVE_H));
    }
    reserve_h
}
