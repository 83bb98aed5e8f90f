//! Eight courses of one store at once, so that a processor has something to do while it waits for a sum.
//!
//! Each hour does what [`super::step`] does with one store; a test compares both. Whenever a charge may be above the knee, the
//! hour of each course is worked out by itself.

use super::constants::LEAST_SHORT_WH;
use super::hour::Rates;
use super::prepare::{Offer, Prepared, Side, SideHour};
use super::step::{rates, taken};
use super::store::TaperWithin;
use super::{least, most};

/// How many courses go side by side.
pub const LANES: usize = 8;

/// A number for each course.
pub type Lane = [f64; LANES];

/// What is not the same in each course, on a day. Factors of what is so if all goes as is likely.
#[derive(Clone, Debug, PartialEq)]
pub struct Today {
    /// Of what panels give.
    pub cloud: Lane,
    /// Of what the vehicle's socket offers.
    pub drive: Lane,
    /// Of the share of an hour in which it does.
    pub drive_hours: Lane,
    /// Of what the mains offer, and of the share of an hour in which they do.
    pub mains: Lane,
    /// Of what is used of all draws, standby apart.
    pub scale: Lane,
    /// Of what is used of each draw that is not the same in each course; of others nothing is asked.
    pub uses: Vec<Lane>,
}

impl Today {
    /// A day as it likely is, for so many draws.
    pub fn likely(draws: usize) -> Self {
        let ones = [1.0; LANES];
        Self { cloud: ones, drive: ones, drive_hours: ones, mains: ones, scale: ones, uses: vec![ones; draws] }
    }

    /// What is on offer to a course of what likely is.
    #[inline]
    pub(super) fn offer(&self, likely: Offer, lane: usize) -> Offer {
        Offer {
            vehicle_w: likely.vehicle_w * self.drive[lane],
            vehicle_hour: likely.vehicle_hour * self.drive_hours[lane],
            mains_w: likely.mains_w * self.mains[lane],
            mains_hour: likely.mains_hour * self.mains[lane],
        }
    }
}

/// Says what a day brings to each course. It is asked when a day begins, day after day.
pub(super) type BeginDay<'a> = &'a mut dyn FnMut(usize, &mut Today);

/// What courses came to.
#[derive(Clone, Copy, Debug)]
pub(super) struct Ended {
    pub charge_wh: Lane,
    pub lowest_wh: Lane,
    pub unserved_wh: Lane,
    /// The first hour that was short; infinite if none was.
    pub first_short: Lane,
}

/// Courses side by side. Where they are `GIVEN` their days, more of an offer is not the same in each than what the vehicle's
/// socket gives; what is the same is worked out once for all of them.
pub(super) struct Lanes<'a, const GIVEN: bool> {
    prepared: &'a Prepared,
    side: &'a Side,
    /// Apart from the courses, so that whoever changes it cannot change them.
    today: &'a mut Today,
    begin_day: BeginDay<'a>,
    /// A charge below it is a shortage, too.
    short_below_wh: f64,
    ended: Ended,
}

impl<'a, const GIVEN: bool> Lanes<'a, GIVEN> {
    pub fn new(prepared: &'a Prepared, side: &'a Side, today: &'a mut Today, begin_day: BeginDay<'a>) -> Self {
        Self {
            prepared,
            side,
            today,
            begin_day,
            short_below_wh: if prepared.floors_count { side.floor_wh } else { 0.0 },
            ended: Ended {
                charge_wh: [side.opening_wh; LANES],
                lowest_wh: [side.cell.full_wh; LANES],
                unserved_wh: [0.0; LANES],
                first_short: [f64::INFINITY; LANES],
            },
        }
    }

    /// Runs all hours; `note` hears of the charges at the end of each.
    #[inline]
    pub fn run(mut self, mut note: impl FnMut(usize, &Lane)) -> Ended {
        let hours = self.side.hours.iter().zip(&self.prepared.offers).enumerate();
        for (hour, (entry, offer)) in hours {
            if self.prepared.begins_day(hour) {
                (self.begin_day)(hour / 24, self.today);
            }
            for charge in &mut self.ended.charge_wh {
                *charge *= self.side.kept_per_hour;
            }
            let out_w = self.needs_wh(hour, entry);
            if entry.panel_w <= 0.0 && offer.vehicle_w <= 0.0 && offer.mains_w <= 0.0 {
                self.straight(hour, &[0.0; LANES], &out_w);
            } else {
                self.charging(hour, entry, *offer, &out_w);
            }
            note(hour, &self.ended.charge_wh);
        }
        self.ended
    }

    #[inline]
    fn needs_wh(&self, hour: usize, entry: &SideHour) -> Lane {
        let today = &*self.today;
        let mut needs: Lane = std::array::from_fn(|lane| entry.fixed_wh + entry.certain_wh * today.scale[lane]);
        if self.side.has_chances {
            for one in self.side.uses_of(hour).iter().filter(|one| one.chance < 1.0) {
                let Some(uses) = today.uses.get(one.draw) else { continue };
                for lane in 0..LANES {
                    needs[lane] += one.cells_wh * (today.scale[lane] * uses[lane]);
                }
            }
        }
        needs
    }

    #[inline]
    fn charging(&mut self, hour: usize, entry: &SideHour, offer: Offer, out_w: &Lane) {
        let today = &*self.today;
        let (mut steady_w, mut tapered_w) = ([0.0; LANES], [0.0; LANES]);
        for lane in 0..LANES {
            let here = if GIVEN {
                today.offer(offer, lane)
            } else {
                Offer { vehicle_w: offer.vehicle_w * today.drive[lane], ..offer }
            };
            let rates = rates(self.side, taken(self.side, entry, today.cloud[lane], here), out_w[lane]);
            (steady_w[lane], tapered_w[lane]) = (rates.steady_w, rates.tapered_w);
        }
        let cell = &self.side.cell;
        let charge = &self.ended.charge_wh;
        let mut highest = 0.0;
        for lane in 0..LANES {
            let raw_wh = charge[lane] + (steady_w[lane] + tapered_w[lane]) - out_w[lane];
            highest = most(highest, most(charge[lane], raw_wh));
        }
        let is_straight = highest <= cell.knee_wh || (!self.side.tapers_all() && offer.mains_w <= 0.0);
        if is_straight || cell.within == TaperWithin::AtStart {
            let in_w = std::array::from_fn(|lane| {
                let share = if is_straight { 1.0 } else { cell.taken_share(charge[lane]) };
                steady_w[lane] + tapered_w[lane] * share
            });
            return self.straight(hour, &in_w, out_w);
        }
        for lane in 0..LANES {
            let rates = Rates { steady_w: steady_w[lane], tapered_w: tapered_w[lane], out_w: out_w[lane] };
            let flow = cell.hour(self.ended.charge_wh[lane], rates);
            self.ended.end_hour(hour, lane, flow.after_wh, flow.unserved_wh, self.short_below_wh);
        }
    }

    /// An hour at constant rates, cut at the top and the bottom.
    #[inline]
    fn straight(&mut self, hour: usize, in_w: &Lane, out_w: &Lane) {
        let full_wh = self.side.cell.full_wh;
        for lane in 0..LANES {
            let raw_wh = self.ended.charge_wh[lane] + in_w[lane] - out_w[lane];
            let after_wh = most(least(raw_wh, full_wh), 0.0);
            self.ended.end_hour(hour, lane, after_wh, most(-raw_wh, 0.0), self.short_below_wh);
        }
    }
}

impl Ended {
    #[inline]
    fn end_hour(&mut self, hour: usize, lane: usize, after_wh: f64, unserved_wh: f64, short_below_wh: f64) {
        self.charge_wh[lane] = after_wh;
        self.lowest_wh[lane] = least(after_wh, self.lowest_wh[lane]);
        self.unserved_wh[lane] += unserved_wh;
        let is_short = unserved_wh > LEAST_SHORT_WH || after_wh < short_below_wh;
        let short = if is_short { hour as f64 } else { f64::INFINITY };
        self.first_short[lane] = least(short, self.first_short[lane]);
    }
}
