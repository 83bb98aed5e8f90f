//! Many courses of the cash, drawn by chance.

use super::draws::Lot;
use super::input::{MOST_PATHS, Outlook, Refused};
use super::percentile::Spread;
use crate::draws::Chance;

/// The band rests on so many courses, the first ones: a thousand place its edges within a percent or two, and a plot
/// shows no more.
const BAND_PATHS: usize = 1_000;
/// The most amounts that are kept for the band (8 bytes each); with many uncertain days it rests on fewer courses.
const BAND_AMOUNTS: usize = 400_000;

/// Courses of the cash, drawn in slices so that a worker can tell how far it is and stop between them.
///
/// The same outlook, seed and number of courses give the same answer, whatever the slices were. A course takes two
/// steps an uncertain flow, and one for each day on which one of them may happen.
pub struct Runs {
    seed: u64,
    lots: Vec<Lot>,
    slots: Slots,
    floor: i64,
    paths: u32,
    drawn: u32,
    kept: u32,
    /// What the current course got on each day of the slots.
    gains: Vec<i64>,
    lowest: Vec<i64>,
    end: Vec<i64>,
    /// What the first courses had got by each day of the slots, course after course.
    band: Vec<i64>,
    band_paths: usize,
}

/// The days on which something uncertain may happen.
struct Slots {
    /// Cash of each day without anything uncertain.
    certain: Vec<i64>,
    days: Vec<usize>,
    /// The least of the certain cash from each of these days to the day before the next.
    least: Vec<i64>,
    /// The least of it before the first of them.
    least_before: i64,
}

/// What the courses came to.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Chances {
    /// How many courses.
    pub paths: u32,
    /// In how many of them the cash never fell below the floor.
    pub kept: u32,
    /// The lowest evening of each, in minor units.
    pub lowest: Spread,
    /// The last evening of each, in minor units.
    pub end: Spread,
    /// What lies between, day by day.
    pub band: Vec<BandDay>,
}

/// Cash in the evening of a day, in minor units: one in ten courses has less than `low`, half of them less than
/// `middle`, nine in ten less than `high`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct BandDay {
    /// The tenth percentile.
    pub low: i64,
    /// The median.
    pub middle: i64,
    /// The ninetieth percentile.
    pub high: i64,
}

impl Chances {
    /// The share of the courses in which the floor held, in percent. With 10,000 courses it is within a percent of the true
    /// chance 19 times in 20 (twice the standard error of a share, at most 0.5 %).
    pub fn percent_kept(&self) -> f64 {
        f64::from(self.kept) * 100.0 / f64::from(self.paths.max(1))
    }
}

impl Runs {
    /// Prepares so many courses, 1 to [`MOST_PATHS`].
    ///
    /// # Errors
    /// When there are too many or none, and as [`Outlook::check`].
    pub fn new(outlook: &Outlook, seed: u64, paths: u32) -> Result<Self, Refused> {
        outlook.check()?;
        if paths == 0 || paths > MOST_PATHS {
            return Err(Refused::Paths);
        }
        let slots = Slots::new(outlook);
        let slot_of = |day: u32| slots.days.partition_point(|slot| *slot < day as usize);
        let lots = outlook.uncertain.iter().map(|flow| Lot::new(flow, slot_of(flow.first_day))).collect();
        let count = slots.days.len();
        let band_paths = BAND_AMOUNTS.checked_div(count).unwrap_or(0).min(BAND_PATHS).min(paths as usize);
        Ok(Self {
            seed,
            lots,
            floor: outlook.floor,
            paths,
            drawn: 0,
            kept: 0,
            gains: vec![0; count],
            lowest: Vec::with_capacity(paths as usize),
            end: Vec::with_capacity(paths as usize),
            band: Vec::with_capacity(band_paths * count),
            band_paths,
            slots,
        })
    }

    /// Draws so many more courses; gives how many are left.
    pub fn step(&mut self, paths: u32) -> u32 {
        for _ in 0..paths.min(self.left()) {
            self.course();
        }
        self.left()
    }

    /// How many courses are left.
    pub fn left(&self) -> u32 {
        self.paths - self.drawn
    }

    /// What the courses so far came to.
    pub fn chances(&self) -> Chances {
        Chances {
            paths: self.drawn,
            kept: self.kept,
            lowest: Spread::new(self.lowest.clone()),
            end: Spread::new(self.end.clone()),
            band: self.band_by_day(),
        }
    }

    fn course(&mut self) {
        let mut chance = Chance::of_course(self.seed, self.drawn.into());
        for lot in &self.lots {
            let (amount, slot) = lot.draw(&mut chance);
            if let Some(gain) = self.gains.get_mut(slot) {
                *gain += amount;
            }
        }
        let keeps_band = self.lowest.len() < self.band_paths;
        let (mut got, mut lowest) = (0, self.slots.least_before);
        for (gain, least) in self.gains.iter_mut().zip(&self.slots.least) {
            got += std::mem::take(gain);
            lowest = lowest.min(got + least);
            if keeps_band {
                self.band.push(got);
            }
        }
        self.drawn += 1;
        self.kept += u32::from(lowest >= self.floor);
        self.lowest.push(lowest);
        self.end.push(got + self.slots.certain.last().copied().unwrap_or(0));
    }

    fn band_by_day(&self) -> Vec<BandDay> {
        let count = self.slots.days.len();
        let mut band = Vec::with_capacity(self.slots.certain.len());
        let (mut slot, mut got) = (0, BandDay { low: 0, middle: 0, high: 0 });
        for (day, cash) in self.slots.certain.iter().enumerate() {
            if self.slots.days.get(slot) == Some(&day) {
                let amounts = self.band.iter().skip(slot).step_by(count).copied().collect();
                got = BandDay::new(&Spread::new(amounts));
                slot += 1;
            }
            band.push(BandDay { low: cash + got.low, middle: cash + got.middle, high: cash + got.high });
        }
        band
    }
}

impl BandDay {
    fn new(spread: &Spread) -> Self {
        Self { low: spread.percentile(10), middle: spread.percentile(50), high: spread.percentile(90) }
    }
}

impl Slots {
    fn new(outlook: &Outlook) -> Self {
        let certain = outlook.certain_by_day();
        let mut may_happen = vec![false; certain.len()];
        for flow in &outlook.uncertain {
            if let Some(days) = may_happen.get_mut(flow.first_day as usize..=flow.last_day as usize) {
                days.fill(true);
            }
        }
        let mut slots = Self { certain: Vec::new(), days: Vec::new(), least: Vec::new(), least_before: i64::MAX };
        for (day, cash) in certain.iter().enumerate() {
            if may_happen.get(day) == Some(&true) {
                slots.days.push(day);
                slots.least.push(i64::MAX);
            }
            let least = slots.least.last_mut().unwrap_or(&mut slots.least_before);
            *least = (*least).min(*cash);
        }
        slots.certain = certain;
        slots
    }
}
