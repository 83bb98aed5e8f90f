//! A good plan from shares of boards: whole boards of it are taken for certain, the shares are worked out anew for what
//! is left, and so on to the end ("diving", or sequential rounding of residual problems).

use super::found::Found;
use super::greedy::best_fit;
use super::knapsack::Knapsack;
use super::master::Master;
use super::problem::{Pattern, Problem};
use super::proof::whole;

/// A share so near to the next whole number counts as that.
const NEARLY: f64 = 1e-6;
/// Columns that go on to what is left.
const MOST_KNOWN: usize = 300;

pub(super) struct Dive {
    master: Master,
    /// Patterns that were found on the way.
    found: Vec<Pattern>,
    taken: Vec<(Pattern, u64)>,
    demand: Vec<u64>,
    limits: Vec<u64>,
    /// A share of at least this much is taken as a whole board.
    least: f64,
    pub(super) is_done: bool,
}

impl Dive {
    /// Begins with shares that are known.
    pub(super) fn new(problem: &Problem, root: &Master, least: f64) -> Self {
        let mut dive = Self {
            master: Master::new(problem, &root.demand, &root.limits, &[]),
            found: Vec::new(),
            taken: Vec::new(),
            demand: root.demand.clone(),
            limits: root.limits.clone(),
            least,
            is_done: false,
        };
        dive.go_on(problem, root);
        dive
    }

    /// Works on the shares of what is left; gives a plan whenever some boards more are taken.
    pub(super) fn step(&mut self, problem: &Problem, knapsack: &mut Knapsack, opened: usize) -> Option<Found> {
        if !self.master.is_done {
            let limits = self.limits.clone();
            self.master.step(problem, knapsack, &limits);
            return None;
        }
        let before = self.master.lp.work;
        let master = std::mem::replace(&mut self.master, Master::new(problem, &[], &[], &[]));
        self.go_on(problem, &master);
        self.master.lp.work += before;
        let mut boards = self.taken.clone();
        boards.extend(best_fit(problem, &self.demand, &self.limits, opened));
        Some(Found::of(problem, &boards))
    }

    pub(super) fn work(&self) -> u64 {
        self.master.lp.work
    }

    /// Those of which there were shares since this was asked last.
    pub(super) fn new_patterns(&mut self) -> Vec<Pattern> {
        std::mem::take(&mut self.found)
    }

    fn go_on(&mut self, problem: &Problem, shares_of: &Master) {
        let shares = shares_of.shares();
        self.found.extend(shares.iter().map(|(pattern, _)| pattern.clone()));
        let before: u64 = self.demand.iter().sum();
        for (pattern, share) in &shares {
            self.take(pattern, whole(share + (1.0 - self.least).max(NEARLY)).max(0).unsigned_abs());
        }
        if self.demand.iter().sum::<u64>() == before {
            let most = shares.iter().fold(None, |most: Option<&(Pattern, f64)>, share| match most {
                Some(known) if known.1 >= share.1 => most,
                _ => Some(share),
            });
            if let Some((pattern, _)) = most {
                self.take(pattern, 1);
            }
        }
        let left: u64 = self.demand.iter().sum();
        self.is_done = left == 0 || left == before;
        let basic = shares.iter().map(|(pattern, _)| pattern);
        let others = shares_of.lp.columns.iter().rev().filter_map(|column| column.pattern.as_ref());
        let mut known: Vec<Pattern> =
            basic.chain(others).take(MOST_KNOWN).map(|one| one.within(&self.demand)).collect();
        known.sort_unstable();
        known.dedup();
        self.master = Master::new(problem, &self.demand, &self.limits, &known);
    }

    /// Takes so many boards, as far as something is left to be cut from them.
    fn take(&mut self, pattern: &Pattern, count: u64) {
        let mut left = count.min(self.limits[pattern.stock]);
        while left > 0 {
            let cut = pattern.within(&self.demand);
            let totals = cut.totals();
            let Some(times) = totals.iter().map(|(kind, count)| self.demand[*kind] / count).min() else { return };
            let times = times.min(left);
            for (kind, each) in &totals {
                self.demand[*kind] -= each * times;
            }
            self.limits[pattern.stock] -= times;
            left -= times;
            self.taken.push((cut, times));
        }
    }
}
