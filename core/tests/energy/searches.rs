//! Least sizes, and where to charge.

use kerbstead_core::energy::run::run;
use kerbstead_core::energy::setup::{OnBoard, Setup};
use kerbstead_core::energy::sizing::{least_panel, least_store};
use kerbstead_core::energy::stops::{Aim, Place, StopPlan, stops};
use kerbstead_core::energy::store::Store;

use crate::{setup, steady};

fn sunny(panel_w: f64, usable_wh: f64, floor_state: f64) -> Setup {
    let mut setup = setup(Store::ideal(usable_wh), vec![steady(10.0)], 24 * 20);
    setup.stores[0] = OnBoard { panel_w, floor_state, ..setup.stores[0].clone() };
    for (hour, given) in setup.hours.iter_mut().enumerate() {
        given.sun_share = if (9..17).contains(&(hour % 24)) { 0.5 } else { 0.0 };
    }
    setup
}

#[test]
fn the_least_sizes_hold_and_their_neighbours_do_not() {
    for (usable_wh, floor_state) in [(200.0, 0.0), (300.0, 0.1), (500.0, 0.2)] {
        let sized = least_panel(&sunny(0.0, usable_wh, floor_state), 0, 2_000);
        let least = sized.least.unwrap();
        assert!(run(&sunny(f64::from(least), usable_wh, floor_state)).holds());
        assert!(!run(&sunny(f64::from(least) - 1.0, usable_wh, floor_state)).holds());
        assert_eq!((sized.not_monotone, sized.prevented_by), (None, None));
    }
    // A night of sixteen hours takes 160 Wh, and an ample panel fills it each day.
    assert_eq!(least_store(&sunny(500.0, 1.0, 0.0), 0, 5_000).least, Some(160));
    assert_eq!(least_store(&sunny(500.0, 1.0, 0.2), 0, 5_000).least, Some(200));
    assert_eq!(least_store(&sunny(0.0, 1.0, 0.0), 0, 4_799).least, None);
    assert_eq!(least_store(&sunny(0.0, 1.0, 0.0), 0, 4_800).least, Some(4_800));
}

#[test]
fn a_size_that_an_outlet_prevents_is_not_searched_for() {
    let mut setup = sunny(0.0, 500.0, 0.0);
    setup.stores[0].store.dc.continuous_w = 5.0;
    assert!(least_panel(&setup, 0, 500).prevented_by.is_some());
}

/// A greater store loses more by itself, so that more of it is not always better: a store that loses half a month's charge
/// must keep a share that only a small one keeps.
#[test]
fn it_is_said_where_more_is_not_better() {
    let mut setup = setup(Store { self_discharge_per_month: 0.6, ..Store::ideal(1.0) }, vec![], 24 * 10);
    setup.stores[0].floor_state = 0.8;
    setup.hours.iter_mut().for_each(|given| given.mains_w = 0.5);
    let sized = least_store(&setup, 0, 4_800);
    assert_eq!(sized.least, Some(0));
    assert!(sized.not_monotone.is_some());
}

/// Every choice of places and hours, tried one by one.
fn tried_all(setup: &Setup, places: &[Place], aim: Aim) -> Option<(u64, u64)> {
    let ways: usize = places.iter().map(|place| place.most_hours + 1).product();
    let mut best = None;
    for way in 0..ways {
        let (mut rest, mut setup, mut price, mut count) = (way, setup.clone(), 0, 0);
        for place in places {
            let hours = rest % (place.most_hours + 1);
            rest /= place.most_hours + 1;
            setup.hours.iter_mut().skip(place.from_hour).take(hours).for_each(|given| given.mains_w += place.mains_w);
            if hours > 0 {
                count += 1;
                price += place.price + place.price_per_hour * hours as u64;
            }
        }
        if run(&setup).holds() {
            let rank = if aim == Aim::Fewest { (count, price) } else { (price, count) };
            best = Some(best.map_or(rank, |best: (u64, u64)| best.min(rank)));
        }
    }
    best
}

#[test]
fn the_stops_are_those_of_trying_all() {
    let mut found = 0;
    for seed in 0..30_u64 {
        let mut store = Store::ideal(200.0 + (seed * 37 % 200) as f64);
        store.taper.from_state = 0.7;
        let mut setup = setup(store, vec![steady(8.0 + (seed % 5) as f64)], 96);
        setup.stores[0].floor_state = 0.1;
        let place = |number: u64| Place {
            from_hour: 8 + number as usize * 20,
            most_hours: 1 + (seed + number) as usize % 4,
            mains_w: 60.0 + (seed * 13 % 90) as f64 + (number * 40 % 70) as f64,
            price: (seed * 7 + number * 11) % 9 * 100,
            price_per_hour: (seed + number * 3) % 4 * 25,
        };
        let places: Vec<Place> = (0..4).map(place).collect();
        for aim in [Aim::Fewest, Aim::Cheapest] {
            let StopPlan { found: stops, price, is_exact, bound } = stops(&setup, &places, aim);
            assert!(is_exact);
            let rank = stops.map(|stops| {
                let count = stops.len() as u64;
                if aim == Aim::Fewest { (count, price) } else { (price, count) }
            });
            assert_eq!(rank, tried_all(&setup, &places, aim), "{seed}");
            found += usize::from(rank.is_some());
            assert_eq!(bound, rank.map_or(0, |rank| rank.0));
        }
    }
    assert!((10..60).contains(&found), "{found}");
}

#[test]
fn several_stores_are_a_rule_of_thumb() {
    let mut setup = setup(Store::ideal(100.0), vec![steady(10.0)], 24);
    setup.stores.push(OnBoard::full(Store::ideal(100.0)));
    let place = Place { from_hour: 5, most_hours: 12, mains_w: 50.0, price: 1, price_per_hour: 0 };
    let plan = stops(&setup, &[place], Aim::Fewest);
    assert!(!plan.is_exact && plan.bound == 0 && plan.found.is_some());
}
