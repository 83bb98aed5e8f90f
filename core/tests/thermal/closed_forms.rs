//! Heat against closed forms: cooling of one lump and of two, the sun on a face, the sky above it.

use kerbstead_core::thermal::people::GivenOff;
use kerbstead_core::thermal::run::run;
use kerbstead_core::thermal::setup::{Hour, Mass, Setup};
use kerbstead_core::thermal::shell::{Colour, Surface, Window, outside_w_m2k, sol_air_c};

use crate::{assert_near, lined, side};

/// The UA of a surface in ISO's usual wind as the run takes it, in W/K.
fn ua_w_k(surface: &Surface) -> f64 {
    surface.area_m2 / (surface.wall.plain_m2k_w() - 0.04 + 1.0 / outside_w_m2k(4.0))
}

/// Source: project's table of reference values: 25 W/K, 180 kJ/K, 18 to -2 °C: 0.7067 °C after four hours.
#[test]
fn one_lump_cools_as_newton_has_it() {
    let per_m2 = ua_w_k(&side(1.0));
    let shell = vec![side(25.0 / per_m2)];
    let hours = vec![Hour { air_c: -2.0, ..Hour::default() }; 4];
    let course = run(&Setup { shell, light_wh_k: 50.0, start_c: 18.0, hours, ..Setup::default() });
    assert_near(course.hours[3].inside_c, 0.7067, 1e-4, "after four hours");
    for (at, done) in course.hours.iter().enumerate() {
        let left = |hours: f64| 20.0 * libm::exp(-0.5 * hours);
        let hour = at as f64;
        assert_near(done.inside_c, -2.0 + left(hour + 1.0), 1e-12, "end");
        assert_near(done.mean_c, -2.0 + (left(hour) - left(hour + 1.0)) / 0.5, 1e-12, "mean");
    }
}

/// Two lumps against ten thousand small steps of Runge and Kutta an hour.
#[test]
fn two_lumps_cool_as_small_steps_have_it() {
    let shell = vec![side(20.0)];
    let (ua, light, heavy, between) = (ua_w_k(&shell[0]), 15.0, 120.0, 60.0);
    let mass = Mass { holds_wh_k: heavy, to_air_w_k: between, start_c: 12.0 };
    let inside = GivenOff { heat_w: 90.0, ..GivenOff::default() };
    let hours = vec![Hour { air_c: -3.0, inside, ..Hour::default() }; 6];
    let setup = Setup { shell, light_wh_k: light, mass: Some(mass), start_c: 20.0, hours, ..Setup::default() };
    let slope = |[air, mass]: [f64; 2]| {
        [(ua * (-3.0 - air) + between * (mass - air) + 90.0) / light, between * (air - mass) / heavy]
    };
    let mut at = [20.0, 12.0];
    for done in run(&setup).hours {
        let step = 1e-4;
        for _ in 0..10_000 {
            let moved = |by: f64, k: [f64; 2]| [at[0] + by * k[0], at[1] + by * k[1]];
            let k1 = slope(at);
            let k2 = slope(moved(step / 2.0, k1));
            let k3 = slope(moved(step / 2.0, k2));
            let k4 = slope(moved(step, k3));
            at = std::array::from_fn(|of| at[of] + step / 6.0 * (k1[of] + 2.0 * (k2[of] + k3[of]) + k4[of]));
        }
        assert_near(done.inside_c, at[0], 1e-9, "air");
        assert_near(done.mass_c, at[1], 1e-9, "mass");
    }
}

/// A thermostat holds; the heater gives what the balance by hand has, or all it can.
#[test]
fn a_heater_holds_a_temperature_or_gives_all_it_can() {
    let surface = side(20.0);
    let by_hand = ua_w_k(&surface) * 20.0;
    let hour = Hour { air_c: -5.0, wanted_c: Some(15.0), ..Hour::default() };
    let with = |heater_w: f64| {
        let setup = Setup { shell: vec![surface.clone()], heater_w, hours: vec![hour; 200], ..Setup::default() };
        run(&setup)
    };
    let strong = with(2_000.0);
    for done in &strong.hours {
        assert_near(done.inside_c, 15.0, 1e-12, "held");
        assert_near(done.heater_wh, by_hand, 1e-9, "by hand");
    }
    assert_near(strong.heater_wh(), 200.0 * by_hand, 1e-6, "in all");
    let weak = with(100.0).hours[199];
    assert_eq!(weak.heater_wh, 100.0);
    assert_near(weak.inside_c, -5.0 + 100.0 / ua_w_k(&surface), 1e-9, "weak");
    assert_eq!(with(-5.0).hours[199].heater_wh, 0.0);
}

/// Source: project's table of reference values: ASHRAE's 0.052 m² K/W of a dark roof, 4 K to the sky.
#[test]
fn the_sun_on_a_face_counts_as_warmer_air() {
    assert_near(sol_air_c(32.0, 900.0, 0.052 * 17.0, 4.0 * 17.0, 17.0), 74.8, 0.05, "dark roof");
    let roof = |colour: Colour, sun: f64, clear: f64| {
        let shell = vec![Surface::roof(6.0, lined(0.03)).coloured(colour)];
        let hours = vec![Hour { air_c: 20.0, clear, ..Hour::default() }; 400];
        run(&Setup { shell, hours, sun_w_m2: vec![sun; 400], ..Setup::default() }).hours[399].inside_c
    };
    // With nothing but this roof, the inside comes to its sol-air temperature.
    assert_near(roof(Colour::Dark, 800.0, 0.0), 20.0 + 0.9 * 800.0 / outside_w_m2k(4.0), 1e-9, "dark");
    assert_near(roof(Colour::Light, 800.0, 0.0), 20.0 + 0.3 * 800.0 / outside_w_m2k(4.0), 1e-9, "light");
    assert_near(roof(Colour::Light, 0.0, 1.0), 20.0 - 0.9 * 63.0 / outside_w_m2k(4.0), 1e-9, "clear night");
}

#[test]
fn a_window_lets_sun_in_and_heat_out() {
    let glass = Window { frame_share: 0.2, unshaded: 0.5, ..Window::single_glass(0.6) };
    let surface = side(5.0).with_window(glass);
    assert_near(surface.ua_w_k(), 4.4 * lined(0.03).u_w_m2k() + 0.6 * 5.8, 1e-12, "UA");
    let hours = vec![Hour::default(); 1];
    let course = run(&Setup { shell: vec![surface], hours, sun_w_m2: vec![500.0], ..Setup::default() });
    assert_near(course.hours[0].sun_wh, 500.0 * 0.6 * 0.8 * 0.85 * 0.5, 1e-12, "sun");
    assert_eq!(course.faces.len(), 2);
}
