//! Steady answers against balances by hand and against long runs.

use kerbstead_core::thermal::answers::{Steady, heater_for, parked_day, peak};
use kerbstead_core::thermal::people::GivenOff;
use kerbstead_core::thermal::run::run;
use kerbstead_core::thermal::setup::{Hour, Mass, Setup};
use kerbstead_core::thermal::shell::{Colour, Surface, Window, outside_w_m2k};
use kerbstead_core::thermal::vents::{Opening, Vents};

use crate::{assert_near, lined, side};

/// Source: project's table of reference values: 22.4 W/K, one air change of 10.5 m³, 140 W, 16 and 2 °C: 222.89 W; 7.401 °C.
#[test]
fn the_heater_is_what_the_balance_by_hand_has() {
    let per_m2 = 1.0 / (lined(0.03).plain_m2k_w() - 0.04 + 1.0 / outside_w_m2k(4.0));
    let setup = Setup { shell: vec![side(22.4 / per_m2)], volume_m3: 10.5, ..Setup::default() };
    let inside = GivenOff { heat_w: 140.0, ..GivenOff::default() };
    let hour = Hour { air_c: 2.0, fan_m3_h: 10.5, inside, ..Hour::default() };
    let steady = Steady::new(&setup, &hour, &[]);
    assert_near(steady.heater_w(16.0), 222.89, 0.02, "heater");
    assert_near(steady.inside_c(), 7.401, 1e-3, "without");
    let hours = vec![Hour { air_c: 9.0, ..hour }, hour, Hour { air_c: 5.0, ..hour }];
    let need = heater_for(&Setup { hours, ..setup }, 16.0).unwrap();
    assert_eq!(need.hour, 1);
    assert_near(need.heater_w, 222.89, 0.02, "coldest hour");
    assert_near(need.without_c, 7.401, 1e-3, "coldest hour without");
}

fn room() -> Setup {
    let window = Window::single_glass(0.8);
    Setup {
        shell: vec![
            Surface::roof(6.0, lined(0.02)).coloured(Colour::Dark),
            Surface::side(8.0, lined(0.02), 180.0).with_window(window),
            Surface::floor(6.0, lined(0.02)),
        ],
        vents: Vents { fixed: vec![Opening::low_and_high(0.001, 1.5)], openings: vec![Opening::single(0.1, 0.3)] },
        mass: Some(Mass { holds_wh_k: 80.0, to_air_w_k: 50.0, start_c: 15.0 }),
        ..Setup::default()
    }
}

/// A steady answer is where a long run ends, with air that warmth moves.
#[test]
fn a_long_run_ends_at_the_steady_answer() {
    let inside = GivenOff { heat_w: 150.0, water_g_h: 0.0, co2_l_h: 0.0 };
    let hour = Hour { air_c: 3.0, wind_m_s: 2.0, clear: 0.5, inside, open: 0.4, ..Hour::default() };
    let sun = [300.0, 200.0, 0.0];
    let setup = Setup { hours: vec![hour; 400], sun_w_m2: sun.repeat(400), ..room() };
    let last = *run(&setup).hours.last().unwrap();
    let steady = Steady::new(&setup, &hour, &sun);
    assert_near(last.inside_c, steady.inside_c(), 1e-6, "inside");
    assert_near(last.air_m3_h, steady.air_m3_h(last.inside_c), 1e-5, "air");
    let faces = steady.faces_c(last.inside_c);
    let course = run(&setup);
    for (face_c, expected_c) in course.faces_at(399).iter().zip(faces) {
        assert_near(*face_c, expected_c, 1e-9, "face");
    }
}

/// A heated run with the air said to suffice is just dry; one with a tenth less is not. Without a heater likewise.
#[test]
fn the_air_said_to_dry_is_just_enough() {
    let inside = GivenOff { heat_w: 140.0, water_g_h: 90.0, co2_l_h: 0.0 };
    let setup = Setup { vents: Vents::default(), heater_w: 1e4, ..room() };
    let hour = Hour { air_c: 4.0, relative_humidity: 0.6, inside, ..Hour::default() };
    let wet = |fan_m3_h: f64, wanted_c: Option<f64>| {
        let hours = vec![Hour { fan_m3_h, wanted_c, ..hour }; 300];
        let course = run(&Setup { hours, ..setup.clone() });
        (0..course.faces.len()).any(|face| course.is_below_dew(face, 299))
    };
    let steady = Steady::new(&setup, &hour, &[]);
    let heated = steady.dry_m3_h(18.0).unwrap();
    assert!(!wet(heated * 1.01, Some(18.0)) && wet(heated * 0.9, Some(18.0)));
    let unheated = steady.dry_unheated_m3_h().unwrap();
    assert!(!wet(unheated * 1.01, None) && wet(unheated * 0.9, None), "{unheated}");
    assert!(unheated > heated);
}

/// A day in the sun: hotter in a dark van than in a light one, less so with shade and air, and later than the sun is highest.
#[test]
fn a_parked_day_is_hottest_in_a_dark_closed_van() {
    let day = |colour: Colour, unshaded: f64, fan_m3_h: f64| {
        let mut setup = room();
        setup.shell[0] = setup.shell[0].clone().coloured(colour);
        setup.shell[1].window = Some(Window { unshaded, ..Window::single_glass(0.8) });
        for hour in 0..24 {
            let height = libm::sin(std::f64::consts::PI * (f64::from(hour) - 5.5) / 14.0).max(0.0);
            let air_c = 22.0 + 8.0 * libm::sin(std::f64::consts::PI * (f64::from(hour) - 9.0) / 12.0);
            setup.hours.push(Hour { air_c, wind_m_s: 1.0, open: 0.0, fan_m3_h, ..Hour::default() });
            setup.sun_w_m2.extend([900.0 * height, 500.0 * height, 0.0]);
        }
        parked_day(&setup).unwrap()
    };
    let dark = day(Colour::Dark, 1.0, 0.0);
    assert!(dark.inside_c > 38.0 && (13..18).contains(&dark.hour), "{dark:?}");
    let (light, shaded, aired) =
        (day(Colour::Light, 1.0, 0.0), day(Colour::Dark, 0.1, 0.0), day(Colour::Dark, 1.0, 200.0));
    for cooler in [light, shaded, aired] {
        assert!(cooler.inside_c < dark.inside_c - 0.5 && cooler.inside_c > 29.0, "{cooler:?} {dark:?}");
    }
    assert_eq!(peak(&run(&Setup::default())), None);
}
