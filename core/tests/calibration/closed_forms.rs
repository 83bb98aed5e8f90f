//! Where the posterior has a closed form.

use crate::{near, prior, stretch};
use kerbstead_core::road_log::calibration::{Posterior, Stretch, calibrate};
use kerbstead_core::statistics::{normal_quantile, t_quantile};

/// By hand, with the noise as good as certain at 100 a day. Prior: weight 1 / 0.5² = 4 on 1. First stretch: expected 200,
/// observed 260, weight (200 / 100)² = 4 on 1.3. Second, four days, of which 40 is known: expected 400, observed 560, so 1.3,
/// weight (400 / 200)² = 4. Together (4 × 1 + 8 × 1.3) / 12 = 1.2, with the standard deviation 1 / sqrt(12).
#[test]
fn two_stretches_come_out_as_by_hand() {
    let second = Stretch { observed: 560.0, known: 40.0, ..stretch(560.0, 400.0, 4.0) };
    let posterior = calibrate(&[stretch(260.0, 200.0, 1.0), second], &prior(&[0.5], 100.0, 1e6)).unwrap();
    near(posterior.means[0], 1.2, 1e-6);
    near(posterior.sds[0], 1.0 / libm::sqrt(12.0), 1e-6);
    near(posterior.interval(0, 95.0).unwrap().high, 1.2 + 1.959_964 / libm::sqrt(12.0), 1e-5);
    assert_eq!((posterior.used, posterior.unusable), (2, 0));
}

/// Source: Bayesian Data Analysis, 2.5 (from memory): with a known variance the mean is that of prior and data, weighted by
/// their precisions, and the precisions are added.
#[test]
fn the_more_certain_the_noise_is_the_nearer_it_is_to_the_mean_weighted_by_precision() {
    let (noise_sd, sd) = (50.0, 0.2);
    let stretches: Vec<Stretch> =
        [(430.0, 300.0, 0.8), (700.0, 620.0, 1.7), (1_250.0, 900.0, 2.5)].map(|(a, b, c)| stretch(a, b, c)).to_vec();
    let (mut precision, mut sum) = (1.0 / (sd * sd), 1.0 / (sd * sd));
    for it in &stretches {
        precision += it.expected[0] * it.expected[0] / (noise_sd * noise_sd * it.weight_days);
        sum += it.expected[0] * it.observed / (noise_sd * noise_sd * it.weight_days);
    }
    let mut before = f64::INFINITY;
    for weight in [1.0, 10.0, 100.0, 1e3, 1e4, 1e5, 1e6] {
        let posterior = calibrate(&stretches, &prior(&[sd], noise_sd, weight)).unwrap();
        let off = (posterior.means[0] - sum / precision).abs() + (posterior.sds[0] * libm::sqrt(precision) - 1.0).abs();
        assert!(off < before, "{weight}");
        assert!(off < 3.0 / weight, "{weight} {off}");
        before = off;
    }
}

/// Source: Bayesian Data Analysis, 14.2 (from memory): with nothing known of the factor it has Student's t around the best fit.
/// By hand: expected 200 twice, observed 230 and 250: fit 1.2, squares left 200. The guess of 10 counts as two, 200 more:
/// three degrees, variance 400 / 3, which the squares 80,000 make 1 / 600 of the factor.
#[test]
fn a_factor_of_which_nothing_was_known_has_students_t() {
    let stretches = [stretch(230.0, 200.0, 1.0), stretch(250.0, 200.0, 1.0)];
    let posterior = calibrate(&stretches, &prior(&[1e4], 10.0, 2.0)).unwrap();
    near(posterior.means[0], 1.2, 1e-8);
    near(posterior.degrees, 3.0, 1e-8);
    near(posterior.noise_sd, libm::sqrt(400.0 / 3.0), 1e-5);
    for percent in [10.0, 50.0, 80.0, 95.0, 99.0] {
        let interval = posterior.interval(0, percent).unwrap();
        let reach = t_quantile(0.5 + percent / 200.0, 3.0) / libm::sqrt(600.0);
        near(interval.high, 1.2 + reach, 2e-8);
        near(interval.low, 1.2 - reach, 2e-8);
    }
    // From a printed table of Student's t.
    near(posterior.interval(0, 95.0).unwrap().high, 1.2 + 3.182 / libm::sqrt(600.0), 1e-4);
}

fn check_is_prior(posterior: &Posterior, parameter: usize, sd: f64) {
    near(posterior.means[parameter], 1.0, 1e-12);
    near(posterior.sds[parameter], sd, 1e-12);
    let interval = posterior.interval(parameter, 80.0).unwrap();
    near(interval.high, 1.0 + sd * normal_quantile(0.9), 1e-12);
    near(interval.low, 1.0 - sd * normal_quantile(0.9), 1e-12);
}

#[test]
fn a_parameter_of_which_nothing_is_said_keeps_its_prior() {
    let of = |at: usize| {
        let fridge = 300.0 + 40.0 * at as f64;
        let expected = vec![fridge, 0.0, 150.0];
        Stretch { observed: 1.3 * fridge + 150.0 + at as f64, expected, known: 0.0, weight_days: 1.0 }
    };
    let stretches: Vec<Stretch> = (0..12).map(of).collect();
    let posterior = calibrate(&stretches, &prior(&[0.3, 0.25, 0.4], 20.0, 2.0)).unwrap();
    check_is_prior(&posterior, 1, 0.25);
    assert_eq!((posterior.correlation(0, 1), posterior.correlation(1, 2)), (Some(0.0), Some(0.0)));
    assert!(posterior.means[0] > 1.25 && posterior.correlation(0, 2).unwrap() < -0.5);
    let nothing = calibrate(&[], &prior(&[0.3, 0.2], 20.0, 2.0)).unwrap();
    check_is_prior(&nothing, 0, 0.3);
    check_is_prior(&nothing, 1, 0.2);
    assert_eq!((nothing.used, nothing.surprise), (0, 0.0));
    near(nothing.noise_sd, 20.0, 1e-9);
    near(nothing.degrees, 2.0, 1e-12);
}

/// What is noisier than guessed does not make less of what was thought of the factor.
#[test]
fn noise_beyond_the_guess_does_not_widen_what_was_thought_of_a_factor() {
    let stretches: Vec<Stretch> =
        [-1.0, 1.0, -1.0, 1.0, -1.0, 1.0].map(|sign| stretch(100.0 + sign * 2_000.0, 100.0, 1.0)).to_vec();
    let posterior = calibrate(&stretches, &prior(&[0.3], 20.0, 2.0)).unwrap();
    assert!(posterior.noise_sd > 1_500.0);
    assert!((0.29..0.3).contains(&posterior.sds[0]), "{}", posterior.sds[0]);
}

#[test]
fn a_unit_changes_nothing() {
    let in_wh = [(430.0, 300.0, 0.8), (700.0, 620.0, 1.7), (1_250.0, 900.0, 2.5)];
    let of = |unit: f64| {
        let stretches: Vec<Stretch> = in_wh.map(|(a, b, days)| stretch(a * unit, b * unit, days)).to_vec();
        calibrate(&stretches, &prior(&[0.3], 50.0 * unit, 2.0)).unwrap()
    };
    let (wh, half_wh, kwh) = (of(1.0), of(0.5), of(0.001));
    assert_eq!((&wh.means, &wh.sds, &wh.residuals), (&half_wh.means, &half_wh.sds, &half_wh.residuals));
    near(kwh.means[0], wh.means[0], 1e-13);
    near(kwh.noise_sd, wh.noise_sd / 1_000.0, 1e-13);
}

/// The farther readings are from what was thought, the more surprising they are; of what noise explains, nothing is.
#[test]
fn readings_far_from_what_was_thought_contradict_it() {
    let at = |factor: f64| {
        let stretches: Vec<Stretch> =
            [0.98, 1.01, 1.03, 0.97, 1.0, 1.01].map(|noise| stretch(400.0 * factor * noise, 400.0, 1.0)).to_vec();
        calibrate(&stretches, &prior(&[0.2], 15.0, 2.0)).unwrap()
    };
    let surprises = [1.0, 1.1, 1.3, 1.5, 2.0].map(|factor| at(factor).surprise);
    assert!(surprises.is_sorted(), "{surprises:?}");
    // 1.3 is one and a half standard deviations away, 1.5 two and a half: 0.866 and 0.988 of a normal.
    near(surprises[2], 0.866, 0.005);
    near(surprises[3], 0.988, 0.002);
    assert!(at(1.5).contradicts_prior() && at(0.4).contradicts_prior() && !at(1.3).contradicts_prior());
}
