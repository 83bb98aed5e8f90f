//! Days one after another that have the clearness of a month: dark ones, bright ones, in runs.
//!
//! What is known of a month is its mean. How often days are how dark around it follows from the mean alone, to a good
//! approximation (Bendt, Collares-Pereira and Rabl 1981): the density of days rises or falls exponentially between the
//! darkest day and the clearest. The days of a series are the middles of as many equal parts of that distribution, so that
//! every series of a month has the same days and the month's mean; what the seed decides is their order (Knight, Klein and
//! Duffie 1991; from memory). A day resembles the one before: the order is that of a normal process with the autocorrelation
//! [`NEXT_DAY`]. A month of another year has another mean; that is to be asked apart.
//!
//! ```
//! use kerbstead_core::sun::series::days_of_clearness;
//! let days = days_of_clearness(0.4, 0.72, 30, 7);
//! let mean = days.iter().sum::<f64>() / 30.0;
//! assert!((mean - 0.4).abs() < 0.005);
//! assert_eq!(days, days_of_clearness(0.4, 0.72, 30, 7));
//! assert_ne!(days, days_of_clearness(0.4, 0.72, 30, 8));
//! ```

use super::constants::{DARKEST_DAY, NEXT_DAY};
use super::position::sound;
use crate::draws::Chance;
use crate::order::sorted;
use std::f64::consts::TAU;

/// So many days (at most 366) whose clearness has that mean, in an order that the seed decides. `clearest` is the clearness
/// of a day without clouds; a mean that is no less makes every day such a one. All between 0 and 1.
pub fn days_of_clearness(mean: f64, clearest: f64, count: usize, seed: u64) -> Vec<f64> {
    let count = count.min(366);
    let month = Month::new(mean, clearest);
    // Numbers above 0 have the order of their bits, and normal ones lie between -9 and 9.
    let order = sorted(walk(count, seed).into_iter().map(|level| (level + 16.0).to_bits()));
    let mut days = vec![month.clearest; count];
    for (rank, (_, day)) in order.into_iter().enumerate() {
        if let Some(place) = days.get_mut(day) {
            *place = month.day((rank as f64 + 0.5) / count as f64);
        }
    }
    days
}

/// How the clearness of a month's days is spread.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Month {
    darkest: f64,
    clearest: f64,
    /// How steep the density is: negative when dark days are more frequent.
    slope: f64,
}

impl Month {
    /// The days around a mean, none clearer than `clearest`.
    pub fn new(mean: f64, clearest: f64) -> Self {
        let clearest = sound(clearest, 0.0, 1.0);
        let darkest = DARKEST_DAY.min(clearest);
        let width = clearest - darkest;
        let place = (sound(mean, 0.0, 1.0) - darkest) / width.max(1e-9);
        // Nearer to an end than this, all days are there.
        let (mut low, mut high) = (-200.0, 200.0);
        for _ in 0..60 {
            let middle = f64::midpoint(low, high);
            if mean_place(middle) < place { low = middle } else { high = middle }
        }
        Self { darkest, clearest, slope: f64::midpoint(low, high) }
    }

    /// The clearness that a share (0 to 1) of the days does not exceed: pass a number by chance for a day by chance. Source:
    /// Bendt, Collares-Pereira and Rabl 1981, solved for the clearness.
    pub fn day(&self, share: f64) -> f64 {
        let share = sound(share, 0.0, 1.0);
        let place =
            if self.slope.abs() < 1e-6 { share } else { libm::log1p(share * libm::expm1(self.slope)) / self.slope };
        (self.darkest + (self.clearest - self.darkest) * place).clamp(self.darkest, self.clearest)
    }
}

/// Where between the darkest (0) and the clearest day (1) the mean lies for a slope: `1 / (1 - e^-s) - 1 / s`.
fn mean_place(slope: f64) -> f64 {
    if slope.abs() < 1e-6 { 0.5 + slope / 12.0 } else { -1.0 / libm::expm1(-slope) - 1.0 / slope }
}

/// A normal process whose neighbours resemble each other.
fn walk(count: usize, seed: u64) -> Vec<f64> {
    let mut chance = Chance::new(seed);
    let news = libm::sqrt(1.0 - NEXT_DAY * NEXT_DAY);
    let mut level = normal(&mut chance);
    let mut levels = Vec::with_capacity(count);
    for _ in 0..count {
        levels.push(level);
        level = NEXT_DAY * level + news * normal(&mut chance);
    }
    levels
}

/// A normal number by chance. Source: Box and Muller 1958 (from memory).
fn normal(chance: &mut Chance) -> f64 {
    let radius = libm::sqrt(-2.0 * libm::log(chance.share()));
    radius * libm::cos(TAU * chance.share())
}
