//! The question of the toilet: each way of having one with what it costs, and what a plan without one relies on.

use jiff::civil::Date;
use serde::Serialize;

use super::constants::{USUAL_BAGS, USUAL_LASTS_MONTHS, USUAL_WASTE_L, rough_eur};
use super::input::{Input, way_of};
use super::step::WaterDay;
use super::tanks::Day as Place;
use super::toilet::{Costs, Way, cost_a_month, longest_wait, person_days};
use crate::plan::{Estimate, Id, Item, Money, Plan, Toilet, ToiletWay, has_rough_prices};

/// The answer.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Toilets {
    /// Those of the kit, then each usual way that is not in it, public ones last.
    pub ways: Vec<ToiletOption>,
    /// How many of the ways are of the kit.
    pub own: usize,
    /// Days ahead.
    pub days: usize,
    /// On so many of them the place has a toilet.
    pub public_days: usize,
    /// The most days in a row on which it has none.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub without: Option<Without>,
}

/// A way of having a toilet.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct ToiletOption {
    /// Which; none for public ones.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub way: Option<ToiletWay>,
    /// The item of the kit, if it is one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub item: Option<Id>,
    /// Person-days from empty to full, or until the bags are gone. Sources: WHO 1992 and others, see the constants.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub person_days: Option<Estimate<f64>>,
    /// What it costs in an average month for everybody; of public ones, where one pays. None where no price is known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cost_a_month: Option<Money>,
}

/// Days in a row without a toilet at the place.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Without {
    /// The first.
    #[serde(serialize_with = "crate::plan::civil::serialize")]
    pub from: Date,
    /// How many.
    pub days: usize,
    /// As hours, when all of each counts.
    pub hours: usize,
}

impl Toilets {
    pub(super) fn new(plan: &Plan, input: &Input, days: &[WaterDay], places: &[Place]) -> Self {
        let public: Vec<bool> = places.iter().map(|place| place.public_toilet).collect();
        let without = longest_wait(&public).and_then(|wait| {
            let from = days.get(wait.from)?.on;
            Some(Without { from, days: wait.count, hours: wait.count * 24 })
        });
        let mut ways: Vec<ToiletOption> =
            plan.kept().filter_map(|item| item.toilet.as_ref().map(|toilet| of_kit(plan, item, toilet))).collect();
        let own = ways.len();
        let usual = [Some(ToiletWay::Portable), Some(ToiletWay::Dry), Some(ToiletWay::Bags), None];
        for way in usual {
            if way.is_none() || ways.iter().take(own).all(|known| known.way != way) {
                ways.push(usual_way(plan, way));
            }
        }
        let public_days = public.iter().filter(|has| **has).count();
        Self { ways, own, days: days.len(), public_days, without: without.filter(|_| input.people > 0) }
    }
}

fn of_kit(plan: &Plan, item: &Item, toilet: &Toilet) -> ToiletOption {
    let (way, tanks) = way_of(item, toilet);
    let price = item.unit_price.filter(|_| item.obtain.is_paid()).map(|price| price.likely());
    let is_bags = toilet.way == ToiletWay::Bags;
    let costs = Costs {
        bought: price.filter(|_| !is_bags).unwrap_or_default().times(item.kept()),
        lasts_months: toilet.lasts_months.unwrap_or(USUAL_LASTS_MONTHS),
        each_time: toilet.each_time.or(price.filter(|_| is_bags)).unwrap_or_default(),
    };
    let is_priced = price.is_some() || toilet.each_time.is_some() || !item.obtain.is_paid();
    ToiletOption {
        way: Some(toilet.way),
        item: Some(item.id),
        person_days: person_days(way).map(|days| times(days, tanks)),
        cost_a_month: is_priced.then(|| monthly(plan, way, &costs)),
    }
}

fn usual_way(plan: &Plan, kind: Option<ToiletWay>) -> ToiletOption {
    let eur = Money::new;
    let costs = |bought, each_time| Costs { bought, lasts_months: USUAL_LASTS_MONTHS, each_time };
    let (way, costs) = match kind {
        Some(ToiletWay::Portable) => {
            (Way::Portable { waste_l: USUAL_WASTE_L }, costs(eur(rough_eur::PORTABLE), eur(rough_eur::PORTABLE_EACH)))
        }
        Some(ToiletWay::Dry) => {
            (Way::Dry { waste_l: USUAL_WASTE_L }, costs(eur(rough_eur::DRY), eur(rough_eur::DRY_EACH)))
        }
        Some(ToiletWay::Bags) => (Way::Bags { count: USUAL_BAGS }, costs(Money::ZERO, eur(rough_eur::BAG))),
        None => (Way::Public, costs(Money::ZERO, eur(rough_eur::VISIT))),
    };
    let cost_a_month = has_rough_prices(&plan.currency).then(|| monthly(plan, way, &costs));
    ToiletOption { way: kind, item: None, person_days: person_days(way), cost_a_month }
}

fn monthly(plan: &Plan, way: Way, costs: &Costs) -> Money {
    cost_a_month(way, plan.people, costs).rounded(plan.minor_digits())
}

fn times(estimate: Estimate<f64>, times: f64) -> Estimate<f64> {
    let [low, likely, high] = [estimate.low(), estimate.likely(), estimate.high()].map(|days| days * times);
    Estimate::Range { low, likely, high }
}
