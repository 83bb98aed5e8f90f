//! Which costs there can be: sums of the costs of boards.

use super::problem::Problem;

/// Above this every cost is taken to be possible.
const MOST: usize = 1 << 20;

/// The possible costs up to one, or all.
#[derive(Default)]
pub(super) struct Levels {
    reached: Vec<bool>,
}

impl Levels {
    /// Up to so much, as long as no piece is missing in anything that costs no more.
    pub(super) fn new(problem: &Problem, most: i64) -> Self {
        let Some(count) = usize::try_from(most).ok().filter(|count| *count < MOST) else { return Self::default() };
        if problem.missing.is_some_and(|missing| missing <= most) {
            return Self::default();
        }
        let mut reached = vec![false; count + 1];
        reached[0] = true;
        for stock in &problem.stocks {
            let Some(cost) = usize::try_from(stock.cost).ok().filter(|cost| *cost > 0) else { continue };
            for at in cost..=count {
                reached[at] |= reached[at - cost];
            }
        }
        Self { reached }
    }

    /// The least possible cost that is no less; the cost itself where nothing is known.
    pub(super) fn up(&self, cost: i64) -> i64 {
        let from = usize::try_from(cost).unwrap_or(0);
        let beyond = self.reached.iter().skip(from).position(|reached| *reached).and_then(|by| i64::try_from(by).ok());
        cost.max(0) + beyond.unwrap_or(0)
    }

    /// The largest possible cost that is less.
    pub(super) fn below(&self, cost: i64) -> i64 {
        let Some(count) = usize::try_from(cost).ok().filter(|count| *count <= self.reached.len()) else {
            return cost - 1;
        };
        let found = self.reached.iter().take(count).rposition(|reached| *reached);
        found.and_then(|at| i64::try_from(at).ok()).unwrap_or(-1)
    }
}
