//! How long calibration takes: `cargo bench -p kerbstead-tests --bench calibration`. Ten thousand stretches are to take well
//! under 20 ms.

use divan::{Bencher, black_box};
use kerbstead_core::draws::Chance;
use kerbstead_core::road_log::calibration::{Posterior, Prior, Stretch, calibrate};

fn main() {
    divan::main();
}

/// Stretches of some parameters, of which one in so many is wrong.
fn log(count: usize, parameters: usize, one_wrong_in: usize) -> Vec<Stretch> {
    let mut chance = Chance::new(5);
    let mut stretches = Vec::with_capacity(count);
    for at in 0..count {
        let expected: Vec<f64> = (0..parameters).map(|_| 100.0 + 100.0 * chance.share()).collect();
        // The sum of twelve is near a normal.
        let noise: f64 = (0..12).map(|_| chance.share() - 0.5).sum();
        let wrong = if at % one_wrong_in == 3 { 400.0 } else { 0.0 };
        let observed = expected.iter().sum::<f64>() + 20.0 * noise + wrong;
        stretches.push(Stretch { observed, expected, known: 0.0, weight_days: 1.0 });
    }
    stretches
}

fn prior(parameters: usize) -> Prior {
    Prior { means: vec![1.0; parameters], sds: vec![0.3; parameters], noise_sd: 30.0, noise_weight: 2.0 }
}

#[divan::bench(args = [(40, 2, 10), (10_000, 1, 20_000), (10_000, 2, 20_000), (10_000, 2, 10), (10_000, 4, 10)])]
fn calibrated(bencher: Bencher, (count, parameters, one_wrong_in): (usize, usize, usize)) {
    let (log, prior) = (log(count, parameters, one_wrong_in), prior(parameters));
    bencher.bench_local(|| calibrate(black_box(&log), &prior));
}

#[divan::bench]
fn an_interval(bencher: Bencher) {
    let posterior: Option<Posterior> = calibrate(&log(40, 2, 10), &prior(2));
    bencher.bench_local(|| posterior.as_ref().and_then(|it| it.interval(0, black_box(80.0))));
}
