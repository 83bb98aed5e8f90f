//! What must hold for any setup: heat and water are conserved, nothing is infinite or not a number.

use kerbstead_core::draws::Chance;
use kerbstead_core::thermal::answers::{Steady, heater_for, layer_change, parked_day};
use kerbstead_core::thermal::damp;
use kerbstead_core::thermal::layers::{Flow, Layer, Wall};
use kerbstead_core::thermal::people::{GivenOff, co2_l_h};
use kerbstead_core::thermal::run::{Course, run};
use kerbstead_core::thermal::setup::{Hour, Mass, Setup};
use kerbstead_core::thermal::shell::{Surface, Window};
use kerbstead_core::thermal::vents::{Opening, Vents};

use crate::{assert_near, solid};

/// A setup of so many hours from numbers that come from anywhere: `between` is asked for each with its usual bounds.
pub fn made_of(between: &mut impl FnMut(f64, f64) -> f64, hours: usize) -> Setup {
    let shell: Vec<Surface> = (0..6).map(|at| surface(between, at)).collect();
    let vents = Vents {
        fixed: vec![Opening::low_and_high(between(0.0, 0.01), between(0.1, 2.0))],
        openings: vec![Opening::single(between(0.0, 0.3), between(0.1, 1.0))],
    };
    let mass = Mass { holds_wh_k: between(5.0, 300.0), to_air_w_k: between(1.0, 200.0), start_c: between(-10.0, 30.0) };
    let sun_w_m2 = (0..hours * 6).map(|_| between(-200.0, 900.0).max(0.0)).collect();
    Setup {
        shell,
        vents,
        volume_m3: between(2.0, 20.0),
        light_wh_k: between(2.0, 80.0),
        mass: (between(0.0, 1.0) < 0.7).then_some(mass),
        heater_w: between(-500.0, 3_000.0),
        pressure_pa: between(7e4, 1.02e5),
        outside_ppm: between(380.0, 500.0),
        start_c: between(-10.0, 30.0),
        hours: (0..hours).map(|_| hour(between)).collect(),
        sun_w_m2,
    }
}

fn surface(between: &mut impl FnMut(f64, f64) -> f64, at: usize) -> Surface {
    let mut layer = || match between(0.0, 3.0) {
        kind if kind < 1.0 => Layer::Gap { thickness_m: between(0.001, 0.05) },
        kind if kind < 1.3 => Layer::FOIL,
        _ => solid(between(0.0, 0.05), between(0.02, 60.0)),
    };
    let layers: Vec<Layer> = (0..at).map(|_| layer()).collect();
    let mut wall = Wall::new(Flow::Sideways, layers);
    if at.is_multiple_of(2) {
        wall = wall.bridged(between(0.0, 0.2), vec![solid(0.001, 50.0)]);
    }
    let mut surface = match at {
        0 => Surface::roof(between(0.5, 8.0), wall),
        1 => Surface::floor(between(0.5, 8.0), wall),
        _ => Surface::side(between(0.5, 8.0), wall, between(0.0, 360.0)),
    };
    surface.absorptance = between(0.0, 1.0);
    let glass = Window { frame_share: between(0.0, 0.3), unshaded: between(0.0, 1.0), ..Window::single_glass(0.4) };
    if at > 2 { surface.with_window(glass) } else { surface }
}

fn hour(between: &mut impl FnMut(f64, f64) -> f64) -> Hour {
    let inside =
        GivenOff { heat_w: between(0.0, 300.0), water_g_h: between(-100.0, 300.0), co2_l_h: between(0.0, 60.0) };
    Hour {
        air_c: between(-20.0, 35.0),
        relative_humidity: between(0.2, 1.0),
        wind_m_s: between(0.0, 12.0),
        clear: between(0.0, 1.0),
        inside,
        wanted_c: (between(0.0, 1.0) < 0.5).then_some(between(5.0, 22.0)),
        open: between(-1.0, 1.0),
        fan_m3_h: between(-100.0, 100.0),
    }
}

fn assert_conserved(setup: &Setup, course: &Course) {
    let outside =
        |hour: &Hour| damp::humidity_ratio(hour.relative_humidity * damp::saturation_pa(hour.air_c), setup.pressure_pa);
    let mass = setup.mass;
    let mut before =
        (setup.start_c, mass.map_or(0.0, |mass| mass.start_c), outside(&setup.hours[0]), setup.outside_ppm);
    for (hour, done) in setup.hours.iter().zip(&course.hours) {
        // Heat.
        let held_wh = setup.light_wh_k * (done.inside_c - before.0)
            + mass.map_or(0.0, |mass| mass.holds_wh_k * (done.mass_c - before.1));
        let flows_wh = [done.heater_wh, done.shell_wh, done.sun_wh, done.vents_wh, hour.inside.heat_w];
        let moved_wh: f64 = flows_wh.iter().map(|wh| wh.abs()).sum::<f64>() + held_wh.abs();
        assert_near(held_wh, flows_wh.iter().sum(), 1e-9 * moved_wh, "heat");
        assert!(done.heater_wh >= 0.0 && done.heater_wh <= setup.heater_w.max(0.0));
        // Water, in g.
        let held_g = 1_200.0 * setup.volume_m3 * (done.humidity_ratio - before.2);
        let aired_g = 1_200.0 * done.air_m3_h * (outside(hour) - done.mean_ratio);
        let given_g = hour.inside.water_g_h.max(0.0);
        let moved_g = held_g.abs() + aired_g.abs() + given_g + done.settled_g.abs();
        let through_g = moved_g + 1_200.0 * (done.air_m3_h + setup.volume_m3) * outside(hour);
        assert_near(held_g, given_g + aired_g - done.settled_g, 1e-9 * through_g, "water");
        assert!(done.relative_humidity >= 0.0 && done.relative_humidity <= 1.0 + 1e-9);
        // Carbon dioxide, in l.
        let held_l = setup.volume_m3 * (done.co2_ppm - before.3) / 1e3;
        let aired_l = done.air_m3_h * (setup.outside_ppm - done.mean_ppm) / 1e3;
        let moved_l = held_l.abs() + aired_l.abs() + hour.inside.co2_l_h;
        assert_near(held_l, hour.inside.co2_l_h + aired_l, 1e-9 * moved_l, "carbon dioxide");
        before = (done.inside_c, done.mass_c, done.humidity_ratio, done.co2_ppm);
    }
    let settled_g: f64 = course.hours.iter().map(|done| done.settled_g).sum();
    let moved_g: f64 = course.hours.iter().map(|done| done.settled_g.abs()).sum();
    let on_faces_g: f64 = course.wetness.iter().map(|wet| wet.water_g + wet.ran_off_g).sum();
    assert_near(on_faces_g, settled_g, 1e-9 * moved_g, "water on faces");
    assert!(course.wetness.iter().all(|wet| wet.water_g >= 0.0 && wet.most_g >= wet.water_g));
}

#[test]
fn heat_water_and_carbon_dioxide_are_conserved_in_every_hour() {
    let mut wet = 0;
    for seed in 0..300 {
        let mut chance = Chance::new(seed);
        let setup = made_of(&mut |low, high| low + (high - low) * chance.share(), 72);
        let course = run(&setup);
        assert_conserved(&setup, &course);
        wet += course.wetness.iter().map(|wet| wet.hours_wet).sum::<usize>();
    }
    assert!(wet > 10_000, "{wet}");
}

#[test]
fn the_same_setup_gives_the_same_run() {
    let mut chance = Chance::new(7);
    let setup = made_of(&mut |low, high| low + (high - low) * chance.share(), 50);
    assert_eq!(run(&setup), run(&setup));
}

fn assert_finite(course: &Course, what: u64) {
    for done in &course.hours {
        let all = [
            [done.inside_c, done.mean_c, done.mass_c, done.heater_wh, done.shell_wh, done.sun_wh, done.vents_wh],
            [done.air_m3_h, done.relative_humidity, done.dew_point_c, done.humidity_ratio, done.mean_ratio, 0.0, 0.0],
            [done.settled_g, done.co2_ppm, done.mean_ppm, 0.0, 0.0, 0.0, 0.0],
        ];
        assert!(all.iter().flatten().all(|value| value.is_finite()), "{what}: {done:?}");
    }
    assert!(course.faces_c.iter().all(|face_c| face_c.is_finite()), "{what}");
}

#[test]
fn strange_numbers_give_finite_answers() {
    let strange =
        [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 0.0, -0.0, -1.0, 1e300, -1e300, 1e-300, f64::MIN_POSITIVE];
    for seed in 0..600 {
        let mut chance = Chance::new(seed);
        let often = chance.share();
        let mut between = |low: f64, high: f64| {
            let usual = low + (high - low) * chance.share();
            let is_strange = chance.share() < often;
            if is_strange { strange[chance.below(10) as usize] } else { usual }
        };
        let setup = made_of(&mut between, 30);
        assert_finite(&run(&setup), seed);
        let steady = Steady::new(&setup, &setup.hours[0], setup.sun_at(0));
        let wanted_c = between(10.0, 20.0);
        assert!(steady.inside_c().is_finite() && steady.heater_w(wanted_c).is_finite());
        assert!(steady.dew_point_c(wanted_c).is_finite());
        assert!([steady.dry_m3_h(wanted_c), steady.dry_unheated_m3_h()].iter().flatten().all(|flow| flow.is_finite()));
        assert!(heater_for(&setup, wanted_c).is_some_and(|need| need.heater_w.is_finite()));
        assert!(parked_day(&setup).is_some_and(|peak| peak.inside_c.is_finite()));
        let layer = solid(between(0.0, 0.1), between(0.02, 1.0));
        let layered = layer_change(&setup.shell[3], 9, layer, between(0.0, 9.0), between(0.0, 9.0));
        assert!(layered.saves_w_k.is_finite() && layered.w_k_per_money.is_none_or(f64::is_finite));
        assert!(co2_l_h(between(5.0, 9.0), between(1.0, 2.0), between(0.0, 30.0), between(90.0, 102.0)).is_finite());
        let wet_c = damp::wet_bulb_c(between(0.0, 30.0), between(0.0, 3e3), between(8e4, 1e5));
        assert!(wet_c.is_finite() && damp::dew_point_c(between(0.0, 3e3)).is_finite());
    }
}
