//! The search, step by step: plans at once and simple bounds, shares over all patterns, plans from those, the patterns
//! that a better plan can have, and all plans of them.

use super::dive::Dive;
use super::found::Found;
use super::greedy::best_fit;
use super::knapsack::Knapsack;
use super::levels::Levels;
use super::master::Master;
use super::pool::Pool;
use super::problem::{Pattern, Problem};
use super::proof::{most_boards, simple_bound};
use super::tree::Tree;

/// With more lengths than this there are no shares, only plans at once and simple bounds.
const MOST_KINDS: usize = 200;
/// From which share on a whole board is taken, dive by dive.
const DIVES: [f64; 5] = [1.0, 0.7, 0.5, 0.85, 0.6];
/// What a search may take and what a step takes of it, in numbers that are looked at: some ten seconds and two
/// milliseconds on a computer of 2020 (measured, see the benches).
const BUDGET: u64 = 3_000_000_000;
const STEP: u64 = 500_000;
/// What each part of a step counts besides.
const PART: u64 = 400;
/// Where not all patterns can be listed: so many are remembered from dives, and so many nodes are looked at of them.
const MOST_KEPT: usize = 4_000;
const MOST_NODES: u64 = 2_000;

enum Phase {
    Columns,
    Dive(Box<Dive>, usize),
    Pool(Box<Pool>),
    Tree(Box<Tree>),
    Done,
}

pub(super) struct Search {
    pub(super) problem: Problem,
    pub(super) best: Found,
    /// Nothing costs less.
    pub(super) bound: i64,
    root: Option<Master>,
    levels: Levels,
    knapsack: Knapsack,
    phase: Phase,
    /// Which entry of boards plans at once open.
    opened: usize,
    /// Whether the list of patterns is whole.
    is_whole: bool,
    /// What the best cost when there was too much to list.
    full_at: Option<i64>,
    /// Patterns that dives came across.
    kept: Vec<Pattern>,
    work: u64,
}

impl Search {
    pub(super) fn new(problem: Problem) -> Self {
        let (demand, limits) = (problem.demand(), problem.limits());
        let mut search = Self {
            bound: simple_bound(&problem),
            best: Found { missing: demand.clone(), ..Found::default() },
            root: None,
            levels: Levels::default(),
            knapsack: Knapsack::default(),
            phase: Phase::Done,
            opened: 0,
            is_whole: true,
            full_at: None,
            kept: Vec::new(),
            work: 0,
            problem,
        };
        let mut is_first = true;
        for stock in 0..search.problem.stocks.len() {
            let found = Found::of(&search.problem, &best_fit(&search.problem, &demand, &limits, stock));
            if is_first || found.cost < search.best.cost {
                (search.best, search.opened, is_first) = (found, stock, false);
            }
        }
        search.levels = Levels::new(&search.problem, search.best.cost);
        search.raise(search.bound);
        if !search.is_proven() && search.problem.kinds.len() <= MOST_KINDS {
            let known: Vec<Pattern> = search.best.boards.iter().map(|(pattern, _)| pattern.clone()).collect();
            search.root = Some(Master::new(&search.problem, &demand, &limits, &known));
            search.phase = Phase::Columns;
        }
        search
    }

    pub(super) fn is_proven(&self) -> bool {
        self.bound >= self.best.cost
    }

    pub(super) fn is_finished(&self) -> bool {
        self.is_proven() || matches!(self.phase, Phase::Done) || self.work >= BUDGET
    }

    /// Goes on for a few milliseconds at most; gives the share that is done.
    pub(super) fn step(&mut self) -> f64 {
        let goal = self.work + STEP;
        while !self.is_finished() && self.work < goal {
            self.part();
        }
        if self.is_finished() {
            return 1.0;
        }
        let share = match &self.phase {
            Phase::Tree(tree) => tree.share(),
            _ => 0.0,
        };
        share.max(self.work as f64 / BUDGET as f64).min(0.99)
    }

    fn part(&mut self) {
        self.work += PART + self.problem.pieces() / 4;
        self.phase = match std::mem::replace(&mut self.phase, Phase::Done) {
            Phase::Columns => self.columns(),
            Phase::Dive(dive, number) => self.dive(dive, number),
            Phase::Pool(pool) => self.pool(pool),
            Phase::Tree(tree) => self.tree(tree),
            Phase::Done => Phase::Done,
        };
    }

    fn columns(&mut self) -> Phase {
        let Some(root) = &mut self.root else { return Phase::Done };
        let before = root.lp.work + self.knapsack.work;
        let most = most_boards(&self.problem, self.best.cost);
        root.step(&self.problem, &mut self.knapsack, &most);
        self.work += root.lp.work + self.knapsack.work - before;
        if !root.is_done {
            return Phase::Columns;
        }
        let bound = root.worths.as_cost(root.bound);
        let dive = Dive::new(&self.problem, root, DIVES[0]);
        self.raise(bound);
        Phase::Dive(Box::new(dive), 0)
    }

    fn dive(&mut self, mut dive: Box<Dive>, number: usize) -> Phase {
        let before = dive.work() + self.knapsack.work;
        let found = dive.step(&self.problem, &mut self.knapsack, self.opened);
        let left = MOST_KEPT.saturating_sub(self.kept.len());
        self.kept.extend(dive.new_patterns().into_iter().take(left));
        self.work += (dive.work() + self.knapsack.work).saturating_sub(before);
        self.offer(found);
        if !dive.is_done {
            return Phase::Dive(dive, number);
        }
        let Some(root) = &self.root else { return Phase::Done };
        if number == 0 {
            return self.listing(root, 1);
        }
        match DIVES.get(number + 1) {
            Some(least) => Phase::Dive(Box::new(Dive::new(&self.problem, root, *least)), number + 1),
            None => self.again(),
        }
    }

    /// Lists what could be better than the best, or of that what costs not much more than the bound.
    fn listing(&self, root: &Master, part: i128) -> Phase {
        let goal = i128::from(self.levels.below(self.best.cost)) * i128::from(root.worths.parts);
        Phase::Pool(Box::new(Pool::new(&self.problem, &root.worths, (goal - root.bound) / part)))
    }

    /// After there was too much to list: all of it again where the best is better now, and otherwise a part.
    fn again(&mut self) -> Phase {
        let Some(root) = &self.root else { return Phase::Done };
        self.is_whole = self.full_at.is_none_or(|cost| self.best.cost < cost);
        self.listing(root, if self.is_whole { 1 } else { 4 })
    }

    fn pool(&mut self, mut pool: Box<Pool>) -> Phase {
        self.work += pool.step(&self.problem);
        if !pool.is_done {
            return Phase::Pool(pool);
        }
        let Some(root) = &self.root else { return Phase::Done };
        let mut patterns = std::mem::take(&mut pool.patterns);
        if pool.is_full && self.is_whole {
            let is_first = self.full_at.is_none();
            self.full_at = Some(self.best.cost);
            if is_first {
                return Phase::Dive(Box::new(Dive::new(&self.problem, root, DIVES[1])), 1);
            }
            return self.again();
        }
        if !self.is_whole {
            if pool.is_full {
                patterns.clear();
            }
            patterns.extend(self.kept.iter().cloned());
        }
        self.work += 100 * patterns.len() as u64;
        Phase::Tree(Box::new(Tree::new(&self.problem, root, patterns)))
    }

    fn tree(&mut self, mut tree: Box<Tree>) -> Phase {
        let before = tree.lp.work;
        let found = tree.step(&self.problem, &self.levels, self.best.cost, self.opened);
        self.work += tree.lp.work - before + 8 * tree.lp.columns.len() as u64;
        self.offer(found);
        let Some(root) = &self.root else { return Phase::Done };
        if self.is_whole && !tree.is_lost {
            let open = tree.bound().map_or(self.best.cost, |bound| root.worths.as_cost(bound).min(self.best.cost));
            self.raise(open);
        }
        let is_enough = !self.is_whole && tree.nodes > MOST_NODES;
        if !tree.is_done() && !is_enough {
            return Phase::Tree(tree);
        }
        let is_better = self.full_at.is_some_and(|cost| self.best.cost < cost);
        if self.is_whole || !is_better { Phase::Done } else { self.again() }
    }

    fn offer(&mut self, found: Option<Found>) {
        if let Some(found) = found.filter(|found| found.cost < self.best.cost) {
            self.best = found;
        }
    }

    /// Nothing costs less than this, nor less than the next cost that there can be.
    fn raise(&mut self, bound: i64) {
        let bound = self.levels.up(bound).min(self.best.cost);
        self.bound = self.bound.max(bound);
    }
}
