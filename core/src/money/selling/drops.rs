//! Asking prices that fall until the date, for one thing or for many that together are to bring a sum.

use super::{Demand, amount, price, sound};
use crate::money::chance::MOST_MINOR;
use crate::run::MOST_DAYS;

/// The most things that are planned at once.
pub const MOST_THINGS: usize = 60;
/// The most looks at a price: weekly ones for more than a year.
pub const MOST_LOOKS: u32 = 60;
/// Prices that are tried at each look: from one and a half times the usual one down to the lowest, in equal ratios.
const PRICES: u32 = 32;
/// Steps in which the sum is counted. A price is rounded to the nearest, so the chance of reaching the sum is that of
/// reaching it within about a percent.
const STEPS: usize = 500;
/// How much being rid of a thing is worth beside its price, as a share of its usual price: more and more until the chance is
/// reached.
const EAGERNESS: [f64; 12] = [0.0, 0.1, 0.2, 0.35, 0.5, 0.75, 1.0, 1.5, 2.0, 3.0, 5.0, 10.0];

/// A thing to be sold.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Thing {
    /// How it finds its buyer.
    pub demand: Demand,
    /// The lowest price that is accepted, in minor units, from 1 on.
    pub lowest: i64,
    /// What selling it costs, in minor units, 0 to [`MOST_MINOR`]. It is taken off what it brings.
    pub cost: i64,
}

/// What the things are to bring.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wish {
    /// The sum, in minor units, 1 to [`MOST_MINOR`].
    pub sum: i64,
    /// The chance that is wanted of reaching it, 0 to 1.
    pub chance: f64,
    /// In how many days the money must be there, 1 to [`MOST_DAYS`].
    pub days: u32,
    /// After how many days a price is looked at again; [`crate::money::constants::DAYS_PER_PRICE`] is usual.
    pub days_per_price: u32,
    /// Prices are multiples of so many minor units, from 1 on, as people ask them; but for the lowest.
    pub price_step: i64,
}

/// A price and how long it is asked.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stage {
    /// From which day on, counted from the first.
    pub from_day: u32,
    /// The price, in minor units.
    pub asking: i64,
    /// The chance, 0 to 1, that it is sold by the end of this stage.
    pub sold_by_end: f64,
}

/// When to ask what.
#[derive(Clone, Debug, PartialEq)]
pub struct SalesPlan {
    /// The prices of each thing, which never rise.
    pub stages: Vec<Vec<Stage>>,
    /// The chance, 0 to 1, that all together bring the sum.
    pub chance: f64,
    /// What they bring on average, in minor units.
    pub expected: i64,
    /// The last day on which all can be listed and still reach the sum with the chance; `None` when even today is too
    /// late. The prices above are those of listing today.
    pub list_by: Option<u32>,
}

/// Why no plan is made. The place is counted from 0.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NotPlanned {
    /// There may be [`MOST_THINGS`] at most.
    TooMany,
    /// The sum must be 1 to [`MOST_MINOR`].
    Sum,
    /// The days must be 1 to [`MOST_DAYS`].
    Days,
    /// A price must last a day or more, and so long that there are [`MOST_LOOKS`] at most.
    DaysPerPrice,
    /// The usual or the lowest price of a thing is not 1 to [`MOST_MINOR`].
    Price(usize),
}

/// Falling prices for each thing that bring the sum with the chance that is wanted, and the most on average among those
/// that are tried; when none do, those that come nearest.
///
/// A thing's prices are chosen from the last look back to the first, each as the one that is worth most: price and
/// eagerness if it sells, or what the looks after it are worth. The more eager, the lower. Things sell apart from one
/// another. The work is bounded: at most 132 times things, looks and 500 steps multiplied.
///
/// # Errors
/// When something is out of bounds, with its place.
///
/// ```
/// use kerbstead_core::money::selling::{Demand, Thing, Wish, plan_sales};
/// let desk = Demand { usual_price: 12_000, half_sold_days: 10.0, steepness: 3.0 };
/// let wish = Wish { sum: 6_000, chance: 0.9, days: 28, days_per_price: 7, price_step: 100 };
/// let plan = plan_sales(&[Thing { demand: desk, lowest: 6_000, cost: 0 }], &wish).unwrap();
/// assert!(plan.chance >= 0.9 && plan.list_by.is_some());
/// assert!(plan.stages[0].is_sorted_by(|before, after| before.asking >= after.asking));
/// ```
pub fn plan_sales(things: &[Thing], wish: &Wish) -> Result<SalesPlan, NotPlanned> {
    check(things, wish)?;
    let ladders: Vec<Ladder> = things.iter().map(|thing| Ladder::new(thing, wish)).collect();
    let plan = nearest(&ladders, wish, wish.days);
    let reaches = |plan: &SalesPlan| plan.chance >= wish.chance;
    // Halving between the last day known to be early enough and the first known to be too late.
    let (mut early, mut late) = (0, wish.days);
    while reaches(&plan) && late - early > 1 {
        let middle = u32::midpoint(early, late);
        if reaches(&nearest(&ladders, wish, wish.days - middle)) {
            early = middle;
        } else {
            late = middle;
        }
    }
    let list_by = reaches(&plan).then_some(early);
    Ok(SalesPlan { list_by, ..plan })
}

fn check(things: &[Thing], wish: &Wish) -> Result<(), NotPlanned> {
    let is_price = |amount: i64| (1..=MOST_MINOR).contains(&amount);
    if things.len() > MOST_THINGS {
        return Err(NotPlanned::TooMany);
    }
    if !is_price(wish.sum) {
        return Err(NotPlanned::Sum);
    }
    if wish.days == 0 || wish.days > MOST_DAYS {
        return Err(NotPlanned::Days);
    }
    if wish.days_per_price == 0 || wish.days.div_ceil(wish.days_per_price) > MOST_LOOKS {
        return Err(NotPlanned::DaysPerPrice);
    }
    let is_wrong = |thing: &Thing| {
        !is_price(thing.lowest) || !is_price(thing.demand.usual_price) || !(0..=MOST_MINOR).contains(&thing.cost)
    };
    things.iter().position(is_wrong).map_or(Ok(()), |at| Err(NotPlanned::Price(at)))
}

/// The least eager plan that reaches the chance in so many days, or the one that comes nearest.
fn nearest(ladders: &[Ladder], wish: &Wish, days: u32) -> SalesPlan {
    let mut best: Option<SalesPlan> = None;
    for eagerness in EAGERNESS {
        let stages: Vec<_> = ladders.iter().map(|ladder| prices(ladder, wish, days, eagerness)).collect();
        let costs = || stages.iter().zip(ladders).map(|(stages, ladder)| (stages.as_slice(), ladder.cost));
        let (chance, expected) = (chance_of(costs(), wish.sum), costs().map(expected).sum());
        if best.as_ref().is_none_or(|best| chance > best.chance) {
            best = Some(SalesPlan { stages, chance, expected, list_by: None });
        }
        if chance >= wish.chance {
            break;
        }
    }
    best.unwrap_or(SalesPlan { stages: Vec::new(), chance: 0.0, expected: 0, list_by: None })
}

/// The prices of a thing, found from the last look back; none is below the one after it.
fn prices(ladder: &Ladder, wish: &Wish, days: u32, eagerness: f64) -> Vec<Stage> {
    let bonus = ladder.usual * eagerness - ladder.cost as f64;
    let looks = days.div_ceil(wish.days_per_price);
    let mut stages = Vec::new();
    let mut worth = 0.0;
    for look in (0..looks).rev() {
        let from_day = look * wish.days_per_price;
        let length = wish.days_per_price.min(days - from_day);
        let (mut best, mut stage) = (-1.0, Stage { from_day, asking: ladder.lowest, sold_by_end: 0.0 });
        let next = stages.last().map_or(0, |stage: &Stage| stage.asking);
        for rung in ladder.rungs.iter().filter(|rung| rung.asking >= next) {
            let is_whole = length == wish.days_per_price;
            let chance = if is_whole { rung.chance } else { chance_within(rung.rate, length) };
            let value = chance * (price(rung.asking) + bonus).max(0.0) + (1.0 - chance) * worth;
            if value > best {
                (best, stage) = (value, Stage { from_day, asking: rung.asking, sold_by_end: chance });
            }
        }
        worth = best;
        stages.push(stage);
    }
    stages.reverse();
    add_up(&mut stages);
    stages
}

/// The chance of each stage becomes that of all up to it.
fn add_up(stages: &mut [Stage]) {
    let mut unsold = 1.0;
    for stage in stages {
        unsold *= 1.0 - stage.sold_by_end;
        stage.sold_by_end = 1.0 - unsold;
    }
}

/// The prices of a thing that are tried.
struct Ladder {
    usual: f64,
    lowest: i64,
    cost: i64,
    /// The highest first.
    rungs: Vec<Rung>,
}

struct Rung {
    asking: i64,
    /// Buyers a day.
    rate: f64,
    /// The chance that it is sold from one look at the price to the next.
    chance: f64,
}

impl Ladder {
    fn new(thing: &Thing, wish: &Wish) -> Self {
        let lowest = price(thing.lowest);
        let usual = price(thing.demand.usual_price);
        let highest = (usual * 1.5).max(lowest);
        let step = wish.price_step.max(1);
        let rung = |number: u32| {
            let share = f64::from(number) / f64::from(PRICES - 1);
            let asking = amount(highest * libm::pow(lowest / highest, share));
            let asking = (asking / step * step).max(thing.lowest);
            let rate = thing.demand.rate_per_day(asking);
            Rung { asking, rate, chance: chance_within(rate, wish.days_per_price) }
        };
        Self { usual, lowest: thing.lowest, cost: thing.cost, rungs: (0..PRICES).map(rung).collect() }
    }
}

fn chance_within(rate: f64, days: u32) -> f64 {
    -libm::expm1(-rate * f64::from(days))
}

/// The chance that the sum is reached, from the distribution of what the things bring, in [`STEPS`] of the sum.
fn chance_of<'a>(things: impl Iterator<Item = (&'a [Stage], i64)>, sum: i64) -> f64 {
    let mut brought = vec![0.0; STEPS + 1];
    brought[0] = 1.0;
    // Nothing lies above it yet.
    let mut top = 0;
    for (thing, cost) in things {
        let before = top;
        let mut next = vec![0.0; STEPS + 1];
        let unsold = thing.last().map_or(1.0, |stage| 1.0 - stage.sold_by_end);
        add(&mut next, &brought[..=before], unsold, 0);
        for (asking, chance) in sales(thing) {
            let steps = steps_of(asking - cost, sum);
            add(&mut next, &brought[..=before], chance, steps);
            top = top.max(before + steps).min(STEPS);
        }
        brought = next;
    }
    sound(brought[STEPS], 0.0, 1.0)
}

/// An amount in steps of the sum, to the nearest; less than nothing is nothing.
fn steps_of(amount: i64, sum: i64) -> usize {
    let steps =
        (amount.clamp(0, sum).unsigned_abs() * STEPS as u64 * 2 + sum.unsigned_abs()) / (sum.unsigned_abs() * 2);
    usize::try_from(steps).unwrap_or(STEPS)
}

fn add(to: &mut [f64], from: &[f64], chance: f64, steps: usize) {
    let within = to.len().saturating_sub(steps).min(from.len());
    for (to, share) in to.iter_mut().skip(steps).zip(from) {
        *to += share * chance;
    }
    let beyond: f64 = from.iter().skip(within).sum();
    if let Some(last) = to.last_mut() {
        *last += beyond * chance;
    }
}

/// What a thing brings on average, its cost taken off: each price by its chance in whole millionths.
fn expected((stages, cost): (&[Stage], i64)) -> i64 {
    let parts: i64 = sales(stages).map(|(asking, chance)| (asking - cost) * amount(chance * 1e6 + 0.5)).sum();
    parts / 1_000_000
}

/// Each price with the chance that it is the one that is paid.
pub(super) fn sales(stages: &[Stage]) -> impl Iterator<Item = (i64, f64)> {
    let mut before = 0.0;
    stages.iter().map(move |stage| {
        let chance = stage.sold_by_end - before;
        before = stage.sold_by_end;
        (stage.asking, chance)
    })
}
