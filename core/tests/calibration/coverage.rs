//! Whether what is stated is so: logs made by chance, and how many intervals hold the truth.

use crate::prior;
use kerbstead_core::draws::Chance;
use kerbstead_core::road_log::calibration::{Posterior, Stretch, calibrate};

const LOGS: u32 = 2_000;
const GUESS: f64 = 60.0;
const WEIGHT: u32 = 1;

/// What logs are made by. Factors are drawn from the prior, 1 give or take 0.3, unless they are fixed.
#[derive(Clone, Copy)]
struct Making {
    parameters: usize,
    stretches: usize,
    /// True noise in guesses of it; drawn from the prior where there is none.
    noise: Option<f64>,
    /// Whether one stretch in ten is wrong by 10 to 30 standard deviations.
    is_gross: bool,
    /// How far the factors are above 1.
    fixed: Option<f64>,
}

/// What came of many logs. Shares are in percent.
struct Found {
    in_80: f64,
    in_95: f64,
    honest_out: f64,
    gross_out: f64,
    surprised: f64,
}

struct Log {
    truth: Vec<f64>,
    stretches: Vec<Stretch>,
    is_wrong: Vec<bool>,
}

fn normal(chance: &mut Chance) -> f64 {
    libm::sqrt(-2.0 * libm::log(chance.share())) * libm::cos(2.0 * std::f64::consts::PI * chance.share())
}

impl Making {
    fn log(&self, seed: u64) -> Log {
        let chance = &mut Chance::new(seed * 1_000 + self.stretches as u64);
        let drawn = |chance: &mut Chance| 1.0 + self.fixed.unwrap_or_else(|| 0.3 * normal(chance));
        let truth: Vec<f64> = (0..self.parameters).map(|_| drawn(chance)).collect();
        let noise_sd = GUESS * self.noise.unwrap_or_else(|| noise_of_prior(chance));
        let mut log = Log { truth, stretches: vec![], is_wrong: vec![] };
        let wrong_at = chance.below(10) as usize;
        for at in 0..self.stretches {
            let is_wrong = self.is_gross && at % 10 == wrong_at;
            let mut stretch = log.stretch(chance, noise_sd);
            if is_wrong {
                let side = if chance.share() < 0.5 { -1.0 } else { 1.0 };
                stretch.observed += side * (10.0 + 20.0 * chance.share()) * noise_sd * libm::sqrt(stretch.weight_days);
            }
            log.stretches.push(stretch);
            log.is_wrong.push(is_wrong);
        }
        log
    }

    fn found(&self) -> Found {
        let mut counts = [0_u32; 7];
        let prior = prior(&vec![0.3; self.parameters], GUESS, f64::from(WEIGHT));
        for seed in 0..LOGS {
            let log = self.log(seed.into());
            let posterior = calibrate(&log.stretches, &prior).unwrap();
            counts[0] += holding(&posterior, &log.truth, 80.0);
            counts[1] += holding(&posterior, &log.truth, 95.0);
            for (at, is_wrong) in log.is_wrong.iter().enumerate() {
                let is_out = u32::from(posterior.outliers.contains(&at));
                let [of_its_kind, out] = if *is_wrong { [2, 3] } else { [4, 5] };
                counts[of_its_kind] += 1;
                counts[out] += is_out;
            }
            counts[6] += u32::from(posterior.contradicts_prior());
        }
        let percent = |part: u32, of: u32| 100.0 * f64::from(part) / f64::from(of.max(1));
        let intervals = LOGS * u32::try_from(self.parameters).unwrap();
        Found {
            in_80: percent(counts[0], intervals),
            in_95: percent(counts[1], intervals),
            gross_out: percent(counts[3], counts[2]),
            honest_out: percent(counts[5], counts[4]),
            surprised: percent(counts[6], LOGS),
        }
    }
}

/// A scaled inverse chi-squared variance, as a standard deviation.
fn noise_of_prior(chance: &mut Chance) -> f64 {
    let squares: f64 = (0..WEIGHT).map(|_| normal(chance)).map(|it| it * it).sum();
    libm::sqrt(f64::from(WEIGHT) / squares)
}

impl Log {
    /// Some hours to two and a half days, with what a fridge and the rest draw.
    fn stretch(&self, chance: &mut Chance, noise_sd: f64) -> Stretch {
        let weight_days = 0.3 + 2.2 * chance.share();
        let expected: Vec<f64> = self.truth.iter().map(|_| weight_days * (100.0 + 350.0 * chance.share())).collect();
        let known = 300.0 * chance.share();
        let scaled: f64 = expected.iter().zip(&self.truth).map(|(expected, factor)| expected * factor).sum();
        let observed = known + scaled + noise_sd * libm::sqrt(weight_days) * normal(chance);
        Stretch { observed, expected, known, weight_days }
    }
}

/// How many of the factors are within their intervals.
fn holding(posterior: &Posterior, truth: &[f64], percent: f64) -> u32 {
    let holds = |(at, truth): (usize, &f64)| {
        let interval = posterior.interval(at, percent).unwrap();
        u32::from(interval.low <= *truth && *truth <= interval.high)
    };
    truth.iter().enumerate().map(holds).sum()
}

const DRAWN: [Option<f64>; 2] = [None, Some(1.0)];

/// Measured, in percent, over all sizes: the 80 % interval holds 78.3 to 82.8, the 95 % interval 93.7 to 96.0, and the error of
/// that is one of 0.9 and 0.5. The most are of five stretches with the noise just as it was guessed, which the method cannot
/// know. With truth and noise drawn from the prior, what is stated is exact but for the rule on outliers. With 20,000 logs,
/// no wrong stretches and a guess that counts as 3, 5, 15 and 40 stretches of one factor:
/// - without that rule 79.9, 80.2, 80.0 and 95.0, 95.2, 94.9;
/// - with it 79.6, 79.6, 79.4 and 94.8, 94.7, 94.5. So it costs half a percent, for 0.1 percent of honest stretches left out.
///
/// Of wrong stretches it finds 96.1 to 97.9 % among five, and all among fifteen and more.
#[test]
fn intervals_hold_the_truth_as_often_as_they_say() {
    for parameters in [1, 2] {
        for stretches in [5, 15, 40] {
            for (noise, is_gross) in DRAWN.into_iter().flat_map(|noise| [(noise, false), (noise, true)]) {
                let found = Making { parameters, stretches, noise, is_gross, fixed: None }.found();
                let what =
                    format!("{parameters} {stretches} {noise:?} {is_gross}: {:.1} {:.1}", found.in_80, found.in_95);
                println!(
                    "{what}, out {:.2} {:.1}, surprised {:.1}",
                    found.honest_out, found.gross_out, found.surprised
                );
                assert!((found.in_80 - 80.0).abs() <= 4.0 && (found.in_95 - 95.0).abs() <= 2.5, "{what}");
                assert!(found.honest_out <= 0.3, "{what}");
                assert!(!is_gross || found.gross_out > if stretches < 10 { 90.0 } else { 99.0 }, "{what}");
                // What is said to happen to one log in fifty.
                assert!((0.5..3.6).contains(&found.surprised), "{what}");
            }
        }
    }
}

/// A guess of the noise that is wrong is believed as long as few stretches speak against it, the longer the more it counts as;
/// and a factor that is always the same, instead of drawn from the prior, is held more often where it is near the middle of
/// the prior, less often where it is not. No prior can do otherwise.
///
/// Measured, with one factor and no wrong stretch, in percent for the 80 % and the 95 % interval with 5, 15 and 40 stretches:
/// - noise half of the guess: 91.9, 85.3, 80.3 and 99.4, 97.0, 95.1;
/// - noise twice the guess: 77.1, 77.9, 77.8 and 93.1, 94.0, 93.8. If the guess counts as 3 stretches (10,000 logs): 71.7 and
///   75.9, 90.5 and 92.3, with 5 and 15;
/// - factor 1.2 throughout: 0 to 2.7 above the former, 0 to 1.9 above the latter.
///
/// Not among what is checked: two factors fixed at 1.3 and 0.7, with 5 stretches, a guess that is right and counts as 3: 63.5
/// and 91.8; with 40: 78.2 and 94.2.
#[test]
fn a_wrong_guess_of_the_noise_is_forgotten_as_stretches_come() {
    for (noise, least_in_80, least_in_95) in [(0.5, 80.0, 95.0), (2.0, 74.0, 91.0)] {
        for stretches in [5, 15, 40] {
            let making = Making { parameters: 1, stretches, noise: Some(noise), is_gross: false, fixed: None };
            for found in [making.found(), Making { fixed: Some(0.2), ..making }.found()] {
                println!("{noise} {stretches}: {:.1} {:.1}", found.in_80, found.in_95);
                assert!(found.in_80 >= least_in_80 && found.in_95 >= least_in_95, "{noise} {stretches}");
                let is_near = (found.in_80 - 80.0).abs() <= 4.0 && (found.in_95 - 95.0).abs() <= 2.5;
                assert!(is_near || stretches < 40, "{noise} {stretches}");
            }
        }
    }
}
