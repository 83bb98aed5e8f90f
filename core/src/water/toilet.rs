//! The toilet: how long each way of having one lasts, what it costs in a month, and what it means to have none.
//!
//! ```
//! use kerbstead_core::plan::Money;
//! use kerbstead_core::water::toilet::{Costs, Way, cost_a_month, longest_wait, person_days};
//! // Twenty litres are some seven days of one person: three and a half of two.
//! let tank = Way::Portable { waste_l: 20.0 };
//! assert!((person_days(tank).unwrap().likely() - 7.09).abs() < 0.01);
//! let costs = Costs { bought: Money::whole(90), lasts_months: 36, each_time: "1.20".parse().unwrap() };
//! assert_eq!(cost_a_month(tank, 2, &costs).rounded(2).to_string(), "12.80");
//! // A library, open from nine to five: sixteen hours until it opens again.
//! let open: Vec<bool> = (0..48).map(|hour| (9..17).contains(&(hour % 24))).collect();
//! assert_eq!(longest_wait(&open).map(|wait| wait.count), Some(16));
//! ```

use rust_decimal::Decimal;

use super::constants::{BAGS_PER_DAY, DAYS_PER_MONTH, FAECES_L, FLUSH_L, URINE_L, VISITS_PER_DAY};
use super::needs::range;
use crate::energy::sound;
use crate::order::in_a_row;
use crate::plan::{Estimate, Money, decimal};

/// A way of having a toilet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Way {
    /// A portable one, flushed with water, with a waste tank of so many litres.
    Portable {
        /// What its waste tank holds, in l.
        waste_l: f64,
    },
    /// A waste tank for urine and faeces without any flushing, of so many litres.
    Dry {
        /// What it holds, in l.
        waste_l: f64,
    },
    /// Bags, one each time; urine goes elsewhere.
    Bags {
        /// How many are on board.
        count: u32,
    },
    /// None, and public ones.
    Public,
}

/// How many person-days a way lasts from empty to full, or until the bags are gone. None for public ones, which do not fill.
/// What somebody counts themselves wins over it.
pub fn person_days(way: Way) -> Option<Estimate<f64>> {
    let holds = match way {
        Way::Portable { waste_l } | Way::Dry { waste_l } => sound(waste_l, 1e6),
        Way::Bags { count } => f64::from(count),
        Way::Public => return None,
    };
    let [low, likely, high] = each_day(way);
    Some(range([holds / high, holds / likely, holds / low]))
}

/// What a person and day takes of a way: litres, bags, or visits. Sources: see [`super::constants`].
pub(super) fn each_day(way: Way) -> [f64; 3] {
    let dry_l: [f64; 3] = std::array::from_fn(|at| of(URINE_L, at) + of(FAECES_L, at));
    match way {
        Way::Portable { .. } => std::array::from_fn(|at| of(dry_l, at) + of(FLUSH_L, at)),
        Way::Dry { .. } => dry_l,
        Way::Bags { .. } => BAGS_PER_DAY,
        Way::Public => VISITS_PER_DAY,
    }
}

fn of(three: [f64; 3], at: usize) -> f64 {
    three.get(at).copied().unwrap_or(1.0)
}

/// What a way costs.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Costs {
    /// To buy it, once.
    pub bought: Money,
    /// That is spread over so many months; 0 counts as 1.
    pub lasts_months: u32,
    /// Each time: a filling of the tank with its fluid and emptying it, a bag, a visit.
    pub each_time: Money,
}

/// What a way costs in an average month of 30.436875 days for so many people, unrounded: what was bought, by month, and how
/// often a tank is emptied, a bag used or a public one visited, on average and not in whole times. Likely numbers.
pub fn cost_a_month(way: Way, people: u32, costs: &Costs) -> Money {
    let [_, likely, _] = each_day(way).map(decimal::of_measure);
    let one_time = match way {
        Way::Portable { waste_l } | Way::Dry { waste_l } => decimal::of_measure(waste_l),
        Way::Bags { .. } | Way::Public => Decimal::ONE,
    };
    let person_days = decimal::times(DAYS_PER_MONTH, Decimal::from(people)).unwrap_or_default();
    let amount = decimal::times(person_days, likely).unwrap_or_default();
    // A tank that holds nothing is not paid for.
    let times = decimal::over(amount, one_time).unwrap_or_default();
    let months = Decimal::from(costs.lasts_months.max(1));
    let by_month = decimal::over(costs.bought.decimal(), months).unwrap_or_default();
    Money::new(by_month) + costs.each_time.scaled(times)
}

/// Hours, or days, in a row without any toilet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Wait {
    /// The first of them, from 0.
    pub from: usize,
    /// How many.
    pub count: usize,
}

/// The longest time without one, where it is known hour by hour, or day by day, when a public one is open; the first of equal ones. None if one
/// always is. What lies before the first hour and after the last is not counted.
pub fn longest_wait(open: &[bool]) -> Option<Wait> {
    waits(open).into_iter().reduce(|longest, wait| if wait.count > longest.count { wait } else { longest })
}

fn waits(open: &[bool]) -> Vec<Wait> {
    let shut = in_a_row(open.iter().map(|is_open| !is_open));
    shut.into_iter().map(|(from, until)| Wait { from, count: until - from }).collect()
}
