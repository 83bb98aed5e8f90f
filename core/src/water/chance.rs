//! How likely a route holds when nobody knows exactly what is used: many runs by chance.
//!
//! ```
//! use kerbstead_core::energy::spread::Spread;
//! use kerbstead_core::water::chance::{Unsure, lasting};
//! use kerbstead_core::water::tanks::{Day, Setup, Tank, Use};
//! let day = Day { wants: Use::new(5.0, 0.0, 0.0), ..Day::default() };
//! let setup = Setup { fresh: vec![Tank::full(20.0)], days: vec![day; 4], ..Setup::default() };
//! let unsure = Unsure { habits: Spread::Triangle { low: 0.5, likely: 1.0, high: 1.5 }, ..Unsure::default() };
//! // Just enough of what is likely: enough in half of all runs, but nearly always for three days.
//! let lasting = lasting(&setup, &unsure, 7, 4_000);
//! assert!((lasting.share() - 0.5).abs() < 0.03 && lasting.share_to(3) > 0.75);
//! ```

use super::constants::MOST_ML;
use super::course::{Level, Rooms, Vessel, opened, step};
use super::tanks::{Day, Setup, Use};
use crate::draws::Chance;
use crate::energy::spread::{Sampler, Spread};

/// No more runs are made.
pub const MOST_RUNS: u32 = 100_000;

/// What is not certain. By each of these, what the days ask for is multiplied.
#[derive(Clone, Debug, PartialEq)]
pub struct Unsure {
    /// Fresh and used water of all days of a run: what somebody's habits are.
    pub habits: Spread,
    /// Fresh and used water of each day by itself.
    pub day: Spread,
    /// The toilet on all days of a run.
    pub toilet: Spread,
}

impl Default for Unsure {
    /// All is certain.
    fn default() -> Self {
        let fixed = || Spread::Fixed(1.0);
        Self { habits: fixed(), day: fixed(), toilet: fixed() }
    }
}

/// What the runs came to.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Lasting {
    /// How many runs there were.
    pub runs: u32,
    /// In how many of them fresh water, room for used water and the toilet fell short first, in this order.
    pub short_first: [u32; 3],
    /// In how many of them each day is the first short one.
    pub first_short_on: Vec<u32>,
}

impl Lasting {
    /// The share of runs in which nothing falls short; 1 without runs. By chance it is off by about
    /// sqrt(share (1 - share) / runs).
    pub fn share(&self) -> f64 {
        self.share_to(usize::MAX)
    }

    /// The share of runs in which nothing falls short on the first so many days.
    pub fn share_to(&self, days: usize) -> f64 {
        let short: u32 = self.first_short_on.iter().take(days).sum();
        if self.runs == 0 { 1.0 } else { 1.0 - f64::from(short) / f64::from(self.runs) }
    }
}

/// Runs a route so many times, at most 100,000, by chance from a seed. The same seed gives the same answer, and a run the same
/// draws however many runs there are.
pub fn lasting(setup: &Setup, unsure: &Unsure, seed: u64, runs: u32) -> Lasting {
    let mut lasting = Lasting::none(setup);
    let samplers = [&unsure.habits, &unsure.day, &unsure.toilet].map(Sampler::new);
    lasting.run(setup, &mut Habits { samplers, habit: 1.0, toilet: 1.0 }, seed, runs.min(MOST_RUNS));
    lasting
}

/// What the days of a run ask for, by chance.
pub(super) trait Asking {
    /// The next run begins.
    fn begin(&mut self, chance: &mut Chance);
    /// What a day asks for, from the first one on, one after another.
    fn on(&mut self, at: usize, day: &Day, chance: &mut Chance) -> Use;
}

struct Habits {
    samplers: [Sampler; 3],
    habit: f64,
    toilet: f64,
}

impl Asking for Habits {
    fn begin(&mut self, chance: &mut Chance) {
        let [habits, _, toilet] = &self.samplers;
        (self.habit, self.toilet) = (habits.draw(chance), toilet.draw(chance));
    }

    fn on(&mut self, _: usize, day: &Day, chance: &mut Chance) -> Use {
        let [_, by_day, _] = &self.samplers;
        let (ask, water) = (day.asks(), self.habit * by_day.draw(chance));
        let fresh_ml = times(ask.fresh_ml, water);
        let grey_ml = times(ask.grey_ml, water).min(fresh_ml);
        Use { fresh_ml, grey_ml, toilet: times(ask.toilet, self.toilet) }
    }
}

impl Lasting {
    /// Before the first run.
    pub(super) fn none(setup: &Setup) -> Self {
        Self { runs: 0, short_first: [0; 3], first_short_on: vec![0; setup.days.len()] }
    }

    /// So many runs more.
    pub(super) fn run(&mut self, setup: &Setup, asking: &mut dyn Asking, seed: u64, runs: u32) {
        let (rooms, opening) = opened(setup);
        for number in self.runs..self.runs + runs {
            let mut chance = Chance::of_course(seed, number.into());
            asking.begin(&mut chance);
            let Some((day, vessel)) = first_short(&rooms, opening, setup, asking, &mut chance) else { continue };
            let [fresh, grey, toilet] = &mut self.short_first;
            *match vessel {
                Vessel::Fresh => fresh,
                Vessel::Grey => grey,
                Vessel::Toilet => toilet,
            } += 1;
            if let Some(runs) = self.first_short_on.get_mut(day) {
                *runs += 1;
            }
        }
        self.runs += runs;
    }
}

fn first_short(
    rooms: &Rooms,
    opening: Level,
    setup: &Setup,
    asking: &mut dyn Asking,
    chance: &mut Chance,
) -> Option<(usize, Vessel)> {
    let mut levels = opening;
    for (at, day) in setup.days.iter().enumerate() {
        let went = step(rooms, levels, day, asking.on(at, day, chance));
        if !went.holds() {
            let vessel = match () {
                () if went.missing_ml > 0 => Vessel::Fresh,
                () if went.grey_over_ml > 0 => Vessel::Grey,
                () => Vessel::Toilet,
            };
            return Some((at, vessel));
        }
        levels = went.evening();
    }
    None
}

/// So many times as much, to the nearest millilitre.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "not negative, and what is too much saturates"
)]
fn times(ml: u64, factor: f64) -> u64 {
    ((ml as f64 * factor + 0.5) as u64).min(MOST_ML)
}
