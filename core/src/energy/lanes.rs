//! Eight courses of one store at once, so that a processor has something to do while it waits for a sum.
//!
//! Each hour does what [`super::step`] does with one store; a test compares both. Whenever a charge may be above the knee, the
//! hour of each course is worked out by itself.

use super::chance::{DayDraw, Samplers};
use super::constants::LEAST_SHORT_WH;
use super::hour::Rates;
use super::prepare::{Offer, Prepared, Side, SideHour};
use super::step::{rates, taken};
use super::store::TaperWithin;
use super::{least, most};
use crate::draws::Chance;

/// How many courses go side by side.
pub(super) const LANES: usize = 8;

/// A number for each course.
pub(super) type Lane = [f64; LANES];

/// What courses came to.
#[derive(Clone, Copy, Debug)]
pub(super) struct Ended {
    pub charge_wh: Lane,
    pub lowest_wh: Lane,
    pub unserved_wh: Lane,
    /// The first hour that was short; infinite if none was.
    pub first_short: Lane,
}

/// Courses side by side.
pub(super) struct Lanes<'a> {
    prepared: &'a Prepared,
    side: &'a Side,
    samplers: &'a Samplers,
    chances: [Chance; LANES],
    days: [DayDraw; LANES],
    scale: Lane,
    cloud: Lane,
    drive: Lane,
    happens: Vec<Lane>,
    /// A charge below it is a shortage, too.
    short_below_wh: f64,
    ended: Ended,
}

impl<'a> Lanes<'a> {
    pub fn new(prepared: &'a Prepared, side: &'a Side, samplers: &'a Samplers, seed: u64, first: u64) -> Self {
        let mut chances: [Chance; LANES] =
            std::array::from_fn(|lane| Chance::of_course(seed, first.wrapping_add(lane as u64)));
        let scale = std::array::from_fn(|lane| samplers.scale.draw(&mut chances[lane]));
        Self {
            prepared,
            side,
            samplers,
            chances,
            days: [DayDraw::default(); LANES],
            scale,
            cloud: [1.0; LANES],
            drive: [1.0; LANES],
            happens: vec![[0.0; LANES]; if side.has_chances { prepared.draws.len() } else { 0 }],
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
                self.begin_day(hour / 24);
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

    fn begin_day(&mut self, day: usize) {
        let usual = self.prepared.cloud_by_day.get(day).copied().unwrap_or(1.0);
        for lane in 0..LANES {
            let chance = &mut self.chances[lane];
            self.days[lane] = self.samplers.day_after(self.days[lane], chance);
            self.cloud[lane] = self.days[lane].cloud * usual;
            self.drive[lane] = self.days[lane].drive;
            for (draw, happens) in self.prepared.draws.iter().zip(&mut self.happens) {
                if draw.chance < 1.0 {
                    happens[lane] = f64::from(u8::from(chance.share() < draw.chance));
                }
            }
        }
    }

    #[inline]
    fn needs_wh(&self, hour: usize, entry: &SideHour) -> Lane {
        let mut needs: Lane = std::array::from_fn(|lane| entry.fixed_wh + entry.certain_wh * self.scale[lane]);
        if self.side.has_chances {
            for one in self.side.uses_of(hour).iter().filter(|one| one.chance < 1.0) {
                let Some(happens) = self.happens.get(one.draw) else { continue };
                for lane in 0..LANES {
                    needs[lane] += one.cells_wh * (self.scale[lane] * happens[lane]);
                }
            }
        }
        needs
    }

    #[inline]
    fn charging(&mut self, hour: usize, entry: &SideHour, offer: Offer, out_w: &Lane) {
        let (mut steady_w, mut tapered_w) = ([0.0; LANES], [0.0; LANES]);
        for lane in 0..LANES {
            let here = Offer { vehicle_w: offer.vehicle_w * self.drive[lane], ..offer };
            let rates = rates(self.side, taken(self.side, entry, self.cloud[lane], here), out_w[lane]);
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
