//! The uncertain numbers of a plan, and what each is in a run.

use std::collections::BTreeMap;

use super::answer::What;
use crate::draws::Chance;
use crate::energy::worlds::{LANES, Lane};
use crate::plan::{Estimate, Id, Money, Path};

/// No number is believed beyond this, either way.
const MOST: f64 = 1e15;

/// Everything that is not certain about a plan. Each input is drawn from a seed of its own, made of what it is and of the
/// entry it stands in: so a change to one leaves what is drawn of the others as it was.
pub(super) struct Inputs {
    seed: u64,
    pub list: Vec<Uncertain>,
    known: BTreeMap<(What, Id), usize>,
    ranges: Vec<(usize, Range)>,
}

/// One uncertain number.
pub(super) struct Uncertain {
    pub what: What,
    pub id: Id,
    pub path: Path,
    seed: u64,
    /// What it was, run by run, where that is more than one even draw.
    pub values: Vec<f64>,
}

/// A number of the plan as a run takes it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Number {
    /// The same in every run.
    Sure(f64),
    /// By its position among the ranges.
    Ranged(usize),
}

impl Inputs {
    pub fn new(seed: u64) -> Self {
        Self { seed, list: Vec::new(), known: BTreeMap::new(), ranges: Vec::new() }
    }

    /// The position of an input; it is noted when it is new.
    pub fn input(&mut self, what: What, id: Id, path: &dyn Fn() -> Path) -> usize {
        let next = self.list.len();
        let at = *self.known.entry((what, id)).or_insert(next);
        if at == next {
            let seed = Chance::of_course(self.seed, (what as u64) << 32 | u64::from(id)).draw();
            self.list.push(Uncertain { what, id, path: path(), seed, values: Vec::new() });
        }
        at
    }

    /// A number that may be a range.
    pub fn number(&mut self, what: What, id: Id, path: &dyn Fn() -> Path, estimate: Estimate<f64>) -> Number {
        match Range::of(estimate) {
            Some(range) => Number::Ranged(self.ranged(what, id, path, range)),
            None => Number::Sure(estimate.likely()),
        }
    }

    /// The position of a range. Several may follow the same input: all are high when it is.
    pub fn ranged(&mut self, what: What, id: Id, path: &dyn Fn() -> Path, range: Range) -> usize {
        let input = self.input(what, id, path);
        let same = self.ranges.iter().position(|known| *known == (input, range));
        same.unwrap_or_else(|| {
            self.ranges.push((input, range));
            self.ranges.len() - 1
        })
    }

    /// What chance has for an input in a run.
    pub fn chance(&self, input: usize, run: u64) -> Chance {
        Chance::of_course(self.list.get(input).map_or(0, |input| input.seed), run)
    }

    /// What an input was, run by run.
    pub fn values(&self, input: usize, runs: u32) -> Vec<f64> {
        match self.list.get(input) {
            Some(uncertain) if !uncertain.values.is_empty() => uncertain.values.clone(),
            _ => (0..u64::from(runs)).map(|run| self.chance(input, run).share()).collect(),
        }
    }

    /// Notes what an input is in the next run.
    pub fn note(&mut self, input: usize, value: f64) {
        if let Some(input) = self.list.get_mut(input) {
            input.values.push(value);
        }
    }

    /// What the inputs are in eight runs.
    pub fn drawn(&self, first_run: u64) -> Drawn {
        let share = |input: usize, lane: usize| self.chance(input, first_run + lane as u64).share();
        let shares: Vec<Lane> =
            (0..self.list.len()).map(|input| std::array::from_fn(|lane| share(input, lane))).collect();
        let position = |(input, range): &(usize, Range)| {
            let shares = shares.get(*input).copied().unwrap_or([0.5; LANES]);
            shares.map(|share| range.position(share))
        };
        let positions: Vec<Lane> = self.ranges.iter().map(position).collect();
        let value = |(positions, (_, range)): (&Lane, &(usize, Range))| positions.map(|position| range.at(position));
        let values = positions.iter().zip(&self.ranges).map(value).collect();
        Drawn { first_run, shares, positions, values }
    }

    /// What a number is in the likely run.
    pub fn likely(&self, number: Number) -> f64 {
        match number {
            Number::Sure(value) => value,
            Number::Ranged(at) => self.ranges.get(at).map_or(0.0, |(_, range)| range.likely),
        }
    }
}

/// What the inputs are in eight runs.
pub(super) struct Drawn {
    pub first_run: u64,
    shares: Vec<Lane>,
    positions: Vec<Lane>,
    values: Vec<Lane>,
}

impl Drawn {
    /// Where an input lies among all that it could be, between 0 and 1.
    pub fn share(&self, input: usize, lane: usize) -> f64 {
        of(&self.shares, input, lane)
    }

    /// Where in its range a number lies: -1 at its low end, 0 where it is likely, 1 at its high end.
    pub fn position(&self, ranged: usize, lane: usize) -> f64 {
        of(&self.positions, ranged, lane)
    }

    /// What a number is.
    pub fn value(&self, number: Number, lane: usize) -> f64 {
        match number {
            Number::Sure(value) => value,
            Number::Ranged(at) => of(&self.values, at, lane),
        }
    }
}

fn of(lanes: &[Lane], at: usize, lane: usize) -> f64 {
    lanes.get(at).and_then(|lanes| lanes.get(lane)).copied().unwrap_or(0.0)
}

/// A range that is one: low and high differ.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Range {
    low: f64,
    likely: f64,
    high: f64,
}

impl Range {
    /// Put in order whatever was typed: the likely number is the one that counts. Nothing when it is no range.
    pub fn new(low: f64, likely: f64, high: f64) -> Option<Self> {
        if !likely.is_finite() {
            return None;
        }
        let likely = likely.clamp(-MOST, MOST);
        let or_likely = |value: f64| if value.is_nan() { likely } else { value.clamp(-MOST, MOST) };
        let range = Self { low: or_likely(low).min(likely), likely, high: or_likely(high).max(likely) };
        (range.low < range.high).then_some(range)
    }

    pub fn of(estimate: Estimate<f64>) -> Option<Self> {
        Self::new(estimate.low(), estimate.likely(), estimate.high())
    }

    /// Of an amount, in minor units.
    pub fn of_money(estimate: Estimate<Money>, digits: u32) -> Option<Self> {
        Self::new(minor(estimate.low(), digits), minor(estimate.likely(), digits), minor(estimate.high(), digits))
    }

    /// Where a share of all that could be lies in the triangle over the range: -1 at its low end, 0 where it is likely, 1 at
    /// its high end. The quantile of a triangle (closed form).
    fn position(&self, share: f64) -> f64 {
        let below = (self.likely - self.low) / (self.high - self.low);
        if share < below { libm::sqrt(share / below) - 1.0 } else { 1.0 - libm::sqrt((1.0 - share) / (1.0 - below)) }
    }

    fn at(&self, position: f64) -> f64 {
        let side = if position < 0.0 { self.likely - self.low } else { self.high - self.likely };
        self.likely + position * side
    }
}

/// An amount in minor units, as a number to be multiplied; no sum is made of it.
pub(super) fn minor(amount: Money, digits: u32) -> f64 {
    (0..digits.min(28)).fold(amount.to_plot(), |amount, _| amount * 10.0)
}
