//! What data of a plan takes: uses by day, and the contracts in use.

use jiff::civil::Date;

use super::allowance::{gigabytes, through_mb};
use super::constants::{MOST_MB, SLOW_HOURS_PER_DAY};
use super::course::{After, Course, Meter, course};
use super::data::{needs_kbit_s, of_a_day_mb};
use super::sound;
use crate::plan::{BeyondAllowance, DataContract, Id, Money, Plan, days_between};
use crate::run::{Day, Timeline};

/// Data of a plan along its road.
#[derive(Clone, Debug, PartialEq)]
pub struct Input {
    /// The days of the road.
    pub days: Vec<Date>,
    /// What each of them takes, in MB: low, likely, high.
    pub mb_by_day: [Vec<u64>; 3],
    /// The contracts in use, in the order of the plan.
    pub contracts: Vec<Id>,
    /// Their allowances.
    pub meters: Vec<Meter>,
    /// What comes after them.
    pub after: After,
    /// The slow rate that comes after them, if one does: the fastest.
    pub slow: Option<Slow>,
    /// What a GB after them costs, if it can be paid for: the cheapest.
    pub per_gb: Option<(Id, Money)>,
}

/// A slow rate.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Slow {
    /// The rate.
    pub kbit_s: f64,
    /// How many of the uses it is enough for.
    pub serves: usize,
    /// How many uses there are.
    pub of: usize,
}

impl Input {
    /// Data along the road.
    pub fn new(plan: &Plan, timeline: &Timeline) -> Self {
        let days: Vec<Date> = timeline.road().map(|day| day.date).collect();
        let in_use: Vec<&DataContract> = plan.data_contracts.iter().filter(|contract| contract.in_use).collect();
        let slow = slow(plan, &in_use);
        let per_gb = per_gb(&in_use);
        let slow_mb = slow.filter(|slow| slow.serves > 0).map_or(0, |slow| a_day_mb(slow.kbit_s));
        Self {
            mb_by_day: mb_by_day(plan, timeline),
            contracts: in_use.iter().map(|contract| contract.id).collect(),
            meters: in_use.iter().map(|contract| meter(contract, &days)).collect(),
            after: After { slow_mb, is_paid: per_gb.is_some() },
            slow,
            per_gb,
            days,
        }
    }

    /// What becomes of the data: the least, the likely or the most of it.
    pub fn course(&self, which: Which) -> Course {
        let [low, likely, high] = &self.mb_by_day;
        let mb_by_day = match which {
            Which::Low => low,
            Which::Likely => likely,
            Which::High => high,
        };
        course(&self.meters, &self.after, mb_by_day)
    }

    /// What is paid by day beyond allowances, by the likely use: the contract, and an amount in the currency's minor unit, of
    /// which the sum is right to that unit on every day.
    pub fn paid_beyond(&self, course: &Course, minor_digits: u32) -> Vec<(Date, Id, Money)> {
        let Some((contract, per_gb)) = self.per_gb else { return Vec::new() };
        let (mut sum_mb, mut paid, mut all) = (0_u64, Money::ZERO, Vec::new());
        for (on, day) in self.days.iter().zip(&course.days).filter(|(_, day)| day.paid_mb > 0) {
            sum_mb = sum_mb.saturating_add(day.paid_mb);
            let in_all = per_gb.scaled(gigabytes(sum_mb)).rounded(minor_digits);
            all.push((*on, contract, in_all - paid));
            paid = in_all;
        }
        all
    }
}

/// Which of the ends of a range, or its likely value.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Which {
    /// The least.
    Low,
    /// The likely.
    Likely,
    /// The most.
    High,
}

/// What comes through on a day at a slow rate, in MB.
pub(super) fn a_day_mb(kbit_s: f64) -> u64 {
    through_mb(kbit_s, SLOW_HOURS_PER_DAY)
}

/// What each day of the road takes, in whole MB of which the sum is right on every day.
fn mb_by_day(plan: &Plan, timeline: &Timeline) -> [Vec<u64>; 3] {
    let uses: Vec<_> = plan.data_uses.iter().map(|one| (one.data_days, of_a_day_mb(one))).collect();
    let mut by_day = [Vec::new(), Vec::new(), Vec::new()];
    for (at, days) in by_day.iter_mut().enumerate() {
        let of_day = |day: &Day| -> f64 {
            let todays = uses.iter().filter(|(days, _)| days.has(day));
            todays.filter_map(|(_, mb)| mb.get(at)).fold(0.0, |sum, mb| sound(sum + mb, MOST_MB as f64))
        };
        let (mut sum_mb, mut counted_mb) = (0.0, 0);
        for day in timeline.road() {
            sum_mb += of_day(day);
            let until_mb = whole_mb(sum_mb);
            days.push(until_mb - counted_mb);
            counted_mb = until_mb;
        }
    }
    by_day
}

/// The nearest whole MB.
#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "no plan has so many days of a petabyte")]
pub(super) fn whole_mb(mb: f64) -> u64 {
    libm::round(sound(mb, 1e15)) as u64
}

/// In GB.
pub(super) fn in_gb(mb: u64) -> f64 {
    mb as f64 / 1_000.0
}

/// What a period of a contract includes, in MB; none for as much as one likes.
pub(super) fn allowance_mb(contract: &DataContract) -> Option<u64> {
    contract.allowance_gb.map(|gb| whole_mb(gb * 1_000.0))
}

fn meter(contract: &DataContract, days: &[Date]) -> Meter {
    let (Some(first), Some(last)) = (days.first(), days.last()) else {
        return Meter { allowance_mb: Some(0), renews_on: Vec::new() };
    };
    let begins = contract.periods(*first, *last).into_iter();
    Meter {
        allowance_mb: allowance_mb(contract),
        renews_on: begins.filter_map(|on| usize::try_from(days_between(*first, on)).ok()).collect(),
    }
}

/// The fastest slow rate of some contracts.
fn slow(plan: &Plan, contracts: &[&DataContract]) -> Option<Slow> {
    let slowed = contracts.iter().filter(|contract| contract.beyond == BeyondAllowance::Slowed);
    let rates = slowed.map(|contract| sound(contract.slow_kbit_s.unwrap_or(0.0), 1e9));
    let kbit_s = rates.max_by(f64::total_cmp)?;
    let serves = plan.data_uses.iter().filter(|one| needs_kbit_s(one).is_none_or(|needs| needs <= kbit_s));
    Some(Slow { kbit_s, serves: serves.count(), of: plan.data_uses.len() })
}

/// The cheapest price beyond the allowances of some contracts.
fn per_gb(contracts: &[&DataContract]) -> Option<(Id, Money)> {
    let paid = contracts.iter().filter(|contract| contract.beyond == BeyondAllowance::Costs);
    let prices = paid.filter_map(|contract| Some((contract.id, contract.per_gb?.max(Money::ZERO))));
    prices.min_by_key(|(_, per_gb)| *per_gb)
}
