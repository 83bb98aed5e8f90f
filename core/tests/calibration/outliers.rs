//! Which stretches are left out.

use crate::{near, prior, stretch};
use kerbstead_core::road_log::calibration::{Posterior, Stretch, calibrate};

/// A log of 400 a day with a little noise, and by how much some stretches are wrong.
fn log(days: usize, wrong: &[(usize, f64)]) -> Vec<Stretch> {
    let noise = [3.0, -12.0, 9.0, 1.0, -6.0, 14.0, -2.0, -9.0, 5.0, -4.0];
    let mut stretches: Vec<Stretch> =
        noise.into_iter().cycle().take(days).map(|noise| stretch(440.0 + noise, 400.0, 1.0)).collect();
    for (at, off) in wrong {
        stretches[*at].observed += off;
    }
    stretches
}

fn of(days: usize, wrong: &[(usize, f64)]) -> Posterior {
    calibrate(&log(days, wrong), &prior(&[0.3], 20.0, 2.0)).unwrap()
}

#[test]
fn what_is_left_out_follows_the_rule() {
    // Days, what is wrong, what is left out.
    type Case<'a> = (usize, &'a [(usize, f64)], &'a [usize]);
    let cases: [Case; 8] = [
        (10, &[], &[]),
        (10, &[(4, 30.0)], &[]),
        (10, &[(4, 300.0)], &[4]),
        (10, &[(4, -1e11)], &[4]),
        // A wrong reading makes two wrong stretches, which hide one another.
        (10, &[(4, 150.0), (5, -150.0)], &[4, 5]),
        (15, &[(1, 500.0), (4, 600.0), (5, -550.0)], &[1, 4, 5]),
        // Five are needed.
        (4, &[(2, 1e6)], &[]),
        (5, &[(2, 1e6)], &[2]),
    ];
    for (days, wrong, out) in cases {
        let posterior = of(days, wrong);
        assert_eq!(posterior.outliers, out, "{days} {wrong:?}");
        assert_eq!(posterior.used, days - out.len());
    }
    // At most a fifth.
    for days in 5..60 {
        let wrong: Vec<(usize, f64)> = (0..days / 2).map(|at| (2 * at, 300.0 * at as f64)).collect();
        assert!(of(days, &wrong).outliers.len() <= days / 5);
    }
}

#[test]
fn what_is_left_out_is_as_if_it_had_never_been() {
    let with = of(20, &[(7, 4_000.0), (13, -1e9)]);
    let mut stretches = log(20, &[]);
    stretches.remove(13);
    stretches.remove(7);
    let without = calibrate(&stretches, &prior(&[0.3], 20.0, 2.0)).unwrap();
    assert_eq!((&with.means, &with.sds, with.noise_sd), (&without.means, &without.sds, without.noise_sd));
    assert_eq!(with.interval(0, 80.0), without.interval(0, 80.0));
}

/// By hand, with the factor as good as certain: the noise is the guess of 20, which counts as 2, with the squares of the others.
#[test]
fn a_residual_is_how_far_a_stretch_is_from_what_the_others_say() {
    let stretches = [410.0, 380.0, 400.0].map(|observed| stretch(observed, 400.0, 1.0));
    let posterior = calibrate(&stretches, &prior(&[0.0], 20.0, 2.0)).unwrap();
    let by_hand = |off: f64, others: f64| off / libm::sqrt((2.0 * 400.0 + others) / 4.0);
    let expected = [by_hand(10.0, 400.0), by_hand(-20.0, 100.0), 0.0];
    for (found, expected) in posterior.residuals.iter().zip(expected) {
        near(found.unwrap(), expected, 1e-9);
    }
    let far = of(10, &[(4, 300.0)]).residuals;
    assert!(far[4].unwrap() > 15.0 && far[3].unwrap().abs() < 2.0);
}

/// The order of stretches is of no account, but to rounding.
#[test]
fn the_order_of_stretches_changes_nothing() {
    let mut stretches = log(25, &[(4, 300.0), (5, -300.0), (20, 90.0)]);
    let found = calibrate(&stretches, &prior(&[0.3], 20.0, 2.0)).unwrap();
    stretches.reverse();
    let turned = calibrate(&stretches, &prior(&[0.3], 20.0, 2.0)).unwrap();
    let places: Vec<usize> = turned.outliers.iter().rev().map(|at| 24 - at).collect();
    assert_eq!(found.outliers, places);
    near(found.means[0], turned.means[0], 1e-13);
}
