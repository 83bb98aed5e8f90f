//! Values that follow by hand.

use kerbstead_core::energy::chance::{Runs, Uncertainty, percentile};
use kerbstead_core::energy::draw::{Days, Draw, Need, Outlet, Span};
use kerbstead_core::energy::fridge::Fridge;
use kerbstead_core::energy::run::run;
use kerbstead_core::energy::spread::{Sampler, Spread};
use kerbstead_core::energy::store::{Chemistry, Store};

use crate::{assert_near, setup, steady};

#[test]
fn self_discharge_is_that_of_a_month() {
    let store = Store { self_discharge_per_month: 0.1, ..Store::ideal(1_000.0) };
    let course = run(&setup(store, vec![], 720));
    assert_near(course.stores[0].hours[719].charge_wh, 900.0, 1e-9, "after a month");
    assert_near(course.stores[0].hours[359].charge_wh, 1_000.0 * 0.9_f64.sqrt(), 1e-9, "after half of it");
}

#[test]
fn a_steady_draw_empties_in_a_line_through_both_efficiencies() {
    let store = Store { discharge_efficiency: 0.8, charge_efficiency: 0.9, ..Store::ideal(1_000.0) };
    let mut setup = setup(store, vec![steady(40.0)], 4);
    setup.hours[2].vehicle_w = 100.0;
    let charge: Vec<f64> = run(&setup).stores[0].hours.iter().map(|hour| hour.charge_wh).collect();
    assert_eq!(charge, [950.0, 900.0, 940.0, 890.0]);
}

/// Above the knee at half of it, with T of 100 W that taper and 40 W drawn, the charge obeys dc/dt = T (F - c) / (F - K) - 40: it
/// nears 800 Wh, exponentially, and what went in is what it gained and what was drawn.
#[test]
fn a_taper_and_a_draw_balance() {
    let mut store = Store { charge_efficiency: 0.5, discharge_efficiency: 0.8, ..Store::ideal(1_000.0) };
    store.taper.from_state = 0.5;
    for opening_state in [0.6, 0.8, 1.0] {
        let mut setup = setup(store.clone(), vec![steady(32.0)], 30);
        setup.stores[0].opening_state = opening_state;
        setup.hours.iter_mut().for_each(|given| given.mains_w = 200.0);
        let hours = &run(&setup).stores[0].hours;
        let at = |t: f64| 800.0 + (1_000.0 * opening_state - 800.0) * libm::exp(-0.2 * t);
        for (hour, of) in hours.iter().enumerate() {
            assert_near(of.charge_wh, at(hour as f64 + 1.0), 1e-9, "charge");
            assert_near(of.put_in_wh, of.charge_wh - at(hour as f64) + 40.0, 1e-9, "balance");
        }
    }
}

#[test]
fn draws_run_on_their_days_and_past_midnight() {
    let late = Draw {
        need: Need::Spans(vec![Span { from_hour: 22.5, hours: 3.0 }]),
        days: Days::OneIn { days: 2, first: 0 },
        ..steady(10.0)
    };
    let course = run(&setup(Store::ideal(1_000.0), vec![late], 72));
    let used: Vec<(usize, f64)> =
        course.stores[0].hours.iter().map(|hour| hour.taken_out_wh).enumerate().filter(|(_, wh)| *wh > 0.0).collect();
    assert_eq!(used, [(22, 5.0), (23, 10.0), (24, 10.0), (25, 5.0), (70, 5.0), (71, 10.0)]);
}

#[test]
fn an_uncertain_draw_counts_by_its_chance_and_a_day_of_the_week_by_its_name() {
    let half = Draw { chance: 0.5, ..steady(10.0) };
    let week = Draw { days: Days::Week([false, true, false, false, false, false, false]), ..steady(2.0) };
    let course = run(&setup(Store::ideal(5_000.0), vec![half, week], 24 * 9));
    assert_near(5_000.0 - course.stores[0].hours[24 * 9 - 1].charge_wh, 5.0 * 216.0 + 2.0 * 48.0, 1e-6, "used");
}

#[test]
fn a_fridge_takes_what_its_label_says_and_more_in_the_heat() {
    let fridge = Fridge::labelled(400.0, 25.0, 4.0, 60.0);
    let days = |air_c: f64| {
        let mut setup = setup(Store::ideal(9_000.0), vec![Draw::fridge(fridge)], 48);
        setup.hours.iter_mut().for_each(|given| given.air_c = air_c);
        9_000.0 - run(&setup).stores[0].hours[47].charge_wh
    };
    assert_near(days(25.0), 800.0, 1e-6, "label");
    // By hand: the lift of heat 31/21, the compressor's lift (35 + 15 + 8) / (25 + 15 + 8).
    assert_near(days(35.0), 800.0 * 31.0 / 21.0 * 58.0 / 48.0, 1e-6, "in the heat");
    assert_eq!(days(4.0), 0.0);
}

#[test]
fn a_warm_fridge_runs_until_it_is_cold_and_a_weak_one_gets_warm() {
    let fridge = Fridge::labelled(400.0, 25.0, 4.0, 60.0);
    let (mut box_c, mut ran_h) = (20.0, 0.0);
    for _ in 0..48 {
        let (after_c, share) = fridge.hour(box_c, 25.0);
        assert!(after_c <= box_c && (0.0..=1.0).contains(&share));
        (box_c, ran_h) = (after_c, ran_h + share);
    }
    assert_eq!(box_c, 4.0);
    assert!(ran_h > 48.0 * 400.0 / 24.0 / 60.0);
    let weak = Fridge { running_w: 5.0, ..fridge };
    let warm_c = (0..500).fold(4.0, |box_c, _| weak.hour(box_c, 25.0).0);
    assert!(warm_c > 10.0 && warm_c < 25.0, "{warm_c}");
    // Off, in air of its own temperature's other side: it follows the air, and does not run.
    assert_eq!(fridge.hour(4.0, -10.0).1, 0.0);
}

#[test]
fn an_inverter_takes_by_its_curve_while_it_runs() {
    let store =
        Store { discharge_efficiency: 1.0, self_discharge_per_month: 0.0, ..Store::usual(Chemistry::Lfp, 1_000.0) };
    let inverter = store.inverter.clone().unwrap();
    assert_eq!((inverter.limits.continuous_w, inverter.efficiency.at(0.2)), (600.0, 0.885));
    // 360 W for a quarter of the hour, at 60 % of the load: efficiency 0.9, and nine watts of standby for as long.
    let kettle = Draw {
        power_w: 360.0,
        outlet: Outlet::Ac,
        need: Need::Spans(vec![Span { from_hour: 0.5, hours: 0.25 }]),
        ..Draw::default()
    };
    let course = run(&setup(store.clone(), vec![kettle], 1));
    assert_near(course.stores[0].hours[0].taken_out_wh, 100.0 + 2.25, 1e-9, "kettle");
    // A compressor of 60 W for a quarter of the time, at unknown moments: at 10 % of the load, and standby all the time.
    let compressor = Draw { power_w: 60.0, outlet: Outlet::Ac, need: Need::Duty(0.25), ..Draw::default() };
    let course = run(&setup(store, vec![compressor], 1));
    assert_near(course.stores[0].hours[0].taken_out_wh, 15.0 / 0.86 + 9.0, 1e-9, "compressor");
}

#[test]
fn spreads_have_their_means_and_quantiles() {
    let drawn = |spread: &Spread| {
        let (sampler, mut chance) = (Sampler::new(spread), kerbstead_core::draws::Chance::new(5));
        let mut values: Vec<f64> = (0..40_000).map(|_| sampler.draw(&mut chance)).collect();
        values.sort_by(f64::total_cmp);
        let mean = values.iter().sum::<f64>() / 40_000.0;
        (mean, percentile(&values, 10.0), percentile(&values, 50.0))
    };
    // Beta (2, 1) has the distribution x², (5, 2) the mean 5/7; a lognormal's median is 1, its tenth e^(-1.28155 s).
    let (mean, tenth, median) = drawn(&Spread::Beta { a: 2.0, b: 1.0 });
    assert_near(mean, 2.0 / 3.0, 0.005, "mean");
    assert_near(tenth, 0.1_f64.sqrt(), 0.01, "tenth");
    assert_near(median, 0.5_f64.sqrt(), 0.01, "median");
    assert_near(drawn(&Spread::Beta { a: 5.0, b: 2.0 }).0, 5.0 / 7.0, 0.005, "mean");
    let (mean, tenth, median) = drawn(&Spread::Lognormal { mean: 0.0, deviation: 0.25 });
    assert_near(mean, libm::exp(0.25 * 0.25 / 2.0), 0.01, "mean");
    assert_near(tenth, libm::exp(-1.281_55 * 0.25), 0.01, "tenth");
    assert_near(median, 1.0, 0.01, "median");
    assert_near(drawn(&Spread::Triangle { low: 1.0, likely: 2.0, high: 6.0 }).0, 3.0, 0.02, "mean");
    assert_near(drawn(&Spread::Measured(vec![4.0, 2.0])).0, 3.0, 0.01, "mean");
}

#[test]
fn chances_of_one_draw_are_those_of_the_binomial() {
    // 240 Wh last ten days of which each takes 30 Wh with the chance 1/2, unless nine or ten of them do: 11 of 1024.
    let lamp = Draw { chance: 0.5, need: Need::Spans(vec![Span { from_hour: 3.0, hours: 3.0 }]), ..steady(10.0) };
    let setup = setup(Store::ideal(240.0), vec![lamp], 240);
    let mut runs = Runs::new(&setup, &Uncertainty::default(), 11, 40_000);
    while runs.step(5_000) > 0 {}
    let chances = runs.chances();
    assert_near(1.0 - chances.share_kept(), 11.0 / 1_024.0, 0.002, "chance");
    assert_eq!(chances.reaching_hour(100), 1.0);
}
