//! The choice with shares of changes allowed: the dual simplex method on a dense tableau.
//!
//! Of changes and of what rows have beyond their needs ("surplus"), as many as there are rows stand as sums of the
//! others (the basics), and the others (the columns) stand at one of their ends. All costs are at least 0, so the
//! tableau begins dual feasible, with every surplus basic and every change out; and as a change has two ends, it stays
//! so whatever is settled later. So there is no first phase, and a node goes on from where the node above it ended. The
//! ratio test lets columns go to their other end as long as that pays (Maros, "A generalized dual phase-2 simplex
//! algorithm", 2003, from memory).
//!
//! What comes of it guides the search and decides nothing: [`super::bound`] makes proofs of its multipliers.

use super::problem::{Problem, Settled};

/// A value that is less than this outside of its ends is taken to be at them.
pub(super) const FEASIBLE: f64 = 1e-9;
/// No pivot on a rate smaller than this.
const LEAST_PIVOT: f64 = 1e-9;
/// Surpluses are numbered from here on; below are changes.
pub(super) const SURPLUS: usize = 64;

/// What the simplex method came to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Outcome {
    /// The least cost with shares, or nearly.
    Ended,
    /// It costs more than the limit, or nearly so.
    Dear,
    /// Nothing can bring the basic of this row back within its ends, so it seems.
    Stuck { row: usize, is_below: bool },
}

#[derive(Clone, Debug, Default)]
pub(super) struct Tableau {
    /// What stands in each column, and how much the cost rises with it.
    pub(super) columns: Vec<usize>,
    pub(super) prices: Vec<f64>,
    /// Which way it may go: up is 1, down is -1, and 0 is nowhere, as it is settled.
    pub(super) ways: Vec<f64>,
    /// What stands in each row, its value, and how it rises with each column.
    pub(super) basics: Vec<usize>,
    pub(super) values: Vec<f64>,
    pub(super) rates: Vec<f64>,
    /// The changes that stand in columns, at 1.
    pub(super) at_one: u64,
    /// The least cost with shares, as far as it is known.
    pub(super) cost: f64,
    line: Vec<f64>,
    tried: Vec<(f64, usize)>,
}

impl Tableau {
    /// Everything is out, and every surplus is basic.
    pub(super) fn new(problem: &Problem) -> Self {
        let count = problem.costs.len();
        Self {
            columns: (0..count).collect(),
            ways: vec![1.0; count],
            prices: problem.costs.iter().map(|cost| *cost as f64).collect(),
            basics: (SURPLUS..).take(problem.rows.len()).collect(),
            values: problem.rows.iter().map(|row| -(row.need as f64)).collect(),
            rates: problem.effects().collect(),
            ..Self::default()
        }
    }

    /// Takes over another one, without the columns of what is settled.
    pub(super) fn take_over(&mut self, other: &Tableau, settled: &Settled) {
        self.columns.clear();
        self.prices.clear();
        self.ways.clear();
        self.rates.clear();
        self.tried.clear();
        self.basics.clone_from(&other.basics);
        self.values.clone_from(&other.values);
        (self.at_one, self.cost) = (other.at_one, other.cost);
        let fixed = settled.out | settled.chosen;
        for (column, who) in other.columns.iter().enumerate() {
            let is_settled = *who < SURPLUS && fixed & (1 << *who) != 0;
            let stands_there = is_settled && (settled.chosen ^ other.at_one) & (1 << *who) == 0;
            if stands_there {
                self.at_one &= !(1 << *who);
            } else {
                self.columns.push(*who);
                self.prices.push(other.prices[column]);
                self.ways.push(other.ways[column]);
                self.tried.push((0.0, column));
            }
        }
        if !other.columns.is_empty() {
            for row in other.rates.chunks_exact(other.columns.len()) {
                self.rates.extend(self.tried.iter().map(|(_, column)| row[*column]));
            }
        }
    }

    /// Puts what is settled where it belongs, if it stands in a column.
    pub(super) fn settle(&mut self, settled: &Settled) {
        for column in 0..self.columns.len() {
            let who = self.columns[column];
            if who >= SURPLUS {
                continue;
            }
            let bit = 1 << who;
            if self.at_one & bit == 0 && settled.chosen & bit != 0 || self.at_one & bit != 0 && settled.out & bit != 0 {
                self.flip(column);
            }
            if (settled.chosen | settled.out) & bit != 0 {
                self.ways[column] = 0.0;
            }
        }
    }

    /// A change in a column goes to its other end.
    fn flip(&mut self, column: usize) {
        let bit = 1 << self.columns[column];
        let by = if self.at_one & bit == 0 { 1.0 } else { -1.0 };
        self.at_one ^= bit;
        self.ways[column] = -by;
        self.shift(column, by);
    }

    fn shift(&mut self, column: usize, by: f64) {
        self.cost += self.prices[column] * by;
        for (value, row) in self.values.iter_mut().zip(self.rates.chunks_exact(self.columns.len().max(1))) {
            *value += row[column] * by;
        }
    }

    /// Lowers what is missing until nothing is, or the cost is above the limit.
    pub(super) fn solve(&mut self, settled: &Settled, limit: f64) -> Outcome {
        let most_pivots = 50 + 4 * (self.columns.len() + self.basics.len());
        for _ in 0..most_pivots {
            if self.cost > limit {
                return Outcome::Dear;
            }
            let Some((row, is_below, missing)) = self.worst(settled) else { return Outcome::Ended };
            let Some(column) = self.entering(row, is_below, missing) else {
                return Outcome::Stuck { row, is_below };
            };
            self.pivot(row, column, settled, is_below);
        }
        Outcome::Ended
    }

    /// The basic that is farthest outside of its ends.
    fn worst(&self, settled: &Settled) -> Option<(usize, bool, f64)> {
        let mut worst = None;
        let mut most = FEASIBLE;
        for (row, (who, value)) in self.basics.iter().zip(&self.values).enumerate() {
            let (low, high) = ends(*who, settled);
            if low - value > most {
                most = low - value;
                worst = Some((row, true, most));
            } else if value - high > most {
                most = value - high;
                worst = Some((row, false, most));
            }
        }
        worst
    }

    /// The column whose price allows the least rise of the cost; those before it that do not make up for what is
    /// missing go to their other end.
    fn entering(&mut self, row: usize, is_below: bool, missing: f64) -> Option<usize> {
        self.candidates(row, is_below);
        let mut tried = std::mem::take(&mut self.tried);
        let mut left = missing;
        let mut found = None;
        while let Some(at) = least(&tried) {
            let (_, column) = tried.swap_remove(at);
            let gives = self.rates[row * self.columns.len() + column].abs();
            if self.columns[column] >= SURPLUS || gives >= left || tried.is_empty() && gives + FEASIBLE >= left {
                found = Some(column);
                break;
            }
            left -= gives;
            self.flip(column);
        }
        self.tried = tried;
        found
    }

    /// The columns that can bring a row back, by how fast the cost rises.
    fn candidates(&mut self, row: usize, is_below: bool) {
        self.tried.clear();
        let sign = if is_below { 1.0 } else { -1.0 };
        let rates = &self.rates[row * self.columns.len()..][..self.columns.len()];
        for (column, ((rate, way), price)) in rates.iter().zip(&self.ways).zip(&self.prices).enumerate() {
            let gives = sign * way * rate;
            if gives > LEAST_PIVOT {
                self.tried.push((price.abs() / gives, column));
            }
        }
    }

    /// The column becomes basic in the row, whose basic goes to the end that it was outside of.
    fn pivot(&mut self, row: usize, column: usize, settled: &Settled, is_below: bool) {
        let width = self.columns.len();
        let (leaves, enters) = (self.basics[row], self.columns[column]);
        let (low, high) = ends(leaves, settled);
        let goal = if is_below { low } else { high };
        let is_settled = high - low < 0.5;
        let rate = self.rates[row * width + column];
        let step = (goal - self.values[row]) / rate;
        let from = if enters < SURPLUS && self.at_one & (1 << enters) != 0 { 1.0 } else { 0.0 };
        self.shift(column, step);
        self.values[row] = from + step;
        self.swap(row, column);
        self.ways[column] = if is_settled {
            0.0
        } else if is_below {
            1.0
        } else {
            -1.0
        };
        if enters < SURPLUS {
            self.at_one &= !(1 << enters);
        }
        if leaves < SURPLUS && goal > 0.5 {
            self.at_one |= 1 << leaves;
        }
    }

    /// The arithmetic of a pivot.
    fn swap(&mut self, row: usize, column: usize) {
        let width = self.columns.len();
        let mut line = std::mem::take(&mut self.line);
        line.clear();
        let rates = &mut self.rates[row * width..][..width];
        let by = 1.0 / rates[column];
        line.extend(rates.iter().map(|rate| -rate * by));
        line[column] = by;
        rates.copy_from_slice(&line);
        for (at, rates) in self.rates.chunks_exact_mut(width).enumerate() {
            if at != row {
                replace(rates, &line, column);
            }
        }
        replace(&mut self.prices, &line, column);
        self.line = line;
        std::mem::swap(&mut self.basics[row], &mut self.columns[column]);
    }
}

fn ends(who: usize, settled: &Settled) -> (f64, f64) {
    if who >= SURPLUS {
        return (0.0, f64::INFINITY);
    }
    let bit = 1 << who;
    (f64::from(u8::from(settled.chosen & bit != 0)), f64::from(u8::from(settled.out & bit == 0)))
}

/// Where the least is; of equal ones the first.
fn least(tried: &[(f64, usize)]) -> Option<usize> {
    let mut found: Option<(usize, f64)> = None;
    for (at, (ratio, _)) in tried.iter().enumerate() {
        if found.is_none_or(|(_, least)| *ratio < least) {
            found = Some((at, *ratio));
        }
    }
    found.map(|(at, _)| at)
}

fn replace(rates: &mut [f64], line: &[f64], column: usize) {
    let rate = rates[column];
    if rate == 0.0 {
        return;
    }
    rates[column] = 0.0;
    for (rate_of, part) in rates.iter_mut().zip(line) {
        *rate_of += rate * part;
    }
}
