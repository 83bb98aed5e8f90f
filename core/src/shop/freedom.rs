//! A price in days on the road.

use rust_decimal::Decimal;
use serde::Serialize;

use crate::money::constants::DAYS_PER_MONTH;
use crate::money::{a_month, divided, fuel_a_month, km_a_month};
use crate::plan::{Cost, CostEvery, CostPhase, Money, Plan, decimal};
use crate::run::Timeline;

/// What one more day on the road costs, and what that is made of. Without income, and without what is bought once.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct RoadCost {
    /// All that is due each month on the road.
    pub monthly: Money,
    /// Of it, fuel for the distances of the route.
    pub fuel: Money,
    /// The names of the other costs, in the order of the plan.
    pub names: Vec<String>,
    /// What a night costs on average, over all nights of the route.
    pub night: Money,
    /// How many nights that is the average of.
    pub nights: u32,
    /// Both for one day, unrounded.
    pub per_day: Money,
}

/// What one more day on the road costs by the plan: a day's share of the running costs that are due on the road, fuel, and
/// an average night of the route.
pub fn road_cost(plan: &Plan, timeline: &Timeline) -> RoadCost {
    let is_running = |cost: &&Cost| {
        let is_on_the_road = cost.phase != CostPhase::Home || cost.every == CostEvery::HundredKm;
        is_on_the_road && cost.every != CostEvery::Once && cost.amount.is_some()
    };
    let on_the_road = || plan.costs.iter().filter(is_running);
    let km = km_a_month(timeline);
    let fuel = fuel_a_month(plan, km);
    let monthly = on_the_road().map(|cost| a_month(cost, km)).sum::<Money>() + fuel;
    let prices = || timeline.road().map(|day| day.offer.and_then(|offer| offer.price_per_night));
    let nights = u32::try_from(prices().count()).unwrap_or(u32::MAX);
    let all_nights: Money = prices().flatten().map(|price| price.likely()).sum();
    let night = divided(all_nights, Decimal::from(nights));
    let per_day = divided(monthly, DAYS_PER_MONTH) + night;
    let names = on_the_road().map(|cost| cost.name.clone()).collect();
    RoadCost { monthly, fuel, names, night, nights, per_day }
}

impl RoadCost {
    /// The days on the road that an amount pays for; none if the plan knows of nothing that such a day costs.
    pub fn days_for(&self, amount: Money) -> Option<f64> {
        if self.per_day <= Money::ZERO {
            return None;
        }
        decimal::over(amount.decimal(), self.per_day.decimal()).map(decimal::to_float)
    }
}
