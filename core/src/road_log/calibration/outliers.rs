//! Which stretches are left out.
//!
//! The rule: suspects are the stretches whose studentised deleted residual is beyond 2, the farthest first, at most a fifth of
//! all. Each is held against what those predict that are left when it and all suspects before it are gone. The last suspect
//! that is not within the middle 99.9 % is left out, and so are those before it. This is repeated with what is left. Of
//! fewer than five stretches none is left out.
//!
//! That it is the last and not the first is Rosner's way, "Percentage points for a generalized ESD many-outlier procedure",
//! 1983 (from memory): one wrong reading makes two wrong stretches, which hide one another as long as either is there.

use super::constants::{LEAST_FOR_OUTLIERS, MOST_ROUNDS, ONE_OUT_OF, OUTLIER_SHARE, SUSPECT};
use super::evidence::{Evidence, Sums};
use super::noise::{Place, middle, places};
use super::rows::Row;
use crate::order;
use crate::statistics::normal_share_below;

/// For each row, whether it is left out.
pub(super) fn among(rows: &[Row], weight: f64) -> Vec<bool> {
    let mut is_out = vec![false; rows.len()];
    if rows.len() < LEAST_FOR_OUTLIERS {
        return is_out;
    }
    let mut room = rows.len() / ONE_OUT_OF;
    for _ in 0..MOST_ROUNDS {
        let suspects = suspects(rows, &is_out, weight, room);
        let found = last_beyond(rows, &is_out, &suspects, weight);
        for at in suspects.iter().take(found) {
            if let Some(is_out) = is_out.get_mut(*at) {
                *is_out = true;
            }
        }
        room -= found.min(room);
        if found == 0 || room == 0 {
            break;
        }
    }
    is_out
}

/// The rows to be looked at, the farthest off first.
fn suspects(rows: &[Row], is_out: &[bool], weight: f64, room: usize) -> Vec<usize> {
    let kept =
        || rows.iter().zip(is_out).enumerate().filter(|(_, (_, is_out))| !**is_out).map(|(at, (row, _))| (at, row));
    let evidence = Evidence::of(kept().map(|(_, row)| row));
    let deleted = Deleted::of(&evidence, weight);
    let mut off = Vec::new();
    for (at, row) in kept() {
        let residual = deleted.residual(row).abs();
        if residual > SUSPECT {
            off.push((at, residual));
        }
    }
    // Numbers above 0 are in the order of their bits; turned round, the greatest is first.
    let sorted = order::sorted(off.iter().map(|(_, residual)| !residual.to_bits()));
    sorted.into_iter().take(room).filter_map(|(_, at)| off.get(at).map(|(at, _)| *at)).collect()
}

/// How many of the suspects are left out. What is left without the first of them is summed from the last to the first, so
/// that nothing great is ever taken away from a sum again.
fn last_beyond(rows: &[Row], is_out: &[bool], suspects: &[usize], weight: f64) -> usize {
    let mut is_in: Vec<bool> = is_out.iter().map(|is_out| !is_out).collect();
    for at in suspects {
        if let Some(is_in) = is_in.get_mut(*at) {
            *is_in = false;
        }
    }
    let mut others = Sums::default();
    for (row, _) in rows.iter().zip(&is_in).filter(|(_, is_in)| **is_in) {
        others.add(row);
    }
    for (before, at) in suspects.iter().enumerate().rev() {
        let Some(row) = rows.get(*at) else { continue };
        if is_beyond(row, &Evidence::of_sums(&others), weight) {
            return before + 1;
        }
        others.add(row);
    }
    0
}

fn is_beyond(row: &Row, others: &Evidence, weight: f64) -> bool {
    let below = share_below(row, others, &places(others, weight));
    below.min(1.0 - below) < (1.0 - OUTLIER_SHARE) / 2.0
}

/// The share of what others predict that is below a row: their posterior predictive.
fn share_below(row: &Row, others: &Evidence, places: &[Place]) -> f64 {
    let share = |place: &Place| {
        let (off, leverage) = others.off(row, place.variance);
        place.weight * normal_share_below(off / libm::sqrt(place.variance * (1.0 + leverage)))
    };
    places.iter().map(share).sum()
}

/// Studentised deleted residuals of rows, all from one sum: how far each is from what the others say of it. Exact for the
/// conjugate prior that goes with the likely noise (Bayesian Data Analysis, 14.2 and 14.8; Cook and Weisberg, "Residuals and
/// Influence in Regression", 2.2; both from memory).
pub(super) struct Deleted<'a> {
    evidence: &'a Evidence,
    variance: f64,
    squares: f64,
    degrees: f64,
}

impl<'a> Deleted<'a> {
    pub fn of(evidence: &'a Evidence, weight: f64) -> Self {
        let variance = middle(&places(evidence, weight));
        let squares = weight + evidence.left_with_prior(variance);
        Self { evidence, variance, squares, degrees: weight + evidence.count - 1.0 }
    }

    /// Of a row that is part of the evidence.
    pub fn residual(&self, row: &Row) -> f64 {
        let (off, leverage) = self.evidence.off(row, self.variance);
        let unit = off / libm::sqrt((1.0 - leverage).max(1e-12));
        let others = (self.squares - unit * unit).max(1e-12 * self.squares);
        unit * libm::sqrt(self.degrees / others)
    }

    /// Of a row that is not.
    pub fn residual_of_other(&self, row: &Row) -> f64 {
        let (off, leverage) = self.evidence.off(row, self.variance);
        off / libm::sqrt(self.variance * (1.0 + leverage))
    }
}
