//! The cheapest set of changes that reaches every limit, exactly. Apart from the plan: whole numbers only.
//!
//! Branch and bound over masks of changes (`tree.rs`). Bounds are those of linear programming (`tableau.rs`, with few
//! rows a dual simplex method on a dense tableau), made safe by taking its multipliers alone (`bound.rs`).
//!
//! ```
//! use kerbstead_core::moves::pick::{Choice, PickSearch};
//! // Three changes towards 100 Wh and 5 kg; the third of them weighs.
//! let choice = Choice {
//!     costs: vec![90, 40, 70],
//!     effects: vec![vec![120, 50, 60], vec![0, 8, -2]],
//!     needs: vec![100, 5],
//!     ..Choice::default()
//! };
//! let picked = PickSearch::new(&choice).end();
//! assert_eq!((picked.chosen, picked.cost, picked.is_proven), (Some(vec![1, 2]), 110, true));
//! // One of the second and the third at most.
//! let picked = PickSearch::new(&Choice { groups: vec![vec![1, 2]], ..choice }).end();
//! assert_eq!((picked.chosen, picked.cost, picked.is_proven), (Some(vec![0, 1]), 130, true));
//! ```

mod bound;
mod problem;
mod reading;
mod start;
mod tableau;
mod tree;

use problem::{Problem, bits};
use tree::Tree;

/// So many changes are looked at: a bit for each.
pub const MOST_CHANGES: usize = 64;

/// What a search may take and what a step takes of it, in numbers of the tableau that are looked at: some five seconds
/// and a millisecond and a half on a computer of 2020 (measured, see the benches).
const BUDGET: u64 = 1_300_000_000;
const STEP: u64 = 330_000;
/// What a node costs besides, in numbers.
const NODE: u64 = 256;

/// Changes, and what is wanted of them. Any numbers will do: costs beyond 2^57 and effects beyond 2^55 either way count
/// as that. Of more than [`MOST_CHANGES`] the first are looked at, and nothing is proven then.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Choice {
    /// What each change costs.
    pub costs: Vec<u64>,
    /// Limit by limit and change by change, what it does towards the limit; below zero where it does harm. What is not
    /// there is 0.
    pub effects: Vec<Vec<i64>>,
    /// What the effects of those chosen must come to at least, limit by limit. Without a need there is no limit.
    pub needs: Vec<i64>,
    /// Of each group at most one may be chosen; groups may overlap.
    pub groups: Vec<Vec<usize>>,
    /// Sets that are not wanted, each just as it is: what has one more or one less may be chosen.
    pub refused: Vec<Vec<usize>>,
}

/// What came of a choice.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Picked {
    /// The cheapest set of changes known, in ascending order. None when none is known, which when it is proven means
    /// that there is none.
    pub chosen: Option<Vec<usize>>,
    /// What they cost; 0 when there are none.
    pub cost: u64,
    /// No set that reaches everything costs less; 0 when it is proven that there is none.
    pub bound: u64,
    /// Whether the set is the cheapest, or whether there is none for certain.
    pub is_proven: bool,
    /// The first limit that not even all changes that help reach, with one of each group at most. Who is in several
    /// groups counts as in the first of them here, so that a limit may be out of reach all the same.
    pub beyond: Option<usize>,
}

/// A search for the cheapest set. The same choice gives the same set, whatever the steps.
pub struct PickSearch {
    tree: Tree,
    weight: u64,
    spent: u64,
}

impl PickSearch {
    /// Begins with a good set, if there is one within reach.
    pub fn new(choice: &Choice) -> Self {
        let problem = Problem::new(choice);
        let weight = NODE + (problem.rows.len() * problem.costs.len()) as u64;
        Self { tree: Tree::new(problem), weight, spent: 0 }
    }

    /// Goes on for a few milliseconds at most; gives the share that is done, 1 when all is. A search that takes too
    /// long is given up, which [`Picked::is_proven`] tells.
    pub fn step(&mut self) -> f64 {
        let goal = self.spent + STEP;
        while !self.is_finished() && self.spent < goal {
            self.tree.step();
            self.spent += self.weight;
        }
        if self.is_finished() {
            return 1.0;
        }
        self.tree.share().max(self.spent as f64 / BUDGET as f64).min(0.99)
    }

    /// The best set so far, and what is proven of it.
    pub fn best(&self) -> Picked {
        let problem = &self.tree.problem;
        let whole = |units: u64| units.saturating_mul(problem.unit);
        Picked {
            chosen: self.tree.best.map(|(chosen, _)| bits(chosen).collect()),
            cost: self.tree.best.map_or(0, |(_, cost)| whole(cost)),
            bound: if problem.is_cut_off { 0 } else { self.tree.bound().map_or(0, whole) },
            is_proven: self.tree.is_done() && !problem.is_cut_off,
            beyond: problem.beyond.filter(|_| !problem.is_cut_off),
        }
    }

    /// Goes on to the end.
    pub fn end(mut self) -> Picked {
        while self.step() < 1.0 {}
        self.best()
    }

    fn is_finished(&self) -> bool {
        self.tree.is_done() || self.spent >= BUDGET
    }
}
