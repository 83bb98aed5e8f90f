//! From what became of each balance in each run to what is told.

use jiff::civil::Date;

use super::answer::{BalanceChance, First, Input};
use super::constants::{EARLY_PERCENT, LEAST_CORRELATION};
use super::inputs::Inputs;
use super::ranks::{rank_correlation, ranks};
use crate::assessment::Balance;
use crate::order;
use crate::plan::{Id, add_days};

/// More to spare is not told apart.
const MOST_MARGIN: f64 = 1e15;

/// What became of a balance in a run.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Fate {
    /// When it first fails, counted from the first day ahead.
    pub fails_on: Option<u32>,
    /// What is to spare at the worst moment, in a unit of its own; below nothing when it fails.
    pub margin: f64,
    /// What it fails by; 0 for nothing in particular.
    pub by: Id,
}

impl Fate {
    /// Nothing has happened to it yet.
    pub fn unhurt() -> Self {
        Self { fails_on: None, margin: MOST_MARGIN, by: 0 }
    }

    /// It fails on a day whatever is drawn.
    pub fn sealed(day: u32) -> Self {
        Self { fails_on: Some(day), margin: -1.0, by: 0 }
    }

    /// Notes what is to spare on a day, and whether it falls short on it. Days come in their order.
    pub fn note(&mut self, day: u32, spare: f64, is_short: bool) {
        self.margin = self.margin.min(spare);
        if is_short && self.fails_on.is_none() {
            self.fails_on = Some(day);
        }
    }
}

/// A balance over all runs.
pub(super) struct Line {
    pub balance: Balance,
    pub is_known: bool,
    pub fates: Vec<Fate>,
}

/// The lines of all balances, in their order.
pub(super) struct Ledger {
    pub lines: Vec<Line>,
    pub from: Date,
}

impl Ledger {
    /// The lines that are known.
    fn known(&self) -> impl Iterator<Item = &Line> {
        self.lines.iter().filter(|line| line.is_known)
    }

    fn runs(&self) -> usize {
        self.known().map(|line| line.fates.len()).max().unwrap_or(0)
    }

    /// In how many runs all that is known holds.
    pub fn all_hold(&self) -> u32 {
        count((0..self.runs()).filter(|run| self.known().all(|line| line.holds(*run))))
    }

    /// Which balance fails first in each run, by its place among the lines.
    pub fn first_by_run(&self) -> Vec<Option<usize>> {
        let first = |run: usize| {
            let failing = self.lines.iter().enumerate().filter(|(_, line)| line.is_known);
            failing.filter_map(|(at, line)| Some((line.fates.get(run)?.fails_on?, at))).min().map(|(_, at)| at)
        };
        (0..self.runs()).map(first).collect()
    }

    pub fn balances(&self, first: &[Option<usize>]) -> Vec<BalanceChance> {
        let of = |(at, line): (usize, &Line)| {
            if !line.is_known {
                return BalanceChance { balance: line.balance, ..BalanceChance::default() };
            }
            let days = ascending(line.fates.iter().filter_map(|fate| fate.fails_on));
            BalanceChance {
                balance: line.balance,
                is_known: true,
                held: count(line.fates.iter().filter(|fate| fate.fails_on.is_none())),
                first_fails: count(first.iter().filter(|first| **first == Some(at))),
                likely_on: self.day(&days, 50),
                early_on: self.day(&days, EARLY_PERCENT),
            }
        };
        self.lines.iter().enumerate().map(of).collect()
    }

    /// The balance that most often fails first.
    pub fn first(&self, first: &[Option<usize>]) -> Option<First> {
        let fails = |at: usize| count(first.iter().filter(|first| **first == Some(at)));
        // Of equal ones the one that is listed first.
        let most = (0..self.lines.len()).rev().max_by_key(|at| fails(*at)).filter(|at| fails(*at) > 0)?;
        let line = self.lines.get(most)?;
        let fates = || line.fates.iter().zip(first).filter(|(_, first)| **first == Some(most)).map(|(fate, _)| fate);
        Some(First {
            balance: line.balance,
            fails: fails(most),
            likely_on: self.day(&ascending(fates().filter_map(|fate| fate.fails_on)), 50),
            by: most_often(fates().map(|fate| fate.by)).filter(|id| *id > 0),
        })
    }

    /// The day by which so many percent of ascending days are there: the nearest rank.
    fn day(&self, ascending: &[u32], percent: usize) -> Option<Date> {
        let rank = (ascending.len() * percent).div_ceil(100);
        let day = ascending.get(rank.saturating_sub(1))?;
        add_days(self.from, i32::try_from(*day).ok()?)
    }

    /// What the inputs are held against.
    pub fn target(&self) -> Target {
        let can_go_either_way = |line: &&Line| line.can_hold() && line.can_fail();
        let mut lines: Vec<&Line> = self.known().filter(can_go_either_way).collect();
        if lines.is_empty() {
            lines = self.known().collect();
        }
        let margins: Vec<Vec<f64>> = lines.iter().filter_map(|line| line.normalised()).collect();
        let worst =
            |run: usize| margins.iter().filter_map(|of_line| of_line.get(run)).copied().fold(MOST_MARGIN, f64::min);
        let fails = |run: usize| self.known().any(|line| line.can_hold() && !line.holds(run));
        Target { margins: (0..self.runs()).map(worst).collect(), fails: (0..self.runs()).map(fails).collect() }
    }
}

impl Line {
    fn holds(&self, run: usize) -> bool {
        self.fates.get(run).is_none_or(|fate| fate.fails_on.is_none())
    }

    fn can_hold(&self) -> bool {
        self.fates.iter().any(|fate| fate.fails_on.is_none())
    }

    fn can_fail(&self) -> bool {
        self.fates.iter().any(|fate| fate.fails_on.is_some())
    }

    /// The margins in parts of their standard deviation; nothing when they are the same in all runs.
    fn normalised(&self) -> Option<Vec<f64>> {
        let margins: Vec<f64> = self.fates.iter().map(|fate| fate.margin.clamp(-MOST_MARGIN, MOST_MARGIN)).collect();
        let many = margins.len() as f64;
        let mean = margins.iter().sum::<f64>() / many;
        let variance = margins.iter().map(|margin| (margin - mean) * (margin - mean)).sum::<f64>() / many;
        let deviation = libm::sqrt(variance);
        // What only rounding makes differ does not differ.
        (deviation > mean.abs() * 1e-12).then(|| margins.iter().map(|margin| margin / deviation).collect())
    }
}

/// What the inputs are held against, run by run.
pub(super) struct Target {
    /// The worst of the normalised margins.
    margins: Vec<f64>,
    /// Whether a balance fails that holds in any run.
    fails: Vec<bool>,
}

impl Target {
    /// What hangs on an input; nothing when hardly anything does.
    pub fn of(&self, inputs: &Inputs, at: usize) -> Option<Input> {
        let uncertain = inputs.list.get(at)?;
        let values = inputs.values(at, u32::try_from(self.margins.len()).unwrap_or(u32::MAX));
        let correlation = rank_correlation(&values, &self.margins)?;
        if correlation.abs() < LEAST_CORRELATION {
            return None;
        }
        let mut input =
            Input { what: uncertain.what, id: uncertain.id, path: uncertain.path.clone(), ..Input::default() };
        input.correlation = correlation;
        let middle = f64::midpoint(values.len() as f64, 1.0);
        for (rank, fails) in ranks(&values).iter().zip(&self.fails) {
            let failed = u32::from(*fails);
            // What lies in the middle belongs to neither half.
            if *rank < middle {
                (input.of_low, input.fails_low) = (input.of_low + 1, input.fails_low + failed);
            } else if *rank > middle {
                (input.of_high, input.fails_high) = (input.of_high + 1, input.fails_high + failed);
            }
        }
        Some(input)
    }
}

fn count<T>(items: impl Iterator<Item = T>) -> u32 {
    u32::try_from(items.count()).unwrap_or(u32::MAX)
}

fn ascending(days: impl Iterator<Item = u32>) -> Vec<u32> {
    order::sorted(days.map(u64::from)).into_iter().filter_map(|(day, _)| u32::try_from(day).ok()).collect()
}

/// What is there most often; of equal ones the least.
fn most_often(ids: impl Iterator<Item = Id>) -> Option<Id> {
    let ids = ascending(ids);
    let longest = ids.chunk_by(|one, next| one == next).rev().max_by_key(|same| same.len())?;
    longest.first().copied()
}
