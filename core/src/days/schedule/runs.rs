//! How likely all is done by a day: the schedule placed again and again, with durations and weather by chance.

use super::placing::Placing;
use super::{Durations, Schedule, Workload, pert};
use crate::draws::Chance;
use crate::order;

/// What a step places, in activities times the words of slots that each is looked at in: a few milliseconds.
const STEP: usize = 280_000;

/// The most runs.
pub const MOST_RUNS: u32 = 100_000;

/// Days on which what needs the weather rests.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Weather {
    /// The calendars that are closed on such a day, all of them at once.
    pub calendars: Vec<usize>,
    /// The chance of such a day, 0 to 1, day by day; the last one counts for all that follow. None: never.
    pub chances: Vec<f64>,
    /// Slots of a day; slot 0 begins the first one.
    pub slots_per_day: usize,
}

/// Placements of the same order by chance, in steps. In each run every activity takes a drawn number of slots, and is
/// placed as early as can be in the order of the schedule. The same question and seed give the same answer. Each activity
/// has draws of its own, so that a change to one leaves those of the others as they are.
pub struct Runs {
    placing: Placing,
    durations: Vec<Durations>,
    /// The chance of a day on which what needs the weather rests, day by day.
    rests: Vec<f64>,
    seed: u64,
    wanted: u32,
    finishes: Vec<usize>,
    unfinished: u32,
}

/// What the runs came to.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Chances {
    /// The finishes of the runs in which all was placed that the schedule has, in ascending order.
    pub finishes: Vec<usize>,
    /// In how many others something found no place before the last slot.
    pub unfinished: u32,
}

impl Chances {
    /// How many runs there were.
    pub fn runs(&self) -> usize {
        self.finishes.len() + self.unfinished as usize
    }

    /// In how many runs all was done before a slot.
    pub fn done_by(&self, slot: usize) -> usize {
        self.finishes.partition_point(|finish| *finish <= slot)
    }

    /// In how many runs all was done by the end of each day of so many slots, up to the day on which the last was.
    pub fn done_by_day(&self, slots_per_day: usize) -> Vec<usize> {
        let day = slots_per_day.max(1);
        let last = self.finishes.last().map_or(0, |finish| finish.div_ceil(day));
        (1..=last).map(|count| self.done_by(count * day)).collect()
    }

    /// The slot by which all is done in so many percent of the runs, 1 to 100; none if they are not all finished then.
    /// The nearest rank: the least finish that so many reach.
    pub fn percentile(&self, percent: u32) -> Option<usize> {
        let rank = (self.runs() * percent.clamp(1, 100) as usize).div_ceil(100);
        self.finishes.get(rank.saturating_sub(1)).copied()
    }
}

impl Runs {
    /// Prepares so many runs, at most [`MOST_RUNS`]. Activities that have no durations take what the workload says.
    pub fn new(
        workload: &Workload,
        schedule: &Schedule,
        durations: &[Durations],
        weather: Weather,
        seed: u64,
        runs: u32,
    ) -> Self {
        let certain = |at: usize| f64::from(workload.activities[at].work_slots);
        let of = |at: usize| durations.get(at).copied().unwrap_or_else(|| Durations::certain(certain(at)));
        Self {
            placing: Placing::new(workload, schedule, &weather.calendars, weather.slots_per_day),
            durations: (0..workload.activities.len()).map(of).collect(),
            rests: weather.chances,
            seed,
            wanted: runs.min(MOST_RUNS),
            finishes: Vec::new(),
            unfinished: 0,
        }
    }

    /// Goes on for a few milliseconds; gives the share that is done, 1 when all is.
    pub fn step(&mut self) -> f64 {
        let many = STEP / self.placing.effort();
        for _ in 0..=many {
            if self.done() == self.wanted {
                return 1.0;
            }
            self.run();
        }
        if self.done() == self.wanted { 1.0 } else { f64::from(self.done()) / f64::from(self.wanted) }
    }

    /// What the runs so far came to.
    pub fn chances(&self) -> Chances {
        let sorted = order::sorted(self.finishes.iter().map(|finish| *finish as u64));
        Chances {
            finishes: sorted.into_iter().map(|(_, place)| self.finishes[place]).collect(),
            unfinished: self.unfinished,
        }
    }

    fn done(&self) -> u32 {
        u32::try_from(self.finishes.len()).unwrap_or(u32::MAX).saturating_add(self.unfinished)
    }

    fn run(&mut self) {
        let seed = Chance::of_course(self.seed, self.done().into()).draw();
        let mut weather = Chance::of_course(seed, u64::MAX);
        let rests = &self.rests;
        if let Some(last) = rests.last() {
            self.placing.close_days(&mut |day| {
                let is_open = weather.share() >= rests.get(day).copied().unwrap_or(*last);
                !is_open
            });
        }
        let durations = &self.durations;
        let drawn = |at: usize| pert::draw(durations[at], &mut Chance::of_course(seed, at as u64));
        match self.placing.place(&mut |at| drawn(at)) {
            Some(finish) => self.finishes.push(finish),
            None => self.unfinished += 1,
        }
    }
}
