//! Moist air against `PsychroLib` (what `tests/reference/damp.py` made), and water in a room against closed forms.

use kerbstead_core::thermal::constants::SEA_LEVEL_PA;
use kerbstead_core::thermal::damp::{
    Room, dew_point_c, dry_m3_h, humidity_ratio, relative_humidity, saturation_pa, vapour_pa, wet_bulb_c,
};
use kerbstead_core::thermal::layers::{Flow, Wall};
use kerbstead_core::thermal::people::GivenOff;
use kerbstead_core::thermal::run::run;
use kerbstead_core::thermal::setup::{Hour, Setup};
use kerbstead_core::thermal::shell::Surface;
use kerbstead_core::thermal::vents::{Opening, Vents};
use serde_json::Value;

use crate::{STEEL, assert_near};

#[test]
fn moist_air_is_as_psychrolib_has_it() {
    let table: Value = serde_json::from_str(include_str!("../../../tests/data/damp.json")).unwrap();
    let cases = table["cases"].as_array().unwrap();
    assert!(cases.len() > 100);
    for case in cases {
        let row: Vec<f64> = case.as_array().unwrap().iter().map(|number| number.as_f64().unwrap()).collect();
        let [air_c, humidity, pressure_pa, vapour, dew_c, ratio, wet_c] = row.try_into().unwrap();
        assert_near(humidity * saturation_pa(air_c), vapour, 1e-7 * vapour, "vapour pressure");
        assert_near(dew_point_c(vapour), dew_c, 2e-3, "dew point");
        assert_near(humidity_ratio(vapour, pressure_pa), ratio.max(1e-7), 1e-7 * ratio + 1e-7, "humidity ratio");
        assert_near(relative_humidity(air_c, vapour), humidity, 1e-7, "relative humidity");
        // PsychroLib stops at 0.001 K; at the melting point its form jumps.
        assert_near(wet_bulb_c(air_c, vapour, pressure_pa), wet_c, 2e-3, "wet bulb");
    }
}

/// Source: project's table of reference values, by `PsychroLib`.
#[test]
fn moist_air_is_as_the_table_has_it() {
    for (air_c, humidity, dew_c, ratio, wet_c) in [
        (20.0, 0.5, 9.272, 0.007_262, 13.783),
        (10.0, 0.9, 8.437, 0.006_859, 9.157),
        (25.0, 0.6, 16.701, 0.011_895, 19.471),
        (5.0, 0.8, 1.841, 0.004_314, 3.588),
    ] {
        let vapour = humidity * saturation_pa(air_c);
        assert_near(dew_point_c(vapour), dew_c, 0.002, "dew point");
        assert_near(humidity_ratio(vapour, SEA_LEVEL_PA), ratio, 1e-6, "humidity ratio");
        assert_near(wet_bulb_c(air_c, vapour, SEA_LEVEL_PA), wet_c, 0.002, "wet bulb");
        assert_near(vapour_pa(humidity_ratio(vapour, SEA_LEVEL_PA), SEA_LEVEL_PA), vapour, 1e-9, "and back");
    }
    assert_near(relative_humidity(12.0, 0.45 * saturation_pa(20.0)), 0.7504, 0.005, "cooled air");
}

#[test]
fn a_surface_is_wet_below_the_dew_point_of_the_room() {
    // 18 °C and 60 % inside, -5 °C outside: bare steel is wet, lined steel is not.
    let dew_c = dew_point_c(0.6 * saturation_pa(18.0));
    assert_near(dew_c, 10.128, 0.01, "dew point");
    assert!(Wall::new(Flow::Sideways, vec![STEEL]).temperatures_c(18.0, -5.0)[0] < dew_c);
    assert!(crate::lined(0.03).temperatures_c(18.0, -5.0)[0] > dew_c);
}

/// A warm room whose faces stay dry follows the closed form of water without surfaces.
#[test]
fn dry_rooms_follow_the_closed_form() {
    let inside = GivenOff { water_g_h: 60.0, ..GivenOff::default() };
    let hour = Hour { air_c: 20.0, relative_humidity: 0.3, fan_m3_h: 12.0, inside, ..Hour::default() };
    let setup = Setup { start_c: 20.0, hours: vec![hour; 5], ..Setup::default() };
    let outside_ratio = humidity_ratio(0.3 * saturation_pa(20.0), SEA_LEVEL_PA);
    let room = Room { volume_m3: 10.0, air_m3_h: 12.0, outside_ratio, water_g_h: 60.0 };
    for (at, done) in run(&setup).hours.iter().enumerate() {
        let hours = at as f64 + 1.0;
        let by_hand = outside_ratio + 0.060 / (1.2 * 12.0) * (1.0 - libm::exp(-1.2 * hours));
        assert_near(done.humidity_ratio, by_hand, 1e-12, "by hand");
        assert_near(done.humidity_ratio, room.after(outside_ratio, hours).1, 1e-12, "room");
    }
    assert_near(room.steady_ratio(), outside_ratio + 0.060 / 14.4, 1e-15, "steady");
}

/// A cold face of steel by night: wet from some hour on, less so the more air comes, and dry with what is said to suffice.
#[test]
fn the_air_that_just_keeps_a_face_dry_does_and_less_does_not() {
    let inside = GivenOff { water_g_h: 45.0, ..GivenOff::default() };
    let night = |fan_m3_h: f64| {
        let hour =
            Hour { air_c: 2.0, relative_humidity: 0.7, fan_m3_h, inside, wanted_c: Some(15.0), ..Hour::default() };
        let surface = Surface::side(10.0, Wall::new(Flow::Sideways, vec![STEEL]), 0.0);
        run(&Setup { shell: vec![surface], heater_w: 1e4, start_c: 15.0, hours: vec![hour; 48], ..Setup::default() })
    };
    let outside_pa = 0.7 * saturation_pa(2.0);
    let needed = dry_m3_h(night(0.0).faces_at(47)[0], 45.0, outside_pa, SEA_LEVEL_PA).unwrap();
    assert_eq!(night(needed * 1.001).wetness[0].hours_below_dew, 0);
    let wet = night(needed * 0.9);
    assert!(wet.wetness[0].hours_below_dew > 40 && wet.wetness[0].water_g > 0.0);
    assert_eq!(wet.below_dew_since(0, 47), wet.wetness[0].first_hour);
    assert!(night(needed * 0.3).wetness[0].water_g > wet.wetness[0].water_g);
}

/// What settled by night dries by day, and is then gone.
#[test]
fn what_settles_dries_again() {
    let inside = GivenOff { water_g_h: 80.0, ..GivenOff::default() };
    let night = Hour { air_c: 0.0, inside, wanted_c: Some(15.0), ..Hour::default() };
    let day = Hour { air_c: 18.0, relative_humidity: 0.4, fan_m3_h: 60.0, ..Hour::default() };
    let hours = [vec![night; 8], vec![day; 16]].concat();
    let vents = Vents { fixed: vec![Opening::low_and_high(0.002, 1.0)], openings: vec![] };
    let shell = vec![Surface::side(10.0, Wall::new(Flow::Sideways, vec![STEEL]), 0.0)];
    let course = run(&Setup { shell, vents, heater_w: 1e4, hours, ..Setup::default() });
    let settled: f64 = course.hours[..8].iter().map(|done| done.settled_g).sum();
    let dried: f64 = course.hours[8..].iter().map(|done| done.settled_g).sum();
    assert!(settled > 100.0, "{settled}");
    assert_near(settled + dried, 0.0, 1e-9, "dry again");
    assert_eq!(course.wetness[0].water_g, 0.0);
    assert!(course.wetness[0].hours_wet >= 8 && course.wetness[0].hours_wet < 24);
}
