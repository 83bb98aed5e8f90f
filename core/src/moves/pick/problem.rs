//! A choice made sound: masks for changes, and every limit and group as a row of one kind.

use super::{Choice, MOST_CHANGES};

/// An effect beyond this counts as this, so that sixty-four of them can be summed up.
const MOST_EFFECT: i64 = 1 << 55;
/// A need beyond this is out of reach anyway.
const MOST_NEED: i64 = 64 * MOST_EFFECT + 1;
/// The same for costs.
const MOST_COST: u64 = 1 << 57;

/// Which changes are settled: those that are left out, and those that are chosen.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct Settled {
    pub(super) out: u64,
    pub(super) chosen: u64,
}

/// Wants the sum of the effects of those chosen to be no less than the need.
#[derive(Clone, Debug, Default)]
pub(super) struct Row {
    pub(super) effects: Vec<i64>,
    pub(super) need: i64,
    /// Those with an effect above and below zero.
    pub(super) helping: u64,
    pub(super) harming: u64,
    largest: i64,
}

/// A choice as the search takes it.
#[derive(Clone, Debug, Default)]
pub(super) struct Problem {
    /// All changes.
    pub(super) all: u64,
    /// In units of their greatest common divisor.
    pub(super) costs: Vec<u64>,
    pub(super) unit: u64,
    pub(super) rows: Vec<Row>,
    pub(super) refused: Vec<u64>,
    /// There were more changes than are looked at.
    pub(super) is_cut_off: bool,
    /// A limit that cannot be reached whatever is chosen.
    pub(super) beyond: Option<usize>,
}

impl Problem {
    pub(super) fn new(choice: &Choice) -> Self {
        let count = choice.costs.len().min(MOST_CHANGES);
        let costs: Vec<u64> = choice.costs.iter().take(count).map(|cost| (*cost).min(MOST_COST)).collect();
        let unit = costs.iter().fold(0, |unit, cost| greatest_common_divisor(unit, *cost)).max(1);
        let groups: Vec<u64> = choice.groups.iter().map(|group| mask_of(group, count).0).collect();
        let limits: Vec<Row> = (0..choice.needs.len()).map(|at| limit(choice, at, count)).collect();
        let beyond = limits.iter().position(|row| most_within(row, &groups) < row.need);
        let crowded = groups.iter().filter(|group| group.count_ones() > 1);
        let rows = limits.into_iter().chain(crowded.map(|group| at_most_one(*group, count)));
        let refused = choice.refused.iter().map(|set| mask_of(set, count)).filter(|(_, is_whole)| *is_whole);
        Self {
            all: all_of(count),
            costs: costs.into_iter().map(|cost| cost / unit).collect(),
            unit,
            rows: rows.map(Row::tightened).filter(|row| row.least() < row.need).collect(),
            refused: refused.map(|(mask, _)| mask).collect(),
            is_cut_off: choice.costs.len() > count,
            beyond,
        }
    }

    /// Whether this choice reaches every limit, and is not refused.
    pub(super) fn is_good(&self, chosen: u64) -> bool {
        self.rows.iter().all(|row| row.sum(chosen) >= row.need) && !self.refused.contains(&chosen)
    }

    /// What it costs, in units.
    pub(super) fn cost(&self, chosen: u64) -> u64 {
        bits(chosen).map(|at| self.costs[at]).sum()
    }

    /// Settles what follows from what is settled; false when nothing good can follow.
    pub(super) fn follow(&self, settled: &mut Settled) -> bool {
        loop {
            let before = *settled;
            for row in &self.rows {
                if !row.follow(self.all, settled) {
                    return false;
                }
            }
            if *settled == before {
                return true;
            }
        }
    }

    /// The effects row by row.
    pub(super) fn effects(&self) -> impl Iterator<Item = f64> + '_ {
        self.rows.iter().flat_map(|row| row.effects.iter().map(|effect| *effect as f64))
    }

    /// Those that are not settled.
    pub(super) fn free(&self, settled: &Settled) -> u64 {
        self.all & !(settled.out | settled.chosen)
    }
}

impl Row {
    fn new(effects: Vec<i64>, need: i64) -> Self {
        let mask = |is_in: fn(&i64) -> bool| {
            let within = effects.iter().enumerate().filter(|(_, effect)| is_in(effect));
            within.fold(0, |mask, (at, _)| mask | 1 << at)
        };
        let (helping, harming) = (mask(|effect| *effect > 0), mask(|effect| *effect < 0));
        let largest = effects.iter().map(|effect| effect.abs()).max().unwrap_or(0);
        Self { effects, need, helping, harming, largest }
    }

    pub(super) fn sum(&self, chosen: u64) -> i64 {
        bits(chosen & (self.helping | self.harming)).map(|at| self.effects[at]).sum()
    }

    fn least(&self) -> i64 {
        self.sum(self.harming)
    }

    /// No effect larger than what it takes to reach the need from the least: the same choices reach it, and bounds are
    /// closer. What harms is taken as helping when it is left out.
    fn tightened(self) -> Self {
        let gap = self.need - self.least();
        if gap <= 0 {
            return self;
        }
        let effects: Vec<i64> = self.effects.iter().map(|effect| (*effect).clamp(-gap, gap)).collect();
        let least: i64 = effects.iter().filter(|effect| **effect < 0).sum();
        Self::new(effects, least + gap)
    }

    /// What this row alone settles; false when the need is out of reach.
    fn follow(&self, all: u64, settled: &mut Settled) -> bool {
        let free = all & !(settled.out | settled.chosen);
        let spare = self.sum(settled.chosen | free & self.helping) - self.need;
        if spare < 0 {
            return false;
        }
        if spare < self.largest {
            for at in bits(free & (self.helping | self.harming)) {
                if self.effects[at] > spare {
                    settled.chosen |= 1 << at;
                } else if -self.effects[at] > spare {
                    settled.out |= 1 << at;
                }
            }
        }
        true
    }
}

fn limit(choice: &Choice, at: usize, count: usize) -> Row {
    let given = choice.effects.get(at).map_or(&[][..], Vec::as_slice);
    let effect = |change: usize| given.get(change).map_or(0, |effect| (*effect).clamp(-MOST_EFFECT, MOST_EFFECT));
    Row::new((0..count).map(effect).collect(), choice.needs[at].clamp(-MOST_NEED, MOST_NEED))
}

fn at_most_one(group: u64, count: usize) -> Row {
    Row::new((0..count).map(|at| -i64::from(group & (1 << at) != 0)).collect(), -1)
}

/// The most that can be reached when one of each group is chosen at most. Who is in several groups counts in the first.
fn most_within(row: &Row, groups: &[u64]) -> i64 {
    let mut left = row.helping;
    let mut most = 0;
    for group in groups {
        most += bits(left & group).map(|at| row.effects[at]).max().unwrap_or(0);
        left &= !group;
    }
    most + row.sum(left)
}

/// The mask, and whether all of it is among the changes.
fn mask_of(set: &[usize], count: usize) -> (u64, bool) {
    let mask = set.iter().filter(|at| **at < count).fold(0, |mask, at| mask | 1 << *at);
    (mask, set.iter().all(|at| *at < count))
}

fn all_of(count: usize) -> u64 {
    if count >= 64 { u64::MAX } else { (1 << count) - 1 }
}

fn greatest_common_divisor(one: u64, other: u64) -> u64 {
    let (mut one, mut other) = (one, other);
    while other != 0 {
        (one, other) = (other, one % other);
    }
    one
}

/// The places of the bits that are set, lowest first.
pub(super) fn bits(mut set: u64) -> impl Iterator<Item = usize> {
    std::iter::from_fn(move || {
        let at = set.trailing_zeros() as usize;
        set &= set.wrapping_sub(1);
        (at < 64).then_some(at)
    })
}
