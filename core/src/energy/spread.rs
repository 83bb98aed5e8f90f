//! Numbers that are not certain.
//!
//! ```
//! use kerbstead_core::draws::Chance;
//! use kerbstead_core::energy::spread::{Sampler, Spread};
//! let sampler = Sampler::new(&Spread::Triangle { low: 0.8, likely: 1.0, high: 1.5 });
//! let mut chance = Chance::new(4);
//! assert!((0..100).map(|_| sampler.draw(&mut chance)).all(|value| (0.8..=1.5).contains(&value)));
//! ```

use super::{least, most, sound, whole, within};
use crate::draws::Chance;

/// How a number is spread.
#[derive(Clone, Debug, PartialEq)]
pub enum Spread {
    /// Not at all.
    Fixed(f64),
    /// Its logarithm is normal.
    Lognormal {
        /// Mean of the logarithm, -10 to 10.
        mean: f64,
        /// Standard deviation of the logarithm, 0 to 3.
        deviation: f64,
    },
    /// Between 0 and 1, as a beta distribution has it; both 0.5 to 1,000.
    Beta {
        /// The greater, the nearer to 1.
        a: f64,
        /// The greater, the nearer to 0.
        b: f64,
    },
    /// Between two numbers, most often about a third.
    Triangle {
        /// None is below.
        low: f64,
        /// The most likely one.
        likely: f64,
        /// None is above.
        high: f64,
    },
    /// Any of these, and what lies between neighbours.
    Measured(Vec<f64>),
}

/// Equal parts of the table of a beta distribution. Between them quantiles go straight, which is wrong by less than
/// a thousandth but in the last parts at either end.
const PARTS: usize = 1_024;
/// Places at which its density is summed.
const PLACES: usize = 2_048;
/// No greater number comes from any spread.
const MOST: f64 = 1e6;

/// Draws from a spread. What comes is from 0 to 1,000,000.
#[derive(Clone, Debug)]
pub struct Sampler(Kind);

#[derive(Clone, Debug)]
enum Kind {
    Fixed(f64),
    Lognormal(f64, f64),
    Triangle(f64, f64, f64),
    Table(Vec<f64>),
}

impl Sampler {
    /// Prepares a spread.
    pub fn new(spread: &Spread) -> Self {
        Self(match spread {
            Spread::Fixed(value) => Kind::Fixed(sound(*value, MOST)),
            Spread::Lognormal { mean, deviation } => {
                Kind::Lognormal(within(*mean, -10.0, 10.0), sound(*deviation, 3.0))
            }
            Spread::Triangle { low, likely, high } => {
                let low = sound(*low, MOST);
                let likely = within(*likely, low, MOST);
                Kind::Triangle(low, likely, within(*high, likely, MOST))
            }
            Spread::Beta { a, b } => Kind::Table(beta_table(within(*a, 0.5, 1e3), within(*b, 0.5, 1e3))),
            Spread::Measured(values) => {
                let mut values: Vec<f64> = values.iter().map(|value| sound(*value, MOST)).collect();
                values.sort_unstable_by(f64::total_cmp);
                Kind::Table(values)
            }
        })
    }

    /// Whether every draw is the same; then none is taken from the chance.
    pub fn fixed(&self) -> Option<f64> {
        match &self.0 {
            Kind::Fixed(value) => Some(*value),
            Kind::Table(values) if values.is_empty() => Some(1.0),
            _ => None,
        }
    }

    /// The next one.
    #[inline]
    pub fn draw(&self, chance: &mut Chance) -> f64 {
        match &self.0 {
            Kind::Fixed(value) => *value,
            Kind::Table(values) => at_share(values, chance.share()),
            Kind::Lognormal(mean, deviation) => least(libm::exp(mean + deviation * normal(chance)), MOST),
            Kind::Triangle(low, likely, high) => triangle(*low, *likely, *high, chance.share()),
        }
    }
}

/// A standard normal number: Box and Muller, "A note on the generation of random normal deviates", 1958 (from memory).
fn normal(chance: &mut Chance) -> f64 {
    let radius = libm::sqrt(-2.0 * libm::log(chance.share()));
    radius * libm::cos(2.0 * std::f64::consts::PI * chance.share())
}

/// The quantile of a triangle (closed form).
fn triangle(low: f64, likely: f64, high: f64, share: f64) -> f64 {
    let width = high - low;
    if width <= 0.0 {
        return low;
    }
    if share < (likely - low) / width {
        low + libm::sqrt(share * width * (likely - low))
    } else {
        high - libm::sqrt((1.0 - share) * width * (high - likely))
    }
}

/// What lies at a share of the way through ascending values.
#[inline]
fn at_share(values: &[f64], share: f64) -> f64 {
    let place = share * values.len().saturating_sub(1) as f64;
    let at = whole(place);
    let below = values.get(at).copied().unwrap_or(1.0);
    let above = values.get(at + 1).copied().unwrap_or(below);
    below + (above - below) * (place - at as f64)
}

/// Quantiles of a beta distribution in equal steps of the share: its density summed at places that are closer together at
/// both ends (x = t² (3 - 2t)), and inverted.
fn beta_table(a: f64, b: f64) -> Vec<f64> {
    let x = |t: f64| t * t * (3.0 - 2.0 * t);
    let peak = within((a - 1.0) / most(a + b - 2.0, 1e-9), 0.001, 0.999);
    // Powers by logarithms, so that a narrow peak does not underflow: the greatest density is about 1.
    let log_density = |x: f64| (a - 1.0) * libm::log(x) + (b - 1.0) * libm::log(1.0 - x);
    let greatest = log_density(peak);
    let mut sums = Vec::with_capacity(PLACES + 1);
    let mut sum = 0.0;
    sums.push(sum);
    for place in 0..PLACES {
        let t = (place as f64 + 0.5) / PLACES as f64;
        sum += libm::exp(log_density(x(t)) - greatest) * t * (1.0 - t);
        sums.push(sum);
    }
    let mut table = Vec::with_capacity(PARTS + 1);
    let mut place = 0;
    for part in 0..=PARTS {
        let wanted = sum * part as f64 / PARTS as f64;
        while place + 1 < PLACES && sums.get(place + 1).is_some_and(|sum| *sum < wanted) {
            place += 1;
        }
        let (below, above) = (sums.get(place).copied().unwrap_or(0.0), sums.get(place + 1).copied().unwrap_or(sum));
        let within_place = if above > below { within((wanted - below) / (above - below), 0.0, 1.0) } else { 0.0 };
        table.push(x((place as f64 + within_place) / PLACES as f64));
    }
    table
}
