//! Statistics against printed tables and closed forms, and strange numbers. What `scipy` has is in
//! `tests/tests/statistics_reference.rs`.
#![allow(clippy::unwrap_used, clippy::float_cmp, reason = "a test stops at what it did not expect")]

use kerbstead_core::statistics::{
    median, median_absolute_deviation, normal_density, normal_quantile, normal_share_below, percentile,
    rank_correlation, ranks, t_quantile, t_share_below,
};

const STRANGE: [f64; 12] =
    [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 0.0, -0.0, 1e-320, 1e308, -1e308, f64::MAX, 1.0, -1.0, 0.5];

/// Source: the usual printed table of Student's t (from memory), two-sided 95 % and 99.9 %.
#[test]
fn quantiles_of_t_are_those_of_the_printed_table() {
    let table = [(1.0, 12.706, 636.62), (2.0, 4.303, 31.599), (5.0, 2.571, 6.869), (10.0, 2.228, 4.587)];
    let more = [(30.0, 2.042, 3.646), (120.0, 1.980, 3.373), (f64::INFINITY, 1.960, 3.291)];
    for (degrees, wide, wider) in table.into_iter().chain(more) {
        assert!((t_quantile(0.975, degrees) - wide).abs() < 6e-4, "{degrees}");
        assert!((t_quantile(0.9995, degrees) / wider - 1.0).abs() < 2e-4, "{degrees}");
    }
}

/// Closed forms: with one degree `tan(pi (share - 1/2))`, with two `(2 share - 1) / sqrt(2 share (1 - share))`.
#[test]
fn quantiles_of_t_with_one_and_two_degrees_have_their_closed_forms() {
    for step in 1..1_000 {
        let share = f64::from(step) / 1_000.0;
        let one = libm::tan(std::f64::consts::PI * (share - 0.5));
        let two = (2.0 * share - 1.0) / libm::sqrt(2.0 * share * (1.0 - share));
        assert!((t_quantile(share, 1.0) - one).abs() <= 1e-11 * one.abs().max(1.0), "{share}");
        assert!((t_quantile(share, 2.0) - two).abs() <= 1e-11 * two.abs().max(1.0), "{share}");
    }
}

#[test]
fn a_quantile_is_where_its_share_is_below() {
    for degrees in [0.05, 0.3, 1.0, 2.7, 14.0, 333.3, 999.9, 1_000.0, 4e5, 1e12, f64::INFINITY] {
        for share in [0.001, 0.02, 0.3, 0.499_999, 0.5, 0.500_001, 0.75, 0.99, 0.999] {
            let found = t_share_below(t_quantile(share, degrees), degrees);
            assert!((found - share).abs() < 1e-11, "{degrees} {share} {found}");
        }
    }
    assert!((t_share_below(t_quantile(1e-9, 0.3), 0.3) / 1e-9 - 1.0).abs() < 1e-11);
    for share in [1e-90, 1e-12, 0.025, 0.5, 0.84, 0.999_999] {
        assert!((normal_share_below(normal_quantile(share)) / share - 1.0).abs() < 1e-12, "{share}");
    }
}

#[test]
fn a_median_is_in_the_middle_and_deviations_are_from_it() {
    assert_eq!(median(&[4.0, 1.0, 3.0, 2.0]), 2.5);
    assert_eq!(median(&[f64::NAN, 4.0, f64::INFINITY]), 4.0);
    // By hand: median 2, off by 1, 1, 0, 0, 2, 4 and 7, of which 1 is in the middle.
    assert_eq!(median_absolute_deviation(&[1.0, 1.0, 2.0, 2.0, 4.0, 6.0, 9.0]), 1.0);
    assert_eq!((median(&[]), median_absolute_deviation(&[])), (0.0, 0.0));
}

#[test]
fn a_rank_correlation_needs_three_pairs_that_differ() {
    let up = [1.0, 2.0, 3.0];
    assert_eq!(rank_correlation(&up, &[5.0, 6.0, 70.0]), Some(1.0));
    assert_eq!(rank_correlation(&up, &[5.0, -6.0, f64::NEG_INFINITY]), Some(-1.0));
    for other in [vec![1.0; 3], vec![1.0, 2.0], vec![1.0, f64::NAN, 2.0]] {
        assert_eq!(rank_correlation(&up, &other), None);
        assert_eq!(rank_correlation(&other, &up), None);
    }
    assert_eq!(rank_correlation(&up[..2], &up[..2]), None);
    assert_eq!(ranks(&[-0.0, 0.0, f64::NAN, -1.0, f64::INFINITY]), [2.5, 2.5, 5.0, 1.0, 4.0]);
}

#[test]
fn nothing_strange_makes_anything_strange() {
    for a in STRANGE {
        for b in STRANGE {
            let shares = [t_share_below(a, b), normal_share_below(a)];
            assert!(shares.iter().all(|share| (0.0..=1.0).contains(share)), "{a} {b} {shares:?}");
            let numbers = [t_quantile(a, b), normal_quantile(a), normal_density(a), percentile(&[a, b], 30.0)];
            let more = [percentile(&STRANGE, a), median(&[a, b]), median_absolute_deviation(&[a, b, 1.0])];
            assert!(numbers.iter().chain(&more).all(|number| number.is_finite()), "{a} {b} {numbers:?} {more:?}");
        }
    }
    assert!(ranks(&STRANGE).iter().all(|rank| (1.0..=12.0).contains(rank)));
    assert!((percentile(&[-f64::MAX, f64::MAX], 75.0) / f64::MAX - 0.5).abs() < 1e-12);
}
