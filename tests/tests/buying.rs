//! The order of buying against a solver that tries every day for every purchase.
#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]

use kerbstead_core::money::buying::{
    Missing, NotOrdered, Order, Priority, Proof, Purchase, Wallet, order_by_rule, order_of_buying,
};
use kerbstead_core::money::chance::{Chance, MOST_MINOR};

const DAYS: u32 = 6;
const PRIORITIES: [Priority; 3] = [Priority::Must, Priority::Should, Priority::Could];

/// Lower is better: left out by priority, the last day, the sums of the days by priority.
type Merit = ([usize; 3], u32, [u32; 3]);

fn merit(purchases: &[Purchase], days: &[Option<u32>]) -> Merit {
    let mut merit = ([0; 3], 0, [0; 3]);
    for (purchase, day) in purchases.iter().zip(days) {
        let class = purchase.priority as usize;
        match day {
            None => merit.0[class] += 1,
            Some(day) => {
                merit.1 = merit.1.max(*day);
                merit.2[class] += day;
            }
        }
    }
    merit
}

/// Whether every purchase is within its days and cash is at the floor or above from the first of them on.
fn is_sound(wallet: &Wallet, purchases: &[Purchase], days: &[Option<u32>]) -> bool {
    let bought = || purchases.iter().zip(days).filter_map(|(purchase, day)| day.map(|day| (purchase, day)));
    let Some(first) = bought().map(|(_, day)| day).min() else { return true };
    let is_timely = bought().all(|(purchase, day)| purchase.earliest <= day && day <= purchase.needed_by);
    let spent = |by: u32| bought().filter(|(_, day)| *day <= by).map(|(purchase, _)| purchase.amount).sum::<i64>();
    is_timely && (0..).zip(&wallet.cash).skip(first as usize).all(|(day, cash)| cash - spent(day) >= wallet.floor)
}

/// Every purchase on every day or not at all.
fn brute_force(wallet: &Wallet, purchases: &[Purchase], days: &mut Vec<Option<u32>>, best: &mut Merit) {
    if days.len() == purchases.len() {
        if is_sound(wallet, purchases, days) {
            *best = (*best).min(merit(purchases, days));
        }
        return;
    }
    let next = purchases[days.len()];
    for day in (next.earliest..=next.needed_by).map(Some).chain([None]) {
        days.push(day);
        brute_force(wallet, purchases, days, best);
        days.pop();
    }
}

fn best(wallet: &Wallet, purchases: &[Purchase]) -> Merit {
    let mut best = ([usize::MAX; 3], 0, [0; 3]);
    brute_force(wallet, purchases, &mut Vec::new(), &mut best);
    best
}

fn instance(chance: &mut Chance, most: u32, days: u32) -> (Wallet, Vec<Purchase>) {
    let mut sum = i64::from(chance.below(60)) - 8;
    let cash = (0..days).map(|_| {
        sum += i64::from(chance.below(40)) - 16;
        sum
    });
    let wallet = Wallet { cash: cash.collect(), floor: i64::from(chance.below(8)) };
    let purchases = (0..=chance.below(most)).map(|_| {
        let earliest = chance.below(days);
        let needed_by = earliest + chance.below(days - earliest);
        let priority = PRIORITIES[chance.below(3) as usize];
        Purchase { amount: i64::from(1 + chance.below(25)), earliest, needed_by, priority }
    });
    (wallet, purchases.collect())
}

#[test]
fn the_order_is_the_best_of_all() {
    let mut chance = Chance::new(1_968);
    let (mut all_paid, mut some_left) = (0, 0);
    for number in 0..800 {
        let (wallet, purchases) = instance(&mut chance, 5, DAYS);
        let order = order_of_buying(&wallet, &purchases).unwrap();
        assert!(is_sound(&wallet, &purchases, &order.days), "{number}: {wallet:?} {purchases:?} {order:?}");
        let (found, best) = (merit(&purchases, &order.days), best(&wallet, &purchases));
        assert_eq!(found, best, "{number}: {wallet:?} {purchases:?} {order:?}");
        assert_eq!((order.proof, order.finished_on.unwrap_or(0)), (Proof::Proven, found.1));
        all_paid += u32::from(order.missing.is_empty());
        some_left += u32::from(!order.missing.is_empty());
    }
    assert!(all_paid > 100 && some_left > 300, "{all_paid} {some_left}");
}

fn with(wallet: &Wallet, missing: Missing, less: i64) -> Wallet {
    let mut wallet = wallet.clone();
    for cash in wallet.cash.iter_mut().skip(missing.by as usize) {
        *cash += missing.amount - less;
    }
    wallet
}

/// Whether these can be paid, each as late as may be.
fn can_pay(wallet: &Wallet, purchases: &[Purchase]) -> bool {
    let latest: Vec<_> = purchases.iter().map(|purchase| Some(purchase.needed_by)).collect();
    is_sound(wallet, purchases, &latest)
}

#[test]
fn what_is_missing_is_what_would_pay_and_not_a_cent_more() {
    let mut chance = Chance::new(5);
    let mut told = [0; 3];
    for _ in 0..600 {
        let (wallet, purchases) = instance(&mut chance, 8, DAYS);
        let order = order_of_buying(&wallet, &purchases).unwrap();
        let left_out = order.days.iter().filter(|day| day.is_none()).count();
        assert_eq!((order.missing.len(), order.missing_for_all.is_some()), (left_out, left_out > 0));
        for missing in order.missing {
            let at = missing.purchase.unwrap();
            let is_meant = |(place, _): &(usize, &Purchase)| *place == at || order.days[*place].is_some();
            let these: Vec<_> = purchases.iter().enumerate().filter(is_meant).map(|(_, purchase)| *purchase).collect();
            assert!(can_pay(&with(&wallet, missing, 0), &these) && !can_pay(&with(&wallet, missing, 1), &these));
            told[0] += 1;
        }
        if let Some(missing) = order.missing_for_all {
            assert!(can_pay(&with(&wallet, missing, 0), &purchases));
            assert!(!can_pay(&with(&wallet, missing, 1), &purchases));
            assert!(order_of_buying(&with(&wallet, missing, 0), &purchases).unwrap().missing.is_empty());
            told[1] += 1;
        }
        let least = *wallet.cash.iter().min().unwrap();
        assert_eq!(
            order.missing_for_floor.map(|missing| missing.amount),
            (least < wallet.floor).then(|| wallet.floor - least)
        );
        told[2] += usize::from(order.missing_for_floor.is_some());
    }
    assert!(told.iter().all(|told| *told > 100), "{told:?}");
}

#[test]
fn the_rule_pays_for_as_many_musts_and_finishes_as_soon_when_it_pays_for_all() {
    let mut chance = Chance::new(12);
    let (mut as_good, mut all_paid, count) = (0, 0, 500);
    for _ in 0..count {
        let (wallet, purchases) = instance(&mut chance, 11, 30);
        let (exact, rule) =
            (order_of_buying(&wallet, &purchases).unwrap(), order_by_rule(&wallet, &purchases).unwrap());
        assert!(is_sound(&wallet, &purchases, &rule.days));
        let (best, found) = (merit(&purchases, &exact.days), merit(&purchases, &rule.days));
        assert!(best <= found && best.0[0] == found.0[0], "{wallet:?} {purchases:?} {exact:?} {rule:?}");
        as_good += u32::from(best == found);
        assert_eq!(rule.proof == Proof::FinishProven, rule.missing.is_empty());
        if rule.proof == Proof::FinishProven {
            assert_eq!(best.1, found.1);
            all_paid += 1;
        }
    }
    assert!(as_good > count / 2 && all_paid > 40, "{as_good} {all_paid}");
}

/// Twenty at once against the same twenty in another order, and against the rule of thumb, which is never better.
#[test]
fn twenty_purchases_are_weighed_whatever_their_order() {
    let mut chance = Chance::new(20);
    for number in 0..4 {
        let (wallet, _) = instance(&mut chance, 1, 40);
        let wallet = Wallet { cash: wallet.cash.iter().zip(0..).map(|(cash, day)| cash + 4 * day).collect(), ..wallet };
        let purchases: Vec<_> = std::iter::repeat_with(|| instance(&mut chance, 20, 40).1).flatten().take(20).collect();
        let turned: Vec<_> = purchases.iter().rev().copied().collect();
        let [order, other] = [&purchases, &turned].map(|these| order_of_buying(&wallet, these).unwrap());
        assert!(is_sound(&wallet, &purchases, &order.days), "{number}");
        let found = merit(&purchases, &order.days);
        assert_eq!((found, order.proof), (merit(&turned, &other.days), Proof::Proven), "{number}");
        assert!(found <= merit(&purchases, &order_by_rule(&wallet, &purchases).unwrap().days), "{number}");
    }
}

#[test]
fn many_purchases_go_by_the_rule_and_end_soundly() {
    let mut chance = Chance::new(99);
    for most in [48, 499] {
        let (wallet, mut purchases) = instance(&mut chance, most, 1_100);
        purchases.resize(most as usize, purchases[0]);
        let order = order_of_buying(&wallet, &purchases).unwrap();
        assert!(is_sound(&wallet, &purchases, &order.days));
        assert_ne!(order.proof, Proof::Proven);
    }
}

#[test]
fn what_is_out_of_bounds_is_refused_with_its_place() {
    let fine = Purchase { amount: 5, earliest: 1, needed_by: 3, priority: Priority::Must };
    let wallet = Wallet { cash: vec![10; 4], floor: 0 };
    let order = |wallet: &Wallet, second: Purchase| order_of_buying(wallet, &[fine, second]).map(|order| order.days);
    assert_eq!(order(&wallet, fine), Ok(vec![Some(1), Some(1)]));
    let cases = [
        (Purchase { amount: 0, ..fine }, NotOrdered::Amount(1)),
        (Purchase { amount: MOST_MINOR + 1, ..fine }, NotOrdered::Amount(1)),
        (Purchase { earliest: 4, ..fine }, NotOrdered::Day(1)),
        (Purchase { needed_by: 4, ..fine }, NotOrdered::Day(1)),
    ];
    for (purchase, refused) in cases {
        assert_eq!(order(&wallet, purchase), Err(refused));
    }
    let purses = [
        (Wallet::default(), NotOrdered::Days),
        (Wallet { cash: vec![0; 1_101], floor: 0 }, NotOrdered::Days),
        (Wallet { cash: vec![i64::MIN; 9], floor: 0 }, NotOrdered::Cash),
        (Wallet { floor: i64::MAX, ..wallet.clone() }, NotOrdered::Cash),
    ];
    for (wallet, refused) in purses {
        assert_eq!(order(&wallet, fine), Err(refused));
    }
    assert_eq!(order_of_buying(&wallet, &[fine; 501]), Err(NotOrdered::TooMany));
    let nothing = Order {
        days: Vec::new(),
        finished_on: None,
        missing: Vec::new(),
        missing_for_all: None,
        missing_for_floor: None,
        proof: Proof::Proven,
    };
    assert_eq!(order_of_buying(&wallet, &[]), Ok(nothing));
}
