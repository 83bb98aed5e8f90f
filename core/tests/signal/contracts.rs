//! The cheapest contracts against every way of using them, and allowances worked by hand.

use super::money;
use kerbstead_core::draws::Chance;
use kerbstead_core::plan::Money;
use kerbstead_core::signal::allowance::{Beyond, Contract, Meter, NotChosen, Wanted, cheapest, periods};

fn contract(allowance_gb: u64, price: i64, beyond: Beyond) -> Contract {
    Contract { allowance_mb: Some(allowance_gb * 1_000), price: Money::whole(price), days: None, beyond }
}

/// What a contract can give in whole GB, with the price of each GB: included, slowly, beyond. Independent of the tested code:
/// whole numbers of GB, prices in cents.
struct Gives {
    price: i64,
    included_gb: i64,
    slow_gb: i64,
    beyond: Option<i64>,
}

/// The least price in cents of giving so many GB by any contracts, taken or not, each giving any number of GB in any way; slow
/// data by one of them. Everything is tried.
fn least(contracts: &[Gives], wanted_gb: i64, slow_is_used: bool) -> Option<i64> {
    let Some((first, rest)) = contracts.split_first() else { return (wanted_gb == 0).then_some(0) };
    let mut best = least(rest, wanted_gb, slow_is_used);
    for included in 0..=first.included_gb.min(wanted_gb) {
        let left = wanted_gb - included;
        for slow in 0..=if slow_is_used { 0 } else { first.slow_gb.min(left) } {
            for beyond in 0..=if first.beyond.is_some() { left - slow } else { 0 } {
                let price = first.price + first.beyond.unwrap_or(0) * beyond;
                let others = least(rest, left - slow - beyond, slow_is_used || slow > 0);
                best = best.into_iter().chain(others.map(|others| others + price)).min();
            }
        }
    }
    best
}

#[test]
fn nothing_is_cheaper_than_the_cheapest() {
    let (mut chosen, mut together, mut none) = (0, 0, 0);
    for seed in 0..450 {
        let mut chance = Chance::new(seed);
        let mut below = |count: u32| i64::from(chance.below(count));
        let wanted = Wanted { mb: 0, least_kbit_s: 100.0, slow_hours: 40.0, ..Wanted::default() };
        let (mut contracts, mut gives) = (vec![], vec![]);
        for _ in 0..=below(4) {
            let (included_gb, price) = (below(4), 100 + below(2_000));
            let (beyond, slow_gb, per_gb) = match below(4) {
                0 => (Beyond::Stops, 0, None),
                // 0.45 MB an hour for each kbit/s: 18 MB in forty hours.
                1 => (Beyond::Slowed { kbit_s: 1_000.0 / 18.0 }, 0, None), // a GB, but too slow
                2 => (Beyond::Slowed { kbit_s: 2_000.1 / 18.0 }, 2, None),
                _ => {
                    let per_gb = 100 + below(900);
                    (Beyond::Costs { per_gb: Money::from_minor(per_gb, 2) }, 0, Some(per_gb))
                }
            };
            let price_money = Money::from_minor(price, 2);
            let days = (below(2) == 0).then_some(15);
            let times = if days.is_some() { 2 } else { 1 };
            let allowance_mb = Some(u64::try_from(included_gb * 1_000).unwrap());
            contracts.push(Contract { allowance_mb, price: price_money, days, beyond });
            gives.push(Gives { price: price * times, included_gb: included_gb * times, slow_gb, beyond: per_gb });
        }
        let wanted_gb = below(9);
        let found = cheapest(&contracts, &Wanted { mb: u64::try_from(wanted_gb * 1_000).unwrap(), ..wanted });
        match (found, least(&gives, wanted_gb, false)) {
            (Ok(choice), Some(cents)) => {
                assert_eq!(choice.price, Money::from_minor(cents, 2), "{seed}");
                chosen += 1;
                together += u32::from(choice.contracts.len() > 1);
            }
            (Err(NotChosen::NotEnough { most_mb }), None) => {
                assert!(most_mb < u64::try_from(wanted_gb * 1_000).unwrap());
                none += 1;
            }
            (found, least) => unreachable!("{seed}: {found:?} but {least:?}"),
        }
    }
    assert!(chosen > 150 && together > 40 && none > 30, "{chosen} {together} {none}");
}

/// By hand. 25 GB wanted: 20 GB for 15 with 2 a GB beyond is 25; unlimited for 26 is dearer, for 24 cheaper.
#[test]
fn unlimited_contracts_are_weighed_against_metered_ones() {
    let metered = contract(20, 15, Beyond::Costs { per_gb: Money::whole(2) });
    let wanted = Wanted { mb: 25_000, ..Wanted::default() };
    for (price, chosen, costs) in [(26, vec![0], 25), (24, vec![1], 24)] {
        let unlimited = Contract { allowance_mb: None, ..contract(0, price, Beyond::Stops) };
        let choice = cheapest(&[metered, unlimited], &wanted).unwrap();
        assert_eq!((choice.contracts, choice.price), (chosen, Money::whole(costs)));
    }
}

/// By hand: a slow rate of 64 kbit/s brings 28.8 MB an hour, 1,440 MB in fifty hours.
#[test]
fn what_comes_through_slowly_counts_where_it_is_of_use() {
    let slowed = contract(5, 10, Beyond::Slowed { kbit_s: 64.0 });
    let wanted = Wanted { mb: 6_440, slow_hours: 50.0, least_kbit_s: 64.0, ..Wanted::default() };
    let choice = cheapest(&[slowed], &wanted).unwrap();
    assert_eq!((choice.slowed_mb, choice.paid_mb, choice.price), (1_440, 0, Money::whole(10)));
    let short = NotChosen::NotEnough { most_mb: 6_440 };
    assert_eq!(cheapest(&[slowed], &Wanted { mb: 6_441, ..wanted }), Err(short));
    let none = NotChosen::NotEnough { most_mb: 5_000 };
    assert_eq!(cheapest(&[slowed], &Wanted { least_kbit_s: 65.0, ..wanted }), Err(none));
}

/// By hand: 28 days are bought twice in a month of thirty, once in one of 28; 1,234 MB beyond at 2.50 are 3.085.
#[test]
fn periods_and_prices_beyond_are_counted_exactly() {
    let beyond = Beyond::Costs { per_gb: money("2.50") };
    let card = Contract { days: Some(28), ..contract(1, 9, beyond) };
    let price = |mb, days| cheapest(&[card], &Wanted { mb, days, ..Wanted::default() }).unwrap().price;
    assert_eq!(price(2_000, 30), Money::whole(18));
    assert_eq!(price(2_234, 28), money("12.085"));
}

#[test]
fn without_any_use_nothing_is_bought_and_more_than_twelve_are_refused() {
    let one = contract(1, 1, Beyond::Stops);
    let choice = cheapest(&[one; 12], &Wanted::default()).unwrap();
    assert_eq!((choice.contracts.len(), choice.price), (0, Money::ZERO));
    // Of equal ones the first, and no more than are needed.
    let wanted = Wanted { mb: 2_500, ..Wanted::default() };
    assert_eq!(cheapest(&[one; 12], &wanted).unwrap().contracts, [0, 1, 2]);
    assert_eq!(cheapest(&[one; 13], &wanted), Err(NotChosen::TooMany));
    assert_eq!(cheapest(&[], &wanted), Err(NotChosen::NotEnough { most_mb: 0 }));
}

/// By hand: 2,000 MB left for five days, then 3,000 for ten days. 500 a day: gone after four, then six.
#[test]
fn an_allowance_runs_out_on_the_day_it_does_by_hand() {
    let meter = Meter { allowance_mb: 3_000, left_mb: 2_000, renews_in_days: 5, period_days: 10 };
    let found = periods(&meter, &[500; 16]);
    let told: Vec<_> = found.iter().map(|it| (it.from_day, it.used_mb, it.out_on, it.beyond_mb)).collect();
    assert_eq!(told, [(0, 2_000, Some(4), 500), (5, 3_000, Some(11), 2_000), (15, 500, None, 0)]);
    assert_eq!(periods(&Meter { renews_in_days: 0, ..meter }, &[500; 3]).len(), 1);
    assert_eq!(periods(&meter, &[]), []);
}

#[test]
fn what_is_used_and_what_is_beyond_is_what_was_asked_for() {
    for seed in 0..100 {
        let mut chance = Chance::new(seed);
        let mut below = |count: u32| u64::from(chance.below(count));
        let (allowance_mb, left_mb) = (below(5_000), below(5_000));
        let (renews_in_days, period_days) = (usize::try_from(below(9)).unwrap(), usize::try_from(below(9)).unwrap());
        let meter = Meter { allowance_mb, left_mb, renews_in_days, period_days };
        let by_day: Vec<u64> = (0..60).map(|_| below(1_500)).collect();
        let found = periods(&meter, &by_day);
        let sum: u64 = found.iter().map(|period| period.used_mb + period.beyond_mb).sum();
        assert_eq!(sum, by_day.iter().sum::<u64>());
        assert!(found.iter().all(|period| period.out_on.is_some() == (period.beyond_mb > 0)));
        assert!(found.iter().skip(1).all(|period| period.used_mb <= allowance_mb));
    }
}
