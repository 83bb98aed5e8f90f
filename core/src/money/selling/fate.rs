//! Keep, adapt, store or sell: what a thing at home is worth each way.

use crate::order;

/// Something at home. Amounts in minor units, within [`super::MOST_MINOR`].
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct AtHome {
    /// What it would be sold for now.
    pub price: i64,
    /// The chance of that, in millionths, 0 to 1,000,000.
    pub chance_ppm: u32,
    /// What the sale costs: a fee, a trip.
    pub sale_cost: i64,
    /// The price of what would have to be bought if it did not come along.
    pub replaces: i64,
    /// Whether it can come along as it is.
    pub is_usable: bool,
    /// What fitting it costs, if it is adapted; without, it cannot be.
    pub fit_cost: Option<i64>,
    /// What it still brings at the end, as it is.
    pub later_price: i64,
    /// What it still brings at the end once it was adapted.
    pub later_price_adapted: i64,
    /// What storing it costs a month; without, it cannot be stored.
    pub store_per_month: Option<i64>,
    /// For how many months.
    pub months: u32,
    /// Its mass.
    pub mass_kg: f64,
    /// The floor that it takes.
    pub floor_m2: f64,
    /// Its mass once it is adapted.
    pub adapted_mass_kg: f64,
    /// The floor that it takes once it is adapted.
    pub adapted_floor_m2: f64,
}

/// What can become of a thing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fate {
    /// It is sold now.
    Sell,
    /// It comes along as it is.
    Keep,
    /// It comes along, cut or fitted.
    Adapt,
    /// It waits elsewhere.
    Store,
}

/// One of them, with what it comes to. Money is counted against selling now, which is therefore nothing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Choice {
    /// Which.
    pub fate: Fate,
    /// The price of what need not be bought.
    pub saved: i64,
    /// What fitting or storing costs.
    pub spent: i64,
    /// The sale that is forgone: its price by its chance, less what it costs; never less than nothing.
    pub forgone: i64,
    /// What it still brings at the end.
    pub later: i64,
    /// `saved + later - spent - forgone`.
    pub better_than_selling: i64,
    /// What it adds to the van's load.
    pub mass_kg: f64,
    /// The floor that it takes in the van.
    pub floor_m2: f64,
}

/// What can become of a thing, the most money first; of equal ones selling first. Mass and floor have no price here:
/// they stand beside it.
///
/// ```
/// use kerbstead_core::money::selling::{AtHome, Fate, fates};
/// let shelf = AtHome {
///     price: 4_000, chance_ppm: 500_000, replaces: 9_000, fit_cost: Some(1_500), later_price_adapted: 500,
///     adapted_mass_kg: 6.0, ..AtHome::default()
/// };
/// let choices = fates(&shelf);
/// assert_eq!((choices[0].fate, choices[0].better_than_selling), (Fate::Adapt, 6_000)); // 90 + 5 - 15 - 20
/// assert_eq!(choices[1].fate, Fate::Sell);
/// ```
pub fn fates(thing: &AtHome) -> Vec<Choice> {
    let nothing = Choice {
        fate: Fate::Sell,
        saved: 0,
        spent: 0,
        forgone: 0,
        later: 0,
        better_than_selling: 0,
        mass_kg: 0.0,
        floor_m2: 0.0,
    };
    let stays = Choice { forgone: expected_sale(thing), ..nothing };
    let along = Choice { saved: amount(thing.replaces), ..stays };
    let mut choices = vec![nothing];
    if thing.is_usable {
        let (mass_kg, floor_m2) = (thing.mass_kg, thing.floor_m2);
        choices.push(Choice { fate: Fate::Keep, later: amount(thing.later_price), mass_kg, floor_m2, ..along });
    }
    if let Some(fit) = thing.fit_cost {
        let (mass_kg, floor_m2) = (thing.adapted_mass_kg, thing.adapted_floor_m2);
        let (spent, later) = (amount(fit), amount(thing.later_price_adapted));
        choices.push(Choice { fate: Fate::Adapt, spent, later, mass_kg, floor_m2, ..along });
    }
    if let Some(store) = thing.store_per_month {
        let spent = amount(store) * i64::from(thing.months.min(1_200));
        choices.push(Choice { fate: Fate::Store, spent, later: amount(thing.later_price), ..stays });
    }
    for choice in &mut choices {
        choice.better_than_selling = choice.saved + choice.later - choice.spent - choice.forgone;
    }
    order::by_key(&choices, |choice| i64::MAX.abs_diff(choice.better_than_selling))
}

fn expected_sale(thing: &AtHome) -> i64 {
    let by_chance = (amount(thing.price) * i64::from(thing.chance_ppm.min(1_000_000)) + 500_000) / 1_000_000;
    (by_chance - amount(thing.sale_cost)).max(0)
}

/// Amounts below nothing count as nothing, and none is beyond what is planned with.
fn amount(minor: i64) -> i64 {
    minor.clamp(0, super::MOST_MINOR)
}
