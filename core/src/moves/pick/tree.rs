//! Every choice that could be better, looked at: branch and bound, depth first.
//!
//! At each node: what follows from what is settled, row by row; the least cost with shares; a bound proven with its
//! multipliers; changes that would make it too dear settled the other way (reduced costs); its shares rounded, which
//! may be a better choice. Then one of the changes with a share is settled both ways. Nothing is left out but by a
//! proof in whole numbers or with rounding taken into account, so whatever the simplex method comes to, the end of the
//! search is right.

use super::bound::Bounds;
use super::problem::{Problem, Settled, bits};
use super::reading::Fork;
use super::start::{filled_up, polished};
use super::tableau::{Outcome, Tableau};
use crate::task::share_of_tree;

/// A share nearer to 0 or 1 than this is none.
const NO_SHARE: f64 = 1e-6;
/// The simplex method stops so far beyond the limit, as the bound made of it is a little below it.
const BEYOND_LIMIT: f64 = 1e-6;
/// A rise of the cost counts as this much at least, so that the other side still tells forks apart.
const LEAST_RISE: f64 = 1e-3;

pub(super) struct Tree {
    pub(super) problem: Problem,
    /// The best choice so far, with what it costs in units.
    pub(super) best: Option<(u64, u64)>,
    bounds: Bounds,
    /// From the root to where the search is.
    frames: Vec<Frame>,
    /// Tableaus that wait to be used again.
    spare: Vec<Tableau>,
    multipliers: Vec<f64>,
}

/// A node with the children that are still to be looked at, the last one first.
struct Frame {
    tableau: Tableau,
    bound: f64,
    children: Vec<Settled>,
}

impl Tree {
    /// Looks at the root.
    pub(super) fn new(problem: Problem) -> Self {
        let mut tree = Self {
            bounds: Bounds::new(&problem),
            best: None,
            frames: Vec::new(),
            spare: Vec::new(),
            multipliers: vec![0.0; problem.rows.len()],
            problem,
        };
        let tableau = Tableau::new(&tree.problem);
        tree.enter(tableau, Settled::default());
        tree
    }

    /// Whether nothing is left to look at.
    pub(super) fn is_done(&self) -> bool {
        self.frames.is_empty()
    }

    /// Nothing good costs less, in units; none when there is nothing good.
    pub(super) fn bound(&self) -> Option<u64> {
        let open = self.frames.iter().filter(|frame| !frame.children.is_empty());
        let open = open.map(|frame| whole(frame.bound));
        open.chain(self.best.map(|(_, cost)| cost)).min()
    }

    /// The share of the tree that is done.
    pub(super) fn share(&self) -> f64 {
        share_of_tree(self.frames.iter().map(|frame| frame.children.len()))
    }

    /// Looks at the next node.
    pub(super) fn step(&mut self) {
        while let Some(mut frame) = self.frames.pop() {
            let child = if self.is_too_dear(frame.bound) { None } else { frame.children.pop() };
            let Some(settled) = child else {
                self.spare.push(frame.tableau);
                continue;
            };
            let mut tableau = self.spare.pop().unwrap_or_default();
            tableau.take_over(&frame.tableau, &settled);
            self.frames.push(frame);
            self.enter(tableau, settled);
            return;
        }
    }

    /// Whether what costs at least so much cannot be better than the best: costs are whole numbers.
    fn is_too_dear(&self, bound: f64) -> bool {
        bound > self.limit()
    }

    fn limit(&self) -> f64 {
        self.best.map_or(f64::INFINITY, |(_, cost)| cost as f64 - 1.0)
    }

    fn enter(&mut self, mut tableau: Tableau, mut settled: Settled) {
        match self.look(&mut tableau, &mut settled) {
            Some(bound) => {
                let children = self.children(&tableau, &settled);
                self.frames.push(Frame { tableau, bound, children });
            }
            None => self.spare.push(tableau),
        }
    }

    /// Settles what can be, and gives the bound; none when nothing better goes on from here.
    fn look(&mut self, tableau: &mut Tableau, settled: &mut Settled) -> Option<f64> {
        loop {
            if !self.problem.follow(settled) {
                return None;
            }
            let free = self.problem.free(settled);
            if free == 0 {
                self.offer(settled.chosen);
                return None;
            }
            tableau.settle(settled);
            let outcome = tableau.solve(settled, self.limit() + BEYOND_LIMIT);
            if let Outcome::Stuck { row, is_below } = outcome {
                tableau.grounds(row, is_below, &mut self.multipliers);
                if self.bounds.is_out_of_reach(&self.multipliers, settled, free) {
                    return None;
                }
            }
            tableau.multipliers(&mut self.multipliers);
            let bound = self.bounds.cost(&self.multipliers, settled, free);
            if !self.is_too_dear(bound) && outcome == Outcome::Ended {
                self.round(tableau, settled);
            }
            if self.is_too_dear(bound) {
                return None;
            }
            if !self.settle_by_cost(bound, free, settled) {
                return Some(bound);
            }
        }
    }

    /// Settles each change that would cost too much the other way; whether there was one.
    fn settle_by_cost(&self, bound: f64, free: u64, settled: &mut Settled) -> bool {
        let room = self.limit() - bound;
        let before = *settled;
        for at in bits(free) {
            let reduced = self.bounds.reduced[at];
            if reduced > room {
                settled.out |= 1 << at;
            } else if -reduced > room {
                settled.chosen |= 1 << at;
            }
        }
        *settled != before
    }

    /// Makes choices of shares.
    fn round(&mut self, tableau: &Tableau, settled: &Settled) {
        let shares = tableau.shares(settled);
        let all = self.problem.all;
        let above = |least: f64| bits(all).filter(|at| shares[*at] > least).fold(0, |mask, at| mask | (1 << at));
        let rounded = [above(0.5), above(NO_SHARE)];
        for chosen in rounded {
            self.offer(chosen);
        }
        if self.frames.is_empty() {
            let worth: Vec<f64> = self.multipliers.iter().map(|worth| worth.max(f64::MIN_POSITIVE)).collect();
            for from in rounded.into_iter().chain([above(1.0 - NO_SHARE), 0]) {
                if let Some(filled) = filled_up(&self.problem, from, &worth) {
                    self.offer(filled);
                }
            }
        }
    }

    /// Keeps a choice, with what can be made better about it, if it is good and better than the best.
    fn offer(&mut self, chosen: u64) {
        let is_better = |cost: u64| self.best.is_none_or(|(_, best)| cost < best);
        if is_better(self.problem.cost(chosen)) && self.problem.is_good(chosen) {
            let chosen = polished(&self.problem, chosen);
            self.best = Some((chosen, self.problem.cost(chosen)));
        }
    }

    /// Both ways of the change that raises the cost most, whichever way it is settled; last, which is first, the one
    /// that raises it less.
    fn children(&self, tableau: &Tableau, settled: &Settled) -> Vec<Settled> {
        let score = |fork: &Fork| fork.out.max(LEAST_RISE) * fork.chosen.max(LEAST_RISE);
        let free = self.problem.free(settled);
        let forks = tableau.forks().filter(|fork| free & (1 << fork.change) != 0);
        let best = forks.fold(None, |best: Option<Fork>, fork| match best {
            Some(best) if score(&best) >= score(&fork) => Some(best),
            _ => Some(fork),
        });
        let first_free = Fork { change: free.trailing_zeros() as usize, out: 0.0, chosen: 0.0 };
        let fork = best.unwrap_or(first_free);
        let bit = 1_u64 << fork.change;
        let out = Settled { out: settled.out | bit, ..*settled };
        let chosen = Settled { chosen: settled.chosen | bit, ..*settled };
        if fork.out < fork.chosen { vec![chosen, out] } else { vec![out, chosen] }
    }
}

/// The next whole number.
#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "casts saturate, and no cost is below 0")]
fn whole(cost: f64) -> u64 {
    libm::ceil(cost) as u64
}
