//! Selling by the date against formulas, simulated buyers and other prices; what becomes of a thing, and the reserve,
//! worked out by hand.
#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]

use jiff::civil::Date;
use kerbstead_core::assess;
use kerbstead_core::money::chance::{Chance, MOST_MINOR, Refused};
use kerbstead_core::money::futures::{MOST_BUILDS, compared};
use kerbstead_core::money::selling::{
    AtHome, Demand, Fate, NotPlanned, SalesPlan, Thing, Wish, fates, fates_of, offered, plan_sales, schedule,
};
use kerbstead_core::money::{CostAhead, Reserve, reserve};
use kerbstead_core::plan::Plan;
use kerbstead_tests::generate::{cases, native_plans, seeded};

const DESK: Thing =
    Thing { demand: Demand { usual_price: 12_000, half_sold_days: 12.0, steepness: 3.0 }, lowest: 4_000, cost: 0 };
const WISH: Wish = Wish { sum: 6_000, chance: 0.8, days: 42, days_per_price: 7, price_step: 1 };

fn even(chance: &mut Chance) -> f64 {
    f64::from(chance.below(u32::MAX)) / f64::from(u32::MAX)
}

#[test]
fn price_days_and_chance_are_one_formula() {
    let mut chance = Chance::new(1);
    for _ in 0..2_000 {
        let demand = Demand {
            usual_price: i64::from(100 + chance.below(900_000)),
            half_sold_days: 0.5 + 60.0 * even(&mut chance),
            steepness: 0.5 + 6.0 * even(&mut chance),
        };
        let (days, wanted) = (1.0 + 90.0 * even(&mut chance), 0.02 + 0.96 * even(&mut chance));
        assert!((demand.chance_within(demand.usual_price, demand.half_sold_days) - 0.5).abs() < 1e-12);
        let asking = demand.price_for(days, wanted);
        if (100..MOST_MINOR).contains(&asking) {
            assert!(demand.chance_within(asking, days) >= wanted - 1e-9);
            assert!(demand.chance_within(asking + 1, days) < wanted + 1e-9);
            let needed = demand.days_for(asking, wanted);
            assert!(needed <= days + 1e-6 && (demand.chance_within(asking, needed) - wanted).abs() < 1e-9);
        }
    }
}

#[test]
fn nonsense_in_a_demand_gives_numbers_all_the_same() {
    for half_sold_days in [f64::NAN, 0.0, -3.0, f64::INFINITY] {
        for steepness in [f64::NAN, -1.0, f64::INFINITY, 0.0] {
            for usual_price in [i64::MIN, 0, 5, i64::MAX] {
                let demand = Demand { usual_price, half_sold_days, steepness };
                let chance = demand.chance_within(i64::MAX, f64::INFINITY);
                assert!((0.0..=1.0).contains(&chance) && !demand.days_for(0, f64::NAN).is_nan());
                assert!((0..=MOST_MINOR).contains(&demand.price_for(f64::NAN, 2.0)));
            }
        }
    }
}

/// The sum that buyers who come by chance would pay, asked those prices.
fn simulated(things: &[Thing], plan: &SalesPlan, days: u32, chance: &mut Chance) -> i64 {
    let mut sum = 0;
    for (thing, stages) in things.iter().zip(&plan.stages) {
        // A buyer comes once the rates have added up to an exponential draw.
        let mut patience = -libm::log1p(-even(chance) * 0.999_999_999);
        for (at, stage) in stages.iter().enumerate() {
            let until = stages.get(at + 1).map_or(days, |next| next.from_day);
            patience -= thing.demand.rate_per_day(stage.asking) * f64::from(until - stage.from_day);
            if patience <= 0.0 {
                sum += stage.asking;
                break;
            }
        }
    }
    sum
}

fn things(chance: &mut Chance) -> Vec<Thing> {
    let one = |chance: &mut Chance| {
        let usual_price = i64::from(1_000 + chance.below(30_000));
        let half_sold_days = 4.0 + 40.0 * even(chance);
        let demand = Demand { usual_price, half_sold_days, steepness: 1.5 + 3.0 * even(chance) };
        Thing { demand, lowest: usual_price * i64::from(20 + chance.below(60)) / 100, cost: 0 }
    };
    (0..=chance.below(9)).map(|_| one(chance)).collect()
}

#[test]
fn a_plan_brings_what_it_says_to_simulated_buyers() {
    const ROUNDS: u32 = 20_000;
    let mut chance = Chance::new(8);
    let (mut reached, mut not_reached) = (0, 0);
    for number in 0..30 {
        let things = things(&mut chance);
        let usual: i64 = things.iter().map(|thing| thing.demand.usual_price).sum();
        let sum = usual * i64::from(20 + chance.below(60)) / 100;
        let wish = Wish {
            sum,
            chance: 0.5 + 0.45 * even(&mut chance),
            days: 10 + chance.below(80),
            days_per_price: 7,
            price_step: 1,
        };
        let plan = plan_sales(&things, &wish).unwrap();
        let (mut enough, mut total, mut nearly, mut more) = (0, 0, 0, 0);
        for _ in 0..ROUNDS {
            let got = simulated(&things, &plan, wish.days, &mut chance);
            enough += u32::from(got >= sum);
            nearly += u32::from(got * 100 >= sum * 99);
            more += u32::from(got * 100 >= sum * 101);
            total += got;
        }
        let share = |count: u32| f64::from(count) / f64::from(ROUNDS);
        assert!(plan.chance < share(nearly) + 0.015 && plan.chance > share(more) - 0.015, "{number}: {}", plan.chance);
        assert!((plan.chance - share(enough)).abs() < 0.05, "{number}: {} for {}", plan.chance, share(enough));
        let mean = total as f64 / f64::from(ROUNDS);
        assert!((mean / plan.expected as f64 - 1.0).abs() < 0.03, "{number}: {mean} for {}", plan.expected);
        assert!(plan.stages.iter().flatten().all(|stage| stage.asking > 0));
        assert!(plan.stages.iter().all(|stages| stages.is_sorted_by(|before, after| before.asking >= after.asking)));
        if plan.chance >= wish.chance {
            reached += 1;
        } else {
            not_reached += 1;
        }
        assert_eq!(plan.list_by.is_some(), plan.chance >= wish.chance);
    }
    assert!(reached > 5 && not_reached > 2, "{reached} {not_reached}");
}

#[test]
fn no_other_falling_prices_bring_more_on_average() {
    let wish = Wish { sum: 1, chance: 0.0, ..WISH };
    let plan = plan_sales(&[DESK], &wish).unwrap();
    let mut chance = Chance::new(3);
    for _ in 0..20_000 {
        let (mut asking, mut unsold, mut mean) = (18_000_i64, 1.0, 0.0);
        for _ in 0..6 {
            asking = (asking * i64::from(60 + chance.below(41)) / 100).max(DESK.lowest);
            let sold = DESK.demand.chance_within(asking, 7.0);
            mean += unsold * sold * asking as f64;
            unsold *= 1.0 - sold;
        }
        assert!(mean < plan.expected as f64 * 1.005, "{mean} beats {}", plan.expected);
    }
}

#[test]
fn the_last_day_to_list_is_the_last_that_reaches_it() {
    let plan = plan_sales(&[DESK], &WISH).unwrap();
    let list_by = plan.list_by.unwrap();
    assert!(plan.chance >= WISH.chance && list_by > 0 && list_by < WISH.days);
    let chance = |days| plan_sales(&[DESK], &Wish { days, ..WISH }).unwrap().chance;
    assert!(chance(WISH.days - list_by) >= WISH.chance && chance(WISH.days - list_by - 1) < WISH.chance);
    // Nobody is asked more than one and a half times the usual price.
    let hopeless = plan_sales(&[DESK], &Wish { sum: 18_300, ..WISH }).unwrap();
    assert_eq!((hopeless.chance < 1e-9, hopeless.list_by), (true, None));
}

#[test]
fn what_cannot_be_planned_is_refused_with_its_place() {
    let wrong = Thing { lowest: 0, ..DESK };
    let cases = [
        (vec![DESK; 61], WISH, NotPlanned::TooMany),
        (vec![DESK], Wish { sum: 0, ..WISH }, NotPlanned::Sum),
        (vec![DESK], Wish { sum: i64::MAX, ..WISH }, NotPlanned::Sum),
        (vec![DESK], Wish { days: 0, ..WISH }, NotPlanned::Days),
        (vec![DESK], Wish { days: 1_101, ..WISH }, NotPlanned::Days),
        (vec![DESK], Wish { days_per_price: 0, ..WISH }, NotPlanned::DaysPerPrice),
        (vec![DESK], Wish { days: 61, days_per_price: 1, ..WISH }, NotPlanned::DaysPerPrice),
        (vec![DESK, wrong], WISH, NotPlanned::Price(1)),
    ];
    for (things, wish, refused) in cases {
        assert_eq!(plan_sales(&things, &wish), Err(refused));
    }
    assert_eq!(plan_sales(&[], &WISH).map(|plan| (plan.expected, plan.list_by)), Ok((0, None)));
}

#[test]
fn what_becomes_of_a_thing_goes_by_the_money() {
    // 80.00 at 75 % less 10.00 are 50.00 forgone. Kept: 120 + 40 - 50. Adapted: 120 + 15 - 30 - 50. Stored: 40 - 90 - 50.
    let table = AtHome {
        price: 8_000,
        chance_ppm: 750_000,
        sale_cost: 1_000,
        replaces: 12_000,
        is_usable: true,
        fit_cost: Some(3_000),
        later_price: 4_000,
        later_price_adapted: 1_500,
        store_per_month: Some(1_500),
        months: 6,
        mass_kg: 14.0,
        floor_m2: 0.6,
        adapted_mass_kg: 9.0,
        adapted_floor_m2: 0.3,
    };
    let found = |thing: &AtHome| -> Vec<_> {
        fates(thing).iter().map(|choice| (choice.fate, choice.better_than_selling, choice.mass_kg)).collect()
    };
    let expected =
        [(Fate::Keep, 11_000, 14.0), (Fate::Adapt, 5_500, 9.0), (Fate::Sell, 0, 0.0), (Fate::Store, -10_000, 0.0)];
    assert_eq!(found(&table), expected);
    // What is not to be had is not offered, and nobody pays to sell.
    let junk = AtHome { price: 500, chance_ppm: 100_000, sale_cost: 900, ..AtHome::default() };
    assert_eq!(found(&junk), [(Fate::Sell, 0, 0.0)]);
    let even = AtHome { is_usable: true, price: 5_000, chance_ppm: 1_000_000, replaces: 5_000, ..AtHome::default() };
    assert_eq!(found(&even)[0].0, Fate::Sell);
}

#[test]
fn the_reserve_is_that_of_the_triangle_and_of_many_the_normal_curve() {
    // A right triangle that rises from 0 to 1,000.00: the percentile is the square root of the share.
    let rising = CostAhead { low: 0, likely: 100_000, high: 100_000 };
    let one = reserve(&[rising], 10.into(), 0, 5).unwrap();
    let exact = 100_000.0 * (0.8_f64.sqrt() - 0.5_f64.sqrt());
    assert!((one.from_ranges as f64 - exact).abs() < 0.04 * exact, "{} for {exact}", one.from_ranges);
    // The variance of 60 such is 60 / 18 of the square, and the 80th percentile 0.8416 standard deviations up.
    let many = reserve(&[rising; 60], 10.into(), 0, 5).unwrap();
    let exact = 0.8416 * 100_000.0 * (60.0_f64 / 18.0).sqrt();
    assert!((many.from_ranges as f64 - exact).abs() < 0.04 * exact, "{} for {exact}", many.from_ranges);
    assert_eq!((many.from_share, many.without_range, many.total), (0, 0, many.from_ranges));
}

#[test]
fn without_ranges_the_reserve_is_a_share_and_the_breakdown() {
    let sure = |amount| CostAhead { low: amount, likely: amount, high: amount };
    let expected =
        Reserve { from_share: 1_235, without_range: 2, breakdown: 30_000, total: 31_235, ..Reserve::default() };
    assert_eq!(reserve(&[sure(10_000), sure(2_345)], 10.into(), 30_000, 1), Ok(expected));
    assert_eq!(reserve(&[], 10.into(), 0, 1), Ok(Reserve::default()));
    assert_eq!(
        reserve(&[sure(5), CostAhead { low: 9, likely: 8, high: 10 }], 10.into(), 0, 1),
        Err(Refused::Amount(1))
    );
    assert_eq!(reserve(&[sure(5)], 10.into(), i64::MAX, 1), Err(Refused::Purse));
    assert_eq!(reserve(&vec![sure(MOST_MINOR); 1_000], 100.into(), 0, 1).map(|it| it.total), Ok(MOST_MINOR * 1_000));
}

/// Whatever a plan says, what comes of it is sound.
#[test]
fn any_plan_gives_numbers_that_can_be_shown() {
    let (mut schedules, mut ways) = (0, 0);
    let odd = seeded(&native_plans(), 22, 200).into_iter().map(|plan| (plan, Date::constant(2027, 2, 20)));
    for (plan, as_of) in seeded(&cases(), 21, 400).into_iter().chain(odd) {
        let (has_schedule, has_ways) = check_choices(&plan, as_of);
        schedules += usize::from(has_schedule);
        ways += usize::from(has_ways);
    }
    assert!(schedules > 40 && ways > 150, "{schedules} {ways}");
}

/// Whether it has prices that fall, and ways of building.
fn check_choices(plan: &Plan, as_of: Date) -> (bool, bool) {
    let is_percent = |percent: f64| (0.0..=100.0 + 1e-9).contains(&percent);
    assert!(offered(plan, as_of).iter().all(|thing| is_percent(thing.percent)));
    for thing in fates_of(plan, as_of) {
        assert!(thing.ways.is_sorted_by(|one, next| one.better >= next.better));
        assert!(thing.ways.iter().all(|way| way.mass_kg >= 0.0 && way.mass_kg.is_finite() && way.floor_m2 >= 0.0));
    }
    let report = assess(plan, as_of).money;
    let found = schedule(plan, as_of, &report);
    if let Ok(found) = &found {
        assert!(is_percent(found.percent) && found.prices.iter().all(|prices| is_percent(prices.percent)));
        let is_enough = found.percent >= found.wanted_percent.clamp(0.0, 100.0) - 1e-9;
        assert!(found.list_by.is_none() || is_enough, "{} of {}", found.percent, found.wanted_percent);
    }
    let ahead = compared(plan, as_of, &report);
    assert!(ahead.ways.len() <= MOST_BUILDS + 1 && ahead.against.len() + 1 == ahead.ways.len());
    assert!(ahead.against.is_sorted_by(|one, next| one.dearer <= next.dearer));
    assert!(ahead.against.iter().all(|one| !one.dearer.is_negative()));
    (found.is_ok(), ahead.ways.len() > 2)
}
