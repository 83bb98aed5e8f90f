//! What rows say together, and what follows of it for a given variance of the noise.
//!
//! With factors as standard deviations from their means, their prior is the unit normal. On the axes of `Σ pulls pullsᵀ`
//! they are then independent afterwards too, whatever the noise: on an axis of `size`, with the sum `along` of
//! `pull × off`, mean `along / (size + v)` and variance `v / (size + v)`. (Bayesian Data Analysis, 14.8, with the prior as
//! further rows; from memory.)

use super::eigen::{Square, eigen};
use super::rows::{Each, Row};

/// What rows say together.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Sums {
    count: f64,
    pulls: Square,
    along: Each,
    squares: f64,
}

impl Sums {
    pub fn add(&mut self, row: &Row) {
        self.count += 1.0;
        self.squares += row.off * row.off;
        for ((sums, along), pull) in self.pulls.iter_mut().zip(&mut self.along).zip(row.pulls) {
            *along += pull * row.off;
            for (sum, other) in sums.iter_mut().zip(row.pulls) {
                *sum += pull * other;
            }
        }
    }
}

/// The same on axes on which nothing depends on anything else.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Evidence {
    /// How many rows.
    pub count: f64,
    /// What they say of each axis.
    pub sizes: Each,
    /// In which direction.
    pub along: Each,
    /// The axes, as columns.
    pub axes: Square,
    /// The sum of the squares by which rows are off.
    pub squares: f64,
}

impl Evidence {
    pub fn of<'a>(rows: impl Iterator<Item = &'a Row>) -> Self {
        let mut sums = Sums::default();
        for row in rows {
            sums.add(row);
        }
        Self::of_sums(&sums)
    }

    pub fn of_sums(sums: &Sums) -> Self {
        let (sizes, axes) = eigen(sums.pulls);
        Self { count: sums.count, sizes, along: onto(&axes, &sums.along), axes, squares: sums.squares }
    }

    fn on_axes(&self) -> impl Iterator<Item = (f64, f64)> {
        self.sizes.into_iter().zip(self.along)
    }

    /// How many parameters the rows decide, as far as the prior leaves it to them.
    pub fn decided(&self, variance: f64) -> f64 {
        self.sizes.iter().map(|size| size / (size + variance)).sum()
    }

    /// The squares that are left, with those of the prior.
    pub fn left_with_prior(&self, variance: f64) -> f64 {
        let explained: f64 = self.on_axes().map(|(size, along)| along * along / (size + variance)).sum();
        (self.squares - explained).max(0.0)
    }

    /// The squares that are left.
    pub fn left(&self, variance: f64) -> f64 {
        let explained = |(size, along): (f64, f64)| {
            let share = along / (size + variance);
            share * share * (size + 2.0 * variance)
        };
        (self.squares - self.on_axes().map(explained).sum::<f64>()).max(0.0)
    }

    /// The mean and the variance on each axis.
    pub fn factors(&self, variance: f64) -> (Each, Each) {
        let (mut means, mut variances) = (Each::default(), Each::default());
        for ((mean, spread), (size, along)) in means.iter_mut().zip(&mut variances).zip(self.on_axes()) {
            *mean = along / (size + variance);
            *spread = variance / (size + variance);
        }
        (means, variances)
    }

    /// By how much a row is off from what is expected of it now, and its leverage: by how much its variance is greater for not
    /// knowing the factors, as a share of the noise's. That of a row that is part of this is below 1.
    pub fn off(&self, row: &Row, variance: f64) -> (f64, f64) {
        let (mut off, mut leverage) = (row.off, 0.0);
        for (pull, (size, along)) in onto(&self.axes, &row.pulls).into_iter().zip(self.on_axes()) {
            off -= pull * along / (size + variance);
            leverage += pull * pull / (size + variance);
        }
        (off, leverage)
    }
}

/// A vector on the axes.
fn onto(axes: &Square, vector: &Each) -> Each {
    let mut on_axes = Each::default();
    for (axis, part) in axes.iter().zip(vector) {
        for (sum, along) in on_axes.iter_mut().zip(axis) {
            *sum += along * part;
        }
    }
    on_axes
}
