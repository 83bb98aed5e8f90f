//! What could explain that a receipt's lines do not come to its stated total.
//!
//! The tests are those of bookkeepers: a difference that is a line, twice a line, divisible by nine. Common practice, no
//! source.

use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

use super::{Expected, MOST_EXPLANATIONS, Receipt};
use crate::money::price_parts;
use crate::plan::field::MOST_MONEY;
use crate::plan::{Id, Money, decimal};

/// Something that alone makes up for the difference, to the minor unit. Lines are told by their position, from 0.
#[derive(Clone, Debug, PartialEq)]
pub enum Explanation {
    /// The item of the plan that costs just the difference is on no line.
    ItemMissing {
        /// The item.
        item: Id,
        /// What it is planned to cost.
        amount: Money,
    },
    /// A line stands there twice.
    CountedTwice {
        /// The later one.
        line: usize,
        /// An earlier one of the same amount.
        twin: usize,
    },
    /// The digits of an amount that are side by side were swapped.
    DigitsSwapped {
        /// The amount.
        at: Spot,
        /// What it is then.
        to: Money,
    },
    /// The decimal mark of an amount stands up to three places from where it belongs.
    MarkMisplaced {
        /// The amount.
        at: Spot,
        /// What it is then.
        to: Money,
    },
    /// The lines are without the tax that the total has in it, or one of them is.
    TaxLeftOut {
        /// The line; none for all of them.
        line: Option<usize>,
        /// The sales tax.
        percent: Decimal,
    },
    /// The lines have the tax in them and the total has not, or one of them has.
    TaxTooMuch {
        /// The line; none for all of them.
        line: Option<usize>,
        /// The sales tax.
        percent: Decimal,
    },
    /// The sign of a line is the wrong one, as of a deposit that came back.
    SignTurned {
        /// The line.
        line: usize,
    },
    /// Whoever stated the total counted a line once more than it stands here: two were bought, or one was charged twice.
    ChargedTwice {
        /// The line.
        line: usize,
    },
    /// A line of just this amount does not belong here.
    LineTooMany {
        /// The line.
        line: usize,
    },
    /// The total was rounded, as for cash where the smallest coins are gone.
    Rounded {
        /// To a multiple of this.
        to: Money,
    },
    /// A line is missing; a reduction where the amount is negative. Always the last, because it always explains.
    LineMissing {
        /// Its amount: the difference.
        amount: Money,
    },
}

/// An amount of a receipt.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Spot {
    /// That of a line, by its position.
    Line(usize),
    /// The stated total.
    Total,
}

/// What is to be explained.
pub(super) struct Case<'a> {
    pub receipt: &'a Receipt,
    pub expected: &'a [Expected],
    pub tax_percents: &'a [Decimal],
    pub digits: u32,
    pub stated: Money,
    pub sum: Money,
    /// The stated total less the sum.
    pub difference: Money,
}

pub(super) fn explanations(case: &Case) -> Vec<Explanation> {
    let Some(difference) = minor(case.difference, case.digits).filter(|difference| *difference != 0) else {
        return Vec::new();
    };
    let amounts = case.receipt.lines.iter().enumerate();
    let lines: Vec<(usize, i64)> =
        amounts.filter_map(|(at, line)| Some((at, minor(line.amount, case.digits)?))).collect();
    let mut found = Vec::new();
    missing_items(case, &mut found);
    counted_twice(&lines, difference, &mut found);
    mistyped(case, &lines, difference, &mut found);
    taxes(case, &mut found);
    for &(line, amount) in &lines {
        if difference == -2 * amount {
            found.push(Explanation::SignTurned { line });
        }
        if difference == amount {
            found.push(Explanation::ChargedTwice { line });
        }
        if difference == -amount && !has_twin(&found, line) {
            found.push(Explanation::LineTooMany { line });
        }
    }
    rounded_total(case, difference, &mut found);
    found.truncate(MOST_EXPLANATIONS - 1);
    found.push(Explanation::LineMissing { amount: case.difference });
    found
}

fn missing_items(case: &Case, found: &mut Vec<Explanation>) {
    for &Expected { item, price } in case.expected {
        let is_there = case.receipt.lines.iter().any(|line| line.item == Some(item));
        if price.rounded(case.digits) == case.difference && !is_there {
            found.push(Explanation::ItemMissing { item, amount: price });
        }
    }
}

/// Of the lines that are just the difference too much, each after the first has a twin.
fn counted_twice(lines: &[(usize, i64)], difference: i64, found: &mut Vec<Explanation>) {
    let mut same = lines.iter().filter(|(_, amount)| *amount == -difference).map(|(line, _)| *line);
    let Some(twin) = same.next() else { return };
    found.extend(same.take(MOST_EXPLANATIONS).map(|line| Explanation::CountedTwice { line, twin }));
}

/// Whether a line is one of a pair that was found already.
fn has_twin(found: &[Explanation], of: usize) -> bool {
    found.iter().any(|it| matches!(it, Explanation::CountedTwice { line, twin } if *line == of || *twin == of))
}

/// Digits swapped and marks misplaced, in any line or in the total.
fn mistyped(case: &Case, lines: &[(usize, i64)], difference: i64, found: &mut Vec<Explanation>) {
    let total = minor(case.stated, case.digits).map(|stated| (Spot::Total, stated, -difference));
    let spots = || lines.iter().map(|(line, amount)| (Spot::Line(*line), *amount, difference)).chain(total);
    for (at, amount, change) in spots() {
        if is_swap(amount, change, case.digits) {
            found.push(Explanation::DigitsSwapped { at, to: money(amount + change, case.digits) });
        }
    }
    for (at, amount, change) in spots() {
        let to = amount + change;
        if [10, 100, 1_000].into_iter().any(|power| amount * power == to || to * power == amount) && to != 0 {
            found.push(Explanation::MarkMisplaced { at, to: money(to, case.digits) });
        }
    }
}

/// Whether swapping two digits of an amount that are side by side changes it by that much. The change is nine times a
/// power of ten then, times the difference of the digits. No amount of more than its units begins with a nought.
fn is_swap(amount: i64, change: i64, digits: u32) -> bool {
    if change % 9 != 0 {
        return false;
    }
    let (size, change) = (amount.abs(), if amount < 0 { -change } else { change });
    let unit = 10_i64.pow(digits.min(MOST_DIGITS));
    let mut place = 1;
    while place * 10 <= size.max(unit) {
        let (right, left) = (size / place % 10, size / place / 10 % 10);
        let begins_with_nought = right == 0 && place * 100 > size && place * 10 > unit;
        if right != left && 9 * place * (right - left) == change && !begins_with_nought {
            return true;
        }
        place *= 10;
    }
    false
}

fn taxes(case: &Case, found: &mut Vec<Explanation>) {
    let is_left_out = !case.difference.is_negative();
    let tax_of = |amount: Money, percent: Decimal| price_parts(amount, 1, percent, !is_left_out, case.digits).tax;
    let missing = if is_left_out { case.difference } else { -case.difference };
    let mut say = |line: Option<usize>, percent: Decimal| {
        found.push(if is_left_out {
            Explanation::TaxLeftOut { line, percent }
        } else {
            Explanation::TaxTooMuch { line, percent }
        });
    };
    for &percent in case.tax_percents.iter().filter(|percent| **percent > Decimal::ZERO) {
        let lines = &case.receipt.lines;
        // Some tills round the tax of each line, others that of the sum.
        let line_by_line: Money = lines.iter().map(|line| tax_of(line.amount, percent)).sum();
        if tax_of(case.sum, percent) == missing || line_by_line == missing {
            say(None, percent);
        }
        if lines.len() > 1 {
            let taxed = lines.iter().enumerate().filter(|(_, line)| tax_of(line.amount, percent) == missing);
            taxed.for_each(|(line, _)| say(Some(line), percent));
        }
    }
}

/// Cash is rounded to 0.05, 0.10, 0.50 or 1.00 here and there. Common practice, no source.
fn rounded_total(case: &Case, difference: i64, found: &mut Vec<Explanation>) {
    let Some(stated) = minor(case.stated, case.digits) else { return };
    let step = [5, 10, 50, 100].into_iter().find(|step| 2 * difference.abs() <= *step && stated % step == 0);
    found.extend(step.map(|step| Explanation::Rounded { to: money(step, case.digits) }));
}

/// No currency has more decimal digits. Source: ISO 4217:2015 (from memory).
const MOST_DIGITS: u32 = 4;

/// The amount in minor units, if a plan would take it.
fn minor(amount: Money, digits: u32) -> Option<i64> {
    let digits = digits.min(MOST_DIGITS);
    let amount = amount.rounded(digits).decimal();
    if amount.abs() > Decimal::from(MOST_MONEY) {
        return None;
    }
    decimal::times(amount, Decimal::from(10_i64.pow(digits)))?.to_i64()
}

fn money(minor: i64, digits: u32) -> Money {
    Money::new(Decimal::new(minor, digits.min(MOST_DIGITS)))
}
