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
        let mut spare = problem.limits();
        for (pattern, count) in boards {
            spare[pattern.stock] = spare[pattern.stock].saturating_sub(*count);
        }
        for (pattern, count) in boards {
            found.take(problem, pattern, *count, &mut spare);
        }
        let missing: u64 = found.missing.iter().sum();
        let each = problem.missing.unwrap_or(i64::MAX);
        found.cost = found.cost.saturating_add(missing.cast_signed().saturating_mul(each));
        found
    }

    /// Takes some of so many boards, for which there are boards apart from those to spare.
    fn take(&mut self, problem: &Problem, pattern: &Pattern, mut count: u64, spare: &mut [u64]) {
        while count > 0 {
            let wanted = pattern.within(&self.missing);
            let totals = wanted.totals();
            let Some(times) = totals.iter().map(|(kind, count)| self.missing[*kind] / count).min() else { break };
            let stock = cheapest(problem, &wanted, spare);
            let mut times = times.min(count);
            if stock != wanted.stock {
                times = times.min(spare[stock]);
                spare[stock] -= times;
                spare[wanted.stock] += times;
            }
            count -= times;
            for (kind, each) in &totals {
                self.missing[*kind] -= each * times;
            }
            self.cost += problem.stocks[stock].cost * times.cast_signed();
            let is_same = stock == wanted.stock;
            let fillings = if is_same { wanted.fillings } else { moved(problem, stock, wanted.fillings) };
            self.boards.push((Pattern { stock, fillings }, times));
        }
        spare[pattern.stock] += count;
    }

    /// Whether nothing is missing.
    pub(super) fn is_whole(&self) -> bool {
        self.missing.iter().all(|missing| *missing == 0)
    }
}

/// The cheapest board that holds the filling of a board with one span, of those to spare and the one it is; of equal ones
/// the shorter.
fn cheapest(problem: &Problem, pattern: &Pattern, spare: &[u64]) -> usize {
    let mut fillings = pattern.fillings.iter().filter(|filling| !filling.is_empty());
    let (Some(filling), None) = (fillings.next(), fillings.next()) else { return pattern.stock };
    let size: u64 = filling.iter().map(|(kind, count)| problem.kinds[*kind].size * count).sum();
    let rank = |stock: usize| (problem.stocks[stock].cost, problem.stocks[stock].rooms.iter().sum::<u64>());
    let others = (0..problem.stocks.len()).filter(|stock| spare[*stock] > 0 && problem.stocks[*stock].holds(size));
    others.fold(pattern.stock, |best, other| if rank(other) < rank(best) { other } else { best })
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
