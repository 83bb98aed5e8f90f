//! A way of cutting everything, and what it costs.

use super::problem::{Pattern, Problem};

/// Boards with what is cut from them. Nothing is cut more often than it is wanted.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Found {
    /// Each pattern with how many boards are cut so.
    pub(super) boards: Vec<(Pattern, u64)>,
    /// How many of each kind are not cut.
    pub(super) missing: Vec<u64>,
    pub(super) cost: i64,
}

impl Found {
    /// Takes off what is cut too often, takes boards that are not needed away and cheaper ones where they do.
    pub(super) fn of(problem: &Problem, boards: &[(Pattern, u64)]) -> Self {
        let mut found = Self { missing: problem.demand(), ..Self::default() };
        let mut limits = problem.limits();
        for (pattern, count) in boards {
            found.take(problem, pattern, *count, &mut limits);
        }
        for (at, missing) in found.missing.iter().enumerate() {
            debug_assert!(*missing == 0 || problem.missing.is_some(), "{missing} of kind {at}");
            found.cost += missing.cast_signed().saturating_mul(problem.missing.unwrap_or(0));
        }
        found
    }

    fn take(&mut self, problem: &Problem, pattern: &Pattern, mut count: u64, limits: &mut [u64]) {
        while count > 0 {
            let wanted = pattern.within(&self.missing);
            let totals = wanted.totals();
            let times = totals.iter().map(|(kind, count)| self.missing[*kind] / count).min().unwrap_or(0);
            if times == 0 {
                return;
            }
            let stock = cheapest(problem, &wanted, limits);
            let times = times.min(count).min(limits[stock]);
            if times == 0 {
                return;
            }
            limits[stock] -= times;
            count -= times;
            totals.iter().for_each(|(kind, count)| self.missing[*kind] -= count * times);
            self.cost += problem.stocks[stock].cost * times.cast_signed();
            let is_same = stock == wanted.stock;
            let fillings = if is_same { wanted.fillings } else { moved(problem, stock, wanted.fillings) };
            self.boards.push((Pattern { stock, fillings }, times));
        }
    }

    /// Whether nothing is missing.
    pub(super) fn is_whole(&self) -> bool {
        self.missing.iter().all(|missing| *missing == 0)
    }
}

/// The cheapest board there still is that holds the filling of a board with one span; of equal ones the shorter, then
/// the one it is.
fn cheapest(problem: &Problem, pattern: &Pattern, limits: &[u64]) -> usize {
    let mut fillings = pattern.fillings.iter().filter(|filling| !filling.is_empty());
    let (Some(filling), None) = (fillings.next(), fillings.next()) else { return pattern.stock };
    let size: u64 = filling.iter().map(|(kind, count)| problem.kinds[*kind].size * count).sum();
    let rank = |stock: usize| (problem.stocks[stock].cost, problem.stocks[stock].rooms.iter().sum::<u64>());
    let others = (0..problem.stocks.len()).filter(|stock| limits[*stock] > 0 && problem.stocks[*stock].holds(size));
    let is_there = limits[pattern.stock] > 0;
    others.fold(pattern.stock, |best, other| {
        if rank(other) < rank(best) || !is_there && best == pattern.stock { other } else { best }
    })
}

/// One filling in the shortest span of another board that holds it.
fn moved(problem: &Problem, stock: usize, fillings: Vec<super::problem::Filling>) -> Vec<super::problem::Filling> {
    let rooms = &problem.stocks[stock].rooms;
    let filling = fillings.into_iter().find(|filling| !filling.is_empty()).unwrap_or_default();
    let size: u64 = filling.iter().map(|(kind, count)| problem.kinds[*kind].size * count).sum();
    let fitting = rooms.iter().enumerate().filter(|(_, room)| **room >= size).min_by_key(|(at, room)| (**room, *at));
    let mut moved = vec![Vec::new(); rooms.len()];
    if let Some((at, _)) = fitting {
        moved[at] = filling;
    }
    moved
}
