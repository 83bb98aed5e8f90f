//! What a tableau tells: shares, multipliers, and which changes make a difference.

use super::problem::{Settled, bits};
use super::tableau::{FEASIBLE, SURPLUS, Tableau};

/// Stands for a basic that cannot go there at all.
const MOST_SLOPE: f64 = 1e100;

impl Tableau {
    /// The share of each change.
    pub(super) fn shares(&self, settled: &Settled) -> [f64; 64] {
        let mut shares = [0.0; 64];
        for at in bits(settled.chosen | self.at_one) {
            shares[at] = 1.0;
        }
        for (who, value) in self.basics.iter().zip(&self.values) {
            if *who < SURPLUS {
                shares[*who] = *value;
            }
        }
        shares
    }

    /// What a unit of each row's need costs.
    pub(super) fn multipliers(&self, into: &mut [f64]) {
        into.fill(0.0);
        for (who, price) in self.columns.iter().zip(&self.prices) {
            if *who >= SURPLUS {
                into[*who - SURPLUS] = price.max(0.0);
            }
        }
    }

    /// How rows are to be added up so that their sum shows why nothing can be done about this one.
    pub(super) fn grounds(&self, row: usize, is_below: bool, into: &mut [f64]) {
        into.fill(0.0);
        let rates = &self.rates[row * self.columns.len()..][..self.columns.len()];
        for (who, rate) in self.columns.iter().zip(rates) {
            if *who >= SURPLUS {
                into[*who - SURPLUS] = if is_below { -rate } else { *rate }.max(0.0);
            }
        }
        if self.basics[row] >= SURPLUS {
            into[self.basics[row] - SURPLUS] = 1.0;
        }
    }

    /// For each change with a share: which, its share, and by how much the cost rises at least when it is left out and
    /// when it is chosen, as the first pivot tells (Driebeek, "An algorithm for the solution of mixed integer
    /// programming problems", 1966, from memory).
    pub(super) fn forks(&self) -> impl Iterator<Item = Fork> {
        let shared = self.basics.iter().zip(&self.values).enumerate();
        let shared = shared.filter(|(_, (who, share))| **who < SURPLUS && (FEASIBLE..=1.0 - FEASIBLE).contains(*share));
        shared.map(|(row, (who, share))| {
            let [up, down] = self.slopes(row);
            Fork { change: *who, out: down * share, chosen: up * (1.0 - share) }
        })
    }

    /// How fast the cost rises at first when the basic of a row goes up, and down.
    fn slopes(&self, row: usize) -> [f64; 2] {
        let rates = &self.rates[row * self.columns.len()..][..self.columns.len()];
        let (mut up, mut down) = (MOST_SLOPE, MOST_SLOPE);
        for ((rate, way), price) in rates.iter().zip(&self.ways).zip(&self.prices) {
            let gives = way * rate;
            let slope = price.abs() / gives.abs();
            let (of_up, of_down) = if gives > 0.0 { (slope, MOST_SLOPE) } else { (MOST_SLOPE, slope) };
            up = if of_up < up { of_up } else { up };
            down = if of_down < down { of_down } else { down };
        }
        [up, down]
    }
}

/// What it costs at least to settle a change, beyond the cost with shares.
#[derive(Clone, Copy, Debug)]
pub(super) struct Fork {
    pub(super) change: usize,
    pub(super) out: f64,
    pub(super) chosen: f64,
}
