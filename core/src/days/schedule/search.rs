//! The search for the least finish, in steps.

use super::bounds::{Store, Windows, earliest_alone, is_possible, latest_alone, stores};
use super::improve::{Climber, by_rules};
use super::serial::{Placement, Planner};
use super::tree::Tree;
use super::{Schedule, Workload};

/// A good schedule at once: the best of several rules, each pushed to the right and back to the left.
pub fn first_schedule(workload: &Workload) -> Schedule {
    let mut planner = Planner::new(workload);
    let bound = finish_alone(&planner);
    let placement = by_rules(&mut planner, bound);
    planner.schedule(&placement)
}

/// What a search may take, what a step takes of it in the tree and by changes of the list, in nodes times [`weight`]:
/// half a second and a few milliseconds on a computer of 2020 (measured, see the benches).
const BUDGET: u64 = 400_000_000;
const STEP_OF_TREE: u64 = 420_000;
const STEP_OF_LIST: u64 = 760_000;
/// What a change of the list costs, in nodes.
const ROUND_NODES: u64 = 5;

/// About what a node takes: each activity is looked at along the slots, 64 at a time.
fn weight(planner: &Planner) -> u64 {
    (planner.ground.topo.len().max(1) * (planner.ground.words + 24)) as u64
}

/// A search for the least finish. It begins with [`first_schedule`], and goes on until the least finish is proven or its
/// budget is spent, which is counted in what it looked at and not in time: the same workload gives the same schedules.
///
/// What cannot be placed even when it has all the room for itself is left out. When the others cannot all be placed
/// before the last slot, as many as it can are, and nothing is proven.
pub struct Search {
    planner: Planner,
    stores: Vec<Store>,
    best: Placement,
    schedule: Schedule,
    bound: usize,
    /// No proof was found that a finish here is impossible.
    possible: usize,
    climber: Climber,
    tree: Option<Tree>,
    is_begun: bool,
    is_exhausted: bool,
    weight: u64,
    spent: u64,
    budget: u64,
}

impl Search {
    /// Begins with a good schedule.
    pub fn new(workload: &Workload) -> Self {
        let mut planner = Planner::new(workload);
        let bound = finish_alone(&planner);
        let best = by_rules(&mut planner, bound);
        let weight = weight(&planner);
        Self {
            stores: stores(&planner.ground),
            schedule: planner.schedule(&best),
            climber: Climber::new(&planner, &best),
            possible: if best.missing == 0 { best.finish } else { planner.ground.slots },
            planner,
            best,
            bound,
            tree: None,
            is_begun: false,
            is_exhausted: false,
            spent: 0,
            weight,
            budget: BUDGET / weight,
        }
    }

    /// Goes on for a few milliseconds; gives the share that is done, 1 when all is.
    pub fn step(&mut self) -> f64 {
        if !self.is_finished() {
            if self.bound < self.possible {
                self.raise_bound();
            } else {
                self.look_on();
            }
        }
        if self.is_finished() { 1.0 } else { (self.spent as f64 / self.budget as f64).min(0.99) }
    }

    /// The best schedule so far.
    pub fn best(&self) -> &Schedule {
        &self.schedule
    }

    /// No schedule of all that can be placed finishes before this slot.
    pub fn bound(&self) -> usize {
        self.bound
    }

    /// Whether the best schedule has the least finish.
    pub fn is_proven(&self) -> bool {
        self.best.missing == 0 && self.best.finish <= self.bound
    }

    fn is_finished(&self) -> bool {
        self.is_proven() || self.is_exhausted || self.spent >= self.budget
    }

    /// Halves the slots between the bound and what is not known to be impossible.
    fn raise_bound(&mut self) {
        let (ground, mirror) = (&self.planner.ground, &self.planner.mirror);
        let by = self.bound + (self.possible - self.bound) / 2;
        let windows = earliest_alone(ground, 0).zip(latest_alone(mirror, by));
        let is_possible =
            windows.is_some_and(|(earliest, latest)| is_possible(ground, &self.stores, &Windows { earliest, latest }));
        if is_possible {
            self.possible = by;
        } else {
            self.bound = by + 1;
        }
        self.spent += 1;
    }

    fn look_on(&mut self) {
        if !self.is_begun {
            self.is_begun = true;
            self.tree = Tree::new(&self.planner, self.deadline());
        }
        self.look_into_tree(1 + STEP_OF_TREE / self.weight);
        if !self.is_finished() {
            self.climb(1 + STEP_OF_LIST / self.weight / ROUND_NODES);
        }
    }

    /// What is better than the best ends by this slot.
    fn deadline(&self) -> usize {
        if self.best.missing == 0 { self.best.finish.saturating_sub(1) } else { self.planner.ground.slots }
    }

    fn look_into_tree(&mut self, nodes: u64) {
        let Some(tree) = &mut self.tree else { return };
        self.spent += nodes;
        let found = tree.step(&self.planner, u32::try_from(nodes).unwrap_or(u32::MAX));
        self.is_exhausted = tree.is_done();
        if let Some(found) = found {
            self.keep(found);
        }
        if self.is_exhausted && self.best.missing == 0 {
            self.bound = self.best.finish;
        }
    }

    fn climb(&mut self, rounds: u64) {
        for _ in 0..rounds {
            self.spent += ROUND_NODES;
            let Some(found) = self.climber.round(&mut self.planner, &self.best) else { continue };
            self.keep(found);
            if self.is_proven() {
                return;
            }
            let deadline = self.deadline();
            if let Some(tree) = &mut self.tree {
                tree.must_end_by(&self.planner, deadline);
            }
        }
    }

    fn keep(&mut self, found: Placement) {
        self.schedule = self.planner.schedule(&found);
        self.best = found;
    }
}

/// The finish when each has all the room for itself.
fn finish_alone(planner: &Planner) -> usize {
    let spans = earliest_alone(&planner.ground, 0).unwrap_or_default();
    spans.into_iter().map(|span| span.end).max().unwrap_or(0)
}
