//! Answers from a few fields, against closed forms and against runs of the whole.

use kerbstead_core::energy::draw::{Draw, Outlet};
use kerbstead_core::energy::quick::{ChargeTime, Source, charge_time, lasts, size_for};
use kerbstead_core::energy::run::{Limit, run};
use kerbstead_core::energy::store::{Chemistry, Inputs, InverterOn, Store, TaperOf};

use crate::{assert_near, setup, steady};

fn lossless_usual() -> Store {
    Store { self_discharge_per_month: 0.0, ..Store::usual(Chemistry::Lfp, 1_000.0) }
}

#[test]
fn a_store_lasts_as_its_energy_and_its_losses_say() {
    for (usable_wh, state, power_w) in [(500.0, 1.0, 30.0), (500.0, 0.37, 7.0), (2_000.0, 0.9, 1_234.5)] {
        for outlet in [Outlet::Dc, Outlet::Ac] {
            let lasts = lasts(&Store::ideal(usable_wh), state, power_w, outlet);
            assert_near(lasts.hours, usable_wh * state / power_w, 1e-9, "ideal");
            assert_eq!(lasts.limit, None);
        }
    }
    // Efficiency 0.9 at 60 % of the load, 0.97 before the inverter, nine watts of standby.
    let by_hand = 1_000.0 * 0.97 / (360.0 / 0.9 + 9.0);
    assert_near(lasts(&lossless_usual(), 1.0, 360.0, Outlet::Ac).hours, by_hand, 1e-9, "inverter");
    assert_near(lasts(&lossless_usual(), 1.0, 50.0, Outlet::Dc).hours, 19.4, 1e-9, "low voltage");
    // Its own discharge, hour by hour: x -> k x - p.
    let k = 0.9_f64.sqrt().sqrt().sqrt();
    let store = Store { self_discharge_per_month: 1.0 - libm::pow(k, 720.0), ..Store::ideal(100.0) };
    let (first, second) = (100.0 * k - 40.0, (100.0 * k - 40.0) * k - 40.0);
    assert_near(lasts(&store, 1.0, 40.0, Outlet::Dc).hours, 2.0 + second * k / 40.0, 1e-9, "own discharge");
    assert!(first > second && second > 0.0);
}

#[test]
fn what_an_outlet_does_not_bear_does_not_last() {
    let store = Store::usual(Chemistry::Nmc, 1_000.0);
    for (power_w, outlet, expected) in [
        (600.0, Outlet::Ac, None),
        (600.1, Outlet::Ac, Some(Limit::Power)),
        (120.0, Outlet::Dc, None),
        (121.0, Outlet::Dc, Some(Limit::Power)),
    ] {
        let lasts = lasts(&store, 1.0, power_w, outlet);
        assert_eq!((lasts.limit, lasts.hours > 0.0), (expected, expected.is_none()), "{power_w}");
    }
    let without = Store { inverter: None, ..Store::ideal(10.0) };
    assert_eq!(lasts(&without, 1.0, 1.0, Outlet::Ac).limit, Some(Limit::Power));
    assert_eq!(lasts(&without, 1.0, 0.0, Outlet::Dc).hours, 10_000.0);
    assert_eq!(lasts(&without, 0.0, 5.0, Outlet::Dc).hours, 0.0);
}

#[test]
fn the_least_size_does_and_one_watt_hour_less_does_not() {
    let holds = |usable_wh: u32, power_w: f64, outlet: Outlet, hours: usize, spare: f64| {
        let store = Store::usual(Chemistry::Lfp, f64::from(usable_wh));
        let mut setup = setup(store, vec![Draw { outlet, ..steady(power_w) }], hours);
        setup.stores[0].floor_state = spare;
        run(&setup).holds()
    };
    for power_w in [1.0, 13.0, 60.0, 119.0, 400.0] {
        for (hours, spare) in [(1, 0.0), (8, 0.2), (72, 0.1), (300, 0.0)] {
            for outlet in [Outlet::Ac, Outlet::Dc] {
                let size = size_for(Chemistry::Lfp, power_w, outlet, hours as f64, spare);
                if outlet == Outlet::Dc && power_w > 120.0 {
                    assert_eq!((size.usable_wh, size.limit), (None, Some(Limit::Power)));
                    continue;
                }
                let least = size.usable_wh.unwrap();
                assert!(holds(least, power_w, outlet, hours, spare), "{power_w} {hours} {spare} {outlet:?}");
                assert!(!holds(least - 1, power_w, outlet, hours, spare), "{power_w} {hours} {spare} {outlet:?}");
            }
        }
    }
}

#[test]
fn it_is_said_what_decides_a_size() {
    // 600 W for six minutes: 0.6 W for each Wh decide. For two hours it is the energy.
    let strong = size_for(Chemistry::Lfp, 600.0, Outlet::Ac, 0.1, 0.0);
    assert_eq!((strong.usable_wh, strong.limit), (Some(1_000), Some(Limit::Power)));
    let long = size_for(Chemistry::Lfp, 600.0, Outlet::Ac, 2.0, 0.0);
    assert_eq!(long.limit, Some(Limit::Energy));
    assert!(long.usable_wh.unwrap() > 1_200);
    let nothing = size_for(Chemistry::Lfp, 0.0, Outlet::Dc, 10.0, 0.5);
    assert_eq!((nothing.usable_wh, nothing.limit), (Some(0), None));
    // A share that its own discharge takes in time no size keeps.
    assert_eq!(size_for(Chemistry::Lfp, 1.0, Outlet::Dc, 1_000.0, 1.0).usable_wh, None);
}

#[test]
fn more_is_never_less() {
    let (mut before, mut size_before) = (f64::INFINITY, 0);
    for step in 1..60 {
        let power_w = f64::from(step) * 2.0;
        let hours = lasts(&lossless_usual(), 0.8, power_w, Outlet::Ac).hours;
        assert!(hours < before && hours > 0.0, "{power_w}");
        let size = size_for(Chemistry::Nmc, power_w, Outlet::Ac, 5.5, 0.15).usable_wh.unwrap();
        assert!(size >= size_before, "{power_w}");
        (before, size_before) = (hours, size);
    }
    let hours = |watts: f64, to_state: f64| {
        charge_time(&Store::usual(Chemistry::Lfp, 700.0), 0.1, to_state, Source::Mains, watts).hours.unwrap()
    };
    for step in 1..40 {
        let watts = 20.0 + f64::from(step) * 5.0;
        assert!(hours(watts, 0.97) < hours(watts - 5.0, 0.97));
        assert!(hours(60.0, 0.1 + 0.02 * f64::from(step)) > hours(60.0, 0.08 + 0.02 * f64::from(step)));
    }
}

/// Closed form of ds/dt = P(s) / E: 3.0 h to the knee at 80 %, 5.3026 h to 98 %.
#[test]
fn charging_takes_the_hours_of_the_closed_form() {
    let mut store = Store::ideal(1_000.0);
    store.taper.from_state = 0.8;
    let hours = |to_state: f64| charge_time(&store, 0.2, to_state, Source::Mains, 200.0).hours.unwrap();
    assert_near(hours(0.8), 3.0, 1e-12, "to the knee");
    assert_near(hours(0.98), 3.0 + libm::log(10.0), 1e-9, "to 98 %");
    assert_near(hours(0.98), 5.3026, 1e-4, "to 98 %");
    // Full is 99.5 %.
    assert_near(hours(1.0), 3.0 + libm::log(40.0), 1e-9, "full");
    assert_eq!((hours(2.0), hours(0.2), hours(f64::NAN)), (hours(0.995), 0.0, 0.0));
    // What tapers at the mains alone goes straight on from panels, with nine tenths of it reaching the cells.
    store.taper.of = TaperOf::Mains;
    store.charge_efficiency = 0.9;
    let straight = charge_time(&store, 0.2, 0.98, Source::Panels, 200.0);
    assert_near(straight.hours.unwrap(), 780.0 / 180.0, 1e-9, "straight");
}

#[test]
fn sockets_take_what_they_take() {
    let inputs = Inputs { mains_w: 300.0, vehicle_w: 100.0, panel_w: 150.0, together_w: 250.0 };
    let store = Store { inputs, ..Store::ideal(1_000.0) };
    for (source, watts, accepted_w, hours) in [
        (Source::Mains, 400.0, 250.0, 2.0),
        (Source::Vehicle, 120.0, 100.0, 5.0),
        (Source::Panels, 100.0, 100.0, 5.0),
        (Source::Panels, 500.0, 150.0, 10.0 / 3.0),
    ] {
        let ChargeTime { hours: took, accepted_w: accepted, limit } = charge_time(&store, 0.25, 0.75, source, watts);
        assert_eq!((accepted, limit), (accepted_w, (watts > accepted_w).then_some(Limit::Input)));
        assert_near(took.unwrap(), hours, 1e-9, "hours");
    }
    assert_eq!(charge_time(&store, 0.2, 0.5, Source::Mains, 0.0).hours, None);
    // A standby as great as what comes in: it never gets there.
    let mut standing = store;
    standing.inverter.iter_mut().for_each(|inverter| (inverter.standby_w, inverter.on) = (50.0, InverterOn::Always));
    assert_eq!(charge_time(&standing, 0.2, 0.5, Source::Mains, 50.0).hours, None);
    assert_near(charge_time(&standing, 0.2, 0.5, Source::Mains, 60.0).hours.unwrap(), 30.0, 1e-9, "against a standby");
}

#[test]
fn a_charge_gets_where_a_run_says() {
    for seed in 0..200_u32 {
        let part = |times: u32| f64::from(seed * times % 101) / 101.0;
        let mut store = Store::usual(Chemistry::Nmc, 200.0 + 900.0 * part(7));
        store.taper.from_state = 0.3 + 0.8 * part(13);
        let (from_state, to_state, watts) = (0.6 * part(29), 0.65 + 0.35 * part(41), 20.0 + 300.0 * part(53));
        let charge = charge_time(&store, from_state, to_state, Source::Mains, watts);
        let mut setup = setup(store.clone(), vec![], 200);
        setup.stores[0].opening_state = from_state;
        setup.hours.iter_mut().for_each(|given| given.mains_w = watts);
        let wanted_wh = store.usable_wh * to_state.min(0.995);
        let first = run(&setup).stores[0].hours.iter().position(|hour| hour.charge_wh >= wanted_wh);
        let hour = charge.hours.map(|hours| hours.ceil() - 1.0);
        assert_eq!(hour, first.map(|hour| hour as f64), "{seed}: {charge:?}");
    }
}

#[test]
fn nothing_odd_breaks_a_quick_answer() {
    for odd in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, -1.0, 1e300, 1e-300] {
        let store = Store::usual(Chemistry::Lfp, 300.0);
        assert!((0.0..=10_000.0).contains(&lasts(&store, odd, odd, Outlet::Ac).hours));
        assert!((0.0..=10_000.0).contains(&lasts(&Store::usual(Chemistry::Lfp, odd), 1.0, 9.0, Outlet::Dc).hours));
        size_for(Chemistry::Lfp, odd, Outlet::Ac, 3.0, odd);
        size_for(Chemistry::Lfp, 5.0, Outlet::Dc, odd, 0.1);
        let charge = charge_time(&store, odd, odd, Source::Vehicle, odd);
        assert!(charge.hours.is_none_or(|hours| (0.0..=10_000.0).contains(&hours)));
    }
}
