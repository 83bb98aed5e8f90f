//! What can become of each of the plan's belongings.

use jiff::civil::Date;

use super::{AtHome, Choice, Fate, MOST_MINOR, fates, offered};
use crate::explain::{Figure, Source, Working};
use crate::money::constants::{DAYS_PER_MONTH, STORED_MONTHS};
use crate::plan::{Belonging, Id, Kept, Money, Plan, Quantity, decimal};
use crate::run::Timeline;
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

/// A belonging, and what can become of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Fates {
    /// The belonging.
    pub id: Id,
    /// Each way, the most money first; mass and floor stand beside it.
    pub ways: Vec<FateWay>,
}

/// One way, against selling now.
#[derive(Clone, Debug, PartialEq)]
pub struct FateWay {
    /// Which.
    pub fate: Fate,
    /// How much more it is worth than selling; selling itself is worth nothing more.
    pub better: Money,
    /// What it adds to the van's load, in kilograms.
    pub mass_kg: f64,
    /// The floor that it takes in the van, in square metres.
    pub floor_m2: f64,
    /// How it came about.
    pub working: Working,
}

/// What can become of each belonging of which the plan says what it would be worth if it is not sold, and that is not
/// sold yet.
///
/// ```
/// use jiff::civil::date;
/// use kerbstead_core::money::selling::{Fate, fates_of};
/// use kerbstead_core::plan::{Belonging, Kept, Money, Plan};
/// let kept = Kept { replaces: Some(Money::whole(90)), ..Kept::default() };
/// let shelf = Belonging { id: 1, price: Some(Money::whole(40).into()), kept: Some(kept), ..Belonging::default() };
/// let plan = Plan { belongings: vec![shelf], ..Plan::default() };
/// let best = &fates_of(&plan, date(2027, 3, 1))[0].ways[0];
/// assert_eq!((best.fate, best.better), (Fate::Keep, Money::whole(50)));
/// ```
pub fn fates_of(plan: &Plan, as_of: Date) -> Vec<Fates> {
    let offered = offered(plan, as_of);
    let months = months_stored(plan, as_of);
    let one = |belonging: &Belonging| {
        let kept = belonging.kept.filter(|_| belonging.outcome.is_none())?;
        let by_formula = offered.iter().find(|offered| offered.id == belonging.id).map(|offered| offered.percent);
        let stated = belonging.chance_percent.map(decimal::to_float);
        let percent = stated.or(by_formula).unwrap_or(100.0);
        let at_home = at_home(plan, belonging, &kept, percent, months);
        let way = |choice: &Choice| way(plan, &at_home, choice);
        Some(Fates { id: belonging.id, ways: fates(&at_home).iter().map(way).collect() })
    };
    plan.belongings.iter().filter_map(one).collect()
}

/// Months of the route, begun ones as whole.
pub fn months_stored(plan: &Plan, as_of: Date) -> u32 {
    let days = Decimal::from(Timeline::new(plan, as_of).road().count());
    let months = decimal::over(days, DAYS_PER_MONTH).and_then(|months| months.ceil().to_u32());
    months.filter(|months| *months > 0).unwrap_or(STORED_MONTHS)
}

#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // clamped just before
fn at_home(plan: &Plan, belonging: &Belonging, kept: &Kept, percent: f64, months: u32) -> AtHome {
    let minor = |amount: Money| amount.to_minor(plan.minor_digits()).unwrap_or(MOST_MINOR);
    let or_nothing = |amount: Option<Money>| amount.map_or(0, minor);
    let size = |value: Option<f64>| value.filter(|value| *value > 0.0 && value.is_finite()).unwrap_or(0.0);
    AtHome {
        price: belonging.price.map_or(0, |price| minor(price.likely())),
        chance_ppm: (percent.clamp(0.0, 100.0) * 10_000.0).round() as u32,
        sale_cost: or_nothing(belonging.selling_cost),
        replaces: or_nothing(kept.replaces),
        is_usable: kept.usable,
        fit_cost: kept.fit_cost.map(minor),
        later_price: or_nothing(kept.later_price),
        later_price_adapted: or_nothing(kept.fitted_later_price),
        store_per_month: kept.storage_monthly.map(minor),
        months,
        mass_kg: size(kept.mass_kg),
        floor_m2: size(kept.floor_m2),
        adapted_mass_kg: size(kept.fitted_mass_kg.or(kept.mass_kg)),
        adapted_floor_m2: size(kept.fitted_floor_m2.or(kept.floor_m2)),
    }
}

fn way(plan: &Plan, at_home: &AtHome, choice: &Choice) -> FateWay {
    let money = |minor: i64| Money::from_minor(minor, plan.minor_digits());
    let figure = |minor: i64| Figure::Money(money(minor));
    let sold = || {
        let percent = f64::from(at_home.chance_ppm) / 10_000.0;
        let sale = money(at_home.price).percent(Decimal::new(i64::from(at_home.chance_ppm), 4));
        vec![
            ("price", figure(at_home.price)),
            ("percent", Figure::of(percent, Quantity::Percent)),
            ("cost", figure(at_home.sale_cost)),
            ("sale", Figure::Money((sale - money(at_home.sale_cost)).rounded(plan.minor_digits()).max(Money::ZERO))),
        ]
    };
    let kept = || {
        vec![
            ("saved", figure(choice.saved)),
            ("later", figure(choice.later)),
            ("spent", figure(choice.spent)),
            ("forgone", figure(choice.forgone)),
            ("better", figure(choice.better_than_selling)),
        ]
    };
    let (formula, figures) = match choice.fate {
        Fate::Sell => ("working-selling-sale", sold()),
        Fate::Keep | Fate::Adapt | Fate::Store => ("working-selling-fate", kept()),
    };
    FateWay {
        fate: choice.fate,
        better: money(choice.better_than_selling),
        mass_kg: choice.mass_kg,
        floor_m2: choice.floor_m2,
        working: Working { formula, figures, source: Source::Arithmetic },
    }
}
