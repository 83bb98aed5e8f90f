//! Many runs by chance: over cloudiness, what is used, and what driving brings.
//!
//! ```
//! use kerbstead_core::energy::chance::{Runs, Uncertainty};
//! use kerbstead_core::energy::draw::Draw;
//! use kerbstead_core::energy::setup::{Given, OnBoard, Setup};
//! use kerbstead_core::energy::spread::Spread;
//! use kerbstead_core::energy::store::Store;
//! let setup = Setup {
//!     stores: vec![OnBoard::full(Store::ideal(240.0))],
//!     draws: vec![Draw { power_w: 10.0, ..Draw::default() }],
//!     hours: vec![Given::default(); 24],
//!     cloud_by_day: vec![],
//! };
//! let uncertainty = Uncertainty {
//!     scale: Spread::Triangle { low: 0.5, likely: 1.0, high: 1.5 },
//!     ..Uncertainty::default()
//! };
//! let mut runs = Runs::new(&setup, &uncertainty, 7, 1_000);
//! while runs.step(200) > 0 {}
//! assert!((runs.chances().reaching_hour(24) - 0.5).abs() < 0.05);
//! ```

pub use super::chances::{BandHour, Chances};
pub use crate::statistics::percentile;

use super::constants::LEAST_SHORT_WH;
use super::lanes::{Ended, LANES, Lanes, Today};
use super::prepare::Prepared;
use super::setup::Setup;
use super::spread::{Sampler, Spread};
use super::step::{Factors, StoreStep, step};
use super::{least, sound, whole};
use crate::draws::Chance;
use crate::statistics::ascending;

/// No more runs are made.
pub const MOST_RUNS: u32 = 100_000;
/// Steps of the band: each is half a percent of what the stores hold.
const BAND_STEPS: usize = 200;

/// What is not certain.
#[derive(Clone, Debug, PartialEq)]
pub struct Uncertainty {
    /// By which each day's share of the clear sky's yield is multiplied.
    pub cloud: Spread,
    /// The chance that a day's factor is that of the day before, 0 to 1: dull days come together.
    pub cloud_stays: f64,
    /// By which what the vehicle's socket offers is multiplied, day by day.
    pub drive: Spread,
    /// By which all that is used is multiplied, for a whole run: used longer or shorter, not more strongly, so that no outlet's
    /// limit is met by it. Standby is not.
    pub scale: Spread,
    /// Whether [`Chances::band`] is wanted.
    pub has_band: bool,
}

impl Default for Uncertainty {
    /// Nothing but the draws that may or may not happen.
    fn default() -> Self {
        let fixed = || Spread::Fixed(1.0);
        Self { cloud: fixed(), cloud_stays: 0.0, drive: fixed(), scale: fixed(), has_band: false }
    }
}

/// What is not certain, ready to be drawn from.
struct Samplers {
    clouds: Clouds,
    drive: Sampler,
    scale: Sampler,
}

impl Samplers {
    fn new(uncertainty: &Uncertainty) -> Self {
        Self {
            clouds: Clouds::new(&uncertainty.cloud, uncertainty.cloud_stays),
            drive: Sampler::new(&uncertainty.drive),
            scale: Sampler::new(&uncertainty.scale),
        }
    }
}

/// Cloudiness day after day: dull days come together.
#[derive(Clone, Debug)]
pub struct Clouds {
    spread: Sampler,
    stays: f64,
}

impl Clouds {
    /// As days are spread, and with the chance that a day's factor is that of the day before, 0 to 1.
    pub fn new(spread: &Spread, stays: f64) -> Self {
        Self { spread: Sampler::new(spread), stays: sound(stays, 1.0) }
    }

    /// Whether every day is alike.
    pub fn is_certain(&self) -> bool {
        self.spread.fixed().is_some()
    }

    /// The factor of the day after one, or of the first, 0 to 10.
    #[inline]
    pub fn day_after(&self, before: Option<f64>, chance: &mut Chance) -> f64 {
        match before {
            Some(before) if self.stays > 0.0 && chance.share() < self.stays => before,
            _ => least(self.spread.draw(chance), 10.0),
        }
    }
}

/// Days of courses side by side, drawn by chance.
struct Drawn<'a> {
    prepared: &'a Prepared,
    samplers: &'a Samplers,
    chances: [Chance; LANES],
    clouds: [Option<f64>; LANES],
}

impl<'a> Drawn<'a> {
    fn new(prepared: &'a Prepared, samplers: &'a Samplers, seed: u64, first: u64) -> Self {
        let chance = |lane: usize| Chance::of_course(seed, first.wrapping_add(lane as u64));
        Self { prepared, samplers, chances: std::array::from_fn(chance), clouds: [None; LANES] }
    }

    fn begin_day(&mut self, day: usize, today: &mut Today) {
        let usual = self.prepared.cloud_by_day.get(day).copied().unwrap_or(1.0);
        for lane in 0..LANES {
            let chance = &mut self.chances[lane];
            let cloud = self.samplers.clouds.day_after(self.clouds[lane], chance);
            self.clouds[lane] = Some(cloud);
            today.cloud[lane] = cloud * usual;
            today.drive[lane] = self.samplers.drive.draw(chance);
            for (draw, uses) in self.prepared.draws.iter().zip(&mut today.uses) {
                if draw.chance < 1.0 {
                    uses[lane] = f64::from(u8::from(chance.share() < draw.chance));
                }
            }
        }
    }
}

/// Runs by chance, made in slices so that a worker can tell how far it is and stop between them. The same setup, seed and
/// number of runs give the same answer, whatever the slices were.
pub struct Runs {
    prepared: Prepared,
    samplers: Samplers,
    seed: u64,
    wanted: u32,
    done: u32,
    floor_wh: f64,
    full_wh: f64,
    kept: u32,
    first_short: Vec<f64>,
    lowest_wh: Vec<f64>,
    unserved_wh: Vec<f64>,
    end_wh: Vec<f64>,
    /// How many runs had each share of the charge at the end of each hour; empty if no band is wanted.
    counts: Vec<u32>,
}

impl Runs {
    /// Prepares so many runs, at most 100,000.
    pub fn new(setup: &Setup, uncertainty: &Uncertainty, seed: u64, runs: u32) -> Self {
        Self::of(Prepared::new(setup), uncertainty, seed, runs)
    }

    /// Prepares runs that begin with an hour of the setup: what the stores open with is in them then, all hours of the answer are
    /// counted from it, and a run in which a store falls below its floor has fallen short, too.
    pub fn from_hour(setup: &Setup, from_hour: usize, uncertainty: &Uncertainty, seed: u64, runs: u32) -> Self {
        Self::of(Prepared::from_hour(setup, from_hour), uncertainty, seed, runs)
    }

    fn of(prepared: Prepared, uncertainty: &Uncertainty, seed: u64, runs: u32) -> Self {
        let runs = runs.min(MOST_RUNS);
        let full_wh = prepared.sides.iter().map(|side| side.cell.full_wh).sum();
        let hours = if uncertainty.has_band { prepared.offers.len() } else { 0 };
        let of_runs = || Vec::with_capacity(runs as usize);
        Self {
            samplers: Samplers::new(uncertainty),
            seed,
            wanted: runs,
            done: 0,
            floor_wh: prepared.sides.iter().map(|side| side.floor_wh).sum(),
            full_wh,
            kept: 0,
            first_short: Vec::new(),
            lowest_wh: of_runs(),
            unserved_wh: of_runs(),
            end_wh: of_runs(),
            counts: vec![0; hours * (BAND_STEPS + 1)],
            prepared,
        }
    }

    /// Makes at least so many more runs, up to seven more than that; gives how many are left.
    pub fn step(&mut self, runs: u32) -> u32 {
        let until = self.done.saturating_add(runs.max(1)).min(self.wanted);
        while self.done < until {
            if self.prepared.sides.len() == 1 { self.side_by_side() } else { self.one() }
        }
        self.left()
    }

    /// How many runs are left.
    pub fn left(&self) -> u32 {
        self.wanted - self.done
    }

    /// What the runs so far came to.
    pub fn chances(&self) -> Chances {
        Chances {
            runs: self.done,
            kept: self.kept,
            first_short_hours: ascending(&self.first_short),
            lowest_wh: ascending(&self.lowest_wh),
            unserved_wh: ascending(&self.unserved_wh),
            end_wh: ascending(&self.end_wh),
            band: self.counts.chunks_exact(BAND_STEPS + 1).map(|counts| self.band_hour(counts)).collect(),
        }
    }

    fn side_by_side(&mut self) {
        let Some(side) = self.prepared.sides.first() else { return };
        let live = LANES.min(self.left() as usize);
        let mut drawn = Drawn::new(&self.prepared, &self.samplers, self.seed, self.done.into());
        let mut today = Today::likely(if side.has_chances { self.prepared.draws.len() } else { 0 });
        today.scale = std::array::from_fn(|lane| self.samplers.scale.draw(&mut drawn.chances[lane]));
        let mut begin_day = |day: usize, today: &mut Today| drawn.begin_day(day, today);
        let lanes = Lanes::<false>::new(&self.prepared, side, &mut today, &mut begin_day);
        let ended = if self.counts.is_empty() {
            lanes.run(|_, _| {})
        } else {
            let steps_per_wh = steps_per_wh(self.full_wh);
            let counts = &mut self.counts;
            lanes.run(|hour, charge_wh| {
                for charge_wh in charge_wh.iter().take(live) {
                    count(counts, hour, *charge_wh, steps_per_wh);
                }
            })
        };
        for lane in 0..live {
            self.end(&ended, lane, ended.lowest_wh[lane] >= self.floor_wh);
        }
    }

    fn end(&mut self, ended: &Ended, lane: usize, floors_held: bool) {
        self.done += 1;
        let is_short = ended.first_short[lane] < f64::INFINITY;
        if is_short {
            self.first_short.push(ended.first_short[lane]);
        }
        self.kept += u32::from(!is_short && floors_held);
        self.lowest_wh.push(ended.lowest_wh[lane]);
        self.unserved_wh.push(ended.unserved_wh[lane]);
        self.end_wh.push(ended.charge_wh[lane]);
    }

    /// One run of several stores.
    fn one(&mut self) {
        let prepared = &self.prepared;
        let mut chance = Chance::of_course(self.seed, self.done.into());
        let scale = self.samplers.scale.draw(&mut chance);
        let mut charge_wh = prepared.opening_wh();
        let mut steps = vec![StoreStep::default(); prepared.sides.len()];
        let mut happens = vec![1.0; prepared.draws.len()];
        let (mut before, mut cloud, mut drive) = (None, 1.0, 1.0);
        let (mut unserved_wh, mut first_short) = (0.0, f64::INFINITY);
        let (mut lowest_wh, mut floors_held) = (self.full_wh, true);
        for (hour, offer) in prepared.offers.iter().copied().enumerate() {
            if prepared.begins_day(hour) {
                cloud = self.samplers.clouds.day_after(before, &mut chance);
                before = Some(cloud);
                drive = self.samplers.drive.draw(&mut chance);
                for (draw, happens) in prepared.draws.iter().zip(&mut happens).filter(|(draw, _)| draw.chance < 1.0) {
                    *happens = f64::from(u8::from(chance.share() < draw.chance));
                }
            }
            let usual = prepared.cloud_by_day.get(hour / 24).copied().unwrap_or(1.0);
            let factors = Factors { cloud: cloud * usual, drive, scale, happens: &happens };
            let mut short_wh = 0.0;
            step(prepared, hour, offer, factors, &mut charge_wh, &mut steps, &mut |_, _, wh| short_wh += wh);
            unserved_wh += short_wh;
            let is_low = charge_wh.iter().zip(&prepared.sides).any(|(charge, side)| *charge < side.floor_wh);
            if short_wh > LEAST_SHORT_WH || (is_low && prepared.floors_count) {
                first_short = least(hour as f64, first_short);
            }
            let sum_wh: f64 = charge_wh.iter().sum();
            lowest_wh = least(sum_wh, lowest_wh);
            floors_held &= !is_low;
            if !self.counts.is_empty() {
                count(&mut self.counts, hour, sum_wh, steps_per_wh(self.full_wh));
            }
        }
        let ended = Ended {
            charge_wh: [charge_wh.iter().sum(); LANES],
            lowest_wh: [lowest_wh; LANES],
            unserved_wh: [unserved_wh; LANES],
            first_short: [first_short; LANES],
        };
        self.end(&ended, 0, floors_held);
    }

    fn band_hour(&self, counts: &[u32]) -> BandHour {
        let at = |percent: u64| {
            let wanted = u64::from(self.done) * percent;
            let mut sum = 0;
            let step = counts.iter().position(|count| {
                sum += u64::from(*count) * 100;
                sum >= wanted.max(1)
            });
            self.full_wh * step.unwrap_or(0) as f64 / BAND_STEPS as f64
        };
        BandHour { low_wh: at(10), middle_wh: at(50), high_wh: at(90) }
    }
}

fn steps_per_wh(full_wh: f64) -> f64 {
    if full_wh > 0.0 { BAND_STEPS as f64 / full_wh } else { 0.0 }
}

#[inline]
fn count(counts: &mut [u32], hour: usize, charge_wh: f64, steps_per_wh: f64) {
    let step = whole(charge_wh * steps_per_wh + 0.5).min(BAND_STEPS);
    if let Some(count) = counts.get_mut(hour * (BAND_STEPS + 1) + step) {
        *count += 1;
    }
}
