//! What nothing can beat, proven in whole numbers, whatever the prices it is made of.
//!
//! Give each kind any worth that is not below 0. If no filling of a board of an entry is worth more than what the board
//! costs and some excess, then everything wanted together is worth no more than all boards cost and their excesses
//! (duality of linear programming, and Lagrange). Worths are whole numbers of a small part of a unit of cost, and the
//! most that a board holds is found exactly, or more is taken for it. So no rounding can make a bound that is wrong.
//!
//! Without prices, the same with worths that fillings cannot exceed for simple reasons ("dual feasible functions", of
//! Fekete and Schepers, "New classes of fast lower bounds for bin packing problems", 2001, from memory).

use super::problem::Problem;

/// What is wanted and what boards cost, with worths in parts of the unit of cost.
#[derive(Clone, Debug, Default)]
pub(super) struct Worths {
    /// So many parts make a unit of cost.
    pub(super) parts: i64,
    /// What a piece of each kind is worth.
    pub(super) kinds: Vec<u64>,
    /// By how much the fullest board of each entry is worth more than it costs.
    pub(super) excess: Vec<u64>,
}

/// The largest cost is about so many parts.
const FINEST: i64 = 1 << 42;

impl Worths {
    /// Worths of kinds from prices in units of cost, with no excess yet.
    pub(super) fn new(problem: &Problem, prices: &[f64]) -> Self {
        let largest = problem.dearest().max(problem.missing.unwrap_or(0)).max(1);
        let parts = (FINEST / largest).max(1);
        let most = largest as f64;
        let worth = |price: &f64| whole(price.clamp(0.0, most) * parts as f64).unsigned_abs();
        let kinds = prices.iter().take(problem.kinds.len()).map(worth).collect();
        Self { parts, kinds, excess: vec![0; problem.stocks.len()] }
    }

    /// What a board of the entry costs, in parts.
    pub(super) fn cost(&self, problem: &Problem, stock: usize) -> i128 {
        i128::from(problem.stocks[stock].cost) * i128::from(self.parts)
    }

    /// What all that is wanted costs at least, in parts, with no more boards of each entry than so many.
    pub(super) fn bound(&self, demand: &[u64], most: &[u64]) -> i128 {
        let product = |(a, b): (&u64, &u64)| i128::from(*a) * i128::from(*b);
        let worth: i128 = self.kinds.iter().zip(demand).map(product).sum();
        worth - self.excess.iter().zip(most).map(product).sum::<i128>()
    }

    /// A number of parts as cost, rounded up: costs are whole.
    pub(super) fn as_cost(&self, parts: i128) -> i64 {
        let part = i128::from(self.parts.max(1));
        let cost = parts.div_euclid(part) + i128::from(parts.rem_euclid(part) > 0);
        i64::try_from(cost.max(0)).unwrap_or(i64::MAX)
    }
}

/// How many boards of each entry something can have that costs no more than so much.
pub(super) fn most_boards(problem: &Problem, cost: i64) -> Vec<u64> {
    let afford = |cost_of: i64| if cost_of > 0 { (cost / cost_of).unsigned_abs() } else { u64::MAX };
    problem.stocks.iter().zip(problem.limits()).map(|(stock, limit)| limit.min(afford(stock.cost))).collect()
}

/// A bound without prices, from how many long pieces there are and how long all are together.
pub(super) fn simple_bound(problem: &Problem) -> i64 {
    let longest = problem.stocks.iter().flat_map(|stock| &stock.rooms).max().copied().unwrap_or(0);
    if longest == 0 || problem.missing.is_some() {
        return 0;
    }
    let mut best = share_bound(problem, &|size| u128::from(size));
    for parts in 1..=40 {
        best = best.max(share_bound(problem, &|size| stepped(size, longest, parts)));
    }
    for kind in problem.kinds.iter().filter(|kind| kind.size <= longest / 2).take(200) {
        best = best.max(share_bound(problem, &|size| cut_off(size, longest, kind.size)));
    }
    best
}

/// Of a length in `parts + 1` parts of the room, how many whole ones, unless it is just that many.
pub(in crate::materials) fn stepped(size: u64, room: u64, parts: u64) -> u128 {
    let (size, room, parts) = (u128::from(size), u128::from(room), u128::from(parts));
    let product = size * (parts + 1);
    if product.is_multiple_of(room) { size * parts } else { product / room * room }
}

/// What leaves less than `least` beside it counts as the room, what is shorter than `least` as nothing.
pub(in crate::materials) fn cut_off(size: u64, room: u64, least: u64) -> u128 {
    if size > room - least {
        u128::from(room)
    } else if size < least {
        0
    } else {
        u128::from(size)
    }
}

/// What all costs at least when no filling counts more than its room does.
fn share_bound(problem: &Problem, counts: &dyn Fn(u64) -> u128) -> i64 {
    let wanted: u128 = problem.kinds.iter().map(|kind| counts(kind.size) * u128::from(kind.count)).sum();
    let mut left = wanted;
    let mut cheapest: Option<(u128, u128)> = None;
    for stock in &problem.stocks {
        let holds: u128 = stock.rooms.iter().map(|room| counts(*room)).sum();
        let cost = u128::from(stock.cost.unsigned_abs());
        match stock.limit {
            Some(limit) if cost == 0 => left = left.saturating_sub(holds * u128::from(limit)),
            _ if holds > 0 && cheapest.is_none_or(|(known, by)| cost * by < known * holds) => {
                cheapest = Some((cost, holds));
            }
            _ => {}
        }
    }
    cheapest.map_or(0, |(cost, holds)| i64::try_from((left * cost).div_ceil(holds)).unwrap_or(0))
}

/// A float as a whole number, rounded down; casts saturate.
#[expect(clippy::cast_possible_truncation, reason = "saturates, and worths are far below 2^63")]
pub(super) fn whole(number: f64) -> i64 {
    number.floor() as i64
}
