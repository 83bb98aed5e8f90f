//! Contracts with an allowance: the cheapest set of them for what is used.
//!
//! ```
//! use kerbstead_core::plan::Money;
//! use kerbstead_core::signal::allowance::{Beyond, Contract, Wanted, cheapest};
//! let contract = |allowance_mb, price, beyond| Contract {
//!     allowance_mb: Some(allowance_mb), price: Money::whole(price), days: None, beyond,
//! };
//! let contracts = [
//!     contract(10_000, 8, Beyond::Stops),
//!     contract(20_000, 15, Beyond::Costs { per_gb: Money::whole(2) }),
//!     contract(50_000, 30, Beyond::Stops),
//! ];
//! let choice = cheapest(&contracts, &Wanted { mb: 27_000, ..Wanted::default() }).unwrap();
//! // The first two for 23; the second alone would come to 15 and 7 GB at 2.
//! assert_eq!((choice.contracts, choice.price), (vec![0, 1], Money::whole(23)));
//! ```

use rust_decimal::Decimal;

use super::constants::{MB_PER_MBIT_S_HOUR, MOST_CONTRACTS, MOST_HOURS, MOST_MB, MOST_MBIT_S};
use super::sound;
use crate::plan::Money;

/// A contract, or a card that is paid before.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Contract {
    /// What is included in a period, in MB; none for as much as one likes.
    pub allowance_mb: Option<u64>,
    /// What a period costs. A price below nothing counts as nothing.
    pub price: Money,
    /// Days of a period; none for a month.
    pub days: Option<u32>,
    /// What comes after the allowance.
    pub beyond: Beyond,
}

/// What comes after an allowance.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Beyond {
    /// Nothing more.
    Stops,
    /// Each GB costs so much, counted to the MB.
    Costs {
        /// The price; below nothing it counts as nothing.
        per_gb: Money,
    },
    /// As much as comes through at a slow rate.
    Slowed {
        /// The rate, in kbit/s.
        kbit_s: f64,
    },
}

/// What is wanted in a month.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wanted {
    /// Data, in MB; a petabyte at most.
    pub mb: u64,
    /// Days of that month.
    pub days: u32,
    /// A slower rate than this is of no use, in kbit/s.
    pub least_kbit_s: f64,
    /// Hours of the month in which a slow rate would be used.
    pub slow_hours: f64,
}

impl Default for Wanted {
    /// Nothing in thirty days; a slow rate is of no use.
    fn default() -> Self {
        Self { mb: 0, days: 30, least_kbit_s: 0.0, slow_hours: 0.0 }
    }
}

/// A set of contracts.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Choice {
    /// Positions in the list, ascending.
    pub contracts: Vec<usize>,
    /// What it costs in the month, with what is beyond the allowances; unrounded.
    pub price: Money,
    /// What comes through slowly, in MB.
    pub slowed_mb: u64,
    /// What is paid for beyond the allowances, in MB.
    pub paid_mb: u64,
}

/// Why nothing is chosen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NotChosen {
    /// There are more than twelve contracts.
    TooMany,
    /// All of them together are not enough.
    NotEnough {
        /// What they are enough for, in MB.
        most_mb: u64,
    },
}

/// The cheapest set of contracts, each taken once, for what is wanted; of equally cheap ones that with the fewest contracts, of
/// those the first by their numbers as bits. Every set is tried, so that it is exact.
///
/// Within a set the allowances are used first, since they are paid for; then the fastest slow rate, which costs nothing; then the
/// cheapest price beyond. A period shorter than the month is bought as often as it takes.
///
/// # Errors
///
/// [`NotChosen`], with more than twelve contracts or where all of them are not enough.
pub fn cheapest(contracts: &[Contract], wanted: &Wanted) -> Result<Choice, NotChosen> {
    if contracts.len() > MOST_CONTRACTS {
        return Err(NotChosen::TooMany);
    }
    let month: Vec<Month> = contracts.iter().map(|contract| Month::new(contract, wanted)).collect();
    let wanted_mb = wanted.mb.min(MOST_MB);
    let mut best: Option<(Money, u32, u32)> = None;
    for set in 0..1_u32 << contracts.len() {
        let taken = Taken::new(&month, set);
        if let Some(price) = taken.price(wanted_mb) {
            let key = (price, set.count_ones(), set);
            if best.is_none_or(|best| key < best) {
                best = Some(key);
            }
        }
    }
    let Some((price, _, set)) = best else {
        // All together give most, and none of them costs beyond: one that does gives any amount.
        let all = Taken::of(month.iter());
        return Err(NotChosen::NotEnough { most_mb: all.included_mb.saturating_add(all.slow_mb) });
    };
    let taken = Taken::new(&month, set);
    Ok(Choice {
        contracts: (0..contracts.len()).filter(|at| set >> at & 1 == 1).collect(),
        price,
        slowed_mb: taken.slowed_mb(wanted_mb),
        paid_mb: taken.paid_mb(wanted_mb),
    })
}

/// What all of the contracts together come to for what is wanted in a month; none where they are not enough.
pub fn all_of_them(contracts: &[Contract], wanted: &Wanted) -> Option<Money> {
    let month: Vec<Month> = contracts.iter().map(|contract| Month::new(contract, wanted)).collect();
    Taken::of(month.iter()).price(wanted.mb.min(MOST_MB))
}

/// What a contract comes to in the month.
#[derive(Clone, Copy)]
struct Month {
    price: Money,
    included_mb: u64,
    slow_mb: u64,
    per_gb: Option<Money>,
}

impl Month {
    fn new(contract: &Contract, wanted: &Wanted) -> Self {
        let periods = contract.days.map_or(1, |days| wanted.days.div_ceil(days.max(1)).max(1));
        let included_mb = contract.allowance_mb.map_or(MOST_MB, |mb| mb.min(MOST_MB)) * u64::from(periods);
        let (slow_mb, per_gb) = match contract.beyond {
            Beyond::Stops => (0, None),
            Beyond::Costs { per_gb } => (0, Some(per_gb.max(Money::ZERO))),
            Beyond::Slowed { kbit_s } => (slow_mb(kbit_s, wanted), None),
        };
        Self { price: contract.price.max(Money::ZERO).times(periods), included_mb, slow_mb, per_gb }
    }
}

/// What comes through at a slow rate in the hours there are, in whole MB; nothing if it is too slow to be of use.
fn slow_mb(kbit_s: f64, wanted: &Wanted) -> u64 {
    let is_of_use = sound(kbit_s, MOST_MBIT_S * 1_000.0) >= sound(wanted.least_kbit_s, MOST_MBIT_S * 1_000.0);
    if is_of_use { through_mb(kbit_s, wanted.slow_hours) } else { 0 }
}

/// What comes through at a rate in so many hours, in whole MB.
#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "within bounds, and rounded down")]
pub(super) fn through_mb(kbit_s: f64, hours: f64) -> u64 {
    let mb = sound(kbit_s / 1_000.0, MOST_MBIT_S) * sound(hours, MOST_HOURS) * MB_PER_MBIT_S_HOUR;
    sound(mb, MOST_MB as f64) as u64
}

/// Contracts together.
struct Taken {
    price: Money,
    included_mb: u64,
    /// By the fastest alone: one is used at a time.
    slow_mb: u64,
    per_gb: Option<Money>,
}

impl Taken {
    fn new(month: &[Month], set: u32) -> Self {
        Self::of(month.iter().enumerate().filter(|(at, _)| set >> at & 1 == 1).map(|(_, one)| one))
    }

    fn of<'a>(months: impl Iterator<Item = &'a Month>) -> Self {
        let mut taken = Self { price: Money::ZERO, included_mb: 0, slow_mb: 0, per_gb: None };
        for one in months {
            taken.price += one.price;
            taken.included_mb = taken.included_mb.saturating_add(one.included_mb);
            taken.slow_mb = taken.slow_mb.max(one.slow_mb);
            taken.per_gb = match (taken.per_gb, one.per_gb) {
                (Some(a), Some(b)) => Some(a.min(b)),
                (a, b) => a.or(b),
            };
        }
        taken
    }

    fn slowed_mb(&self, wanted_mb: u64) -> u64 {
        wanted_mb.saturating_sub(self.included_mb).min(self.slow_mb)
    }

    fn paid_mb(&self, wanted_mb: u64) -> u64 {
        wanted_mb.saturating_sub(self.included_mb).saturating_sub(self.slow_mb)
    }

    /// None if it is not enough.
    fn price(&self, wanted_mb: u64) -> Option<Money> {
        match (self.paid_mb(wanted_mb), self.per_gb) {
            (0, _) => Some(self.price),
            (mb, Some(per_gb)) => Some(self.price + per_gb.scaled(gigabytes(mb))),
            (_, None) => None,
        }
    }
}

/// Thousandths of a GB, exactly.
pub(super) fn gigabytes(mb: u64) -> Decimal {
    Decimal::from_i128_with_scale(mb.into(), 3)
}
