//! Strange numbers.

use crate::{prior, stretch};
use kerbstead_core::draws::Chance;
use kerbstead_core::road_log::calibration::{Posterior, Prior, Stretch, calibrate};

const STRANGE: [f64; 16] = [
    f64::NAN,
    f64::INFINITY,
    f64::NEG_INFINITY,
    f64::MAX,
    f64::MIN_POSITIVE,
    1e-320,
    0.0,
    -0.0,
    -1.0,
    1.0,
    1e12,
    -1e12,
    1e9,
    1e-9,
    1e-6,
    1e6,
];

fn check(posterior: &Posterior, stretches: usize) {
    assert_eq!(posterior.used + posterior.outliers.len() + posterior.unusable, stretches);
    assert_eq!(posterior.residuals.len(), stretches);
    let parameters = 0..posterior.means.len();
    let mut numbers = vec![posterior.noise_sd, posterior.degrees, posterior.surprise];
    numbers.extend(posterior.means.iter().chain(&posterior.sds).chain(posterior.residuals.iter().flatten()));
    for (at, percent) in parameters.clone().flat_map(|at| STRANGE.map(|percent| (at, percent))) {
        let interval = posterior.interval(at, percent).unwrap();
        assert!(interval.low <= interval.high, "{interval:?}");
        numbers.extend([interval.low, interval.high]);
    }
    numbers
        .extend(parameters.clone().flat_map(|a| parameters.clone().filter_map(move |b| posterior.correlation(a, b))));
    assert!(numbers.iter().all(|number| number.is_finite()), "{posterior:?}");
    assert!(posterior.sds.iter().all(|sd| *sd >= 0.0) && posterior.noise_sd > 0.0 && posterior.degrees >= 0.0);
    assert!((0.0..=1.0).contains(&posterior.surprise));
}

#[test]
fn one_strange_number_is_left_out_and_counted() {
    let sound = || (0..6).map(|at| stretch(500.0 + f64::from(at), 400.0, 1.0));
    let plain = calibrate(&sound().collect::<Vec<_>>(), &prior(&[0.3], 20.0, 2.0)).unwrap();
    let unusable = [
        stretch(f64::NAN, 400.0, 1.0),
        stretch(500.0, f64::INFINITY, 1.0),
        stretch(500.0, 400.0, -1.0),
        stretch(500.0, 400.0, 0.0),
        stretch(500.0, 400.0, f64::NAN),
        stretch(1e300, 400.0, 1.0),
        Stretch { known: f64::NEG_INFINITY, ..stretch(500.0, 400.0, 1.0) },
        Stretch { expected: vec![], ..stretch(500.0, 400.0, 1.0) },
        Stretch { expected: vec![400.0, 1.0], ..stretch(500.0, 400.0, 1.0) },
    ];
    for one in unusable {
        let stretches: Vec<Stretch> = sound().chain([one]).collect();
        let found = calibrate(&stretches, &prior(&[0.3], 20.0, 2.0)).unwrap();
        assert_eq!((found.unusable, found.used, found.residuals[6]), (1, 6, None));
        assert_eq!((&found.means, &found.sds), (&plain.means, &plain.sds));
    }
}

#[test]
fn a_prior_that_is_none_has_no_posterior() {
    let sound = prior(&[0.3], 20.0, 2.0);
    assert!(calibrate(&[], &sound).is_some());
    let none = [
        prior(&[], 20.0, 2.0),
        prior(&[0.3; 5], 20.0, 2.0),
        prior(&[-0.1], 20.0, 2.0),
        prior(&[f64::NAN], 20.0, 2.0),
        prior(&[0.3], 0.0, 2.0),
        prior(&[0.3], f64::INFINITY, 2.0),
        Prior { means: vec![1.0, 1.0], ..sound.clone() },
        Prior { means: vec![f64::NAN], ..sound },
    ];
    assert!(none.iter().all(|prior| calibrate(&[], prior).is_none()));
    let weights =
        [f64::NAN, -3.0, 0.0, 1.0].map(|weight| calibrate(&[], &prior(&[0.3], 20.0, weight)).unwrap().degrees);
    assert_eq!(weights, [1.0; 4]);
}

/// Every field of stretches and priors from the list above, by chance.
#[test]
fn nothing_strange_comes_of_anything_strange() {
    let chance = &mut Chance::new(77);
    let mut answered = 0;
    for _ in 0..6_000 {
        // Strange ones among plain ones, so that not all is left out.
        let often = 2 + chance.below(12);
        let (parameters, count) = (1 + chance.below(4) as usize, chance.below(13) as usize);
        let mut any = |plain: f64| if chance.below(often) == 0 { STRANGE[chance.below(16) as usize] } else { plain };
        let prior = Prior {
            means: (0..parameters).map(|_| any(1.0)).collect(),
            sds: (0..parameters).map(|_| any(0.3)).collect(),
            noise_sd: any(40.0),
            noise_weight: any(2.0),
        };
        let of = |at: usize| Stretch {
            observed: any(500.0 + at as f64),
            expected: (0..parameters).map(|which| any(300.0 + (at * which) as f64)).collect(),
            known: any(10.0),
            weight_days: any(1.0),
        };
        let stretches: Vec<Stretch> = (0..count).map(of).collect();
        if let Some(posterior) = calibrate(&stretches, &prior) {
            check(&posterior, count);
            answered += 1;
        }
    }
    assert!(answered > 2_000, "{answered}");
}

/// Readings that lie in no way as was thought, so that noise far apart explains them.
#[test]
fn what_contradicts_everything_has_an_answer_all_the_same() {
    for (sd, count) in [(1e-9, 5_u32), (1e-6, 300), (0.05, 3), (0.0, 40), (1e9, 40)] {
        let stretches: Vec<Stretch> = (0..count).map(|at| stretch(1e6 + f64::from(at % 7), 400.0, 1.0)).collect();
        let posterior = calibrate(&stretches, &prior(&[sd], 1e-3, 1.0)).unwrap();
        check(&posterior, stretches.len());
    }
}
