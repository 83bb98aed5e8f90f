//! Carbon dioxide and fresh air against closed forms and the project's table of reference values.

use kerbstead_core::thermal::air_quality::{Room, fresh_m3_h};
use kerbstead_core::thermal::people::{Activity, GivenOff, co2_l_h};
use kerbstead_core::thermal::run::run;
use kerbstead_core::thermal::setup::{Hour, Setup};
use kerbstead_core::thermal::vents::{Opening, Vents, w_k};

use crate::assert_near;

fn room(l_s: f64, air_l_s: f64, volume_m3: f64) -> Room {
    Room { volume_m3, air_m3_h: air_l_s * 3.6, outside_ppm: 420.0, co2_l_h: l_s * 3_600.0 }
}

#[test]
fn carbon_dioxide_nears_its_steady_value_as_the_table_has_it() {
    for (given_l_s, air_l_s, volume_m3, hours, steady, after) in
        [(0.0052, 2.0, 10.0, 1.0, 3_020.0, 1_754.44), (0.0104, 5.0, 9.0, 0.5, 2_500.0, 1_734.81)]
    {
        let room = room(given_l_s, air_l_s, volume_m3);
        assert_near(room.steady_ppm(), steady, 1e-4 * steady, "steady");
        assert_near(room.after(420.0, hours).1, after, 1e-4 * after, "after a time");
        assert_near(room.hours_until(420.0, after).unwrap(), hours, 1e-4, "until then");
        assert_near(fresh_m3_h(given_l_s * 3_600.0, steady, 420.0).unwrap(), air_l_s * 3.6, 1e-9, "fresh air");
    }
}

#[test]
fn without_fresh_air_it_rises_in_a_line() {
    let (mean, end) = room(0.005, 0.0, 10.0).after(500.0, 2.0);
    assert_near(end, 500.0 + 0.005 * 7_200.0 / 10.0 * 1e3, 1e-9, "end");
    assert_near(mean, f64::midpoint(500.0, end), 1e-9, "mean");
    assert_near(room(0.005, 0.0, 10.0).hours_until(500.0, end).unwrap(), 2.0, 1e-9, "until then");
}

#[test]
fn the_run_follows_the_transient_hour_by_hour() {
    let inside = GivenOff { co2_l_h: 36.0, ..GivenOff::default() };
    let hour = Hour { inside, fan_m3_h: 15.0, ..Hour::default() };
    let course = run(&Setup { hours: vec![hour; 6], ..Setup::default() });
    for (at, done) in course.hours.iter().enumerate() {
        let by_hand = 420.0 + 36e3 / 15.0 * (1.0 - libm::exp(-1.5 * (at as f64 + 1.0)));
        assert_near(done.co2_ppm, by_hand, 1e-8, "by hand");
    }
}

#[test]
fn people_give_off_what_is_published() {
    assert_near(co2_l_h(8.24, 1.2, -0.15, 101.0) / 3_600.0, 0.00479, 0.03 * 0.00479, "Persily and de Jonge");
    let [asleep, seated, busy] = [Activity::Asleep, Activity::Seated, Activity::Busy].map(GivenOff::person);
    assert_eq!((seated.heat_w, seated.water_g_h), (70.0, 66.0));
    for (less, more) in [(asleep, seated), (seated, busy)] {
        assert!(less.heat_w < more.heat_w && less.water_g_h < more.water_g_h && less.co2_l_h < more.co2_l_h);
    }
    // 45 W of latent heat at 2,450 kJ/kg.
    assert_near(seated.water_g_h, 45.0 * 3.6 / 2.45, 0.2, "latent heat");
    // By mass: 44.1 g of propane and 160 g of oxygen make 132 g of carbon dioxide and 72 g of water.
    let flame = GivenOff::flame(46.35 / 3.6 * 44.1);
    assert_near(flame.water_g_h, 72.0, 0.1, "water of a mole");
    assert_near(flame.co2_l_h, 3.0 * 24.06, 1e-9, "carbon dioxide of a mole");
}

#[test]
fn openings_let_through_what_the_hand_has() {
    let (single, pair) = (Opening::single(0.1, 0.4), Opening::low_and_high(0.02, 1.2));
    let warmth = (15.0_f64 / 293.15).sqrt();
    let by_hand = 0.61 / 3.0 * 0.1 * (9.806_65_f64 * 0.4).sqrt() * warmth * 3_600.0;
    assert_near(single.stack_m3_h(20.0, 5.0), by_hand, 1e-9, "one");
    let pair_by_hand = 0.61 * 0.02 * (9.806_65_f64 * 1.2).sqrt() * warmth * 3_600.0;
    assert_near(pair.stack_m3_h(20.0, 5.0), pair_by_hand, 1e-9, "two");
    assert_eq!(pair.stack_m3_h(20.0, 5.0), pair.stack_m3_h(5.0, 20.0));
    assert_near(single.wind_m3_h(3.0), 0.025 * 0.1 * 3.0 * 3_600.0, 1e-12, "wind at one");
    let vents = Vents { fixed: vec![pair], openings: vec![single] };
    let both = libm::hypot(pair_by_hand, pair.wind_m3_h(3.0)) + 0.5 * libm::hypot(by_hand, single.wind_m3_h(3.0));
    assert_near(vents.flow_m3_h(20.0, 5.0, 3.0, 0.5, 40.0), libm::hypot(both, 40.0), 1e-9, "with a fan");
    assert_near(vents.flow_m3_h(20.0, 5.0, 0.0, 0.0, 0.0), pair_by_hand, 1e-9, "closed");
    assert_near(w_k(10.5), 3.521, 1e-3, "W/K");
}
