//! Least cost with shares of boards: the simplex method with an inverse that is kept whole.
//!
//! Rows are few (kinds, limits of boards, forks of the search), columns many and short. What comes of it guides the
//! search and decides nothing: proofs are made of its prices alone, in whole numbers (`proof.rs`).

use super::problem::{Filling, Pattern};

/// What stands outside of its end by less than this is taken to be at it.
pub(super) const FEASIBLE: f64 = 1e-9;
/// No pivot on less than this.
const LEAST_PIVOT: f64 = 1e-8;
/// The inverse is made anew after so many pivots, or as many as there are rows.
const FRESH: usize = 64;
/// What rows have beyond their goals is numbered from here on; below are columns.
pub(super) const SURPLUS: usize = usize::MAX / 2;

/// Where a sum is to come to.
#[derive(Clone, Copy, Debug)]
pub(super) struct Row {
    pub(super) goal: i64,
    /// At least the goal, or at most.
    pub(super) is_least: bool,
}

/// A pattern of one kind of board, or a piece that is missing.
#[derive(Clone, Debug)]
pub(super) struct Column {
    pub(super) cost: i64,
    /// What it adds to which rows, by row.
    pub(super) entries: Filling,
    pub(super) pattern: Option<Pattern>,
}

/// What the dual simplex method came to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Outcome {
    Ended,
    /// More than the limit, or nearly so.
    Dear,
    /// Nothing is enough, so it seems; prices show by which rows.
    Stuck,
    /// It did not get anywhere.
    Lost,
}

#[derive(Default)]
pub(super) struct Lp {
    pub(super) rows: Vec<Row>,
    pub(super) columns: Vec<Column>,
    /// Which column or surplus stands in each row, and its value.
    pub(super) basics: Vec<usize>,
    pub(super) values: Vec<f64>,
    /// What a row more costs.
    pub(super) prices: Vec<f64>,
    inverse: Vec<f64>,
    rates: Vec<f64>,
    reduced: Vec<f64>,
    line: Vec<f64>,
    pivots: usize,
    /// The largest cost.
    scale: f64,
    /// How many numbers were looked at, ever.
    pub(super) work: u64,
}

impl Lp {
    /// Begins with columns in the first rows and what the others have beyond their goals in those.
    pub(super) fn new(rows: Vec<Row>, columns: Vec<Column>, basics: Vec<usize>) -> Self {
        let scale = columns.iter().fold(1.0, |most: f64, column| most.max(column.cost as f64));
        let mut lp = Self { rows, columns, basics, scale, ..Self::default() };
        lp.refresh();
        lp
    }

    pub(super) fn push(&mut self, column: Column) {
        self.scale = self.scale.max(column.cost as f64);
        self.columns.push(column);
    }

    pub(super) fn cost(&self) -> f64 {
        self.basics.iter().zip(&self.values).map(|(who, value)| self.cost_of(*who) * value).sum()
    }

    /// The columns of which there is some, with how much.
    pub(super) fn shares(&self) -> impl Iterator<Item = (&Column, f64)> {
        let basics = self.basics.iter().zip(&self.values);
        basics.filter_map(|(who, value)| self.columns.get(*who).map(|column| (column, *value)))
    }

    fn cost_of(&self, who: usize) -> f64 {
        self.columns.get(who).map_or(0.0, |column| column.cost as f64)
    }

    fn surplus_sign(&self, row: usize) -> f64 {
        if self.rows[row].is_least { -1.0 } else { 1.0 }
    }

    /// The inverse of what stands in the rows, by elimination; whether there is one.
    pub(super) fn refresh(&mut self) -> bool {
        let size = self.rows.len();
        let width = 2 * size;
        let mut whole = vec![0.0; size * width];
        for (at, who) in self.basics.iter().enumerate() {
            match self.columns.get(*who) {
                Some(column) => column.entries.iter().for_each(|(row, by)| whole[row * width + at] = *by as f64),
                None => whole[(who - SURPLUS) * width + at] = self.surplus_sign(who - SURPLUS),
            }
        }
        (0..size).for_each(|row| whole[row * width + size + row] = 1.0);
        for at in 0..size {
            let Some(from) = largest(&whole, width, at, size) else { return false };
            (0..width).for_each(|column| whole.swap(at * width + column, from * width + column));
            let by = 1.0 / whole[at * width + at];
            whole[at * width..][..width].iter_mut().for_each(|number| *number *= by);
            self.line.clear();
            self.line.extend_from_slice(&whole[at * width..][..width]);
            for row in 0..size {
                let by = whole[row * width + at];
                if row != at && by != 0.0 {
                    take_off(&mut whole[row * width + at..][..width - at], &self.line[at..], by);
                }
            }
        }
        self.inverse.clear();
        self.inverse.extend(whole.chunks_exact(width.max(1)).flat_map(|row| row[size..].iter().copied()));
        self.values.clear();
        for row in self.inverse.chunks_exact(size.max(1)) {
            self.values.push(row.iter().zip(&self.rows).map(|(by, row)| by * row.goal as f64).sum());
        }
        self.pivots = 0;
        self.work += (size * size * size) as u64;
        true
    }

    pub(super) fn price(&mut self) {
        let size = self.rows.len();
        self.prices.clear();
        self.prices.resize(size, 0.0);
        for (at, who) in self.basics.iter().enumerate() {
            let cost = self.cost_of(*who);
            if cost != 0.0 {
                take_off(&mut self.prices, &self.inverse[at * size..][..size], -cost);
            }
        }
        self.work += (size * size) as u64;
    }

    fn reduced_cost(&self, column: &Column) -> f64 {
        column.entries.iter().fold(column.cost as f64, |left, (row, by)| left - self.prices[*row] * *by as f64)
    }

    fn rates_of(&mut self, who: usize) {
        let size = self.rows.len().max(1);
        self.rates.clear();
        if let Some(column) = self.columns.get(who) {
            let rate = |row: &[f64]| column.entries.iter().map(|(at, by)| row[*at] * *by as f64).sum::<f64>();
            self.rates.extend(self.inverse.chunks_exact(size).map(rate));
        } else {
            let sign = self.surplus_sign(who - SURPLUS);
            self.rates.extend(self.inverse.chunks_exact(size).map(|row| row[who - SURPLUS] * sign));
        }
    }

    /// One way to lower the cost, if the columns have one; from values that are not below 0. Whether there was.
    pub(super) fn lower(&mut self) -> bool {
        self.price();
        let mut best = (-FEASIBLE * self.scale, None);
        let surpluses = self.prices.iter().enumerate();
        for (who, reduced) in surpluses.map(|(row, price)| (SURPLUS + row, -self.surplus_sign(row) * price)) {
            if reduced < best.0 {
                best = (reduced, Some(who));
            }
        }
        for (who, column) in self.columns.iter().enumerate() {
            let reduced = self.reduced_cost(column);
            if reduced < best.0 {
                best = (reduced, Some(who));
            }
        }
        self.work += 4 * self.columns.len() as u64;
        let Some(who) = best.1 else { return false };
        self.rates_of(who);
        let mut leaving: Option<(usize, f64)> = None;
        for (row, (rate, value)) in self.rates.iter().zip(&self.values).enumerate() {
            if *rate > LEAST_PIVOT {
                let ratio = value.max(0.0) / rate;
                let is_better = leaving.is_none_or(|(known, least)| {
                    ratio < least - FEASIBLE || ratio <= least + FEASIBLE && *rate > self.rates[known]
                });
                if is_better {
                    leaving = Some((row, ratio));
                }
            }
        }
        let Some((row, _)) = leaving else { return false };
        self.pivot(row, who);
        true
    }

    /// From prices at which nothing is too cheap, raises the cost until nothing is below 0 or the limit is passed.
    pub(super) fn raise(&mut self, limit: f64) -> Outcome {
        self.price();
        let mut reduced = std::mem::take(&mut self.reduced);
        reduced.clear();
        reduced.extend(self.columns.iter().map(|column| self.reduced_cost(column)));
        self.work += 4 * self.columns.len() as u64;
        let outcome = self.raise_by(limit, &mut reduced);
        self.reduced = reduced;
        outcome
    }

    fn raise_by(&mut self, limit: f64, reduced: &mut [f64]) -> Outcome {
        for _ in 0..50 + 6 * self.rows.len() {
            if self.cost() > limit {
                return Outcome::Dear;
            }
            let worst = self
                .values
                .iter()
                .enumerate()
                .fold((0, -FEASIBLE), |worst, (row, value)| if *value < worst.1 { (row, *value) } else { worst });
            if worst.1 >= -FEASIBLE {
                return Outcome::Ended;
            }
            let Some((who, ratio)) = self.entering(worst.0, reduced) else {
                return self.stuck(worst.0);
            };
            let line = std::mem::take(&mut self.line);
            for (reduced, by) in reduced.iter_mut().zip(&line) {
                *reduced += ratio * by;
            }
            self.line = line;
            let leaves = self.basics[worst.0];
            self.rates_of(who);
            if !self.pivot(worst.0, who) {
                return Outcome::Lost;
            }
            if let Some(reduced) = reduced.get_mut(who) {
                *reduced = 0.0;
            }
            if let Some(reduced) = reduced.get_mut(leaves) {
                *reduced = ratio;
            }
            self.price();
        }
        Outcome::Lost
    }

    /// What may come in for the basic of a row that is below 0, with what the cost rises by for each of it. Leaves what
    /// each column adds to that row.
    fn entering(&mut self, row: usize, reduced: &[f64]) -> Option<(usize, f64)> {
        let size = self.rows.len();
        let inverse = &self.inverse[row * size..][..size];
        self.line.clear();
        let rate = |column: &Column| column.entries.iter().map(|(at, by)| inverse[*at] * *by as f64).sum::<f64>();
        self.line.extend(self.columns.iter().map(rate));
        self.work += 4 * self.columns.len() as u64;
        let columns = self.line.iter().zip(reduced).enumerate().map(|(who, (rate, reduced))| (who, *rate, *reduced));
        let surpluses = inverse.iter().zip(&self.prices).enumerate().map(|(row, (by, price))| {
            let sign = self.surplus_sign(row);
            (SURPLUS + row, by * sign, -sign * price)
        });
        let mut best: Option<(usize, f64, f64)> = None;
        for (who, rate, reduced) in columns.chain(surpluses) {
            if rate < -LEAST_PIVOT {
                let ratio = reduced.max(0.0) / -rate;
                let slack = FEASIBLE * self.scale;
                if best.is_none_or(|(_, least, by)| ratio < least - slack || ratio <= least + slack && rate < by) {
                    best = Some((who, ratio, rate));
                }
            }
        }
        best.map(|(who, ratio, _)| (who, ratio))
    }

    /// Nothing brings a row back: leaves its line as prices, the largest of them 1.
    fn stuck(&mut self, row: usize) -> Outcome {
        let size = self.rows.len();
        let line = &self.inverse[row * size..][..size];
        let most = line.iter().fold(LEAST_PIVOT, |most, part| most.max(part.abs()));
        self.prices.clear();
        self.prices.extend(line.iter().map(|part| -part / most));
        Outcome::Stuck
    }

    /// A column, whose rates are known, comes in for the basic of a row; whether that went well.
    fn pivot(&mut self, row: usize, who: usize) -> bool {
        let size = self.rows.len();
        self.basics[row] = who;
        self.pivots += 1;
        if self.pivots >= FRESH.max(size) {
            return self.refresh();
        }
        let by = 1.0 / self.rates[row];
        self.line.clear();
        self.line.extend(self.inverse[row * size..][..size].iter().map(|number| number * by));
        let value = self.values[row] * by;
        for (at, (rate, value_of)) in self.rates.iter().zip(&mut self.values).enumerate() {
            let line = &mut self.inverse[at * size..][..size];
            if at == row {
                line.copy_from_slice(&self.line);
                *value_of = value;
            } else if *rate != 0.0 {
                take_off(line, &self.line, *rate);
                *value_of -= rate * value;
            }
        }
        self.work += (size * size) as u64;
        true
    }
}

/// The row from `at` on that has the most in that column.
fn largest(whole: &[f64], width: usize, at: usize, size: usize) -> Option<usize> {
    let mut found = None;
    let mut most = LEAST_PIVOT;
    for row in at..size {
        let number = whole[row * width + at].abs();
        if number > most {
            (found, most) = (Some(row), number);
        }
    }
    found
}

fn take_off(numbers: &mut [f64], line: &[f64], by: f64) {
    for (number, part) in numbers.iter_mut().zip(line) {
        *number -= by * part;
    }
}
