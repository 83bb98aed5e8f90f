//! Ways of cutting one after another: by every rule, then with parts exchanged by chance.

use super::bound::bound;
use super::packing::{Begun, FITS, Node, Packing, Rules, SPLITS, pack};
use super::problem::{Problem, Wanted};
use crate::draws::Chance;
use crate::order;

/// How the parts may come, the first of each.
const ORDERS: [fn(&Wanted) -> u64; 5] = [
    |part| !order_of(u128::from(part.length) * u128::from(part.width)),
    |part| !part.length.max(part.width),
    |part| !part.width.min(part.length),
    |part| !(part.length + part.width),
    |part| !part.width,
];
/// What a search may take and what a step takes of it, in rectangles that are looked at: a quarter of a second and a
/// millisecond or two on a computer of 2020 (measured).
const BUDGET: u64 = 60_000_000;
const STEP: u64 = 250_000;
/// The least that a way of cutting counts as.
const PASS: u64 = 500;
/// Ways by chance at most.
const MOST_CHANCES: u64 = 2_000;
/// Any number will do: it is fixed, so that the same job gives the same plan.
const SEED: u64 = 20;

/// Square nanometres by the square of a thousandth of a millimetre, so that an area is a key.
fn order_of(area: u128) -> u64 {
    u64::try_from(area / 1_000_000).unwrap_or(u64::MAX)
}

/// How good a plan is, the least the best: parts missing, cost, area of the sheets, and how small the largest rest is.
type Rank = (usize, i64, u128, u128);

pub(super) struct Search {
    pub(super) problem: Problem,
    pub(super) best: Packing,
    /// Nothing costs less, in ten-thousandths.
    pub(super) bound: i64,
    rank: Rank,
    order: Vec<Wanted>,
    rules: Rules,
    chance: Chance,
    passes: u64,
    work: u64,
}

impl Search {
    pub(super) fn new(problem: Problem) -> Self {
        let rules = Rules { fit: FITS[0], split: SPLITS[0], opened: 0 };
        let mut search = Self {
            bound: bound(&problem),
            best: Packing::default(),
            rank: (usize::MAX, 0, 0, 0),
            order: problem.parts.clone(),
            rules,
            chance: Chance::new(SEED),
            passes: 0,
            work: 0,
            problem,
        };
        search.pass();
        search
    }

    /// Whether nothing can be cheaper.
    pub(super) fn is_proven(&self) -> bool {
        self.rank.0 == 0 && self.rank.1 <= self.bound
    }

    fn rule_passes(&self) -> u64 {
        (ORDERS.len() * FITS.len() * SPLITS.len() * self.problem.stocks.len().clamp(1, 6)) as u64
    }

    fn is_finished(&self) -> bool {
        let is_enough = self.passes >= self.rule_passes() + MOST_CHANCES;
        self.passes >= self.rule_passes() && self.is_proven() || is_enough || self.work >= BUDGET
    }

    pub(super) fn step(&mut self) -> f64 {
        let goal = self.work + STEP;
        while !self.is_finished() && self.work < goal {
            self.pass();
        }
        if self.is_finished() {
            return 1.0;
        }
        let of_passes = self.passes as f64 / (self.rule_passes() + MOST_CHANCES) as f64;
        of_passes.max(self.work as f64 / BUDGET as f64).min(0.99)
    }

    /// One way of cutting, kept if it is better.
    fn pass(&mut self) {
        let (order, rules) = self.next();
        self.passes += 1;
        let packing = pack(&self.problem, &order, rules);
        self.work += PASS + packing.work + order.len() as u64;
        let packing = self.in_cheaper_sheets(packing);
        let rank = self.rank_of(&packing);
        if rank < self.rank {
            (self.rank, self.best, self.order, self.rules) = (rank, packing, order, rules);
        }
    }

    fn next(&mut self) -> (Vec<Wanted>, Rules) {
        let number = usize::try_from(self.passes).unwrap_or(usize::MAX);
        if self.passes >= self.rule_passes() {
            return self.by_chance();
        }
        let (fits, splits) = (FITS.len(), SPLITS.len());
        let rules = Rules {
            fit: FITS[number % fits],
            split: SPLITS[number / fits % splits],
            opened: number / (fits * splits * ORDERS.len()),
        };
        let key = ORDERS[number / (fits * splits) % ORDERS.len()];
        (order::by_key(&self.problem.parts, key), rules)
    }

    /// The best order with a few parts exchanged, under its rules or others.
    fn by_chance(&mut self) -> (Vec<Wanted>, Rules) {
        let mut order = self.order.clone();
        let mut rules = self.rules;
        let count = u32::try_from(order.len()).unwrap_or(1).max(1);
        for _ in 0..=self.chance.below(3) {
            let (a, b) = (self.chance.below(count) as usize, self.chance.below(count) as usize);
            if a < order.len() && b < order.len() {
                order.swap(a, b);
            }
        }
        if self.chance.below(4) == 0 {
            rules.split = SPLITS[self.chance.below(4) as usize % SPLITS.len()];
            rules.fit = FITS[self.chance.below(3) as usize % FITS.len()];
        }
        (order, rules)
    }

    /// Sheets whose parts go into one that costs less become that.
    fn in_cheaper_sheets(&mut self, mut packing: Packing) -> Packing {
        packing.sheets.retain(|begun| begun.nodes.iter().any(|node| matches!(node, Node::Part { .. })));
        let stocks = &self.problem.stocks;
        let used =
            |packing: &Packing, stock: usize| packing.sheets.iter().filter(|begun| begun.stock == stock).count() as u64;
        for at in 0..packing.sheets.len() {
            let begun = &packing.sheets[at];
            let cost = stocks[begun.stock].cost;
            let has_spare = |stock: usize| stocks[stock].limit.is_none_or(|limit| used(&packing, stock) < limit);
            let cheaper = (0..stocks.len()).filter(|stock| stocks[*stock].cost < cost && has_spare(*stock));
            let cheaper = order::by_key(&cheaper.collect::<Vec<_>>(), |stock| stocks[*stock].cost.unsigned_abs());
            if cheaper.is_empty() {
                continue;
            }
            let parts = parts_of(&self.problem, begun);
            self.work += (cheaper.len() * parts.len() * parts.len()) as u64;
            let rules = self.rules;
            if let Some(sheet) = cheaper.into_iter().find_map(|stock| self.as_one(&parts, stock, rules)) {
                packing.sheets[at] = sheet;
            }
        }
        packing
    }

    /// The parts on one sheet of an entry, if they all go on it.
    fn as_one(&self, parts: &[Wanted], stock: usize, rules: Rules) -> Option<Begun> {
        let of = self.problem.stocks[stock];
        let area: u128 = parts.iter().map(|part| u128::from(part.length) * u128::from(part.width)).sum();
        if area > u128::from(of.length) * u128::from(of.width) {
            return None;
        }
        let only = Problem {
            entries: Vec::new(),
            parts: Vec::new(),
            stocks: vec![super::problem::Stock { limit: Some(1), ..of }],
            kerf: self.problem.kerf,
            trim: self.problem.trim,
        };
        let tries = SPLITS.into_iter().map(|split| pack(&only, parts, Rules { split, opened: 0, ..rules }));
        let mut whole = tries.filter(|packing| packing.missing.is_empty());
        whole.next().and_then(|packing| packing.sheets.into_iter().next()).map(|begun| Begun { stock, ..begun })
    }

    fn rank_of(&self, packing: &Packing) -> Rank {
        let stocks = packing.sheets.iter().map(|begun| &self.problem.stocks[begun.stock]);
        let cost = stocks.clone().map(|stock| stock.cost).sum();
        let area = stocks.map(|stock| u128::from(stock.length) * u128::from(stock.width)).sum();
        let largest = packing.sheets.iter().filter_map(largest_rest).max().unwrap_or(0);
        (packing.missing.len(), cost, area, u128::MAX - largest)
    }
}

fn largest_rest(begun: &Begun) -> Option<u128> {
    let rests =
        begun.nodes.iter().filter_map(|node| if let Node::Free(rect) = node { Some(rect.area()) } else { None });
    rests.max()
}

fn parts_of(problem: &Problem, begun: &Begun) -> Vec<Wanted> {
    let entries =
        begun.nodes.iter().filter_map(|node| if let Node::Part { entry, .. } = node { Some(*entry) } else { None });
    let parts: Vec<Wanted> = entries.filter_map(|entry| problem.entries.get(entry).copied()).collect();
    order::by_key(&parts, ORDERS[0])
}
