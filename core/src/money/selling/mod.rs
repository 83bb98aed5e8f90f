//! Selling by the date: how likely a price is to be paid in time, when to ask less, and what is better not sold.
//!
//! A thing finds its buyer by chance, at a steady rate a day that falls as the asking price rises:
//! `rate = ln 2 / half_sold_days * (usual_price / asking)^steepness`, so that at its usual price half of such things are
//! sold after `half_sold_days`. The chance of a sale within some days is `1 - exp(-rate * days)`. Both forms are our
//! assumption; common practice, no source.
//!
//! ```
//! use kerbstead_core::money::selling::Demand;
//! let desk = Demand { usual_price: 12_000, half_sold_days: 10.0, steepness: 3.0 };
//! assert!((desk.chance_within(12_000, 10.0) - 0.5).abs() < 1e-12);
//! assert!(desk.chance_within(9_000, 10.0) > 0.8); // a quarter less sells 2.4 times as fast
//! assert_eq!(desk.price_for(10.0, 0.5), 12_000);
//! assert!((desk.days_for(12_000, 0.75) - 20.0).abs() < 1e-9);
//! ```

mod drops;
mod fate;
mod of_kept;
mod of_plan;

use super::chance::MOST_MINOR;

pub use drops::{MOST_THINGS, NotPlanned, SalesPlan, Stage, Thing, Wish, plan_sales};
pub use fate::{AtHome, Choice, Fate, fates};
pub use of_kept::{FateWay, Fates, fates_of, months_stored};
pub(crate) use of_plan::demand_of;
pub use of_plan::{NoSchedule, Offered, Prices, Schedule, offered, offered_one, schedule, taking, told_chance};

/// How a thing finds its buyer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Demand {
    /// What such things usually bring, in minor units, 1 to [`MOST_MINOR`].
    pub usual_price: i64,
    /// In how many days half of them are sold at that price, 0.1 to 10,000.
    pub half_sold_days: f64,
    /// How much a lower price speeds it up, 0 to 20; [`super::constants::STEEPNESS`] is usual. At 0 the price does not matter.
    pub steepness: f64,
}

impl Demand {
    /// Buyers a day at an asking price, by the form above. Values out of range count as the nearest in range.
    pub fn rate_per_day(&self, asking: i64) -> f64 {
        let share = price(self.usual_price) / price(asking);
        core::f64::consts::LN_2 / self.half_days() * libm::pow(share, self.steep())
    }

    /// The chance, 0 to 1, that it is sold within some days: `1 - exp(-rate * days)`.
    pub fn chance_within(&self, asking: i64, days: f64) -> f64 {
        -libm::expm1(-self.rate_per_day(asking) * days.max(0.0))
    }

    /// The days until it is sold with a chance of 0 to below 1: `-ln(1 - chance) / rate`. To list it so many days before
    /// a date is the latest that gives it that chance.
    pub fn days_for(&self, asking: i64, chance: f64) -> f64 {
        patience(chance) / self.rate_per_day(asking)
    }

    /// The highest price that sells it within some days with that chance, in minor units, rounded down; at most
    /// [`MOST_MINOR`].
    pub fn price_for(&self, days: f64, chance: f64) -> i64 {
        let wanted = patience(chance) / days.max(1e-9);
        let usual = self.rate_per_day(self.usual_price);
        let share = if self.steep() > 0.0 {
            libm::pow(usual / wanted.max(1e-12), 1.0 / self.steep())
        } else {
            f64::from(u8::from(usual >= wanted))
        };
        // A price that is met up to rounding is met.
        amount(price(self.usual_price) * share * (1.0 + 1e-12))
    }

    fn half_days(&self) -> f64 {
        sound(self.half_sold_days, 0.1, 10_000.0)
    }

    fn steep(&self) -> f64 {
        sound(self.steepness, 0.0, 20.0)
    }
}

/// How many times the mean waiting time gives a chance.
fn patience(chance: f64) -> f64 {
    -libm::log1p(-sound(chance, 0.0, 1.0 - 1e-9))
}

/// Only rates are made of it, no sums.
fn price(amount: i64) -> f64 {
    amount.clamp(1, MOST_MINOR) as f64
}

/// A price that was worked out, rounded down.
#[allow(clippy::cast_possible_truncation)] // it is clamped
fn amount(price: f64) -> i64 {
    price.clamp(0.0, MOST_MINOR as f64) as i64
}

fn sound(value: f64, least: f64, most: f64) -> f64 {
    if value.is_nan() { most } else { value.clamp(least, most) }
}
