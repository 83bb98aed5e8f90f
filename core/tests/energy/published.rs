//! The table of reference values, key "power": each with its source.

use kerbstead_core::energy::constants::BOIL_AWAY_WH_PER_KG;
use kerbstead_core::energy::draw::{Draw, Outlet};
use kerbstead_core::energy::fridge::{Box, Cooling, Fridge, carnot};
use kerbstead_core::energy::heat::{Heating, boiling_c, pressure_pa};
use kerbstead_core::energy::run::run;
use kerbstead_core::energy::store::{Curve, Inverter, InverterOn, Store};

use crate::{assert_near, setup, steady};

/// US Standard Atmosphere 1976; boiling points by IAPWS-95.
#[test]
fn water_boils_where_the_steam_tables_say() {
    for (altitude_m, pressure, boiling) in
        [(0.0, 101_325.0, 99.974), (1_600.0, 83_527.7, 94.651), (2_500.0, 74_691.8, 91.648)]
    {
        assert_near(pressure_pa(altitude_m), pressure, pressure * 5e-4, "pressure");
        assert_near(boiling_c(altitude_m), boiling, 0.1, "boiling point");
    }
}

/// Enthalpy differences by IAPWS-95, without losses.
#[test]
fn a_kettle_takes_the_heat_of_the_steam_tables() {
    for (water_kg, from_c, altitude_m, expected_wh) in
        [(0.9991, 15.0, 0.0, 98.795), (0.499_93, 8.0, 0.0, 53.51), (0.999_69, 10.0, 1_600.0, 98.447)]
    {
        let kettle = Heating { water_kg, from_c, to_c: boiling_c(altitude_m), ..Heating::default() };
        assert_near(kettle.energy_wh(), expected_wh, expected_wh * 0.005, "heat");
    }
}

/// IAPWS-95: 626.8 Wh for each kilogram boiled away; a vessel and losses by hand.
#[test]
fn boiling_away_vessels_and_losses_add_up() {
    assert_near(BOIL_AWAY_WH_PER_KG, 626.8, 626.8 * 0.002, "boiling away");
    let pot = Heating {
        vessel_kj_per_k: 0.36,
        from_c: 10.0,
        to_c: 90.0,
        boiled_away_kg: 0.1,
        efficiency: 0.5,
        ..Heating::default()
    };
    assert_near(pot.energy_wh(), (0.36 * 80.0 / 3.6 + 62.68) / 0.5, 1e-9, "pot");
}

/// Energy balance by hand: usable / (ac / efficiency + idle + dc) = 11.213 h, from minute to minute.
#[test]
fn a_full_store_lasts_as_the_energy_balance_says() {
    let inverter = Inverter {
        efficiency: Curve::flat(0.88),
        standby_w: 9.0,
        on: InverterOn::Always,
        ..Store::ideal(0.0).inverter.unwrap()
    };
    let store = Store { inverter: Some(inverter), ..Store::ideal(1_000.0) };
    let laptop = Draw { outlet: Outlet::Ac, importance: 9, ..steady(60.0) };
    let course = run(&setup(store, vec![laptop, steady(12.0)], 24));
    let lasted_h = 1_000.0 / (60.0 / 0.88 + 9.0 + 12.0);
    assert_near(lasted_h, 11.213, 1e-3, "by hand");
    assert_eq!(course.first_short_hour, Some(11));
    let given: f64 = course.stores[0].hours.iter().map(|hour| hour.taken_out_wh).sum();
    assert_near(given, 1_000.0, 1e-6, "what it gave");
    assert_near(course.stores[0].reserve_h[0], lasted_h - 1.0, 1e-6 * lasted_h, "reserve");
}

/// Closed form of ds/dt = P(s) / E: 3.0 h to the knee at 80 %, 5.3026 h to 98 %.
#[test]
fn a_tapering_charge_takes_the_hours_of_the_closed_form() {
    let mut store = Store::ideal(1_000.0);
    store.taper.from_state = 0.8;
    let mut setup = setup(store, vec![], 6);
    setup.stores[0].opening_state = 0.2;
    setup.hours.iter_mut().for_each(|given| given.mains_w = 200.0);
    let charge: Vec<f64> = run(&setup).stores[0].hours.iter().map(|hour| hour.charge_wh).collect();
    assert_near(charge[2], 800.0, 1e-9, "at the knee after 3 h");
    // Below 98 % at 5 h, above at 6 h, and at both exactly where 1000 - 200 e^-(t - 3) is.
    for (hour, t) in [(3, 1.0), (4, 2.0), (5, 3.0)] {
        assert_near(charge[hour], 1_000.0 - 200.0 * libm::exp(-t), 1e-9, "above the knee");
    }
    // With as much power as makes six hours of 5.3026 it is at 98 % at the end of the sixth.
    setup.hours.iter_mut().for_each(|given| given.mains_w = 200.0 * 5.3026 / 6.0);
    assert_near(run(&setup).stores[0].hours[5].charge_wh, 980.0, 0.01, "98 %");
}

/// Ideal vapour cycles by `CoolProp`: an upper bound that no modelled fridge may beat, and Carnot's.
#[test]
fn no_fridge_beats_the_ideal_cycle() {
    for (cold_c, warm_c, ideal, bound) in [(-10.0, 40.0, 4.029, 5.263), (-18.0, 45.0, 2.913, 4.050)] {
        assert_near(carnot(cold_c, warm_c), bound, bound * 0.01, "Carnot");
        // The evaporator is 12 K below the box, the condenser 15 K above the air.
        let best = Cooling::PartOfCarnot(1.0).performance(cold_c + 12.0, warm_c - 15.0);
        assert!(best < ideal, "{best} beats {ideal}");
    }
}

/// By hand: steady conduction through a box by its middle surface.
#[test]
fn a_cool_box_from_first_principles() {
    let walls = Box { length_m: 0.5, width_m: 0.35, height_m: 0.4, foam_m: 0.035, conductivity_w_mk: 0.023 };
    assert_near(walls.ua_w_k(), 0.5667, 0.001, "UA");
    let fridge = Fridge { ua_w_k: walls.ua_w_k(), cooling: Cooling::Steady(1.6), running_w: 45.0, ..Fridge::default() };
    let (box_c, share) = fridge.hour(4.0, 22.0);
    assert_eq!(box_c, 4.0);
    assert_near(share, 0.1417, 0.1417 * 0.002, "duty");
    assert_near(fridge.wh_per_day(22.0), 153.01, 0.3, "a day");
    let mut setup = setup(Store::ideal(1_000.0), vec![Draw::fridge(fridge)], 24);
    setup.hours.iter_mut().for_each(|given| given.air_c = 22.0);
    let course = run(&setup);
    assert_near(1_000.0 - course.stores[0].hours[23].charge_wh, 153.01, 0.3, "a day in a run");
}

/// The walls of some 40 L by themselves take less than such boxes are said to take, 12 to 30 W on average in air of 20 to 25 °C
/// (common practice, no source), and with what opening lets in it is within; a label of what they take gives the walls back.
#[test]
fn walls_and_a_label_agree() {
    let walls = Box { length_m: 0.5, width_m: 0.35, height_m: 0.4, foam_m: 0.035, conductivity_w_mk: 0.023 };
    let closed = Fridge { ua_w_k: walls.ua_w_k(), ..Fridge::default() };
    let closed_wh = closed.wh_per_day(25.0);
    assert!(closed_wh < 24.0 * 12.0, "{closed_wh}");
    let opened_wh = Fridge { opening_w: 15.0, ..closed }.wh_per_day(25.0);
    assert!((24.0 * 12.0..24.0 * 30.0).contains(&opened_wh), "{opened_wh}");
    let labelled = Fridge::labelled(closed_wh, 25.0, closed.inside_c, closed.running_w);
    assert_near(labelled.ua_w_k, walls.ua_w_k(), 1e-9, "walls from a label");
    assert_near(labelled.wh_per_day(32.0), closed.wh_per_day(32.0), 1e-9, "in other air");
}
