//! What life takes day by day and month by month.

use jiff::civil::Date;

use crate::plan::starter::{has_rough_prices, money};
use crate::plan::{Cost, CostPhase, Estimate, Income, Per, Repeat, WaterUse};

/// Diesel in cents of a euro a kilometre: 8 to 12 L per 100 km at 1.50 to 2.00 a litre. Common practice, no source.
const FUEL_CENTS_PER_KM: [i64; 3] = [12, 17, 24];

/// A monthly cost: key, euro a month (low, likely, high), whether for each person, day of the month, phase.
type Row = (&'static str, [i64; 3], bool, u32, CostPhase);

/// Common practice, no source: they differ more between people than between countries.
const MONTHLY: [Row; 6] = [
    ("rough-cost-rent", [300, 480, 750], false, 1, CostPhase::Home),
    ("rough-cost-food", [130, 180, 260], true, 2, CostPhase::Always),
    ("rough-cost-phone", [8, 15, 30], true, 10, CostPhase::Always),
    ("rough-cost-insurance", [35, 55, 100], false, 15, CostPhase::Always),
    ("rough-cost-washing", [10, 20, 45], true, 20, CostPhase::Road),
    ("rough-cost-repairs", [25, 50, 100], false, 25, CostPhase::Road),
];

/// Monthly costs for so many people who drive so far a week; without amounts in currencies for which there are none.
pub(super) fn costs(people: u32, km_per_week: u32, currency: &str, name: &dyn Fn(&str) -> String) -> Vec<Cost> {
    let fuel = ("rough-cost-fuel", fuel(km_per_week), false, 5, CostPhase::Road);
    let rows = MONTHLY.into_iter().chain([fuel]);
    rows.map(|(key, euro, each, day, phase)| {
        let persons = if each { i64::from(people) } else { 1 };
        let amount = has_rough_prices(currency).then(|| money(euro.map(|amount| amount * persons)));
        Cost { name: name(key), amount, day_of_month: Some(day), phase, ..Cost::default() }
    })
    .collect()
}

/// A line for wages, without an amount: what somebody earns is never guessed, for a guess too high would say that a plan
/// holds when it does not.
pub(super) fn incomes(first_on: Date, name: &dyn Fn(&str) -> String) -> Vec<Income> {
    vec![Income { name: name("rough-income"), on: Some(first_on), repeat: Repeat::Monthly, ..Income::default() }]
}

/// Euro a month: a year of 52 weeks in 12 parts.
fn fuel(km_per_week: u32) -> [i64; 3] {
    FUEL_CENTS_PER_KM.map(|cents| i64::from(km_per_week) * 52 * cents / (12 * 100))
}

/// Fresh water a person a day. Source: Sphere Handbook 2011, basic survival water needs (drinking and food 2.5 to 3,
/// cooking 3 to 6, basic hygiene 2 to 6 L); whoever carries every litre is taken at the low end. What becomes used
/// water: common practice, no source.
pub(super) fn water_uses(name: &dyn Fn(&str) -> String) -> Vec<WaterUse> {
    let each = |key: &str, [low, likely, high]: [f64; 3], to_grey_percent| WaterUse {
        id: 0,
        name: name(key),
        litres_per_day: Estimate::Range { low, likely, high },
        per: Per::Person,
        to_grey_percent,
    };
    vec![
        each("rough-water-drinking", [2.5, 2.5, 3.0], 0.0),
        each("rough-water-cooking", [3.0, 3.0, 6.0], 20.0),
        each("rough-water-washing", [2.0, 2.0, 6.0], 80.0),
    ]
}
