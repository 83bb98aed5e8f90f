//! The cheapest contracts against every way of using them, and allowances worked by hand.

use super::money;
use kerbstead_core::draws::Chance;
use kerbstead_core::plan::Money;
use kerbstead_core::signal::allowance::{Beyond, Contract, NotChosen, Wanted, all_of_them, cheapest};
use kerbstead_core::signal::course::{After, Meter, course};

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

/// By hand: 3,000 MB for ten days, 500 a day: gone after six.
#[test]
fn an_allowance_runs_out_on_the_day_it_does_by_hand() {
    let meter = Meter { allowance_mb: Some(3_000), renews_on: vec![0, 10] };
    let found = course(&[meter], &After::default(), &[500; 16]);
    let out: Vec<usize> = (0..16).filter(|day| found.days[*day].missing_mb > 0).collect();
    assert_eq!(out, [6, 7, 8, 9]);
    let told: Vec<_> = found.periods.iter().map(|it| (it.meter, it.from_day, it.used_mb)).collect();
    assert_eq!(told, [(0, 0, 3_000), (0, 10, 3_000)]);
    assert_eq!((found.days[5].left_mb, found.days[15].left_mb), (Some(0), Some(0)));
}

/// By hand: what is left of the card that ends on day 2 would be gone, so it goes first, and the monthly one lasts.
#[test]
fn what_ends_soonest_is_used_first() {
    let monthly = Meter { allowance_mb: Some(2_000), renews_on: vec![0] };
    let card = Meter { allowance_mb: Some(1_000), renews_on: vec![0, 2] };
    let found = course(&[monthly, card], &After::default(), &[700; 5]);
    let left: Vec<_> = found.days.iter().map(|day| day.left_mb.unwrap()).collect();
    assert_eq!(left, [2_300, 1_600, 1_900, 1_200, 500]);
    assert!(found.days.iter().all(|day| day.missing_mb == 0));
}

/// By hand: 1,000 MB, then 200 a day slowly, then paid for.
#[test]
fn slow_data_costs_nothing_and_comes_before_what_is_paid() {
    let meter = || vec![Meter { allowance_mb: Some(1_000), renews_on: vec![0] }];
    for (is_paid, paid_mb, missing_mb) in [(true, 300, 0), (false, 0, 300)] {
        let day = course(&meter(), &After { slow_mb: 200, is_paid }, &[1_500]).days[0];
        assert_eq!((day.used_mb, day.slow_mb, day.paid_mb, day.missing_mb), (1_000, 200, paid_mb, missing_mb));
    }
    let endless = Meter { allowance_mb: None, renews_on: vec![0] };
    let day = course(&[meter().remove(0), endless], &After::default(), &[1_500]).days[0];
    assert_eq!((day.used_mb, day.missing_mb, day.left_mb), (1_500, 0, None));
}

/// No order of taking from the allowances leaves less missing: every order is tried, day by day.
#[test]
fn no_other_order_leaves_less_missing() {
    fn least(meters: &[(u64, &[usize])], left: Vec<u64>, by_day: &[u64], day: usize) -> u64 {
        let Some(mb) = by_day.get(day) else { return 0 };
        let mut left = left;
        for (left, (allowance, renews)) in left.iter_mut().zip(meters) {
            if renews.contains(&day) {
                *left = *allowance;
            }
        }
        // Of the first so much, the rest of the second: all that can be told apart of two.
        let ways = (0..=left[0].min(*mb)).map(|first| {
            let second = left[1].min(mb - first);
            mb - first - second + least(meters, vec![left[0] - first, left[1] - second], by_day, day + 1)
        });
        ways.min().unwrap()
    }
    for seed in 0..200 {
        let mut chance = Chance::new(seed);
        let mut below = |count: u32| chance.below(count);
        let renews = [[0, 1 + below(2) as usize], [0, 1 + below(4) as usize]];
        let allowance = [u64::from(below(6)), u64::from(below(6))];
        let by_day: Vec<u64> = (0..5).map(|_| u64::from(below(4))).collect();
        let meters = |at: usize| Meter { allowance_mb: Some(allowance[at]), renews_on: renews[at].to_vec() };
        let found = course(&[meters(0), meters(1)], &After::default(), &by_day);
        let missing: u64 = found.days.iter().map(|day| day.missing_mb).sum();
        let rows = [(allowance[0], &renews[0][..]), (allowance[1], &renews[1][..])];
        assert_eq!(missing, least(&rows, vec![0, 0], &by_day, 0), "{seed}");
    }
}

#[test]
fn what_is_used_and_what_is_beyond_is_what_was_asked_for() {
    for seed in 0..100 {
        let mut chance = Chance::new(seed);
        let mut below = |count: u32| u64::from(chance.below(count));
        let meters: Vec<Meter> = (0..3)
            .map(|_| {
                let every = usize::try_from(1 + below(20)).unwrap();
                Meter { allowance_mb: Some(below(9_000)), renews_on: (0..60).step_by(every).collect() }
            })
            .collect();
        let after = After { slow_mb: below(300), is_paid: below(2) == 0 };
        let by_day: Vec<u64> = (0..60).map(|_| below(1_500)).collect();
        let found = course(&meters, &after, &by_day);
        for (day, mb) in found.days.iter().zip(&by_day) {
            assert_eq!(day.used_mb + day.slow_mb + day.paid_mb + day.missing_mb, *mb);
        }
        let of_days: u64 = found.days.iter().map(|day| day.used_mb).sum();
        assert_eq!(found.periods.iter().map(|period| period.used_mb).sum::<u64>(), of_days);
        assert!(found.periods.iter().all(|period| period.used_mb <= meters[period.meter].allowance_mb.unwrap()));
    }
}

#[test]
fn all_of_them_cost_what_the_cheapest_set_costs_if_it_is_all_of_them() {
    let contracts = [contract(5, 8, Beyond::Stops), contract(3, 6, Beyond::Costs { per_gb: Money::whole(1) })];
    let wanted = Wanted { mb: 9_000, ..Wanted::default() };
    assert_eq!(all_of_them(&contracts, &wanted), Some(Money::whole(15)));
    assert_eq!(all_of_them(&contracts[..1], &wanted), None);
}
