//! One hour of a store, and the course of all hours.

use super::input::{DayKind, Input, StoreInput, supply};
use crate::plan::Store;
use crate::run::Day;

/// Less power coming in is nothing: it does not taper either.
const LEAST_W: f64 = 1e-6;
/// Less room above the knee is nothing: the store fills at a constant rate.
const LEAST_WH: f64 = 1e-6;

/// What one hour did to a store. Energies are at the cells: `charge_after = charge_before + put_in - taken_out`.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct HourFlow {
    /// Energy in the store at the end.
    pub charge_wh: f64,
    /// Energy that reached the cells.
    pub put_in_wh: f64,
    /// Energy the cells gave.
    pub taken_out_wh: f64,
    /// Energy they should have given and could not.
    pub unserved_wh: f64,
    /// Hours into the hour at which the store was first empty with something wanting more than came in.
    pub empty_after_h: Option<f64>,
}

/// Runs one hour exactly: a steady draw `out_w` from the cells against charging that gives `in_w` at the cells up to
/// the knee and above it in proportion to what is missing, P = P0 (1 - s) / (1 - knee).
///
/// ```
/// use kerbstead_core::{plan::Store, power::hour_flow};
/// let store = Store { usable_wh: 1_000.0, ..Store::default() };
/// let hour = hour_flow(&store, 30.0, 0.0, 60.0);
/// assert_eq!(hour.empty_after_h, Some(0.5));
/// assert_eq!(hour.unserved_wh, 30.0);
/// ```
pub fn hour_flow(store: &Store, charge_wh: f64, in_w: f64, out_w: f64) -> HourFlow {
    let full = store.usable_wh;
    let knee = (full * store.taper_from_percent / 100.0).min(full);
    let mut flow = HourFlow { charge_wh: charge_wh.clamp(0.0, full), ..HourFlow::default() };
    let mut left_h = 1.0;
    // Below the knee the rate is constant, above it the charge nears a level exponentially; an hour crosses the knee
    // once at most, and then may reach the bottom: three pieces are enough.
    for _ in 0..3 {
        if left_h <= 0.0 {
            break;
        }
        let is_tapering = flow.charge_wh > knee || (flow.charge_wh >= knee && in_w >= out_w);
        let spent = if is_tapering && full - knee > LEAST_WH && in_w > LEAST_W {
            taper(&mut flow, full, knee, in_w, out_w, left_h)
        } else {
            steady(&mut flow, full, knee, in_w, out_w, 1.0 - left_h, left_h)
        };
        left_h -= spent;
    }
    flow
}

/// A piece at constant rate, until the knee, the top or the bottom; returns the hours it took.
fn steady(flow: &mut HourFlow, full: f64, knee: f64, in_w: f64, out_w: f64, since_h: f64, left_h: f64) -> f64 {
    let rate = in_w - out_w;
    let before = flow.charge_wh;
    if rate < 0.0 && before <= 0.0 {
        return empty(flow, in_w, out_w, since_h, left_h);
    }
    let bound = match () {
        () if rate < 0.0 => 0.0,
        () if before < knee => knee,
        () => full,
    };
    let until_bound = if rate == 0.0 { f64::INFINITY } else { (bound - before) / rate };
    let spent = until_bound.clamp(0.0, left_h);
    let taken = out_w * spent;
    flow.charge_wh = if spent < left_h { bound } else { (before + rate * spent).clamp(0.0, full) };
    flow.taken_out_wh += taken;
    flow.put_in_wh += (flow.charge_wh - before + taken).max(0.0);
    // At the top with more on offer than is drawn, the store stays full and passes on what is drawn.
    if spent < left_h && rate > 0.0 && bound >= full {
        let rest = out_w * (left_h - spent);
        flow.taken_out_wh += rest;
        flow.put_in_wh += rest;
        return left_h;
    }
    spent
}

/// The store is empty: what comes in goes straight out, and the rest is not served.
fn empty(flow: &mut HourFlow, in_w: f64, out_w: f64, since_h: f64, left_h: f64) -> f64 {
    flow.charge_wh = 0.0;
    flow.put_in_wh += in_w * left_h;
    flow.taken_out_wh += in_w * left_h;
    flow.unserved_wh += (out_w - in_w) * left_h;
    flow.empty_after_h = flow.empty_after_h.or(Some(since_h));
    left_h
}

/// A piece above the knee, until the knee or the end; returns the hours it took. The charge nears the level at which as
/// much comes in as goes out; `expm1` and `log1p` keep a trickle from drowning in the rounding of that level.
fn taper(flow: &mut HourFlow, full: f64, knee: f64, in_w: f64, out_w: f64, left_h: f64) -> f64 {
    let per_h = in_w / (full - knee);
    let before = flow.charge_wh;
    let above_level = before - full + out_w / per_h;
    let until_knee = if out_w > in_w && before > knee {
        libm::log1p((before - knee) * per_h / (out_w - in_w)) / per_h
    } else {
        left_h
    };
    let spent = until_knee.clamp(0.0, left_h);
    let after = before + above_level * libm::expm1(-per_h * spent);
    let taken = out_w * spent;
    flow.charge_wh = if spent < left_h { knee } else { after.clamp(0.0, full) };
    flow.taken_out_wh += taken;
    flow.put_in_wh += (flow.charge_wh - before + taken).max(0.0);
    spent
}

/// Every store's course along the road.
#[derive(Clone, Debug, PartialEq)]
pub struct Course {
    /// A course for each store, in the order of the kit.
    pub stores: Vec<StoreCourse>,
}

/// One store's course: an entry an hour from the first hour on the road.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct StoreCourse {
    /// Charge before each hour; a reading shows here.
    pub before_wh: Vec<f64>,
    /// What each hour did.
    pub hours: Vec<HourFlow>,
}

impl Course {
    pub(crate) fn new(input: &Input, road_days: usize) -> Self {
        let empty =
            || StoreCourse { before_wh: Vec::with_capacity(road_days * 24), hours: Vec::with_capacity(road_days * 24) };
        Self { stores: input.stores.iter().map(|_| empty()).collect() }
    }

    /// One hour of every store: charges in, charges out.
    pub fn step(&mut self, charge_wh: &mut [f64], input: &Input, day: &Day, hour: u32) {
        let kind = DayKind::of(day).index();
        for ((course, charge), store) in self.stores.iter_mut().zip(charge_wh).zip(&input.stores) {
            let flow = store_hour(input, store, *charge, day, kind, hour);
            course.before_wh.push(*charge);
            course.hours.push(flow);
            *charge = flow.charge_wh;
        }
    }
}

fn store_hour(input: &Input, store: &StoreInput, charge_wh: f64, day: &Day, kind: usize, hour: u32) -> HourFlow {
    let needs = store.profiles[kind].hours.get(hour as usize).copied().unwrap_or_default();
    let in_w = supply(input, &store.store, day, hour).accepted_w(&store.store);
    let efficiency = store.store.charge_efficiency_percent / 100.0;
    hour_flow(&store.store, charge_wh, in_w * efficiency, needs.cells_wh(&store.store))
}
