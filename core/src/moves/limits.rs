//! What falls short, as limits that the effects of changes are added up towards.

use super::Move;
use super::worth::amount;
use crate::assessment::Outcome;
use crate::plan::Money;
use crate::{Balance, Verdict};

/// Limits, in thousandths of a unit.
#[derive(Default)]
pub struct Limits {
    /// Which balance each is of.
    pub balances: Vec<Balance>,
    /// What is missing.
    pub needs: Vec<i64>,
    /// What each change gives.
    pub effects: Vec<Vec<i64>>,
}

/// The limits of the balances that fall short: one for each by its margin, and for money each day on which cash is short.
pub fn limits(before: &Outcome, floor: Money, moves: &[(Move, Outcome)], short: &[Balance]) -> Limits {
    let mut limits = Limits::default();
    for balance in short {
        if *balance == Balance::Money {
            limits.add_cash(before, floor, moves);
        } else {
            limits.add(*balance, before, moves);
        }
    }
    limits
}

impl Limits {
    fn push(&mut self, balance: Balance, need: i64, effects: Vec<i64>) {
        self.balances.push(balance);
        self.needs.push(need);
        self.effects.push(effects);
    }

    /// By the margin; where that says nothing, by how many things are wrong.
    fn add(&mut self, balance: Balance, before: &Outcome, moves: &[(Move, Outcome)]) {
        let value = |outcome: &Outcome| {
            outcome.balance(balance).map_or(0.0, |outlined| {
                let margin = outlined.margin.map_or(0.0, amount);
                let is_short = outlined.verdict == Verdict::FallsShort;
                if is_short && margin >= 0.0 { -(outlined.wrongs.0 as f64) } else { margin }
            })
        };
        let was = value(before);
        let effects = moves.iter().map(|(_, after)| thousandths(value(after) - was)).collect();
        self.push(balance, thousandths(-was).max(1), effects);
    }

    /// The days on which cash is below the floor, or could come below it; of days on which every change gives the same, the
    /// lowest counts.
    fn add_cash(&mut self, before: &Outcome, floor: Money, moves: &[(Move, Outcome)]) {
        let mut rows: Vec<(Vec<i64>, i64)> = Vec::new();
        for (on, cash) in &before.cash {
            let gives = |(_, after): &(Move, Outcome)| {
                let there = after.cash.binary_search_by_key(on, |(day, _)| *day);
                let cash_then = there.ok().and_then(|at| after.cash.get(at)).map_or(*cash, |(_, cash)| *cash);
                of_money(cash_then - *cash)
            };
            let effects: Vec<i64> = moves.iter().map(gives).collect();
            let need = of_money(floor - *cash);
            match rows.iter_mut().find(|(known, _)| *known == effects) {
                Some((_, known)) => *known = (*known).max(need),
                None => rows.push((effects, need)),
            }
        }
        for (effects, need) in rows {
            // A day that no set of changes can bring below the floor is no limit.
            let worst: i64 = effects.iter().filter(|effect| **effect < 0).sum();
            if need > worst {
                self.push(Balance::Money, need, effects);
            }
        }
    }
}

/// In thousandths, down.
#[allow(clippy::cast_possible_truncation)] // clamped just before
fn thousandths(value: f64) -> i64 {
    if value.is_nan() { 0 } else { libm::floor(value * 1_000.0).clamp(-1e15, 1e15) as i64 }
}

/// In thousandths, whatever the currency: only sums and comparisons are made of it.
fn of_money(amount: Money) -> i64 {
    let most = i64::MAX / 1_000;
    amount.to_minor(3).unwrap_or(if amount.is_negative() { -most } else { most })
}
