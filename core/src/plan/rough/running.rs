//! What life takes day by day and month by month.

use jiff::civil::Date;

use crate::plan::starter::{has_rough_prices, money};
use crate::plan::{Cost, CostEvery, CostPhase, Estimate, Id, Income, Path, Per, Repeat, WaterUse};
use CostEvery::{HundredKm, Month, Year};
use CostPhase::{Always, Home, Road};

/// Diesel in cents of a euro a kilometre: 8 to 12 L per 100 km at 1.50 to 2.00 a litre. Common practice, no source.
const FUEL_CENTS_PER_KM: [i64; 3] = [12, 17, 24];

/// A usual cost, to begin a list of running costs with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CostStarter {
    /// The key of its name in the catalogue, which never changes.
    pub name_key: &'static str,
    /// Euro each time: low, likely and high. Common practice, no source.
    pub eur: [i64; 3],
    /// How often it is due.
    pub every: CostEvery,
    /// In which part of the plan.
    pub phase: CostPhase,
    /// The day of the month in a first plan, which has those costs alone that have one.
    day: Option<u32>,
    /// Whether it is for each person.
    each: bool,
}

const fn cost(name_key: &'static str, eur: [i64; 3], every: CostEvery, phase: CostPhase) -> CostStarter {
    CostStarter { name_key, eur, every, phase, day: None, each: false }
}

const fn first(on_day: u32, each: bool, starter: CostStarter) -> CostStarter {
    CostStarter { day: Some(on_day), each, ..starter }
}

/// Usual costs. Common practice, no source: they differ more between people than between countries.
pub const COST_STARTERS: [CostStarter; 12] = [
    first(1, false, cost("rough-cost-rent", [300, 480, 750], Month, Home)),
    first(2, true, cost("rough-cost-food", [130, 180, 260], Month, Always)),
    first(10, true, cost("rough-cost-phone", [8, 15, 30], Month, Always)),
    first(15, false, cost("rough-cost-insurance", [35, 55, 100], Month, Always)),
    first(20, true, cost("rough-cost-washing", [10, 20, 45], Month, Road)),
    first(25, false, cost("rough-cost-repairs", [25, 50, 100], Month, Road)),
    cost("rough-cost-wear", [2, 4, 8], HundredKm, Road),
    cost("rough-cost-roadside", [40, 80, 140], Year, Always),
    cost("rough-cost-inspection", [60, 120, 250], Year, Always),
    cost("rough-cost-address", [8, 15, 35], Month, Road),
    cost("rough-cost-storage", [30, 60, 120], Month, Road),
    cost("rough-cost-gym", [15, 25, 45], Month, Road),
];

/// A cost with the starter's values, for one person, and the path of its amount, which is a guess until it is
/// confirmed. Like other rough prices the amount is meant in euro and left empty in currencies far from it.
///
/// ```
/// use kerbstead_core::plan::{COST_STARTERS, starter_cost};
/// let (rent, guesses) = starter_cost(&COST_STARTERS[0], 7, "Rent".to_owned(), "EUR");
/// assert_eq!((rent.id, guesses[0].as_str()), (7, "costs/7/amount"));
/// assert_eq!(starter_cost(&COST_STARTERS[0], 7, "Rent".to_owned(), "JPY").0.amount, None);
/// ```
pub fn starter_cost(starter: &CostStarter, id: Id, name: String, currency: &str) -> (Cost, Vec<Path>) {
    let cost = Cost { id, name, ..starter.of(1, currency) };
    let guesses = cost.amount.map(|_| Path::entry("costs", id).child("amount")).into_iter().collect();
    (cost, guesses)
}

impl CostStarter {
    /// For so many people, without a name.
    fn of(&self, people: u32, currency: &str) -> Cost {
        let persons = if self.each { i64::from(people) } else { 1 };
        let amount = has_rough_prices(currency).then(|| money(self.eur.map(|amount| amount * persons)));
        Cost { amount, every: self.every, day_of_month: self.day, phase: self.phase, ..Cost::default() }
    }
}

/// Monthly costs for so many people who drive so far a week; without amounts in currencies for which there are none.
pub(super) fn costs(people: u32, km_per_week: u32, currency: &str, name: &dyn Fn(&str) -> String) -> Vec<Cost> {
    let fuel = first(5, false, cost("rough-cost-fuel", fuel(km_per_week), Month, Road));
    let rows = COST_STARTERS.into_iter().chain([fuel]).filter(|starter| starter.day.is_some());
    rows.map(|starter| Cost { name: name(starter.name_key), ..starter.of(people, currency) }).collect()
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
        is_drunk: key == "rough-water-drinking",
        ..WaterUse::default()
    };
    vec![
        each("rough-water-drinking", [2.5, 2.5, 3.0], 0.0),
        each("rough-water-cooking", [3.0, 3.0, 6.0], 20.0),
        each("rough-water-washing", [2.0, 2.0, 6.0], 80.0),
    ]
}
