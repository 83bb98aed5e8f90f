//! Every pattern that a better plan can have, listed.
//!
//! Worths that prove a bound say of each pattern by how much its board is dearer than what is cut from it. A plan costs
//! at least the bound and that much for each of its boards, so a pattern for which it is more than the best plan costs
//! above the bound is in no better plan. Of the others only those count to which no piece that is still wanted can be
//! added: to cut too much is no harm.

use super::knapsack::{Item, by_density};
use super::problem::{Filling, Pattern, Problem};
use super::proof::Worths;

/// So many patterns are listed, in so many looks.
const MOST_PATTERNS: usize = 12_000;
const MOST_LOOKS: u64 = 4_000_000;
/// Looks in one go.
const LOOKS: u64 = 20_000;

pub(super) struct Pool {
    worths: Worths,
    gap: i128,
    items: Vec<Item>,
    pub(super) patterns: Vec<Pattern>,
    stock: usize,
    /// How many of the item are taken, span by span; where the walk is, and what is left and worth.
    counts: Vec<u64>,
    rooms: Vec<u64>,
    used: Vec<u64>,
    value: u64,
    at: usize,
    is_coming_back: bool,
    looks: u64,
    /// Whether there were too many.
    pub(super) is_full: bool,
    pub(super) is_done: bool,
}

impl Pool {
    /// Patterns whose boards are dearer than what is cut from them by no more than the gap, in parts.
    pub(super) fn new(problem: &Problem, worths: &Worths, gap: i128) -> Self {
        let kinds = problem.kinds.iter().zip(&worths.kinds).enumerate();
        let items = kinds.map(|(kind, (of, value))| Item { kind, size: of.size, value: *value, most: of.count });
        let mut pool = Self {
            worths: worths.clone(),
            gap,
            items: by_density(&items.collect::<Vec<_>>()),
            patterns: Vec::new(),
            stock: 0,
            counts: Vec::new(),
            rooms: Vec::new(),
            used: vec![0; problem.kinds.len()],
            value: 0,
            at: 0,
            is_coming_back: false,
            looks: 0,
            is_full: false,
            is_done: problem.stocks.is_empty() || gap < 0,
        };
        pool.enter(problem);
        pool
    }

    fn enter(&mut self, problem: &Problem) {
        let Some(stock) = problem.stocks.get(self.stock) else {
            self.is_done = true;
            return;
        };
        self.rooms.clone_from(&stock.rooms);
        self.counts.clear();
        self.counts.resize(stock.rooms.len() * self.items.len(), 0);
        self.used.fill(0);
        (self.value, self.at, self.is_coming_back) = (0, 0, false);
    }

    /// Goes on for a while; gives how much was looked at.
    pub(super) fn step(&mut self, problem: &Problem) -> u64 {
        let before = self.looks;
        let goal = before + LOOKS;
        while !self.is_done && self.looks < goal {
            self.looks += 1;
            if self.is_coming_back {
                self.back(problem);
            } else {
                self.down(problem);
            }
            if self.looks > MOST_LOOKS || self.patterns.len() > MOST_PATTERNS {
                (self.is_full, self.is_done) = (true, true);
            }
        }
        8 * (self.looks - before)
    }

    /// Takes as many as possible of the next item.
    fn down(&mut self, problem: &Problem) {
        if self.at == self.counts.len() {
            self.offer(problem);
            self.is_coming_back = true;
            return;
        }
        let (span, item) = (self.at / self.items.len(), self.items[self.at % self.items.len()]);
        let count = (item.most - self.used[item.kind]).min(self.rooms[span] / item.size);
        self.change(span, item, count, true);
        self.at += 1;
        self.is_coming_back = !self.is_hopeful(problem);
    }

    /// Takes one less of the last item of which there is one.
    fn back(&mut self, problem: &Problem) {
        if self.at == 0 {
            self.stock += 1;
            self.enter(problem);
            return;
        }
        let last = self.at - 1;
        let (span, item) = (last / self.items.len(), self.items[last % self.items.len()]);
        if self.counts[last] == 0 {
            self.at = last;
            return;
        }
        self.at = last;
        self.change(span, item, 1, false);
        self.at += 1;
        self.is_coming_back = !self.is_hopeful(problem);
        if self.is_coming_back {
            // Less still of it is worth less.
            self.at = last;
            let count = self.counts[last];
            self.change(span, item, count, false);
        }
    }

    fn change(&mut self, span: usize, item: Item, count: u64, is_more: bool) {
        let (size, value) = (count * item.size, count * item.value);
        if is_more {
            self.counts[self.at] = count;
            self.used[item.kind] += count;
            self.rooms[span] -= size;
            self.value += value;
        } else {
            self.counts[self.at] -= count;
            self.used[item.kind] -= count;
            self.rooms[span] += size;
            self.value -= value;
        }
    }

    /// Whether enough can still come to be worth as much as it must.
    fn is_hopeful(&self, problem: &Problem) -> bool {
        let count = self.items.len();
        let (span, next) = (self.at / count.max(1), self.at % count.max(1));
        let mut hope = i128::from(self.value);
        for (later, room) in self.rooms.iter().enumerate().skip(span) {
            let item = self.items.get(if later == span { next } else { 0 });
            if let Some(item) = item {
                hope += i128::from(*room) * i128::from(item.value) / i128::from(item.size) + 1;
            }
        }
        let cost = self.worths.cost(problem, self.stock) + i128::from(self.worths.excess[self.stock]);
        cost - hope <= self.gap
    }

    /// Lists the pattern, if nothing can be added and no cheaper board holds it.
    fn offer(&mut self, problem: &Problem) {
        let room = self.rooms.iter().max().copied().unwrap_or(0);
        let fits = |item: &Item| item.size <= room && self.used[item.kind] < item.most;
        if self.items.iter().any(fits) || self.is_cheaper_elsewhere(problem) {
            return;
        }
        let width = self.items.len().max(1);
        let filling = |counts: &[u64]| {
            let items = self.items.iter().zip(counts).filter(|(_, count)| **count > 0);
            let mut filling: Filling = items.map(|(item, count)| (item.kind, *count)).collect();
            filling.sort_unstable();
            filling
        };
        let fillings: Vec<Filling> = self.counts.chunks(width).map(filling).collect();
        if fillings.iter().any(|filling| !filling.is_empty()) {
            self.patterns.push(Pattern { stock: self.stock, fillings });
        }
    }

    fn is_cheaper_elsewhere(&self, problem: &Problem) -> bool {
        let rooms = &problem.stocks[self.stock].rooms;
        let cost = problem.stocks[self.stock].cost;
        let [room] = rooms.as_slice() else { return false };
        let taken = room - self.rooms[0];
        problem.stocks.iter().enumerate().any(|(at, other)| {
            let is_better = other.cost < cost
                || other.cost == cost && at < self.stock && problem.stocks[self.stock].limit.is_none();
            other.limit.is_none() && is_better && other.holds(taken)
        })
    }
}
