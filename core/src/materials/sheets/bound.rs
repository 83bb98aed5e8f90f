//! What nothing can cost less than: no part counts for more than its share of a sheet's area, however shares are counted.
//!
//! Sides are counted by functions under which no row of parts comes to more than the row it is cut from, along and across
//! ("conservative scales", of Fekete and Schepers, 2004, from memory); their products then are areas that no sheet's own
//! can fall short of. Each part and each room is taken with a kerf on two sides. A part that may be turned counts as the
//! lesser of both. Guillotine cuts are more of a restriction than that, so the bound may be out of reach.

use super::problem::{Problem, Stock};
use crate::materials::cutting::proof::{cut_off, stepped};

/// How a side is counted, against the longest room of its direction.
#[derive(Clone, Copy)]
enum Scale {
    Plain,
    Steps(u64),
    CutOff(u64),
}

impl Scale {
    fn of(self, side: u64, room: u64) -> u128 {
        match self {
            Self::Plain => u128::from(side),
            // Counted in parts of the room: all by one number, so that areas stay within what is counted with.
            Self::Steps(parts) => stepped(side, room, parts),
            Self::CutOff(least) => cut_off(side, room, least.min(room / 2)),
        }
    }
}

/// What all parts cost at least, in ten-thousandths; nothing where there may be too few sheets.
pub(super) fn bound(problem: &Problem) -> i64 {
    let longest = problem.stocks.iter().map(|stock| stock.length + problem.kerf).max().unwrap_or(0);
    let widest = problem.stocks.iter().map(|stock| stock.width + problem.kerf).max().unwrap_or(0);
    if longest == 0 || widest == 0 || problem.stocks.iter().all(|stock| stock.limit.is_some()) {
        return 0;
    }
    let mut best = 0;
    for along in scales(problem) {
        for across in scales(problem) {
            let area = |length: u64, width: u64| along.of(length, longest) * across.of(width, widest);
            best = best.max(by_area(problem, &area));
        }
    }
    best
}

/// Plain sides, sides in a few parts of the room, and sides without the short ones.
fn scales(problem: &Problem) -> Vec<Scale> {
    let mut sides: Vec<u64> = problem.parts.iter().flat_map(|part| [part.length, part.width]).collect();
    sides.sort_unstable();
    sides.dedup();
    let step = sides.len().div_ceil(8).max(1);
    let cut = sides.into_iter().step_by(step).map(|side| Scale::CutOff(side + problem.kerf));
    [Scale::Plain].into_iter().chain((1..=4).map(Scale::Steps)).chain(cut).collect()
}

fn by_area(problem: &Problem, area: &dyn Fn(u64, u64) -> u128) -> i64 {
    let kerf = problem.kerf;
    let fits =
        |length: u64, width: u64| problem.stocks.iter().any(|stock| length <= stock.length && width <= stock.width);
    let mut left: u128 = 0;
    for part in &problem.parts {
        let ways = part.ways().filter(|(length, width, _)| fits(*length, *width));
        left += ways.map(|(length, width, _)| area(length + kerf, width + kerf)).min().unwrap_or(0);
    }
    let room = |stock: &Stock| area(stock.length + kerf, stock.width + kerf);
    let mut cheapest: Option<(i64, u128)> = None;
    for stock in &problem.stocks {
        let holds = room(stock);
        match stock.limit {
            Some(limit) if stock.cost == 0 => left = left.saturating_sub(holds.saturating_mul(u128::from(limit))),
            _ if holds > 0 && cheapest.is_none_or(|known| is_cheaper((stock.cost, holds), known)) => {
                cheapest = Some((stock.cost, holds));
            }
            _ => {}
        }
    }
    let Some((cost, holds)) = cheapest else { return 0 };
    let least = left.checked_mul(u128::from(cost.unsigned_abs())).map_or(0, |product| product.div_ceil(holds));
    let whole = only_cost(problem).filter(|cost| *cost > 0);
    let least = i64::try_from(least).unwrap_or(0);
    whole.map_or(least, |cost| least.div_euclid(cost) * cost + if least % cost > 0 { cost } else { 0 })
}

/// Whether one costs less for what it holds. Products too large to be counted count as no.
fn is_cheaper(one: (i64, u128), other: (i64, u128)) -> bool {
    let product = |cost: i64, holds: u128| holds.checked_mul(u128::from(cost.unsigned_abs()));
    product(one.0, other.1).zip(product(other.0, one.1)).is_some_and(|(one, other)| one < other)
}

/// What every sheet with a price costs, if that is the same.
fn only_cost(problem: &Problem) -> Option<i64> {
    let mut costs = problem.stocks.iter().map(|stock| stock.cost).filter(|cost| *cost > 0);
    let first = costs.next()?;
    costs.all(|cost| cost == first).then_some(first)
}
