//! What nothing can beat, proven, whatever the numbers it is made of.
//!
//! Any multipliers of the rows that are not below zero give a bound (Lagrange): what is good costs at least
//! `sum(multiplier * need)` and, for each change where that is below zero, its reduced cost, which is its cost less
//! `sum(multiplier * effect)`. These are sums of floats. Each operation is wrong by one part in 2^53 at most, and there
//! are some hundreds on each way, so that all together is wrong by far less than [`ROUNDING`] of the sum of all sizes;
//! that much is taken off. Costs are whole numbers, so what is not above the best less one cannot be better.

use super::problem::{Problem, Row, Settled, bits};

/// Above `(rows + changes) / 2^53` for a thousand of both, nine times over.
const ROUNDING: f64 = 1e-12;

/// The rows as floats, and what their parts come to in size.
pub(super) struct Bounds {
    costs: Vec<f64>,
    all_costs: f64,
    needs: Vec<f64>,
    effects: Vec<f64>,
    sizes: Vec<f64>,
    /// The reduced costs of the bound that was made last.
    pub(super) reduced: Vec<f64>,
}

impl Bounds {
    pub(super) fn new(problem: &Problem) -> Self {
        let costs: Vec<f64> = problem.costs.iter().map(|cost| *cost as f64).collect();
        let parts = |row: &Row| row.effects.iter().map(|effect| effect.abs() as f64).sum::<f64>();
        Self {
            all_costs: costs.iter().sum(),
            reduced: costs.clone(),
            costs,
            needs: problem.rows.iter().map(|row| row.need as f64).collect(),
            effects: problem.effects().collect(),
            sizes: problem.rows.iter().map(|row| parts(row) + (row.need as f64).abs()).collect(),
        }
    }

    /// What everything good costs at least that goes on from what is settled. Leaves the reduced costs behind.
    pub(super) fn cost(&mut self, multipliers: &[f64], settled: &Settled, free: u64) -> f64 {
        self.reduced.copy_from_slice(&self.costs);
        let (least, size) = self.add_up(multipliers, settled, free);
        let bound = least - (size + self.all_costs) * ROUNDING;
        if bound.is_finite() {
            return bound;
        }
        self.reduced.fill(0.0);
        0.0
    }

    /// Whether these rows, added up, show that nothing good goes on from what is settled.
    pub(super) fn is_out_of_reach(&mut self, multipliers: &[f64], settled: &Settled, free: u64) -> bool {
        self.reduced.fill(0.0);
        let (least, size) = self.add_up(multipliers, settled, free);
        least > size * ROUNDING
    }

    /// Takes the rows off the reduced costs; gives the bound, and the size of all that was added up.
    fn add_up(&mut self, multipliers: &[f64], settled: &Settled, free: u64) -> (f64, f64) {
        let (mut sum, mut size) = (0.0, 0.0);
        let rows = self.effects.chunks_exact(self.costs.len().max(1)).zip(self.needs.iter().zip(&self.sizes));
        for ((effects, (need, row_size)), multiplier) in rows.zip(multipliers) {
            if *multiplier > 0.0 {
                sum += multiplier * need;
                size += multiplier * row_size;
                for (reduced, effect) in self.reduced.iter_mut().zip(effects) {
                    *reduced -= multiplier * effect;
                }
            }
        }
        sum += bits(settled.chosen).map(|at| self.reduced[at]).sum::<f64>();
        sum += bits(free).map(|at| self.reduced[at].min(0.0)).sum::<f64>();
        (sum, size)
    }
}
