//! Every plan of listed patterns that could be better: branch and bound, depth first.
//!
//! At each node the least cost with shares, by the dual simplex method from where the node above ended; a bound made of
//! its prices in whole numbers; whole boards of it with the rest filled up, which may be a better plan. Where shares
//! remain, some group of patterns has no whole number of boards, and is settled both ways.

use super::fork::{Group, fork};
use super::found::Found;
use super::greedy::best_fit;
use super::levels::Levels;
use super::lp::{Column, FEASIBLE, Lp, Outcome, Row, SURPLUS};
use super::master::{Master, column};
use super::problem::{Pattern, Problem};
use super::proof::whole;
use crate::task::share_of_tree;

/// The simplex method stops so far beyond the limit, in parts of the largest cost.
const BEYOND: f64 = 1e-7;
/// Prices count as no more than this in parts, so that no sum overflows.
const MOST_PRICE: f64 = (1_u64 << 46) as f64;

pub(super) struct Tree {
    pub(super) lp: Lp,
    base: usize,
    parts: i64,
    demand: Vec<u64>,
    limits: Vec<u64>,
    /// How many boards each column can be worth having.
    most: Vec<u64>,
    frames: Vec<Frame>,
    /// Whether something could not be decided, so that nothing is proven.
    pub(super) is_lost: bool,
    /// The most that anything better can cost.
    goal: i64,
    pub(super) nodes: u64,
}

/// A node with what is still to be settled below it, the last one first.
struct Frame {
    rows: usize,
    basics: Vec<usize>,
    bound: i128,
    children: Vec<(Group, Row)>,
}

impl Tree {
    pub(super) fn new(problem: &Problem, root: &Master, mut patterns: Vec<Pattern>) -> Self {
        let mut columns: Vec<Column> = Vec::new();
        let mut place = |who: &usize| match root.lp.columns.get(*who) {
            Some(column) => {
                columns.push(column.clone());
                columns.len() - 1
            }
            None => *who,
        };
        let basics: Vec<usize> = root.lp.basics.iter().map(&mut place).collect();
        let mut known: Vec<Pattern> = columns.iter().filter_map(|column| column.pattern.clone()).collect();
        known.sort_unstable();
        patterns.sort_unstable();
        patterns.dedup();
        let others = patterns.into_iter().filter(|pattern| known.binary_search(pattern).is_err());
        columns.extend(others.map(|pattern| column(problem, pattern)));
        let mut tree = Self {
            base: root.lp.rows.len(),
            parts: root.worths.parts,
            demand: root.demand.clone(),
            limits: problem.limits(),
            most: Vec::new(),
            frames: Vec::new(),
            is_lost: false,
            goal: i64::MAX,
            nodes: 0,
            lp: Lp::new(root.lp.rows.clone(), columns, Vec::new()),
        };
        tree.most = tree.lp.columns.iter().map(|column| tree.most_of(column)).collect();
        tree.frames.push(Frame { rows: tree.base, basics, bound: root.bound, children: Vec::new() });
        tree
    }

    /// Enough of a pattern to cut all of each of its kinds.
    fn most_of(&self, column: &Column) -> u64 {
        let kinds = column.entries.iter().filter(|(row, _)| *row < self.demand.len());
        let enough = kinds.map(|(kind, count)| self.demand[*kind].div_ceil((*count).max(1))).max().unwrap_or(0);
        column.pattern.as_ref().map_or(enough, |pattern| enough.min(self.limits[pattern.stock]))
    }

    pub(super) fn is_done(&self) -> bool {
        self.frames.is_empty()
    }

    /// What everything that is still to be looked at costs at least, in parts; none when nothing is.
    pub(super) fn bound(&self) -> Option<i128> {
        let open = self.frames.iter().filter(|frame| !frame.children.is_empty() || self.nodes == 0);
        open.map(|frame| frame.bound).min()
    }

    /// The share of the tree that is done.
    pub(super) fn share(&self) -> f64 {
        share_of_tree(self.frames.iter().map(|frame| frame.children.len()))
    }

    /// Looks at the next node; gives a plan that may be better than what costs `best`.
    pub(super) fn step(&mut self, problem: &Problem, levels: &Levels, best: i64, opened: usize) -> Option<Found> {
        self.goal = levels.below(best);
        let goal = i128::from(self.goal) * i128::from(self.parts);
        if self.nodes == 0 {
            let root = self.frames.pop()?;
            return self.enter(problem, levels, root.basics, opened);
        }
        while let Some(mut frame) = self.frames.pop() {
            let child = if frame.bound > goal { None } else { frame.children.pop() };
            let Some((group, row)) = child else { continue };
            self.cut_back(frame.rows);
            let mut basics = frame.basics.clone();
            basics.push(SURPLUS + frame.rows);
            self.frames.push(frame);
            self.add(&group, row);
            return self.enter(problem, levels, basics, opened);
        }
        None
    }

    /// Takes the rows of forks from `rows` on away.
    fn cut_back(&mut self, rows: usize) {
        self.lp.rows.truncate(rows);
        for column in &mut self.lp.columns {
            while column.entries.last().is_some_and(|(row, _)| *row >= rows) {
                column.entries.pop();
            }
        }
    }

    fn add(&mut self, group: &Group, row: Row) {
        let at = self.lp.rows.len();
        self.lp.rows.push(row);
        for column in self.lp.columns.iter_mut().filter(|column| group.has(column)) {
            column.entries.push((at, 1));
        }
    }

    fn enter(&mut self, problem: &Problem, levels: &Levels, basics: Vec<usize>, opened: usize) -> Option<Found> {
        self.nodes += 1;
        self.lp.basics = basics;
        let beyond = BEYOND * problem.dearest() as f64;
        if !self.lp.refresh() {
            self.is_lost = true;
            return None;
        }
        let outcome = self.lp.raise(self.goal as f64 + beyond);
        if outcome == Outcome::Stuck && self.bound_of_prices(0) > 0 {
            return None;
        }
        let mut bound = self.bound_of_prices(self.parts);
        if let Some(above) = self.frames.last() {
            bound = bound.max(above.bound);
        }
        if bound > self.scaled(self.goal) {
            return None;
        }
        if outcome != Outcome::Ended {
            self.is_lost = true;
            return None;
        }
        let found = self.rounded(problem, opened);
        self.goal = self.goal.min(levels.below(found.cost));
        let shares: Vec<(&Column, f64)> = self.lp.shares().filter(|(_, share)| *share > FEASIBLE).collect();
        if bound <= self.scaled(self.goal) {
            match fork(&shares, self.demand.len()) {
                Some((group, sum)) => {
                    let children = children(group, sum);
                    self.frames.push(Frame {
                        rows: self.lp.rows.len(),
                        basics: self.lp.basics.clone(),
                        bound,
                        children,
                    });
                }
                None => self.is_lost = true,
            }
        }
        Some(found)
    }

    fn scaled(&self, cost: i64) -> i128 {
        i128::from(cost) * i128::from(self.parts)
    }

    /// What everything below this node costs at least, in parts. Each row with its price, in whole numbers; where a
    /// column costs less than its rows are worth, all of it that can be of use is taken off. With `cost_parts` 0, as if
    /// nothing cost anything: more than 0 then says that there is no plan at all.
    fn bound_of_prices(&self, cost_parts: i64) -> i128 {
        let worth = |price: f64, is_least: bool| {
            let price = price * self.parts as f64;
            whole(if is_least { price.clamp(0.0, MOST_PRICE) } else { price.clamp(-MOST_PRICE, 0.0) })
        };
        let rows = self.lp.rows.iter().zip(&self.lp.prices);
        let worths: Vec<i64> = rows.map(|(row, price)| worth(*price, row.is_least)).collect();
        let goals = self.lp.rows.iter().zip(&worths);
        let mut bound: i128 = goals.map(|(row, worth)| i128::from(row.goal) * i128::from(*worth)).sum();
        for (column, most) in self.lp.columns.iter().zip(&self.most) {
            let worth: i64 = column.entries.iter().map(|(row, count)| worths[*row] * count.cast_signed()).sum();
            let reduced = column.cost * cost_parts - worth;
            if reduced < 0 {
                bound += i128::from(reduced) * i128::from(*most);
            }
        }
        bound
    }

    /// The whole boards of the shares, with the rest filled up.
    fn rounded(&self, problem: &Problem, opened: usize) -> Found {
        let mut demand = self.demand.clone();
        let mut limits = self.limits.clone();
        let mut boards = Vec::new();
        for (column, share) in self.lp.shares() {
            let Some(pattern) = &column.pattern else { continue };
            let count = whole(share + 1e-6).max(0).unsigned_abs().min(limits[pattern.stock]);
            if count > 0 {
                limits[pattern.stock] -= count;
                for (kind, each) in pattern.totals() {
                    demand[kind] = demand[kind].saturating_sub(each * count);
                }
                boards.push((pattern.clone(), count));
            }
        }
        boards.extend(best_fit(problem, &demand, &limits, opened));
        Found::of(problem, &boards)
    }
}

/// Both ways; last, which is first, the nearer one of boards, and more of others.
fn children(group: Group, sum: f64) -> Vec<(Group, Row)> {
    let low = whole(sum);
    let is_low_first = matches!(group, Group::Stock(_)) && sum - sum.floor() < 0.5;
    let less = (group.clone(), Row { goal: low, is_least: false });
    let more = (group, Row { goal: low + 1, is_least: true });
    if is_low_first { vec![more, less] } else { vec![less, more] }
}
