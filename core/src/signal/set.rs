//! The cheapest set of a plan's contracts for the month in which most data is used.

use jiff::civil::Date;
use serde::Serialize;

use super::allowance::{Beyond, Contract, Wanted, all_of_them, cheapest};
use super::constants::SLOW_HOURS_PER_DAY;
use super::data::needs_kbit_s;
use super::input::{Input, allowance_mb, in_gb, whole_mb};
use crate::plan::{BeyondAllowance, DataContract, Id, Money, Plan, add_months, days_between};

/// Contracts for the month in which most data is used.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Cheapest {
    /// The contracts, in the order of the plan.
    pub contracts: Vec<Id>,
    /// What they cost in that month, with what is beyond their allowances.
    pub price: Money,
    /// What those in use cost in it; none where they are not enough or one has no price.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub in_use: Option<Money>,
}

/// A month of the road.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Busiest {
    /// Its first day.
    #[serde(serialize_with = "crate::plan::civil::serialize")]
    pub from: Date,
    /// Its days, as far as the road has them.
    pub days: u32,
    /// What is used, in GB: low, likely, high.
    pub gb: [f64; 3],
}

/// The month, from the day of leaving or a month or more after it, in which most is used by the likely use. Months that are over
/// on the day asked do not count.
pub(super) fn busiest(input: &Input, as_of: Date) -> Option<Busiest> {
    let first = *input.days.first()?;
    let [low, likely, high] = &input.mb_by_day;
    let mut best: Option<(u64, Busiest)> = None;
    for month in 0.. {
        let (Some(from), Some(until)) = (add_months(first, month), add_months(first, month + 1)) else { break };
        let at = |on: Date| usize::try_from(days_between(first, on)).unwrap_or(0).min(likely.len());
        let (from_day, until_day) = (at(from), at(until));
        if from_day >= until_day {
            break;
        }
        if until <= as_of {
            continue;
        }
        let sum_mb =
            |mb: &[u64]| mb.get(from_day..until_day).unwrap_or(&[]).iter().copied().fold(0, u64::saturating_add);
        let gb = [low, likely, high].map(|mb| in_gb(sum_mb(mb)));
        let mb = sum_mb(likely);
        if best.is_none_or(|(most, _)| mb > most) {
            let days = u32::try_from(until_day - from_day).unwrap_or(u32::MAX);
            best = Some((mb, Busiest { from, days, gb }));
        }
    }
    best.map(|(_, month)| month)
}

/// The cheapest set of all contracts that have a price for that month; none where there is none, or there are more than twelve.
pub(super) fn of_plan(plan: &Plan, busiest: &Busiest) -> Option<Cheapest> {
    let priced: Vec<(&DataContract, Contract)> =
        plan.data_contracts.iter().filter_map(|contract| Some((contract, engine(contract)?))).collect();
    let [_, likely_gb, _] = busiest.gb;
    let wanted = Wanted {
        mb: whole_mb(likely_gb * 1_000.0),
        days: busiest.days,
        // A slow rate counts where it is enough for every use.
        least_kbit_s: plan.data_uses.iter().filter_map(needs_kbit_s).fold(0.0, f64::max),
        slow_hours: f64::from(busiest.days) * SLOW_HOURS_PER_DAY,
    };
    let all: Vec<Contract> = priced.iter().map(|(_, contract)| *contract).collect();
    let choice = cheapest(&all, &wanted).ok()?;
    let is_priced = plan.data_contracts.iter().all(|contract| !contract.in_use || contract.period_price.is_some());
    let used: Vec<Contract> =
        priced.iter().filter(|(contract, _)| contract.in_use).map(|(_, contract)| *contract).collect();
    let digits = plan.minor_digits();
    Some(Cheapest {
        contracts: choice.contracts.iter().filter_map(|at| Some(priced.get(*at)?.0.id)).collect(),
        price: choice.price.rounded(digits),
        in_use: all_of_them(&used, &wanted).filter(|_| is_priced).map(|price| price.rounded(digits)),
    })
}

fn engine(contract: &DataContract) -> Option<Contract> {
    let beyond = match contract.beyond {
        BeyondAllowance::Stops => Beyond::Stops,
        // Without a price nobody knows what it would cost.
        BeyondAllowance::Costs => contract.per_gb.map_or(Beyond::Stops, |per_gb| Beyond::Costs { per_gb }),
        BeyondAllowance::Slowed => Beyond::Slowed { kbit_s: contract.slow_kbit_s.unwrap_or(0.0) },
    };
    Some(Contract {
        allowance_mb: allowance_mb(contract),
        price: contract.period_price?,
        days: contract.period_days,
        beyond,
    })
}
