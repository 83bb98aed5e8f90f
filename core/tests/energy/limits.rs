//! Each limit that can bind, in a case that has it and one that just has not.

use kerbstead_core::energy::draw::{Draw, Need, Outlet, Span};
use kerbstead_core::energy::run::{Course, Limit, run};
use kerbstead_core::energy::setup::{OnBoard, Setup};
use kerbstead_core::energy::store::{Chemistry, Inputs, Limits, Store};

use crate::{assert_near, setup, steady};

fn with_ac(continuous_w: f64, surge_w: f64) -> Store {
    let mut store = Store::ideal(2_000.0);
    if let Some(inverter) = &mut store.inverter {
        inverter.limits = Limits { continuous_w, surge_w };
    }
    store
}

fn span(power_w: f64, from_hour: f64, hours: f64) -> Draw {
    Draw { outlet: Outlet::Ac, need: Need::Spans(vec![Span { from_hour, hours }]), ..steady(power_w) }
}

fn binding(setup: &Setup) -> (Option<Limit>, Vec<f64>) {
    let Course { binding, unserved_wh, .. } = run(setup);
    (binding, unserved_wh)
}

#[test]
fn energy_binds_when_the_store_is_empty() {
    assert_eq!(binding(&setup(Store::ideal(240.0), vec![steady(10.0)], 24)), (None, vec![0.0]));
    assert_eq!(binding(&setup(Store::ideal(239.0), vec![steady(10.0)], 24)), (Some(Limit::Energy), vec![1.0]));
}

#[test]
fn power_binds_only_while_two_draws_meet() {
    // A kettle from 7:00 to 7:30 and a heater from 7:15 to 8:00; the kettle matters more.
    let kettle = Draw { importance: 2, ..span(500.0, 7.0, 0.5) };
    let heater = span(300.0, 7.25, 0.75);
    let at = |limit_w| setup(with_ac(limit_w, 2_000.0), vec![heater.clone(), kettle.clone()], 24);
    assert_eq!(binding(&at(800.0)), (None, vec![0.0, 0.0]));
    assert_eq!(binding(&at(799.0)), (Some(Limit::Power), vec![75.0, 0.0]));
    // One after the other they never meet.
    let later = span(300.0, 7.5, 0.5);
    assert_eq!(binding(&setup(with_ac(500.0, 2_000.0), vec![later, kettle], 24)).0, None);
}

#[test]
fn surge_binds_when_something_starts_beside_what_runs() {
    let lamp = Draw { importance: 1, ..span(100.0, 6.0, 4.0) };
    let pump = Draw { surge_w: 900.0, ..span(300.0, 7.0, 1.0) };
    let at = |surge_w| setup(with_ac(500.0, surge_w), vec![lamp.clone(), pump.clone()], 24);
    assert_eq!(binding(&at(1_000.0)), (None, vec![0.0, 0.0]));
    assert_eq!(binding(&at(999.0)), (Some(Limit::Surge), vec![0.0, 300.0]));
}

#[test]
fn low_voltage_outlets_have_limits_too_and_no_inverter_gives_nothing() {
    let store = Store { dc: Limits { continuous_w: 9.0, surge_w: 20.0 }, ..Store::ideal(500.0) };
    assert_eq!(binding(&setup(store, vec![steady(10.0)], 2)), (Some(Limit::Power), vec![20.0]));
    let store = Store { inverter: None, ..Store::ideal(500.0) };
    assert_eq!(binding(&setup(store, vec![span(50.0, 0.0, 2.0)], 2)), (Some(Limit::Power), vec![100.0]));
}

#[test]
fn input_binds_when_a_socket_refused_what_would_have_helped() {
    let charged = |inputs: Inputs, store_c: f64| {
        let mut setup = setup(Store { inputs, ..Store::ideal(500.0) }, vec![steady(50.0)], 24);
        for given in setup.hours.iter_mut().skip(4).take(10) {
            (given.mains_w, given.store_c) = (120.0, store_c);
        }
        setup
    };
    let enough = Inputs { mains_w: 120.0, vehicle_w: 0.0, panel_w: 0.0, together_w: 120.0 };
    assert_eq!(binding(&charged(enough, 20.0)).0, None);
    assert_eq!(binding(&charged(Inputs { mains_w: 60.0, ..enough }, 20.0)).0, Some(Limit::Input));
    assert_eq!(binding(&charged(Inputs { together_w: 60.0, ..enough }, 20.0)).0, Some(Limit::Input));
    // Nor does a frozen store take anything.
    let mut frozen = charged(enough, -0.5);
    frozen.stores[0].store.charging = Store::usual(Chemistry::Lfp, 1.0).charging;
    assert_eq!(binding(&frozen).0, Some(Limit::Input));
    frozen.hours.iter_mut().for_each(|given| given.store_c = 0.0);
    assert_eq!(binding(&frozen).0, None);
}

#[test]
fn charging_slows_in_the_heat() {
    let charging = Store::usual(Chemistry::Lfp, 1.0).charging;
    let shares = [-0.01, 0.0, 45.0, 50.0, 54.0, 55.0, f64::NAN].map(|store_c| charging.share_at(store_c));
    assert_eq!(shares, [0.0, 1.0, 1.0, 0.5, 0.1, 0.0, 0.0]);
}

#[test]
fn what_matters_least_is_shed_first() {
    let draws = vec![Draw { importance: 5, ..steady(10.0) }, steady(20.0), Draw { importance: 1, ..steady(30.0) }];
    // In the last hour there is a third of what is wanted: ten for the first, ten of thirty for the third.
    let course = run(&setup(Store::ideal(80.0), draws, 2));
    assert_eq!(course.unserved_wh, [0.0, 20.0, 20.0]);
    assert_eq!(course.first_short_hour, Some(1));
}

#[test]
fn what_may_move_is_served_by_another_store_within_its_limits() {
    let moving = |limit_w: f64, second_wh: f64| {
        let draw = Draw { may_move: true, ..steady(10.0) };
        let mut setup = setup(Store::ideal(100.0), vec![draw, Draw { store: 1, ..steady(5.0) }], 24);
        let dc = Limits { continuous_w: limit_w, surge_w: limit_w };
        setup.stores.push(OnBoard::full(Store { dc, ..Store::ideal(second_wh) }));
        run(&setup)
    };
    let course = moving(15.0, 300.0);
    assert!(course.holds());
    assert_near(course.stores[1].hours[23].charge_wh, 300.0 - 120.0 - 140.0, 1e-9, "second store");
    assert_eq!(moving(14.0, 300.0).unserved_wh, [140.0, 0.0]);
    assert_eq!(moving(15.0, 259.0).binding, Some(Limit::Energy));
    let staying = {
        let mut setup = setup(Store::ideal(100.0), vec![steady(10.0)], 24);
        setup.stores.push(OnBoard::full(Store::ideal(1_000.0)));
        run(&setup)
    };
    assert_eq!(staying.unserved_wh, [140.0]);
}

#[test]
fn what_one_store_leaves_of_a_source_the_next_one_takes() {
    let mut setup = setup(Store::ideal(100.0), vec![], 2);
    setup.stores.push(OnBoard { opening_state: 0.0, ..OnBoard::full(Store::ideal(500.0)) });
    setup.stores[0].opening_state = 0.5;
    setup.hours.iter_mut().for_each(|given| given.vehicle_w = 80.0);
    let course = run(&setup);
    let charges = |store: usize| -> Vec<f64> { course.stores[store].hours.iter().map(|hour| hour.charge_wh).collect() };
    assert_eq!((charges(0), charges(1)), (vec![100.0, 100.0], vec![30.0, 110.0]));
}

#[test]
fn unused_sun_is_what_a_full_store_passes_by() {
    let mut setup = setup(Store::ideal(100.0), vec![steady(10.0)], 3);
    setup.stores[0].panel_w = 50.0;
    setup.cloud_by_day = vec![0.5];
    setup.hours.iter_mut().for_each(|given| given.sun_share = 0.8);
    // 20 W come in for three hours, ten are drawn, and it was full before.
    assert_near(run(&setup).stores[0].unused_sun_wh, 30.0, 1e-9, "unused");
}
